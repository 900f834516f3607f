using NodaTime;

namespace Studio.Core.Timetable;

/// <summary>A session as a draft has it.</summary>
public sealed record DraftSession
{
    /// <summary>Key of the row.</summary>
    public long Id { get; init; }

    /// <summary>The session it is a copy of; null for one that the draft adds.</summary>
    public long? SessionId { get; init; }

    /// <summary>How often that session had changed when it was copied.</summary>
    public int? BasedOn { get; init; }

    /// <summary>The series it comes from.</summary>
    public long? SeriesId { get; init; }

    /// <summary>The date the series' rule gave.</summary>
    public LocalDate? SeriesOn { get; init; }

    /// <summary>The class.</summary>
    public long ClassId { get; init; }

    /// <summary>The room.</summary>
    public long RoomId { get; init; }

    /// <summary>Who teaches it; null when nobody does yet.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Its date, where it is held.</summary>
    public LocalDate On { get; init; }

    /// <summary>Start by the clock of the room's location.</summary>
    public LocalTime StartsLocal { get; init; }

    /// <summary>Length in minutes.</summary>
    public int Minutes { get; init; }

    /// <summary>Seats.</summary>
    public int Seats { get; init; }

    /// <summary>Whether it is held; false calls the session off once the draft is published.</summary>
    public bool IsHeld { get; init; } = true;

    /// <summary>The key by which checks know it: the session's, or for a new one the row's as a negative number.</summary>
    public long Key => SessionId ?? -Id;

    /// <summary>Whether it stands as another row does, whatever it is a copy of.</summary>
    public bool StandsAs(DraftSession other) =>
        IsHeld == other.IsHeld
        && (
            !IsHeld
            || (ClassId, RoomId, InstructorId, On, StartsLocal, Minutes, Seats)
                == (
                    other.ClassId,
                    other.RoomId,
                    other.InstructorId,
                    other.On,
                    other.StartsLocal,
                    other.Minutes,
                    other.Seats
                )
        );
}

/// <summary>What can be done with a draft without asking anybody.</summary>
public static class DraftRules
{
    /// <summary>The longest span of a draft, in days.</summary>
    public const int MostDays = 26 * 7;

    /// <summary>
    /// Lays the sessions of one week onto another: same weekday, hour, room, class and instructor. One that stands there
    /// already, with the same class in the same room at the same hour, is left out.
    /// </summary>
    /// <param name="rows">All rows of the draft.</param>
    /// <param name="fromMonday">Monday of the week that is copied.</param>
    /// <param name="toMonday">Monday of the week it is laid on.</param>
    public static IReadOnlyList<DraftSession> CopyWeek(
        IEnumerable<DraftSession> rows,
        LocalDate fromMonday,
        LocalDate toMonday
    )
    {
        var held = rows.Where(r => r.IsHeld).ToList();
        var there = held.Select(Place).ToHashSet();
        return
        [
            .. held.Where(r => fromMonday <= r.On && r.On < fromMonday.PlusWeeks(1))
                .OrderBy(r => (r.On, r.StartsLocal, r.Id))
                .Select(r =>
                    r with
                    {
                        Id = 0,
                        SessionId = null,
                        BasedOn = null,
                        SeriesId = null,
                        SeriesOn = null,
                        On = toMonday.PlusDays(Period.DaysBetween(fromMonday, r.On)),
                    }
                )
                .Where(r => !there.Contains(Place(r))),
        ];
    }

    /// <summary>
    /// Whether somebody changed the session since it was copied, and other than the draft would: it has to be said which
    /// of the two holds.
    /// </summary>
    /// <param name="row">The draft's row.</param>
    /// <param name="live">The session as it stands; its <see cref="DraftSession.BasedOn"/> is its count of changes now.</param>
    public static bool ChangedMeanwhile(DraftSession row, DraftSession live) =>
        row.BasedOn != live.BasedOn && !row.StandsAs(live);

    private static (long, long, LocalDate, LocalTime) Place(DraftSession row) =>
        (row.ClassId, row.RoomId, row.On, row.StartsLocal);
}
