using Studio.Core.Accounts;
using Studio.Core.Pregnancies;

namespace Studio.Api.Tests.Pregnancies;

/// <summary>A birth as it is told, put right and taken back, through the routes.</summary>
public class ABirth(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    [Fact]
    public async Task Told_again_lets_go_of_nothing_that_was_booked_since()
    {
        var client = await _app.HasClient(due: _app.Today.PlusDays(-1));
        await _app.HasBooking(await _app.HasSession(_app.Today.PlusDays(3)), client);
        Assert.Equal(
            1,
            (await Report(studio.Desk, client, _app.Today, 200)).Number("bookingsReleased")
        );
        var since = await _app.HasBooking(await _app.HasSession(_app.Today.PlusDays(4)), client);
        Assert.Equal(
            0,
            (await Report(studio.Owner, client, _app.Today, 200)).Number("bookingsReleased")
        );
        await Report(studio.Desk, client, _app.Today.PlusDays(-1), 409);
        Assert.Equal(
            "booked",
            await _app.Value<string>("select status from bookings where id = @since", new { since })
        );
    }

    [Fact]
    public async Task Before_37_weeks_is_followed_by_a_call_and_no_word_of_why()
    {
        var client = await _app.HasClient("Pernille Averstock", due: _app.Today.PlusDays(60));
        await _app.HasBooking(await _app.HasSession(_app.Today.PlusDays(3)), client);
        var released = await Report(studio.Desk, client, _app.Today, 200);
        Assert.True((bool)released["preterm"]!);
        var flag = Assert.Single(await Flags(client));
        Assert.Equal("ringHer", flag.Kind);
        Assert.Equal(
            "Please ring her, kindly and without asking for anything. Her bookings are released, and nothing is owed.",
            flag.Text
        );
        // Nothing is asked of her, not even when the weeks of quiet are over, before she was rung.
        var herself = await _app.SignedInAs(Role.Client, client: client);
        Assert.Empty((await herself.Read($"/api/clients/{client}"))["needs"]!.AsArray());
        Assert.Contains(
            (await studio.Desk.Read($"/api/clients/{client}"))["needs"]!.AsArray(),
            n => n!.Text("code") == "ring-her"
        );
        using (var rung = await studio.Desk.Post($"/api/clients/{client}/rung"))
            await rung.Is(204);
        using (var again = await studio.Owner.Post($"/api/clients/{client}/rung"))
            await again.Is(204);
        Assert.Empty(await Flags(client));
        Assert.Equal(1, await Trail(client, "call"));
    }

    // 42 days: the policy's default, the six-week check (reference row PR07, NHS).
    [Theory]
    [InlineData(41, false)]
    [InlineData(42, true)]
    public async Task Is_followed_by_six_weeks_in_which_nothing_is_asked(int days, bool asked)
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient(due: app.Today);
        var owner = await app.SignedInAs(Role.Owner);
        var desk = await app.SignedInAs(Role.FrontDesk);
        var herself = await app.SignedInAs(Role.Client, client: client);
        using (
            var birth = await herself.Post(
                $"/api/clients/{client}/birth",
                new { on = app.Today, mode = "caesarean" }
            )
        )
            await birth.Is(200);
        app.Clock.Advance(Duration.FromDays(days));
        using (var ran = await owner.Post("/api/jobs/flags/run"))
            await ran.Is(200);
        foreach (var browser in new[] { herself, desk })
        {
            var needs = (await browser.Read($"/api/clients/{client}"))["needs"]!.AsArray();
            Assert.Equal(
                asked ? ["letter", "screening"] : [],
                needs.Select(n => n!.Text("code")).Order()
            );
        }
        Assert.Empty((await desk.Read("/api/flags")).AsArray());
        // What a class needs is the same all along.
        var session = await app.HasSession(app.Today.PlusDays(1));
        using var booked = await herself.Book(session, client);
        await booked.Is(403);
    }

    [Fact]
    public async Task Put_right_counts_from_its_own_day_and_leaves_the_mode_the_desk_is_not_told()
    {
        var client = await _app.HasClient(due: _app.Today);
        await Report(studio.Owner, client, _app.Today, 200, "caesarean");
        using (
            var early = await studio.Desk.Put(
                $"/api/clients/{client}/birth",
                new { on = _app.Today.PlusDays(1) }
            )
        )
            await early.IsRefused(400, "birth-in-future", "on");
        using (
            var corrected = await studio.Desk.Put(
                $"/api/clients/{client}/birth",
                new { on = _app.Today.PlusDays(-7) }
            )
        )
            await corrected.Is(204);
        var card = await studio.Owner.Read($"/api/clients/{client}");
        Assert.Equal(7, card["pregnancy"]!.Number("daysSinceBirth"));
        Assert.Equal("caesarean", card["pregnancy"]!.Text("birthMode"));
        Assert.Null((await studio.Desk.Read($"/api/clients/{client}"))["pregnancy"]!["birthMode"]);
        Assert.Equal(1, await Trail(client, "birth corrected"));
    }

    [Fact]
    public async Task Taken_back_on_its_day_gives_back_what_can_be_had()
    {
        var client = await _app.HasClient(due: _app.Today.PlusDays(20));
        var free = await _app.HasSession(_app.Today.PlusDays(3));
        var full = await _app.HasSession(_app.Today.PlusDays(4), seats: 1);
        await _app.HasBooking(free, client);
        await _app.HasBooking(full, client);
        await _app.HasBooking(full, await _app.HasClient(), "waiting");
        await Report(studio.Desk, client, _app.Today, 200);
        using var back = await studio.Desk.Send(HttpMethod.Delete, $"/api/clients/{client}/birth");
        var came = await back.Is(200);
        Assert.Equal(
            (1, 1, 0),
            (came.Number("booked"), came.Number("waiting"), came.Number("gone"))
        );
        var card = await studio.Owner.Read($"/api/clients/{client}");
        Assert.Equal("pregnant", card.Text("phase"));
        Assert.Equal("third-trimester", card["pregnancy"]!.Text("stage"));
        Assert.Equal(1, await Trail(client, "birth taken back"));
        using var twice = await studio.Desk.Send(HttpMethod.Delete, $"/api/clients/{client}/birth");
        await twice.IsRefused(409, "no-birth");
    }

    [Fact]
    public async Task On_the_next_day_is_taken_back_by_the_owner_only()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient(due: app.Today);
        var owner = await app.SignedInAs(Role.Owner);
        var desk = await app.SignedInAs(Role.FrontDesk);
        await Report(desk, client, app.Today, 200);
        app.Clock.Advance(Duration.FromDays(1));
        Assert.False(
            (bool)(await desk.Read($"/api/clients/{client}"))["pregnancy"]!["birthRevocable"]!
        );
        using (var late = await desk.Send(HttpMethod.Delete, $"/api/clients/{client}/birth"))
            await late.IsRefused(403, "birth-stands");
        using var back = await owner.Send(HttpMethod.Delete, $"/api/clients/{client}/birth");
        await back.Is(200);
    }

    [Theory]
    [InlineData(139, false, false)]
    [InlineData(140, true, false)]
    [InlineData(258, true, false)]
    [InlineData(259, true, true)]
    public async Task Can_be_told_from_20_weeks_and_is_in_plain_sight_from_37(
        int day,
        bool can,
        bool plain
    )
    {
        var client = await _app.HasClient(due: _app.Today.PlusDays(GestationalAge.AtDueDate - day));
        var now = (await studio.Desk.Read($"/api/clients/{client}"))["pregnancy"]!;
        Assert.Equal(can, (bool)now["birthReportable"]!);
        Assert.Equal(plain, (bool)now["mayHaveGivenBirth"]!);
    }

    [Fact]
    public async Task Can_be_followed_by_a_loss_and_by_the_way_back_to_it()
    {
        var client = await _app.HasClient(due: _app.Today);
        await Report(studio.Owner, client, _app.Today.PlusDays(-2), 200);
        using (var loss = await studio.Owner.Post($"/api/clients/{client}/loss", new { }))
            await loss.Is(200);
        Assert.Equal("ended", (await studio.Owner.Read($"/api/clients/{client}")).Text("phase"));
        using (
            var gone = await studio.Desk.GetAsync(
                $"/api/clients/{client}",
                TestContext.Current.CancellationToken
            )
        )
            await gone.Is(404);
        using (
            var back = await studio.Owner.Post(
                $"/api/clients/{client}/return",
                new { setByMistake = true }
            )
        )
            await back.Is(200);
        var card = await studio.Desk.Read($"/api/clients/{client}");
        Assert.Equal("born", card.Text("phase"));
        Assert.Equal(2, card["pregnancy"]!.Number("daysSinceBirth"));
    }

    [Fact]
    public async Task A_loss_set_by_mistake_is_as_if_it_had_not_been()
    {
        var client = await _app.HasClient();
        await _app.HasBooking(await _app.HasSession(_app.Today.PlusDays(3)), client);
        using (var loss = await studio.Owner.Post($"/api/clients/{client}/loss", new { }))
            await loss.Is(200);
        using (
            var back = await studio.Owner.Post(
                $"/api/clients/{client}/return",
                new { setByMistake = true }
            )
        )
            Assert.Equal(1, (await back.Is(200)).Number("booked"));
        var card = await studio.Desk.Read($"/api/clients/{client}");
        Assert.Equal("pregnant", card.Text("phase"));
        Assert.Equal("current", card["screening"]!.Text("status"));
        Assert.Equal("valid", card["clearance"]!.Text("status"));
    }

    private async Task<List<(string Kind, string Text)>> Flags(long client) =>
        [
            .. (await studio.Desk.Read("/api/flags"))
                .AsArray()
                .Where(f => (long?)f!["clientId"] == client)
                .Select(f => (f!.Text("kind"), f!.Text("text"))),
        ];

    private Task<long> Trail(long client, string kind) =>
        _app.Value<long>(
            "select count(*) from audit where client_id = @client and kind = @kind",
            new { client, kind }
        );

    private static async Task<System.Text.Json.Nodes.JsonNode> Report(
        HttpClient browser,
        long client,
        LocalDate on,
        int status,
        string mode = "vaginal"
    )
    {
        using var answer = await browser.Post($"/api/clients/{client}/birth", new { on, mode });
        return await answer.Is(status);
    }
}
