using NodaTime.Text;
using Studio.Api.Http;

namespace Studio.Api.Staff;

/// <summary>Pay lines as a CSV file.</summary>
public static class PayFile
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
    public static byte[] Of(IEnumerable<PayLineMessage> lines) =>
        CsvFile.Of(
            Columns,
            lines.Select(line =>
                new[]
                {
                    LocalDatePattern.Iso.Format(line.On),
                    line.StartsLocal,
                    CsvFile.Plain(line.InstructorName),
                    CsvFile.Plain(line.ClassName),
                    CsvFile.Plain(line.LocationName),
                    CsvFile.Number(line.Minutes),
                    CsvFile.Number(line.Heads),
                    line.Per is { } per ? StaffStore.Wire(per) : "",
                    line.Rate ?? "",
                    line.Currency ?? "",
                    line.AmountText ?? "",
                    CsvFile.Number(line.Amount),
                    line.Amount is null ? "no rate" : "",
                }
            )
        );
}
