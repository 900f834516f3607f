using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Tests.Booking;

namespace Studio.Core.Tests.Movements;

/// <summary>The fit of a session that has a plan, and what her letter's restrictions do to both.</summary>
public class SessionsWithAPlan
{
    private static readonly ClassProfile OnTheBack = Someone.AClass(ClassTraits.Supine);

    [Fact]
    public void The_plan_says_what_changes_and_the_class_does_not_say_it_again()
    {
        var fit = Someone.Pregnant("20w0d").In(OnTheBack, Planned.Plan("leg-slides", "squat"));

        Assert.Equal(Suits.WithModifications, fit.Verdict);
        var reason = Assert.Single(fit.Reasons);
        Assert.Equal("propped-from-14-weeks", reason.Rule);
        Assert.Equal("Leg slides: propped up, not flat.", reason.ForInstructor);
        Assert.Equal(3, fit.Plan!.MinutesOf(MovementVerdict.AsTaught));
        Assert.Equal(3, fit.Plan.MinutesOf(MovementVerdict.Adapted));
        Assert.Equal(0.5, fit.Plan.ShareOf(MovementVerdict.Adapted));
    }

    [Fact]
    public void A_plan_with_nothing_to_change_suits_whatever_the_class_usually_has() =>
        Assert.Equal(
            Suits.Suitable,
            Someone.Pregnant("20w0d").In(OnTheBack, Planned.Plan("squat", "seated-row")).Verdict
        );

    [Fact]
    public void Without_a_plan_the_class_speaks_as_before()
    {
        var fit = Someone.Pregnant("20w0d").In(OnTheBack);

        Assert.Equal("supine-from-14-weeks", Assert.Single(fit.Reasons).Rule);
        Assert.Null(fit.Plan);
    }

    [Fact]
    public void A_class_that_does_not_suit_is_not_rescued_by_its_plan() =>
        Assert.Equal(
            Suits.NotSuitable,
            Someone
                .Born(30)
                .In(Someone.AClass(ClassTraits.Impact), Planned.Plan("rib-breathing"))
                .Verdict
        );

    [Theory]
    [InlineData(5, 5, Suits.WithModifications, "half and no more")]
    [InlineData(6, 5, Suits.NotSuitable, "more than half")]
    public void More_than_the_chosen_share_left_out_does_not_suit(
        int leftOut,
        int other,
        Suits verdict,
        string because
    )
    {
        var plan = new ClassPlan([new("stand-tall", leftOut), new("side-rest", other)]);
        // A letter that allows no effort at all leaves nothing in place of standing.
        var fit = Someone.Pregnant("20w0d").AtMost(0).LeavingOut("seated").In(OnTheBack, plan);

        Assert.Equal(MovementVerdict.LeftOut, fit.Plan!.Items[0].Verdict);
        Assert.True(verdict == fit.Verdict, because);
        if (verdict == Suits.NotSuitable)
            Assert.Equal("does-not-suit", fit.ForDesk()[0].Code);
    }

    [Fact]
    public void Whoever_does_not_take_part_at_all_is_told_so_once()
    {
        var fit = Someone
            .Pregnant("20w0d")
            .Holding("pre-eclampsia")
            .In(OnTheBack, Planned.Plan("leg-slides", "squat", "rib-breathing"));

        Assert.Equal(Suits.NotSuitable, fit.Verdict);
        Assert.Single(fit.Reasons, r => r.Rule == "C05");
        Assert.All(fit.Plan!.Items, i => Assert.Equal(MovementVerdict.LeftOut, i.Verdict));
        Assert.All(fit.Plan.Items, i => Assert.Equal("does not take part", i.Instruction));
    }

    [Fact]
    public void A_hold_leaves_out_every_movement()
    {
        var her = Someone.Pregnant("20w0d") with { Holds = [new(Someone.Day.PlusDays(-1), null)] };

        Assert.Equal(MovementVerdict.LeftOut, her.Doing("rib-breathing").Verdict);
        Assert.Equal(
            MovementVerdict.AsTaught,
            (her with { Holds = [new(Someone.Day.PlusDays(-1), Someone.Day)] })
                .Doing("rib-breathing")
                .Verdict
        );
    }

    [Theory]
    [InlineData("a-code-of-another-year")]
    [InlineData("vasa-praevia")]
    public void What_is_not_known_or_absolute_leaves_out_everything(string code) =>
        Assert.Equal(
            MovementVerdict.LeftOut,
            Someone.Pregnant("20w0d").Holding(code).Doing("rib-breathing").Verdict
        );

    // Reference row C04: after 26 weeks with ACOG, from memory.
    [Theory]
    [InlineData("25w6d", MovementVerdict.AsTaught)]
    [InlineData("26w0d", MovementVerdict.LeftOut)]
    public void An_absolute_condition_counts_from_its_week_on(
        string age,
        MovementVerdict verdict
    ) =>
        Assert.Equal(
            verdict,
            Someone.Pregnant(age).Holding("placenta-praevia").Doing("rib-breathing").Verdict
        );

    [Fact]
    public void A_letter_that_leaves_out_a_position_moves_her_to_another()
    {
        var done = Someone.Born(100).LeavingOut("supine").Doing("leg-slides");

        Assert.Equal(MovementVerdict.Replaced, done.Verdict);
        Assert.Equal("side-lying-leg-slides", done.Option!.Code);
        Assert.Equal("Leg slides on the side instead", done.Instruction);
        Assert.Contains(done.Reasons, r => r.Rule == "her-letter" && r.Source is null);
    }

    [Theory]
    [InlineData(4, MovementVerdict.AsTaught)]
    [InlineData(3, MovementVerdict.Replaced)]
    public void A_letters_ceiling_of_effort_counts_from_just_above_it(
        int ceiling,
        MovementVerdict verdict
    ) => Assert.Equal(verdict, Someone.Pregnant("20w0d").AtMost(ceiling).Doing("squat").Verdict);

    [Fact]
    public void A_restriction_counts_only_while_it_holds()
    {
        var her = Someone.Pregnant("20w0d");
        HerSituation Until(int days) =>
            her with
            {
                Restrictions =
                [
                    new()
                    {
                        From = Someone.Day.PlusDays(-5),
                        To = Someone.Day.PlusDays(days),
                        EffortMost = 1,
                    },
                ],
            };

        Assert.Equal(MovementVerdict.Replaced, Until(0).Doing("squat").Verdict);
        Assert.Equal(MovementVerdict.AsTaught, Until(-1).Doing("squat").Verdict);
        var lift = Assert.Single(Until(0).Doing("squat").Reasons).Lift!;
        Assert.Equal(Someone.Day.PlusDays(1), lift.On);
    }

    [Fact]
    public void A_restriction_nobody_understands_clears_nothing()
    {
        var her = Someone.Pregnant("20w0d").LeavingOut("moonlight");

        Assert.Equal(MovementVerdict.LeftOut, her.Doing("rib-breathing").Verdict);
        Assert.Equal(Suits.NeedsClearance, her.In(Someone.AClass()).Verdict);
    }

    [Fact]
    public void Without_a_plan_a_restriction_still_speaks_of_the_class()
    {
        var her = Someone.Born(200).LeavingOut("supine").AtMost(3);

        Assert.Equal(
            [
                "By her letter: effort at most 3 of 10.",
                "By her letter: leave out: flat on the back.",
            ],
            her.In(Someone.AClass(ClassTraits.Supine, ClassTraits.ModerateEffort))
                .Reasons.Where(r => r.Code == ReasonCodes.FollowLetter)
                .Select(r => r.ForInstructor)
                .Order(StringComparer.Ordinal)
        );
        Assert.Equal(Suits.Suitable, her.In(Someone.AClass()).Verdict);
    }

    [Fact]
    public void A_movement_the_catalogue_does_not_have_is_left_out()
    {
        var done = Someone.Pregnant("20w0d").Doing("a-movement-of-another-year");

        Assert.Equal(MovementVerdict.LeftOut, done.Verdict);
        Assert.Null(done.Movement);
        Assert.Equal("movement-unclear", Assert.Single(done.Reasons).Rule);
    }

    [Fact]
    public void Of_several_effort_limits_only_the_lowest_stands_on_the_mat()
    {
        var done = Someone
            .Pregnant("10w0d")
            .Holding("high-blood-pressure")
            .Doing("squat-to-press", Someone.Policies with { EffortMost = 5 });

        Assert.Contains("4 of 10", done.Instruction, StringComparison.Ordinal);
        Assert.DoesNotContain("5 of 10", done.Instruction, StringComparison.Ordinal);
        Assert.True(done.Says("effort-in-pregnancy"));
    }

    [Fact]
    public void Every_reason_is_kept_with_its_source_and_what_would_lift_it()
    {
        var done = Someone
            .Pregnant("13w0d")
            .Holding("showing")
            .Holding("back-pain")
            .Doing("lying-twist");

        Assert.Equal(
            [
                "closed-twist-showing",
                "supine-showing",
                "closed-twist-back-pain",
                "closed-twist-first-trimester",
                "stretch-in-pregnancy",
            ],
            done.Reasons.Select(r => r.Rule)
        );
        Assert.All(done.Reasons, r => Assert.NotNull(r.Source));
        Assert.Equal(
            Someone.Day.PlusDays(7),
            done.Reasons.Single(r => r.Rule == "closed-twist-first-trimester").Lift!.On
        );
    }
}
