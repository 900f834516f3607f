using Studio.Core.Movements;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Booking;

namespace Studio.Core.Tests.Movements;

/// <summary>
/// What teachers of prenatal classes hold to, movement by movement and on the day before and the day of each boundary.
/// Common practice, no published source, except where a check names one. Stage boundaries: reference rows of stages.csv.
/// </summary>
public class MovementCheckValues
{
    private const MovementVerdict AsTaught = MovementVerdict.AsTaught;
    private const MovementVerdict Adapted = MovementVerdict.Adapted;
    private const MovementVerdict Replaced = MovementVerdict.Replaced;

    [Theory]
    [InlineData("squat-to-press", "30w0d", null)]
    [InlineData("jog-on-the-spot", "30w0d", null)]
    [InlineData("press-up", "13w6d", "6 of 10 at most, still chatting")]
    public void Effort_stays_at_six_to_seven_of_ten_at_most_and_she_can_still_talk(
        string movement,
        string age,
        string? says
    )
    {
        var done = Someone.Pregnant(age).Doing(movement);

        Assert.Equal(says is not null, done.Says("effort-in-pregnancy"));
        Assert.Contains(says ?? "", done.Instruction, StringComparison.Ordinal);
    }

    [Fact]
    public void A_studio_may_read_the_effort_as_seven()
    {
        var seven = Someone.Policies with { EffortMost = 7 };

        Assert.False(
            Someone.Pregnant("10w0d").Doing("press-up", seven).Says("effort-in-pregnancy")
        );
        Assert.All(
            Planned.Book.Movements,
            m =>
                Assert.False(
                    Done(Someone.Pregnant("20w0d").Doing(m.Code, seven))?.Effort > 7,
                    m.Code
                )
        );
    }

    [Theory]
    [InlineData("13w6d", null, AsTaught)]
    [InlineData("14w0d", null, Replaced)]
    [InlineData("13w6d", "showing", Replaced)]
    [InlineData("8w0d", "showing", Replaced)]
    [InlineData("13w6d", "second-or-later-pregnancy", AsTaught)]
    public void Loaded_trunk_flexion_only_while_not_showing_and_in_the_first_trimester(
        string age,
        string? factor,
        MovementVerdict verdict
    ) => Assert.Equal(verdict, Holding(age, factor).Doing("curl-up").Verdict);

    // 14w0d: ACOG 1994 (reference row M01, seen); earlier once she shows: common practice.
    [Theory]
    [InlineData("13w6d", null, AsTaught)]
    [InlineData("14w0d", null, Replaced)]
    [InlineData("13w6d", "showing", Replaced)]
    [InlineData("9w0d", "showing", Replaced)]
    [InlineData("13w6d", "second-or-later-pregnancy", AsTaught)]
    public void Flat_on_the_back_is_dropped_from_the_second_trimester_and_earlier_once_she_shows(
        string age,
        string? factor,
        MovementVerdict verdict
    )
    {
        Assert.Equal(verdict, Holding(age, factor).Doing("glute-bridge").Verdict);
        if (verdict > AsTaught)
            Assert.All(
                Planned.Book.Movements.Where(m => m.Position == Positions.Supine),
                m => Assert.False(IsFlat(Holding(age, factor).Doing(m.Code)), m.Code)
            );
    }

    [Theory]
    [InlineData("13w6d", null, false)]
    [InlineData("14w0d", null, true)]
    [InlineData("13w6d", "separation-now", true)]
    [InlineData("8w0d", "separation-earlier", true)]
    [InlineData("40w0d", "separation-now", true)]
    public void Front_planks_and_hovering_only_in_the_first_trimester_and_never_with_a_separation(
        string age,
        string? factor,
        bool replaced
    )
    {
        foreach (
            var plank in (string[])
                ["front-plank", "high-plank", "kneeling-plank", "all-fours-hover"]
        )
            Assert.Equal(
                replaced ? Replaced : Adapted, // she breathes out on the effort
                Holding(age, factor).Doing(plank).Verdict
            );
    }

    [Theory]
    [InlineData(60)]
    [InlineData(200)]
    public void After_the_birth_too_a_separation_rules_out_front_planks(int days) =>
        Assert.Equal(
            Replaced,
            Someone.Born(days).Holding("separation-now").Doing("front-plank").Verdict
        );

    [Theory]
    [InlineData("13w6d", "separation-now", "side-plank")]
    [InlineData("14w0d", null, "side-plank")]
    [InlineData("27w6d", null, "side-plank")]
    [InlineData("28w0d", null, "heel-sit-rest")]
    public void Then_there_is_a_rest_or_a_side_plank_instead(
        string age,
        string? factor,
        string option
    )
    {
        Assert.Equal(option, Holding(age, factor).Doing("front-plank").Option!.Code);
        Assert.Equal(option, Holding(age, factor).Doing("all-fours-hover").Option!.Code);
    }

    [Theory]
    [InlineData("13w6d", Adapted, false)]
    [InlineData("14w0d", Adapted, true)]
    [InlineData("27w6d", Adapted, true)]
    [InlineData("28w0d", Replaced, false)]
    public void Side_planks_until_the_third_trimester_with_the_knee_down_as_she_goes_on(
        string age,
        MovementVerdict verdict,
        bool kneeDown
    )
    {
        var done = Someone.Pregnant(age).Doing("side-plank");

        Assert.Equal(verdict, done.Verdict);
        Assert.Equal(
            kneeDown,
            done.Instruction.Contains("lower knee down", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("0w0d")]
    [InlineData("13w6d")]
    [InlineData("14w0d")]
    [InlineData("28w0d")]
    [InlineData("41w6d")]
    public void The_cat_stretch_returns_to_neutral_and_does_not_sag(string age)
    {
        foreach (var cat in (string[])["cat-stretch", "cat-and-cow"])
            Assert.Contains(
                "back to neutral, no sag",
                Someone.Pregnant(age).Doing(cat).Instruction,
                StringComparison.Ordinal
            );
    }

    public static TheoryData<string> EveryStage() =>
        [.. Planned.Book.Stages.Stages.Select(s => s.Code)];

    [Theory]
    [MemberData(nameof(EveryStage))]
    public void Leg_slides_suit_every_stage(string stage)
    {
        foreach (var her in Throughout(stage))
        {
            Assert.True(her.Doing("leg-slides").Verdict <= Adapted);
            Assert.True(her.Doing("side-lying-leg-slides").Verdict <= Adapted);
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(41)]
    [InlineData(42)]
    [InlineData(83)]
    [InlineData(84)]
    public void Leg_slides_are_a_staple_after_birth_with_separation_most_of_all(int days)
    {
        var her = Someone.Born(days).Holding("separation-now");

        Assert.Equal(AsTaught, her.Doing("leg-slides").Verdict);
        Assert.True(her.Doing("leg-slides").Says("leg-slides-separation"));
        Assert.Equal("leg-slides", her.Doing("curl-up").Option!.Code);
    }

    [Theory]
    [InlineData("0w0d")]
    [InlineData("20w0d")]
    [InlineData("41w6d")]
    public void A_gentle_side_bend_is_fine(string age)
    {
        Assert.Equal(AsTaught, Someone.Pregnant(age).Doing("seated-side-bend").Verdict);
        Assert.Equal(AsTaught, Someone.Pregnant(age).Doing("standing-side-bend").Verdict);
        Assert.True(Someone.Pregnant(age).Doing("seated-side-bend").Says("side-bend-in-pregnancy"));
    }

    private static Movement? Done(PlannedMovement planned) =>
        planned.Verdict switch
        {
            // Eased to the limit, so its usual effort no longer stands.
            MovementVerdict.Adapted => null,
            MovementVerdict.AsTaught => planned.Movement,
            MovementVerdict.Replaced => planned.Option,
            MovementVerdict.LeftOut => null,
        };

    private static bool IsFlat(PlannedMovement planned)
    {
        var done = planned.Option ?? planned.Movement!;
        return planned.Verdict != MovementVerdict.LeftOut
            && done.Position == Positions.Supine
            && !planned.Instruction.Contains("propped up, not flat", StringComparison.Ordinal);
    }

    private static Core.Clients.HerSituation Holding(string age, string? factor) =>
        factor is null ? Someone.Pregnant(age) : Someone.Pregnant(age).Holding(factor);

    private static IEnumerable<Core.Clients.HerSituation> Throughout(string code)
    {
        var stage = Planned.Book.Stages.Stages.Single(s => s.Code == code);
        string?[] factors = [null, "showing", "separation-now", "lightheaded-lying-flat"];
        foreach (var day in new[] { stage.FromDay, stage.FromDay + 1, stage.ToDay ?? 290 })
        foreach (var factor in factors)
            if (stage.CountsFrom == StageCount.Pregnancy)
                yield return Holding(new GestationalAge(day).ToString(), factor);
            else
                foreach (var mode in Enum.GetValues<BirthMode>())
                    yield return factor is null
                        ? Someone.Born(day, mode)
                        : Someone.Born(day, mode).Holding(factor);
    }
}
