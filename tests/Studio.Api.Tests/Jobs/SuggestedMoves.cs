using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Jobs;

/// <summary>Suggestions for bookings that fall behind a change of stage, night by night and through the routes.</summary>
public class SuggestedMoves : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _desk = null!;
    private long _early;
    private long _second;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        _desk = await _app.SignedInAs([Role.FrontDesk]);
        _early = await _app.HasClass("Early weeks", ["first-trimester"]);
        _second = await _app.HasClass("Middle weeks", ["second-trimester"]);
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await _app.DisposeAsync();
    }

    [Fact]
    public async Task The_last_seat_is_suggested_once_to_whoever_crosses_first()
    {
        var (later, sooner) = (await Crossing(inDays: 5), await Crossing(inDays: 3));
        var from = await Early(7);
        foreach (var client in new[] { later, sooner })
            await _app.HasBooking(from, client);
        var to = await Second(7, seats: 1);
        await _app.Sleeps();
        var move = Assert.Single(await Moves());
        Assert.Equal(sooner, move.Number("clientId"));
        Assert.Equal("second-trimester", move.Text("crossesTo"));
        Assert.Equal("2026-03-05", move.Text("crossesOn"));
        Assert.Equal(to, Step(move)["to"]!.Number("id"));
    }

    [Fact]
    public async Task The_seat_it_names_is_kept_for_her_until_the_policys_hours_are_over()
    {
        var her = await Crossing(inDays: 3);
        await _app.HasBooking(await Early(7), her);
        var to = await Second(7, seats: 1);
        await _app.Sleeps();
        Assert.Single(await Moves());
        var other = await _app.HasClient();
        var asked = await (
            await _desk.Post($"/api/sessions/{to}/bookings", new { clientId = other })
        ).Is(201);
        Assert.Equal("waiting", asked.Text("status"));
        Assert.Equal(
            "waitlist",
            (await _desk.Read($"/api/clients/{await _app.HasClient()}/sessions/{to}"))[
                "choice"
            ]!.Text("canBook")
        );
        await _app.Sleeps();
        Assert.Equal(
            "booked",
            await _app.Value<string>($"select status from bookings where client_id = {other}")
        );
    }

    [Fact]
    public async Task A_seat_kept_for_a_move_that_is_declined_goes_to_who_waits()
    {
        var her = await Crossing(inDays: 3);
        await _app.HasBooking(await Early(7), her);
        var to = await Second(7, seats: 1);
        await _app.Sleeps();
        var other = await _app.HasClient();
        await (await _desk.Post($"/api/sessions/{to}/bookings", new { clientId = other })).Is(201);
        var move = Assert.Single(await Moves());
        await (await _desk.Post($"/api/moves/{move.Number("id")}/decline", new { })).Is(204);
        Assert.Equal(
            "booked",
            await _app.Value<string>($"select status from bookings where client_id = {other}")
        );
    }

    [Fact]
    public async Task A_suggestion_stays_the_same_one_from_night_to_night()
    {
        var her = await Crossing(inDays: 12);
        await _app.HasBooking(await Early(14), her);
        await _app.HasBooking(await Early(21), her);
        await Second(14);
        await Second(21);
        await _app.Sleeps();
        var first = Assert.Single(await Moves());
        Assert.Equal(2, first["steps"]!.AsArray().Count);
        for (var night = 0; night < 5; night++)
        {
            await _app.Sleeps();
            Assert.Equal(first.ToJsonString(), Assert.Single(await Moves()).ToJsonString());
        }

        Assert.Equal(1, await _app.Value<long>("select count(*) from moves"));
    }

    [Fact]
    public async Task A_seat_that_no_longer_suits_for_another_reason_than_her_stage_is_not_moved()
    {
        var her = await _app.HasClient(papers: false);
        await _app.HasBooking(await Second(7), her);
        await Second(14);
        await _app.Sleeps();
        Assert.Empty(await Moves());
    }

    [Fact]
    public async Task Nobody_is_looked_at_before_the_look_ahead()
    {
        await _app.HasPolicy("look-ahead-days", "7");
        var her = await Crossing(inDays: 8);
        await _app.HasBooking(await Early(14), her);
        await Second(14);
        await _app.Bell();
        Assert.Empty(await Moves());
        await _app.Sleeps();
        Assert.Single(await Moves());
    }

    [Fact]
    public async Task A_suggestion_lapses_when_a_booking_of_it_is_cancelled()
    {
        var her = await Crossing(inDays: 3);
        var (one, other) = (
            await _app.HasBooking(await Early(7), her),
            await _app.HasBooking(await Early(14), her)
        );
        await Second(7);
        await Second(14);
        await _app.Sleeps();
        var before = Assert.Single(await Moves()).Number("id");
        await (await _desk.Cancel(one)).Is(200);
        Assert.DoesNotContain(await Moves(), m => m.Number("id") == before);
        await _app.Sleeps();
        Assert.Equal(other, Step(Assert.Single(await Moves())).Number("bookingId"));
        await (await _desk.Cancel(other)).Is(200);
        await _app.Sleeps();
        Assert.Empty(await Moves());
    }

    [Fact]
    public async Task What_was_declined_is_not_suggested_again_and_the_next_best_is()
    {
        var her = await Crossing(inDays: 3);
        await _app.HasBooking(await Early(7), her);
        var (near, far) = (await Second(7), await Second(14));
        await _app.Sleeps();
        var move = Assert.Single(await Moves());
        Assert.Equal(near, Step(move)["to"]!.Number("id"));
        await (
            await _desk.Post($"/api/moves/{move.Number("id")}/decline", new { reason = "too soon" })
        ).Is(204);
        Assert.Empty(await Moves());
        await _app.Sleeps();
        move = Assert.Single(await Moves());
        Assert.Equal(far, Step(move)["to"]!.Number("id"));
        await (await _desk.Post($"/api/moves/{move.Number("id")}/decline", new { })).Is(204);
        await _app.Sleeps();
        Assert.Empty(await Moves());
        await (await _desk.Post($"/api/moves/{move.Number("id")}/accept")).IsRefused(
            404,
            "no-such-move"
        );
    }

    [Fact]
    public async Task Accepting_moves_all_her_bookings_and_gives_her_old_seats_to_those_who_wait()
    {
        var her = await Crossing(inDays: 3);
        var waiting = await _app.HasClient(due: _app.Today.PlusDays(230));
        var (from7, from14) = (await Early(7, seats: 1), await Early(14));
        await _app.HasBooking(from7, her);
        await _app.HasBooking(from14, her);
        var place = await _app.HasBooking(from7, waiting, "waiting");
        var (to7, to14) = (await Second(7), await Second(14));
        await _app.Sleeps();
        var move = Assert.Single(await Moves()).Number("id");
        var answer = await (await _desk.Post($"/api/moves/{move}/accept")).Is(200);
        Assert.Equal(2, answer.Number("moved"));
        Assert.Equal(
            [(from7, "moved"), (from14, "moved"), (to7, "booked"), (to14, "booked")],
            await BookingsOf(her)
        );
        Assert.Equal(
            "booked",
            await _app.Value<string>("select status from bookings where id = @place", new { place })
        );
        Assert.Equal(
            [1, 0, 1, 1],
            await _app.Rows<int>("select seats_taken from sessions order by id")
        );
        Assert.Empty(await Moves());
        await _app.Sleeps();
        Assert.Empty(await Moves());
        await (await _desk.Post($"/api/moves/{move}/accept")).IsRefused(404, "no-such-move");
    }

    [Fact]
    public async Task Nothing_is_moved_when_one_of_the_new_sessions_has_been_filled_meanwhile()
    {
        var her = await Crossing(inDays: 3);
        await _app.HasBooking(await Early(7), her);
        await _app.HasBooking(await Early(14), her);
        await Second(7);
        var last = await Second(14, seats: 1);
        await _app.Sleeps();
        var move = Assert.Single(await Moves()).Number("id");
        await _app.HasBooking(last, await _app.HasClient(due: _app.Today.PlusDays(150)));
        var rows = await _app.EveryRow();
        await (await _desk.Post($"/api/moves/{move}/accept")).IsRefused(409, "move-outdated");
        Assert.Equal(rows, await _app.EveryRow());
    }

    [Fact]
    public async Task A_session_that_has_begun_is_not_moved_away_from()
    {
        var her = await Crossing(inDays: 3);
        await _app.HasBooking(await Early(7), her);
        await Second(14);
        for (var night = 0; night < 7; night++)
            await _app.Sleeps();
        var move = Assert.Single(await Moves()).Number("id");

        _app.Clock.Advance(Duration.FromHours(9));
        var rows = await _app.EveryRow();
        await (await _desk.Post($"/api/moves/{move}/accept")).IsRefused(409, "move-outdated");
        Assert.Equal(rows, await _app.EveryRow());
    }

    [Fact]
    public async Task Everything_that_is_suggested_can_be_accepted_though_a_booking_finds_no_place()
    {
        var her = await Crossing(inDays: 3);
        // One place is left for two bookings of hers. It is nearer to the second, and lies across it: given to the first,
        // who chooses first, it could never be accepted.
        await _app.HasBooking(await Early(7), her);
        var second = await _app.HasBooking(await HasSession(_early, 7, "19:30", 10), her);
        var to = await Second(7, at: "19:40", seats: 1);
        await _app.Sleeps();
        var move = Assert.Single(await Moves());
        var found = Assert.Single(move["steps"]!.AsArray(), s => s!["to"] is not null)!;
        Assert.Equal((second, to), (found.Number("bookingId"), found["to"]!.Number("id")));
        await (await _desk.Post($"/api/moves/{move.Number("id")}/accept")).Is(200);
    }

    [Fact]
    public async Task She_accepts_her_own_and_nobody_else_s()
    {
        var her = await Crossing(inDays: 3);
        await _app.HasBooking(await Early(7), her);
        await Second(7);
        await _app.Sleeps();
        var move = Assert.Single(await Moves()).Number("id");
        var herself = await _app.SignedInAs([Role.Client], client: her);
        var another = await _app.SignedInAs([Role.Client], client: await _app.HasClient());
        Assert.Empty((await another.Read("/api/moves")).AsArray());
        await (await another.Post($"/api/moves/{move}/accept")).IsRefused(404, "no-such-move");
        await (await another.Post($"/api/moves/{move}/decline", new { })).IsRefused(
            404,
            "no-such-move"
        );
        Assert.Single((await herself.Read("/api/moves")).AsArray());
        Assert.Equal(
            1,
            (await (await herself.Post($"/api/moves/{move}/accept")).Is(200)).Number("moved")
        );
    }

    [Fact]
    public async Task After_a_loss_no_suggestion_is_left_at_the_desk()
    {
        var her = await Crossing(inDays: 3);
        await _app.HasBooking(await Early(7), her);
        await Second(7);
        await _app.Sleeps();
        Assert.Single(await Moves());
        var herself = await _app.SignedInAs([Role.Client], client: her);
        await (await herself.Post($"/api/clients/{her}/loss", new { })).Is(200);
        Assert.Empty(await Moves());
        await _app.Sleeps();
        Assert.Empty(await Moves());
    }

    /// <summary>A client who leaves the first trimester, 14w 0d, so many days from today.</summary>
    private Task<long> Crossing(int inDays) =>
        _app.HasClient(due: _app.Today.PlusDays(inDays + 280 - 98));

    private Task<long> Early(int inDays, int seats = 10) =>
        HasSession(_early, inDays, "18:00", seats);

    private Task<long> Second(int inDays, int seats = 10, string at = "18:30") =>
        HasSession(_second, inDays, at, seats);

    private Task<long> HasSession(long of, int inDays, string at, int seats) =>
        _app.HasSession(_app.Today.PlusDays(inDays), at, of, seats);

    private async Task<IReadOnlyList<JsonNode>> Moves() =>
        [.. (await _desk.Read("/api/moves")).AsArray().Select(m => m!)];

    private static JsonNode Step(JsonNode move) => Assert.Single(move["steps"]!.AsArray())!;

    private async Task<IReadOnlyList<(long, string)>> BookingsOf(long client) =>
        [
            .. (
                await _app.Rows<Seat>(
                    "select session_id as SessionId, status from bookings where client_id = @client order by id",
                    new { client }
                )
            ).Select(b => (b.SessionId, b.Status)),
        ];

    private sealed record Seat
    {
        public long SessionId { get; init; }
        public string Status { get; init; } = "";
    }
}
