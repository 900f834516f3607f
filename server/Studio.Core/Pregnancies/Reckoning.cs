using NodaTime;

namespace Studio.Core.Pregnancies;

/// <summary>The due date that one piece of evidence gives by itself.</summary>
/// <param name="What">The evidence, as it stands in the middle of a sentence.</param>
/// <param name="Field">The request's field it came in.</param>
/// <param name="DueOn">The due date.</param>
internal sealed record Reckoning(string What, string Field, LocalDate DueOn)
{
    /// <summary>280 days from the first day of the last period (ACOG, Committee Opinion 700, 2017, Background).</summary>
    private const int FromPeriod = GestationalAge.AtDueDate;

    /// <summary>The cycle that the 280 days assume (same source).</summary>
    private const int AssumedCycle = 28;

    /// <summary>
    /// 266 days from fertilisation (NICHD study protocol, Am J Obstet Gynecol 2015, table 1), so 261 after the
    /// transfer of a 5-day embryo and 263 after that of a 3-day one (ACOG, Committee Opinion 700, 2017);
    /// the general form for other ages is from memory.
    /// </summary>
    private const int FromFertilisation = 266;

    public static Reckoning Of(LastPeriod period) =>
        new(
            "the period",
            "lastPeriod",
            period.FirstDay.PlusDays(FromPeriod + CycleAdjustment(period))
        );

    public static Reckoning Of(Scan scan) =>
        new(
            $"the scan of {Wording.Date(scan.On)}",
            "scan.date",
            scan.On.PlusDays(GestationalAge.AtDueDate - scan.Measured.Days)
        );

    public static Reckoning Of(EmbryoTransfer transfer) =>
        new("the embryo transfer", "transfer.date", transfer.On.PlusDays(DaysAfter(transfer)));

    public static Reckoning OfStated(LocalDate stated) =>
        new("the stated due date", "stated", stated);

    /// <summary>Days from the transfer to the due date.</summary>
    public static int DaysAfter(EmbryoTransfer transfer) => FromFertilisation - transfer.EmbryoDays;

    /// <summary>
    /// Days added for a cycle that is not of 28 days: common practice, from memory, and not in ACOG's opinion,
    /// which the explanation says wherever it is used.
    /// </summary>
    public static int CycleAdjustment(LastPeriod period) =>
        (period.CycleDays ?? AssumedCycle) - AssumedCycle;
}
