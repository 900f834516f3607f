using Studio.Core.Timetable;
using static Studio.Core.Tests.Timetable.Terms;
using static Studio.Core.Tests.Timetable.Weeks;

namespace Studio.Core.Tests.Timetable;

/// <summary>What a search gives, and what it says where it can give nothing.</summary>
public class TermsStaffed
{
    private static TermPlan Solved(TermQuestion question) =>
        TermAssignment.Solve(question, stop: TestContext.Current.CancellationToken);

    private static PlacedSession Postnatal(PlacedSession session) =>
        session with
        {
            NeedsQualification = "postnatal",
        };

    [Fact]
    public void Whoever_teaches_today_keeps_it_although_somebody_else_would_like_it_more()
    {
        var bo = Bo with { Wishes = [new(WishKind.PartOfDay, "morning", 2)] };
        var plan = Solved(Question([Ada, bo], Session(1, Monday, "10:00")));
        Assert.Equal(1, plan.Who(1));
        Assert.All(plan.Aims, aim => Assert.True(aim.Proven));
    }

    [Fact]
    public void Among_sessions_of_nobody_wishes_decide()
    {
        var bo = Bo with { Wishes = [new(WishKind.PartOfDay, "morning", 2)] };
        var plan = Solved(
            Question(
                [Ada, bo],
                Session(1, Monday, "10:00", by: null),
                Session(2, Monday, "11:00", by: null)
            )
        );
        Assert.Equal((2, 2), (plan.Who(1), plan.Who(2)));
        Assert.Equal(4, plan.Value(TermAim.Wishes));
    }

    [Fact]
    public void Without_wishes_the_load_is_even()
    {
        var plan = Solved(
            Question(
                [Bo, Cleo],
                [
                    .. Enumerable
                        .Range(0, 8)
                        .Select(at =>
                            Session(
                                at + 1,
                                Monday.PlusDays(at / 2),
                                at % 2 == 0 ? "10:00" : "12:00",
                                by: null
                            )
                        ),
                ]
            )
        );
        Assert.All(plan.Loads, load => Assert.InRange(load.After.Sessions, 3, 5));
        Assert.Equal(0, plan.Value(TermAim.Load));
    }

    [Fact]
    public void Nobody_holds_the_qualification()
    {
        var gap = Assert.Single(
            Solved(Question([Ada, Bo], Postnatal(Session(1, Monday, "18:00", by: null)))).Unstaffed
        );
        Assert.Equal(
            "Nobody has a valid postnatal qualification on Monday 1 March 2027.",
            gap.Words
        );
        Assert.Equal(["Ada Winterle", "Bo Larkfield"], gap.People.Select(p => p.Name));
        Assert.Equal(
            [
                "Ada Winterle has no valid postnatal qualification on Monday 1 March 2027, which Class 1 needs.",
            ],
            gap.People[0].Words
        );
    }

    [Fact]
    public void Nobody_who_holds_it_is_free()
    {
        var cleo = Cleo with { Leave = [new(Monday, Monday.PlusDays(2))] };
        var gap = Assert.Single(
            Solved(
                Question([Ada, cleo], Postnatal(Session(1, Monday, "18:00", by: null)))
            ).Unstaffed
        );
        Assert.Equal(
            "Nobody with the postnatal qualification is free on Monday 1 March 2027 at 18:00.",
            gap.Words
        );
        Assert.Equal(
            ["Cleo Ambrose is away on Monday 1 March 2027."],
            gap.People.Single(p => p.InstructorId == 3).Words
        );
        Assert.All(gap.People, p => Assert.False(p.CouldAlone));
    }

    [Fact]
    public void Each_could_alone_but_there_are_more_sessions_than_people()
    {
        var gap = Assert.Single(
            Solved(
                Question(
                    [Ada, Bo],
                    Session(1, Monday, "18:00", by: null),
                    Session(2, Monday, "18:00", by: null, room: 2),
                    Session(3, Monday, "18:10", by: null, room: 4)
                )
            ).Unstaffed
        );
        Assert.StartsWith(
            "Ada Winterle and Bo Larkfield could each teach it, were it the only session: 3 sessions are held on Monday 1 March 2027 at 18:10 that only they could teach (",
            gap.Words,
            StringComparison.Ordinal
        );
        Assert.All(gap.People, p => Assert.True(p.CouldAlone));
        Assert.All(
            gap.People,
            p => Assert.Contains("at once", p.Words[0], StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Each_could_alone_but_the_week_has_too_few_hours()
    {
        var plan = Solved(
            Question(
                [Bo with { WeeklyMinutesMost = 100 }],
                Session(1, Monday, "10:00", by: null),
                Session(2, Monday.PlusDays(1), "10:00", by: null),
                Session(3, Monday.PlusDays(2), "10:00", by: null)
            )
        );
        var gap = Assert.Single(plan.Unstaffed);
        Assert.Equal(
            "Bo Larkfield could teach it, were it her only session, but not together with everything else that only a few can teach in that week.",
            gap.Words
        );
        Assert.Equal(
            ["Bo Larkfield would teach 2 h 30 in the week of 1 March 2027; 1 h 40 were agreed."],
            gap.People[0].Words
        );
    }

    [Fact]
    public void What_may_be_bent_is_bent_only_for_a_session_that_would_have_nobody()
    {
        var question = Question(
            [Bo with { WeeklyMinutesMost = 100 }, Ada],
            Session(1, Monday, "10:00", by: null),
            Session(2, Monday, "10:00", by: null, room: 2),
            Session(3, Monday, "12:00", by: 2),
            Session(4, Monday.PlusDays(1), "10:00", by: 2),
            Session(5, Monday.PlusDays(2), "10:00", by: 2)
        ) with
        {
            Bends = new(WeeklyMinutes: true),
        };
        var plan = Solved(question);
        Assert.Equal((0, 0), (plan.Value(TermAim.Unstaffed), plan.Value(TermAim.Bent)));
        Assert.Equal(2, plan.Value(TermAim.Changes));
        Assert.Equal(
            (1, 0),
            (
                plan.Loads.Single(l => l.InstructorId == 2).Before.WeeksOver,
                plan.Loads.Single(l => l.InstructorId == 2).After.WeeksOver
            )
        );
    }

    [Fact]
    public void Pins_that_contradict_each_other_are_named_and_the_rest_is_staffed()
    {
        var question = Question(
            [Ada, Bo],
            Session(1, Monday, "18:00"),
            Session(2, Monday, "18:30", by: null, room: 2),
            Session(3, Monday, "18:00", by: null, room: 4)
        ) with
        {
            Pins = new Dictionary<long, long?> { [1] = 1, [2] = 1 },
        };
        var plan = Solved(question);
        Assert.Equal(
            [
                "Ada Winterle would teach Class 1 at 18:00 and Class 2 at 18:30 at once on Monday 1 March 2027.",
            ],
            plan.Contradictions.Select(c => c.Words)
        );
        Assert.Equal((1, 1, 2), (plan.Who(1), plan.Who(2), plan.Who(3)));
    }

    [Fact]
    public void A_late_sunday_and_an_early_monday_are_solved_together()
    {
        // Each week alone would keep both with Bo, who would rest too little between them.
        var question = Question(
            [Bo, Cleo],
            Session(1, Monday.PlusDays(6), "20:30", by: 2),
            Session(2, Monday.PlusDays(7), "07:00", by: 2)
        );
        var plan = Solved(question);
        Assert.Empty(question.Broken(plan.After(question)));
        Assert.Equal(1, plan.Value(TermAim.Changes));
        Assert.Equal(0, plan.Value(TermAim.Unstaffed));
    }

    [Fact]
    public void Stopped_before_it_began_it_keeps_what_breaks_no_rule_and_gives_the_rest_to_whoever_fits()
    {
        var question = Large;
        var plan = TermAssignment.Solve(question, stop: new CancellationToken(canceled: true));
        Assert.True(plan.Stopped);
        Assert.Empty(question.Broken(plan.After(question)));
        Assert.All(plan.Aims, aim => Assert.False(aim.Proven));
        Assert.True(plan.Steps.Count(s => s.After is not null) > question.Sessions.Count / 2);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(150)]
    public void When_the_time_is_over_the_best_so_far_stands(int milliseconds)
    {
        using var time = new CancellationTokenSource(milliseconds);
        var began = System.Diagnostics.Stopwatch.StartNew();
        var plan = TermAssignment.Solve(Large, stop: time.Token);
        // Far less than the whole takes, with room for a busy machine.
        Assert.True(plan.Stopped);
        Assert.InRange(began.Elapsed.TotalSeconds, 0, 20);
        Assert.Empty(Large.Broken(plan.After(Large)));
    }

    [Fact]
    public void It_tells_how_far_it_has_come_and_stops_when_told_to()
    {
        var told = new List<TermProgress>();
        using var stop = new CancellationTokenSource();
        var plan = TermAssignment.Solve(
            Large,
            progress =>
            {
                told.Add(progress);
                if (progress.Part == 2)
                    stop.Cancel();
            },
            stop.Token
        );
        Assert.True(plan.Stopped);
        Assert.Equal(TermAim.Unstaffed, told[0].Aim);
        Assert.All(told, p => Assert.InRange(p.UnstaffedAtLeast, 0, p.Unstaffed));
        Assert.DoesNotContain(told, p => p.Part > 2);
        Assert.Equal(plan.Value(TermAim.Unstaffed), told[^1].Unstaffed);
    }

    // Four weeks of sixty sessions for five people, more than they can teach.
    private static TermQuestion Large { get; } =
        Question(
            [
                .. new[] { Bo, Cleo }
                    .Concat(
                        Enumerable
                            .Range(4, 3)
                            .Select(id => Cleo with { Id = id, Name = $"Person {id}" })
                    )
                    .Select(p => p with { WeeklyMinutesMost = 500 + (50 * (int)p.Id) }),
            ],
            [
                .. Enumerable
                    .Range(0, 240)
                    .Select(at =>
                        Session(
                            at + 1,
                            Monday.PlusDays(at / 60 * 7 + (at % 60 / 10)),
                            $"{8 + (at % 5 * 2):00}:{at % 7 * 5:00}",
                            by: at % 4 == 0 ? 2 : null,
                            room: 1 + (at % 3),
                            minutes: at % 3 == 0 ? 75 : 50
                        )
                    ),
            ]
        );
}
