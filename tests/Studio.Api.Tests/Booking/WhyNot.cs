using Studio.Core.Accounts;

namespace Studio.Api.Tests.Booking;

public class WhyNot(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;
    private readonly HttpClient _desk = studio.Desk;

    private LocalDate Day => _app.Today.PlusDays(5);

    [Fact]
    public async Task There_is_no_such_session_or_client()
    {
        using var session = await _desk.Book(999_999, await _app.HasClient());
        await session.IsRefused(404, "no-such-session");
        using var client = await _desk.Book(await _app.HasSession(Day), 999_999);
        await client.IsRefused(404, "no-such-client");
    }

    [Theory]
    [InlineData("08:00", "it began an hour ago")]
    [InlineData("09:00", "it begins now")]
    public async Task It_has_begun(string at, string because)
    {
        using var answer = await _desk.Book(
            await _app.HasSession(_app.Today, at),
            await _app.HasClient()
        );
        var problem = await answer.IsRefused(409, "session-begun");
        Assert.True(problem.Text("detail").Length > 0, because);
    }

    [Fact]
    public async Task It_is_cancelled()
    {
        var session = await _app.HasSession(Day, status: "cancelled");
        using var answer = await _desk.Book(session, await _app.HasClient());
        await answer.IsRefused(409, "session-cancelled");
    }

    [Theory]
    [InlineData(28, true)]
    [InlineData(29, false)]
    public async Task It_is_too_far_ahead(int days, bool bookable)
    {
        using var answer = await _desk.Book(
            await _app.HasSession(_app.Today.PlusDays(days)),
            await _app.HasClient()
        );
        if (bookable)
            await answer.Is(201);
        else
            await answer.IsRefused(409, "too-far-ahead");
    }

    [Fact]
    public async Task She_has_it_already_or_waits_for_it()
    {
        var session = await _app.HasSession(Day, seats: 1);
        var (seated, waiting) = (await _app.HasClient(), await _app.HasClient());
        await _desk.Booked(session, seated);
        await _desk.Booked(session, waiting);
        foreach (var client in new[] { seated, waiting })
        {
            using var answer = await _desk.Book(session, client);
            await answer.IsRefused(409, "already-booked");
        }
    }

    [Theory]
    [InlineData("17:10", true, "it ends as the other begins")]
    [InlineData("17:11", false, "it ends a minute into the other")]
    [InlineData("18:00", false, "the same time")]
    [InlineData("18:49", false, "it begins in the other's last minute")]
    [InlineData("18:50", true, "it begins as the other ends")]
    public async Task She_sits_elsewhere_at_that_time(string at, bool bookable, string because)
    {
        var client = await _app.HasClient();
        await _desk.Booked(await _app.HasSession(Day, "18:00"), client);
        using var answer = await _desk.Book(await _app.HasSession(Day, at), client);
        Assert.True(bookable == ((int)answer.StatusCode == 201), because);
        if (!bookable)
            await answer.IsRefused(409, "overlap");
    }

    [Fact]
    public async Task She_sits_elsewhere_at_that_moment_in_another_zone()
    {
        // 18:00 in Lisbon is 19:00 in Madrid.
        var madrid = await _app.HasRoom(
            await _app.HasLocation($"Far house {Guid.NewGuid():n}", "Europe/Madrid")
        );
        var client = await _app.HasClient();
        await _desk.Booked(await _app.HasSession(Day, "18:00"), client);
        using var same = await _desk.Book(
            await _app.HasSession(Day, "19:00", room: madrid),
            client
        );
        await same.IsRefused(409, "overlap");
        using var other = await _desk.Book(
            await _app.HasSession(Day, "18:00", room: madrid),
            client
        );
        await other.Is(201);
    }

    [Fact]
    public async Task It_is_not_for_her_stage_on_its_date()
    {
        var of = await _app.HasClass(stages: ["third-trimester"]);
        using var answer = await _desk.Book(
            await _app.HasSession(Day, of: of),
            await _app.HasClient()
        );
        var problem = await answer.IsRefused(403, "does-not-suit");
        Assert.Contains("second trimester", problem.Text("detail"));
    }

    [Fact]
    public async Task She_is_on_hold()
    {
        var client = await _app.HasClient();
        await _app.HasHold(client);
        using var answer = await _desk.Book(await _app.HasSession(Day), client);
        await answer.IsRefused(403, "on-hold");
    }

    [Theory]
    [InlineData(4, "clearance-needed", "the letter's last day is the day before")]
    [InlineData(5, null, "the letter's last day is the day itself")]
    [InlineData(6, null, "the letter ends the day after")]
    public async Task Her_letter_does_not_reach_the_day(int lasts, string? code, string because)
    {
        var client = await _app.HasClient(papers: false);
        await _app.HasScreening(client, _app.Today);
        await _app.HasLetter(client, _app.Today.PlusDays(-30), _app.Today.PlusDays(lasts));
        using var answer = await _desk.Book(await _app.HasSession(Day), client);
        Assert.True((code is null) == ((int)answer.StatusCode == 201), because);
        if (code is not null)
            await answer.IsRefused(403, code);
    }

    [Fact]
    public async Task Nothing_is_known_of_her_dates()
    {
        var client = await _app.HasClient(dated: false);
        using var answer = await _desk.Book(await _app.HasSession(Day), client);
        var problem = await answer.IsRefused(403, "does-not-suit");
        Assert.Contains("Her dates are needed.", problem.Text("detail"));
    }

    [Fact]
    public async Task She_cannot_give_up_what_has_begun_nor_what_she_gave_up()
    {
        var client = await _app.HasClient();
        var begun = await _app.HasBooking(await _app.HasSession(_app.Today, "08:30"), client);
        using (var late = await _desk.Cancel(begun))
            await late.IsRefused(409, "session-begun");
        var booking = (await _desk.Booked(await _app.HasSession(Day), client)).Number("bookingId");
        using (var first = await _desk.Cancel(booking))
            await first.Is(200);
        using var second = await _desk.Cancel(booking);
        await second.IsRefused(404, "no-such-booking");
    }

    [Fact]
    public async Task Is_said_alike_by_the_list_and_by_the_booking()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        await app.HasSession(app.Today.PlusDays(3));
        await app.HasSession(app.Today.PlusDays(4), of: await app.HasClass(stages: ["postnatal"]));
        await app.HasSession(app.Today.PlusDays(5), seats: 1);
        await app.HasBooking(await app.HasSession(app.Today.PlusDays(6), "18:00"), client);
        await app.HasSession(app.Today.PlusDays(6), "18:30");
        await app.HasBooking(3, await app.HasClient());
        var desk = await app.SignedInAs(Role.FrontDesk);
        var choices = (await desk.Read($"/api/clients/{client}/sessions")).AsArray();
        Assert.Equal(5, choices.Count);
        foreach (var choice in choices)
        {
            using var answer = await desk.Book(choice!["session"]!.Number("id"), client);
            var says = choice.Text("canBook") switch
            {
                "seat" => "booked",
                "waitlist" => "waiting",
                _ => choice["refusal"]!.Text("code"),
            };
            var happens = await answer.Is((int)answer.StatusCode);
            Assert.Equal(
                says,
                happens["status"]!.GetValueKind() == System.Text.Json.JsonValueKind.String
                    ? happens.Text("status")
                    : happens.Text("code")
            );
        }
    }
}
