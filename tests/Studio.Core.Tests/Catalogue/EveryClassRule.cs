using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Booking;

namespace Studio.Core.Tests.Catalogue;

/// <summary>Each class rule met by a client made for it, and missed by one it is not for.</summary>
public class EveryClassRule
{
    private static readonly RuleBook Book = TheCatalogue.Book;

    public static IEnumerable<TheoryDataRow<string>> Rules() =>
        Book.ClassRules.Select(rule => new TheoryDataRow<string>(rule.Id)
        {
            TestDisplayName = $"{rule.Id} ({rule.Source.Cite})",
        });

    [Fact]
    public void There_are_enough_of_them_to_teach_by() => Assert.True(Book.ClassRules.Count >= 35);

    [Theory]
    [MemberData(nameof(Rules))]
    public void Speaks_for_whoever_it_is_made_for(string id)
    {
        var rule = Book.ClassRules.Single(r => r.Id == id);
        var reason = Assert.Single(
            MadeFor(rule).In(ClassFor(rule), PoliciesFor(rule)).Reasons,
            r => r.Rule == id
        );

        var verdict = rule.Verdict switch
        {
            RuleVerdict.Note => Suits.Suitable,
            RuleVerdict.Adapted or RuleVerdict.Letter => Suits.WithModifications,
            RuleVerdict.NotSuitable => Suits.NotSuitable,
        };
        Assert.Equal(verdict, reason.Verdict);
        Assert.Same(rule.Source, reason.Source);
        Assert.Equal(rule.Factor, reason.Factor);
        Assert.Equal(
            rule.Verdict == RuleVerdict.NotSuitable,
            reason.ForInstructor != rule.ForInstructor
        );
        Assert.False(string.IsNullOrEmpty(reason.ForInstructor));
        Assert.DoesNotContain(
            "{",
            $"{reason.ForHer}{reason.ForInstructor}{reason.Lift?.Text}",
            StringComparison.Ordinal
        );
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void Asks_for_a_letter_where_that_is_its_verdict(string id)
    {
        var rule = Book.ClassRules.Single(r => r.Id == id);
        var fit = MadeFor(rule).WithoutLetters().In(ClassFor(rule), Someone.OnlyFlagged);

        Assert.Equal(
            rule.Verdict == RuleVerdict.Letter,
            fit.Reasons.Any(r => r.Rule == id && r.Verdict == Suits.NeedsClearance)
        );
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void Is_silent_in_a_class_without_its_trait_and_for_one_without_her_factor(string id)
    {
        var rule = Book.ClassRules.Single(r => r.Id == id);
        var (her, policies) = (MadeFor(rule), PoliciesFor(rule));

        if (rule.Trait is not null)
            Assert.False(her.In(Someone.AClass(), policies).Says(id));
        if (rule.Except is { } spared)
            Assert.False(her.In(Someone.AClass(spared), policies).Says(id));
        if (rule.Factor is not null)
            Assert.False((her with { Factors = [] }).In(ClassFor(rule), policies).Says(id));
        if (rule.BirthModes.Count > 0)
            Assert.False(
                MadeFor(rule, Enum.GetValues<BirthMode>().First(m => !rule.BirthModes.Contains(m)))
                    .In(ClassFor(rule))
                    .Says(id)
            );
    }

    private static ClassProfile ClassFor(ClassRule rule) =>
        rule.Trait is { } trait ? Someone.AClass(trait) : Someone.AClass();

    private static StudioPolicies PoliciesFor(ClassRule rule) =>
        rule.Policy is { } policy
            ? Someone
                .Policies.With(policy.Code, policy.Values.Order(StringComparer.Ordinal).First())
                .Value!
            : Someone.Policies;

    private static HerSituation MadeFor(ClassRule rule, BirthMode? mode = null)
    {
        var stage = Book.Stages.Stages.FirstOrDefault(s => rule.Stages.Contains(s.Code));
        var born = rule.AfterBirthOnly || stage?.CountsFrom == StageCount.Birth;
        var day = Math.Max(
            stage?.FromDay ?? 0,
            born ? rule.FromBorn ?? 0 : rule.FromAge?.Days ?? 0
        );
        var her = born
            ? Someone.Born(
                day,
                mode ?? (rule.BirthModes.Count > 0 ? rule.BirthModes.First() : BirthMode.Vaginal)
            )
            : Someone.Pregnant(new GestationalAge(day).ToString());
        her = rule.Factor is { } code ? her.Holding(code) : her;
        // A letter of the day itself answers for whatever began before it.
        return her.WithLetter(0, 100);
    }
}
