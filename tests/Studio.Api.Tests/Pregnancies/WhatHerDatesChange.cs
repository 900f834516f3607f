using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Pregnancies;

public class WhatHerDatesChange(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;
    private readonly HttpClient _owner = studio.Owner;

    [Fact]
    public async Task A_revision_keeps_the_earlier_dates_with_who_entered_them()
    {
        // ACOG, Committee Opinion 700 (2017), Table 1: at 8w 0d by the period more than 5 days apart redates (DT01).
        var client = await NewClient(new { lastPeriod = _app.Today.PlusDays(-90) });
        var scan = new
        {
            scan = new
            {
                date = _app.Today.PlusDays(-34),
                weeks = 7,
                days = 1,
            },
        };
        var changed = await Dated(client, scan);
        Assert.Equal("scan", changed.Text("basis"));
        Assert.True((bool)changed["changed"]!);
        // The first scan fixes the date: a later one does not move it (DR09).
        var later = new
        {
            scan = new
            {
                date = _app.Today,
                weeks = 13,
                days = 6,
            },
        };
        var kept = await Dated(client, later);
        Assert.False((bool)kept["changed"]!);
        Assert.Equal(changed.Text("dueDate"), kept.Text("dueDate"));

        var history = await studio.Desk.Read($"/api/clients/{client}/datings");
        Assert.Equal(
            ["scan", "scan", "lastPeriod"],
            history["revisions"]!.AsArray().Select(r => r!.Text("basis"))
        );
        Assert.Equal(3, history["evidence"]!.AsArray().Count);
        Assert.All(
            history["revisions"]!.AsArray(),
            r => Assert.Equal("Somebody Testwold", r!.Text("enteredBy"))
        );
        var card = await _owner.Read($"/api/clients/{client}");
        Assert.Equal(changed.Text("dueDate"), card["pregnancy"]!.Text("dueDate"));
    }

    [Fact]
    public async Task A_revision_moves_her_stage_and_the_advance_with_it()
    {
        var client = await NewClient(new { stated = _app.Today.PlusDays(100) });
        Assert.Equal("second-trimester", await Stage(client));
        await Dated(client, new { stated = _app.Today.PlusDays(80) });
        Assert.Equal("third-trimester", await Stage(client));
        Assert.Equal(
            "third-trimester",
            await _app.Value<string>(
                "select stage from pregnancies where client_id = @client",
                new { client }
            )
        );
    }

    [Theory]
    [InlineData(-51, "preterm", "36w 6d")]
    [InlineData(-50, "in time", "37w 0d")]
    public async Task A_birth_counts_the_postnatal_stages_from_its_day(
        int daysAgo,
        string said,
        string age
    )
    {
        // ACOG/SMFM, Committee Opinion 579 (2013): before 37w 0d is preterm.
        var due = _app.Today.PlusDays(-50 + 21);
        var client = await _app.HasClient(due: due);
        var session = await _app.HasSession(_app.Today.PlusDays(3), seats: 1);
        await _app.HasBooking(session, client);
        var next = await _app.HasClient();
        await _app.HasBooking(session, next, "waiting");
        var born = await Birth(client, _app.Today.PlusDays(daysAgo), 200);
        Assert.True(said == "preterm" == (bool)born["preterm"]!, age);
        Assert.Equal(1, born.Number("bookingsReleased"));
        Assert.Equal(
            "booked",
            await _app.Value<string>(
                "select status from bookings where client_id = @next",
                new { next }
            )
        );
        Assert.Equal("postnatal", await Stage(client));
        var card = await _owner.Read($"/api/clients/{client}");
        Assert.Equal(-daysAgo, card["pregnancy"]!.Number("daysSinceBirth"));
        // A birth ends the letters that were written before it.
        Assert.Equal("expired", card["clearance"]!.Text("status"));
    }

    [Theory]
    [InlineData(1, "birth-in-future")]
    [InlineData(-200, "birth-too-early")]
    public async Task A_birth_on_an_impossible_day_is_refused(int days, string code)
    {
        var client = await _app.HasClient(due: _app.Today.PlusDays(20));
        var problem = await Birth(client, _app.Today.PlusDays(days), 400);
        Assert.Equal(code, problem.Text("code"));
        Assert.NotNull(problem["errors"]!["on"]);
        Assert.Equal("third-trimester", await Stage(client));
    }

    [Fact]
    public async Task A_birth_and_a_loss_need_a_pregnancy()
    {
        var client = await _app.HasClient(dated: false);
        Assert.Equal("no-pregnancy", (await Birth(client, _app.Today, 409)).Text("code"));
        using var loss = await _owner.Post($"/api/clients/{client}/loss", new { });
        await loss.IsRefused(409, "no-pregnancy");
        var mother = await _app.HasClient(born: _app.Today.PlusDays(-10));
        using var before = await _owner.Post(
            $"/api/clients/{mother}/loss",
            new { on = _app.Today.PlusDays(-11) }
        );
        await before.IsRefused(400, "before-birth", "on");
        var lost = await _app.HasClient(ended: _app.Today.PlusDays(-10));
        Assert.Equal("no-pregnancy", (await Birth(lost, _app.Today, 409)).Text("code"));
    }

    [Fact]
    public async Task A_loss_lets_go_of_what_is_ahead_and_fills_the_seats()
    {
        var client = await _app.HasClient();
        var (seat, waits) = (
            await _app.HasSession(_app.Today.PlusDays(3), seats: 1),
            await _app.HasSession(_app.Today.PlusDays(4), seats: 1)
        );
        await _app.HasBooking(seat, client);
        var next = await _app.HasClient();
        await _app.HasBooking(seat, next, "waiting");
        await _app.HasBooking(waits, await _app.HasClient());
        await _app.HasBooking(waits, client, "waiting");
        using (var loss = await _owner.Post($"/api/clients/{client}/loss", new { on = _app.Today }))
            Assert.Equal(2, (await loss.Is(200)).Number("bookingsReleased"));
        Assert.Equal(
            ["released", "released"],
            await _app.Rows<string>(
                "select status from bookings where client_id = @client",
                new { client }
            )
        );
        Assert.Equal(
            "booked",
            await _app.Value<string>(
                "select status from bookings where client_id = @next",
                new { next }
            )
        );
    }

    [Fact]
    public async Task A_date_after_a_birth_begins_another_pregnancy_and_one_before_it_does_not()
    {
        var client = await _app.HasClient(
            due: _app.Today.PlusDays(-200),
            born: _app.Today.PlusDays(-200)
        );
        // Beside the birth: about the same pregnancy.
        await Dated(client, new { stated = _app.Today.PlusDays(-195) });
        Assert.Equal(1, await Pregnancies(client));
        Assert.Equal("later-postnatal", await Stage(client));
        // She is 8w 0d: another one.
        await Dated(client, new { lastPeriod = _app.Today.PlusDays(-56) });
        Assert.Equal(2, await Pregnancies(client));
        Assert.Equal("first-trimester", await Stage(client));
        var card = await _owner.Read($"/api/clients/{client}");
        Assert.Equal("8w 0d", card["pregnancy"]!.Text("age"));
    }

    [Fact]
    public async Task After_a_loss_only_the_owner_begins_another_pregnancy()
    {
        var client = await _app.HasClient(ended: _app.Today.PlusDays(-100));
        var herself = await _app.SignedInAs(Role.Client, client: client);
        using (
            var hers = await herself.Post(
                $"/api/clients/{client}/datings",
                new { stated = _app.Today.PlusDays(250) }
            )
        )
            await hers.IsRefused(403, "ask-the-studio");
        await Dated(client, new { stated = _app.Today.PlusDays(250) });
        Assert.Equal("first-trimester", await Stage(client));
        Assert.Single(
            (await studio.Desk.Read($"/api/clients/{client}/datings"))["revisions"]!.AsArray()
        );
    }

    [Fact]
    public async Task An_impossible_date_changes_nothing()
    {
        var client = await _app.HasClient(due: _app.Today.PlusDays(100));
        foreach (
            var dating in new object[]
            {
                new { stated = _app.Today.PlusDays(400) },
                new { },
                new { lastPeriod = _app.Today.PlusDays(-500) },
            }
        )
        {
            using var answer = await _owner.Post($"/api/clients/{client}/datings", dating);
            var problem = await answer.Is(400);
            Assert.NotEmpty(problem["errors"]!.AsObject());
        }

        Assert.Equal("second-trimester", await Stage(client));
        Assert.Single(
            (await _owner.Read($"/api/clients/{client}/datings"))["revisions"]!.AsArray()
        );
    }

    [Fact]
    public async Task Past_forty_two_weeks_nothing_prenatal_is_booked_and_a_word_is_asked_for()
    {
        var client = await _app.HasClient(due: _app.Today.PlusDays(-10));
        var session = await _app.HasSession(_app.Today.PlusDays(4));
        using var answer = await studio.Desk.Book(session, client);
        var problem = await answer.IsRefused(403, "does-not-suit");
        Assert.Contains("Past 42 weeks", problem.Text("detail"));
        using var before = await studio.Desk.Book(
            await _app.HasSession(_app.Today.PlusDays(3)),
            client
        );
        Assert.True((bool)(await before.Is(201))["fit"]!["mayHaveGivenBirth"]!);
        var card = await studio.Desk.Read($"/api/clients/{client}");
        Assert.Contains(card["needs"]!.AsArray(), n => n!.Text("code") == "birth-word");
    }

    private async Task<long> NewClient(object dating)
    {
        using var answer = await _owner.Post(
            "/api/clients",
            new
            {
                name = "Merrin Stavely",
                phone = "123456",
                homeLocationId = await _app.Value<long>("select min(id) from locations"),
                dating,
            }
        );
        return (await answer.Is(201)).Number("id");
    }

    private async Task<JsonNode> Dated(long client, object dating)
    {
        using var answer = await _owner.Post($"/api/clients/{client}/datings", dating);
        return await answer.Is(201);
    }

    private async Task<JsonNode> Birth(long client, LocalDate on, int status)
    {
        using var answer = await _owner.Post(
            $"/api/clients/{client}/birth",
            new { on, mode = "vaginal" }
        );
        return await answer.Is(status);
    }

    private async Task<string> Stage(long client) =>
        (await _owner.Read($"/api/clients/{client}"))["pregnancy"]!.Text("stage");

    private Task<long> Pregnancies(long client) =>
        _app.Value<long>(
            "select count(*) from pregnancies where client_id = @client",
            new { client }
        );
}
