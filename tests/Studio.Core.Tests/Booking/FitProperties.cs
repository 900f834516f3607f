using CsCheck;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Booking;

/// <summary>What holds of every verdict, whoever she is and whatever the class.</summary>
public class FitProperties
{
    private static readonly RuleBook Book = TheCatalogue.Book;
    private static readonly RuleBook Backwards = TheCatalogue.Parse(
        ("class_rules.csv", RowsReversed),
        ("conditions.csv", RowsReversed),
        ("factors.csv", RowsReversed)
    );

    [Fact]
    public void Another_factor_or_condition_never_makes_it_milder() =>
        Gen.Select(Any.Case, Any.AFactor)
            .AlwaysHolds(
                (case_, factor) =>
                    Of(case_).Verdict
                    <= Of(case_, her => her with { Factors = [.. her.Factors, factor] }).Verdict
            );

    [Fact]
    public void Another_hold_never_makes_it_milder() =>
        Gen.Select(Any.Case, Any.AHold)
            .AlwaysHolds(
                (case_, hold) =>
                    Of(case_).Verdict
                    <= Of(case_, her => her with { Holds = [.. her.Holds, hold] }).Verdict
            );

    [Fact]
    public void Taking_a_letter_away_never_makes_it_milder() =>
        Gen.Select(Any.Case, Any.ALetter)
            .AlwaysHolds(
                (case_, letter) =>
                    Of(case_, her => her with { Letters = [.. her.Letters, letter] }).Verdict
                    <= Of(case_).Verdict
            );

    [Fact]
    public void The_stricter_reading_is_never_milder_than_either_list() =>
        Any.Case.AlwaysHolds(case_ =>
            new[] { Guideline.Acog, Guideline.Canada }.All(guideline =>
                Under(case_, guideline).Verdict <= Under(case_, Guideline.Stricter).Verdict
            )
        );

    [Fact]
    public void A_letter_for_everyone_is_never_milder_than_one_for_some() =>
        Any.Case.AlwaysHolds(case_ =>
            Of(
                (case_.Her, case_.Class, case_.Policies with { ClearanceForEveryone = false })
            ).Verdict
            <= Of(
                (case_.Her, case_.Class, case_.Policies with { ClearanceForEveryone = true })
            ).Verdict
        );

    [Fact]
    public void Another_trait_never_makes_it_milder_except_talk_and_breath() =>
        Gen.Select(
                Any.Case,
                Any.OneOf([
                    .. ClassTraits
                        .All.Where(t => t != ClassTraits.BreathOnly)
                        .Order(StringComparer.Ordinal),
                ])
            )
            .AlwaysHolds(
                (case_, trait) =>
                    Of(case_).Verdict
                    <= Of(
                        (
                            case_.Her,
                            Someone.For(case_.Class.Stages, [.. case_.Class.Traits, trait]),
                            case_.Policies
                        )
                    ).Verdict
            );

    [Fact]
    public void The_order_of_factors_letters_and_holds_changes_nothing() =>
        Any.Case.AlwaysHolds(case_ =>
            Of(case_).AllOf()
            == Of(
                    case_,
                    her =>
                        her with
                        {
                            Factors = [.. her.Factors.Reverse()],
                            Letters = [.. her.Letters.Reverse()],
                            Holds = [.. her.Holds.Reverse()],
                        }
                )
                .AllOf()
        );

    [Fact]
    public void The_order_of_the_catalogues_rows_changes_nothing() =>
        Any.Case.AlwaysHolds(case_ =>
            Of(case_).AllOf()
            == FitRules.Of(case_.Her, case_.Class, Someone.Day, Backwards, case_.Policies).AllOf()
        );

    [Fact]
    public void The_verdict_is_the_first_and_strictest_reasons() =>
        Any.Case.AlwaysHolds(case_ =>
        {
            var fit = Of(case_);
            return fit.Verdict
                    == fit.Reasons.Select(r => r.Verdict).DefaultIfEmpty(Suits.Suitable).Max()
                && fit.Reasons.Select(r => -(int)r.Verdict)
                    .SequenceEqual(fit.Reasons.Select(r => -(int)r.Verdict).Order());
        });

    [Fact]
    public void No_letter_and_no_answer_is_never_cleared() =>
        Any.Case.AlwaysHolds(case_ =>
            Of(case_, her => her with { Screening = null }).Verdict >= Suits.NeedsClearance
        );

    /// <summary>No name and no code of anything she may hold, in whatever the desk can read.</summary>
    [Fact]
    public void The_front_desk_reads_no_condition_no_factor_and_no_answer() =>
        Any.Case.AlwaysHolds(case_ =>
        {
            var fit = Of(case_);
            var read = string.Join(
                '\n',
                fit.Reasons.SelectMany(r => new[] { r.ForDesk, r.DeskLift?.Text })
                    .Concat(fit.ForDesk().SelectMany(r => new[] { r.Code, r.Text, r.Lift?.Text }))
            );
            return Book.Factors.All(f =>
                !read.Contains(f.Name, StringComparison.OrdinalIgnoreCase)
                && !read.Contains(f.Code, StringComparison.OrdinalIgnoreCase)
            );
        });

    [Fact]
    public void Instructions_never_name_what_she_holds() =>
        Any.Case.AlwaysHolds(case_ =>
            Of(case_)
                .Reasons.All(r =>
                    r.Factor is not { } code
                    || Book.FactorOf(code) is not { } factor
                    || !(r.ForInstructor ?? "").Contains(
                        factor.Name,
                        StringComparison.OrdinalIgnoreCase
                    )
                )
        );

    private static Fit Of(
        (HerSituation Her, ClassProfile Class, StudioPolicies Policies) case_,
        Func<HerSituation, HerSituation>? change = null
    ) =>
        FitRules.Of(
            change is null ? case_.Her : change(case_.Her),
            case_.Class,
            Someone.Day,
            Book,
            case_.Policies
        );

    private static Fit Under(
        (HerSituation Her, ClassProfile Class, StudioPolicies Policies) case_,
        Guideline guideline
    ) => Of((case_.Her, case_.Class, case_.Policies with { Guideline = guideline }));

    private static string RowsReversed(string text)
    {
        var lines = text.TrimEnd('\n').Split('\n');
        return string.Join('\n', [lines[0], .. lines[1..].Reverse()]);
    }
}
