using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;

namespace Studio.Core.Movements;

/// <summary>A movement that nobody in a stage does, although the plan has it.</summary>
/// <param name="Number">Its place in the plan, from 1.</param>
/// <param name="Movement">Its code.</param>
/// <param name="Stage">The stage.</param>
public sealed record LeftOutForEverybody(int Number, string Movement, Stage Stage);

/// <summary>Whether a plan can be taught in the stages its class admits.</summary>
public static class PlanChecks
{
    // Any due date does: ages and days since birth are all that is asked about.
    private static readonly LocalDate Anchor = new(2001, 1, 1);

    /// <summary>
    /// The movements left out for everybody in a stage. Another factor or restriction only makes it stricter, so those who
    /// hold none speak for all: one for each mode of birth, on every day of the stage on which a rule begins or ends.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="stages">Codes of the stages its class admits; one that is not known is passed over.</param>
    /// <param name="book">The catalogue.</param>
    /// <param name="policies">The studio's choices.</param>
    public static IReadOnlyList<LeftOutForEverybody> LeftOut(
        ClassPlan plan,
        IReadOnlySet<string> stages,
        RuleBook book,
        StudioPolicies policies
    )
    {
        var found = new List<LeftOutForEverybody>();
        foreach (var stage in book.Stages.Stages.Where(s => stages.Contains(s.Code)))
        {
            var left = Enumerable.Range(0, plan.Items.Count).ToHashSet();
            foreach (var her in Everybody(stage, book, policies))
            {
                if (left.Count == 0)
                    break;
                var fit = PlanRules.Of(plan, her, Anchor, book, policies);
                left.RemoveWhere(at => fit.Items[at].Verdict != MovementVerdict.LeftOut);
            }
            found.AddRange(
                left.Order()
                    .Select(at => new LeftOutForEverybody(at + 1, plan.Items[at].Movement, stage))
            );
        }
        return found;
    }

    private static IEnumerable<HerSituation> Everybody(
        Stage stage,
        RuleBook book,
        StudioPolicies policies
    ) =>
        from day in Days(stage, book, policies)
        from mode in stage.CountsFrom == StageCount.Birth
            ? Enum.GetValues<BirthMode>()
            : [BirthMode.Unknown]
        select new HerSituation
        {
            Pregnancy =
                stage.CountsFrom == StageCount.Birth
                    ? new() { BornOn = Anchor.PlusDays(-day), BirthMode = mode }
                    : new() { DueDate = Anchor.PlusDays(GestationalAge.AtDueDate - day) },
        };

    // Between two days on which no rule begins or ends nothing changes.
    private static IEnumerable<int> Days(Stage stage, RuleBook book, StudioPolicies policies) =>
        book
            .MovementRules.SelectMany(rule =>
                stage.CountsFrom == StageCount.Birth
                    ? new[] { rule.FromBorn, rule.UntilBorn?.In(policies) }
                    : [rule.FromAge?.Days, rule.ToAge?.Days + 1]
            )
            .OfType<int>()
            .Append(stage.FromDay)
            .Where(day => day >= stage.FromDay && day <= (stage.ToDay ?? int.MaxValue))
            .Distinct()
            .Order();
}
