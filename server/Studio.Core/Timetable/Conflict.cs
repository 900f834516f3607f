namespace Studio.Core.Timetable;

/// <summary>What stands against a session where it is. Those before <see cref="OutsideHours"/> can never be saved.</summary>
public enum ConflictKind
{
    /// <summary>Two sessions in one room.</summary>
    RoomTaken,

    /// <summary>More seats than the room has.</summary>
    RoomTooSmall,

    /// <summary>Fewer seats than people who have one.</summary>
    SeatsTaken,

    /// <summary>The location is shut that day.</summary>
    LocationShut,

    /// <summary>One instructor in two sessions.</summary>
    InstructorTaken,

    /// <summary>Not enough time to come from, or go to, another location.</summary>
    NoTimeToTravel,

    /// <summary>Her qualification is not valid on the session's date.</summary>
    NotQualified,

    /// <summary>She is away that day.</summary>
    OnLeave,

    /// <summary>She no longer works here.</summary>
    HasLeft,

    /// <summary>Outside the hours she can be asked for.</summary>
    OutsideHours,

    /// <summary>More in a week than was agreed.</summary>
    TooManyHours,

    /// <summary>Too little time between two days' teaching.</summary>
    TooLittleRest,

    /// <summary>The class's plan takes longer than the session.</summary>
    ShorterThanPlan,
}

/// <summary>A conflict, with the sessions it is between.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Sessions">Keys of the sessions concerned, in the order of time.</param>
/// <param name="InstructorId">Whose, when it is about somebody.</param>
/// <param name="Words">One sentence that names it.</param>
public sealed record Conflict(
    ConflictKind Kind,
    IReadOnlyList<long> Sessions,
    long? InstructorId,
    string Words
)
{
    /// <summary>It can never be saved; the others can, when the owner accepts them.</summary>
    public bool IsHard => Kind < ConflictKind.OutsideHours;
}
