namespace Studio.Core.Pregnancies;

/// <summary>A row of the redating table.</summary>
/// <param name="From">First age of the row, by the last period, on the day of the scan.</param>
/// <param name="To">Last age of the row; null for the last row.</param>
/// <param name="MostDays">The greatest difference in days that still keeps the period date.</param>
/// <param name="Source">Where the figure is published.</param>
public sealed record RedatingBand(
    GestationalAge From,
    GestationalAge? To,
    int MostDays,
    string Source
);

/// <summary>
/// By how many days a scan must differ from the period date before it moves the due date.
/// Source: ACOG, AIUM and SMFM, Committee Opinion 700 (2017), table 1; read as published.
/// </summary>
public static class RedatingTable
{
    private const string Source = "ACOG/AIUM/SMFM, Committee Opinion 700 (2017), table 1";

    /// <summary>The rows, by age; they follow one another without a gap.</summary>
    public static IReadOnlyList<RedatingBand> Bands { get; } =
    [
        Band((0, 0), (8, 6), 5),
        Band((9, 0), (13, 6), 7),
        Band((14, 0), (15, 6), 7),
        Band((16, 0), (21, 6), 10),
        Band((22, 0), (27, 6), 14),
        Band((28, 0), null, 21),
    ];

    /// <summary>
    /// The row for a scan. It is chosen by the age the period gives, not by the age the scan measured
    /// (same source); an age before 0w 0d, which a long cycle can bring about, takes the first row.
    /// </summary>
    public static RedatingBand At(GestationalAge byPeriod) =>
        Bands.Last(band => band.From.Days <= Math.Max(byPeriod.Days, 0));

    private static RedatingBand Band(
        (int Weeks, int Days) from,
        (int Weeks, int Days)? to,
        int mostDays
    ) =>
        new(
            GestationalAge.Of(from.Weeks, from.Days),
            to is var (weeks, days) ? GestationalAge.Of(weeks, days) : null,
            mostDays,
            Source
        );
}
