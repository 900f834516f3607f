using System.Text.Json.Nodes;
using Studio.Api.Data;
using Studio.Api.Rosters;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;

namespace Studio.Api.Tests.Access;

public class WhatTheFrontDeskIsTold(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    public static TheoryData<string> Codes => [.. StudioApp.Book.Factors.Select(f => f.Code)];

    [Fact]
    public async Task About_a_client_with_everything_in_the_catalogue_is_administrative_only()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient("Runa Oldmarsh", babies: 3);
        foreach (var factor in StudioApp.Book.Factors)
            await app.HasFactor(client, factor.Code, app.Today.PlusDays(-5));
        await app.HasScreening(client, app.Today.PlusDays(-1), "clearanceNeeded");
        await app.HasHold(client);
        await ClassOfEveryTrait(app, client);
        await SuggestedMove(app, client);
        await app.With<FlagSweep, int>(flags => Swept(app, flags));

        var desk = await app.SignedInAs(Role.FrontDesk);
        foreach (var (path, answer) in await Everything(app, desk, client))
            HealthWords.All.AreNotIn(answer, path);
        var card = await desk.Read($"/api/clients/{client}");
        Assert.Null(card["factors"]);
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public async Task About_one_factor_at_a_time_is_administrative_only(string code)
    {
        var client = await _app.HasClient();
        await _app.HasFactor(client, code, _app.Today.PlusDays(-80));
        var session = await _app.HasSession(
            _app.Today.PlusDays(4),
            of: await _app.HasClass(traits: [.. ClassTraits.All])
        );
        await _app.HasBooking(session, client);
        var desk = studio.Desk;
        HealthWords.All.AreNotIn(await desk.Read($"/api/clients/{client}"), "card");
        HealthWords.All.AreNotIn(await desk.Read($"/api/clients/{client}/bookings"), "bookings");
        HealthWords.All.AreNotIn(await desk.Read($"/api/sessions/{session}/roster"), "roster");
        var other = await _app.HasSession(
            _app.Today.PlusDays(5),
            of: await _app.HasClass(traits: [.. ClassTraits.All])
        );
        using var answer = await desk.Book(other, client);
        Assert.Contains((int)answer.StatusCode, new[] { 201, 403 });
        HealthWords.All.AreNotIn(await answer.Is((int)answer.StatusCode), "booking");
    }

    [Fact]
    public async Task About_health_is_not_the_mode_of_birth_nor_what_screening_found()
    {
        var client = await _app.HasClient(
            born: _app.Today.PlusDays(-60),
            mode: Core.Pregnancies.BirthMode.Caesarean
        );
        await _app.HasScreening(client, _app.Today.PlusDays(-1), "noExercise");
        var card = await studio.Desk.Read($"/api/clients/{client}");
        Assert.Null(card["pregnancy"]!["birthMode"]);
        Assert.DoesNotContain(
            HealthWords.Texts(card),
            t =>
                t.Contains("caesarean", StringComparison.OrdinalIgnoreCase)
                || t.Contains("exercise", StringComparison.OrdinalIgnoreCase)
        );
        var hers = await studio.Owner.Read($"/api/clients/{client}");
        Assert.Equal("caesarean", hers["pregnancy"]!.Text("birthMode"));
    }

    private static async Task<List<(string Path, JsonNode Answer)>> Everything(
        StudioApp app,
        HttpClient desk,
        long client
    )
    {
        var sessions = await app.Rows<long>("select id from sessions");
        List<string> paths =
        [
            "/api/clients?find=runa",
            $"/api/clients/{client}",
            $"/api/clients/{client}/datings",
            $"/api/clients/{client}/sessions",
            $"/api/clients/{client}/bookings",
            "/api/sessions",
            "/api/flags",
            "/api/moves",
            .. sessions.SelectMany(id =>
                new[] { $"/api/sessions/{id}", $"/api/sessions/{id}/roster" }
            ),
        ];
        List<(string, JsonNode)> answers = [];
        foreach (var path in paths)
        {
            var answer = await desk.Read(path);
            Assert.NotEmpty(HealthWords.Texts(answer));
            answers.Add((path, answer));
        }

        foreach (var session in sessions)
        {
            using var refused = await desk.Book(session, client);
            answers.Add(("booking", await refused.Is((int)refused.StatusCode)));
        }

        return answers;
    }

    private static async Task ClassOfEveryTrait(StudioApp app, long client)
    {
        var of = await app.HasClass(traits: [.. ClassTraits.All]);
        await app.HasBooking(await app.HasSession(app.Today.PlusDays(2), of: of), client);
        await app.HasBooking(
            await app.HasSession(app.Today.PlusDays(3), of: of, seats: 1),
            client,
            "waiting"
        );
        await app.HasSession(app.Today.PlusDays(4), of: of);
    }

    private static async Task SuggestedMove(StudioApp app, long client)
    {
        var move = await app.Insert(
            """
            insert into moves (client_id, to_stage, crosses_on, status, made_at)
            values (@client, 'third-trimester', @on, 'open', @at)
            """,
            new
            {
                client,
                on = app.Today.PlusDays(1),
                at = app.Clock.GetCurrentInstant(),
            }
        );
        await app.Execute(
            """
            insert into move_steps (move_id, booking_id, to_session_id)
            select @move, b.id, (select max(id) from sessions) from bookings b where b.status = 'booked'
            """,
            new { move }
        );
    }

    private static async Task<int> Swept(StudioApp app, FlagSweep flags)
    {
        await using var write = await Database(app).BeginWriteAsync();
        var touched = await flags.AllAsync(write);
        await write.CommitAsync();
        return touched;
    }

    private static Database Database(StudioApp app) =>
        (Database)app.Services.GetService(typeof(Database))!;
}
