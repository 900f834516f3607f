using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Booking;

public class ManyWantTheSameSeats
{
    private const int People = 200;
    private const int Seats = 20;

    [Fact]
    public async Task Two_hundred_at_once_get_twenty_seats_and_the_rest_wait_in_order()
    {
        await using var app = await StudioApp.Empty();
        var session = await app.HasSession(app.Today.PlusDays(5), seats: Seats);
        var people = new List<(HttpClient Browser, long Client)>();
        for (var i = 0; i < People; i++)
        {
            var client = await app.HasClient();
            people.Add((await app.SignedInAs(Role.Client, client: client), client));
        }

        // Every look at the clock is later than the one before, so that the order of arrival shows in made_at.
        app.Clock.AutoAdvance = Duration.FromMilliseconds(5);
        var answers = await Task.WhenAll(
            people.Select(async p =>
            {
                using var answer = await p.Browser.Book(session, p.Client);
                return await answer.Is(201);
            })
        );

        var booked = answers.Where(a => a.Text("status") == "booked").ToList();
        var waiting = answers.Where(a => a.Text("status") == "waiting").ToList();
        Assert.Equal((Seats, People - Seats), (booked.Count, waiting.Count));
        Assert.All(booked, a => Assert.Null(a["place"]));
        Assert.True(
            booked.Max(Id) < waiting.Min(Id),
            "Nobody waits who came before a seat was given."
        );
        Assert.Equal(
            Enumerable.Range(1, People - Seats).Select(i => (long)i),
            waiting.OrderBy(Id).Select(a => a.Number("place"))
        );
        Assert.Equal(
            await app.Rows<long>("select id from bookings order by made_at, id"),
            await app.Rows<long>("select id from bookings order by id")
        );
        Assert.Equal(Seats, await app.Value<long>("select seats_taken from sessions"));
        Assert.Empty(await app.BrokenPromises());

        static long Id(JsonNode answer) => answer.Number("bookingId");
    }

    [Fact]
    public async Task Cancelling_and_booking_against_each_other_keeps_every_promise()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var day = app.Today.PlusDays(5);
        // Pairs at overlapping times, so that who waits for one may sit in the other.
        var sessions = new List<long>();
        foreach (var at in new[] { "09:00", "09:30", "11:00", "11:30", "14:00", "14:30" })
            sessions.Add(await app.HasSession(day, at, seats: 3 + sessions.Count * 2));
        var clients = new List<long>();
        for (var i = 0; i < 24; i++)
            clients.Add(await app.HasClient());

        var random = new Random(20260302);
        var known = new List<long>();
        for (var round = 0; round < 40; round++)
        {
            var requests = Enumerable
                .Range(0, 12)
                .Select(_ =>
                    known.Count > 0 && random.Next(100) < 45
                        ? Cancel(known[random.Next(known.Count)])
                        : Book(
                            sessions[random.Next(sessions.Count)],
                            clients[random.Next(clients.Count)]
                        )
                )
                .ToList();
            known.AddRange((await Task.WhenAll(requests)).OfType<long>());
            Assert.Empty(await app.BrokenPromises());
        }

        Assert.True(known.Count > 100, "Too few bookings went through to show anything.");
        Assert.Empty(app.Log.Errors);

        async Task<long?> Book(long session, long client)
        {
            using var answer = await owner.Book(session, client);
            Assert.Contains((int)answer.StatusCode, new[] { 201, 409 });
            return (int)answer.StatusCode == 201
                ? (await answer.Is(201)).Number("bookingId")
                : null;
        }

        async Task<long?> Cancel(long booking)
        {
            using var answer = await owner.Cancel(booking);
            Assert.Contains((int)answer.StatusCode, new[] { 200, 404 });
            return null;
        }
    }

    [Fact]
    public async Task One_key_sent_twenty_times_at_once_books_once()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        var session = await app.HasSession(app.Today.PlusDays(5));
        var desk = await app.SignedInAs(Role.FrontDesk);
        var answers = await Task.WhenAll(
            Enumerable
                .Range(0, 20)
                .Select(async _ =>
                {
                    using var answer = await desk.Book(session, client, "the-same-key");
                    return (await answer.Is(201)).ToJsonString();
                })
        );
        Assert.Single(answers.Distinct());
        Assert.Equal(1, await app.Value<long>("select count(*) from bookings"));
    }
}
