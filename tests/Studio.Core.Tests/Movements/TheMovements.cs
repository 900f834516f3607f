using Studio.Core.Catalogue;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Booking;

namespace Studio.Core.Tests.Movements;

/// <summary>What holds of the movements that ship. Common practice, no published source.</summary>
public class TheMovements
{
    private static readonly IReadOnlyList<Movement> All = Planned.Book.Movements;

    [Fact]
    public void There_are_enough_of_them_in_every_group()
    {
        Assert.True(All.Count >= 120);
        Assert.All(
            MovementGroups.All.Keys,
            group => Assert.True(All.Count(m => m.Group == group) >= 7)
        );
    }

    [Fact]
    public void Every_position_and_trait_is_met_and_spoken_of() =>
        Assert.All(
            Positions.All.Keys.Concat(MovementTraits.All.Keys),
            code =>
            {
                Assert.Contains(All, m => m.Has(code));
                Assert.NotNull(MovementTraits.NameOf(code));
            }
        );

    [Fact]
    public void Every_trait_is_spoken_of_by_a_rule() =>
        Assert.Equal(
            MovementTraits.All.Keys.Order(StringComparer.Ordinal),
            Planned
                .Book.MovementRules.Select(r => r.Target.Trait)
                .OfType<string>()
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)
        );

    [Fact]
    public void A_cue_is_one_sentence() =>
        Assert.All(
            All,
            m =>
            {
                Assert.EndsWith(".", m.Cue, StringComparison.Ordinal);
                Assert.Equal(1, m.Cue.Count(c => c is '.' or '!' or '?'));
            }
        );

    [Fact]
    public void A_class_trait_and_a_movements_that_mean_the_same_have_one_code() =>
        Assert.Equal(
            ["breath-only", "moderate-effort", "warm-room"],
            ClassTraits
                .All.Where(t => MovementTraits.NameOf(t) is null)
                .Order(StringComparer.Ordinal)
        );

    // Nothing harder than the rests is without a way on: whoever cannot do it does something else.
    [Fact]
    public void Whatever_is_ruled_out_in_some_stage_has_a_gentler_option() =>
        Assert.All(
            from movement in All
            from stage in Planned.Book.Stages.Stages
            select (movement, stage),
            pair =>
            {
                var her =
                    pair.stage.CountsFrom == StageCount.Birth
                        ? Someone.Born(Math.Max(pair.stage.FromDay, 2))
                        : Someone.Pregnant(new GestationalAge(pair.stage.FromDay).ToString());
                Assert.NotEqual(MovementVerdict.LeftOut, her.Doing(pair.movement.Code).Verdict);
            }
        );

    [Fact]
    public void Class_rules_that_adapt_a_trait_have_movements_that_follow_them() =>
        Assert.All(
            Planned.Book.ClassRules.Where(r =>
                r is { Verdict: RuleVerdict.Adapted, Trait: not null }
                && MovementTraits.NameOf(r.Trait) is not null
            ),
            rule =>
                Assert.Contains(
                    Planned.Book.MovementRules,
                    m =>
                        m.Verdict > MovementVerdict.AsTaught
                        && m.Factor == rule.Factor
                        && (
                            m.Target.Trait == rule.Trait
                            || m.Target.Position == rule.Trait
                            || rule is { Trait: "front-support", Factor: "wrist-pain" }
                                && m.Target.Trait == MovementTraits.WristLoad
                        )
                )
        );
}
