using Studio.Core.Accounts;

namespace Studio.Api.Tests.Catalogue;

/// <summary>The owner chooses what holds where sources disagree; who chose what, when and why stays.</summary>
public class APolicyChosen
{
    private const string Most = "/api/policies/effort-most";

    [Fact]
    public async Task Holds_at_once_and_leaves_an_entry()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);

        await Chooses(owner, Most, new { value = "5", why = " Hot summer. " });

        Assert.Equal("5", await ValueOf(owner, "effort-most"));
        var entry = Assert.Single((await owner.Read("/api/policies/changes")).AsArray())!;
        Assert.Equal(
            ("effort-most", "6", "5", "Hot summer.", false),
            (
                entry.Text("code"),
                entry.Text("from"),
                entry.Text("to"),
                entry.Text("why"),
                (bool)entry["byDefault"]!
            )
        );
        Assert.NotEmpty(entry.Text("madeBy"));
        Assert.StartsWith("2026-03-02T09:00", entry.Text("madeAt"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task As_it_is_already_is_no_change()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);

        await Chooses(owner, Most, new { value = "6" });
        await Chooses(owner, Most, new { value = (string?)null });

        Assert.Empty((await owner.Read("/api/policies/changes")).AsArray());
    }

    [Fact]
    public async Task Can_go_back_to_the_default()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await Chooses(owner, Most, new { value = "5" });

        await Chooses(owner, Most, new { value = (string?)null });

        Assert.Equal("6", await ValueOf(owner, "effort-most"));
        Assert.Equal(0, await app.Value<long>("select count(*) from policies"));
        var newest = (await owner.Read("/api/policies/changes"))[0]!;
        Assert.Equal(
            ("5", "6", true),
            (newest.Text("from"), newest.Text("to"), (bool)newest["byDefault"]!)
        );
    }

    [Fact]
    public async Task Less_cautiously_than_the_default_has_to_be_confirmed()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);

        using var preview = await owner.Post($"{Most}/preview", new { value = "7" });
        Assert.True((bool)(await preview.Is(200))["lessCautious"]!);
        using var refused = await owner.Put(Most, new { value = "7" });
        var problem = await refused.IsRefused(409, "less-cautious");
        Assert.Contains("7 instead of 6", problem.Text("detail"), StringComparison.Ordinal);
        Assert.Equal("6", await ValueOf(owner, "effort-most"));

        await Chooses(owner, Most, new { value = "7", confirmed = true });
        Assert.Equal("7", await ValueOf(owner, "effort-most"));
    }

    [Theory]
    [InlineData("effort-most", "12")]
    [InlineData("effort-most", "")]
    [InlineData("effort-most", "a lot")]
    [InlineData("supine-from", "15w0d")]
    [InlineData("clearance-most-days", "0")]
    public async Task That_is_not_allowed_is_refused(string code, string value)
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);

        using var refused = await owner.Put(
            $"/api/policies/{code}",
            new { value, confirmed = true }
        );
        await refused.IsRefused(400, "policy-value");
        using var preview = await owner.Post($"/api/policies/{code}/preview", new { value });
        await preview.IsRefused(400, "policy-value");
        Assert.Equal(0, await app.Value<long>("select count(*) from policy_changes"));
    }

    [Fact]
    public async Task That_there_is_not_is_not_found()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);

        using var refused = await owner.Put(
            "/api/policies/colour-of-mats",
            new { value = "green" }
        );
        await refused.IsRefused(404, "no-such-policy");
    }

    [Fact]
    public async Task Is_told_beforehand_with_everybody_it_concerns_and_flags_follow_it()
    {
        await using var app = await StudioApp.Empty();
        await app.HasLocation();
        var session = await app.HasSession(app.Today.PlusDays(3));
        // No letter and nothing that asks for one: only the policy does.
        var client = await app.HasClient("Perpetua Testwold", papers: false);
        await app.HasScreening(client, app.Today);
        await app.HasBooking(session, client);
        var owner = await app.SignedInAs(Role.Owner);
        Assert.Equal("needsClearance", await owner.VerdictOf(client, session));

        using var preview = await owner.Post(
            "/api/policies/clearance-for-everyone/preview",
            new { value = "no" }
        );
        var told = (await preview.Is(200))["bookings"]!;
        var her = Assert.Single(told["bookings"]!.AsArray())!;
        Assert.Equal(
            ("Perpetua Testwold", "needsClearance", "suitable"),
            (her.Text("client"), her.Text("from"), her.Text("to"))
        );
        Assert.Equal(0, await app.Value<long>("select count(*) from policies"));

        await Chooses(
            owner,
            "/api/policies/clearance-for-everyone",
            new { value = "no", confirmed = true }
        );
        Assert.Equal("suitable", await owner.VerdictOf(client, session));
        Assert.Equal(
            0,
            await app.Value<long>(
                "select count(*) from flags where client_id = @client and closed_at is null and kind = 'letter'",
                new { client }
            )
        );

        await Chooses(owner, "/api/policies/clearance-for-everyone", new { value = (string?)null });
        Assert.Equal("needsClearance", await owner.VerdictOf(client, session));
        Assert.NotEqual(
            0,
            await app.Value<long>(
                "select count(*) from flags where client_id = @client and closed_at is null",
                new { client }
            )
        );
    }

    [Fact]
    public async Task More_loosely_gives_a_free_seat_to_somebody_who_waits()
    {
        await using var app = await StudioApp.Empty();
        await app.HasLocation();
        var session = await app.HasSession(app.Today.PlusDays(3));
        var client = await app.HasClient(papers: false);
        await app.HasScreening(client, app.Today);
        var booking = await app.HasBooking(session, client, "waiting");
        var owner = await app.SignedInAs(Role.Owner);

        await Chooses(
            owner,
            "/api/policies/clearance-for-everyone",
            new { value = "no", confirmed = true }
        );

        Assert.Equal(
            "booked",
            await app.Value<string>(
                "select status from bookings where id = @booking",
                new { booking }
            )
        );
    }

    private static async Task Chooses(HttpClient owner, string path, object body)
    {
        using var answer = await owner.Put(path, body);
        await answer.Is(204);
    }

    private static async Task<string> ValueOf(HttpClient owner, string code) =>
        (await owner.Read("/api/policies"))
            .AsArray()
            .Single(p => p!.Text("code") == code)!
            .Text("value");
}
