using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Incidents;

public sealed class TheIncidentRecord : IAsyncLifetime
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
    public async Task Tells_who_raised_it_where_when_what_was_seen_and_what_lifts_the_hold()
    {
        var instructor = await _app.HasInstructor();
        var teacher = await _app.SignedInAs(Role.Instructor, instructor: instructor);
        var her = await _app.HasClient("Runa Oldmarsh");
        var session = await _app.HasSession(_app.Today, "18:00", instructor: instructor);
        await _app.HasBooking(session, her);
        await Raise(teacher, her, new { sessionId = session, signs = new[] { "sign-dizzy" } });

        var entry = (await List())[0]!;
        Assert.Equal("Runa Oldmarsh", entry.Text("name"));
        Assert.Equal("2026-03-02", entry.Text("sessionOn"));
        Assert.Equal("18:00", entry.Text("startsLocal"));
        Assert.Equal("Europe/Lisbon", entry.Text("zone"));
        Assert.Equal(["Dizzy or faint"], entry["signs"]!.AsArray().Select(s => (string?)s));
        Assert.NotEmpty(entry.Text("raisedBy"));
        Assert.True((bool)entry["holdStands"]!);
        Assert.Contains("written on 2 March 2026 or later", entry.Text("hold"));

        await Letter(her, "2026-03-02");
        var lifted = (await List())[0]!;
        Assert.False((bool)lifted["holdStands"]!);
        Assert.Contains("lifted on 2 March 2026", lifted.Text("hold"));
    }

    [Fact]
    public async Task A_sign_on_a_later_day_is_not_lifted_by_a_letter_from_before_it()
    {
        var her = await _app.HasClient();
        await Raise(_owner, her);
        _app.Clock.AdvanceDays(3);
        await Raise(_owner, her, new { happened = "Again." });
        await Letter(her, "2026-03-03");
        Assert.True((bool)(await _owner.Read($"/api/clients/{her}"))["onHold"]!);
        var entries = await List();
        Assert.Equal([true, false], entries.Select(e => (bool)e!["holdStands"]!));

        await Letter(her, "2026-03-05");
        Assert.False((bool)(await _owner.Read($"/api/clients/{her}"))["onHold"]!);
        Assert.All(await List(), e => Assert.False((bool)e!["holdStands"]!));
    }

    [Fact]
    public async Task Comes_in_pages_newest_first_each_entry_once()
    {
        var her = await _app.HasClient();
        for (var i = 0; i < 205; i++)
            await _app.HasIncident(her, $"No {i}.");
        List<long> seen = [];
        for (var before = ""; ; before = $"?before={seen[^1]}")
        {
            var page = await List(before);
            seen.AddRange(page.Select(e => e!.Number("id")));
            if (page.Count < 100)
                break;
        }

        Assert.Equal(205, seen.Count);
        Assert.Equal(seen.OrderDescending(), seen);
    }

    [Fact]
    public async Task Is_searched_by_name_by_session_and_by_the_day_of_the_session()
    {
        var runa = await _app.HasClient("Runa Oldmarsh");
        var ines = await _app.HasClient("Inês Vale");
        var today = await _app.HasSession(_app.Today, "18:00");
        var later = await _app.HasSession(_app.Today.PlusDays(1), "18:00");
        await _app.HasBooking(today, runa);
        await _app.HasBooking(later, ines);
        await Raise(_owner, runa, new { sessionId = today });
        await Raise(_owner, ines, new { sessionId = later });
        await Raise(_owner, ines);

        Assert.Equal(2, (await List("?find=INES")).Count);
        Assert.Equal("Runa Oldmarsh", Assert.Single(await List("?find=oldm run"))!.Text("name"));
        Assert.Empty(await List("?find=%25"));
        Assert.Equal(runa, Assert.Single(await List($"?session={today}"))!.Number("clientId"));
        Assert.Equal(ines, Assert.Single(await List("?on=2026-03-03"))!.Number("clientId"));
        Assert.Single(await List($"?client={runa}"));
        using var wrong = await _owner.GetAsync(
            "/api/incidents?on=yesterday",
            TestContext.Current.CancellationToken
        );
        await wrong.Is(400);
    }

    [Fact]
    public async Task What_is_added_stands_under_its_entry_in_the_order_it_was_written()
    {
        var her = await _app.HasClient();
        var first = await _app.HasIncident(her);
        await _app.HasIncident(her, "Another one.");
        foreach (var words in new[] { "She rang.", "Her midwife rang." })
            await (await _owner.Post($"/api/incidents/{first}/more", new { happened = words })).Is(
                201
            );
        var entries = await List();
        Assert.Equal(2, entries.Count);
        Assert.Equal(
            ["She rang.", "Her midwife rang."],
            entries[1]!["more"]!.AsArray().Select(m => (string?)m!["happened"])
        );
        Assert.Empty(entries[0]!["more"]!.AsArray());
        await (await _owner.Post("/api/incidents/999999/more", new { happened = "x" })).IsRefused(
            404,
            "no-such-incident"
        );
    }

    [Fact]
    public async Task Is_for_the_owner_only_and_each_look_is_noted()
    {
        var her = await _app.HasClient();
        await _app.HasIncident(her);
        var reviewer = await _app.SignedInAs([Role.Reviewer]);
        using var refused = await reviewer.GetAsync(
            "/api/incidents",
            TestContext.Current.CancellationToken
        );
        await refused.Is(403);
        await List();
        var trail = (await _owner.Read($"/api/audit?client={her}")).AsArray();
        Assert.Contains(
            trail,
            e => (string?)e?["kind"] == "incident" && (string?)e?["act"] == "read"
        );
    }

    [Fact]
    public async Task She_raises_a_sign_herself_and_pressing_twice_writes_it_once()
    {
        var her = await _app.HasClient();
        var herself = await _app.SignedInAs(Role.Client, client: her);
        long first = 0;
        for (var press = 0; press < 2; press++)
        {
            using var request = new HttpRequestMessage(
                HttpMethod.Post,
                $"/api/clients/{her}/holds"
            );
            request.Headers.Add("Idempotency-Key", "the-same-press");
            request.Content = System.Net.Http.Json.JsonContent.Create(
                new { signs = new[] { "sign-bleeding" } }
            );
            using var answer = await herself.SendAsync(
                request,
                TestContext.Current.CancellationToken
            );
            var card = await answer.Is(200);
            Assert.NotEmpty(card.Text("emergencyNumber"));
            Assert.StartsWith("Please stop", card.Text("says"));
            first = first == 0 ? card.Number("incidentId") : first;
            Assert.Equal(first, card.Number("incidentId"));
        }

        Assert.Equal(1, await _app.Value<long>("select count(*) from incidents"));
        Assert.True((bool)(await herself.Read($"/api/clients/{her}"))["onHold"]!);
        var entry = Assert.Single(await List())!;
        Assert.Equal("She raised it herself.", entry.Text("happened"));
        // The record is the owner's to read, and nobody else's sign is hers to raise.
        using (
            var reading = await herself.GetAsync(
                "/api/incidents",
                TestContext.Current.CancellationToken
            )
        )
            await reading.Is(403);
        await (await herself.Post($"/api/clients/{await _app.HasClient()}/holds")).Is(404);
    }

    private async Task<JsonArray> List(string query = "") =>
        (await _owner.Read($"/api/incidents{query}")).AsArray();

    private static async Task Raise(HttpClient browser, long client, object? said = null)
    {
        using var raised = await browser.Post($"/api/clients/{client}/holds", said);
        await raised.Is(200);
    }

    private async Task Letter(long client, string issuedOn)
    {
        using var read = await _owner.Post(
            $"/api/clients/{client}/clearances",
            new
            {
                issuedBy = "Dr Wenna Ashdown",
                issuedOn,
                expiresOn = "2026-06-01",
            }
        );
        await read.Is(201);
    }
}
