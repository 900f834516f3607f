using CsvHelper;

namespace Studio.Api.Imports;

/// <summary>A row that cannot be taken.</summary>
/// <param name="Line">Its line in the file, from 1; the header is line 1.</param>
/// <param name="Column">The column at fault; empty when it is the whole row.</param>
/// <param name="Reason">What is wrong and what would be right.</param>
public sealed record RefusedRow(int Line, string Column, string Reason);

/// <summary>A row read from a CSV file.</summary>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Cells">Trimmed cells by column; empty where the file has none.</param>
public sealed record CsvRow(int Line, IReadOnlyDictionary<string, string> Cells)
{
    /// <summary>A cell; empty when the column is not in the file.</summary>
    public string this[string column] => Cells.GetValueOrDefault(column, "");
}

/// <summary>Reads CSV text: UTF-8, one header row, comma, semicolon or tab between (as the header has it).</summary>
public static class CsvText
{
    /// <summary>All rows; what cannot be read is added to <paramref name="refused"/>.</summary>
    /// <param name="text">The file.</param>
    /// <param name="required">Columns that must be there.</param>
    /// <param name="allowed">Columns that may be there besides; null allows any.</param>
    /// <param name="refused">Takes the rows that cannot be read.</param>
    public static IReadOnlyList<CsvRow> Read(
        string text,
        IReadOnlyCollection<string> required,
        IReadOnlyCollection<string>? allowed,
        List<RefusedRow> refused
    )
    {
        text = text.TrimStart('\uFEFF');
        if (text.Trim().Length == 0)
        {
            refused.Add(new(1, "", "The file is empty."));
            return [];
        }

        using var reader = CsvReader.Create(
            new StringReader(text),
            new CsvReaderOptions
            {
                Separator = SeparatorOf(text),
                TrimWhitespace = true,
                TrackLineNumbers = true,
                FieldCountMismatch = CsvFieldCountHandling.Skip,
                MalformedData = CsvMalformedDataHandling.Skip,
                OnMalformedRecord = bad =>
                    refused.Add(
                        new(
                            (int)bad.LineNumber,
                            "",
                            bad.Reason == CsvMalformedReason.FieldCountMismatch
                                ? "The number of fields is not that of the header."
                                : "A quotation mark is in the wrong place."
                        )
                    ),
            },
            leaveOpen: false
        );
        reader.ReadHeader();
        var header = reader.Headers.Select(h => h.Trim().ToLowerInvariant()).ToList();
        foreach (var column in required.Except(header))
            refused.Add(new(1, column, "This column is missing from the header."));
        foreach (var column in header.GroupBy(h => h).Where(g => g.Count() > 1))
            refused.Add(new(1, column.Key, "This column stands in the header twice."));
        if (allowed is not null)
        {
            foreach (var column in header.Except(required).Except(allowed))
                refused.Add(
                    new(1, column, "There is no such column; see the list of column names.")
                );
        }

        if (refused.Count > 0)
            return [];
        var rows = new List<CsvRow>();
        while (reader.Read())
            rows.Add(
                new CsvRow(
                    (int)reader.LineNumber,
                    header
                        .Select((name, i) => (name, i))
                        .ToDictionary(h => h.name, h => reader.GetString(h.i).Trim())
                )
            );
        return rows;
    }

    private static char SeparatorOf(string text)
    {
        var header = text.AsSpan(0, text.IndexOf('\n') is var end and > 0 ? end : text.Length);
        var (comma, semicolon, tab) = (header.Count(','), header.Count(';'), header.Count('\t'));
        return semicolon > comma && semicolon >= tab ? ';'
            : tab > comma ? '\t'
            : ',';
    }
}
