using CsvHelper;
using NodaTime.Text;

namespace Studio.Api.Tests.Pregnancies;

public class DatingThroughHttp(SharedStudio studio)
{
    private static readonly Lazy<Dictionary<string, Dictionary<string, string>>> Reference = new(
        Rows
    );

    /// <summary>Worked examples of the reference, each shown with where it comes from.</summary>
    public static IEnumerable<TheoryDataRow<string>> Examples =>
        Reference
            .Value.Values.Where(r =>
                r["kind"] == "worked_example"
                && (
                    r["input"].StartsWith("method=lmp")
                    || r["input"].StartsWith("method=naegele")
                    || r["input"].StartsWith("method=transfer")
                    || r["topic"] == "redating decision"
                )
                && !r["input"].Contains(" ga ")
            )
            .Select(r => new TheoryDataRow<string>(r["id"])
            {
                TestDisplayName =
                    $"{r["id"]}: {r["topic"]}, {r["input"]} ({r["source_org"]}, {r["source_title"]} {r["source_year"]}, {r["source_locator"]}; {r["how_verified"]})",
            });

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Gives_the_due_date_of_the_worked_example(string id)
    {
        var row = Reference.Value[id];
        var input = Pairs(row["input"]);
        var expected = Pairs(row["expected"]);
        // Where the calendar form of the rule differs, +280 days (DR01) is what we follow.
        var due = Day(expected.GetValueOrDefault("edd_280") ?? expected["edd"]);
        using var answer = await studio.Desk.Post(
            "/api/dating",
            new
            {
                lastPeriod = input.TryGetValue("lmp", out var lmp) ? Day(lmp) : (LocalDate?)null,
                scan = input.TryGetValue("scan", out var scan)
                    ? new
                    {
                        date = Day(scan),
                        weeks = int.Parse(input["ga_by_ultrasound"].Split('w')[0]),
                        days = int.Parse(input["ga_by_ultrasound"].Split('w')[1].TrimEnd('d')),
                    }
                    : null,
                transfer = input.TryGetValue("transfer", out var transfer)
                    ? new { date = Day(transfer), embryoDays = int.Parse(input["embryo_age_days"]) }
                    : null,
                on = due,
            }
        );
        var dated = await answer.Is(200);
        Assert.Equal($"{due:uuuu-MM-dd}", dated.Text("dueDate"));
        Assert.Equal(40, dated["gestationalAge"]!.Number("weeks"));
        Assert.Equal("third-trimester", dated.Text("stage"));
        // ACOG/SMFM, Committee Opinion 579 (2013): 39w 0d to 40w 6d is full term.
        Assert.Equal("full term", dated.Text("term"));
        if (expected.TryGetValue("redate", out var redate))
            Assert.Equal(redate == "yes" ? "scan" : "lastPeriod", dated.Text("basis"));
        Assert.NotEmpty(dated.Text("explanation"));
    }

    [Theory]
    [InlineData("""{"on":"2026-03-02"}""", "lastPeriod")]
    [InlineData("""{"lastPeriod":"2025-12-01"}""", "on")]
    [InlineData("""{"lastPeriod":"2025-12-01","on":"2027-03-02"}""", "on")]
    [InlineData("""{"lastPeriod":"2025-12-01","on":"2025-11-30"}""", "on")]
    [InlineData("""{"lastPeriod":"2025-12-01","cycleDays":12,"on":"2026-03-02"}""", "cycleDays")]
    [InlineData(
        """{"lastPeriod":"2025-12-01","scan":{"date":"2025-11-01","weeks":8,"days":0},"on":"2026-03-02"}""",
        "scan.date"
    )]
    [InlineData(
        """{"scan":{"date":"2026-01-01","weeks":8,"days":9},"on":"2026-03-02"}""",
        "scan.days"
    )]
    [InlineData(
        """{"scan":{"date":"2026-01-01","weeks":90,"days":0},"on":"2026-03-02"}""",
        "scan.weeks"
    )]
    [InlineData("""{"scan":{"date":"2026-01-01","weeks":8},"on":"2026-03-02"}""", "scan")]
    [InlineData(
        """{"transfer":{"date":"2026-01-01","embryoDays":0},"on":"2026-03-02"}""",
        "transfer.embryoDays"
    )]
    [InlineData("""{"lastPeriod":"2025-13-01","on":"2026-03-02"}""", "lastPeriod")]
    [InlineData("""{"lastPeriod":"0025-12-01","on":"2026-03-02"}""", "lastPeriod")]
    public async Task Refuses_the_impossible_and_names_the_field(string body, string field)
    {
        using var content = new StringContent(body, System.Text.Encoding.UTF8, "application/json");
        using var answer = await studio.Desk.PostAsync(
            "/api/dating",
            content,
            TestContext.Current.CancellationToken
        );
        var problem = await answer.Is(400);
        Assert.Contains(
            problem["errors"]!.AsObject(),
            e => e.Key == field || (field == "on" && e.Key == "body")
        );
    }

    private static LocalDate Day(string text) => LocalDatePattern.Iso.Parse(text).Value;

    private static Dictionary<string, string> Pairs(string cell) =>
        cell.Split(';').Select(p => p.Split('=', 2)).ToDictionary(p => p[0], p => p[1]);

    private static Dictionary<string, Dictionary<string, string>> Rows()
    {
        using var reader = CsvReader.Create(
            File.OpenText(Path.Combine(AppContext.BaseDirectory, "reference", "dating.csv")),
            new CsvReaderOptions { Separator = ',' }
        );
        reader.ReadHeader();
        var rows = new Dictionary<string, Dictionary<string, string>>();
        while (reader.Read())
            rows[reader.GetString(0)] = reader
                .Headers.Select((h, i) => (h, i))
                .ToDictionary(h => h.h, h => reader.GetString(h.i));
        return rows;
    }
}
