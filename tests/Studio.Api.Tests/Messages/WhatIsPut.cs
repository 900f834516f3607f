using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Api.Jobs;
using Studio.Api.Messages;
using Studio.Core.Accounts;
using Studio.Core.Messages;

namespace Studio.Api.Tests.Messages;

/// <summary>What is told, and to whom, in the transaction that makes it so.</summary>
public class WhatIsPut(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    [Fact]
    public async Task A_seat_a_place_a_seat_from_the_waitlist_and_a_booking_given_up()
    {
        var session = await _app.HasSession(
            _app.Today.PlusDays(6),
            of: await _app.HasClass("Slow strength"),
            seats: 1
        );
        var (first, second) = (await _app.HasClient(), await _app.HasClient());
        var seat = (await studio.Desk.Booked(session, first)).Number("bookingId");
        await studio.Desk.Booked(session, second);
        using (var cancelled = await studio.Desk.Cancel(seat))
            await cancelled.Is(200);

        Assert.Equal(
            ["bookingMade", "bookingCancelled"],
            (await _app.MessagesTo(first)).Select(m => m.Kind)
        );
        var hers = await _app.MessagesTo(second);
        Assert.Equal(["waitlistPlace", "seatFromWaitlist"], hers.Select(m => m.Kind));
        Assert.Contains("\"place\":\"1\"", hers[0].Facts, StringComparison.Ordinal);
        Assert.All(
            hers,
            m =>
            {
                Assert.Equal(session, m.SessionId);
                Assert.Contains(
                    "Slow strength, Sunday 8 March 2026 at 18:00, Quay house (",
                    m.Facts,
                    StringComparison.Ordinal
                );
            }
        );
    }

    [Fact]
    public async Task Nothing_when_the_booking_is_refused()
    {
        var client = await _app.HasClient(papers: false);
        using var refused = await studio.Desk.Book(
            await _app.HasSession(_app.Today.PlusDays(6)),
            client
        );
        Assert.NotEqual(201, (int)refused.StatusCode);
        Assert.Empty(await _app.MessagesTo(client));
    }

    [Fact]
    public async Task The_same_request_again_tells_once()
    {
        var client = await _app.HasClient();
        var session = await _app.HasSession(_app.Today.PlusDays(6));
        var key = Guid.NewGuid().ToString();
        for (var i = 0; i < 2; i++)
            using (var answer = await studio.Desk.Book(session, client, key))
                await answer.Is(201);
        Assert.Single(await _app.MessagesTo(client));
    }

    [Fact]
    public async Task A_suggested_move_once_and_an_accepted_one_with_its_new_times()
    {
        await using var app = await StudioApp.Empty();
        var early = await app.HasClass("Early", ["second-trimester"]);
        var late = await app.HasClass("Late", ["third-trimester"]);
        // Third trimester begins on 12 March for her.
        var client = await app.HasClient(due: app.Today.PlusDays(94));
        var from = await app.HasSession(app.Today.PlusDays(14), of: early);
        await app.HasSession(app.Today.PlusDays(14), "18:30", late);
        await app.HasBooking(from, client);
        var owner = await app.SignedInAs(Role.Owner);
        for (var night = 0; night < 3; night++)
            using (var ran = await owner.Post("/api/jobs/moves/run"))
                await ran.Is(200);
        var told = Assert.Single(await app.MessagesTo(client));
        Assert.Equal(("moveSuggested", "{}"), (told.Kind, told.Facts));

        var move = (await owner.Read("/api/moves"))[0]!.Number("id");
        using (var accepted = await owner.Post($"/api/moves/{move}/accept"))
            await accepted.Is(200);
        var moved = (await app.MessagesTo(client))[1];
        Assert.Equal("bookingMade", moved.Kind);
        Assert.Contains(
            "Late, Monday 16 March 2026 at 18:30",
            moved.Facts,
            StringComparison.Ordinal
        );
        // What was suggested is not told any more.
        await app.Rings();
        Assert.Equal(["dropped", "sent"], (await app.MessagesTo(client)).Select(m => m.Status));
    }

    [Fact]
    public async Task That_her_page_needs_her_once_for_each_reminder_and_once_a_night()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient(due: app.Today.PlusDays(150), papers: false);
        await app.HasLetter(client, app.Today.PlusDays(-10), app.Today.PlusDays(20));
        await app.HasBooking(await app.HasSession(app.Today.PlusDays(60)), client);
        var nobody = await app.HasClient(papers: false);

        await Nights(app, 1);
        // The letter's end is near and the questions were never answered: one message says it all.
        Assert.Equal(
            ["dropped", "waiting"],
            (await app.MessagesTo(client)).Select(m => m.Status).Order()
        );
        await app.HasScreening(client, app.Today);
        await Nights(app, 21);
        // First, at 14 and at 3 days.
        var told = await app.MessagesTo(client);
        Assert.All(told, m => Assert.Equal(("needsHer", "{}"), (m.Kind, m.Facts)));
        Assert.Equal(3, told.Count(m => m.Status != "dropped"));
        Assert.Empty(await app.MessagesTo(nobody));
    }

    [Fact]
    public async Task Nothing_of_papers_in_the_quiet_weeks_after_a_birth()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient(born: app.Today.PlusDays(-7), papers: false);
        await app.HasBooking(await app.HasSession(app.Today.PlusDays(-3)), client);
        await Nights(app, 2);
        Assert.Empty(await app.MessagesTo(client));
    }

    [Fact]
    public async Task Nothing_after_a_loss_and_what_waited_is_dropped()
    {
        var client = await _app.HasClient();
        var other = await _app.HasClient();
        await studio.Desk.Booked(await _app.HasSession(_app.Today.PlusDays(4)), client);
        await _app.HasMessage(client);
        using (var loss = await studio.Owner.Post($"/api/clients/{client}/loss", new { }))
            await loss.Is(200);
        Assert.Equal(["dropped", "dropped"], (await _app.MessagesTo(client)).Select(m => m.Status));

        Assert.False(await Put(_app, client));
        Assert.True(await Put(_app, other));
        Assert.Equal(2, (await _app.MessagesTo(client)).Count);
    }

    [Fact]
    public async Task A_birth_drops_what_no_longer_holds()
    {
        var client = await _app.HasClient(due: _app.Today.PlusDays(5));
        var session = await _app.HasSession(_app.Today.PlusDays(4));
        await studio.Desk.Booked(session, client);
        await _app.HasMessage(client);
        await _app.HasMessage(client, MessageKind.MoveSuggested);
        await _app.HasMessage(client, MessageKind.SessionCancelled, lines: "A class is not held.");
        using (
            var birth = await studio.Desk.Post(
                $"/api/clients/{client}/birth",
                new { on = _app.Today, mode = "vaginal" }
            )
        )
            await birth.Is(200);
        Assert.Equal(
            [
                ("bookingMade", "dropped"),
                ("needsHer", "dropped"),
                ("moveSuggested", "dropped"),
                ("sessionCancelled", "waiting"),
            ],
            (await _app.MessagesTo(client)).Select(m => (m.Kind, m.Status))
        );
    }

    private static async Task Nights(StudioApp app, int nights)
    {
        for (var night = 0; night < nights; night++)
        {
            await app.With<NightSweep, int>(sweep => sweep.RunDueAsync());
            app.Clock.AdvanceDays(1);
        }
    }

    private static Task<bool> Put(StudioApp app, long client) =>
        app.With<Outbox, bool>(async outbox =>
        {
            await using var write = await app
                .Services.GetRequiredService<Database>()
                .BeginWriteAsync();
            var put = await outbox.PutAsync(
                write,
                new()
                {
                    Kind = MessageKind.NeedsHer,
                    About = $"a-test:{Guid.NewGuid():n}",
                    ClientId = client,
                    Facts = new Dictionary<string, string>(),
                }
            );
            await write.CommitAsync();
            return put;
        });
}
