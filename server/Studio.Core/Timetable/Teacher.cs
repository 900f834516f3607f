using System.Globalization;
using NodaTime;

namespace Studio.Core.Timetable;

/// <summary>What the timetable needs to know of somebody who teaches.</summary>
public sealed record Teacher
{
    /// <summary>Key of the instructor.</summary>
    public required long Id { get; init; }

    /// <summary>Her name, for sentences.</summary>
    public required string Name { get; init; }

    /// <summary>What she is qualified for, and when.</summary>
    public IReadOnlyList<HeldQualification> Qualifications { get; init; } = [];

    /// <summary>Most minutes of classes in an ISO week; null when no bound was set.</summary>
    public int? WeeklyMinutesMost { get; init; }

    /// <summary>Least minutes from the end of one day's teaching to the start of the next; null: the studio's policy.</summary>
    public int? RestMinutesLeast { get; init; }

    /// <summary>When she can be asked for; empty: at any hour.</summary>
    public IReadOnlyList<WeeklyHours> Availability { get; init; } = [];

    /// <summary>Days on which she is away.</summary>
    public IReadOnlyList<DaysAway> Leave { get; init; } = [];

    /// <summary>Her wishes: never a rule.</summary>
    public IReadOnlyList<TeachingWish> Wishes { get; init; } = [];

    /// <summary>The first day on which she no longer works here.</summary>
    public LocalDate? LeftOn { get; init; }

    /// <summary>Whether she holds a kind of qualification on a day.</summary>
    public bool Holds(string kind, LocalDate on) =>
        Qualifications.Any(q => q.Kind == kind && q.From <= on && on <= q.To);
}

/// <summary>A qualification, from the day it was issued to its last day.</summary>
public sealed record HeldQualification(string Kind, LocalDate From, LocalDate To);

/// <summary>Hours of a weekday by the wall clock of the location where she would teach.</summary>
/// <param name="Weekday">The day.</param>
/// <param name="From">First hour.</param>
/// <param name="To">Last hour; a class has to end by then.</param>
/// <param name="LocationId">Only there; null: anywhere.</param>
public sealed record WeeklyHours(
    IsoDayOfWeek Weekday,
    LocalTime From,
    LocalTime To,
    long? LocationId = null
);

/// <summary>Days away, first and last included.</summary>
public sealed record DaysAway(LocalDate From, LocalDate To);

/// <summary>What a wish is about.</summary>
public enum WishKind
{
    /// <summary>A class, by its code.</summary>
    Class,

    /// <summary>A location, by its code.</summary>
    Location,

    /// <summary>A weekday, 1 (Monday) to 7.</summary>
    Weekday,

    /// <summary>morning (starts before 12:00), afternoon, evening (starts at 17:00 or later).</summary>
    PartOfDay,
}

/// <summary>What she likes to teach, or does not.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Value">Which.</param>
/// <param name="Weight">-2 (rather not) to 2 (gladly), never 0.</param>
public sealed record TeachingWish(WishKind Kind, string Value, int Weight)
{
    /// <summary>Whether it is about this session; part of the day and weekday are those where it is held.</summary>
    public bool Speaks(PlacedSession session) =>
        Value
        == Kind switch
        {
            WishKind.Class => session.ClassCode,
            WishKind.Location => session.LocationCode,
            WishKind.Weekday => ((int)session.On.DayOfWeek).ToString(CultureInfo.InvariantCulture),
            WishKind.PartOfDay => session.StartsLocal.Hour switch
            {
                < 12 => "morning",
                < 17 => "afternoon",
                _ => "evening",
            },
        };
}
