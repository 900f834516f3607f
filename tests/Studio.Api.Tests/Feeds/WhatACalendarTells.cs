using Studio.Core.Accounts;
using Studio.Core.Tests.Feeds;

namespace Studio.Api.Tests.Feeds;

public class WhatACalendarTells
{
    [Fact]
    public async Task Each_session_by_one_name_through_every_change_with_a_higher_sequence()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        var browser = await app.SignedInAs(Role.Client, client: client);
        var room = await app.HasRoom(name: "Garden room");
        var session = await app.HasSession(
            app.Today.PlusDays(3),
            of: await app.HasClass("Second-trimester core"),
            seats: 1,
            room: room
        );
        var other = await app.HasBooking(session, await app.HasClient());
        var (_, token) = await app.HasFeed(browser);
        Assert.Empty(await Entries(app, token));

        var told = new List<Rfc5545.Component>();
        async Task Now(string status, string summary)
        {
            app.Clock.Advance(Duration.FromMinutes(1));
            var one = Assert.Single(await Entries(app, token));
            Assert.Equal(status, one.Value("STATUS"));
            Assert.Equal(summary, one.Value("SUMMARY"));
            told.Add(one);
        }

        long booking;
        using (var waiting = await browser.Book(session, client))
            booking = (await waiting.Is(201)).Number("bookingId");
        await Now("TENTATIVE", "Waitlist: Class at Saltmarsh studio");
        Assert.Contains("do not have a seat", told[^1].Value("DESCRIPTION"));
        using (var gone = await (await app.SignedInAs(Role.FrontDesk)).Cancel(other))
            await gone.Is(200);
        await Now("CONFIRMED", "Class at Saltmarsh studio");
        using (var cancelled = await browser.Cancel(booking))
            await cancelled.Is(200);
        await Now("CANCELLED", "Cancelled: Class at Saltmarsh studio");
        await browser.Booked(session, client);
        await Now("CONFIRMED", "Class at Saltmarsh studio");
        await app.Execute(
            "update sessions set room_id = @room where id = @session",
            new { session, room = await app.HasRoom(name: "Attic") }
        );
        await Now("CONFIRMED", "Class at Saltmarsh studio");
        await app.Execute(
            "update sessions set status = 'cancelled' where id = @session",
            new { session }
        );
        await Now("CANCELLED", "Cancelled: Class at Saltmarsh studio");
        Assert.Contains("called this class off", told[^1].Value("DESCRIPTION"));

        Assert.Single(told.Select(t => t.Value("UID")).Distinct());
        Assert.Equal("Garden room\\, Quay house", told[0].Value("LOCATION"));
        Assert.Equal("Attic\\, Quay house", told[^1].Value("LOCATION"));
        var sequence = told.Select(t => int.Parse(t.Value("SEQUENCE"), null)).ToList();
        Assert.Equal(sequence.Distinct().Order(), sequence);
        Assert.Equal(0, sequence[0]);
    }

    [Fact]
    public async Task The_class_by_name_only_when_she_wants_it()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        var browser = await app.SignedInAs(Role.Client, client: client);
        const string name = "Second-trimester core";
        var session = await app.HasSession(app.Today.PlusDays(3), of: await app.HasClass(name));
        await app.HasBooking(session, client);
        var (id, token) = await app.HasFeed(browser);
        Assert.DoesNotContain(name, await Text(app.Browser(), $"/feeds/{token}.ics"));
        Assert.DoesNotContain(name, await Text(browser, $"/api/sessions/{session}/calendar"));
        Assert.Contains(name, await Text(browser, $"/api/sessions/{session}/calendar?named=true"));
        using (var named = await browser.Put($"/api/feeds/{id}", new { namesClass = true }))
            await named.Is(204);
        Assert.Equal(name, Assert.Single(await Entries(app, token)).Value("SUMMARY"));

        // The single file is the same entry as in the feed.
        var file = Read(await Octets(browser, $"/api/sessions/{session}/calendar?named=true"));
        Assert.Equal(
            Assert.Single(await Entries(app, token)).Properties.Select(p => (p.Name, p.Value)),
            file.Of("VEVENT").Single().Properties.Select(p => (p.Name, p.Value))
        );
    }

    [Fact]
    public async Task An_instructor_how_many_and_never_who()
    {
        await using var app = await StudioApp.Empty();
        var instructor = await app.HasInstructor();
        var browser = await app.SignedInAs(Role.Instructor, instructor: instructor);
        var ahead = await app.HasSession(
            app.Today.PlusDays(200),
            of: await app.HasClass("Harbour strength"),
            instructor: instructor
        );
        await app.HasSession(app.Today.PlusDays(-29), instructor: instructor);
        await app.HasSession(app.Today.PlusDays(-31), instructor: instructor);
        await app.HasSession(app.Today.PlusDays(2), instructor: await app.HasInstructor());
        await app.HasBooking(ahead, await app.HasClient("Xylia Quenby"));
        await app.HasBooking(ahead, await app.HasClient("Orla Thistlewood"));
        await app.HasBooking(ahead, await app.HasClient("Velda Ambersley"), "waiting");
        await app.HasBooking(ahead, await app.HasClient("Gone Before", ended: app.Today));
        var (_, token) = await app.HasFeed(browser, "instructor");
        var told = await Entries(app, token);
        Assert.Equal(2, told.Count);
        Assert.Equal("Harbour strength", told[1].Value("SUMMARY"));
        Assert.Equal("2 of 10 seats booked\\, 1 waiting.", told[1].Value("DESCRIPTION"));
        var text = await Text(app.Browser(), $"/feeds/{token}.ics");
        Assert.All(
            ["Quenby", "Thistlewood", "Ambersley", "Gone"],
            someone => Assert.DoesNotContain(someone, text)
        );
        using (
            var file = await browser.GetAsync(
                $"/api/sessions/{ahead}/calendar",
                TestContext.Current.CancellationToken
            )
        )
            Assert.Equal(
                $"class-{app.Today.PlusDays(200):uuuu-MM-dd}.ics",
                file.Content.Headers.ContentDisposition?.FileName
            );

        await app.Execute(
            "update sessions set status = 'cancelled' where id = @ahead",
            new { ahead }
        );
        var off = (await Entries(app, token))[1];
        Assert.Equal("CANCELLED", off.Value("STATUS"));
        Assert.Equal("1", off.Value("SEQUENCE"));
        Assert.Equal("Cancelled: Harbour strength", off.Value("SUMMARY"));
    }

    [Fact]
    public async Task After_a_loss_only_what_was_and_in_plain_words()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient(due: app.Today.PlusDays(100));
        var browser = await app.SignedInAs(Role.Client, client: client);
        const string name = "Second-trimester core";
        var of = await app.HasClass(name);
        await app.HasBooking(await app.HasSession(app.Today.PlusDays(-3), of: of), client);
        var ahead = await app.HasSession(app.Today.PlusDays(3), of: of);
        await app.HasBooking(ahead, client);
        await app.HasBooking(
            await app.HasSession(app.Today.PlusDays(4), of: of),
            client,
            "waiting"
        );
        var (id, token) = await app.HasFeed(browser);
        using (var named = await browser.Put($"/api/feeds/{id}", new { namesClass = true }))
            await named.Is(204);
        Assert.Equal(3, (await Entries(app, token)).Count);

        using (var loss = await browser.Post($"/api/clients/{client}/loss", new { }))
            await loss.Is(200);
        var left = Assert.Single(await Entries(app, token));
        Assert.Equal("CONFIRMED", left.Value("STATUS"));
        Assert.Equal("Class at Saltmarsh studio", left.Value("SUMMARY"));
        using (
            var file = await browser.GetAsync(
                $"/api/sessions/{ahead}/calendar",
                TestContext.Current.CancellationToken
            )
        )
            await file.IsRefused(404, "no-such-session");

        app.Clock.Advance(Duration.FromDays(40));
        Assert.Empty(await Entries(app, token));
    }

    [Fact]
    public async Task Each_session_by_the_clock_of_its_own_location_across_a_change_of_clocks()
    {
        await using var app = await StudioApp.Empty();
        var instructor = await app.HasInstructor();
        var (_, token) = await app.HasFeed(
            await app.SignedInAs(Role.Instructor, instructor: instructor),
            "instructor"
        );
        // Lisbon changes on 29 March 2026, New York on 8 March (IANA data).
        foreach (var zone in new[] { "Europe/Lisbon", "America/New_York" })
        {
            var room = await app.HasRoom(await app.HasLocation(zone.Split('/')[1], zone));
            for (var week = 0; week < 6; week++)
                await app.HasSession(
                    app.Today.PlusDays(7 * week),
                    "18:00",
                    room: room,
                    instructor: instructor
                );
        }
        var told = await Entries(app, token);
        Assert.Equal(12, told.Count);
        Assert.All(told, t => Assert.EndsWith("T180000", t.Value("DTSTART")));
    }

    private static async Task<IReadOnlyList<Rfc5545.Component>> Entries(
        StudioApp app,
        string token
    ) => Read(await Octets(app.Browser(), $"/feeds/{token}.ics")).Of("VEVENT");

    private static Rfc5545.Component Read(byte[] octets)
    {
        var (calendar, wrong) = Rfc5545.Read(octets);
        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Take(5)));
        return calendar!;
    }

    private static async Task<byte[]> Octets(HttpClient browser, string path)
    {
        using var answer = await browser.GetAsync(path, TestContext.Current.CancellationToken);
        Assert.Equal(200, (int)answer.StatusCode);
        return await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
    }

    private static async Task<string> Text(HttpClient browser, string path) =>
        System.Text.Encoding.UTF8.GetString(await Octets(browser, path));
}
