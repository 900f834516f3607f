namespace Studio.Core.Timetable;

/// <summary>A term as it could be staffed, beside the plan as it stands.</summary>
public sealed record TermPlan
{
    /// <summary>Every session of the span, in the order of time.</summary>
    public required IReadOnlyList<TermStep> Steps { get; init; }

    /// <summary>What each instructor teaches in the span, today and then, by name.</summary>
    public required IReadOnlyList<TermLoad> Loads { get; init; }

    /// <summary>Sessions that were to be staffed and could not be, in the order of time, with the reasons.</summary>
    public required IReadOnlyList<TermGap> Unstaffed { get; init; }

    /// <summary>What stands among the pinned sessions themselves and could not be mended, since they are pinned.</summary>
    public required IReadOnlyList<Conflict> Contradictions { get; init; }

    /// <summary>How far each aim was reached, in their order.</summary>
    public required IReadOnlyList<TermAimReached> Aims { get; init; }

    /// <summary>It was stopped before it had done its work; this is the best it had found.</summary>
    public required bool Stopped { get; init; }
}

/// <summary>A session, by whom it is taught today and by whom it would be.</summary>
/// <param name="Session">The session as it stands.</param>
/// <param name="After">Who would teach it; null: nobody.</param>
/// <param name="MayChange">It was free to be given to somebody else.</param>
public sealed record TermStep(PlacedSession Session, long? After, bool MayChange)
{
    /// <summary>Somebody else, nobody any more, or somebody at last.</summary>
    public bool Changes => Session.InstructorId != After;
}

/// <summary>What somebody teaches in the span.</summary>
/// <param name="InstructorId">Who.</param>
/// <param name="Name">Her name.</param>
/// <param name="Before">Today.</param>
/// <param name="After">In this plan.</param>
public sealed record TermLoad(long InstructorId, string Name, Taught Before, Taught After);

/// <summary>An amount of teaching.</summary>
/// <param name="Sessions">Sessions.</param>
/// <param name="Minutes">Their minutes.</param>
/// <param name="WeeksOver">Weeks with more than was agreed.</param>
public sealed record Taught(int Sessions, int Minutes, int WeeksOver);

/// <summary>A session for which nobody was found.</summary>
/// <param name="Session">The session as it stands today.</param>
/// <param name="Words">Why, as a whole.</param>
/// <param name="People">Why not she, person by person, by name; without those who have left.</param>
public sealed record TermGap(PlacedSession Session, string Words, IReadOnlyList<TermCannot> People);

/// <summary>Why somebody does not teach a session.</summary>
/// <param name="InstructorId">Who.</param>
/// <param name="Name">Her name.</param>
/// <param name="CouldAlone">She could, were it not for what else she would teach.</param>
/// <param name="Words">What stands against it, a sentence each.</param>
public sealed record TermCannot(
    long InstructorId,
    string Name,
    bool CouldAlone,
    IReadOnlyList<string> Words
);

/// <summary>How far an aim was reached.</summary>
/// <param name="Aim">Which.</param>
/// <param name="Value">What was reached.</param>
/// <param name="Proven">That nothing better exists, given the aims before it.</param>
public sealed record TermAimReached(TermAim Aim, long Value, bool Proven);
