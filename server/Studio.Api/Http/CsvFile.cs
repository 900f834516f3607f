using System.Globalization;
using System.Text.RegularExpressions;
using CsvHelper;

namespace Studio.Api.Http;

/// <summary>
/// A CSV file for a spreadsheet: RFC 4180, UTF-8 with a byte order mark (without one spreadsheets take it for another
/// encoding), every field quoted. No text in it can be read as a formula, not even where semicolons or tabs are taken to
/// part fields.
/// </summary>
public static partial class CsvFile
{
    /// <summary>The file of some rows below their columns.</summary>
    public static byte[] Of(IReadOnlyList<string> columns, IEnumerable<string[]> rows)
    {
        using var bytes = new MemoryStream();
        using (
            var csv = CsvWriter.Create(
                bytes,
                new CsvWriterOptions
                {
                    Quoting = CsvQuoting.Always,
                    WriteByteOrderMark = true,
                    Injection = CsvInjection.Escape,
                },
                leaveOpen: true
            )
        )
        {
            csv.WriteRecord([.. columns]);
            foreach (var row in rows)
                csv.WriteRecord(row);
            csv.Flush();
        }

        return bytes.ToArray();
    }

    /// <summary>
    /// A text that no spreadsheet takes for a formula: an apostrophe before a sign that begins one, at the start or behind
    /// whatever might be taken to part fields. The library minds the start of a field and plain signs; these are the rest.
    /// </summary>
    public static string Plain(string text) => FormulaStart().Replace(text, "${before}'");

    /// <summary>A whole number; blank for none.</summary>
    public static string Number(long? number) =>
        number?.ToString(CultureInfo.InvariantCulture) ?? "";

    [GeneratedRegex(
        """(?<before>(^|[;,|\t\r\n"])\s*)(?=[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20])""",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex FormulaStart();
}
