using Studio.Core;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>On what terms a change is made.</summary>
/// <param name="By">Whose account makes it; null for the program itself.</param>
/// <param name="Anyway">Warnings (hours, rest, a plan that is longer) are accepted.</param>
public sealed record ChangeTerms(long? By, bool Anyway);

/// <summary>What a change would mean for the people of one session.</summary>
/// <param name="SessionId">The session.</param>
/// <param name="Words">What changes, in a sentence.</param>
/// <param name="Told">People with a seat or a place on the waitlist who are told.</param>
/// <param name="LetGo">Of those, people who lose it: it is called off, or lies across another seat of theirs.</param>
/// <param name="NoLongerSuits">People who keep their seat and whom it does not suit on its new date.</param>
public sealed record SessionConsequence(
    long SessionId,
    string Words,
    int Told,
    int LetGo,
    int NoLongerSuits
);

/// <summary>What a change would bring about; nothing of it is kept.</summary>
/// <param name="Conflicts">Conflicts that do not stand already.</param>
/// <param name="Added">New sessions.</param>
/// <param name="Changed">Sessions that change.</param>
/// <param name="CalledOff">Sessions that are not held any more.</param>
/// <param name="Consequences">What it means for people, for each session that has somebody.</param>
public sealed record ChangesPreview(
    IReadOnlyList<Conflict> Conflicts,
    int Added,
    int Changed,
    int CalledOff,
    IReadOnlyList<SessionConsequence> Consequences
);

/// <summary>What a change brought about.</summary>
/// <param name="Sessions">Ids in the order of what was wanted; null where an entry asked for nothing.</param>
/// <param name="Added">New sessions.</param>
/// <param name="Changed">Sessions that changed.</param>
/// <param name="CalledOff">Sessions that are not held any more.</param>
/// <param name="Told">People who are told, clients and instructors.</param>
/// <param name="LetGo">Seats and waitlist places that were let go.</param>
public sealed record ChangesMade(
    IReadOnlyList<long?> Sessions,
    int Added,
    int Changed,
    int CalledOff,
    int Told,
    int LetGo
);

/// <summary>Ways of saying no to a change of the timetable.</summary>
public static class TimetableRefusals
{
    /// <summary>No such session for this reader.</summary>
    public static readonly Refusal NoSuchSession = new(
        RefusalKind.NotFound,
        "no-such-session",
        "There is no such session."
    );

    /// <summary>No such room.</summary>
    public static readonly Refusal NoSuchRoom = new(
        RefusalKind.Invalid,
        "no-such-room",
        "There is no such room. Please choose one of the list.",
        "roomId"
    );

    /// <summary>No such class.</summary>
    public static readonly Refusal NoSuchClass = new(
        RefusalKind.Invalid,
        "no-such-class",
        "There is no such class. Please choose one of the list.",
        "classId"
    );

    /// <summary>No such instructor.</summary>
    public static readonly Refusal NoSuchInstructor = new(
        RefusalKind.Invalid,
        "no-such-instructor",
        "There is no such instructor. Please choose one of the list.",
        "instructorId"
    );

    /// <summary>Too short or too long.</summary>
    public static readonly Refusal BadLength = new(
        RefusalKind.Invalid,
        "bad-length",
        "A session takes 5 to 240 minutes.",
        "minutes"
    );

    /// <summary>No seats, or too many.</summary>
    public static readonly Refusal BadSeats = new(
        RefusalKind.Invalid,
        "bad-seats",
        "A session has 1 to 200 seats.",
        "seats"
    );

    /// <summary>The same session twice in one change.</summary>
    public static readonly Refusal Twice = new(
        RefusalKind.Invalid,
        "session-twice",
        "A session stands twice in this change. Please say once how it should be."
    );

    /// <summary>People booked this class.</summary>
    public static readonly Refusal ClassStays = new(
        RefusalKind.Conflict,
        "class-stays",
        "A session keeps its class: people booked that one. Call it off and add another session.",
        "classId"
    );

    /// <summary>It lies behind us.</summary>
    public static Refusal HasBegun(string named) =>
        new(
            RefusalKind.Conflict,
            "session-begun",
            $"{named} has begun: what was taught stays as it was. Please choose a later one."
        );

    /// <summary>It would begin in the past.</summary>
    public static Refusal InThePast(string named) =>
        new(
            RefusalKind.Invalid,
            "in-the-past",
            $"{named} would lie in the past. Please choose a later time.",
            "on"
        );

    /// <summary>Conflicts that can never be saved.</summary>
    public static Refusal Conflict(IEnumerable<Conflict> conflicts) =>
        new(RefusalKind.Conflict, "timetable-conflict", Words(conflicts.Where(c => c.IsHard)));

    /// <summary>Conflicts that the owner may accept.</summary>
    public static Refusal Warning(IEnumerable<Conflict> conflicts) =>
        new(
            RefusalKind.Conflict,
            "timetable-warning",
            $"{Words(conflicts)} Change it, or say that it is to stay so."
        );

    private static string Words(IEnumerable<Conflict> conflicts) =>
        string.Join(" ", conflicts.Select(c => c.Words).Distinct(StringComparer.Ordinal));
}
