using Studio.Core.Accounts;

namespace Studio.Api.Tests.Booking;

public class WhatWasBookedEarlier(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    [Fact]
    public async Task Is_judged_by_the_stage_on_its_own_date_not_todays()
    {
        // Second trimester today, third from 28w 0d (ACOG Committee Opinion 700: 28w 0d begins it), in ten days.
        var client = await _app.HasClient(due: _app.Today.PlusDays(84 + 10));
        var second = await _app.HasClass(stages: ["second-trimester"]);
        var third = await _app.HasClass(stages: ["third-trimester"]);
        (long Of, int Days, int Status)[] expected =
        [
            (second, 9, 201),
            (second, 10, 403),
            (third, 9, 403),
            (third, 10, 201),
        ];
        foreach (var (of, days, status) in expected)
        {
            var session = await _app.HasSession(
                _app.Today.PlusDays(days),
                of == second ? "10:00" : "12:00",
                of
            );
            using var answer = await studio.Desk.Book(session, client);
            await answer.Is(status);
        }

        var herself = await _app.SignedInAs(Role.Client, client: client);
        var bookings = (await herself.Read($"/api/clients/{client}/bookings")).AsArray();
        Assert.Equal(["27w 6d", "28w 0d"], bookings.Select(b => b!["fit"]!.Text("age")));
    }

    [Theory]
    [InlineData("factor")]
    [InlineData("due date")]
    [InlineData("letter")]
    public async Task Stays_visible_flagged_and_counted_when_it_suits_no_longer(string change)
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient(papers: false);
        await app.HasScreening(client, app.Today);
        var letter = await app.HasLetter(client, app.Today.PlusDays(-3), app.Today.PlusDays(60));
        var of = await app.HasClass(stages: ["second-trimester"], traits: ["impact"]);
        var instructor = await app.HasInstructor();
        var session = await app.HasSession(app.Today.PlusDays(6), of: of, instructor: instructor);
        var owner = await app.SignedInAs(Role.Owner);
        var booking = await app.HasBooking(session, client);
        switch (change)
        {
            case "factor":
                using (
                    var added = await owner.Post(
                        $"/api/clients/{client}/factors",
                        new { code = "placental-abruption", from = app.Today }
                    )
                )
                    await added.Is(201);
                break;
            case "due date":
                using (
                    var revised = await owner.Post(
                        $"/api/clients/{client}/datings",
                        new { stated = app.Today.PlusDays(70) }
                    )
                )
                    Assert.Equal(1, (await revised.Is(201)).Number("bookingsNowUnsuitable"));
                break;
            case "letter":
                await app.Execute(
                    "update letters set withdrawn_at = '2026-03-02T08:00:00.000Z' where id = @letter",
                    new { letter }
                );
                using (var run = await owner.Post("/api/jobs/flags/run"))
                    await run.Is(200);
                break;
        }

        var desk = await app.SignedInAs(Role.FrontDesk);
        var kept = (await desk.Read($"/api/clients/{client}/bookings"))[0]!;
        Assert.Equal((booking, "booked"), (kept.Number("bookingId"), kept.Text("status")));
        Assert.Contains(kept["fit"]!.Text("verdict"), new[] { "needsClearance", "notSuitable" });
        Assert.Equal(1, (await desk.Read($"/api/sessions/{session}")).Number("unsuitable"));
        var her = await app.SignedInAs(Role.Instructor, instructor: instructor);
        foreach (var browser in new[] { desk, her })
        {
            Assert.Contains(
                (await browser.Read("/api/flags")).AsArray(),
                f => f!.Text("kind") == "bookingNoLongerSuits" && f!.Number("sessionId") == session
            );
            var person = (await browser.Read($"/api/sessions/{session}/roster"))["people"]![0]!;
            Assert.Contains(
                person["flags"]!.AsArray(),
                f => f!.Text("kind") == "bookingNoLongerSuits"
            );
        }
    }

    [Fact]
    public async Task Can_be_taken_again_after_it_was_given_up()
    {
        var client = await _app.HasClient();
        var session = await _app.HasSession(_app.Today.PlusDays(6), seats: 1);
        var first = (await studio.Desk.Booked(session, client)).Number("bookingId");
        using (var cancelled = await studio.Desk.Cancel(first))
            await cancelled.Is(200);
        var again = await studio.Desk.Booked(session, client);
        Assert.Equal("booked", again.Text("status"));
        Assert.NotEqual(first, again.Number("bookingId"));
    }

    [Fact]
    public async Task Is_checked_in_and_taken_back_but_not_from_the_waitlist()
    {
        var session = await _app.HasSession(_app.Today.PlusDays(1), seats: 1);
        var seat = (await studio.Desk.Booked(session, await _app.HasClient())).Number("bookingId");
        var waits = (await studio.Desk.Booked(session, await _app.HasClient())).Number("bookingId");
        using (
            var checkedIn = await studio.Desk.Post(
                $"/api/bookings/{seat}/check-in",
                new { answer = "allWell" }
            )
        )
            await checkedIn.Is(204);
        Assert.Equal(1, (await studio.Desk.Read($"/api/sessions/{session}")).Number("checkedIn"));
        using (
            var undone = await studio.Desk.Send(HttpMethod.Delete, $"/api/bookings/{seat}/check-in")
        )
            await undone.Is(204);
        Assert.Equal(0, (await studio.Desk.Read($"/api/sessions/{session}")).Number("checkedIn"));
        using var waiting = await studio.Desk.Post(
            $"/api/bookings/{waits}/check-in",
            new { answer = "allWell" }
        );
        await waiting.IsRefused(409, "no-seat");
    }
}
