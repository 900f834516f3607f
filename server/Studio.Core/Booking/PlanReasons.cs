using Studio.Core.Movements;

namespace Studio.Core.Booking;

/// <summary>What becomes of a plan's movements, as reasons of the session's fit.</summary>
internal static class PlanReasons
{
    public static IEnumerable<Reason> Of(FitQuestion question)
    {
        if (question.Plan is not { } plan)
            yield break;
        // Why she does not take part at all is told once, by the class.
        var told = plan
            .Items.SelectMany(item => item.Reasons.Select(reason => (item, reason)))
            .Where(t => t.reason.Verdict > MovementVerdict.AsTaught && !t.reason.IsWhole)
            .GroupBy(t => (t.reason.Rule, t.reason.ForHer));
        foreach (var same in told)
        {
            var reason = same.First().reason;
            yield return new()
            {
                Code = ReasonCodes.Adapted,
                Verdict = Suits.WithModifications,
                ForHer = reason.ForHer,
                ForDesk = Words.DeskAdapted,
                ForInstructor =
                    $"{string.Join(", ", same.Select(t => t.item.Movement?.Name ?? t.item.Code).Distinct(StringComparer.Ordinal))}: {reason.Instruction}.",
                Factor = reason.Factor,
                Rule = reason.Rule,
                Source = reason.Source,
                Lift = reason.Lift,
            };
        }

        var leftOut = plan.Items.Where(i => i.LeftOutByItself).Sum(i => i.Minutes);
        if (leftOut * 100 > question.Policies.LeftOutMostPercent * plan.Minutes)
            yield return new()
            {
                Code = ReasonCodes.TooMuchLeftOut,
                Verdict = Suits.NotSuitable,
                ForHer =
                    $"Of the {plan.Minutes} minutes of this class {leftOut} would be left out for you that day, so another class suits you better.",
                ForDesk = Words.DeskDoesNotSuit,
                ForInstructor = Words.DoesNotTakePart,
                Source = question
                    .Book.PolicyChoices.FirstOrDefault(c => c.Code == "left-out-most-percent")
                    ?.Source,
            };
    }
}
