namespace Studio.Core.Catalogue;

/// <summary>Reads <c>conditions.csv</c>: one listed condition to a row.</summary>
internal static class ConditionFile
{
    private const string File = "conditions.csv";

    private static readonly string[] Columns =
    [
        "ref",
        "code",
        "name",
        "instructor_words",
        "held_when",
        "babies_from",
        "babies_to",
        "acog",
        "acog_from",
        "acog_source",
        "canada",
        "canada_from",
        "canada_source",
        "review",
        "review_source",
        "after_birth",
        "after_birth_source",
        "note",
    ];

    private static readonly Dictionary<string, Severity> Severities = new(StringComparer.Ordinal)
    {
        ["absolute"] = Severity.Absolute,
        ["relative"] = Severity.Relative,
        ["none"] = Severity.None,
    };

    public static IReadOnlyList<Condition> Read(
        Func<string, TextReader> open,
        IReadOnlyDictionary<string, Source> sources,
        IReadOnlyList<Factor> factors,
        CatalogueErrors errors
    )
    {
        var rows = CatalogueTable.Read(open, File, Columns, errors);
        CatalogueTable.CheckUnique(rows, "ref");
        CatalogueTable.CheckUnique(rows, "code");
        var conditions = new List<Condition>();
        foreach (var row in rows)
        {
            if (factors.Any(f => f.Code == row["code"]))
                row.Error($"the code '{row["code"]}' is already a factor's.");
            if (Of(row, sources) is { } condition)
                conditions.Add(condition);
        }
        foreach (
            var factor in factors.Where(f =>
                f.SameAs is { } same && rows.All(r => r["code"] != same)
            )
        )
            errors.Add(
                File,
                1,
                $"the condition '{factor.SameAs}', which the factor '{factor.Code}' counts as, is missing."
            );
        return [.. conditions.DistinctBy(c => c.Factor.Code)];
    }

    private static Condition? Of(CatalogueRow row, IReadOnlyDictionary<string, Source> sources)
    {
        var when = row.OneOf("held_when", FactorFile.HeldWhens);
        var acog = ListingOf(row, "acog", sources);
        var canada = ListingOf(row, "canada", sources);
        var review = row.IsBlank("review") ? null : ListingOf(row, "review", sources);
        var afterBirth = row["after_birth"] is "none"
            ? null
            : ListingOf(row, "after_birth", sources);
        var (babiesFrom, babiesTo) = (row.Number("babies_from"), row.Number("babies_to"));
        if (when == HeldWhen.Pregnancy && afterBirth is not null)
            row.Error(
                "held_when is 'pregnancy' and after_birth is not 'none': the birth ends it, so that can never be met."
            );
        if (babiesTo < babiesFrom)
            row.Error(
                $"babies_from {babiesFrom} is more than babies_to {babiesTo}: no pregnancy can ever meet that."
            );
        if (babiesTo is not null && babiesFrom is null)
            row.Error("babies_to is given without babies_from.");
        var factor = new Factor(
            row.Required("code"),
            row.Required("name"),
            IsCondition: true,
            row.Required("instructor_words")
        )
        {
            When = when ?? HeldWhen.Any,
        };
        var reference = row.Required("ref");
        return acog is null || canada is null
            ? null
            : new Condition
            {
                Reference = reference,
                Factor = factor,
                Acog = acog,
                Canada = canada,
                Review = review,
                AfterBirth = afterBirth,
                BabiesFrom = babiesFrom,
                BabiesTo = babiesTo,
            };
    }

    private static Listing? ListingOf(
        CatalogueRow row,
        string column,
        IReadOnlyDictionary<string, Source> sources
    )
    {
        var severity = row.OneOf(column, Severities);
        var source = row.SourceOf($"{column}_source", sources);
        var from = column is "acog" or "canada" ? row.Age($"{column}_from") : null;
        if (severity == Severity.None && from is not null)
            row.Error($"{column} is 'none' and {column}_from is {from}: that can never be met.");
        return severity is null || source is null
            ? null
            : new Listing(severity.Value, from, source);
    }
}
