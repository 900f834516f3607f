using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Booking;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Movements;

/// <summary>
/// Rows of positions_and_movements.csv, intensity.csv and postpartum_return.csv that carry a day or a limit, on the day
/// before and the day itself, under the policy that follows them. Each case shows its row's source.
/// </summary>
public class PublishedMovementRules
{
    private static readonly IReadOnlyList<ReferenceRow> Positions = Reference.Read(
        "positions_and_movements.csv"
    );
    private static readonly IReadOnlyList<ReferenceRow> Returns = Reference.Read(
        "postpartum_return.csv"
    );

    private static readonly Dictionary<string, SupineFrom> Weeks = new(StringComparer.Ordinal)
    {
        ["M01"] = SupineFrom.Week14,
        ["M02"] = SupineFrom.Week14,
        ["M03"] = SupineFrom.Week14,
        ["M04"] = SupineFrom.Week16,
        ["M05"] = SupineFrom.Week16,
        ["M06"] = SupineFrom.Week20,
        ["M07"] = SupineFrom.Week28,
    };

    public static IEnumerable<TheoryDataRow<string>> SupineRows() =>
        Reference.Cases(
            Positions.Where(r => r["topic"] == "supine" && r["from_day"].Length > 0),
            r => r["statement"]
        );

    [Theory]
    [MemberData(nameof(SupineRows))]
    public void Lying_flat_ends_on_the_published_day_under_the_policy_that_follows_the_row(
        string id
    )
    {
        var day = Positions.Row(id).Day("from_day")!.Value;
        var policies = Someone.Policies with { SupineFrom = Weeks[id] };

        Assert.Equal(MovementVerdict.AsTaught, Flat(day - 1, policies));
        Assert.Equal(MovementVerdict.Replaced, Flat(day, policies));
    }

    // M08: SOGC/CSEP 2019, seen. A rule by symptom and no week.
    [Theory]
    [InlineData(100)]
    [InlineData(290)]
    public void By_symptoms_alone_only_feeling_faint_ends_lying_flat(int day)
    {
        var policies = Someone.Policies with { SupineFrom = SupineFrom.Symptoms };
        var her = At(day);

        Assert.Equal(MovementVerdict.AsTaught, her.Doing("glute-bridge", policies).Verdict);
        Assert.Equal(
            MovementVerdict.Replaced,
            her.Holding("lightheaded-lying-flat").Doing("glute-bridge", policies).Verdict
        );
    }

    [Fact]
    public void The_default_is_the_most_cautious_week() =>
        Assert.Equal(SupineFrom.Week14, Planned.Book.Policies.SupineFrom);

    // M35 and M36: NIOSH 2013, from memory. M37: AMA 1984, seen.
    [Theory]
    [InlineData("M35", 139, "16 kg at most")]
    [InlineData("M36", 140, "12 kg at most")]
    [InlineData("M36", 167, "12 kg at most")]
    [InlineData("M37", 168, "11 kg at most")]
    public void Lifting_by_weight_follows_the_published_weeks(string id, int day, string says)
    {
        var done = At(day).Doing("deadlift", Someone.Policies with { Lifting = Lifting.ByWeight });

        Assert.Equal(MovementVerdict.Adapted, done.Verdict);
        Assert.Contains(says, done.Instruction, StringComparison.Ordinal);
        Assert.Contains(done.Reasons, r => r.Source?.Id == id);
        Assert.Contains(
            Positions.Row(id)["threshold_value"],
            (string[])[says.Split(' ')[0], id == "M35" ? "36" : "26"]
        );
    }

    [Fact]
    public void Under_the_default_nothing_heavy_is_lifted_in_pregnancy() =>
        Assert.All(
            Planned.Book.Movements.Where(m => m.Has(MovementTraits.HeavyLoad)),
            m =>
                Assert.DoesNotContain(
                    MovementTraits.HeavyLoad,
                    At(60).Doing(m.Code).Option?.Traits ?? new HashSet<string>()
                )
        );

    public static IEnumerable<TheoryDataRow<string>> ImpactRows() =>
        Reference.Cases(
            Returns.Where(r => r.Id is "PR07" or "PR08" or "PR12" or "PR13"),
            r => r["statement"]
        );

    [Theory]
    [MemberData(nameof(ImpactRows))]
    public void Impact_returns_on_the_published_day_under_the_policy_that_follows_the_row(string id)
    {
        var day = Returns.Row(id).Day("from_day")!.Value;
        var policies = Someone.Policies with { ImpactAfterBirthDays = day };

        Assert.Equal(MovementVerdict.Replaced, Jog(day - 1, policies));
        Assert.Equal(
            day < 84 ? MovementVerdict.Adapted : MovementVerdict.AsTaught,
            Jog(day, policies)
        );
    }

    // PR09: NHS Suffolk and North East Essex, seen. PR02: Mayo Clinic, seen.
    [Theory]
    [InlineData(BirthMode.Caesarean, 55, MovementVerdict.Replaced)]
    [InlineData(BirthMode.Caesarean, 56, MovementVerdict.AsTaught)]
    [InlineData(BirthMode.Unknown, 55, MovementVerdict.Replaced)]
    [InlineData(BirthMode.Unknown, 56, MovementVerdict.AsTaught)]
    [InlineData(BirthMode.Vaginal, 1, MovementVerdict.LeftOut)]
    [InlineData(BirthMode.Vaginal, 2, MovementVerdict.AsTaught)]
    [InlineData(BirthMode.Assisted, 1, MovementVerdict.LeftOut)]
    [InlineData(null, 55, MovementVerdict.Replaced)]
    public void More_than_the_gentlest_waits_for_the_published_day(
        BirthMode? mode,
        int day,
        MovementVerdict verdict
    ) => Assert.Equal(verdict, Someone.Born(day, mode).Doing("kneeling-hip-hinge").Verdict);

    // PR04: ACOG 2020, from memory; PR05: UK Chief Medical Officers 2019, seen.
    [Theory]
    [InlineData(BirthMode.Vaginal)]
    [InlineData(BirthMode.Assisted)]
    [InlineData(BirthMode.Caesarean)]
    [InlineData(BirthMode.Unknown)]
    public void Pelvic_floor_work_may_begin_on_the_day_of_birth(BirthMode mode) =>
        Assert.All(
            Planned.Book.Movements.Where(m =>
                m.Code.StartsWith("pelvic-floor-", StringComparison.Ordinal)
            ),
            m => Assert.Equal(MovementVerdict.AsTaught, Someone.Born(0, mode).Doing(m.Code).Verdict)
        );

    // PR11: UK Chief Medical Officers 2019, seen: from the check at six weeks, over at least three months.
    [Theory]
    [InlineData(132, MovementVerdict.Adapted)]
    [InlineData(133, MovementVerdict.AsTaught)]
    public void The_hardest_effort_waits_three_months_from_the_check(
        int day,
        MovementVerdict verdict
    ) => Assert.Equal(verdict, Someone.Born(day).Doing("jump-squat").Verdict);

    // M26: ACOG 1994, seen.
    [Theory]
    [InlineData(195, MovementVerdict.AsTaught)]
    [InlineData(196, MovementVerdict.Adapted)]
    public void Balances_have_a_wall_or_chair_from_the_published_day(
        int day,
        MovementVerdict verdict
    ) => Assert.Equal(verdict, At(day).Doing("single-leg-stand").Verdict);

    // M60 and M61, both seen, contradict each other.
    [Theory]
    [InlineData(ProlapseWork.Avoid, MovementVerdict.Replaced)]
    [InlineData(ProlapseWork.BySymptoms, MovementVerdict.Adapted)]
    public void Heaviness_below_follows_the_page_the_studio_chose(
        ProlapseWork work,
        MovementVerdict verdict
    )
    {
        var policies = Someone.Policies with { ProlapseWork = work };
        var her = Someone.Born(200).Holding("prolapse-or-leaking");

        foreach (var movement in (string[])["jumping-jack", "deadlift", "curl-up"])
            Assert.Equal(verdict, her.Doing(movement, policies).Verdict);
    }

    // M56: Northern Care Alliance NHS, seen: not on one leg, no straddles, no low squats, weight even.
    [Theory]
    [InlineData("single-leg-stand")]
    [InlineData("straddle-reach")]
    [InlineData("deep-squat")]
    [InlineData("stepping-lunge")]
    [InlineData("side-sitting-bend")]
    public void Pain_around_the_pelvis_rules_out_what_the_page_names(string movement) =>
        Assert.Equal(
            MovementVerdict.Replaced,
            At(150).Holding("pelvic-girdle-pain").Doing(movement).Verdict
        );

    // M13: community perinatal programme, seen; no week is given.
    [Theory]
    [InlineData(0)]
    [InlineData(290)]
    public void Nobody_pregnant_lies_on_the_belly(int day) =>
        Assert.All(
            Planned.Book.Movements,
            m =>
                Assert.NotEqual(
                    Core.Movements.Positions.Prone,
                    (
                        At(day).Doing(m.Code) is { Verdict: MovementVerdict.Replaced } done
                            ? done.Option!
                        : m.Position == Core.Movements.Positions.Prone
                            ? throw new InvalidOperationException(m.Code)
                        : m
                    ).Position
                )
        );

    private static MovementVerdict Flat(int day, StudioPolicies policies) =>
        At(day).Doing("glute-bridge", policies).Verdict;

    private static MovementVerdict Jog(int day, StudioPolicies policies) =>
        Someone.Born(day).Doing("jog-on-the-spot", policies).Verdict;

    private static HerSituation At(int day) => Someone.Pregnant(new GestationalAge(day).ToString());
}
