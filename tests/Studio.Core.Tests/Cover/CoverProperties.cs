using CsCheck;
using Studio.Core.Cover;
using Studio.Core.Tests.Timetable;
using Studio.Core.Timetable;
using static Studio.Core.Tests.Cover.Covering;

namespace Studio.Core.Tests.Cover;

/// <summary>
/// What holds of cover worked out for several sessions, in weeks full enough to clash, held against every assignment
/// there is.
/// </summary>
public class CoverProperties
{
    private const int Cases = 250;

    private static readonly string[] Hours = ["07:00", "08:10", "12:00", "12:30", "20:30", "21:15"];

    private static readonly Gen<(int Day, int Hour, int Room)> APlace = Gen.Select(
        Gen.Int[0, 2],
        Gen.Int[0, Hours.Length - 1],
        Gen.Int[1, 3]
    );

    private static readonly Gen<AWeek> Any = Gen.Select(
        APlace.Array[1, 4],
        Gen.Select(APlace, Gen.Int[2, 4]).Array[3, 12],
        Gen.Int[0, 5].Array[3],
        Gen.Int[0, 3].Array[3],
        Gen.Int[0, 1 << 12],
        (wanted, taught, kinds, covers, dice) =>
        {
            var people = new[] { Bo, Cy, Dee }
                .Select((id, at) => Somebody(id, kinds[at]))
                .ToArray();
            var facts = FactsWith(people);
            var open = wanted
                .Select((p, at) => Hers(at + 1, Hours[p.Hour], p.Day, p.Room))
                .ToArray();
            var stands = new List<PlacedSession>();
            foreach (var ((day, hour, room), by) in taught)
            {
                var one = Weeks.Session(
                    100 + stands.Count,
                    Weeks.Monday.PlusDays(day),
                    Hours[hour],
                    by,
                    room
                );
                // What stands already is in order, but for what the owner accepted.
                if (
                    !TimetableChecks
                        .WhyNot(
                            facts.Teachers[by],
                            one,
                            stands.Where(s => s.InstructorId == by),
                            facts
                        )
                        .Any(c => c.IsHard)
                )
                    stands.Add(one);
            }

            return new AWeek(
                new CoverStaff
                {
                    Facts = facts,
                    Sessions = [.. open, .. stands],
                    Covers = new Dictionary<long, int>
                    {
                        [Bo] = covers[0],
                        [Cy] = covers[1],
                        [Dee] = covers[2],
                    },
                },
                [
                    .. open.Select(
                        (s, at) =>
                            For(s) with
                            {
                                Booked = 3,
                                Knows = new Dictionary<long, int> { [Bo + (dice >> at) % 3] = 2 },
                                Answers =
                                    (dice >> (at + 3) & 7) == 0
                                        ? new Dictionary<long, CoverAnswer>
                                        {
                                            [Cy] = CoverAnswer.Cannot,
                                        }
                                        : [],
                            }
                    ),
                ]
            );
        }
    );

    private static Teacher Somebody(long id, int kind)
    {
        var plain = FactsWith().Teachers[id];
        return kind switch
        {
            0 => plain with { WeeklyMinutesMost = 110 },
            1 => plain with { WeeklyMinutesMost = 50 },
            2 => plain with { Availability = [new(IsoDayOfWeek.Monday, new(6, 0), new(13, 0))] },
            3 => plain with { Leave = [new(Weeks.Monday.PlusDays(1), Weeks.Monday.PlusDays(1))] },
            4 => plain with { Qualifications = [] },
            _ => plain,
        };
    }

    [Fact]
    public void No_assignment_there_is_does_better() =>
        Any.Sample(
            week =>
            {
                var plan = CoverAssignment.Solve(week.Questions, week.Staff);
                var chosen = week.ChosenIn(plan);
                Assert.True(plan.IsBest);
                Assert.True(week.IsAllowed(chosen));
                Assert.Equal(week.All().Where(week.IsAllowed).Min(week.Worth), week.Worth(chosen));
            },
            iter: Cases
        );

    [Fact]
    public void Nothing_proposed_brings_a_conflict_that_cannot_be_saved() =>
        Any.Sample(
            week =>
            {
                var plan = CoverAssignment.Solve(week.Questions, week.Staff);
                var by = plan
                    .Steps.Where(s => s.By is not null)
                    .ToDictionary(s => s.Question.Session.Key, s => s.By!.InstructorId);
                var then = week.Staff.Sessions.Select(s =>
                    by.TryGetValue(s.Key, out var her) ? s with { InstructorId = her } : s
                );
                Assert.DoesNotContain(
                    TimetableChecks.Of(then, week.Staff.Facts),
                    c => c.IsHard && c.InstructorId is not null && c.Sessions.Any(by.ContainsKey)
                );
            },
            iter: Cases
        );

    [Fact]
    public void What_nobody_takes_says_of_everybody_what_keeps_her_from_it() =>
        Any.Sample(
            week =>
            {
                foreach (var step in CoverAssignment.Solve(week.Questions, week.Staff).Steps)
                    if (step.By is null)
                    {
                        Assert.Equal([Bo, Cy, Dee], step.WhyNobody.Ids().Order());
                        Assert.All(
                            step.WhyNobody,
                            c =>
                            {
                                Assert.False(c.CanBeProposed);
                                Assert.Contains(
                                    c.Reasons,
                                    r =>
                                        r.Kind is CoverReasonKind.Hard
                                        || (
                                            r.Kind is CoverReasonKind.Answer
                                            && c.Answer == CoverAnswer.Cannot
                                        )
                                );
                            }
                        );
                    }
            },
            iter: Cases
        );

    [Fact]
    public void One_person_more_never_covers_fewer() =>
        Any.Sample(
            week =>
            {
                var without = week.Staff with
                {
                    Facts = week.Staff.Facts with
                    {
                        Teachers = week
                            .Staff.Facts.Teachers.Where(t => t.Key != Dee)
                            .ToDictionary(t => t.Key, t => t.Value),
                    },
                };
                Assert.True(
                    Covered(CoverAssignment.Solve(week.Questions, without))
                        <= Covered(CoverAssignment.Solve(week.Questions, week.Staff))
                );
            },
            iter: Cases
        );

    [Fact]
    public void The_order_in_which_anything_is_given_means_nothing() =>
        Gen.Select(Any, Gen.Int[0, int.MaxValue])
            .Sample(
                (week, seed) =>
                {
                    var random = new Random(seed);
                    var mixed = new AWeek(
                        week.Staff with
                        {
                            Sessions = [.. week.Staff.Sessions.OrderBy(_ => random.Next())],
                            Facts = week.Staff.Facts with
                            {
                                Teachers = week
                                    .Staff.Facts.Teachers.OrderBy(_ => random.Next())
                                    .ToDictionary(t => t.Key, t => t.Value),
                            },
                        },
                        [.. week.Questions.OrderBy(_ => random.Next())]
                    );
                    Assert.Equal(
                        Told(CoverAssignment.Solve(week.Questions, week.Staff)),
                        Told(CoverAssignment.Solve(mixed.Questions, mixed.Staff))
                    );
                },
                iter: Cases
            );

    [Fact]
    public void These_weeks_are_full_enough_to_try_it()
    {
        var (taken, left, accepted) = (0, 0, 0);
        Any.Sample(
            week =>
            {
                foreach (var step in CoverAssignment.Solve(week.Questions, week.Staff).Steps)
                {
                    Interlocked.Add(ref accepted, step.By?.Softs ?? 0);
                    _ = step.By is null
                        ? Interlocked.Increment(ref left)
                        : Interlocked.Increment(ref taken);
                }
            },
            iter: Cases
        );
        Assert.True(
            taken > 50 && left > 50 && accepted > 30,
            $"{taken} taken, {left} left, {accepted} to accept"
        );
    }

    [Fact]
    public void A_sick_week_of_ten_sessions_is_shared_among_seven_in_a_moment()
    {
        var people = Enumerable
            .Range(2, 7)
            .Select(id => Weeks.Bo with { Id = id, Name = $"Person {id}", WeeklyMinutesMost = 600 })
            .ToArray();
        var facts = FactsWith(people);
        var open = Enumerable
            .Range(0, 10)
            .Select(at => Hers(at + 1, at % 2 == 0 ? "10:00" : "18:00", at / 2))
            .ToArray();
        var plan = CoverAssignment.Solve(open.Select(For), Everybody(facts, open));
        Assert.True(plan.IsBest);
        Assert.Equal(10, Covered(plan));
    }

    private static int Covered(CoverPlan plan) => plan.Steps.Count(s => s.By is not null);

    private static List<string> Told(CoverPlan plan) =>
        [
            .. plan.Steps.Select(s =>
                $"{s.Question.Session.Key}: {s.By?.InstructorId} {string.Join('|', s.By?.Reasons.Select(r => r.Words) ?? [])} {string.Join(' ', s.WhyNobody.Ids())}"
            ),
        ];

    private sealed record AWeek(CoverStaff Staff, IReadOnlyList<CoverQuestion> Questions)
    {
        private static readonly long[] People = [Bo, Cy, Dee];

        /// <summary>Every way to give each session to somebody or to nobody, by the order of the questions.</summary>
        public IEnumerable<long?[]> All() =>
            Questions.Aggregate(
                (IEnumerable<long?[]>)
                    [
                        [],
                    ],
                (so, _) =>
                    so.SelectMany(taken =>
                        People
                            .Select(p => (long?)p)
                            .Prepend(null)
                            .Select(p => (long?[])[.. taken, p])
                    )
            );

        public long?[] ChosenIn(CoverPlan plan) =>
            [
                .. Questions.Select(q =>
                    plan.Steps.Single(s => s.Question.Session.Key == q.Session.Key).By?.InstructorId
                ),
            ];

        public bool IsAllowed(long?[] chosen) =>
            Hers(chosen).All(h => !h.Conflicts.Any(c => c.IsHard))
            && Questions
                .Zip(chosen)
                .All(c =>
                    c.Second is not { } by
                    || !c.First.Answers.TryGetValue(by, out var said)
                    || said == CoverAnswer.Can
                );

        /// <summary>The aims in their order; less is better.</summary>
        public (int Left, int Softs, int Ranks, int Uneven) Worth(long?[] chosen) =>
            (
                chosen.Count(c => c is null),
                Hers(chosen).Sum(h => h.Conflicts.Count(c => !c.IsHard)),
                Questions.Zip(chosen).Sum(c => c.Second is { } by ? Place(c.First, by) : 0),
                People.Sum(p =>
                    Enumerable.Range(1, chosen.Count(c => c == p)).Sum(n => n + Staff.Covers[p])
                )
            );

        private int Place(CoverQuestion question, long by) =>
            CoverRanking
                .Rank(question, Staff)
                .Where(c => c.CanBeProposed)
                .Ids()
                .ToList()
                .IndexOf(by);

        // What the checker finds in everything of hers, as far as it is about something she would take.
        private IEnumerable<(long Her, List<Conflict> Conflicts)> Hers(long?[] chosen) =>
            People.Select(p =>
            {
                var taken = Questions
                    .Zip(chosen)
                    .Where(c => c.Second == p)
                    .Select(c => c.First.Session with { InstructorId = p })
                    .ToList();
                var keys = taken.Select(s => s.Key).ToHashSet();
                return (
                    p,
                    TimetableChecks
                        .Of([.. Staff.Of(p), .. taken], Staff.Facts)
                        .Where(c => c.InstructorId == p && c.Sessions.Any(keys.Contains))
                        .ToList()
                );
            });
    }
}
