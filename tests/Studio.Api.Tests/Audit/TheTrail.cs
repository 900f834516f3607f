using Microsoft.Data.Sqlite;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Audit;

public sealed class TheTrail : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _owner = null!;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        _owner = await _app.SignedInAs(Role.Owner);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task Holds_who_read_whose_record_as_what_and_when()
    {
        var instructor = await _app.HasInstructor();
        var her = await _app.HasClient();
        var session = await _app.HasSession(_app.Today.PlusDays(1), instructor: instructor);
        await _app.HasBooking(session, her);
        var client = await _app.SignedInAs(Role.Client, client: her);
        var teacher = await _app.SignedInAs(Role.Instructor, instructor: instructor);

        await _owner.Read($"/api/clients/{her}");
        await client.Read($"/api/clients/{her}/sessions");
        await teacher.Read($"/api/sessions/{session}/roster");

        var trail = (await _owner.Read($"/api/audit?client={her}")).AsArray();
        Assert.Equal(
            [("instructor", "roster"), ("herself", "fit"), ("owner", "card")],
            trail.Select(e => (e!.Text("seenAs"), e!.Text("kind")))
        );
        Assert.All(trail, e => Assert.Equal("read", e!.Text("act")));
        Assert.Equal(session, trail[0]!.Number("sessionId"));
        Assert.Equal("Somebody Testwold", trail[0]!.Text("who"));
        Assert.NotEmpty(trail[0]!.Text("at"));
    }

    [Theory]
    [InlineData("POST", "factors", """{"code":"back-pain","from":"2026-03-01"}""", "factors")]
    [InlineData("POST", "holds", "", "incident")]
    [InlineData("POST", "birth", """{"on":"2026-03-01","mode":"vaginal"}""", "birth")]
    [InlineData("POST", "loss", """{"on":"2026-03-01"}""", "ending")]
    [InlineData(
        "POST",
        "clearances",
        """{"issuedBy":"Dr Wenna Ashdown","issuedOn":"2026-03-01","expiresOn":"2026-06-01"}""",
        "letter"
    )]
    [InlineData("POST", "datings", """{"stated":"2026-04-08"}""", "dates")]
    public async Task Holds_every_change_in_the_transaction_that_makes_it(
        string method,
        string path,
        string body,
        string kind
    )
    {
        var her = await _app.HasClient(due: _app.Today.PlusDays(30));
        using var request = new HttpRequestMessage(
            new HttpMethod(method),
            $"/api/clients/{her}/{path}"
        );
        if (body.Length > 0)
            request.Content = new StringContent(body, null, "application/json");
        using var answer = await _owner.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.True(
            answer.IsSuccessStatusCode,
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)
        );

        var entry = Assert.Single((await _owner.Read($"/api/audit?client={her}")).AsArray())!;
        Assert.Equal(
            ("change", kind, "owner"),
            (entry.Text("act"), entry.Text("kind"), entry.Text("seenAs"))
        );
    }

    [Fact]
    public async Task Holds_nothing_of_what_was_refused()
    {
        var her = await _app.HasClient();
        await (
            await _owner.Post(
                $"/api/clients/{her}/factors",
                new { code = "no-such-thing", from = "2026-03-01" }
            )
        ).IsRefused(400, "no-such-factor");
        var stranger = await _app.SignedInAs(Role.Client, client: await _app.HasClient());
        await (
            await stranger.GetAsync($"/api/clients/{her}", TestContext.Current.CancellationToken)
        ).Is(404);
        Assert.Empty((await _owner.Read($"/api/audit?client={her}")).AsArray());
    }

    [Fact]
    public async Task Is_shown_to_her_of_her_own_record_and_to_nobody_else()
    {
        var her = await _app.HasClient();
        var client = await _app.SignedInAs(Role.Client, client: her);
        await _owner.Read($"/api/clients/{her}");
        Assert.Single((await client.Read($"/api/audit?client={her}")).AsArray());
        var other = await _app.HasClient();
        await (
            await client.GetAsync(
                $"/api/audit?client={other}",
                TestContext.Current.CancellationToken
            )
        ).IsRefused(404, "no-such-client");
        await (
            await client.GetAsync("/api/audit", TestContext.Current.CancellationToken)
        ).IsRefused(400, "client-missing", field: "client");
    }

    [Fact]
    public async Task Goes_on_page_by_page_without_gap()
    {
        var her = await _app.HasClient();
        for (var i = 0; i < 130; i++)
            await _owner.Read($"/api/clients/{her}");
        var first = (await _owner.Read($"/api/audit?client={her}")).AsArray();
        var last = first[^1]!.Number("id");
        var second = (await _owner.Read($"/api/audit?client={her}&before={last}")).AsArray();
        Assert.Equal((100, 30), (first.Count, second.Count));
        Assert.Equal(last - 1, second[0]!.Number("id"));
    }

    [Fact]
    public async Task Is_never_rewritten_or_shortened_by_the_program()
    {
        await _owner.Read($"/api/clients/{await _app.HasClient()}");
        foreach (var sql in new[] { "update audit set kind = 'x'", "delete from audit" })
            await Assert.ThrowsAsync<SqliteException>(() => _app.Execute(sql));
    }

    [Theory]
    [InlineData("update audit set account_id = 99 where id = 2", 2, "an entry was changed")]
    [InlineData("delete from audit where id = 2", 2, "an entry was taken out")]
    [InlineData("delete from audit where id = 4", 4, "the last entry was cut off")]
    [InlineData(
        "insert into audit select 5, at, account_id, seen_as, client_id, act, kind, session_id, hash from audit where id = 4",
        5,
        "an entry was slipped in"
    )]
    [InlineData(
        "delete from audit where id = 4; update audit_head set entries = 3, hash = (select hash from audit where id = 3)",
        4,
        "the end was cut off and the head turned back"
    )]
    [InlineData("delete from audit_head", 1, "the head was taken away")]
    public async Task Shows_what_somebody_with_the_file_did_to_it(
        string sql,
        int broken,
        string what
    )
    {
        var her = await _app.HasClient();
        for (var i = 0; i < 4; i++)
            await _owner.Read($"/api/clients/{her}");
        var whole = await _owner.Read("/api/audit/check");
        Assert.True((bool)whole["whole"]!);
        Assert.Equal(4, whole.Number("entries"));

        await _app.Execute(
            "drop trigger audit_is_never_rewritten; drop trigger audit_is_never_shortened"
        );
        await _app.Execute(sql);
        var check = await _owner.Read("/api/audit/check");
        Assert.False((bool)check["whole"]!, what);
        Assert.Equal(broken, check.Number("firstBroken"));
    }

    [Fact]
    public async Task Stays_whole_when_many_read_at_once()
    {
        var her = await _app.HasClient();
        await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => _owner.Read($"/api/clients/{her}")));
        var check = await _owner.Read("/api/audit/check");
        Assert.True((bool)check["whole"]!);
        Assert.Equal(40, check.Number("entries"));
    }
}
