using System.Globalization;
using System.Text.RegularExpressions;
using CsvHelper;
using NodaTime.Text;

namespace Studio.Api.Staff;

/// <summary>
/// Pay lines as a CSV file: RFC 4180, UTF-8 with a byte order mark (without one spreadsheets take it for another
/// encoding), every field quoted. No text in it can be read as a formula, not even where semicolons or tabs are taken to
/// part fields.
/// </summary>
public static partial class PayFile
{
    /// <summary>The columns.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "date",
        "starts",
        "instructor",
        "class",
        "location",
        "minutes",
        "heads",
        "paid_per",
        "rate",
        "currency",
        "amount",
        "amount_smallest_unit",
        "note",
    ];

    /// <summary>The file of some lines. A session without a rate has no amount, and says so.</summary>
    public static byte[] Of(IEnumerable<PayLineMessage> lines)
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
            csv.WriteRecord([.. Columns]);
            foreach (var line in lines)
                csv.WriteRecord([
                    LocalDatePattern.Iso.Format(line.On),
                    line.StartsLocal,
                    Plain(line.InstructorName),
                    Plain(line.ClassName),
                    Plain(line.LocationName),
                    Number(line.Minutes),
                    Number(line.Heads),
                    line.Per is { } per ? StaffStore.Wire(per) : "",
                    line.Rate ?? "",
                    line.Currency ?? "",
                    line.AmountText ?? "",
                    Number(line.Amount),
                    line.Amount is null ? "no rate" : "",
                ]);
            csv.Flush();
        }

        return bytes.ToArray();
    }

    /// <summary>
    /// A text that no spreadsheet takes for a formula: an apostrophe before a sign that begins one, at the start or behind
    /// whatever might be taken to part fields. The library minds the start of a field and plain signs; these are the rest.
    /// </summary>
    private static string Plain(string text) => FormulaStart().Replace(text, "${before}'");

    private static string Number(long? number) =>
        number?.ToString(CultureInfo.InvariantCulture) ?? "";

    [GeneratedRegex(
        """(?<before>(^|[;,|\t\r\n"])\s*)(?=[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20])""",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex FormulaStart();
}
