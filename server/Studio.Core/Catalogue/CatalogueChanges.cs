namespace Studio.Core.Catalogue;

/// <summary>What became of a row.</summary>
public enum RowChangeKind
{
    /// <summary>It is new.</summary>
    Added,

    /// <summary>It is gone.</summary>
    Removed,

    /// <summary>Some of its cells are others.</summary>
    Changed,
}

/// <summary>A cell that is another.</summary>
/// <param name="Column">Its column.</param>
/// <param name="From">As it was.</param>
/// <param name="To">As it is to be.</param>
public sealed record CellChange(string Column, string From, string To);

/// <summary>A row of the catalogue that is not as it was.</summary>
/// <param name="File">Its file.</param>
/// <param name="Key">What names the row in it.</param>
/// <param name="Kind">What became of it.</param>
/// <param name="Cells">The cells that differ, of a changed row; those that are not blank, of the others.</param>
public sealed record RowChange(
    string File,
    string Key,
    RowChangeKind Kind,
    IReadOnlyList<CellChange> Cells
);

/// <summary>Compares two catalogues row by row; the order of the rows is no difference.</summary>
public static class CatalogueChanges
{
    private static readonly Dictionary<string, string[]> Keys = new(StringComparer.Ordinal)
    {
        ["stages.csv"] = ["code"],
        ["sources.csv"] = ["id"],
        ["factors.csv"] = ["code"],
        ["conditions.csv"] = ["ref"],
        ["policies.csv"] = ["code"],
        ["class_rules.csv"] = ["id"],
        ["movements.csv"] = ["code"],
        ["movement_rules.csv"] = ["id"],
        ["heart_rates.csv"] = ["population", "age_from", "age_to", "level"],
        ["warning_signs.csv"] = ["code"],
        ["questions.csv"] = ["code"],
        [CoverageFile.Name] = ["file", "row"],
    };

    private static readonly IReadOnlyDictionary<string, string> Nothing = new Dictionary<
        string,
        string
    >(StringComparer.Ordinal);

    /// <summary>Every row that differs; both catalogues have been read without an error.</summary>
    public static IReadOnlyList<RowChange> Between(CatalogueTexts before, CatalogueTexts after) =>
        [
            .. CatalogueTexts.Names.SelectMany(file =>
                before[file] == after[file] ? [] : Of(file, before[file], after[file])
            ),
        ];

    private static IEnumerable<RowChange> Of(string file, string before, string after)
    {
        var (was, @is) = (Rows(file, before), Rows(file, after));
        foreach (var (key, row) in was)
            if (!@is.TryGetValue(key, out var now))
                yield return new(file, key, RowChangeKind.Removed, Cells(row, Nothing));
            else if (Cells(row, now) is { Count: > 0 } cells)
                yield return new(file, key, RowChangeKind.Changed, cells);
        foreach (var (key, row) in @is)
            if (!was.ContainsKey(key))
                yield return new(file, key, RowChangeKind.Added, Cells(Nothing, row));
    }

    private static List<CellChange> Cells(
        IReadOnlyDictionary<string, string> was,
        IReadOnlyDictionary<string, string> now
    ) =>
        [
            .. (was.Count > 0 ? was : now)
                .Keys.Select(column => new CellChange(
                    column,
                    was.GetValueOrDefault(column, ""),
                    now.GetValueOrDefault(column, "")
                ))
                .Where(c => c.From != c.To),
        ];

    private static Dictionary<string, IReadOnlyDictionary<string, string>> Rows(
        string file,
        string text
    ) =>
        CatalogueTable
            .Cells(text)
            .DistinctBy(row => KeyOf(file, row))
            .ToDictionary(row => KeyOf(file, row), StringComparer.Ordinal);

    private static string KeyOf(string file, IReadOnlyDictionary<string, string> row) =>
        string.Join(' ', Keys[file].Select(column => row[column]));
}
