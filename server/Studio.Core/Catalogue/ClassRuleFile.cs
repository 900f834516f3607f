using System.Globalization;
using Studio.Core.Pregnancies;

namespace Studio.Core.Catalogue;

/// <summary>Reads <c>class_rules.csv</c> and refuses a rule that no client could ever meet.</summary>
internal static class ClassRuleFile
{
    private const string File = "class_rules.csv";
    private const string PolicyPrefix = "policy:";

    private static readonly string[] Columns =
    [
        "id",
        "stages",
        "factor",
        "birth_mode",
        "from_ga",
        "to_ga",
        "from_born",
        "until_born",
        "trait",
        "except",
        "verdict",
        "for_her",
        "for_instructor",
        "lift",
        "source",
        "note",
    ];

    private static readonly Dictionary<string, RuleVerdict> Verdicts = new(StringComparer.Ordinal)
    {
        ["note"] = RuleVerdict.Note,
        ["adapted"] = RuleVerdict.Adapted,
        ["letter"] = RuleVerdict.Letter,
        ["not-suitable"] = RuleVerdict.NotSuitable,
    };

    private static readonly Dictionary<string, BirthMode> Modes = new(StringComparer.Ordinal)
    {
        ["vaginal"] = BirthMode.Vaginal,
        ["assisted"] = BirthMode.Assisted,
        ["caesarean"] = BirthMode.Caesarean,
        ["unknown"] = BirthMode.Unknown,
    };

    public static IReadOnlyList<ClassRule> Read(
        Func<string, TextReader> open,
        IReadOnlyDictionary<string, Source> sources,
        StageScheme? stages,
        IReadOnlyList<Factor> factors,
        CatalogueErrors errors
    )
    {
        var rows = CatalogueTable.Read(open, File, Columns, errors);
        CatalogueTable.CheckUnique(rows, "id");
        var rules = new List<ClassRule>();
        foreach (var row in rows)
        {
            var before = errors.Count;
            if (Of(row, sources) is not { } rule)
                continue;
            if (rule.Factor is { } code && factors.All(f => f.Code != code))
                row.Error($"factor is '{code}': there is no such factor or condition.");
            if (stages is not null)
                foreach (
                    var stage in rule.Stages.Where(s => stages.Stages.All(known => known.Code != s))
                )
                    row.Error($"stages names '{stage}': there is no such stage.");
            if (errors.Count > before)
                continue;
            var factor = factors.FirstOrDefault(f => f.Code == rule.Factor);
            foreach (var never in RuleReach.WhyNever(rule, factor, stages))
                row.Error(never);
            rules.Add(rule);
        }
        return rules;
    }

    private static ClassRule? Of(CatalogueRow row, IReadOnlyDictionary<string, Source> sources)
    {
        var (id, forHer) = (row.Required("id"), row.Required("for_her"));
        var verdict = row.OneOf("verdict", Verdicts);
        var source = row.SourceOf("source", sources);
        var trait = row.Required("trait");
        if (trait.Length > 0 && trait != "any" && !ClassTraits.All.Contains(trait))
            row.Error($"trait is '{trait}': there is no such trait.");
        if (!row.IsBlank("except") && !ClassTraits.All.Contains(row["except"]))
            row.Error($"except is '{row["except"]}': there is no such trait.");
        if (verdict is RuleVerdict.Note or RuleVerdict.Adapted or RuleVerdict.Letter)
            row.Required("for_instructor");
        foreach (var mode in row.List("birth_mode").Where(m => !Modes.ContainsKey(m)))
            row.Error($"birth_mode is '{mode}': it must be {string.Join(", ", Modes.Keys)}.");
        var rule = new ClassRule
        {
            Id = id,
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
            Trait = trait == "any" ? null : trait,
            Except = row.IsBlank("except") ? null : row["except"],
            Verdict = verdict ?? RuleVerdict.NotSuitable,
            ForHer = forHer,
            ForInstructor = row["for_instructor"],
            Lift = row.IsBlank("lift") ? null : row["lift"],
            Source = source ?? new("", "", "", "", "", Verification.FromMemory),
        };
        return verdict is null || source is null ? null : rule;
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
}
