namespace Studio.Core.Timetable;

/// <summary>
/// Gives all sessions of a term to instructors: within every rule of <see cref="TimetableChecks"/> about people, then by
/// the aims of <see cref="TermAim"/>, each before all after it.
/// </summary>
public static class TermAssignment
{
    /// <summary>
    /// The best way to staff the span. Ended early it gives the best found so far; left to end by itself it gives the same
    /// for the same question, in whatever order its sessions are given. What cannot be staffed, and pins that contradict
    /// each other, are told of with reasons; the rest is solved all the same.
    /// </summary>
    /// <param name="question">The plan as it stands, and what of it may change.</param>
    /// <param name="tell">Told how far it has come; may be called often.</param>
    /// <param name="stop">Ends it early.</param>
    public static TermPlan Solve(
        TermQuestion question,
        Action<TermProgress>? tell = null,
        CancellationToken stop = default
    )
    {
        var choices = new TermChoices(question);
        var measure = new TermMeasure(choices, question.Bends);
        var all = Enumerable.Range(0, choices.Free.Count).ToList();
        var start = TermSettling.Settle(choices, question.Bends, [.. all.Select(choices.Today)]);
        var (who, proven) = Best(question, choices, measure, start, tell, stop);
        return new TermPlan
        {
            Steps = Steps(question, choices, who),
            Loads = TermLoads.Of(question, choices, who),
            Unstaffed = TermReasons.Of(question, choices, who),
            Contradictions = Contradictions(question, choices),
            Aims =
            [
                .. TermModel
                    .Aims(question.Bends)
                    .Select(aim => new TermAimReached(
                        aim,
                        measure.Of(aim, all, who),
                        proven.Contains(aim)
                    )),
            ],
            Stopped = stop.IsCancellationRequested,
        };
    }

    // Each week is solved as if it stood alone. Where the plans of two then lie too near to each other (a late Sunday, an
    // early Monday), these weeks are solved again as one, and so on. What is best for the weeks apart is best for them
    // together once nothing is left between them, so this loses nothing.
    private static (int?[] Who, IReadOnlySet<TermAim> Proven) Best(
        TermQuestion question,
        TermChoices choices,
        TermMeasure measure,
        int?[] start,
        Action<TermProgress>? tell,
        CancellationToken stop
    )
    {
        var parts = measure.Weeks.ConvertAll(w => w.Sessions);
        var solved = new Dictionary<List<int>, IReadOnlyDictionary<TermAim, bool>>();
        var who = start.ToArray();
        // Of each part that was solved, how many sessions have nobody at least.
        var atLeast = new Dictionary<List<int>, int>();
        while (!stop.IsCancellationRequested)
        {
            foreach (var (part, at) in parts.Select((p, at) => (p, at + 1)))
            {
                if (solved.ContainsKey(part) || stop.IsCancellationRequested)
                    continue;
                var others = parts.FindAll(p => p != part);
                solved[part] = new TermModel(choices, measure, question.Bends, part).Solve(
                    who,
                    (aim, nobody, least) =>
                    {
                        atLeast[part] = least;
                        tell?.Invoke(
                            new(
                                aim,
                                at,
                                parts.Count,
                                nobody + others.Sum(p => p.Count(s => who[s] is null)),
                                parts.Sum(p =>
                                    atLeast.GetValueOrDefault(
                                        p,
                                        p.Count(s => !choices.Who(s).Any())
                                    )
                                )
                            )
                        );
                    },
                    stop
                );
            }

            if (Together(choices, parts, who) is not { } joined)
                break;
            if (stop.IsCancellationRequested)
                break;
            // Better than each alone has found they cannot be: start from what both keep.
            who = TermSettling.Settle(choices, question.Bends, who);
            parts = joined;
        }

        // Nothing to mend when it ended by itself.
        who = TermSettling.Settle(choices, question.Bends, who);
        return (
            who,
            TermModel
                .Aims(question.Bends)
                .Where(aim =>
                    parts.TrueForAll(p =>
                        solved.TryGetValue(p, out var aims)
                        && TermModel
                            .Aims(question.Bends)
                            .TakeWhile(a => a <= aim)
                            .All(a => aims.GetValueOrDefault(a))
                    )
                )
                .ToHashSet()
        );
    }

    // The parts with those joined between which somebody would teach two sessions that lie too near; null: none.
    private static List<List<int>>? Together(TermChoices choices, List<List<int>> parts, int?[] who)
    {
        var partOf = parts
            .SelectMany((p, at) => p.Select(s => (s, at)))
            .ToDictionary(s => s.s, s => s.at);
        var root = Enumerable.Range(0, parts.Count).ToArray();
        int Root(int of) => root[of] == of ? of : root[of] = Root(root[of]);
        foreach (var s in partOf.Keys)
        foreach (var near in choices.Near[s])
            if (
                who[s] is { } p
                && who[near.Session] == p
                && (choices.Forbids(near, p) || choices.ShortRest(near, p))
                && Root(partOf[s]) != Root(partOf[near.Session])
            )
                root[Math.Max(Root(partOf[s]), Root(partOf[near.Session]))] = Math.Min(
                    Root(partOf[s]),
                    Root(partOf[near.Session])
                );
        var groups = Enumerable.Range(0, parts.Count).GroupBy(Root).ToList();
        return groups.Count == parts.Count
            ? null
            : groups.ConvertAll(g =>
                g.Count() == 1 ? parts[g.Key] : g.SelectMany(at => parts[at]).Order().ToList()
            );
    }

    private static List<TermStep> Steps(TermQuestion question, TermChoices choices, int?[] who)
    {
        var after = After(choices, who).ToDictionary(s => s.Key, s => s.InstructorId);
        var free = choices.Free.Select(s => s.Key).ToHashSet();
        return
        [
            .. question
                .Sessions.Where(s => question.From <= s.On && s.On <= question.To)
                .OrderBy(s => s.StartsAt)
                .ThenBy(s => s.Key)
                .Select(s => new TermStep(s, after[s.Key], free.Contains(s.Key))),
        ];
    }

    /// <summary>All sessions as they would be.</summary>
    internal static IEnumerable<PlacedSession> After(TermChoices choices, int?[] who) =>
        choices.Fixed.Concat(
            choices.Free.Select(
                (s, at) => s with { InstructorId = who[at] is { } p ? choices.People[p].Id : null }
            )
        );

    private static List<Conflict> Contradictions(TermQuestion question, TermChoices choices) =>
        [
            .. TimetableChecks
                .Of(choices.Fixed, question.Facts)
                .Where(c =>
                    c.InstructorId is not null
                    && !question.Bends.Allow(c.Kind)
                    && c.Sessions.Any(question.Pins.ContainsKey)
                ),
        ];
}
