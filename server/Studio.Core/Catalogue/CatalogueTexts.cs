namespace Studio.Core.Catalogue;

/// <summary>The catalogue as text: every file that makes it, whole. Two of the same content behave alike.</summary>
public sealed class CatalogueTexts
{
    private readonly IReadOnlyDictionary<string, string> _texts;

    /// <param name="texts">A text for each of <see cref="Names"/>.</param>
    /// <exception cref="ArgumentException">A file is missing.</exception>
    public CatalogueTexts(IReadOnlyDictionary<string, string> texts)
    {
        foreach (var name in Names)
            if (!texts.ContainsKey(name))
                throw new ArgumentException($"The catalogue has no file {name}.", nameof(texts));
        _texts = texts;
    }

    /// <summary>The files, in the order in which they are read.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        "stages.csv",
        "sources.csv",
        "factors.csv",
        "conditions.csv",
        "policies.csv",
        "class_rules.csv",
        "movements.csv",
        "movement_rules.csv",
        "heart_rates.csv",
        "warning_signs.csv",
        "questions.csv",
        CoverageFile.Name,
    ];

    /// <summary>The text of a file.</summary>
    public string this[string name] => _texts[name];

    /// <summary>The same catalogue with some files in place of its own; a byte order mark is not part of a file.</summary>
    public CatalogueTexts With(IEnumerable<KeyValuePair<string, string>> files)
    {
        var texts = _texts.ToDictionary(StringComparer.Ordinal);
        foreach (var (name, text) in files)
            texts[name] = text.TrimStart('\uFEFF').ReplaceLineEndings("\n");
        return new(texts);
    }

    /// <summary>The names of the files in which another catalogue differs.</summary>
    public IEnumerable<string> DifferingFrom(CatalogueTexts other) =>
        Names.Where(name => _texts[name] != other[name]);

    /// <summary>Reads and checks all files as a whole.</summary>
    /// <exception cref="CatalogueException">Anything is wrong; it holds every error of every file.</exception>
    public RuleBook Read()
    {
        var errors = new List<string>();
        RuleBook? book = null;
        try
        {
            book = RuleBook.Parse(name => new StringReader(_texts[name]));
        }
        catch (CatalogueException wrong)
        {
            errors.AddRange(wrong.Errors);
        }

        try
        {
            Coverage();
        }
        catch (CatalogueException wrong)
        {
            errors.AddRange(wrong.Errors);
        }

        return errors.Count == 0 ? book! : throw new CatalogueException(errors);
    }

    /// <summary>Which published row is covered by which rule.</summary>
    /// <exception cref="CatalogueException">The file is wrong.</exception>
    public IReadOnlyList<CoveredRow> Coverage() =>
        CoverageFile.Read(name => new StringReader(_texts[name]));
}
