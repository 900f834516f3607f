using NodaTime;
using NodaTime.Calendars;
using NodaTime.Text;
using Studio.Core.Pregnancies;

namespace Studio.Core.Timetable;

/// <summary>Finds every conflict of a timetable and names it.</summary>
public static class TimetableChecks
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    /// <summary>
    /// Every conflict among these sessions, in the order of time. Each is checked on its own date, where it is held;
    /// weeks are ISO weeks of that date.
    /// </summary>
    /// <param name="sessions">Those that are held; to judge one, give all of its week and the days about it.</param>
    /// <param name="facts">What is known of people and places.</param>
    public static IReadOnlyList<Conflict> Of(
        IEnumerable<PlacedSession> sessions,
        TimetableFacts facts
    )
    {
        var inOrder = sessions.OrderBy(s => s.StartsAt).ThenBy(s => s.Key).ToList();
        var found = new List<Conflict>();
        foreach (var room in inOrder.GroupBy(s => s.RoomId))
            found.AddRange(InOneRoom([.. room]));
        foreach (var session in inOrder)
            found.AddRange(Alone(session, facts));
        foreach (
            var hers in inOrder
                .Where(s => s.InstructorId is not null)
                .GroupBy(s => s.InstructorId!.Value)
        )
            if (facts.Teachers.TryGetValue(hers.Key, out var teacher))
                found.AddRange(OfOneTeacher(teacher, [.. hers], facts));

        var at = inOrder
            .Select((s, index) => (s.Key, index))
            .ToDictionary(s => s.Key, s => s.index);
        return [.. found.OrderBy(c => at[c.Sessions[0]]).ThenBy(c => c.Kind)];
    }

    /// <summary>What would stand against her teaching one session beside those she teaches already; empty: nothing.</summary>
    /// <param name="teacher">She.</param>
    /// <param name="session">The session; who teaches it now does not matter.</param>
    /// <param name="hers">What she teaches in that week and on the days about it.</param>
    /// <param name="facts">What is known of people and places.</param>
    public static IReadOnlyList<Conflict> WhyNot(
        Teacher teacher,
        PlacedSession session,
        IEnumerable<PlacedSession> hers,
        TimetableFacts facts
    ) =>
        [
            .. OfOneTeacher(
                    teacher,
                    [
                        .. hers.Where(s => s.Key != session.Key)
                            .Append(session with { InstructorId = teacher.Id })
                            .OrderBy(s => s.StartsAt)
                            .ThenBy(s => s.Key),
                    ],
                    facts
                )
                .Where(c => c.Sessions.Contains(session.Key)),
        ];

    private static IEnumerable<Conflict> InOneRoom(List<PlacedSession> inOrder)
    {
        foreach (var (first, second) in Overlapping(inOrder))
            yield return new Conflict(
                ConflictKind.RoomTaken,
                [first.Key, second.Key],
                null,
                $"{first.RoomName} would hold {Named(first)} and {Named(second)} at once on {Day(second)}."
            );
    }

    private static IEnumerable<Conflict> Alone(PlacedSession session, TimetableFacts facts)
    {
        if (session.Seats > session.RoomSeats)
            yield return About(
                ConflictKind.RoomTooSmall,
                session,
                $"{session.RoomName} has room for {session.RoomSeats}, and {Named(session)} has {session.Seats} seats."
            );
        if (session.SeatsTaken > session.Seats)
            yield return About(
                ConflictKind.SeatsTaken,
                session,
                $"{session.SeatsTaken} people have a seat in {Named(session)} on {Day(session)}; {session.Seats} are too few."
            );
        foreach (var shut in facts.Shut)
            if (
                shut.LocationId == session.LocationId
                && shut.From <= session.On
                && session.On <= shut.To
            )
                yield return About(
                    ConflictKind.LocationShut,
                    session,
                    $"{session.LocationName} is shut on {Day(session)}: {shut.Name}."
                );
        if (session.PlanMinutes > session.Minutes)
            yield return About(
                ConflictKind.ShorterThanPlan,
                session,
                $"The plan of {session.ClassName} takes {session.PlanMinutes} minutes, and {session.Minutes} are left for it."
            );
    }

    private static IEnumerable<Conflict> OfOneTeacher(
        Teacher teacher,
        List<PlacedSession> inOrder,
        TimetableFacts facts
    )
    {
        Conflict Hers(ConflictKind kind, IEnumerable<PlacedSession> sessions, string words) =>
            new(kind, [.. sessions.Select(s => s.Key)], teacher.Id, words);

        foreach (var (first, second) in Overlapping(inOrder))
            yield return Hers(
                ConflictKind.InstructorTaken,
                [first, second],
                $"{teacher.Name} would teach {Named(first)} and {Named(second)} at once on {Day(second)}."
            );
        foreach (var (first, second, needed) in TooFarApart(inOrder, facts))
            yield return Hers(
                ConflictKind.NoTimeToTravel,
                [first, second],
                $"{teacher.Name} needs {needed} minutes from {first.LocationName} to {second.LocationName}, and {(int)(second.StartsAt - first.EndsAt).TotalMinutes} lie between {Named(first)} and {Named(second)} on {Day(second)}."
            );

        foreach (var session in inOrder)
        {
            if (teacher.LeftOn is { } left && left <= session.On)
                yield return Hers(
                    ConflictKind.HasLeft,
                    [session],
                    $"{teacher.Name} no longer works here on {Day(session)}."
                );
            if (!teacher.Holds(session.NeedsQualification, session.On))
                yield return Hers(
                    ConflictKind.NotQualified,
                    [session],
                    $"{teacher.Name} has no valid {session.NeedsQualification} qualification on {Day(session)}, which {session.ClassName} needs."
                );
            if (teacher.Leave.Any(l => l.From <= session.On && session.On <= l.To))
                yield return Hers(
                    ConflictKind.OnLeave,
                    [session],
                    $"{teacher.Name} is away on {Day(session)}."
                );
            if (
                teacher.Availability.Count > 0
                && !teacher.Availability.Any(h => Covers(h, session))
            )
                yield return Hers(
                    ConflictKind.OutsideHours,
                    [session],
                    $"{Named(session)} on {Day(session)} lies outside the hours {teacher.Name} gave."
                );
        }

        if (teacher.WeeklyMinutesMost is { } most)
            foreach (var week in inOrder.GroupBy(s => WeekOf(s.On)))
                if (week.Sum(s => s.Minutes) is var minutes && minutes > most)
                    yield return Hers(
                        ConflictKind.TooManyHours,
                        week,
                        $"{teacher.Name} would teach {Hours(minutes)} in the week of {Wording.Date(week.Key)}; {Hours(most)} were agreed."
                    );

        var rest = teacher.RestMinutesLeast ?? facts.RestMinutesLeast;
        foreach (var (last, first) in DayToDay(inOrder))
            if ((first.StartsAt - last.EndsAt).TotalMinutes is var between && between < rest)
                yield return Hers(
                    ConflictKind.TooLittleRest,
                    [last, first],
                    $"{teacher.Name} would have {Hours((int)between)} between {Named(last)} and {Named(first)} on {Day(first)}; {Hours(rest)} are due."
                );
    }

    /// <summary>The Monday of a date's ISO week.</summary>
    public static LocalDate WeekOf(LocalDate day) =>
        WeekYearRules.Iso.GetLocalDate(
            WeekYearRules.Iso.GetWeekYear(day),
            WeekYearRules.Iso.GetWeekOfWeekYear(day),
            IsoDayOfWeek.Monday
        );

    // Every pair, not neighbours only: a long session may lie across two short ones.
    private static IEnumerable<(PlacedSession First, PlacedSession Second)> Overlapping(
        List<PlacedSession> inOrder
    )
    {
        for (var i = 0; i < inOrder.Count; i++)
        for (var j = i + 1; j < inOrder.Count && inOrder[j].StartsAt < inOrder[i].EndsAt; j++)
            if (inOrder[i].Overlaps(inOrder[j]))
                yield return (inOrder[i], inOrder[j]);
    }

    private static IEnumerable<(PlacedSession First, PlacedSession Second, int Needed)> TooFarApart(
        List<PlacedSession> inOrder,
        TimetableFacts facts
    )
    {
        if (facts.Travel.Count == 0)
            yield break;
        var longest = Duration.FromMinutes(facts.Travel.Values.Max());
        for (var i = 0; i < inOrder.Count; i++)
        for (
            var j = i + 1;
            j < inOrder.Count && inOrder[j].StartsAt < inOrder[i].EndsAt + longest;
            j++
        )
        {
            var (first, second) = (inOrder[i], inOrder[j]);
            if (
                first.EndsAt <= second.StartsAt
                && facts.Travel.TryGetValue((first.LocationId, second.LocationId), out var needed)
                && (second.StartsAt - first.EndsAt).TotalMinutes < needed
            )
                yield return (first, second, needed);
        }
    }

    // The last session of a day of hers with the first of the next day on which she teaches.
    private static IEnumerable<(PlacedSession Last, PlacedSession First)> DayToDay(
        List<PlacedSession> inOrder
    )
    {
        var days = inOrder.GroupBy(s => s.On).OrderBy(d => d.Key).ToList();
        return days.Zip(
            days.Skip(1),
            (day, next) => (day.MaxBy(s => s.EndsAt)!, next.MinBy(s => s.StartsAt)!)
        );
    }

    private static bool Covers(WeeklyHours hours, PlacedSession session) =>
        hours.Weekday == session.On.DayOfWeek
        && (hours.LocationId is null || hours.LocationId == session.LocationId)
        && hours.From <= session.StartsLocal
        && session.StartsLocal <= session.EndsLocal
        && session.EndsLocal <= hours.To;

    private static Conflict About(ConflictKind kind, PlacedSession session, string words) =>
        new(kind, [session.Key], null, words);

    private static string Named(PlacedSession session) =>
        $"{session.ClassName} at {Clock.Format(session.StartsLocal)}";

    private static string Day(PlacedSession session) =>
        $"{session.On.DayOfWeek} {Wording.Date(session.On)}";

    private static string Hours(int minutes) =>
        minutes % 60 == 0 ? $"{minutes / 60} h" : $"{minutes / 60} h {minutes % 60:00}";
}
