using Studio.Core.Accounts;

namespace Studio.Api.Tests.Booking;

public class TheWaitlist(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    [Fact]
    public async Task Moves_up_first_come_first_served_when_a_seat_frees()
    {
        var session = await _app.HasSession(_app.Today.PlusDays(5), seats: 1);
        var seat = await Book(session, await _app.HasClient());
        var first = await Book(session, await _app.HasClient());
        var second = await Book(session, await _app.HasClient());
        Assert.Equal(1, await Cancelled(seat));
        Assert.Equal("booked", await Status(first));
        Assert.Equal("waiting", await Status(second));
    }

    [Fact]
    public async Task Moves_nobody_up_when_a_waiting_place_is_given_up()
    {
        var session = await _app.HasSession(_app.Today.PlusDays(5), seats: 1);
        await Book(session, await _app.HasClient());
        var first = await Book(session, await _app.HasClient());
        var second = await Book(session, await _app.HasClient());
        Assert.Equal(0, await Cancelled(first));
        Assert.Equal("waiting", await Status(second));
    }

    [Fact]
    public async Task Passes_over_those_whom_the_session_suits_no_longer()
    {
        var session = await _app.HasSession(_app.Today.PlusDays(5), seats: 1);
        var seat = await Book(session, await _app.HasClient());
        var client = await _app.HasClient();
        var first = await Book(session, client);
        var second = await Book(session, await _app.HasClient());
        await _app.HasHold(client);
        Assert.Equal(1, await Cancelled(seat));
        Assert.Equal("waiting", await Status(first));
        Assert.Equal("booked", await Status(second));
    }

    [Fact]
    public async Task Passes_over_those_who_sit_elsewhere_at_that_time()
    {
        var day = _app.Today.PlusDays(5);
        var session = await _app.HasSession(day, "18:00", seats: 1);
        var seat = await Book(session, await _app.HasClient());
        var client = await _app.HasClient();
        var first = await Book(session, client);
        await Book(await _app.HasSession(day, "18:30"), client);
        var second = await Book(session, await _app.HasClient());
        Assert.Equal(1, await Cancelled(seat));
        Assert.Equal("waiting", await Status(first));
        Assert.Equal("booked", await Status(second));
    }

    [Fact]
    public async Task Gives_a_free_seat_to_who_could_not_have_it_until_she_gave_up_another()
    {
        var day = _app.Today.PlusDays(5);
        var session = await _app.HasSession(day, "18:00", seats: 1);
        var seat = await Book(session, await _app.HasClient());
        var client = await _app.HasClient();
        var waits = await Book(session, client);
        var elsewhere = await Book(await _app.HasSession(day, "18:30"), client);
        await Cancelled(seat);
        Assert.Equal("waiting", await Status(waits));
        await Cancelled(elsewhere);
        Assert.Equal("booked", await Status(waits));
    }

    [Fact]
    public async Task Gives_a_free_seat_to_who_could_not_have_it_until_her_letter_was_filed()
    {
        var session = await _app.HasSession(_app.Today.PlusDays(5), seats: 1);
        var seat = await Book(session, await _app.HasClient());
        var client = await _app.HasClient();
        var waits = await Book(session, client);
        await _app.HasHold(client);
        await Cancelled(seat);
        Assert.Equal("waiting", await Status(waits));
        // After a warning sign the questions are asked again as well.
        await _app.HasScreening(client, _app.Today);
        using var letter = await (await studio.App.SignedInAs(Role.Owner)).Post(
            $"/api/clients/{client}/clearances",
            new
            {
                issuedBy = "Dr Wenna Ashdown",
                issuedOn = _app.Today,
                expiresOn = _app.Today.PlusDays(60),
            }
        );
        await letter.Is(201);
        Assert.Equal("booked", await Status(waits));
    }

    [Theory]
    [InlineData(121, "booked", "a minute before the cut-off of two hours")]
    [InlineData(120, "waiting", "at the cut-off")]
    [InlineData(5, "waiting", "shortly before the start")]
    public async Task Stops_moving_up_two_hours_before_the_start(
        int minutesBefore,
        string status,
        string when
    )
    {
        await using var app = await StudioApp.Empty();
        var session = await app.HasSession(app.Today, "18:00", seats: 1);
        var desk = await app.SignedInAs(Role.FrontDesk);
        var seat = (await desk.Booked(session, await app.HasClient())).Number("bookingId");
        await desk.Booked(session, await app.HasClient());
        app.Clock.Reset(Instant.FromUtc(2026, 3, 2, 18, 0) - Duration.FromMinutes(minutesBefore));
        using var cancelled = await desk.Cancel(seat);
        await cancelled.Is(200);
        Assert.True(
            status
                == await app.Value<string>("select status from bookings order by id desc limit 1"),
            when
        );
    }

    private async Task<long> Book(long session, long client) =>
        (await studio.Desk.Booked(session, client)).Number("bookingId");

    private async Task<long> Cancelled(long booking)
    {
        using var answer = await studio.Desk.Cancel(booking);
        return (await answer.Is(200)).Number("promoted");
    }

    private Task<string> Status(long booking) =>
        _app.Value<string>("select status from bookings where id = @booking", new { booking });
}
