namespace Studio.Core.Catalogue;

/// <summary>Reads <c>sources.csv</c>.</summary>
internal static class SourceFile
{
    private const string File = "sources.csv";

    private static readonly string[] Columns =
    [
        "id",
        "organisation",
        "title",
        "year",
        "section",
        "verification",
        "reference",
        "note",
    ];

    private static readonly Dictionary<string, Verification> Verifications = new(
        StringComparer.Ordinal
    )
    {
        ["seen"] = Verification.Seen,
        ["from-memory"] = Verification.FromMemory,
        ["common-practice"] = Verification.CommonPractice,
        ["computed"] = Verification.Computed,
    };

    public static IReadOnlyDictionary<string, Source> Read(
        Func<string, TextReader> open,
        CatalogueErrors errors
    )
    {
        var rows = CatalogueTable.Read(open, File, Columns, errors);
        CatalogueTable.CheckUnique(rows, "id");
        var sources = new Dictionary<string, Source>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            var verification = row.OneOf("verification", Verifications);
            var (id, organisation, title) = (
                row.Required("id"),
                row.Required("organisation"),
                row.Required("title")
            );
            sources.TryAdd(
                id,
                new(
                    id,
                    organisation,
                    title,
                    row["year"],
                    row["section"],
                    verification ?? Verification.FromMemory
                )
            );
        }
        return sources;
    }
}

/// <summary>Reads <c>factors.csv</c>.</summary>
internal static class FactorFile
{
    private const string File = "factors.csv";

    private static readonly string[] Columns =
    [
        "code",
        "name",
        "held_when",
        "same_as",
        "instructor_words",
        "source",
        "note",
    ];

    public static readonly Dictionary<string, HeldWhen> HeldWhens = new(StringComparer.Ordinal)
    {
        ["pregnancy"] = HeldWhen.Pregnancy,
        ["any"] = HeldWhen.Any,
    };

    public static IReadOnlyList<Factor> Read(
        Func<string, TextReader> open,
        IReadOnlyDictionary<string, Source> sources,
        CatalogueErrors errors
    )
    {
        var rows = CatalogueTable.Read(open, File, Columns, errors);
        CatalogueTable.CheckUnique(rows, "code");
        var factors = new List<Factor>();
        foreach (var row in rows)
        {
            var when = row.OneOf("held_when", HeldWhens);
            row.SourceOf("source", sources);
            factors.Add(
                new(
                    row.Required("code"),
                    row.Required("name"),
                    IsCondition: false,
                    row.Required("instructor_words")
                )
                {
                    When = when ?? HeldWhen.Any,
                    SameAs = row.IsBlank("same_as") ? null : row["same_as"],
                }
            );
        }
        return [.. factors.DistinctBy(f => f.Code)];
    }
}

/// <summary>Reads <c>policies.csv</c>.</summary>
internal static class PolicyFile
{
    private const string File = "policies.csv";

    private static readonly string[] Columns = ["code", "default", "allowed", "means", "source"];

    public static IReadOnlyList<PolicyChoice> Read(
        Func<string, TextReader> open,
        IReadOnlyDictionary<string, Source> sources,
        CatalogueErrors errors
    )
    {
        var rows = CatalogueTable.Read(open, File, Columns, errors);
        CatalogueTable.CheckUnique(rows, "code");
        var choices = new List<PolicyChoice>();
        foreach (var row in rows)
        {
            var (code, standard, allowed, means) = (
                row.Required("code"),
                row.Required("default"),
                row.Required("allowed"),
                row.Required("means")
            );
            if (row.SourceOf("source", sources) is not { } source)
                continue;
            var choice = new PolicyChoice(code, standard, allowed, means, source);
            if (!StudioPolicies.Codes.Contains(code, StringComparer.Ordinal))
                row.Error($"there is no policy '{code}'.");
            else if (!choice.IsReadable)
                row.Error(
                    $"allowed is '{allowed}': it must be words and ranges such as none|1..365."
                );
            else if (
                !choice.Allows(standard)
                || !new StudioPolicies().With(code, standard).TryGet(out _, out _)
            )
                row.Error($"the default '{standard}' is not one of {allowed}.");
            choices.Add(choice);
        }
        foreach (
            var code in StudioPolicies.Codes.Except(
                rows.Select(r => r["code"]),
                StringComparer.Ordinal
            )
        )
            errors.Add(File, 1, $"the policy '{code}' is missing.");
        return choices;
    }
}
