using Google.OrTools.Sat;
using NodaTime;
using Studio.Core.Timetable;

namespace Studio.Core.Cover;

/// <summary>One session of a proposal.</summary>
public sealed record CoverStep
{
    /// <summary>The session, and what was asked of it.</summary>
    public required CoverQuestion Question { get; init; }

    /// <summary>Who would take it, as she stands once everything proposed is done; null when nobody can.</summary>
    public CoverCandidate? By { get; init; }

    /// <summary>Where nobody can: everybody, with what keeps her from it once everything proposed is done.</summary>
    public IReadOnlyList<CoverCandidate> WhyNobody { get; init; } = [];
}

/// <summary>Who would take which session, worked out for all of them together.</summary>
/// <param name="Steps">One a session, in the order of time.</param>
/// <param name="IsBest">Nothing better exists; false when the search was ended at its bound on work.</param>
public sealed record CoverPlan(IReadOnlyList<CoverStep> Steps, bool IsBest);

/// <summary>Finds who takes several sessions at once, such as those of somebody who is ill for a week.</summary>
public static class CoverAssignment
{
    // One worker, one seed, and a bound on work done instead of on time: the same question has the same answer anywhere.
    private const string Settings =
        "num_workers:1 random_seed:11 max_deterministic_time:30 log_search_progress:false";

    /// <summary>
    /// As many sessions taken as can be; then fewest conflicts that the owner would have to accept; then those who rank
    /// best for each; then as even as can be. Nobody is in two sessions at once or without the time to travel, and hours
    /// of the week and rest count across everything proposed. What is proposed takes nothing off anybody: who asked for
    /// cover herself keeps her own sessions until somebody has taken them.
    /// </summary>
    public static CoverPlan Solve(IEnumerable<CoverQuestion> questions, CoverStaff staff)
    {
        var ordered = questions
            .DistinctBy(q => q.Session.Key)
            .OrderBy(q => q.Session.StartsAt)
            .ThenBy(q => q.Session.Key)
            .ToList();
        var ranked = ordered.ConvertAll(q =>
            CoverRanking.Rank(q, staff).Where(c => c.CanBeProposed).ToList()
        );
        var (chosen, isBest) = ranked.TrueForAll(r => r.Count == 0)
            ? ([.. ordered.Select(_ => (long?)null)], true)
            : new Model(ordered, ranked, staff).Solve();

        var by = ordered
            .Zip(chosen)
            .Where(c => c.Second is not null)
            .ToDictionary(c => c.First.Session.Key, c => c.Second);
        var then = staff with
        {
            Sessions =
            [
                .. staff.Sessions.Select(s =>
                    by.TryGetValue(s.Key, out var her) ? s with { InstructorId = her } : s
                ),
            ],
        };
        return new CoverPlan(
            [
                .. ordered
                    .Zip(chosen)
                    .Select(c => Step(c.First, c.Second, CoverRanking.Rank(c.First, then))),
            ],
            isBest
        );
    }

    private static CoverStep Step(
        CoverQuestion question,
        long? by,
        IReadOnlyList<CoverCandidate> then
    ) =>
        by is null
            ? new CoverStep { Question = question, WhyNobody = then }
            : new CoverStep { Question = question, By = then.Single(c => c.InstructorId == by) };

    private sealed class Model(
        List<CoverQuestion> questions,
        List<List<CoverCandidate>> ranked,
        CoverStaff staff
    )
    {
        private readonly CpModel model = new();
        private readonly List<BoolVar> softs = [];
        private readonly List<(BoolVar Var, long Cost)> evenness = [];

        private sealed record Choice(
            int Question,
            PlacedSession Session,
            CoverCandidate Her,
            BoolVar Taken
        );

        public (IReadOnlyList<long?> Chosen, bool IsBest) Solve()
        {
            var choices = questions
                .Select(
                    (q, at) =>
                        ranked[at]
                            .Select(c => new Choice(
                                at,
                                q.Session with
                                {
                                    InstructorId = c.InstructorId,
                                },
                                c,
                                model.NewBoolVar($"{q.Session.Key} by {c.InstructorId}")
                            ))
                            .ToList()
                )
                .ToList();
            foreach (var one in choices.Where(c => c.Count > 0))
                model.AddAtMostOne(one.Select(c => c.Taken));
            foreach (
                var hers in choices
                    .SelectMany(c => c)
                    .GroupBy(c => c.Her.InstructorId)
                    .OrderBy(g => g.Key)
            )
                Person(staff.Facts.Teachers[hers.Key], [.. hers]);

            // The aims one after another in one number: each weighs more than everything after it together.
            var even = evenness.Sum(e => e.Cost) + 1;
            var rank = even * (choices.Sum(c => (long)c.Count) + 1);
            var soft = checked(rank * (softs.Count + choices.Sum(c => (long)c.Count) + 1));
            var cost = LinearExpr.NewBuilder();
            foreach (var one in choices)
                for (var at = 0; at < one.Count; at++)
                    cost.AddTerm(
                        one[at].Taken,
                        checked((at * even) + (OutsideHours(one[at].Her) * rank) - soft)
                    );
            foreach (var conflict in softs)
                cost.AddTerm(conflict, rank);
            foreach (var (step, of) in evenness)
                cost.AddTerm(step, of);
            model.Minimize(cost);

            var solver = new CpSolver { StringParameters = Settings };
            var status = solver.Solve(model);
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
                throw new InvalidOperationException(
                    "Nobody taking anything is always a solution, and none was found."
                );
            return (
                choices.ConvertAll(one =>
                    one.Where(c => solver.BooleanValue(c.Taken))
                        .Select(c => (long?)c.Her.InstructorId)
                        .SingleOrDefault()
                ),
                status == CpSolverStatus.Optimal
            );
        }

        private void Person(Teacher teacher, List<Choice> hers)
        {
            var stands = staff.Of(teacher.Id).ToList();
            var together = new List<(Choice One, Choice Other)>();
            for (var a = 0; a < hers.Count; a++)
            for (var b = a + 1; b < hers.Count; b++)
            {
                var between = TimetableChecks
                    .WhyNot(teacher, hers[b].Session, [hers[a].Session], staff.Facts)
                    .Where(c => c.Sessions.Contains(hers[a].Session.Key))
                    .ToList();
                if (between.Exists(c => c.IsHard))
                    model.AddAtMostOne([hers[a].Taken, hers[b].Taken]);
                else if (between.Exists(c => c.Kind == ConflictKind.TooLittleRest))
                    together.Add((hers[a], hers[b]));
            }

            Rest(teacher, stands, hers, together);
            Hours(teacher, stands, hers);
            Evenly(teacher, hers);
        }

        // One conflict a night, however many sessions make it. It is one of ours when a session of ours is the last of the
        // evening or the first of the morning; that a night was short before is not for us to count.
        private void Rest(
            Teacher teacher,
            List<PlacedSession> stands,
            List<Choice> hers,
            List<(Choice One, Choice Other)> together
        )
        {
            var dayOf = stands.Concat(hers.Select(c => c.Session)).ToLookup(s => s.Key, s => s.On);
            (LocalDate, LocalDate) Night(IReadOnlyList<long> sessions) =>
                (dayOf[sessions[0]].First(), dayOf[sessions[1]].First());

            var short_ = TimetableChecks
                .Of(stands, staff.Facts)
                .Where(c => c.Kind == ConflictKind.TooLittleRest)
                .Select(c => Night(c.Sessions))
                .ToHashSet();
            var nights = new Dictionary<(LocalDate, LocalDate), BoolVar>();
            BoolVar Of((LocalDate, LocalDate) night)
            {
                if (!nights.TryGetValue(night, out var one))
                {
                    nights[night] = one = model.NewBoolVar(
                        $"{teacher.Id} rests too little, {night}"
                    );
                    softs.Add(one);
                }
                return one;
            }

            foreach (var choice in hers)
            foreach (
                var conflict in choice.Her.Against.Where(c => c.Kind == ConflictKind.TooLittleRest)
            )
                model.AddImplication(choice.Taken, Of(Night(conflict.Sessions)));
            foreach (var (one, other) in together)
            {
                var night =
                    one.Session.On < other.Session.On
                        ? (one.Session.On, other.Session.On)
                        : (other.Session.On, one.Session.On);
                if (!short_.Contains(night))
                    model.AddBoolOr([one.Taken.Not(), other.Taken.Not(), Of(night)]);
            }
        }

        private void Hours(Teacher teacher, List<PlacedSession> stands, List<Choice> hers)
        {
            if (teacher.WeeklyMinutesMost is not { } most)
                return;
            foreach (var week in hers.GroupBy(c => TimetableChecks.WeekOf(c.Session.On)))
            {
                var left = Math.Max(
                    0,
                    most
                        - stands
                            .Where(s => TimetableChecks.WeekOf(s.On) == week.Key)
                            .Sum(s => s.Minutes)
                );
                var wanted = week.Sum(c => c.Session.Minutes);
                if (wanted <= left)
                    continue;
                var over = model.NewBoolVar($"{teacher.Id} teaches too much, {week.Key}");
                softs.Add(over);
                model.Add(
                    LinearExpr.WeightedSum(
                        week.Select(c => c.Taken).Append(over),
                        week.Select(c => c.Session.Minutes).Append(left - wanted)
                    ) <= left
                );
            }
        }

        // The n-th session that somebody takes costs as much as all she took lately and n: it is cheapest to share.
        private void Evenly(Teacher teacher, List<Choice> hers)
        {
            var before = staff.Covers.GetValueOrDefault(teacher.Id);
            var steps = Enumerable
                .Range(1, hers.Count)
                .Select(n =>
                    (Var: model.NewBoolVar($"{teacher.Id} takes {n}"), Cost: (long)before + n)
                )
                .ToList();
            evenness.AddRange(steps);
            model.Add(
                LinearExpr.Sum(hers.Select(c => c.Taken))
                    <= LinearExpr.Sum(steps.Select(s => s.Var))
            );
        }

        private static int OutsideHours(CoverCandidate her) =>
            her.Against.Count(c => c.Kind == ConflictKind.OutsideHours);
    }
}
