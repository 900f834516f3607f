using System.Globalization;
using CsvHelper;
using Studio.Core.Pregnancies;

namespace Studio.Core.Catalogue;

/// <summary>All that is wrong with the catalogue, gathered file by file before anything is refused.</summary>
internal sealed class CatalogueErrors
{
    private readonly List<(int File, int Line, string Text)> errors = [];
    private readonly List<string> files = [];

    public int Count => errors.Count;

    public void Add(string file, int line, string text) =>
        errors.Add((NumberOf(file), line, $"{file} line {line}: {text}"));

    /// <summary>Takes over errors another reader has already worded, file and line included.</summary>
    public void AddWorded(string file, IEnumerable<string> worded) =>
        errors.AddRange(worded.Select((text, at) => (NumberOf(file), at, text)));

    /// <exception cref="CatalogueException">There is any error.</exception>
    public void ThrowIfAny()
    {
        if (errors.Count > 0)
            throw new CatalogueException([
                .. errors.OrderBy(e => e.File).ThenBy(e => e.Line).Select(e => e.Text),
            ]);
    }

    private int NumberOf(string file)
    {
        if (!files.Contains(file))
            files.Add(file);
        return files.IndexOf(file);
    }
}

/// <summary>One row of a catalogue file; what cannot be read is reported with its line and read as nothing.</summary>
internal sealed class CatalogueRow(
    string file,
    int line,
    Dictionary<string, string> cells,
    CatalogueErrors errors
)
{
    public int Line => line;

    public string this[string column] => cells[column];

    public bool IsBlank(string column) => cells[column].Length == 0;

    public void Error(string text) => errors.Add(file, line, text);

    public string Required(string column)
    {
        if (IsBlank(column))
            Error($"the {column} is missing.");
        return cells[column];
    }

    /// <summary>A cell that must be one of some words; a blank one is an error too.</summary>
    public T? OneOf<T>(string column, IReadOnlyDictionary<string, T> words)
        where T : struct
    {
        if (words.TryGetValue(cells[column], out var value))
            return value;
        Error($"{column} is '{cells[column]}': it must be {string.Join(", ", words.Keys)}.");
        return null;
    }

    public int? Number(string column)
    {
        if (IsBlank(column))
            return null;
        if (
            int.TryParse(
                cells[column],
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var number
            )
        )
            return number;
        Error($"{column} is '{cells[column]}': it must be a whole number.");
        return null;
    }

    public GestationalAge? Age(string column)
    {
        if (IsBlank(column))
            return null;
        if (GestationalAge.TryParse(cells[column], out var age))
            return age;
        Error($"{column} is '{cells[column]}': it must be weeks and days such as 26w0d.");
        return null;
    }

    /// <summary>The words of a cell, <c>;</c> between them.</summary>
    public IReadOnlyList<string> List(string column) =>
        cells[column]
            .Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>The source a cell names; a blank or unknown one is an error.</summary>
    public Source? SourceOf(string column, IReadOnlyDictionary<string, Source> sources)
    {
        if (IsBlank(column))
            Error($"the {column} is missing: everything here has a source.");
        else if (sources.TryGetValue(cells[column], out var source))
            return source;
        else
            Error($"{column} is '{cells[column]}': there is no such source.");
        return null;
    }
}

/// <summary>Reads a catalogue file: its columns exactly, every row with its line.</summary>
internal static class CatalogueTable
{
    public static IReadOnlyList<CatalogueRow> Read(
        Func<string, TextReader> open,
        string file,
        IReadOnlyList<string> columns,
        CatalogueErrors errors
    )
    {
        using var text = open(file);
        if (text.Peek() < 0)
        {
            errors.Add(file, 1, "the file is empty.");
            return [];
        }
        using var reader = CsvReader.Create(text, Options(file, errors), leaveOpen: true);
        reader.ReadHeader();
        string[] header = [.. reader.Headers];
        var before = errors.Count;
        foreach (var column in columns.Except(header))
            errors.Add(file, 1, $"the column '{column}' is missing.");
        foreach (var column in header.Except(columns))
            errors.Add(file, 1, $"there is no column '{column}'.");
        foreach (var column in header.GroupBy(c => c).Where(g => g.Count() > 1))
            errors.Add(file, 1, $"the column '{column.Key}' stands there twice.");
        if (errors.Count > before)
            return [];

        var rows = new List<CatalogueRow>();
        while (reader.Read())
            rows.Add(
                new(
                    file,
                    (int)reader.LineNumber,
                    columns.ToDictionary(c => c, reader.GetString),
                    errors
                )
            );
        return rows;
    }

    /// <summary>The cells of every row by column, of a file that has been read without an error.</summary>
    public static IEnumerable<IReadOnlyDictionary<string, string>> Cells(string text)
    {
        using var reader = CsvReader.Create(
            new StringReader(text),
            Options("", new()),
            leaveOpen: false
        );
        reader.ReadHeader();
        string[] header = [.. reader.Headers];
        while (reader.Read())
            yield return header.ToDictionary(c => c, reader.GetString, StringComparer.Ordinal);
    }

    private static CsvReaderOptions Options(string file, CatalogueErrors errors) =>
        new()
        {
            Separator = ',',
            TrimWhitespace = true,
            AllowLineBreaksInQuotes = false,
            TrackLineNumbers = true,
            FieldCountMismatch = CsvFieldCountHandling.Skip,
            MalformedData = CsvMalformedDataHandling.Skip,
            OnMalformedRecord = bad =>
                errors.Add(
                    file,
                    (int)bad.LineNumber,
                    bad.Reason == CsvMalformedReason.FieldCountMismatch
                        ? "the number of fields is not that of the header."
                        : "a quotation mark is in the wrong place."
                ),
        };

    /// <summary>Reports every row whose key an earlier row already has.</summary>
    public static void CheckUnique(IEnumerable<CatalogueRow> rows, string column)
    {
        foreach (var same in rows.Where(r => !r.IsBlank(column)).GroupBy(r => r[column]))
        foreach (var row in same.Skip(1))
            row.Error($"the {column} '{same.Key}' is already used on line {same.First().Line}.");
    }
}
