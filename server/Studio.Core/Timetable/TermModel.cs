using Google.OrTools.Sat;

namespace Studio.Core.Timetable;

/// <summary>
/// A part of a term as a model for CP-SAT. The aims are sought one after another, each kept while the next is sought.
/// </summary>
internal sealed class TermModel
{
    private readonly TermChoices choices;
    private readonly TermMeasure measure;
    private readonly TermBends bends;
    private readonly List<int> part;
    private readonly HashSet<int> within;
    private readonly CpModel model = new();
    private readonly Dictionary<int, BoolVar> nobody = [];
    private readonly Dictionary<(int Session, int Person), BoolVar> teaches = [];

    /// <param name="choices">Who could teach what.</param>
    /// <param name="measure">How good a way of staffing is.</param>
    /// <param name="bends">What may be bent.</param>
    /// <param name="part">The free sessions of this part: whole weeks.</param>
    public TermModel(TermChoices choices, TermMeasure measure, TermBends bends, List<int> part)
    {
        (this.choices, this.measure, this.bends, this.part) = (choices, measure, bends, part);
        within = [.. part];
        foreach (var s in part)
        {
            nobody[s] = model.NewBoolVar($"nobody {s}");
            foreach (var p in choices.Who(s))
                teaches[(s, p)] = model.NewBoolVar($"{s} by {p}");
            model.AddExactlyOne(choices.Who(s).Select(p => teaches[(s, p)]).Append(nobody[s]));
        }

        NotAtOnce();
        NotTooNear();
        if (!bends.WeeklyMinutes)
            foreach (var (person, left, hers) in BoundWeeks())
                model.Add(Minutes(person, hers) <= left);
    }

    /// <summary>The aims there are to seek, in their order.</summary>
    public static IReadOnlyList<TermAim> Aims(TermBends bends) =>
        bends == new TermBends()
            ? [TermAim.Unstaffed, TermAim.Changes, TermAim.Wishes, TermAim.Load]
            : Enum.GetValues<TermAim>();

    /// <summary>Staffs the part as well as can be.</summary>
    /// <param name="who">A way of staffing that breaks no rule; made better in place.</param>
    /// <param name="tell">Told of each aim as it is sought and of each better way of staffing: sessions with nobody, and how many at least.</param>
    /// <param name="stop">Ends it early; what was found by then stays.</param>
    /// <returns>For each aim that was reached whether nothing better exists.</returns>
    public Dictionary<TermAim, bool> Solve(
        int?[] who,
        Action<TermAim, int, int> tell,
        CancellationToken stop
    )
    {
        var proven = new Dictionary<TermAim, bool>();
        var atLeast = (int)AtBest(TermAim.Unstaffed);
        foreach (var aim in Aims(bends))
        {
            if (stop.IsCancellationRequested)
                break;
            tell(aim, Nobody(who), atLeast);
            var goal = Goal(aim);
            proven[aim] =
                Cost(aim, who) == AtBest(aim)
                || Search(
                    goal,
                    who,
                    (value, bound) =>
                    {
                        if (aim == TermAim.Unstaffed)
                            tell(aim, value, atLeast = Math.Max(atLeast, bound));
                    },
                    stop
                );
            model.Add(goal <= Cost(aim, who));
            if (aim == TermAim.Unstaffed && proven[aim])
                atLeast = Nobody(who);
        }

        tell(TermAim.Load, Nobody(who), atLeast);
        return proven;
    }

    // One worker, one seed, and a bound on work done besides the token: the same question has the same answer anywhere.
    private bool Search(
        LinearExpr goal,
        int?[] who,
        Action<int, int> better,
        CancellationToken stop
    )
    {
        model.Minimize(goal);
        model.ClearHints();
        foreach (var s in part)
        {
            model.AddHint(nobody[s], who[s] is null ? 1 : 0);
            foreach (var p in choices.Who(s))
                model.AddHint(teaches[(s, p)], who[s] == p ? 1 : 0);
        }

        using var solver = new CpSolver
        {
            StringParameters =
                $"num_workers:1 random_seed:7 max_deterministic_time:{6 + (part.Count / 30)} log_search_progress:false",
        };
        using var watch = new Watch(better, stop);
        using var stopping = stop.Register(solver.StopSearch);
        var status = solver.Solve(model, watch);
        if (status is CpSolverStatus.Optimal or CpSolverStatus.Feasible)
            foreach (var s in part)
                who[s] = choices
                    .Who(s)
                    .Where(p => solver.BooleanValue(teaches[(s, p)]))
                    .Select(p => (int?)p)
                    .SingleOrDefault();
        else if (status is not CpSolverStatus.Unknown)
            throw new InvalidOperationException(
                $"There is a way to staff it, and the search ended with {status}."
            );
        return status is CpSolverStatus.Optimal;
    }

    private int Nobody(int?[] who) => (int)measure.Of(TermAim.Unstaffed, part, who);

    // Wishes are the one aim of which more is better.
    private long Cost(TermAim aim, int?[] who) =>
        aim is TermAim.Wishes ? -measure.Of(aim, part, who) : measure.Of(aim, part, who);

    // What can be said without a search.
    private long AtBest(TermAim aim) =>
        aim switch
        {
            TermAim.Unstaffed => part.Count(s => !choices.Who(s).Any()),
            TermAim.Bent or TermAim.Load => 0,
            TermAim.Changes => part.Count(s =>
                choices.Free[s].InstructorId is not null
                && !(choices.Today(s) is { } p && choices.Can[s, p])
            ),
            TermAim.Wishes => -part.Sum(s =>
                choices.Who(s).Select(p => measure.Wish[s, p]).Append(0).Max()
            ),
        };

    private LinearExpr Goal(TermAim aim) =>
        aim switch
        {
            TermAim.Unstaffed => LinearExpr.Sum(nobody.Values),
            TermAim.Bent => Bent(),
            TermAim.Changes => LinearExpr.Sum(
                part.Where(s => choices.Today(s) is { } p && choices.Can[s, p])
                    .Select(s => 1 - teaches[(s, choices.Today(s)!.Value)])
                    .Append(LinearExpr.Constant(AtBest(TermAim.Changes)))
            ),
            TermAim.Wishes => Weighted(t => -measure.Wish[t.Session, t.Person]),
            TermAim.Load => Uneven(),
        };

    private LinearExpr Weighted(Func<(int Session, int Person), int> weight)
    {
        var some = teaches.Where(t => weight(t.Key) != 0).ToList();
        return LinearExpr.Sum(
            some.Select(t => t.Value * weight(t.Key)).Append(LinearExpr.Constant(0))
        );
    }

    private LinearExpr Minutes(int person, IEnumerable<int> hers) =>
        LinearExpr.WeightedSum(
            hers.Select(s => teaches[(s, person)]),
            hers.Select(s => (long)choices.Free[s].Minutes)
        );

    // Whoever has more on offer in a week than was agreed.
    private IEnumerable<(int Person, int Left, List<int> Hers)> BoundWeeks() =>
        from week in measure.Weeks
        where within.Contains(week.Sessions[0])
        from person in Enumerable.Range(0, choices.People.Count)
        let left = choices.MinutesLeft(person, week.Monday)
        let hers = week.Sessions.FindAll(s => choices.Can[s, person])
        where hers.Sum(s => (long)choices.Free[s].Minutes) > left
        select (person, left, hers);

    // Whatever is held at the moment a session begins is one choice for each person.
    private void NotAtOnce()
    {
        foreach (var start in part.Select(s => choices.Free[s].StartsAt).Distinct())
        {
            var held = part.FindAll(s =>
                choices.Free[s].StartsAt <= start && start < choices.Free[s].EndsAt
            );
            for (var p = 0; p < choices.People.Count; p++)
                if (held.FindAll(s => choices.Can[s, p]) is { Count: > 1 } hers)
                    model.AddAtMostOne(hers.Select(s => teaches[(s, p)]));
        }
    }

    // Two locations too far apart for the time between, or a night too short.
    private void NotTooNear()
    {
        foreach (var (s, near, p) in Pairs())
            if (choices.Forbids(near, p) && !choices.Free[s].Overlaps(choices.Free[near.Session]))
                model.AddAtMostOne([teaches[(s, p)], teaches[(near.Session, p)]]);
    }

    private IEnumerable<(int Session, TermNear Near, int Person)> Pairs() =>
        from s in part
        from near in choices.Near[s]
        where within.Contains(near.Session)
        from p in choices.Who(s)
        where choices.Can[near.Session, p]
        select (s, near, p);

    private LinearExpr Bent()
    {
        var bent = new List<LinearExpr> { Weighted(t => choices.Bent[t.Session, t.Person]) };
        foreach (var (s, near, p) in Pairs())
            if (!choices.Forbids(near, p) && choices.ShortRest(near, p))
            {
                var both = model.NewBoolVar($"{s} and {near.Session} by {p}");
                model.Add(both >= teaches[(s, p)] + teaches[(near.Session, p)] - 1);
                bent.Add(both * TermMeasure.OneBend);
            }

        if (bends.WeeklyMinutes)
            foreach (var (person, left, hers) in BoundWeeks())
            {
                var over = model.NewIntVar(0, 10080, $"over by {person}");
                model.Add(over >= Minutes(person, hers) - left);
                bent.Add(over);
            }

        return LinearExpr.Sum(bent);
    }

    private LinearExpr Uneven()
    {
        var uneven = new List<LinearExpr> { LinearExpr.Constant(0) };
        foreach (var week in measure.Weeks.Where(w => within.Contains(w.Sessions[0])))
            for (var p = 0; p < choices.People.Count; p++)
            {
                var hers = week.Sessions.FindAll(s => choices.Can[s, p]);
                var most = hers.Sum(s => choices.Free[s].Minutes) + week.Fixed[p];
                var apart = Minutes(p, hers) + week.Fixed[p] - week.Shares[p];
                foreach (var slack in TermShares.Slack(week.Longest))
                {
                    var far = model.NewIntVar(
                        0,
                        Math.Max(most, week.Shares[p]),
                        $"{p} off by {slack}"
                    );
                    model.Add(far >= apart - slack);
                    model.Add(far >= -1 * apart - slack);
                    uneven.Add(far);
                }
            }

        return LinearExpr.Sum(uneven);
    }

    // Tells of each better solution, and ends the search when it was asked to end before it had begun.
    private sealed class Watch(Action<int, int> better, CancellationToken stop)
        : CpSolverSolutionCallback
    {
        public override void OnSolutionCallback()
        {
            better((int)ObjectiveValue(), (int)Math.Ceiling(BestObjectiveBound() - 1e-6));
            if (stop.IsCancellationRequested)
                StopSearch();
        }
    }
}
