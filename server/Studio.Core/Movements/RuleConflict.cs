using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;

namespace Studio.Core.Movements;

/// <summary>
/// Whether two movement rules contradict each other: they come to the same verdict, stricter than as taught, about exactly
/// the same movements, through the same factor and the same modes of birth (or none), can both hold for one person on one
/// day under one choice of policies, and yet instruct differently. Rules that differ in factor, mode or target add to each
/// other; rules of different strictness are decided by it; a rule that leaves a movement as taught never decides.
/// </summary>
internal static class RuleConflict
{
    public static bool Between(MovementRule one, MovementRule other, StageScheme? stages) =>
        one.Verdict == other.Verdict
        && one.Verdict > MovementVerdict.AsTaught
        && one.Instruction != other.Instruction
        && one.Factor == other.Factor
        && one.BirthModes.SetEquals(other.BirthModes)
        && SameTarget(one.Target, other.Target)
        && PoliciesMeet(one.Policy, other.Policy)
        && DaysMeet(one, other, stages);

    private static bool SameTarget(MovementTarget one, MovementTarget other) =>
        one.Position == other.Position
        && one.Trait == other.Trait
        && one.Group == other.Group
        && one.EffortOver == other.EffortOver
        && one.Movements.SetEquals(other.Movements)
        && one.Except.SetEquals(other.Except);

    private static bool PoliciesMeet(PolicyCondition? one, PolicyCondition? other) =>
        one is null || other is null || one.Code != other.Code || one.Values.Overlaps(other.Values);

    private static bool DaysMeet(RuleWhen one, RuleWhen other, StageScheme? stages)
    {
        if (stages is null)
            return false; // its own file's errors stand instead
        return stages.Stages.Any(stage =>
            Days(one, stage) is { } a
            && Days(other, stage) is { } b
            && a.From <= b.To
            && b.From <= a.To
        );
    }

    private static (int From, int To)? Days(RuleWhen rule, Stage stage)
    {
        if (rule.Stages.Count > 0 && !rule.Stages.Contains(stage.Code))
            return null;
        if (stage.CountsFrom == StageCount.Pregnancy ? rule.AfterBirthOnly : rule.InPregnancyOnly)
            return null;
        var (from, to) = stage.CountsFrom switch
        {
            StageCount.Pregnancy => (rule.FromAge?.Days ?? 0, rule.ToAge?.Days ?? int.MaxValue),
            StageCount.Birth => (
                rule.FromBorn ?? 0,
                rule.UntilBorn?.Days is { } until ? until - 1 : int.MaxValue
            ),
        };
        from = Math.Max(from, stage.FromDay);
        to = Math.Min(to, stage.ToDay ?? int.MaxValue);
        return from <= to ? (from, to) : null;
    }
}
