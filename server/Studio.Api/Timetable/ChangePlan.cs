using Studio.Api.Booking;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>One session of a change.</summary>
/// <param name="Index">Its place among what was wanted.</param>
/// <param name="Wanted">How it should stand.</param>
/// <param name="Was">As it stands in the table; null for a new one.</param>
/// <param name="Now">Where it will be; null when it is called off.</param>
/// <param name="NamedWas">As sentences name it before.</param>
/// <param name="NamedNow">And after.</param>
public sealed record ChangeStep(
    int Index,
    SessionWanted Wanted,
    SessionRow? Was,
    PlacedSession? Now,
    NamedSession? NamedWas,
    NamedSession NamedNow
)
{
    /// <summary>It is not held where or when it was, or not at all.</summary>
    public bool IsElsewhere =>
        Was is not null
        && (
            Now is null
            || (Was.StartsAt, Was.EndsAt, Was.RoomId) != (Now.StartsAt, Now.EndsAt, Now.RoomId)
        );

    /// <summary>Nothing of it changes but how many can come.</summary>
    public bool OnlySeats =>
        Was is { Status: SessionStatus.Open }
        && Now is not null
        && !IsElsewhere
        && Was.InstructorId == Now.InstructorId;

    /// <summary>What its fit depends on, where it will be held.</summary>
    public DatedClass Dated => new(Now!.Key, Now.ClassId, Now.On, Now.StartsAt);
}

/// <summary>A change with all it brings about.</summary>
/// <param name="Steps">Sessions that really change.</param>
/// <param name="Conflicts">Conflicts it brings about.</param>
/// <param name="Seats">Seats and waitlist places in sessions that were held and change.</param>
/// <param name="LetGo">Those among them that cannot stay, by booking.</param>
public sealed record ChangePlan(
    IReadOnlyList<ChangeStep> Steps,
    IReadOnlyList<Conflict> Conflicts,
    IReadOnlyList<BookingRow> Seats,
    IReadOnlyDictionary<long, LetGo> LetGo
)
{
    /// <summary>Whether those who come would notice.</summary>
    public bool TellsClients(ChangeStep step) =>
        step.Was is { Status: SessionStatus.Open } && Words(step).Length > 0;

    /// <summary>What changes for those who come, in a sentence; blank when they would notice nothing.</summary>
    public string Words(ChangeStep step) =>
        step.NamedWas is not { } was ? ""
        : step.Now is null ? SessionWords.CalledOff(was)
        : SessionWords.Changed(was, step.NamedNow, tellsWho: true) ?? "";
}
