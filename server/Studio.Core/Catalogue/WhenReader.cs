using System.Globalization;
using Studio.Core.Pregnancies;

namespace Studio.Core.Catalogue;

/// <summary>What the columns of a rule's conditions may name.</summary>
internal sealed record KnownNames(
    IReadOnlyDictionary<string, Source> Sources,
    StageScheme? Stages,
    IReadOnlyList<Factor> Factors,
    IReadOnlyList<PolicyChoice> Policies
)
{
    public Factor? FactorOf(string? code) => Factors.FirstOrDefault(f => f.Code == code);
}

/// <summary>Reads the columns that say when a rule holds; the same for every file of rules.</summary>
internal static class WhenReader
{
    private const string PolicyPrefix = "policy:";

    public static readonly string[] Columns =
    [
        "policy",
        "stages",
        "factor",
        "birth_mode",
        "from_ga",
        "to_ga",
        "from_born",
        "until_born",
    ];

    private static readonly Dictionary<string, BirthMode> Modes = new(StringComparer.Ordinal)
    {
        ["vaginal"] = BirthMode.Vaginal,
        ["assisted"] = BirthMode.Assisted,
        ["caesarean"] = BirthMode.Caesarean,
        ["unknown"] = BirthMode.Unknown,
    };

    public static RuleWhen Read(CatalogueRow row, KnownNames known)
    {
        foreach (var mode in row.List("birth_mode").Where(m => !Modes.ContainsKey(m)))
            row.Error($"birth_mode is '{mode}': it must be {string.Join(", ", Modes.Keys)}.");
        if (!row.IsBlank("factor") && known.FactorOf(row["factor"]) is null)
            row.Error($"factor is '{row["factor"]}': there is no such factor or condition.");
        foreach (
            var stage in row.List("stages")
                .Where(s => known.Stages?.Stages.All(one => one.Code != s) == true)
        )
            row.Error($"stages names '{stage}': there is no such stage.");
        return new()
        {
            Stages = row.List("stages").ToHashSet(StringComparer.Ordinal),
            Factor = row.IsBlank("factor") ? null : row["factor"],
            BirthModes = row.List("birth_mode")
                .Where(Modes.ContainsKey)
                .Select(m => Modes[m])
                .ToHashSet(),
            FromAge = row.Age("from_ga"),
            ToAge = row.Age("to_ga"),
            FromBorn = row.Number("from_born"),
            UntilBorn = LimitOf(row),
            Policy = PolicyOf(row, known.Policies),
        };
    }

    private static DayLimit? LimitOf(CatalogueRow row)
    {
        var text = row["until_born"];
        if (text.Length == 0)
            return null;
        if (text.StartsWith(PolicyPrefix, StringComparison.Ordinal))
        {
            var code = text[PolicyPrefix.Length..];
            if (StudioPolicies.DayLimits.Contains(code, StringComparer.Ordinal))
                return new(null, code);
            row.Error(
                $"until_born names the policy '{code}': it must be {string.Join(", ", StudioPolicies.DayLimits)}."
            );
        }
        else if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var days))
        {
            return new(days, null);
        }
        else
        {
            row.Error(
                $"until_born is '{text}': it must be a number of days, or policy: and a policy's code."
            );
        }
        return null;
    }

    // Written code=value, or code=value|value where the rule counts under several.
    private static PolicyCondition? PolicyOf(CatalogueRow row, IReadOnlyList<PolicyChoice> policies)
    {
        if (row.IsBlank("policy"))
            return null;
        if (row["policy"].Split('=') is not [var code, var values])
        {
            row.Error(
                $"policy is '{row["policy"]}': it must be a policy's code, = and one or more of its values."
            );
            return null;
        }
        if (policies.FirstOrDefault(p => p.Code == code) is not { } choice)
        {
            row.Error($"policy names '{code}': there is no such policy.");
            return null;
        }
        foreach (var value in values.Split('|').Where(v => !choice.Allows(v)))
            row.Error($"policy gives {code} the value '{value}': it may be {choice.Allowed}.");
        return new(code, values.Split('|').ToHashSet(StringComparer.Ordinal));
    }
}
