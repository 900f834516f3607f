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
    /// <summary>The most movements a plan may have.</summary>
    public const int MostItems = 60;

    /// <summary>The longest a movement may be taught, in minutes.</summary>
    public const int MostMinutes = 240;

    // Any due date does: ages and days since birth are all that is asked about.
    private static readonly LocalDate Anchor = new(2001, 1, 1);

    /// <summary>Why this is no plan, with the field of the request at fault ("items[3].minutes"); null when it is one.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="book">The catalogue.</param>
    public static Refusal? Fault(ClassPlan plan, RuleBook book)
    {
        if (plan.Items.Count == 0)
            return No("empty-plan", "items", "A plan has one movement at least.");
        if (plan.Items.Count > MostItems)
            return No(
                "plan-too-long",
                "items",
                $"A plan has {MostItems} movements at most; this one has {plan.Items.Count}."
            );
        foreach (var (item, at) in plan.Items.Select((item, at) => (item, at)))
        {
            if (book.MovementOf(item.Movement) is not { } movement)
                return No(
                    "no-such-movement",
                    $"items[{at}].movement",
                    $"Number {at + 1}: the catalogue has no such movement. Choose one from the list."
                );
            if (item.Minutes is < 1 or > MostMinutes)
                return No(
                    "bad-minutes",
                    $"items[{at}].minutes",
                    $"Number {at + 1}, {movement.Name}: say 1 to {MostMinutes} whole minutes."
                );
        }
        return null;
    }

    /// <summary>
    /// Why this plan cannot be taught in the time there is; null when it can. Less than the time is no fault: an
    /// instructor may want to speak.
    /// </summary>
    /// <param name="plan">A plan without a fault of its own.</param>
    /// <param name="length">The length of the class or session, in minutes.</param>
    public static Refusal? TooLong(ClassPlan plan, int length) =>
        plan.Minutes > length
            ? No(
                "plan-over-time",
                "items",
                $"The movements take {plan.Minutes} minutes, and the class {length}: take {plan.Minutes - length} away."
            )
            : null;

    /// <summary>Why a movement cannot stand in the plan of a class whose stages include one that never does it.</summary>
    /// <param name="left">What <see cref="LeftOut"/> found.</param>
    /// <param name="book">The catalogue.</param>
    public static Refusal NobodyDoes(LeftOutForEverybody left, RuleBook book) =>
        No(
            "left-out-for-everybody",
            $"items[{left.Number - 1}].movement",
            $"Number {left.Number}, {book.MovementOf(left.Movement)?.Name ?? left.Movement}: in the stage \"{left.Stage.Name}\", which this class admits, nobody does it and nobody has an option. Choose another movement, or keep this one for a single session."
        );

    private static Refusal No(string code, string field, string message) =>
        new(RefusalKind.Invalid, code, message, field);

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
