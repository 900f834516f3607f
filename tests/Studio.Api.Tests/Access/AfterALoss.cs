using Studio.Core.Accounts;

namespace Studio.Api.Tests.Access;

public class AfterALoss
{
    [Fact]
    public async Task Nobody_but_the_owner_and_herself_finds_her_anywhere()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient("Xylia Quenby", due: app.Today.PlusDays(100));
        var instructor = await app.HasInstructor();
        // One that has begun keeps its booking; one ahead is released; one she waits for.
        var of = await app.HasClass(minutes: 240);
        var begun = await app.HasSession(app.Today, "08:00", of, instructor: instructor);
        var ahead = await app.HasSession(app.Today.PlusDays(1), instructor: instructor);
        var full = await app.HasSession(app.Today.PlusDays(2), seats: 1, instructor: instructor);
        var now = await app.HasBooking(begun, client);
        var booking = await app.HasBooking(ahead, client);
        await app.HasBooking(full, await app.HasClient());
        await app.HasBooking(full, client, "waiting");
        await app.HasFactor(client, "back-pain", app.Today);
        var move = await app.Insert(
            """
            insert into moves (client_id, to_stage, crosses_on, status, made_at)
            values (@client, 'third-trimester', @on, 'open', '2026-03-01T00:00:00.000Z')
            """,
            new { client, on = app.Today.PlusDays(16) }
        );
        await app.Execute(
            "insert into move_steps (move_id, booking_id) values (@move, @booking)",
            new { move, booking }
        );

        var owner = await app.SignedInAs(Role.Owner);
        using (var loss = await owner.Post($"/api/clients/{client}/loss", new { }))
            Assert.Equal(2, (await loss.Is(200)).Number("bookingsReleased"));
        using (var ran = await owner.Post("/api/jobs/flags/run"))
            await ran.Is(200);

        var desk = await app.SignedInAs(Role.FrontDesk);
        var her = await app.SignedInAs(Role.Instructor, instructor: instructor);
        foreach (var (browser, who) in new[] { (desk, "desk"), (her, "instructor") })
        {
            List<string> paths = ["/api/sessions", "/api/flags"];
            paths.AddRange(
                new[] { begun, ahead, full }.SelectMany(s =>
                    new[] { $"/api/sessions/{s}", $"/api/sessions/{s}/roster" }
                )
            );
            if (browser == desk)
                paths.AddRange(["/api/clients?find=xylia", "/api/clients", "/api/moves"]);
            foreach (var path in paths)
                new[] { "Xylia", "Quenby" }.AreNotIn(await browser.Read(path), $"{who} {path}");
        }

        foreach (var path in new[] { "", "/sessions", "/bookings", "/datings" })
            await Gone(desk, HttpMethod.Get, $"/api/clients/{client}{path}");
        await Gone(desk, HttpMethod.Delete, $"/api/bookings/{now}");
        await Gone(
            desk,
            HttpMethod.Post,
            $"/api/bookings/{now}/check-in",
            new { answer = "allWell" }
        );
        await Gone(
            her,
            HttpMethod.Post,
            $"/api/bookings/{now}/check-in",
            new { answer = "allWell" }
        );
        await Gone(her, HttpMethod.Post, $"/api/clients/{client}/holds");
        await Gone(desk, HttpMethod.Post, $"/api/moves/{move}/accept");
        using (var book = await desk.Book(ahead, client))
            await book.IsRefused(404, "no-such-client");

        Assert.Single((await owner.Read("/api/clients?find=xylia")).AsArray());
        var card = await owner.Read($"/api/clients/{client}");
        Assert.Equal("ended", card.Text("phase"));
        Assert.Null(card["pregnancy"]);
        Assert.Null(card["tape"]);
        Assert.Empty(card["needs"]!.AsArray());
    }

    [Fact]
    public async Task She_reads_no_reason_and_is_offered_nothing()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient(due: app.Today.PlusDays(100));
        var session = await app.HasSession(app.Today.PlusDays(1));
        var herself = await app.SignedInAs(Role.Client, client: client);
        using (var loss = await herself.Post($"/api/clients/{client}/loss", new { on = app.Today }))
            await loss.Is(200);
        using (var again = await herself.Post($"/api/clients/{client}/loss", new { }))
            Assert.Equal(0, (await again.Is(200)).Number("bookingsReleased"));
        using var refused = await herself.Book(session, client);
        var problem = await refused.IsRefused(403, "does-not-suit");
        Assert.Equal(
            "Booking rests for now. We are here whenever you would like to talk.",
            problem.Text("detail")
        );
        Assert.Empty((await herself.Read("/api/moves")).AsArray());
    }

    private static async Task Gone(
        HttpClient browser,
        HttpMethod method,
        string path,
        object? body = null
    )
    {
        using var answer = await browser.Send(method, path, body);
        await answer.Is(404);
    }
}
