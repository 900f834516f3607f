namespace Studio.Core.Catalogue;

/// <summary>Reads <c>warning_signs.csv</c>.</summary>
internal static class WarningSignFile
{
    private const string File = "warning_signs.csv";

    private static readonly string[] Columns =
    [
        "code",
        "ref",
        "shown_when",
        "name",
        "asks",
        "acog",
        "canada",
        "australia",
        "acog_2002",
        "action",
        "source",
    ];

    private static readonly Dictionary<string, bool> Actions = new(StringComparer.Ordinal)
    {
        ["stop"] = true,
        ["slow-down"] = false,
    };

    private static readonly Dictionary<string, bool> Listings = new(StringComparer.Ordinal)
    {
        ["yes"] = true,
        ["no"] = false,
        ["not listed"] = false,
    };

    public static IReadOnlyList<WarningSign> Read(
        Func<string, TextReader> open,
        IReadOnlyDictionary<string, Source> sources,
        CatalogueErrors errors
    )
    {
        var rows = CatalogueTable.Read(open, File, Columns, errors);
        CatalogueTable.CheckUnique(rows, "code");
        CatalogueTable.CheckUnique(rows, "ref");
        var signs = new List<WarningSign>();
        foreach (var row in rows)
        {
            var stops = row.OneOf("action", Actions);
            var when = row.OneOf("shown_when", QuestionFile.Whens);
            var listed = new[] { "acog", "canada", "australia", "acog_2002" }
                .Select(list => row.OneOf(list, Listings))
                .ToList();
            if (stops == true && listed.TrueForAll(l => l == false))
                row.Error("no list names it, and yet it stops a class.");
            if (row.SourceOf("source", sources) is { } source)
                signs.Add(
                    new(
                        row.Required("code"),
                        row.Required("ref"),
                        when ?? AskedWhen.Always,
                        row.Required("name"),
                        row.Required("asks"),
                        stops ?? true,
                        source
                    )
                );
        }
        return [.. signs.DistinctBy(s => s.Code)];
    }
}

/// <summary>Reads <c>questions.csv</c>: every condition and warning sign is asked about, each to whom it can be true of.</summary>
internal static class QuestionFile
{
    private const string File = "questions.csv";

    private static readonly string[] Columns =
    [
        "code",
        "version",
        "section",
        "asked_when",
        "kind",
        "about",
        "asks",
        "help",
        "source",
    ];

    public static readonly Dictionary<string, AskedWhen> Whens = new(StringComparer.Ordinal)
    {
        ["pregnancy"] = AskedWhen.Pregnancy,
        ["after-birth"] = AskedWhen.AfterBirth,
        ["always"] = AskedWhen.Always,
    };

    private static readonly Dictionary<string, QuestionSection> Sections = new(
        StringComparer.Ordinal
    )
    {
        ["agreement"] = QuestionSection.Agreement,
        ["dates"] = QuestionSection.Dates,
        ["signs"] = QuestionSection.Signs,
        ["before"] = QuestionSection.Before,
        ["health"] = QuestionSection.Health,
        ["now"] = QuestionSection.Now,
        ["emergency"] = QuestionSection.Emergency,
    };

    private static readonly Dictionary<string, QuestionKind> Kinds = new(StringComparer.Ordinal)
    {
        ["yes-no"] = QuestionKind.YesNo,
        ["agree"] = QuestionKind.Agree,
        ["confirm"] = QuestionKind.Confirm,
        ["text"] = QuestionKind.Text,
    };

    public static QuestionSet Read(
        Func<string, TextReader> open,
        IReadOnlyDictionary<string, Source> sources,
        IReadOnlyList<Factor> factors,
        IReadOnlyList<WarningSign> signs,
        CatalogueErrors errors
    )
    {
        // A condition that could not be read is told in its own file, not once more here.
        var knowsAll = errors.Count == 0;
        var rows = CatalogueTable.Read(open, File, Columns, errors);
        CatalogueTable.CheckUnique(rows, "code");
        CatalogueTable.CheckUnique(rows.Where(r => !r.IsBlank("about")), "about");
        var version = rows.Count == 0 ? null : rows[0].Number("version");
        var questions = new List<Question>();
        foreach (var row in rows)
        {
            if (row.Number("version") != version || version is null)
                row.Error("the version must be one number, the same on every line.");
            if (Of(row, sources) is { } question)
                questions.Add(question);
            if (knowsAll && !row.IsBlank("about"))
                CheckAbout(row, factors, signs);
        }
        foreach (var section in Sections.Where(s => rows.All(r => r["section"] != s.Key)))
            errors.Add(File, 1, $"nothing is asked in the section '{section.Key}'.");
        if (!knowsAll)
            return new(version ?? 0, [.. questions.DistinctBy(q => q.Code)]);
        var asked = rows.Select(r => r["about"]).ToHashSet(StringComparer.Ordinal);
        foreach (var factor in factors.Where(f => f.SameAs is null && !asked.Contains(f.Code)))
            errors.Add(File, 1, $"nobody is asked about '{factor.Code}'.");
        foreach (var sign in signs.Where(s => !asked.Contains(s.Code)))
            errors.Add(File, 1, $"nobody is asked about the warning sign '{sign.Code}'.");
        return new(version ?? 0, [.. questions.DistinctBy(q => q.Code)]);
    }

    private static Question? Of(CatalogueRow row, IReadOnlyDictionary<string, Source> sources)
    {
        var (section, when, kind) = (
            row.OneOf("section", Sections),
            row.OneOf("asked_when", Whens),
            row.OneOf("kind", Kinds)
        );
        var (code, asks) = (row.Required("code"), row.Required("asks"));
        var source = row.SourceOf("source", sources);
        if (kind == QuestionKind.YesNo && row.IsBlank("about"))
            row.Error("a yes means nothing: the factor, condition or sign it is about is missing.");
        if (kind is not (QuestionKind.YesNo or null) && !row.IsBlank("about"))
            row.Error($"about is '{row["about"]}', but only yes and no say whether that is true.");
        return section is null || when is null || kind is null || source is null
            ? null
            : new(
                code,
                section.Value,
                when.Value,
                kind.Value,
                row.IsBlank("about") ? null : row["about"],
                asks,
                row["help"],
                source
            );
    }

    private static void CheckAbout(
        CatalogueRow row,
        IReadOnlyList<Factor> factors,
        IReadOnlyList<WarningSign> signs
    )
    {
        var about = row["about"];
        if (signs.FirstOrDefault(s => s.Code == about) is { } sign)
        {
            if (row["section"] != "signs")
                row.Error($"'{about}' is a warning sign: it is asked in the section 'signs'.");
            if (Whens.GetValueOrDefault(row["asked_when"]) != sign.When)
                row.Error($"'{about}' is not shown to the same clients as it is asked of.");
        }
        else if (factors.FirstOrDefault(f => f.Code == about) is { } factor)
        {
            var should = factor.When == HeldWhen.Pregnancy ? "pregnancy" : "always";
            if (row["asked_when"] != should)
                row.Error($"'{about}' must be asked '{should}', whenever it can be true.");
        }
        else
            row.Error($"about is '{about}': there is no such factor, condition or warning sign.");
    }
}
