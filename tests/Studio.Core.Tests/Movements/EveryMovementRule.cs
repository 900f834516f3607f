using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Booking;

namespace Studio.Core.Tests.Movements;

/// <summary>Each movement rule met by a client made for it, and missed by one it is not for.</summary>
public class EveryMovementRule
{
    private static readonly RuleBook Book = Planned.Book;

    public static IEnumerable<TheoryDataRow<string>> Rules() =>
        Book.MovementRules.Select(rule => new TheoryDataRow<string>(rule.Id)
        {
            TestDisplayName = $"{rule.Id} ({rule.Source.Cite})",
        });

    [Fact]
    public void There_are_enough_of_them_to_teach_by() =>
        Assert.True(Book.MovementRules.Count >= 85);

    [Theory]
    [MemberData(nameof(Rules))]
    public void Speaks_for_whoever_it_is_made_for(string id)
    {
        var rule = Book.MovementRules.Single(r => r.Id == id);
        var (her, policies) = (MadeFor(rule), PoliciesFor(rule));
        foreach (var movement in Spoken(rule, policies))
        {
            var done = her.Doing(movement.Code, policies);
            var reason = Assert.Single(done.Reasons, r => r.Rule == id);

            Assert.Equal(rule.Verdict, reason.Verdict);
            Assert.Same(rule.Source, reason.Source);
            Assert.Equal(rule.Factor, reason.Factor);
            Assert.True(done.Verdict >= rule.Verdict);
            Assert.DoesNotContain(
                "{",
                reason.ForHer + reason.Instruction,
                StringComparison.Ordinal
            );
        }
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void Is_silent_about_every_other_movement_and_everybody_else(string id)
    {
        var rule = Book.MovementRules.Single(r => r.Id == id);
        var (her, policies) = (MadeFor(rule), PoliciesFor(rule));
        var spoken = Spoken(rule, policies).Select(m => m.Code).ToHashSet(StringComparer.Ordinal);
        var everything = Planned.Plan([.. Book.Movements.Select(m => m.Code)]);

        Assert.All(
            her.Taught(everything, policies).Items,
            done => Assert.Equal(spoken.Contains(done.Code), done.Says(id))
        );
        if (rule.Factor is not null)
            Assert.DoesNotContain(
                (her with { Factors = [] }).Taught(everything, policies).Items,
                done => done.Says(id)
            );
        if (rule.Policy is { } policy)
            Assert.All(
                Book.PolicyChoices.Single(c => c.Code == policy.Code)
                    .Allowed.Split('|')
                    .Except(policy.Values, StringComparer.Ordinal),
                value =>
                    Assert.DoesNotContain(
                        her.Taught(everything, policies.With(policy.Code, value).Value!).Items,
                        done => done.Says(id)
                    )
            );
        if (rule.BirthModes.Count > 0)
            foreach (
                var mode in Enum.GetValues<BirthMode>()
                    .Where(m => m != BirthMode.Unknown && !rule.BirthModes.Contains(m))
            )
                Assert.DoesNotContain(
                    MadeFor(rule, mode).Taught(everything, policies).Items,
                    done => done.Says(id)
                );
    }

    [Fact]
    public void Instructions_are_short_and_never_name_what_she_holds() =>
        Assert.All(
            Book.MovementRules,
            rule =>
            {
                Assert.InRange(rule.Instruction.Length, 0, 45);
                Assert.All(
                    Book.Factors,
                    f =>
                        Assert.DoesNotContain(
                            f.Name,
                            rule.Instruction,
                            StringComparison.OrdinalIgnoreCase
                        )
                );
                Assert.EndsWith(".", rule.ForHer, StringComparison.Ordinal);
            }
        );

    private static IEnumerable<Movement> Spoken(MovementRule rule, StudioPolicies policies) =>
        Book.Movements.Where(m => rule.Target.Names(m) && rule.Target.ReachesEffort(m, policies));

    private static StudioPolicies PoliciesFor(MovementRule rule) =>
        rule.Policy is { } policy
            ? Someone
                .Policies.With(policy.Code, policy.Values.Order(StringComparer.Ordinal).First())
                .Value!
            : Someone.Policies;

    private static HerSituation MadeFor(MovementRule rule, BirthMode? mode = null)
    {
        var stage = Book.Stages.Stages.FirstOrDefault(s => rule.Stages.Contains(s.Code));
        var factor = rule.Factor is { } code ? Book.ConditionOf(code) : null;
        // Where pregnancy rules out every class, the rule is for the time after it.
        var born =
            rule.AfterBirthOnly
            || stage?.CountsFrom == StageCount.Birth
            || stage is null && !rule.InPregnancyOnly && factor?.AfterBirth is not null;
        var day = Math.Max(
            stage?.FromDay ?? 0,
            born ? rule.FromBorn ?? 0 : rule.FromAge?.Days ?? 0
        );
        var her = born
            ? Someone.Born(
                day,
                mode
                    ?? (
                        rule.BirthModes.Count > 0
                            ? rule.BirthModes.Order().First()
                            : BirthMode.Vaginal
                    )
            )
            : Someone.Pregnant(new GestationalAge(day).ToString());
        return rule.Factor is null ? her : her.Holding(rule.Factor);
    }
}
