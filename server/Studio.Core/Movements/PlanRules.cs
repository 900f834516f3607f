using NodaTime;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;

namespace Studio.Core.Movements;

/// <summary>
/// What becomes of each movement of a class plan for a client on the date of a session. The strictest rule wins and every
/// reason is kept; what is not known is never taken for cleared. Whether she may take part at all, by her letters and her
/// screening, is the fit's to say. It supports judgement and does not diagnose: her clinician's word comes first.
/// </summary>
public static class PlanRules
{
    /// <summary>Each movement's verdict, with the option that takes its place and the instruction for her mat.</summary>
    /// <param name="plan">What the session is made of.</param>
    /// <param name="her">All that is known of her, past and present.</param>
    /// <param name="on">The session's date; never today's.</param>
    /// <param name="book">The catalogue.</param>
    /// <param name="policies">The studio's choices.</param>
    public static PlanFit Of(
        ClassPlan plan,
        HerSituation her,
        LocalDate on,
        RuleBook book,
        StudioPolicies policies
    ) => Of(plan, new HerDay(her, on, book, policies));

    internal static PlanFit Of(ClassPlan plan, HerDay day)
    {
        var movements = new HerMovements(day);
        var items = new PlannedMovement[plan.Items.Count];
        for (var at = 0; at < items.Length; at++)
            items[at] = Of(plan.Items[at], day, movements);
        return new() { Items = items, Situation = day.At };
    }

    private static PlannedMovement Of(PlanItem item, HerDay day, HerMovements movements)
    {
        if (day.Book.Index.NumberOf(item.Movement) is not { } number)
            return new()
            {
                Code = item.Movement,
                Movement = null,
                Minutes = item.Minutes,
                Verdict = MovementVerdict.LeftOut,
                Instruction = EngineReasons.Rest,
                Reasons = [.. movements.Whole, EngineReasons.UnknownMovement],
                LeftOutByItself = true,
            };
        var alone = Of(item, day.Book.Movements[number], number, movements);
        return movements.Whole.Count == 0
            ? alone
            : alone with
            {
                Verdict = MovementVerdict.LeftOut,
                Option = null,
                OptionReasons = [],
                Instruction = movements.Whole[0].Instruction,
                Reasons = [.. movements.Whole, .. alone.Reasons],
            };
    }

    private static PlannedMovement Of(
        PlanItem item,
        Movement movement,
        int number,
        HerMovements movements
    )
    {
        var reading = movements.Read(number);
        var option =
            reading.Verdict == MovementVerdict.Replaced ? movements.OptionFor(number) : null;
        var none = reading.Verdict == MovementVerdict.Replaced && option is null;
        var verdict = none ? MovementVerdict.LeftOut : reading.Verdict;
        return new()
        {
            Code = movement.Code,
            Movement = movement,
            Minutes = item.Minutes,
            Verdict = verdict,
            Option = option?.Movement,
            Instruction = verdict switch
            {
                MovementVerdict.AsTaught => "",
                MovementVerdict.Adapted => Instructions.Adapted(reading.Reasons),
                MovementVerdict.Replaced => Instructions.Replaced(option!),
                MovementVerdict.LeftOut => EngineReasons.Rest,
            },
            Reasons = none ? [EngineReasons.NoOption, .. reading.Reasons] : reading.Reasons,
            OptionReasons = option?.Reasons ?? [],
            LeftOutByItself = verdict == MovementVerdict.LeftOut,
        };
    }
}

/// <summary>The short words on a mat.</summary>
internal static class Instructions
{
    /// <summary>Every way in which it is done differently, each once; of several effort limits the lowest.</summary>
    public static string Adapted(IReadOnlyList<MovementReason> reasons)
    {
        int? lowest = null;
        foreach (var reason in reasons)
            if (reason.Verdict == MovementVerdict.Adapted && reason.EffortMost < (lowest ?? 11))
                lowest = reason.EffortMost;
        var words = new List<string>();
        foreach (var reason in reasons)
            if (
                reason.Verdict == MovementVerdict.Adapted
                && (reason.EffortMost is not { } most || most == lowest)
            )
                // Two rules often ask for the same thing in part.
                foreach (var part in reason.Instruction.Split("; "))
                    if (!words.Contains(part))
                        words.Add(part);
        return string.Join("; ", words);
    }

    /// <summary>The option by name, with its own instruction where it has one.</summary>
    public static string Replaced(MovementReading option) =>
        option.Verdict == MovementVerdict.Adapted
            ? $"{option.Movement.Name} instead: {Adapted(option.Reasons)}"
            : $"{option.Movement.Name} instead";
}
