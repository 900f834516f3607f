using System.Globalization;
using Studio.Core.Catalogue;

namespace Studio.Core.Movements;

/// <summary>Reads <c>movement_rules.csv</c>; refuses what no client can meet and what contradicts itself.</summary>
internal static class MovementRuleFile
{
    private const string File = "movement_rules.csv";
    private const string PolicyPrefix = "policy:";
    private const int MostEffort = 10;

    private static readonly string[] Columns =
    [
        "id",
        .. WhenReader.Columns,
        "position",
        "trait",
        "group",
        "movement",
        "effort_over",
        "except",
        "verdict",
        "for_her",
        "instruction",
        "source",
        "note",
    ];

    private static readonly Dictionary<string, MovementVerdict> Verdicts = new(
        StringComparer.Ordinal
    )
    {
        ["as-taught"] = MovementVerdict.AsTaught,
        ["adapted"] = MovementVerdict.Adapted,
        ["replaced"] = MovementVerdict.Replaced,
        ["left-out"] = MovementVerdict.LeftOut,
    };

    public static IReadOnlyList<MovementRule> Read(
        Func<string, TextReader> open,
        KnownNames known,
        IReadOnlyList<Movement> movements,
        CatalogueErrors errors
    )
    {
        var rows = CatalogueTable.Read(open, File, Columns, errors);
        CatalogueTable.CheckUnique(rows, "id");
        var rules = new List<(CatalogueRow Row, MovementRule Rule)>();
        foreach (var row in rows)
        {
            var before = errors.Count;
            if (Of(row, known, movements) is not { } rule || errors.Count > before)
                continue;
            foreach (
                var never in RuleReach.WhyNever(rule, known.FactorOf(rule.Factor), known.Stages)
            )
                row.Error(never);
            if (!movements.Any(m => MayReach(rule.Target, m)))
                row.Error("no client can ever meet it: it speaks of no movement there is.");
            foreach (var (other, earlier) in rules)
                if (RuleConflict.Between(earlier, rule, known.Stages))
                    row.Error(
                        $"it contradicts '{earlier.Id}' on line {other.Line}: the same person, the same movements, as strict, and another instruction."
                    );
            rules.Add((row, rule));
        }
        return [.. rules.Select(r => r.Rule)];
    }

    private static bool MayReach(MovementTarget target, Movement movement) =>
        target.Names(movement)
        && (target.EffortOver?.Effort is not { } over || movement.Effort > over);

    private static MovementRule? Of(
        CatalogueRow row,
        KnownNames known,
        IReadOnlyList<Movement> movements
    )
    {
        var (id, forHer) = (row.Required("id"), row.Required("for_her"));
        var verdict = row.OneOf("verdict", Verdicts);
        var source = row.SourceOf("source", known.Sources);
        if (verdict > MovementVerdict.AsTaught)
            row.Required("instruction");
        var when = WhenReader.Read(row, known);
        var target = TargetOf(row, movements);
        if (
            target.EffortOver is null
            && $"{forHer}{row["instruction"]}".Contains("{limit}", StringComparison.Ordinal)
        )
            row.Error("the words speak of a {limit}, and effort_over gives none.");
        return verdict is null || source is null
            ? null
            : new MovementRule(when)
            {
                Id = id,
                Target = target,
                Verdict = verdict.Value,
                ForHer = forHer,
                Instruction = row["instruction"],
                Source = source,
            };
    }

    private static MovementTarget TargetOf(CatalogueRow row, IReadOnlyList<Movement> movements)
    {
        Check(row, "position", row["position"], Positions.All.ContainsKey);
        Check(row, "trait", row["trait"], MovementTraits.All.ContainsKey);
        Check(row, "group", row["group"], MovementGroups.All.ContainsKey);
        foreach (var code in row.List("movement"))
            Check(row, "movement", code, known => movements.Any(m => m.Code == known));
        foreach (var code in row.List("except"))
            if (MovementTraits.NameOf(code) is null && movements.All(m => m.Code != code))
                row.Error($"except names '{code}': there is no such position, trait or movement.");
        string[] targets = ["position", "trait", "group", "movement", "effort_over"];
        if (targets.All(row.IsBlank))
            row.Error(
                "it speaks of nothing: give a position, a trait, a group, movements or an effort."
            );
        return new()
        {
            Position = row.IsBlank("position") ? null : row["position"],
            Trait = row.IsBlank("trait") ? null : row["trait"],
            Group = row.IsBlank("group") ? null : row["group"],
            Movements = row.List("movement").ToHashSet(StringComparer.Ordinal),
            EffortOver = EffortOf(row),
            Except = row.List("except").ToHashSet(StringComparer.Ordinal),
        };
    }

    private static void Check(
        CatalogueRow row,
        string column,
        string code,
        Func<string, bool> isKnown
    )
    {
        if (code.Length > 0 && !isKnown(code))
            row.Error($"{column} is '{code}': there is no such {column}.");
    }

    private static EffortLimit? EffortOf(CatalogueRow row)
    {
        var text = row["effort_over"];
        if (text.Length == 0)
            return null;
        if (text.StartsWith(PolicyPrefix, StringComparison.Ordinal))
        {
            var code = text[PolicyPrefix.Length..];
            if (StudioPolicies.EffortLimits.Contains(code, StringComparer.Ordinal))
                return new(null, code);
            row.Error(
                $"effort_over names the policy '{code}': it must be {string.Join(", ", StudioPolicies.EffortLimits)}."
            );
        }
        else if (
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var effort)
            && effort < MostEffort
        )
        {
            return new(effort, null);
        }
        else
        {
            row.Error(
                $"effort_over is '{text}': it must be 0 to {MostEffort - 1}, or policy: and a policy's code."
            );
        }
        return null;
    }
}
