using Studio.Core.Accounts;

namespace Studio.Api.Tests.Passes;

/// <summary>Kinds, sales, goodwill, paying back and the files of the owner.</summary>
public sealed class SoldAtTheDesk : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _desk = null!;
    private HttpClient _owner = null!;
    private long _client;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        _desk = await _app.SignedInAs(Role.FrontDesk);
        _owner = await _app.SignedInAs(Role.Owner);
        _client = await _app.HasClient("=Cmd Quenby", due: _app.Today.PlusDays(150));
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    private static object Kind(
        string name,
        string form = "classes",
        int? credits = 10,
        int? runsDays = 70,
        long price = 12300,
        long[]? sessions = null
    ) =>
        new
        {
            name,
            form,
            credits,
            runsDays,
            price,
            currency = "EUR",
            taxPerMille = 230,
            carriesOver = true,
            onSale = true,
            classIds = Array.Empty<long>(),
            sessionIds = sessions ?? [],
        };

    private async Task<long> Made(object kind)
    {
        using var made = await _owner.Post("/api/pass-kinds", kind);
        return (await made.Is(201)).Number("id");
    }

    [Fact]
    public async Task A_sale_copies_the_terms_so_that_a_change_of_the_kind_changes_nothing_sold()
    {
        var kind = await Made(Kind("Ten classes"));
        var sold = await _desk.Sold(_client, kind);
        using var changed = await _owner.Put(
            $"/api/pass-kinds/{kind}",
            Kind("Three", credits: 3, price: 1)
        );
        await changed.Is(204);
        var pass = await _desk.Pass(_client, sold.Number("id"));
        Assert.Equal("Ten classes", pass.Text("name"));
        Assert.Equal(10, pass.Number("balance"));
        Assert.Equal("123.00", pass.Text("priceText"));
        Assert.Equal("23.00", pass.Text("taxText"));
        Assert.Equal(_app.Today.PlusDays(69).ToString("uuuu-MM-dd", null), pass.Text("lastDay"));
    }

    [Theory]
    [InlineData("monthly", null, null, 5000)]
    [InlineData("dropIn", 1, 30, 1500)]
    [InlineData("trial", 1, 30, 0)]
    public async Task Every_form_can_be_sold(string form, int? credits, int? days, long price)
    {
        var kind = await Made(Kind(form, form, credits, days, price));
        using var sold = await _desk.Post(
            $"/api/clients/{_client}/passes",
            new { kindId = kind, paidHow = price == 0 ? null : "card" }
        );
        Assert.Equal(form, (await sold.Is(201)).Text("form"));
        if (form != "trial")
            return;
        using var again = await _desk.Post($"/api/clients/{_client}/passes", new { kindId = kind });
        await again.IsRefused(409, "trial-once");
    }

    [Fact]
    public async Task A_course_gives_its_sessions_and_pays_for_no_other()
    {
        var cls = await _app.HasClass();
        var first = await _app.HasSession(_app.Today.PlusDays(2), of: cls);
        var second = await _app.HasSession(_app.Today.PlusDays(9), of: cls);
        var other = await _app.HasSession(_app.Today.PlusDays(3), of: cls);
        var kind = await Made(Kind("Course", "course", null, null, sessions: [first, second]));
        var pass = (await _desk.Sold(_client, kind)).Number("id");
        Assert.Equal(2, await _desk.Left(_client, pass));
        await _desk.Booked(other, _client);
        Assert.Equal(2, await _desk.Left(_client, pass));
        await _desk.Booked(second, _client);
        Assert.Equal(1, await _desk.Left(_client, pass));
    }

    [Theory]
    [InlineData("classes", null, 30, 100, "credits")]
    [InlineData("classes", 5, null, 100, "runsDays")]
    [InlineData("monthly", 5, null, 100, "credits")]
    [InlineData("trial", 1, 30, 100, "price")]
    [InlineData("course", null, null, 100, "sessionIds")]
    [InlineData("dropIn", 2, 30, 100, "credits")]
    public async Task A_kind_that_makes_no_sense_is_refused_by_the_field_at_fault(
        string form,
        int? credits,
        int? days,
        long price,
        string field
    )
    {
        using var answer = await _owner.Post(
            "/api/pass-kinds",
            Kind("Odd", form, credits, days, price)
        );
        await answer.IsRefused(400, "bad-pass-kind", field);
    }

    [Fact]
    public async Task The_same_sale_sent_twice_is_one_sale()
    {
        var kind = await Made(Kind("Ten"));
        for (var i = 0; i < 2; i++)
        {
            using var sold = await _desk.Post(
                $"/api/clients/{_client}/passes",
                new { kindId = kind, paidHow = "cash" },
                "one-key"
            );
            await sold.Is(201);
        }

        Assert.Single((await _desk.Read($"/api/clients/{_client}/passes")).AsArray());
    }

    [Fact]
    public async Task What_costs_something_says_how_it_was_paid()
    {
        using var sold = await _desk.Post(
            $"/api/clients/{_client}/passes",
            new { kindId = await Made(Kind("Ten")) }
        );
        await sold.IsRefused(400, "say-how-paid", "paidHow");
    }

    [Fact]
    public async Task Goodwill_and_paying_back_have_a_reason_that_she_can_read()
    {
        var pass = (await _desk.Sold(_client, await Made(Kind("Ten")))).Number("id");
        using var blank = await _desk.Post(
            $"/api/passes/{pass}/goodwill",
            new { credits = 1, reason = "  " }
        );
        Assert.NotNull(
            (await blank.Is(400))["errors"]!["Reason"] ?? (await blank.Is(400))["errors"]!["reason"]
        );
        using var given = await _desk.Post(
            $"/api/passes/{pass}/goodwill",
            new { credits = 2, reason = "The heating was out." }
        );
        Assert.Equal(12, (await given.Is(200)).Number("balance"));
        using var tooMuch = await _desk.Post(
            $"/api/passes/{pass}/refund",
            new
            {
                amount = 12301,
                paidHow = "cash",
                reason = "She moves away.",
            }
        );
        await tooMuch.IsRefused(400, "more-than-was-paid", "amount");
        using var back = await _desk.Post(
            $"/api/passes/{pass}/refund",
            new
            {
                amount = 6150,
                paidHow = "transfer",
                reason = "She moves away.",
            }
        );
        Assert.Equal(0, (await back.Is(200)).Number("balance"));
        using var more = await _desk.Post(
            $"/api/passes/{pass}/goodwill",
            new { credits = 1, reason = "Again." }
        );
        await more.IsRefused(409, "pass-refunded");

        var herself = await _app.SignedInAs(Role.Client, client: _client);
        var ledger = (await herself.Pass(_client, pass))["ledger"]!.AsArray();
        Assert.Equal(["Sold", "Goodwill", "Paid back"], ledger.Select(l => l!.Text("says")));
        Assert.Equal([10, 12, 0], ledger.Select(l => (int)l!.Number("balance")));
        Assert.Equal("The heating was out.", ledger[1]!.Text("reason"));
        Assert.Equal("61.50", ledger[2]!.Text("paidBack"));
        // In the tables the reason is sealed.
        Assert.Equal(
            0,
            await _app.Value<long>(
                "select count(*) from pass_entries where reason like '%heating%' or reason like '%moves%'"
            )
        );
    }

    [Fact]
    public async Task A_credit_that_comes_back_after_paying_back_is_hers_again()
    {
        var session = await _app.HasSession(_app.Today.PlusDays(3));
        var pass = await _app.HasPass(_client);
        var booking = (await _desk.Booked(session, _client)).Number("bookingId");
        using var back = await _desk.Post(
            $"/api/passes/{pass}/refund",
            new
            {
                amount = 1000,
                paidHow = "cash",
                reason = "She moves away.",
            }
        );
        await back.Is(200);
        using var cancelled = await _desk.Cancel(booking);
        await cancelled.Is(200);
        Assert.Equal(1, await _desk.Left(_client, pass));
        await _desk.Booked(session, _client);
        Assert.Equal(0, await _desk.Left(_client, pass));
    }

    [Fact]
    public async Task The_owner_downloads_the_takings_of_each_day_and_the_credits_outstanding()
    {
        var pass = (await _desk.Sold(_client, await Made(Kind("=Ten; =more")))).Number("id");
        using var back = await _desk.Post(
            $"/api/passes/{pass}/refund",
            new
            {
                amount = 6150,
                paidHow = "cash",
                reason = "She moves away.",
            }
        );
        await back.Is(200);
        await _app.HasPass(_client, credits: 7);

        var takings = await File("/api/takings/file");
        var day = _app.Today.ToString("uuuu-MM-dd", null);
        Assert.Contains(
            $"\"{day}\",\"'=Ten; '=more\",\"cash\",\"EUR\",\"23.0\",\"2\",\"123.00\",\"61.50\",\"61.50\",\"11.50\",\"50.00\"",
            takings,
            StringComparison.Ordinal
        );
        var outstanding = await File("/api/outstanding-credits/file");
        Assert.Contains("\"'=Cmd Quenby\"", outstanding, StringComparison.Ordinal);
        Assert.Contains("\"7\",\"60.00\",\"0.00\",\"EUR\"", outstanding, StringComparison.Ordinal);
        Assert.Equal(2, outstanding.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
    }

    private async Task<string> File(string path) =>
        await _owner.GetStringAsync(path, TestContext.Current.CancellationToken);
}
