using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Booking;

public class TheSameRequestAgain(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;
    private readonly HttpClient _desk = studio.Desk;

    [Fact]
    public async Task Is_answered_as_the_first_time_and_books_nothing_more()
    {
        var (session, client, key) = await Situation();
        var first = await Answer(_desk, session, client, key, 201);
        Assert.Equal(first, await Answer(_desk, session, client, key, 201));
        Assert.Equal(
            1,
            await _app.Value<long>(
                "select count(*) from bookings where client_id = @client",
                new { client }
            )
        );
    }

    [Fact]
    public async Task Is_answered_as_the_first_time_even_when_that_was_no_and_would_now_be_yes()
    {
        var (session, client, key) = await Situation();
        await _app.HasHold(client);
        var first = await Answer(_desk, session, client, key, 403);
        await _app.Execute("delete from holds where client_id = @client", new { client });
        Assert.Equal(first, await Answer(_desk, session, client, key, 403));
        await Answer(_desk, session, client, key + "-new", 201);
    }

    [Fact]
    public async Task Is_answered_as_the_first_time_after_the_booking_was_given_up()
    {
        var (session, client, key) = await Situation();
        var first = await Answer(_desk, session, client, key, 201);
        var booking = JsonNode.Parse(first)!.Number("bookingId");
        using (var cancelled = await _desk.Cancel(booking))
            await cancelled.Is(200);
        Assert.Equal(first, await Answer(_desk, session, client, key, 201));
        Assert.Equal(
            0,
            await _app.Value<long>(
                "select seats_taken from sessions where id = @session",
                new { session }
            )
        );
    }

    [Fact]
    public async Task Is_refused_when_the_key_was_used_for_something_else()
    {
        var (session, client, key) = await Situation();
        await Answer(_desk, session, client, key, 201);
        using var other = await _desk.Book(session, await _app.HasClient(), key);
        await other.IsRefused(409, "key-reused");
        using var elsewhere = await _desk.Book(
            await _app.HasSession(_app.Today.PlusDays(6)),
            client,
            key
        );
        await elsewhere.IsRefused(409, "key-reused");
    }

    [Fact]
    public async Task Belongs_to_the_account_that_sent_it()
    {
        var (session, client, key) = await Situation();
        await Answer(_desk, session, client, key, 201);
        var colleague = await _app.SignedInAs(Role.FrontDesk);
        using var answer = await colleague.Book(session, client, key);
        await answer.IsRefused(409, "already-booked");
    }

    [Fact]
    public async Task Needs_a_key_of_a_sensible_length()
    {
        var (session, client, _) = await Situation();
        using var answer = await _desk.Book(session, client, new string('k', 201));
        var problem = await answer.IsRefused(400, "bad-key");
        Assert.NotNull(problem["errors"]!["Idempotency-Key"]);
        await Answer(
            _desk,
            session,
            client,
            new string('k', 170) + Guid.NewGuid().ToString("n")[..30],
            201
        );
    }

    private async Task<(long Session, long Client, string Key)> Situation() =>
        (
            await _app.HasSession(_app.Today.PlusDays(5)),
            await _app.HasClient(),
            Guid.NewGuid().ToString("n")
        );

    // The trace id is the request's own.
    private static async Task<string> Answer(
        HttpClient browser,
        long session,
        long client,
        string key,
        int status
    )
    {
        using var answer = await browser.Book(session, client, key);
        var body = await answer.Is(status);
        body.AsObject().Remove("traceId");
        return body.ToJsonString();
    }
}
