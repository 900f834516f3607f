using NodaTime;

namespace Studio.Core.Pregnancies;

/// <summary>What cannot be true of any pregnancy. The limits without a source are ours: wide enough for every real one.</summary>
internal static class EvidenceChecks
{
    public const int ShortestCycle = 20;
    public const int LongestCycle = 45;
    public const int YoungestEmbryo = 1;
    public const int OldestEmbryo = 7;

    /// <summary>Nothing that can be measured shows before about the fourth week (common practice, no published source).</summary>
    public static readonly GestationalAge LeastMeasured = GestationalAge.Of(4, 0);

    /// <summary>Postterm begins here, and no scan is made to date a pregnancy after it.</summary>
    public static readonly GestationalAge MostMeasured = new(GestationalAge.AtPostterm);

    private const int FirstYear = 1900;
    private const int LastYear = 2199;

    /// <summary>Why the evidence cannot be reckoned with, each piece by itself and against the others; null when it can.</summary>
    public static Refusal? WhyNot(DatingEvidence evidence)
    {
        if (evidence is { LastPeriod: null, Transfer: null, Stated: null, Scans.Count: 0 })
            return DatingRefusals.NothingGiven;

        return Date(evidence.LastPeriod?.FirstDay, "lastPeriod")
            ?? Date(evidence.Transfer?.On, "transfer.date")
            ?? Date(evidence.Stated, "stated")
            ?? First(evidence.Scans, scan => Date(scan.On, "scan.date"))
            ?? Numbers(evidence)
            ?? First(evidence.Scans, scan => AgainstTheRest(scan, evidence));
    }

    /// <summary>Why other evidence cannot belong to the pregnancy that has this due date; null when it can.</summary>
    public static Refusal? WhyNot(
        DueDate inForce,
        IEnumerable<Scan> scans,
        IEnumerable<Reckoning> others
    ) =>
        First(
            scans,
            scan =>
                IsPossible(GestationalAge.On(scan.On, inForce.On))
                    ? null
                    : DatingRefusals.ScanOutsidePregnancy(scan, inForce)
        )
        ?? First(
            others,
            other =>
                Math.Abs(Period.DaysBetween(other.DueOn, inForce.On)) <= GestationalAge.AtDueDate
                    ? null
                    : DatingRefusals.NotThisPregnancy(other.What, other.DueOn, inForce, other.Field)
        );

    /// <summary>Whether a pregnancy can be of this age: 0w 0d to 44w 0d.</summary>
    public static bool IsPossible(GestationalAge age) =>
        age.Days is >= 0 and <= GestationalAge.Greatest;

    // Also keeps every sum below inside the calendar.
    private static Refusal? Date(LocalDate? day, string field) =>
        day is { } date
        && (date.Calendar != CalendarSystem.Iso || date.Year is < FirstYear or > LastYear)
            ? DatingRefusals.DateImplausible(date, field)
            : null;

    private static Refusal? Numbers(DatingEvidence evidence)
    {
        if (evidence.LastPeriod?.CycleDays is { } cycle and (< ShortestCycle or > LongestCycle))
            return DatingRefusals.CycleDays(cycle);
        if (evidence.Transfer?.EmbryoDays is { } embryo and (< YoungestEmbryo or > OldestEmbryo))
            return DatingRefusals.EmbryoDays(embryo);
        return First(
            evidence.Scans,
            scan =>
                scan.Measured.Days < LeastMeasured.Days || scan.Measured.Days > MostMeasured.Days
                    ? DatingRefusals.ScanAge(scan)
                    : null
        );
    }

    private static Refusal? AgainstTheRest(Scan scan, DatingEvidence evidence)
    {
        if (evidence.LastPeriod?.FirstDay is { } period)
        {
            if (scan.On < period)
                return DatingRefusals.ScanBeforePeriod(scan, period);
            if (Period.DaysBetween(period, scan.On) > GestationalAge.Greatest)
                return DatingRefusals.ScanLongAfterPeriod(scan, period);
        }
        if (evidence.Transfer?.On is { } transfer && scan.On < transfer)
            return DatingRefusals.ScanBeforeTransfer(scan, transfer);
        return
            InOrder(evidence.Scans)
                .FirstOrDefault(other =>
                    other.On == scan.On && other.Measured.Days > scan.Measured.Days
                )
                is { } greater
            ? DatingRefusals.ScansDisagree(scan, greater)
            : null;
    }

    // In one order whatever order they were given in, so that the answer does not depend on it.
    private static Refusal? First(IEnumerable<Scan> scans, Func<Scan, Refusal?> check) =>
        First<Scan>(InOrder(scans), check);

    private static Refusal? First<T>(IEnumerable<T> items, Func<T, Refusal?> check) =>
        items.Select(check).FirstOrDefault(refusal => refusal is not null);

    private static IEnumerable<Scan> InOrder(IEnumerable<Scan> scans) =>
        scans
            .OrderBy(scan =>
                Period.DaysBetween(
                    new LocalDate(2000, 1, 1),
                    scan.On.WithCalendar(CalendarSystem.Iso)
                )
            )
            .ThenBy(scan => scan.Measured.Days);
}
