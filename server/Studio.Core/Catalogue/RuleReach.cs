using Studio.Core.Pregnancies;

namespace Studio.Core.Catalogue;

/// <summary>Whether any client could ever meet a rule.</summary>
internal static class RuleReach
{
    /// <summary>Every reason why no client could.</summary>
    public static IEnumerable<string> WhyNever(RuleWhen rule, Factor? factor, StageScheme? stages)
    {
        if (rule is { FromAge: { } from, ToAge: { } to } && from.Days > to.Days)
            yield return $"no client can ever meet it: from_ga {from} is later than to_ga {to}.";
        if (rule.FromAge is { } late && late.Days > GestationalAge.Greatest)
            yield return $"no client can ever meet it: from_ga {late} is later than any pregnancy.";
        if (rule.UntilBorn?.Days is { } until && (rule.FromBorn ?? 0) >= until)
            yield return $"no client can ever meet it: from_born {rule.FromBorn ?? 0} is not before until_born {until}.";
        if (rule is { AfterBirthOnly: true, InPregnancyOnly: true })
            yield return "no client can ever meet it: it asks for a gestational age and for the time after birth at once.";
        if (factor?.When == HeldWhen.Pregnancy && rule.AfterBirthOnly)
            yield return $"no client can ever meet it: '{factor.Code}' ends with the birth.";
        if (stages is not null && rule.Stages.Count > 0)
            foreach (
                var never in ByStage(
                    rule,
                    factor,
                    [.. stages.Stages.Where(s => rule.Stages.Contains(s.Code))]
                )
            )
                yield return never;
    }

    private static IEnumerable<string> ByStage(
        RuleWhen rule,
        Factor? factor,
        IReadOnlyList<Stage> named
    )
    {
        if (
            named.All(s => s.CountsFrom == StageCount.Birth)
            && (factor?.When == HeldWhen.Pregnancy || rule.InPregnancyOnly)
        )
            yield return "no client can ever meet it: its stages are after the birth, and the rest is before it.";
        else if (named.All(s => s.CountsFrom == StageCount.Pregnancy) && rule.AfterBirthOnly)
            yield return "no client can ever meet it: its stages are before the birth, and the rest is after it.";
        else if (!named.Any(s => Overlaps(rule, s)))
            yield return "no client can ever meet it: its days lie outside its stages.";
    }

    private static bool Overlaps(RuleWhen rule, Stage stage) =>
        stage.CountsFrom switch
        {
            StageCount.Pregnancy => (rule.FromAge?.Days ?? 0) <= (stage.ToDay ?? int.MaxValue)
                && (rule.ToAge?.Days ?? int.MaxValue) >= stage.FromDay,
            StageCount.Birth => (rule.FromBorn ?? 0) <= (stage.ToDay ?? int.MaxValue)
                && (rule.UntilBorn?.Days ?? int.MaxValue) > stage.FromDay,
        };

    /// <summary>Whether somebody in a stage could meet the rule.</summary>
    public static bool CanHoldIn(RuleWhen rule, Factor? factor, Stage stage) =>
        (rule.Stages.Count == 0 || rule.Stages.Contains(stage.Code))
        && (
            stage.CountsFrom == StageCount.Pregnancy
                ? !rule.AfterBirthOnly
                : !rule.InPregnancyOnly && factor?.When != HeldWhen.Pregnancy
        )
        && Overlaps(rule, stage);

    /// <summary>Whether the rule itself says when it ends.</summary>
    // Where the stages themselves cannot be read, their file's own errors stand instead.
    public static bool Ends(RuleWhen rule, StageScheme? stages) =>
        rule.UntilBorn is not null
        || rule.ToAge is not null
        || rule.Stages.Count > 0
            && stages?.Stages.Any(s => rule.Stages.Contains(s.Code) && s.ToDay is null) != true;
}
