using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Tests.Booking;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Movements;

/// <summary>Short ways to ask what becomes of a movement.</summary>
internal static class Planned
{
    public static readonly RuleBook Book = TheCatalogue.Book;

    public static ClassPlan Plan(params string[] movements) =>
        new([.. movements.Select(m => new PlanItem(m, 3))]);

    /// <summary>One movement for her on the day of every test.</summary>
    public static PlannedMovement Doing(
        this HerSituation her,
        string movement,
        StudioPolicies? policies = null
    ) =>
        PlanRules
            .Of(Plan(movement), her, Someone.Day, Book, policies ?? Someone.Policies)
            .Items.Single();

    public static PlanFit Taught(
        this HerSituation her,
        ClassPlan plan,
        StudioPolicies? policies = null,
        RuleBook? book = null
    ) => PlanRules.Of(plan, her, Someone.Day, book ?? Book, policies ?? Someone.Policies);

    public static Fit In(
        this HerSituation her,
        ClassProfile cls,
        ClassPlan plan,
        StudioPolicies? policies = null
    ) => FitRules.Of(her, cls, Someone.Day, Book, policies ?? Someone.Policies, plan);

    public static HerSituation LeavingOut(this HerSituation her, params string[] codes) =>
        her with
        {
            Restrictions =
            [
                .. her.Restrictions,
                new()
                {
                    From = Someone.Day.PlusDays(-10),
                    LeaveOut = codes.ToHashSet(StringComparer.Ordinal),
                },
            ],
        };

    public static HerSituation AtMost(this HerSituation her, int effort) =>
        her with
        {
            Restrictions =
            [
                .. her.Restrictions,
                new() { From = Someone.Day.PlusDays(-10), EffortMost = effort },
            ],
        };

    public static bool Says(this PlannedMovement planned, string rule) =>
        planned.Reasons.Any(r => r.Rule == rule);

    /// <summary>Everything that is said of a plan, for comparing two answers.</summary>
    public static string AllOf(this PlanFit fit) =>
        string.Join(
            '\n',
            fit.Items.Select(i =>
                $"{i.Code} {i.Verdict} {i.Option?.Code} {i.Instruction}\n {string.Join("\n ", i.Reasons)}\n  {string.Join("\n  ", i.OptionReasons)}"
            )
        );
}
