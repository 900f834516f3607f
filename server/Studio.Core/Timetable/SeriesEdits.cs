using NodaTime;

namespace Studio.Core.Timetable;

/// <summary>A series as it is planned.</summary>
public sealed record SeriesShape
{
    /// <summary>The room.</summary>
    public required long RoomId { get; init; }

    /// <summary>Who teaches it; null when nobody does yet.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Seats.</summary>
    public required int Seats { get; init; }

    /// <summary>Length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>The day its rule counts from: its first date.</summary>
    public required LocalDate StartsOn { get; init; }

    /// <summary>Start by the wall clock.</summary>
    public required LocalTime StartsLocal { get; init; }

    /// <summary>The rule.</summary>
    public required SeriesRule Rule { get; init; }

    /// <summary>Dates of the rule on which nothing is held.</summary>
    public IReadOnlyList<LocalDate> Exceptions { get; init; } = [];

    /// <summary>Its dates from a day to a last one, exceptions left out.</summary>
    public IEnumerable<LocalDate> Dates(LocalDate from, LocalDate to)
    {
        var skipped = Exceptions.ToHashSet();
        return Rule.Dates(StartsOn, from, to).Where(d => !skipped.Contains(d));
    }
}

/// <summary>A session of a series, as it stands or as it should.</summary>
public sealed record SeriesSession
{
    /// <summary>The session; null: a new one.</summary>
    public long? Id { get; init; }

    /// <summary>The date the rule gave: its recurrence id.</summary>
    public required LocalDate SeriesOn { get; init; }

    /// <summary>Its own date.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Start by the wall clock.</summary>
    public required LocalTime StartsLocal { get; init; }

    /// <summary>Length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>The room.</summary>
    public required long RoomId { get; init; }

    /// <summary>Who teaches it.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Seats.</summary>
    public required int Seats { get; init; }

    /// <summary>Whether it is held.</summary>
    public bool IsHeld { get; init; } = true;

    /// <summary>It has begun: what was taught stays as it was.</summary>
    public bool HasBegun { get; init; }

    /// <summary>The session of a series on one of its dates.</summary>
    public static SeriesSession Of(SeriesShape series, LocalDate date) =>
        new()
        {
            SeriesOn = date,
            On = date,
            StartsLocal = series.StartsLocal,
            Minutes = series.Minutes,
            RoomId = series.RoomId,
            InstructorId = series.InstructorId,
            Seats = series.Seats,
        };
}

/// <summary>On what day a change is made, and how far.</summary>
public sealed record SeriesEditing
{
    /// <summary>The first date of the rule that is changed.</summary>
    public required LocalDate From { get; init; }

    /// <summary>The last day that is laid out.</summary>
    public required LocalDate LaidOutTo { get; init; }

    /// <summary>What the clock on the location's wall shows now.</summary>
    public required LocalDateTime Now { get; init; }

    /// <summary>Days on which the location is shut.</summary>
    public IReadOnlySet<LocalDate> Shut { get; init; } = new HashSet<LocalDate>();

    /// <summary>What was changed by hand on single dates follows as well.</summary>
    public bool ByHandToo { get; init; }
}

/// <summary>What comes of a change of a series.</summary>
/// <param name="Ended">The series as it ends; null when it goes on itself.</param>
/// <param name="Series">The series as it goes on: itself, or the one that continues it.</param>
/// <param name="Sessions">How the sessions from there on should stand, those that stay as they are among them.</param>
public sealed record SeriesEdited(
    SeriesShape? Ended,
    SeriesShape Series,
    IReadOnlyList<SeriesSession> Sessions
);

/// <summary>Changes a series: all that lies ahead, or from one of its dates on.</summary>
public static class SeriesEdits
{
    /// <summary>
    /// The whole series from now on: its sessions ahead follow. What was held stays as it was, and so does what was changed
    /// on a single date by hand, unless it is to follow too.
    /// </summary>
    /// <param name="series">As it is.</param>
    /// <param name="to">As it should be.</param>
    /// <param name="sessions">Its sessions.</param>
    /// <param name="how">When and how far.</param>
    public static SeriesEdited All(
        SeriesShape series,
        SeriesShape to,
        IReadOnlyList<SeriesSession> sessions,
        SeriesEditing how
    ) => new(null, to, Follow(series, to, sessions, how));

    /// <summary>
    /// From one of its dates on: the series ends before it, and another one goes on from there. Where it has no date before,
    /// it is changed itself.
    /// </summary>
    /// <param name="series">As it is.</param>
    /// <param name="to">As it should be from there on; its first date is not before <see cref="SeriesEditing.From"/>.</param>
    /// <param name="sessions">Its sessions.</param>
    /// <param name="how">When and how far.</param>
    public static SeriesEdited FromHere(
        SeriesShape series,
        SeriesShape to,
        IReadOnlyList<SeriesSession> sessions,
        SeriesEditing how
    )
    {
        if (series.Rule.First(series.StartsOn) is not { } first || first >= how.From)
            return All(series, to, sessions, how);
        var ended = series with
        {
            Rule = EndingBefore(series.Rule, how.From),
            Exceptions = [.. series.Exceptions.Where(e => e < how.From)],
        };
        return new SeriesEdited(ended, to, Follow(series, to, sessions, how));
    }

    /// <summary>The same rule from one of its dates on: where it counts its dates, those that are left.</summary>
    public static SeriesRule Rest(SeriesShape series, LocalDate from) =>
        series.Rule.Count is { } count
            ? series.Rule with
            {
                Count = Math.Max(
                    1,
                    count
                        - series
                            .Rule.Dates(series.StartsOn, series.StartsOn, from.PlusDays(-1))
                            .Count()
                ),
            }
            : series.Rule;

    /// <summary>A rule that gives no date from a day on.</summary>
    public static SeriesRule EndingBefore(SeriesRule rule, LocalDate from) =>
        rule with
        {
            Count = null,
            Until =
                rule.Until is { } until && until < from && rule.Count is null
                    ? until
                    : from.PlusDays(-1),
        };

    private static List<SeriesSession> Follow(
        SeriesShape series,
        SeriesShape to,
        IReadOnlyList<SeriesSession> sessions,
        SeriesEditing how
    )
    {
        var ahead = sessions
            .Where(s => !s.HasBegun && s.SeriesOn >= how.From)
            .OrderBy(s => s.SeriesOn)
            .ToList();
        var last = ahead.Select(s => s.SeriesOn).Append(how.LaidOutTo).Max();
        var dates = to.Dates(how.From, last).ToHashSet();
        var begun = sessions.Where(s => s.HasBegun).Select(s => s.SeriesOn).ToHashSet();

        var outcome = new List<SeriesSession>();
        var gone = new List<SeriesSession>();
        foreach (var session in ahead)
            if (dates.Contains(session.SeriesOn))
                outcome.Add(Following(series, to, session, session.SeriesOn, how));
            else
                gone.Add(session);

        var taken = ahead.Select(s => s.SeriesOn).ToHashSet();
        var free = dates
            .Where(d => !taken.Contains(d) && !begun.Contains(d) && !how.Shut.Contains(d))
            .Where(d => d + to.StartsLocal > how.Now)
            .Order()
            .ToList();
        // Who is booked on a Tuesday goes on to that week's Wednesday, rather than lose her seat.
        foreach (var session in gone)
        {
            var week = TimetableChecks.WeekOf(session.SeriesOn);
            var next = session.IsHeld
                ? free.Cast<LocalDate?>()
                    .FirstOrDefault(d => TimetableChecks.WeekOf(d!.Value) == week)
                : null;
            if (next is { } date)
            {
                free.Remove(date);
                outcome.Add(Following(series, to, session, date, how));
            }
            else
            {
                outcome.Add(session with { IsHeld = false });
            }
        }

        outcome.AddRange(
            free.Where(d => d <= how.LaidOutTo).Select(date => SeriesSession.Of(to, date))
        );
        return [.. outcome.OrderBy(s => s.SeriesOn).ThenBy(s => s.Id)];
    }

    private static SeriesSession Following(
        SeriesShape series,
        SeriesShape to,
        SeriesSession session,
        LocalDate date,
        SeriesEditing how
    )
    {
        T Next<T>(T now, T was, T next) =>
            how.ByHandToo || EqualityComparer<T>.Default.Equals(now, was) ? next : now;

        return session with
        {
            SeriesOn = date,
            On = Next(session.On, session.SeriesOn, date),
            StartsLocal = Next(session.StartsLocal, series.StartsLocal, to.StartsLocal),
            Minutes = Next(session.Minutes, series.Minutes, to.Minutes),
            RoomId = Next(session.RoomId, series.RoomId, to.RoomId),
            InstructorId = Next(session.InstructorId, series.InstructorId, to.InstructorId),
            Seats = Next(session.Seats, series.Seats, to.Seats),
            IsHeld = session.IsHeld || (how.ByHandToo && !how.Shut.Contains(date)),
        };
    }
}
