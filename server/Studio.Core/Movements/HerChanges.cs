namespace Studio.Core.Movements;

/// <summary>A movement of the plan that she does differently.</summary>
/// <param name="Position">Its place in the plan, from 1.</param>
/// <param name="Movement">What becomes of it.</param>
/// <param name="How">How she does it, or the option that takes its place; blank where there is nothing to add.</param>
public sealed record ChangedMovement(int Position, PlannedMovement Movement, string How);

/// <summary>Movements that change for the same reasons.</summary>
/// <param name="Reasons">Every reason, each once, strictest first.</param>
/// <param name="Movements">The movements, in the order of the plan.</param>
public sealed record HerChange(
    IReadOnlyList<MovementReason> Reasons,
    IReadOnlyList<ChangedMovement> Movements
);

/// <summary>What changes for her in a plan, as she is told it before she books.</summary>
public static class HerChanges
{
    /// <summary>The movements that are not as taught, those with the same reasons together; in the order of the plan.</summary>
    public static IReadOnlyList<HerChange> Of(PlanFit plan) =>
        [
            .. plan
                .Items.Select((item, at) => new ChangedMovement(at + 1, item, How(item)))
                .Where(c => c.Movement.Verdict != MovementVerdict.AsTaught)
                .Select(c => (Changed: c, Reasons: ReasonsOf(c.Movement)))
                .GroupBy(c => string.Join('\n', c.Reasons.Select(r => r.ForHer)))
                .Select(same => new HerChange(
                    same.First().Reasons,
                    [.. same.Select(c => c.Changed)]
                )),
        ];

    // What is said of the option is a reason too: it is why she does that one in her own way.
    private static IReadOnlyList<MovementReason> ReasonsOf(PlannedMovement item) =>
        [
            .. item
                .Reasons.Concat(item.OptionReasons)
                .Where(r => r.Verdict > MovementVerdict.AsTaught)
                .DistinctBy(r => r.ForHer, StringComparer.Ordinal),
        ];

    private static string How(PlannedMovement item) =>
        item.Verdict switch
        {
            MovementVerdict.AsTaught or MovementVerdict.LeftOut => "",
            MovementVerdict.Adapted => item.Instruction,
            MovementVerdict.Replaced => Instructions.Adapted(item.OptionReasons),
        };
}
