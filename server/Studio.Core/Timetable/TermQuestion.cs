using NodaTime;

namespace Studio.Core.Timetable;

/// <summary>A term to be staffed: the plan as it stands, and what of it may change.</summary>
public sealed record TermQuestion
{
    /// <summary>First day of the span.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Last day of the span.</summary>
    public required LocalDate To { get; init; }

    /// <summary>
    /// Everything that is held in the ISO weeks of the span and on the days about them, with whoever teaches it today.
    /// </summary>
    public required IReadOnlyList<PlacedSession> Sessions { get; init; }

    /// <summary>What is known of people and places.</summary>
    public required TimetableFacts Facts { get; init; }

    /// <summary>Keys of the sessions that may be given to somebody else.</summary>
    public required IReadOnlySet<long> MayChange { get; init; }

    /// <summary>
    /// Sessions whose instructor is decided, by key; null: nobody, on purpose. What neither stands here nor may change
    /// stays as it is.
    /// </summary>
    public IReadOnlyDictionary<long, long?> Pins { get; init; } = new Dictionary<long, long?>();

    /// <summary>What may be bent where a session would have nobody otherwise.</summary>
    public TermBends Bends { get; init; } = new();
}

/// <summary>Rules that could be saved against, and whether they may be bent here.</summary>
/// <param name="Hours">The hours somebody gave.</param>
/// <param name="WeeklyMinutes">What was agreed for a week.</param>
/// <param name="Rest">The rest between two days' teaching.</param>
public sealed record TermBends(bool Hours = false, bool WeeklyMinutes = false, bool Rest = false)
{
    /// <summary>Whether a conflict of this kind is accepted; never one that cannot be saved.</summary>
    public bool Allow(ConflictKind kind) =>
        kind switch
        {
            ConflictKind.OutsideHours => Hours,
            ConflictKind.TooManyHours => WeeklyMinutes,
            ConflictKind.TooLittleRest => Rest,
            ConflictKind.RoomTaken
            or ConflictKind.RoomTooSmall
            or ConflictKind.SeatsTaken
            or ConflictKind.LocationShut
            or ConflictKind.InstructorTaken
            or ConflictKind.NoTimeToTravel
            or ConflictKind.NotQualified
            or ConflictKind.OnLeave
            or ConflictKind.HasLeft
            or ConflictKind.ShorterThanPlan => false,
        };
}

/// <summary>What is aimed at, the first before everything after it.</summary>
public enum TermAim
{
    /// <summary>Fewest sessions with nobody.</summary>
    Unstaffed,

    /// <summary>Least bending of what may be bent: a minute over the week counts 1, an hour not given or a short rest 60.</summary>
    Bent,

    /// <summary>Fewest sessions taken from whoever teaches them today.</summary>
    Changes,

    /// <summary>Wishes met: the sum of their weights, more is better.</summary>
    Wishes,

    /// <summary>Even load, week by week; see <see cref="TermShares"/>.</summary>
    Load,
}

/// <summary>How far a search has come.</summary>
/// <param name="Aim">What it is at.</param>
/// <param name="Part">Of which part of the term, from 1; parts share no rule between them.</param>
/// <param name="Parts">How many parts there are.</param>
/// <param name="Unstaffed">Sessions with nobody in the best plan so far.</param>
/// <param name="UnstaffedAtLeast">As many will have nobody whatever is done, as far as is known.</param>
public sealed record TermProgress(
    TermAim Aim,
    int Part,
    int Parts,
    int Unstaffed,
    int UnstaffedAtLeast
);
