using Studio.Core.Accounts;

namespace Studio.Api.Tests.Passes;

/// <summary>What booking, cancelling and changes of the studio do to a pass.</summary>
public sealed class CreditsOfBookings : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _desk = null!;
    private HttpClient _owner = null!;
    private long _class;
    private long _client;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        _desk = await _app.SignedInAs(Role.FrontDesk);
        _owner = await _app.SignedInAs(Role.Owner);
        _class = await _app.HasClass();
        _client = await _app.HasClient(due: _app.Today.PlusDays(150));
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    private async Task<long> Session(int days, int seats = 8) =>
        await _app.HasSession(_app.Today.PlusDays(days), of: _class, seats: seats);

    [Fact]
    public async Task A_seat_spends_a_credit_of_the_pass_that_ends_first_and_says_so()
    {
        var later = await _app.HasPass(_client, days: 80);
        var sooner = await _app.HasPass(_client, days: 20);
        var booked = await _desk.Booked(await Session(3), _client);
        Assert.Equal(4, booked.Number("creditsLeft"));
        Assert.Equal(4, await _desk.Left(_client, sooner));
        Assert.Equal(5, await _desk.Left(_client, later));
    }

    [Fact]
    public async Task In_time_it_comes_back_and_late_it_stays_spent()
    {
        var pass = await _app.HasPass(_client);
        var far = await _desk.Booked(await Session(3), _client);
        using var early = await _desk.Cancel(far.Number("bookingId"));
        Assert.Equal("returned", (await early.Is(200)).Text("credit"));
        Assert.Equal(5, await _desk.Left(_client, pass));

        var near = await _desk.Booked(await _app.HasSession(_app.Today, "18:00", _class), _client);
        using var late = await _desk.Cancel(near.Number("bookingId"));
        Assert.Equal("spent", (await late.Is(200)).Text("credit"));
        Assert.Equal(4, await _desk.Left(_client, pass));
    }

    [Fact]
    public async Task Late_for_a_medical_reason_or_on_hold_it_comes_back_and_the_reason_is_kept_nowhere()
    {
        var pass = await _app.HasPass(_client);
        var one = await _desk.Booked(await _app.HasSession(_app.Today, "18:00", _class), _client);
        using var medical = await _desk.Send(
            HttpMethod.Delete,
            $"/api/bookings/{one.Number("bookingId")}?medical=true"
        );
        Assert.Equal("returned", (await medical.Is(200)).Text("credit"));

        var other = await _desk.Booked(await _app.HasSession(_app.Today, "19:00", _class), _client);
        await _app.HasHold(_client);
        using var held = await _desk.Cancel(other.Number("bookingId"));
        Assert.Equal("returned", (await held.Is(200)).Text("credit"));
        Assert.Equal(5, await _desk.Left(_client, pass));
        Assert.DoesNotContain(
            "medical",
            (await _desk.Pass(_client, pass)).ToJsonString(),
            StringComparison.OrdinalIgnoreCase
        );
    }

    [Fact]
    public async Task A_class_missed_on_a_day_on_hold_costs_nothing_once_she_books_again()
    {
        var pass = await _app.HasPass(_client);
        await _desk.Booked(await _app.HasSession(_app.Today, "18:00", _class), _client);
        await _app.HasHold(_client);
        _app.Clock.Advance(Duration.FromDays(1));
        await _app.Execute("update holds set lifted_on = @Today", new { _app.Today });
        await _app.HasScreening(_client, _app.Today);
        await _app.HasLetter(_client, _app.Today, _app.Today.PlusDays(80));
        await _desk.Booked(await Session(3), _client);
        Assert.Equal(4, await _desk.Left(_client, pass));
    }

    [Fact]
    public async Task A_place_on_the_waitlist_spends_nothing_until_it_becomes_a_seat()
    {
        var full = await Session(3, seats: 1);
        var other = await _app.HasClient(due: _app.Today.PlusDays(150));
        var first = await _desk.Booked(full, other);
        var pass = await _app.HasPass(_client);
        var waits = await _desk.Booked(full, _client);
        Assert.Equal("waiting", waits.Text("status"));
        Assert.Equal(5, await _desk.Left(_client, pass));
        using var freed = await _desk.Cancel(first.Number("bookingId"));
        Assert.Equal(1, (await freed.Is(200)).Number("promoted"));
        Assert.Equal(4, await _desk.Left(_client, pass));
    }

    [Fact]
    public async Task A_session_called_off_gives_it_back()
    {
        var pass = await _app.HasPass(_client);
        var session = await Session(3);
        await _desk.Booked(session, _client);
        Assert.Equal(4, await _desk.Left(_client, pass));
        using var off = await _owner.Put(
            $"/api/sessions/{session}",
            new
            {
                on = _app.Today.PlusDays(3),
                startsLocal = "10:00",
                minutes = 50,
                roomId = await _app.Value<long>(
                    "select room_id from sessions where id = @session",
                    new { session }
                ),
                instructorId = (long?)null,
                seats = 8,
                isHeld = false,
                anyway = true,
            }
        );
        await off.Is(200);
        Assert.Equal(5, await _desk.Left(_client, pass));
    }

    [Fact]
    public async Task A_suggested_move_carries_it_over_even_where_the_pass_would_not_pay()
    {
        var pass = await _app.HasPass(_client, classes: [_class]);
        var booking = (await _desk.Booked(await Session(3), _client)).Number("bookingId");
        var elsewhere = await _app.HasSession(_app.Today.PlusDays(4), of: await _app.HasClass());
        var move = await _app.Insert(
            """
            insert into moves (client_id, to_stage, crosses_on, status, made_at)
            values (@_client, 'third-trimester', @Today, 'open', @at)
            """,
            new
            {
                _client,
                _app.Today,
                at = _app.Clock.GetCurrentInstant(),
            }
        );
        await _app.Execute(
            "insert into move_steps (move_id, booking_id, to_session_id) values (@move, @booking, @elsewhere)",
            new
            {
                move,
                booking,
                elsewhere,
            }
        );
        using var moved = await _desk.Post($"/api/moves/{move}/accept");
        await moved.Is(200);
        Assert.Equal(4, await _desk.Left(_client, pass));
        Assert.Equal(
            1,
            await _app.Value<long>(
                """
                select count(*) from pass_entries e join bookings b on b.id = e.booking_id
                 where e.kind = 'spent' and b.session_id = @elsewhere
                """,
                new { elsewhere }
            )
        );
    }

    [Fact]
    public async Task A_birth_gives_back_what_lies_ahead_and_what_was_missed_since()
    {
        var pass = await _app.HasPass(_client);
        await _desk.Booked(await Session(1), _client);
        await _desk.Booked(await Session(8), _client);
        _app.Clock.Advance(Duration.FromDays(3));
        Assert.Equal(3, await _desk.Left(_client, pass));
        await _app.Execute(
            "update pregnancies set due_date = @due where client_id = @_client",
            new { _client, due = _app.Today }
        );
        using var born = await _desk.Post(
            $"/api/clients/{_client}/birth",
            new { on = _app.Today.PlusDays(-2), mode = "vaginal" }
        );
        await born.Is(200);
        Assert.Equal(5, await _desk.Left(_client, pass));
        // It stops around the birth, by policy, and begins again by itself.
        var told = await _desk.Pass(_client, pass);
        Assert.True(told.Number("putOffDays") > 80);
        Assert.DoesNotContain(
            "birth",
            told["putOffBecause"]!.ToJsonString(),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "around the birth",
            (await _owner.Pass(_client, pass))["putOffBecause"]!.ToJsonString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Where_passes_are_needed_nobody_is_booked_without_one_and_is_told_what_to_do()
    {
        var session = await Session(3);
        await _app.HasPolicy("passes-needed", "yes");
        using var refused = await _desk.Book(session, _client);
        Assert.Contains(
            "Sell her one",
            (await refused.IsRefused(409, "pass-needed")).Text("detail")
        );
        var herself = await _app.SignedInAs(Role.Client, client: _client);
        using var told = await herself.Book(session, _client);
        Assert.Contains(
            "ask the front desk",
            (await told.IsRefused(409, "pass-needed")).Text("detail")
        );
        var choice = await herself.Read($"/api/clients/{_client}/sessions/{session}");
        Assert.Equal("no", choice["choice"]!.Text("canBook"));

        await _app.HasPass(_client);
        await _desk.Booked(session, _client);
    }

    [Fact]
    public async Task Before_cancelling_she_reads_what_it_costs()
    {
        await _app.HasPass(_client);
        await _desk.Booked(await _app.HasSession(_app.Today, "18:00", _class), _client);
        await _desk.Booked(await Session(3), _client);
        Assert.Equal(
            ["spent", "returned"],
            (await _desk.Read($"/api/clients/{_client}/bookings"))
                .AsArray()
                .Select(b => b!.Text("ifCancelled"))
        );
    }
}
