using System.Text;
using System.Text.Json.Nodes;
using Microsoft.VisualBasic.FileIO;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Staff;

public class PayOfSomeDays : IAsyncLifetime
{
    private const string Nasty = "=HYPERLINK(\"http://quay.example\",\"x\")";

    private StudioApp _app = null!;
    private HttpClient _owner = null!;
    private long _her;
    private long _class;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        await _app.HasLocation();
        _owner = await _app.SignedInAs(Role.Owner);
        _her = await _app.HasInstructor();
        _class = await _app.HasClass("Early core");
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task Has_a_line_for_each_session_that_was_held_and_says_which_have_no_rate()
    {
        await Held(-3);
        await Held(-2, "09:00");
        await Held(-2, "11:00", status: "cancelled");
        await Held(1);
        await _app.HasRate(2001, "hour", from: _app.Today.PlusDays(-2));
        var pay = await Pay();
        Assert.Equal(2, pay["lines"]!.AsArray().Count);
        Assert.Null(pay["lines"]![0]!["amount"]);
        Assert.Equal(1668, pay["lines"]![1]!.Number("amount"));
        Assert.Equal("16.68", pay["lines"]![1]!.Text("amountText"));
        Assert.Equal(1, pay.Number("withoutRate"));
        Assert.Equal(1668, Assert.Single(pay["totals"]!.AsArray())!.Number("amount"));
    }

    [Fact]
    public async Task Counts_the_heads_that_were_there_whatever_became_of_anybody_since()
    {
        var session = await Held(-1);
        var (came, stayed, lost) = (
            await _app.HasClient(),
            await _app.HasClient(),
            await _app.HasClient()
        );
        foreach (var client in new[] { came, lost })
            await _app.Execute(
                "update bookings set checked_in_at = @at where id = @id",
                new
                {
                    id = await _app.HasBooking(session, client),
                    at = _app.Clock.GetCurrentInstant(),
                }
            );
        await _app.HasBooking(session, stayed);
        await (await _owner.Post("/api/pay/rates", Rate("head", 300))).Is(201);
        Assert.Equal(2, (await Pay())["lines"]![0]!.Number("heads"));
        await (await _owner.Post($"/api/clients/{lost}/loss", new { on = _app.Today })).Is(200);
        Assert.Equal(600, (await Pay())["lines"]![0]!.Number("amount"));
        await (await _owner.Post("/api/pay/rates", Rate("head", 300, heads: "seatsTaken"))).Is(201);
        Assert.Equal(900, (await Pay())["lines"]![0]!.Number("amount"));
    }

    [Fact]
    public async Task A_wrong_rate_is_withdrawn_and_never_rewritten()
    {
        await Held(-1);
        await _app.HasRate(2000);
        var wrong = (
            await (await _owner.Post("/api/pay/rates", Rate("session", 20, _her))).Is(201)
        ).Number("id");
        Assert.Equal(20, (await Pay())["lines"]![0]!.Number("amount"));
        await (await _owner.Post($"/api/pay/rates/{wrong}/withdraw")).Is(204);
        await (await _owner.Post($"/api/pay/rates/{wrong}/withdraw")).IsRefused(
            404,
            "no-such-rate"
        );
        Assert.Equal(2000, (await Pay())["lines"]![0]!.Number("amount"));
        Assert.Equal(2, (await _owner.Read("/api/pay/rates")).AsArray().Count);
        foreach (
            var sql in new[]
            {
                "update pay_rates set amount = 1",
                "delete from pay_rates",
                "update pay_rates set withdrawn_at = null",
            }
        )
            await Assert.ThrowsAsync<Microsoft.Data.Sqlite.SqliteException>(() =>
                _app.Execute(sql)
            );
    }

    [Theory]
    [InlineData("session", 2000, "EUR", "checkedIn", "counts-nobody", "heads")]
    [InlineData("session", 2000, "ERU", null, "no-such-currency", "currency")]
    public async Task A_rate_that_makes_no_sense_is_refused_by_field(
        string per,
        long amount,
        string currency,
        string? heads,
        string code,
        string field
    ) =>
        await (
            await _owner.Post("/api/pay/rates", Rate(per, amount, heads: heads, currency: currency))
        ).IsRefused(400, code, field);

    [Fact]
    public async Task Is_hers_to_read_and_nobody_elses()
    {
        await Held(-1);
        var other = await _app.HasInstructor("Bodil Fernhaven");
        await _app.HasSession(_app.Today.PlusDays(-1), "07:00", _class, instructor: other);
        await _app.HasRate(2000);
        await _app.HasRate(9999, instructor: other);
        var herself = await _app.SignedInAs(Role.Instructor, instructor: _her);
        var pay = await herself.Read($"/api/instructors/{_her}/pay?{Span}");
        Assert.Equal(2000, Assert.Single(pay["lines"]!.AsArray())!.Number("amount"));
        Assert.DoesNotContain("9999", pay.ToJsonString(), StringComparison.Ordinal);
        foreach (var path in new[] { "pay", "pay/file", "hours" })
            await (
                await herself.GetAsync(
                    $"/api/instructors/{other}/{path}",
                    TestContext.Current.CancellationToken
                )
            ).IsRefused(404, "no-such-instructor");
    }

    // Read back by TextFieldParser of Microsoft.VisualBasic, which shares nothing with the writer.
    [Fact]
    public async Task As_a_file_is_what_the_page_says_and_no_text_in_it_is_a_formula()
    {
        var nasty = await _app.HasClass(Nasty);
        await _app.Execute(
            "update instructors set name = @name where id = @_her",
            new { name = "Tomé; =1+1, \"quoted\"", _her }
        );
        await Held(-3);
        await _app.HasRate(2345, "hour", from: _app.Today.PlusDays(-2));
        await Held(-2, of: nasty);
        using var answer = await _owner.GetAsync(
            $"/api/pay/file?{Span}",
            TestContext.Current.CancellationToken
        );
        Assert.Equal("text/csv; charset=utf-8", answer.Content.Headers.ContentType?.ToString());
        Assert.Equal(
            "pay-2026-02-20-to-2026-03-05.csv",
            answer.Content.Headers.ContentDisposition?.FileName
        );
        var bytes = await answer.Content.ReadAsByteArrayAsync(
            TestContext.Current.CancellationToken
        );
        Assert.Equal(Encoding.UTF8.Preamble.ToArray(), bytes[..3]);
        var text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes[3..]);
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        var rows = Rows(text, ",");
        Assert.Equal(3, rows.Count);
        Assert.All(rows, r => Assert.Equal(rows[0].Length, r.Length));
        var columns = rows[0].ToList();
        string Cell(int row, string column) => rows[row][columns.IndexOf(column)];
        Assert.Equal(
            ("no rate", "", ""),
            (Cell(1, "note"), Cell(1, "amount"), Cell(1, "amount_smallest_unit"))
        );
        Assert.Equal(
            ("19.54", "1954", "EUR"),
            (Cell(2, "amount"), Cell(2, "amount_smallest_unit"), Cell(2, "currency"))
        );
        Assert.Equal("'" + Nasty, Cell(2, "class"));
        Assert.Equal("Tomé; '=1+1, \"quoted\"", Cell(2, "instructor"));
        Assert.Equal(
            (await Pay())["lines"]!.AsArray().Sum(l => (long?)l!["amount"] ?? 0),
            Enumerable
                .Range(1, 2)
                .Sum(r => long.TryParse(Cell(r, "amount_smallest_unit"), out var n) ? n : 0)
        );
        // As a spreadsheet reads it that parts fields at commas, at semicolons or at tabs, quotes kept or not.
        foreach (var parts in new[] { ',', ';', '\t' })
            Assert.DoesNotContain(
                text.Split('\n').SelectMany(l => l.Split(parts)),
                c =>
                    "=+-@".Contains(
                        c.Trim(' ', '"', '\r').FirstOrDefault('x'),
                        StringComparison.Ordinal
                    )
            );
    }

    private const string Span = "from=2026-02-20&to=2026-03-05";

    private Task<JsonNode> Pay() => _owner.Read($"/api/pay?{Span}");

    private async Task<long> Held(
        int inDays,
        string at = "18:00",
        long? of = null,
        string status = "open"
    ) =>
        await _app.HasSession(
            _app.Today.PlusDays(inDays),
            at,
            of ?? _class,
            instructor: _her,
            status: status
        );

    private object Rate(
        string per,
        long amount,
        long? instructorId = null,
        string? heads = null,
        string currency = "EUR"
    ) =>
        new
        {
            instructorId,
            classId = (long?)null,
            per,
            heads,
            amount,
            currency,
            from = _app.Today.PlusDays(-60),
        };

    private static List<string[]> Rows(string text, string separator)
    {
        using var parser = new TextFieldParser(new StringReader(text));
        parser.SetDelimiters(separator);
        parser.HasFieldsEnclosedInQuotes = true;
        parser.TrimWhiteSpace = false;
        var rows = new List<string[]>();
        while (!parser.EndOfData)
            rows.Add(parser.ReadFields()!);
        return rows;
    }
}
