using System.Collections.Concurrent;
using CsCheck;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Booking;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Movements;

/// <summary>What holds of every plan, whoever she is.</summary>
public class PlanProperties
{
    private static readonly RuleBook Book = TheCatalogue.Book;
    private static readonly RuleBook Backwards = TheCatalogue.Parse(
        ("movement_rules.csv", RowsReversed),
        ("movements.csv", RowsReversed),
        ("conditions.csv", RowsReversed),
        ("factors.csv", RowsReversed)
    );

    // Each needs the catalogue read again, so there are a few of every kind of rule.
    private static readonly string[] Removable =
    [
        .. Book.MovementRules.Where((_, at) => at % 6 == 0).Select(r => r.Id),
    ];

    private static readonly ConcurrentDictionary<string, RuleBook> Without = new(
        StringComparer.Ordinal
    );

    private static readonly Gen<(HerSituation Her, ClassPlan Plan, StudioPolicies Policies)> Case =
        Gen.Select(Any.AClient, Any.APlan, Any.APolicy);

    [Fact]
    public void Another_factor_never_makes_any_movement_milder() =>
        Gen.Select(Case, Any.AFactor)
            .AlwaysHolds(
                (case_, factor) =>
                    NeverMilder(
                        Of(case_),
                        Of(case_, her => her with { Factors = [.. her.Factors, factor] })
                    )
            );

    [Fact]
    public void Another_restriction_never_makes_any_movement_milder() =>
        Gen.Select(Case, Any.ARestriction)
            .AlwaysHolds(
                (case_, restriction) =>
                    NeverMilder(
                        Of(case_),
                        Of(
                            case_,
                            her => her with { Restrictions = [.. her.Restrictions, restriction] }
                        )
                    )
            );

    [Fact]
    public void Another_hold_never_makes_any_movement_milder() =>
        Gen.Select(Case, Any.AHold)
            .AlwaysHolds(
                (case_, hold) =>
                    NeverMilder(
                        Of(case_),
                        Of(case_, her => her with { Holds = [.. her.Holds, hold] })
                    )
            );

    [Fact]
    public void Taking_a_rule_away_never_makes_any_movement_stricter() =>
        Gen.Select(Case, Any.OneOf(Removable))
            .AlwaysHolds(
                (case_, rule) => NeverMilder(Of(case_, book: WithoutRule(rule)), Of(case_))
            );

    [Fact]
    public void The_option_is_as_taught_or_adapted_in_its_own_right() =>
        Case.AlwaysHolds(case_ =>
            Of(case_)
                .Items.All(item =>
                    (item.Option is null) == (item.Verdict != MovementVerdict.Replaced)
                    && (
                        item.Option is not { } option
                        || Of((case_.Her, Planned.Plan(option.Code), case_.Policies)).Items[0]
                            is { Verdict: <= MovementVerdict.Adapted } alone
                            && alone.Reasons.SequenceEqual(item.OptionReasons)
                    )
                )
        );

    [Fact]
    public void An_option_never_asks_for_more_effort() =>
        Case.AlwaysHolds(case_ =>
            Of(case_).Items.All(i => i.Option is null || i.Option.Effort <= i.Movement!.Effort)
        );

    [Fact]
    public void Nearer_options_are_ruled_out_before_a_farther_one_is_taken() =>
        Case.AlwaysHolds(case_ =>
            Of(case_)
                .Items.Where(i => i.Option is not null)
                .All(item =>
                    item.Movement!.Options.TakeWhile(o => o != item.Option!.Code)
                        .All(nearer =>
                            Of((case_.Her, Planned.Plan(nearer), case_.Policies)).Items[0].Verdict
                            > MovementVerdict.Adapted
                        )
                )
        );

    [Fact]
    public void The_order_of_factors_restrictions_and_holds_changes_nothing() =>
        Case.AlwaysHolds(case_ =>
            Of(case_).AllOf()
            == Of(
                    case_,
                    her =>
                        her with
                        {
                            Factors = [.. her.Factors.Reverse()],
                            Restrictions = [.. her.Restrictions.Reverse()],
                            Holds = [.. her.Holds.Reverse()],
                        }
                )
                .AllOf()
        );

    [Fact]
    public void The_order_of_the_catalogues_rows_changes_nothing() =>
        Case.AlwaysHolds(case_ => Of(case_).AllOf() == Of(case_, book: Backwards).AllOf());

    [Fact]
    public void The_verdict_is_the_first_and_strictest_reasons() =>
        Case.AlwaysHolds(case_ =>
            Of(case_)
                .Items.All(item =>
                    item.Verdict
                        == item.Reasons.Select(r => r.Verdict)
                            .DefaultIfEmpty(MovementVerdict.AsTaught)
                            .Max()
                    && item.Reasons.Select(r => -(int)r.Verdict)
                        .SequenceEqual(item.Reasons.Select(r => -(int)r.Verdict).Order())
                )
        );

    [Fact]
    public void Whatever_is_not_as_taught_has_an_instruction_and_whatever_is_has_none() =>
        Case.AlwaysHolds(case_ =>
            Of(case_)
                .Items.All(i =>
                    i.Instruction.Length == 0 == (i.Verdict == MovementVerdict.AsTaught)
                )
        );

    [Fact]
    public void Instructions_never_name_what_she_holds() =>
        Case.AlwaysHolds(case_ =>
            Of(case_)
                .Items.All(i =>
                    Book.Factors.All(f =>
                        !i.Instruction.Contains(f.Name, StringComparison.OrdinalIgnoreCase)
                    )
                )
        );

    [Fact]
    public void Minutes_under_the_verdicts_add_up() =>
        Case.AlwaysHolds(case_ =>
        {
            var fit = Of(case_);
            return fit.Minutes == case_.Plan.Minutes
                && Enum.GetValues<MovementVerdict>().Sum(fit.MinutesOf) == fit.Minutes;
        });

    [Fact]
    public void Without_dates_nothing_is_cleared() =>
        Case.AlwaysHolds(case_ =>
        {
            var fit = Of(case_);
            return fit.Situation.Phase is Phase.Pregnant or Phase.Born
                || fit.Items.All(i => i.Verdict == MovementVerdict.LeftOut);
        });

    [Fact]
    public void A_mode_of_birth_not_said_is_never_milder_than_any_that_is() =>
        Gen.Select(Case, Gen.Enum<BirthMode>())
            .AlwaysHolds(
                (case_, mode) =>
                    case_.Her.Pregnancy is null
                    || NeverMilder(
                        Of(case_, her => Born(her, mode)),
                        Of(case_, her => Born(her, null))
                    )
            );

    [Fact]
    public void The_session_and_its_movements_agree() =>
        Gen.Select(Case, Any.AClass)
            .AlwaysHolds(
                (case_, cls) =>
                {
                    var fit = FitRules.Of(
                        case_.Her,
                        cls,
                        Someone.Day,
                        Book,
                        case_.Policies,
                        case_.Plan
                    );
                    var asTaught = fit.Plan!.Items.All(i => i.Verdict == MovementVerdict.AsTaught);
                    return fit.Plan.AllOf() == Of(case_).AllOf()
                        && (asTaught || fit.Verdict >= Suits.WithModifications)
                        && (
                            fit.Verdict == Suits.NotSuitable
                            || fit.Reasons.Any(r => r.Code == ReasonCodes.RecordUnclear)
                            || fit.Plan.MinutesOf(MovementVerdict.LeftOut) * 2 <= fit.Plan.Minutes
                        );
                }
            );

    [Fact]
    public void With_a_plan_another_factor_never_makes_the_session_milder() =>
        Gen.Select(Case, Any.AClass, Any.AFactor)
            .Sample(
                (case_, cls, factor) =>
                    Fit(case_, cls, case_.Her).Verdict
                    <= Fit(
                        case_,
                        cls,
                        case_.Her with
                        {
                            Factors = [.. case_.Her.Factors, factor],
                        }
                    ).Verdict,
                iter: 3000
            );

    private static Fit Fit(
        (HerSituation Her, ClassPlan Plan, StudioPolicies Policies) case_,
        ClassProfile cls,
        HerSituation her
    ) => FitRules.Of(her, cls, Someone.Day, Book, case_.Policies, case_.Plan);

    private static HerSituation Born(HerSituation her, BirthMode? mode) =>
        her with
        {
            Pregnancy = her.Pregnancy! with { BirthMode = mode },
        };

    private static bool NeverMilder(PlanFit before, PlanFit after) =>
        before.Items.Zip(after.Items).All(both => both.First.Verdict <= both.Second.Verdict);

    private static PlanFit Of(
        (HerSituation Her, ClassPlan Plan, StudioPolicies Policies) case_,
        Func<HerSituation, HerSituation>? change = null,
        RuleBook? book = null
    ) =>
        PlanRules.Of(
            case_.Plan,
            change is null ? case_.Her : change(case_.Her),
            Someone.Day,
            book ?? Book,
            case_.Policies
        );

    private static RuleBook WithoutRule(string id) =>
        Without.GetOrAdd(
            id,
            gone =>
                TheCatalogue.Parse(
                    (
                        "movement_rules.csv",
                        text =>
                            string.Join(
                                '\n',
                                text.Split('\n')
                                    .Where(line =>
                                        !line.StartsWith($"{gone},", StringComparison.Ordinal)
                                    )
                            )
                    )
                )
        );

    private static string RowsReversed(string text)
    {
        var lines = text.TrimEnd('\n').Split('\n');
        return string.Join('\n', [lines[0], .. lines[1..].Reverse()]);
    }
}
