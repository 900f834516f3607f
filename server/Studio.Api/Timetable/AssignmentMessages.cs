using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>Which sessions may be given to somebody else. Those that have begun never are.</summary>
public enum AssignmentScope
{
    /// <summary>Only those that nobody teaches yet.</summary>
    Unstaffed,

    /// <summary>Those, and all in which nobody has a seat yet.</summary>
    NobodyBooked,

    /// <summary>All.</summary>
    All,
}

/// <summary>A session whose instructor is decided.</summary>
/// <param name="SessionId">The session.</param>
/// <param name="InstructorId">Who teaches it; null: nobody, on purpose.</param>
public sealed record AssignmentPin(long SessionId, long? InstructorId);

/// <summary>A term to be staffed.</summary>
public sealed record AssignmentRequest
{
    /// <summary>First day.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Last day.</summary>
    public required LocalDate To { get; init; }

    /// <summary>Which sessions may be given to somebody else.</summary>
    public required AssignmentScope Change { get; init; }

    /// <summary>Instructors who keep whatever they teach today.</summary>
    [MaxLength(500)]
    public IReadOnlyList<long> KeepOf { get; init; } = [];

    /// <summary>Sessions whose instructor is decided.</summary>
    [MaxLength(2000)]
    public IReadOnlyList<AssignmentPin> Pins { get; init; } = [];

    /// <summary>What may be bent where a session would have nobody otherwise.</summary>
    public TermBends Bend { get; init; } = new();

    /// <summary>How long it may take at most.</summary>
    [Range(1, 900)]
    public int Seconds { get; init; } = 120;
}

/// <summary>What has become of a search.</summary>
public enum AssignmentStatus
{
    /// <summary>It is at it.</summary>
    Running,

    /// <summary>It ended by itself.</summary>
    Finished,

    /// <summary>The time was over; what it had found by then is kept.</summary>
    OutOfTime,

    /// <summary>It was cancelled; what it had found by then is kept.</summary>
    Cancelled,

    /// <summary>The program was stopped while it ran.</summary>
    CutOff,

    /// <summary>It went wrong.</summary>
    Failed,
}

/// <summary>How far a search has come.</summary>
public sealed record AssignmentProgress
{
    /// <summary>What it is at.</summary>
    public required TermAim Aim { get; init; }

    /// <summary>Of which part of the term, from 1.</summary>
    public required int Part { get; init; }

    /// <summary>How many parts there are.</summary>
    public required int Parts { get; init; }

    /// <summary>Sessions with nobody in the best plan so far.</summary>
    public required int Unstaffed { get; init; }

    /// <summary>As many will have nobody whatever is done, as far as is known.</summary>
    public required int UnstaffedAtLeast { get; init; }
}

/// <summary>A search, without what it found.</summary>
public sealed record AssignmentSummary
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>What was asked.</summary>
    public required AssignmentRequest Asked { get; init; }

    /// <summary>What has become of it.</summary>
    public required AssignmentStatus Status { get; init; }

    /// <summary>When it was begun.</summary>
    public required Instant MadeAt { get; init; }

    /// <summary>When it ended.</summary>
    public Instant? EndedAt { get; init; }

    /// <summary>How long it has been at it, or was.</summary>
    public required int Seconds { get; init; }

    /// <summary>It was put aside.</summary>
    public required bool Discarded { get; init; }

    /// <summary>The draft made of it.</summary>
    public long? DraftId { get; init; }
}

/// <summary>A search with how far it has come, or what it found.</summary>
public sealed record AssignmentMessage
{
    /// <summary>What was asked, and what has become of it.</summary>
    public required AssignmentSummary Run { get; init; }

    /// <summary>How far it has come; null before its first word and after the end.</summary>
    public AssignmentProgress? Progress { get; init; }

    /// <summary>What it found; null while it runs, and where nothing was kept.</summary>
    public AssignmentResult? Result { get; init; }
}

/// <summary>A term as it could be staffed, beside the plan as it stood when it was asked.</summary>
public sealed record AssignmentResult
{
    /// <summary>Sessions in the span.</summary>
    public required int Sessions { get; init; }

    /// <summary>Of those, how many were free to be given to somebody else.</summary>
    public required int Free { get; init; }

    /// <summary>How many had nobody.</summary>
    public required int UnstaffedBefore { get; init; }

    /// <summary>How many would have nobody.</summary>
    public required int UnstaffedAfter { get; init; }

    /// <summary>The sessions that change, in the order of time.</summary>
    public required IReadOnlyList<AssignmentChange> Changes { get; init; }

    /// <summary>What each instructor teaches, today and then, by name.</summary>
    public required IReadOnlyList<TermLoad> Loads { get; init; }

    /// <summary>Sessions for which nobody was found, and why.</summary>
    public required IReadOnlyList<AssignmentGap> Unstaffed { get; init; }

    /// <summary>What stands among the sessions that were not to change, a sentence each.</summary>
    public required IReadOnlyList<string> Contradictions { get; init; }

    /// <summary>How far each aim was reached, in their order.</summary>
    public required IReadOnlyList<TermAimReached> Aims { get; init; }
}

/// <summary>A session in the words of a list.</summary>
public sealed record AssignedSession
{
    /// <summary>The session.</summary>
    public required long Id { get; init; }

    /// <summary>Its class.</summary>
    public required string ClassName { get; init; }

    /// <summary>Its own date, where it is held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Start by the location's clock, "18:00".</summary>
    public required string StartsLocal { get; init; }

    /// <summary>Length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>Its location.</summary>
    public required string LocationName { get; init; }

    /// <summary>Its room.</summary>
    public required string RoomName { get; init; }

    /// <summary>People with a seat.</summary>
    public required int SeatsTaken { get; init; }
}

/// <summary>A session that changes.</summary>
/// <param name="Session">The session.</param>
/// <param name="Before">Who teaches it today.</param>
/// <param name="AfterId">Who would.</param>
/// <param name="After">Her name.</param>
/// <param name="BasedOn">The session's count of changes when it was read.</param>
public sealed record AssignmentChange(
    AssignedSession Session,
    string? Before,
    long? AfterId,
    string? After,
    long BasedOn
);

/// <summary>A session for which nobody was found.</summary>
/// <param name="Session">The session.</param>
/// <param name="Words">Why, as a whole.</param>
/// <param name="People">Why not she, person by person.</param>
public sealed record AssignmentGap(
    AssignedSession Session,
    string Words,
    IReadOnlyList<TermCannot> People
);

/// <summary>A draft made of what was found.</summary>
/// <param name="DraftId">The draft.</param>
/// <param name="LeftAsTheyAre">Sessions that changed since they were read, and were left to whoever teaches them now.</param>
public sealed record AssignmentDraft(long DraftId, int LeftAsTheyAre);
