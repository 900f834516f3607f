namespace Studio.Core.Timetable;

/// <summary>What each instructor teaches in a span, today and then.</summary>
internal static class TermLoads
{
    /// <summary>Everybody who teaches in the span, by name.</summary>
    public static IReadOnlyList<TermLoad> Of(TermQuestion question, TermChoices choices, int?[] who)
    {
        var before = question.Sessions.ToLookup(s => s.InstructorId);
        var after = TermAssignment.After(choices, who).ToLookup(s => s.InstructorId);
        return
        [
            .. choices
                .People.Select(p => new TermLoad(
                    p.Id,
                    p.Name,
                    Taught(p, before[p.Id], question),
                    Taught(p, after[p.Id], question)
                ))
                .Where(l => l.Before.Sessions > 0 || l.After.Sessions > 0)
                .OrderBy(l => l.Name, StringComparer.Ordinal)
                .ThenBy(l => l.InstructorId),
        ];
    }

    // A week that the span cuts counts whole: what was agreed is for all of it.
    private static Taught Taught(
        Teacher teacher,
        IEnumerable<PlacedSession> hers,
        TermQuestion question
    )
    {
        var all = hers.ToList();
        var within = all.FindAll(s => question.From <= s.On && s.On <= question.To);
        var weeks = within.Select(s => TimetableChecks.WeekOf(s.On)).ToHashSet();
        return new(
            within.Count,
            within.Sum(s => s.Minutes),
            all.GroupBy(s => TimetableChecks.WeekOf(s.On))
                .Count(w =>
                    weeks.Contains(w.Key) && w.Sum(s => s.Minutes) > teacher.WeeklyMinutesMost
                )
        );
    }
}
