using NodaTime;

namespace Studio.Core.Pregnancies;

/// <summary>From where a stage counts its days.</summary>
public enum StageCount
{
    /// <summary>Completed days of gestational age.</summary>
    Pregnancy,

    /// <summary>Completed days since the birth; the day of birth is day 0.</summary>
    Birth,
}

/// <summary>A stage of pregnancy or of the time after birth.</summary>
/// <param name="Code">Stable, for programs and rules.</param>
/// <param name="Name">For people.</param>
/// <param name="CountsFrom">What its days count from.</param>
/// <param name="FromDay">Its first day.</param>
/// <param name="ToDay">Its last day; null for the last stage of each count, which stays open.</param>
/// <param name="Source">Where its boundaries are published, and whether that was only remembered.</param>
public sealed record Stage(
    string Code,
    string Name,
    StageCount CountsFrom,
    int FromDay,
    int? ToDay,
    string Source
);

/// <summary>The dates of a stage in one pregnancy.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="From">Its first date.</param>
/// <param name="To">Its last date; null when it is open.</param>
public sealed record StageBand(Stage Stage, LocalDate From, LocalDate? To);
