using NodaTime;

namespace Studio.Core.Pregnancies;

/// <summary>
/// Reckons the due date in force. An embryo transfer comes first and is never moved; then a clinician's stated
/// date; then the period, which only the first scan can move, by the <see cref="RedatingTable"/>; then a scan alone.
/// The order of the first and the last two is ACOG/AIUM/SMFM, Committee Opinion 700 (2017); that a stated date
/// goes before period and scan is ours: whoever stated it had seen more than was entered here.
/// </summary>
public static class Dating
{
    // No scan before this age leaves a pregnancy suboptimally dated (Committee Opinion 700, 2017, Recommendations).
    private static readonly GestationalAge OptimalUntil = GestationalAge.Of(22, 0);

    // From here on only a first scan may move the date, and with caution (same source, Third trimester).
    private static readonly GestationalAge LateScan = GestationalAge.Of(28, 0);

    /// <summary>The due date in force and why; refused when the evidence is missing or cannot be true.</summary>
    public static Answer<DueDate> Reckon(DatingEvidence evidence)
    {
        if (EvidenceChecks.WhyNot(evidence) is { } refusal)
            return refusal;

        List<Scan> scans = [.. evidence.Scans.OrderBy(scan => scan.On).Distinct()];
        var inForce =
            evidence.Transfer is { } transfer ? FromTransfer(transfer, evidence.Stated, scans)
            : evidence.Stated is { } stated ? FromStated(stated, evidence.LastPeriod, scans)
            : FromPeriodAndScans(evidence.LastPeriod, scans)!;

        return EvidenceChecks.WhyNot(inForce, scans, Others(evidence, scans)) is { } clash
            ? clash
            : inForce;
    }

    /// <summary>Age on a day by a due date; refused when it comes to less than 0w 0d or more than 44w 0d.</summary>
    public static Answer<GestationalAge> AgeOn(LocalDate day, LocalDate dueDate)
    {
        var age = GestationalAge.On(day, dueDate);
        return EvidenceChecks.IsPossible(age)
            ? age
            : DatingRefusals.AgeImpossible(day, dueDate, age);
    }

    private static DueDate FromTransfer(
        EmbryoTransfer transfer,
        LocalDate? stated,
        List<Scan> scans
    )
    {
        var on = Reckoning.Of(transfer).DueOn;
        List<string> sentences =
        [
            $"Counted from the embryo transfer: {Reckoning.DaysAfter(transfer)} days after the transfer of an embryo of"
                + $" {Wording.Days(transfer.EmbryoDays)}. A date from a transfer is never moved.",
        ];
        if (stated is { } date && date != on)
            sentences.Add(Differs(Reckoning.OfStated(date), on));
        sentences.AddRange(
            scans
                .Select(Reckoning.Of)
                .Where(scan => scan.DueOn != on)
                .Select(scan => Differs(scan, on))
        );
        return new(on, DatingBasis.Transfer, string.Join(' ', sentences));
    }

    private static DueDate FromStated(LocalDate stated, LastPeriod? period, List<Scan> scans)
    {
        const string kept = "Kept the due date a clinician stated.";
        if (FromPeriodAndScans(period, scans) is not { } reckoned)
            return new(stated, DatingBasis.Stated, kept);

        var from = reckoned.Basis == DatingBasis.Scan ? "the scan" : "the period";
        var compared =
            reckoned.On == stated
                ? $"Reckoned from {from} it is the same."
                : $"Reckoned from {from} it would be {Wording.Date(reckoned.On)}, {Wording.Apart(reckoned.On, stated)}.";
        return new(stated, DatingBasis.Stated, $"{kept} {compared}");
    }

    private static DueDate? FromPeriodAndScans(LastPeriod? period, List<Scan> scans)
    {
        var reckoned = (period, scans) switch
        {
            ({ } given, []) => FromPeriod(given, "280 days from the first day of the last period."),
            ({ } given, [var first, ..]) => Compared(given, first),
            (null, [var first, ..]) => FromScan(first),
            (null, []) => null,
        };
        if (reckoned is null)
            return null;

        List<string> sentences = [reckoned.Explanation];
        if (period is not null && Reckoning.CycleAdjustment(period) is not 0 and var days)
            sentences.Add(
                $"The period date is set {Wording.Days(Math.Abs(days))} {(days < 0 ? "earlier" : "later")} for a cycle of"
                    + $" {period.CycleDays} days: an adjustment that is common practice (from memory) and not in the ACOG opinion."
            );
        if (scans.Count > 1)
            sentences.Add("Later scans do not move the date.");
        if (scans is not [var scan, ..])
            sentences.Add(
                $"No scan is recorded: without one before {OptimalUntil} a pregnancy counts as suboptimally dated."
            );
        else if (GestationalAge.On(scan.On, reckoned.On).Days >= OptimalUntil.Days)
            sentences.Add(
                $"No scan before {OptimalUntil} is recorded: the pregnancy counts as suboptimally dated."
            );
        return reckoned with { Explanation = string.Join(' ', sentences) };
    }

    private static DueDate Compared(LastPeriod period, Scan first)
    {
        var byPeriod = Reckoning.Of(period).DueOn;
        var age = GestationalAge.On(first.On, byPeriod);
        var apart = Math.Abs(first.Measured.Days - age.Days);
        var threshold = RedatingTable.At(age).MostDays;
        if (apart <= threshold)
            return FromPeriod(
                period,
                $"Kept the period date: the scan differed by {Wording.Days(apart)}, the threshold at {age} is {threshold} days."
            );

        var moved =
            $"Moved to the scan's date: the scan differed from the period date by {Wording.Days(apart)}, more than the"
            + $" threshold of {threshold} days at {age}.";
        return FromScan(first) with
        {
            Explanation = age.Days >= LateScan.Days ? $"{moved} {LateScanCaution}" : moved,
        };
    }

    private static DueDate FromPeriod(LastPeriod period, string explanation) =>
        new(Reckoning.Of(period).DueOn, DatingBasis.LastPeriod, explanation);

    private static DueDate FromScan(Scan first)
    {
        var taken = $"Taken from {Reckoning.Of(first).What}, which measured {first.Measured}.";
        return new(
            Reckoning.Of(first).DueOn,
            DatingBasis.Scan,
            first.Measured.Days >= LateScan.Days ? $"{taken} {LateScanCaution}" : taken
        );
    }

    private static string LateScanCaution =>
        $"Caution: a first scan from {LateScan} on is a weak guide, and a baby that grows too slowly measures young;"
        + " a clinician should confirm this date.";

    private static string Differs(Reckoning other, LocalDate inForce) =>
        $"Not used: {other.What} gives {Wording.Date(other.DueOn)}, {Wording.Apart(other.DueOn, inForce)}.";

    private static IEnumerable<Reckoning> Others(DatingEvidence evidence, List<Scan> scans)
    {
        if (evidence.LastPeriod is { } period)
            yield return Reckoning.Of(period);
        if (evidence.Stated is { } stated)
            yield return Reckoning.OfStated(stated);
        foreach (var scan in scans)
            yield return Reckoning.Of(scan);
    }
}
