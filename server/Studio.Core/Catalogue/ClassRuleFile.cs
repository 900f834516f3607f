namespace Studio.Core.Catalogue;

/// <summary>Reads <c>class_rules.csv</c> and refuses a rule that no client could ever meet.</summary>
internal static class ClassRuleFile
{
    private const string File = "class_rules.csv";

    private static readonly string[] Columns =
    [
        "id",
        .. WhenReader.Columns,
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

    public static IReadOnlyList<ClassRule> Read(
        Func<string, TextReader> open,
        KnownNames known,
        CatalogueErrors errors
    )
    {
        var rows = CatalogueTable.Read(open, File, Columns, errors);
        CatalogueTable.CheckUnique(rows, "id");
        var rules = new List<ClassRule>();
        foreach (var row in rows)
        {
            var before = errors.Count;
            if (Of(row, known) is not { } rule || errors.Count > before)
                continue;
            if (rule.Trait is not null && rule.Trait == rule.Except)
                row.Error(
                    $"no client can ever meet it: the trait '{rule.Trait}' is spared by except."
                );
            foreach (
                var never in RuleReach.WhyNever(rule, known.FactorOf(rule.Factor), known.Stages)
            )
                row.Error(never);
            if (
                rule.Lift?.Contains("{date}", StringComparison.Ordinal) == true
                && !RuleReach.Ends(rule, known.Stages)
            )
                row.Error("lift speaks of a {date}, and nothing in the rule says when it ends.");
            rules.Add(rule);
        }
        return rules;
    }

    private static ClassRule? Of(CatalogueRow row, KnownNames known)
    {
        var (id, forHer) = (row.Required("id"), row.Required("for_her"));
        var verdict = row.OneOf("verdict", Verdicts);
        var source = row.SourceOf("source", known.Sources);
        var trait = row.Required("trait");
        if (trait.Length > 0 && trait != "any" && !ClassTraits.All.Contains(trait))
            row.Error($"trait is '{trait}': there is no such trait.");
        if (!row.IsBlank("except") && !ClassTraits.All.Contains(row["except"]))
            row.Error($"except is '{row["except"]}': there is no such trait.");
        if (verdict is RuleVerdict.Note or RuleVerdict.Adapted or RuleVerdict.Letter)
            row.Required("for_instructor");
        var when = WhenReader.Read(row, known);
        return verdict is null || source is null
            ? null
            : new ClassRule(when)
            {
                Id = id,
                Trait = trait == "any" ? null : trait,
                Except = row.IsBlank("except") ? null : row["except"],
                Verdict = verdict.Value,
                ForHer = forHer,
                ForInstructor = row["for_instructor"],
                Lift = row.IsBlank("lift") ? null : row["lift"],
                Source = source,
            };
    }
}
