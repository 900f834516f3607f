using CsCheck;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;
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

    private static readonly Gen<LocalDate> Near = Gen.Int[-320, 320]
        .Select(days => Someone.Day.PlusDays(days));

    private static readonly Gen<Pregnancy?> AnyPregnancy = Gen.Select(
        Gen.Int[-20, 310],
        Gen.Int[1, 4],
        Gen.Int[-5, 200],
        Gen.Enum<BirthMode>(),
        Gen.Int[0, 9],
        (age, babies, born, mode, kind) =>
        {
            var due = Someone.Day.PlusDays(280 - age);
            return kind switch
            {
                0 => null,
                1 => new Pregnancy
                {
                    DueDate = due,
                    Babies = babies,
                    EndedOn = Someone.Day.PlusDays(-born),
                },
                2 => new Pregnancy { Babies = babies },
                3 or 4 or 5 => new Pregnancy
                {
                    DueDate = due,
                    Babies = babies,
                    BornOn = Someone.Day.PlusDays(-born),
                    BirthMode = mode,
                },
                _ => new Pregnancy { DueDate = due, Babies = babies },
            };
        }
    );

    private static readonly Gen<HeldFactor> AnyFactor = Gen.Select(
        OneOf([.. Book.Factors.Select(f => f.Code), "not-in-the-catalogue"]),
        Gen.Int[-5, 200],
        Gen.Int[-1, 100],
        (code, began, lasts) =>
            new HeldFactor(
                code,
                Someone.Day.PlusDays(-began),
                lasts < 0 ? null : Someone.Day.PlusDays(lasts - began)
            )
    );

    private static readonly Gen<ClearanceLetter> AnyLetter = Gen.Select(
        Near,
        Gen.Int[-5, 400],
        Gen.Int[0, 5],
        (issued, lasts, withdrawn) =>
            new ClearanceLetter(issued, issued.PlusDays(lasts), withdrawn == 0)
    );

    private static readonly Gen<Hold> AnyHold = Gen.Select(
        Near,
        Near,
        Gen.Bool,
        (from, to, lifted) => new Hold(from, lifted ? to : null)
    );

    private static readonly Gen<Screening?> AnyScreening = Gen.Select(
        Near,
        Gen.Enum<ScreeningOutcome>(),
        Gen.Int[0, 4],
        (on, outcome, none) => none == 0 ? null : new Screening(on, outcome)
    );

    private static readonly Gen<HerSituation> Anyone = Gen.Select(
        AnyPregnancy,
        AnyFactor.Array[0, 4],
        AnyLetter.Array[0, 3],
        AnyScreening,
        AnyHold.Array[0, 1],
        (pregnancy, factors, letters, screening, holds) =>
            new HerSituation
            {
                Pregnancy = pregnancy,
                Factors = factors,
                Letters = letters,
                Screening = screening,
                Holds = holds,
            }
    );

    private static readonly Gen<ClassProfile> AnyClass = Gen.Select(
        Gen.Shuffle(ClassTraits.All.Order(StringComparer.Ordinal).ToArray(), 0, 12),
        Gen.Shuffle(Book.Stages.Stages.Select(s => s.Code).ToArray(), 1, 6),
        (traits, stages) => Someone.For(stages, traits)
    );

    private static readonly Gen<StudioPolicies> AnyPolicies = Gen.Select(
        Gen.Enum<Guideline>(),
        Gen.Bool,
        Gen.Bool,
        Gen.Enum<WeekReading>(),
        (guideline, everyone, follows, reading) =>
            new StudioPolicies
            {
                Guideline = guideline,
                ClearanceForEveryone = everyone,
                LetterFollowsChange = follows,
                WeekReading = reading,
            }
    );

    private static readonly Gen<(
        HerSituation Her,
        ClassProfile Class,
        StudioPolicies Policies
    )> Anything = Gen.Select(Anyone, AnyClass, AnyPolicies);

    [Fact]
    public void Another_factor_or_condition_never_makes_it_milder() =>
        Gen.Select(Anything, AnyFactor)
            .Sample(
                (case_, factor) =>
                    Of(case_).Verdict
                    <= Of(case_, her => her with { Factors = [.. her.Factors, factor] }).Verdict
            );

    [Fact]
    public void Another_hold_never_makes_it_milder() =>
        Gen.Select(Anything, AnyHold)
            .Sample(
                (case_, hold) =>
                    Of(case_).Verdict
                    <= Of(case_, her => her with { Holds = [.. her.Holds, hold] }).Verdict
            );

    [Fact]
    public void Taking_a_letter_away_never_makes_it_milder() =>
        Gen.Select(Anything, AnyLetter)
            .Sample(
                (case_, letter) =>
                    Of(case_, her => her with { Letters = [.. her.Letters, letter] }).Verdict
                    <= Of(case_).Verdict
            );

    [Fact]
    public void The_stricter_reading_is_never_milder_than_either_list() =>
        Anything.Sample(case_ =>
            new[] { Guideline.Acog, Guideline.Canada }.All(guideline =>
                Under(case_, guideline).Verdict <= Under(case_, Guideline.Stricter).Verdict
            )
        );

    [Fact]
    public void A_letter_for_everyone_is_never_milder_than_one_for_some() =>
        Anything.Sample(case_ =>
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
                Anything,
                OneOf([
                    .. ClassTraits
                        .All.Where(t => t != ClassTraits.BreathOnly)
                        .Order(StringComparer.Ordinal),
                ])
            )
            .Sample(
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
        Anything.Sample(case_ =>
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
        Anything.Sample(case_ =>
            Of(case_).AllOf()
            == FitRules.Of(case_.Her, case_.Class, Someone.Day, Backwards, case_.Policies).AllOf()
        );

    [Fact]
    public void The_verdict_is_the_first_and_strictest_reasons() =>
        Anything.Sample(case_ =>
        {
            var fit = Of(case_);
            return fit.Verdict
                    == fit.Reasons.Select(r => r.Verdict).DefaultIfEmpty(Suits.Suitable).Max()
                && fit.Reasons.Select(r => -(int)r.Verdict)
                    .SequenceEqual(fit.Reasons.Select(r => -(int)r.Verdict).Order());
        });

    [Fact]
    public void No_letter_and_no_answer_is_never_cleared() =>
        Anything.Sample(case_ =>
            Of(case_, her => her with { Screening = null }).Verdict >= Suits.NeedsClearance
        );

    /// <summary>No name and no code of anything she may hold, in whatever the desk can read.</summary>
    [Fact]
    public void The_front_desk_reads_no_condition_no_factor_and_no_answer() =>
        Anything.Sample(case_ =>
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
        Anything.Sample(case_ =>
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

    private static Gen<string> OneOf(IReadOnlyList<string> words) =>
        Gen.Int[0, words.Count - 1].Select(at => words[at]);

    private static string RowsReversed(string text)
    {
        var lines = text.TrimEnd('\n').Split('\n');
        return string.Join('\n', [lines[0], .. lines[1..].Reverse()]);
    }
}
