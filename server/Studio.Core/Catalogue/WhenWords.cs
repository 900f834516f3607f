using Studio.Core.Movements;
using Studio.Core.Pregnancies;

namespace Studio.Core.Catalogue;

/// <summary>When a rule holds and what it speaks of, in words.</summary>
internal static class WhenWords
{
    private static readonly Dictionary<string, string> OnlyOfClasses = new(StringComparer.Ordinal)
    {
        [ClassTraits.ModerateEffort] = "Moderate effort",
        [ClassTraits.BreathOnly] = "Talk and breath only",
        [ClassTraits.WarmRoom] = "Warm room",
    };

    /// <summary>Each condition that must be met; empty for a rule that always holds.</summary>
    public static IReadOnlyList<string> Of(RuleWhen rule, RuleBook book, StudioPolicies policies) =>
        [.. Parts(rule, book, policies)];

    /// <summary>A position's or trait's name, of a movement or of a class.</summary>
    public static string TraitOf(string code) =>
        MovementTraits.NameOf(code) ?? OnlyOfClasses.GetValueOrDefault(code, code);

    /// <summary>The movements a rule speaks of.</summary>
    public static string TargetOf(MovementTarget target, RuleBook book, StudioPolicies policies)
    {
        var words = new List<string>();
        if (target.Position is { } position)
            words.Add(Positions.All[position]);
        if (target.Trait is { } trait)
            words.Add(MovementTraits.All[trait]);
        if (target.Group is { } group)
            words.Add($"Group {MovementGroups.All[group].ToLowerInvariant()}");
        if (target.Movements.Count > 0)
            words.Add(Names(target.Movements, book));
        if (target.EffortOver is { } limit)
            words.Add(
                $"More effort than {limit.In(policies)} of 10"
                    + (limit.Policy is { } policy ? $" (policy {NameOf(policy)})" : "")
            );
        var spared = target.Except.Count > 0 ? $"; not: {Names(target.Except, book)}" : "";
        return string.Join(", and at once ", words) + spared;
    }

    /// <summary>Several values of a policy, as a person says them.</summary>
    public static string Values(IEnumerable<string> values) =>
        string.Join(" or ", values.Order(StringComparer.Ordinal));

    private static IEnumerable<string> Parts(RuleWhen rule, RuleBook book, StudioPolicies policies)
    {
        if (rule.Factor is { } factor)
            yield return $"She has: {book.FactorOf(factor)?.Name ?? factor}";
        if (rule.Stages.Count > 0)
            yield return "Stage: "
                + string.Join(
                    ", ",
                    book.Stages.Stages.Where(s => rule.Stages.Contains(s.Code)).Select(s => s.Name)
                );
        if (rule.FromAge is not null || rule.ToAge is not null)
            yield return (rule.FromAge, rule.ToAge) switch
            {
                ({ } from, { } to) => $"From {from} to {to}",
                ({ } from, null) => $"From {from} on",
                (_, { } to) => $"Up to {to}",
                _ => "",
            };
        if (rule.FromBorn is not null || rule.UntilBorn is not null)
            yield return Born(rule.FromBorn, rule.UntilBorn, policies);
        if (rule.BirthModes.Count > 0)
            yield return $"Birth: {string.Join(", ", rule.BirthModes.Order().Select(ModeOf))}";
        if (rule.Policy is { } choice)
            yield return $"Policy {NameOf(choice.Code)} is {Values(choice.Values)}";
    }

    private static string Born(int? from, DayLimit? until, StudioPolicies policies)
    {
        var by = until?.Policy is { } policy ? $" (policy {NameOf(policy)})" : "";
        return (from, until?.In(policies)) switch
        {
            ({ } first, { } end) => $"From day {first} to day {end - 1} after the birth{by}",
            ({ } first, null) => $"From day {first} after the birth on",
            (_, { } end) => $"Up to day {end - 1} after the birth{by}",
            _ => "",
        };
    }

    private static string ModeOf(BirthMode mode) =>
        mode switch
        {
            BirthMode.Vaginal => "vaginal",
            BirthMode.Assisted => "assisted",
            BirthMode.Caesarean => "caesarean",
            BirthMode.Unknown => "not said",
        };

    private static string NameOf(string policy) => policy.Replace('-', ' ');

    private static string Names(IEnumerable<string> codes, RuleBook book) =>
        string.Join(
            ", ",
            codes
                .Order(StringComparer.Ordinal)
                .Select(code => book.MovementOf(code)?.Name ?? TraitOf(code).ToLowerInvariant())
        );
}
