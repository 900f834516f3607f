using CsCheck;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Booking;

/// <summary>What another catalogue or other policies make of the same client, class, plan and date.</summary>
public class FitsUnderOtherRules
{
    private static readonly RuleBook Book = TheCatalogue.Book;
    private static readonly RuleBook Again = TheCatalogue.Parse();

    // Every movement rule as it is, or a step stricter; no rule's instruction changes, so none contradicts another.
    private static readonly RuleBook Stricter = TheCatalogue.Parse(
        (
            "movement_rules.csv",
            text => text.Replace(",replaced,", ",left-out,", StringComparison.Ordinal)
        )
    );

    [Fact]
    public void A_catalogue_compared_with_itself_changes_nothing() =>
        Gen.Select(Any.Case, Any.APlan)
            .AlwaysHolds((case_, plan) => Change(case_, plan, Book, Again) is null);

    [Fact]
    public void Stricter_rules_never_make_a_class_suit_better() =>
        Gen.Select(Any.Case, Any.APlan)
            .AlwaysHolds(
                (case_, plan) =>
                    Change(case_, plan, Book, Stricter) is not { } change
                    || change.To >= change.From && change.Movements.All(m => m.To >= m.From)
            );

    [Fact]
    public void What_changes_one_way_changes_back_the_other() =>
        Gen.Select(Any.Case, Any.APlan)
            .AlwaysHolds(
                (case_, plan) =>
                    (
                        Change(case_, plan, Book, Stricter),
                        Change(case_, plan, Stricter, Book)
                    ) switch
                    {
                        (null, null) => true,
                        ({ } there, { } back) => (there.From, there.To) == (back.To, back.From),
                        _ => false,
                    }
            );

    [Fact]
    public void A_policy_said_to_be_less_cautious_never_makes_a_class_suit_worse() =>
        Gen.Select(Any.Case, Any.APlan)
            .AlwaysHolds(
                (case_, plan) =>
                    LessCautious(case_.Policies)
                        .All(looser =>
                            Of(case_.Her, case_.Class, plan, Book, looser).Verdict
                            <= Of(case_.Her, case_.Class, plan, Book, case_.Policies).Verdict
                        )
            );

    private static IEnumerable<StudioPolicies> LessCautious(StudioPolicies policies) =>
        from choice in Book.PolicyChoices
        from value in choice.Allowed.Split('|').SelectMany(Ends)
        let now = policies.ValueOf(choice.Code)
        where PolicyCaution.Of(choice.Code, value, now) == Caution.Less
        // Two lists of contraindications differ without one being the more cautious.
        where choice.Code != "guideline" || now == "stricter"
        select policies.With(choice.Code, value).Value!;

    private static string[] Ends(string part) => part.Split("..");

    private static FitChange? Change(
        (HerSituation Her, ClassProfile Class, StudioPolicies Policies) case_,
        ClassPlan plan,
        RuleBook before,
        RuleBook after
    ) =>
        FitChanges.Between(
            Of(case_.Her, case_.Class, plan, before, case_.Policies),
            Of(case_.Her, case_.Class, plan, after, case_.Policies)
        );

    private static Fit Of(
        HerSituation her,
        ClassProfile cls,
        ClassPlan plan,
        RuleBook book,
        StudioPolicies policies
    ) => FitRules.Of(her, cls, Someone.Day, book, policies, plan);
}
