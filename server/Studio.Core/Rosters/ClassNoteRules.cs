using NodaTime;
using Studio.Core.Pregnancies;

namespace Studio.Core.Rosters;

/// <summary>
/// When a note about a person in a class may be written or changed: from the start of the class until the end of the seventh
/// day after its own date, where it is held. Common practice, no published source: what is remembered later is no longer
/// what was seen.
/// </summary>
public static class ClassNoteRules
{
    /// <summary>How many days after the class a note may be written.</summary>
    public const int Days = 7;

    /// <summary>Longest note, in characters.</summary>
    public const int LongestText = 2000;

    /// <summary>The last day on which a note about a class may be written.</summary>
    /// <param name="on">The session's own date, where it is held.</param>
    public static LocalDate LastDay(LocalDate on) => on.PlusDays(Days);

    /// <summary>Why no note may be written or changed now, or null when one may.</summary>
    /// <param name="held">False for a session that was cancelled.</param>
    /// <param name="startsAt">Its start.</param>
    /// <param name="on">Its own date.</param>
    /// <param name="now">The moment.</param>
    /// <param name="today">That moment's date where the session is held.</param>
    public static Refusal? WhyNot(
        bool held,
        Instant startsAt,
        LocalDate on,
        Instant now,
        LocalDate today
    ) =>
        !held ? Cancelled
        : now < startsAt ? NotBegun
        : today > LastDay(on) ? Closed(on)
        : null;

    /// <summary>The session was cancelled.</summary>
    public static readonly Refusal Cancelled = new(
        RefusalKind.Conflict,
        "session-cancelled",
        "This session was cancelled, so there is nothing to note about it."
    );

    /// <summary>The session has not begun.</summary>
    public static readonly Refusal NotBegun = new(
        RefusalKind.Conflict,
        "not-begun",
        "This session has not begun. Notes are written from its start on."
    );

    /// <summary>She has no seat in the session, or there is no such client.</summary>
    public static readonly Refusal NotOnRoster = new(
        RefusalKind.NotFound,
        "not-on-roster",
        "She is not on this roster. Notes are about people with a seat in the session."
    );

    /// <summary>There is no such note, or not for this reader.</summary>
    public static readonly Refusal NoSuchNote = new(
        RefusalKind.NotFound,
        "no-such-note",
        "There is no such note, or it was withdrawn."
    );

    /// <summary>There is one of the same writer already.</summary>
    public static readonly Refusal Exists = new(
        RefusalKind.Conflict,
        "note-exists",
        "You have a note about her in this class already. Load it and change that one."
    );

    /// <summary>It was changed since it was loaded.</summary>
    public static readonly Refusal Changed = new(
        RefusalKind.Conflict,
        "note-changed",
        "This note was changed elsewhere since you loaded it. Compare the two, then save again."
    );

    /// <summary>Somebody else wrote it.</summary>
    public static readonly Refusal NotTheWriter = new(
        RefusalKind.NotAllowed,
        "not-the-writer",
        "Only its writer changes a note. You may withdraw it."
    );

    private static Refusal Closed(LocalDate on) =>
        new(
            RefusalKind.Conflict,
            "note-closed",
            $"Notes about this class could be written until {Wording.Date(LastDay(on))}. Tell the owner what she should know."
        );
}
