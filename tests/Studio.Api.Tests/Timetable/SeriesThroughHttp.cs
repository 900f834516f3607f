using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Timetable;

/// <summary>Today is Monday, 2 March 2026; six weeks are laid out, to Sunday, 12 April.</summary>
public class SeriesThroughHttp
{
    [Theory]
    [InlineData("Europe/Lisbon", "2026-03-24T18:00:00.000Z", "2026-03-31T17:00:00.000Z")]
    [InlineData("America/New_York", "2026-03-03T23:00:00.000Z", "2026-03-10T22:00:00.000Z")]
    public async Task Keep_their_hour_when_the_clocks_change(
        string zone,
        string before,
        string after
    )
    {
        await using var app = await StudioApp.Empty();
        var room = await app.HasRoom(await app.HasLocation("Quay house", zone));
        var owner = await app.SignedInAs(Role.Owner);
        var made = await owner.Series(
            "FREQ=WEEKLY;BYDAY=TU",
            "2026-03-03",
            await app.HasClass(),
            room
        );
        Assert.Equal(6, made.Number("sessions"));
        Assert.Equal(
            ["18:00"],
            await app.Rows<string>("select distinct starts_local from sessions")
        );
        var starts = await app.Rows<string>("select starts_at from sessions order by starts_at");
        Assert.Contains(before, starts);
        Assert.Contains(after, starts);
        Assert.Equal(
            await app.Rows<string>("select on_date from sessions order by 1"),
            await app.Rows<string>("select series_on from sessions order by 1")
        );
    }

    [Fact]
    public async Task Are_looked_at_before_they_are_made()
    {
        await using var app = await StudioApp.Empty();
        var location = await app.HasLocation();
        var room = await app.HasRoom(location, name: "Cork room");
        await app.HasClosure(app.Today.PlusDays(15), location, "Day of the Estuary");
        await app.HasSession(
            app.Today.PlusDays(8),
            "18:30",
            room: room,
            of: await app.HasClass("Early core")
        );
        var owner = await app.SignedInAs(Role.Owner);
        using var answer = await owner.Post(
            "/api/series/preview",
            new
            {
                rule = "FREQ=WEEKLY;INTERVAL=1;BYDAY=TU;COUNT=5",
                start = "2026-03-02",
                startsLocal = "18:00",
                zone = "Europe/Lisbon",
                exceptions = new[] { "2026-03-24" },
                classId = await app.HasClass("Steady strength"),
                roomId = room,
            }
        );
        var seen = await answer.Is(200);
        Assert.Equal("Every Tuesday at 18:00, 5 times", seen.Text("words"));
        Assert.Equal("2026-03-03", seen.Text("start"));
        Assert.False((bool)seen["goesOn"]!);
        Assert.Equal(
            [
                "2026-03-03 planned  0",
                "2026-03-10 planned  1",
                "2026-03-17 shut Day of the Estuary 0",
                "2026-03-24 skipped  0",
                "2026-03-31 planned  0",
            ],
            seen["dates"]!
                .AsArray()
                .Select(d =>
                    $"{d!.Text("on")} {d!.Text("state")} {d!.Text("says")} {d!["conflicts"]!.AsArray().Count}"
                )
        );
        var conflict = Assert.Single(seen["conflicts"]!.AsArray())!;
        Assert.Equal("roomTaken", conflict.Text("kind"));
        Assert.True((bool)conflict["isHard"]!);
        Assert.Equal(
            "Cork room would hold Steady strength at 18:00 and Early core at 18:30 at once on Tuesday 10 March 2026.",
            conflict.Text("words")
        );
        Assert.Equal(0, await app.Value<long>("select count(*) from series"));
    }

    [Theory]
    [InlineData("FREQ=HOURLY", "rule-within-a-day", "rule")]
    [InlineData("FREQ=NEVER", "bad-rule", "rule")]
    [InlineData("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "no-dates", "rule")]
    public async Task Are_refused_by_field_when_their_rule_gives_none(
        string rule,
        string code,
        string field
    )
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var body = new
        {
            rule,
            start = "2026-03-03",
            startsLocal = "18:00",
            classId = await app.HasClass(),
            roomId = await app.HasRoom(),
        };
        foreach (var path in new[] { "/api/series/preview", "/api/series" })
        {
            using var answer = await owner.Post(path, body);
            await answer.IsRefused(400, code, field);
        }
    }

    [Fact]
    public async Task A_clock_of_another_place_is_refused()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        foreach (
            var (zone, code) in new[]
            {
                ("Europe/Madrid", "another-zone"),
                ("Europe/Nowhere", "no-such-zone"),
            }
        )
        {
            using var answer = await owner.Post(
                "/api/series/preview",
                new
                {
                    rule = "FREQ=DAILY",
                    start = "2026-03-03",
                    startsLocal = "18:00",
                    zone,
                    classId = await app.HasClass(),
                    roomId = await app.HasRoom(),
                }
            );
            await answer.IsRefused(400, code, "zone");
        }
    }

    [Fact]
    public async Task Are_made_once_however_often_they_are_sent()
    {
        await using var app = await StudioApp.Empty();
        var (of, room) = (await app.HasClass(), await app.HasRoom());
        var owner = await app.SignedInAs(Role.Owner);
        var first = await owner.Series("FREQ=WEEKLY", "2026-03-03", of, room, key: "one-press");
        var again = await owner.Series("FREQ=WEEKLY", "2026-03-03", of, room, key: "one-press");
        Assert.Equal(first.Number("id"), again.Number("id"));
        using (
            var other = await owner.Post(
                "/api/series",
                Body("FREQ=DAILY", "2026-03-03", of, room),
                "one-press"
            )
        )
            await other.IsRefused(409, "key-reused");
        // Without a key the series itself says that it is there.
        using (
            var bare = await owner.Post("/api/series", Body("FREQ=WEEKLY", "2026-03-03", of, room))
        )
            await bare.IsRefused(409, "series-stands-already");
        Assert.Equal(1, await app.Value<long>("select count(*) from series"));
        Assert.Equal(6, await app.Value<long>("select count(*) from sessions"));
    }

    [Fact]
    public async Task Over_a_room_that_is_taken_nothing_of_it_is_made_and_the_tables_refuse_it_too()
    {
        await using var app = await StudioApp.Empty();
        var (of, room) = (await app.HasClass(), await app.HasRoom(name: "Cork room"));
        await app.HasSession(app.Today.PlusDays(15), "18:20", room: room);
        var owner = await app.SignedInAs(Role.Owner);
        using (
            var answer = await owner.Post(
                "/api/series",
                Body("FREQ=WEEKLY", "2026-03-03", of, room)
            )
        )
        {
            var problem = await answer.IsRefused(409, "timetable-conflict");
            Assert.Contains("Cork room would hold", problem.Text("detail"));
        }

        Assert.Equal(0, await app.Value<long>("select count(*) from series"));
        var refused = await Assert.ThrowsAsync<Microsoft.Data.Sqlite.SqliteException>(() =>
            app.HasSession(app.Today.PlusDays(15), "18:00", of, room: room)
        );
        Assert.Contains("room-taken", refused.Message);
    }

    [Fact]
    public async Task Are_laid_out_by_night_around_closures_once_a_date()
    {
        await using var app = await StudioApp.Empty();
        var location = await app.HasLocation();
        await app.HasSeries(
            "FREQ=WEEKLY;BYDAY=TU",
            new(2026, 3, 3),
            room: await app.HasRoom(location)
        );
        await app.HasClosure(new(2026, 3, 17), location);
        var owner = await app.SignedInAs(Role.Owner);
        Assert.Equal(5, await owner.Night());
        Assert.Equal(0, await owner.Night());
        app.Clock.AdvanceDays(7);
        Assert.Equal(1, await owner.Night());
        Assert.Equal(
            ["2026-03-03", "2026-03-10", "2026-03-24", "2026-03-31", "2026-04-07", "2026-04-14"],
            await app.Rows<string>("select series_on from sessions order by 1")
        );
        // Taken away, the closed day is laid out at once.
        var closure = await app.Value<long>("select id from closures");
        using var opened = await owner.Send(HttpMethod.Delete, $"/api/closures/{closure}");
        Assert.Equal(1, (await opened.Is(200)).Number("laidOut"));
    }

    [Fact]
    public async Task Where_she_cannot_nobody_is_named_and_where_the_room_is_taken_the_date_is_said_to_be_missing()
    {
        await using var app = await StudioApp.Empty();
        var room = await app.HasRoom(name: "Cork room");
        var ada = await app.Qualified("Ada Winterbourne");
        var series = await app.HasSeries(
            "FREQ=WEEKLY;BYDAY=TU",
            new(2026, 3, 3),
            room: room,
            instructor: ada
        );
        await app.Execute(
            "insert into leave (instructor_id, from_on, to_on, entered_at) values (@ada, '2026-03-09', '2026-03-15', '2026-03-01T00:00:00.000Z')",
            new { ada }
        );
        await app.HasSession(new(2026, 3, 24), "18:30", room: room);
        var owner = await app.SignedInAs(Role.Owner);
        Assert.Equal(5, await owner.Night());
        Assert.Equal(
            ["2026-03-10"],
            await app.Rows<string>(
                "select on_date from sessions where series_id = @series and instructor_id is null",
                new { series }
            )
        );
        var one = await owner.Read($"/api/series/{series}");
        Assert.Equal(1, one.Number("missing"));
        var missing = one["dates"]!.AsArray().Single(d => d!.Text("state") == "missing")!;
        Assert.Equal("2026-03-24", missing.Text("on"));
        Assert.Contains("Cork room would hold", (string)missing["conflicts"]![0]!);
    }

    [Fact]
    public async Task Changed_as_a_whole_everybody_booked_is_told_and_keeps_her_seat()
    {
        await using var app = await StudioApp.Empty();
        var (owner, series, dates) = await Tuesdays(app);
        var her = await app.HasClient();
        await app.HasBooking(dates[1], her);
        await app.HasBooking(dates[4], her);

        var seen = await owner.Change(
            series,
            new { scope = "all", startsLocal = "18:30" },
            dryRun: true
        );
        Assert.Equal(6, seen["changes"]!.Number("changed"));
        Assert.Equal(2, seen["changes"]!["consequences"]!.AsArray().Sum(c => c!.Number("told")));
        Assert.Equal(0, await app.Value<long>("select count(*) from messages"));

        await owner.Change(series, new { scope = "all", startsLocal = "18:30" });
        Assert.Equal(
            ["18:30"],
            await app.Rows<string>("select distinct starts_local from sessions")
        );
        Assert.Equal(
            2,
            await app.Value<long>("select count(*) from bookings where status = 'booked'")
        );
        Assert.Equal(
            ["sessionChanged"],
            await app.Rows<string>("select kind from messages where client_id = @her", new { her })
        );
        Assert.Equal(
            "Every Tuesday at 18:30",
            (await owner.Read($"/api/series/{series}")).Text("words")
        );
    }

    [Fact]
    public async Task Changed_from_here_on_another_series_goes_on_and_what_was_moved_by_hand_stays()
    {
        await using var app = await StudioApp.Empty();
        var (owner, series, dates) = await Tuesdays(app);
        // By hand: the fourth to the Wednesday, the fifth called off.
        await owner.ByHand(app, dates[3], new { on = "2026-03-25" });
        await owner.ByHand(app, dates[4], new { isHeld = false });

        var seen = await owner.Change(
            series,
            new
            {
                scope = "fromHere",
                on = "2026-03-17",
                startsLocal = "19:00",
            },
            dryRun: true
        );
        Assert.Equal(2, seen.Number("stayByHand"));
        Assert.Null(seen["seriesId"]);
        var done = await owner.Change(
            series,
            new
            {
                scope = "fromHere",
                on = "2026-03-17",
                startsLocal = "19:00",
            }
        );
        Assert.Equal("Every Tuesday at 18:00 until 16 March 2026", done.Text("endedWords"));
        Assert.Equal("Every Tuesday at 19:00", done.Text("words"));
        Assert.Equal(
            [
                $"{series} 2026-03-03 2026-03-03 18:00 open",
                $"{series} 2026-03-10 2026-03-10 18:00 open",
                $"{done.Number("seriesId")} 2026-03-17 2026-03-17 19:00 open",
                $"{done.Number("seriesId")} 2026-03-24 2026-03-25 19:00 open",
                $"{done.Number("seriesId")} 2026-03-31 2026-03-31 18:00 cancelled",
                $"{done.Number("seriesId")} 2026-04-07 2026-04-07 19:00 open",
            ],
            await app.Rows<string>(
                "select series_id || ' ' || series_on || ' ' || on_date || ' ' || starts_local || ' ' || status from sessions order by series_on"
            )
        );
        Assert.Equal(
            series,
            await app.Value<long>(
                "select continues_id from series where id = @id",
                new { id = done.Number("seriesId") }
            )
        );
        // The night finds nothing to add.
        Assert.Equal(0, await owner.Night());
    }

    [Fact]
    public async Task Moved_to_another_day_of_the_week_a_booking_goes_with_it()
    {
        await using var app = await StudioApp.Empty();
        var (owner, series, dates) = await Tuesdays(app);
        var her = await app.HasClient();
        await app.HasBooking(dates[2], her);
        await owner.Change(
            series,
            new
            {
                scope = "all",
                rule = "FREQ=WEEKLY;BYDAY=TH",
                startsLocal = "18:00",
            }
        );
        Assert.Equal(
            "2026-03-19",
            await app.Value<string>(
                "select s.on_date from bookings b join sessions s on s.id = b.session_id where b.client_id = @her and b.status = 'booked'",
                new { her }
            )
        );
        Assert.Equal(6, await app.Value<long>("select count(*) from sessions"));
        Assert.Equal(
            ["sessionChanged"],
            await app.Rows<string>("select kind from messages where client_id = @her", new { her })
        );
    }

    [Fact]
    public async Task One_date_alone_can_be_changed()
    {
        await using var app = await StudioApp.Empty();
        var (owner, series, _) = await Tuesdays(app);
        await owner.Change(
            series,
            new
            {
                scope = "thisOne",
                on = "2026-03-17",
                startsLocal = "17:00",
            }
        );
        Assert.Equal(
            ["2026-03-17"],
            await app.Rows<string>("select on_date from sessions where starts_local = '17:00'")
        );
        Assert.Equal("18:00", (await owner.Read($"/api/series/{series}")).Text("startsLocal"));
        using var wrong = await owner.Post(
            $"/api/series/{series}/changes",
            await app.Change(
                series,
                new
                {
                    scope = "thisOne",
                    on = "2026-03-18",
                    startsLocal = "17:00",
                }
            )
        );
        await wrong.IsRefused(400, "not-a-date-of-it", "on");
    }

    [Fact]
    public async Task A_date_is_left_out_and_brought_back()
    {
        await using var app = await StudioApp.Empty();
        var (owner, series, dates) = await Tuesdays(app);
        var her = await app.HasClient();
        await app.HasBooking(dates[1], her);
        using (
            var skipped = await owner.Put($"/api/series/{series}/exceptions/2026-03-10", new { })
        )
            await skipped.Is(200);
        Assert.Equal(
            "cancelled",
            await app.Value<string>(
                "select status from sessions where id = @id",
                new { id = dates[1] }
            )
        );
        Assert.Equal(
            "released calledOff",
            await app.Value<string>("select status || ' ' || let_go from bookings")
        );
        Assert.Equal(0, await owner.Night());
        using (
            var back = await owner.Send(
                HttpMethod.Delete,
                $"/api/series/{series}/exceptions/2026-03-10"
            )
        )
            await back.Is(200);
        Assert.Equal(0, await app.Value<long>("select count(*) from series_exceptions"));
        Assert.Equal(
            6,
            await app.Value<long>("select count(*) from sessions where status = 'open'")
        );
    }

    [Fact]
    public async Task Ended_what_lies_after_is_called_off_and_who_had_a_seat_stands_on_the_desks_list()
    {
        await using var app = await StudioApp.Empty();
        var (owner, series, dates) = await Tuesdays(app);
        var her = await app.HasClient("Orla Thistlewood", due: app.Today.PlusDays(100));
        var lost = await app.HasClient("Xylia Quenby", due: app.Today.PlusDays(100));
        foreach (var client in new[] { her, lost })
            await app.HasBooking(dates[2], client);
        var other = await app.HasSession(app.Today.PlusDays(16));
        using (
            var ended = await owner.Post($"/api/series/{series}/end", new { lastOn = "2026-03-10" })
        )
            Assert.Equal(4, (await ended.Is(200))["changes"]!.Number("calledOff"));
        Assert.Equal(0, await owner.Night());
        Assert.True(
            (bool)(await owner.Read("/api/series"))[0]!["dates"]!.AsArray().Count.Equals(4)
        );

        var desk = await app.SignedInAs(Role.FrontDesk);
        var list = (await desk.Read("/api/let-go")).AsArray();
        Assert.Equal(["Orla Thistlewood", "Xylia Quenby"], list.Select(l => l!.Text("name")));
        Assert.All(list, l => Assert.Equal("calledOff", l!.Text("why")));

        using (
            var told = await owner.Post(
                $"/api/clients/{lost}/loss",
                new { on = $"{app.Today:uuuu-MM-dd}" }
            )
        )
            await told.Is(200);
        foreach (var reader in new[] { desk, owner })
            Assert.Equal(
                "Orla Thistlewood",
                Assert.Single((await reader.Read("/api/let-go")).AsArray())!.Text("name")
            );

        // One press books her elsewhere; then she is seen to.
        var hers = (await desk.Read("/api/let-go"))[0]!;
        Assert.All(hers["choices"]!.AsArray(), c => Assert.Equal("seat", c!.Text("canBook")));
        Assert.Contains(other, hers["choices"]!.AsArray().Select(c => c!["session"]!.Number("id")));
        await desk.Booked(other, her);
        using (var seen = await desk.Post($"/api/let-go/{hers.Number("bookingId")}/seen-to"))
            await seen.Is(204);
        Assert.Empty((await desk.Read("/api/let-go")).AsArray());
        using var again = await desk.Post($"/api/let-go/{hers.Number("bookingId")}/seen-to");
        await again.Is(404);
    }

    [Fact]
    public async Task One_session_is_changed_by_hand_and_called_off_and_held_again()
    {
        await using var app = await StudioApp.Empty();
        var session = await app.HasSession(app.Today.PlusDays(3));
        var her = await app.HasClient();
        await app.HasBooking(session, her);
        var owner = await app.SignedInAs(Role.Owner);
        var seen = await owner.ByHand(
            app,
            session,
            new { startsLocal = "19:15", seats = 4 },
            dryRun: true
        );
        Assert.False((bool)seen["kept"]!);
        Assert.Equal(1, seen["changes"]!["consequences"]![0]!.Number("told"));
        await owner.ByHand(app, session, new { startsLocal = "19:15", seats = 4 });
        Assert.Equal(
            "19:15 4 booked",
            await app.Value<string>(
                "select s.starts_local || ' ' || s.seats || ' ' || b.status from sessions s join bookings b on b.session_id = s.id"
            )
        );
        await owner.ByHand(app, session, new { isHeld = false });
        await owner.ByHand(app, session, new { isHeld = true });
        Assert.Equal(
            "open released",
            await app.Value<string>(
                "select s.status || ' ' || b.status from sessions s join bookings b on b.session_id = s.id"
            )
        );
        using var tooFew = await owner.Put(
            $"/api/sessions/{session}",
            await app.Hand(session, new { minutes = 2 })
        );
        await tooFew.IsRefused(400, "bad-length", "minutes");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task Whatever_is_changed_every_booking_stands_or_she_was_told_that_it_ended(
        int seed
    )
    {
        await using var app = await StudioApp.Empty();
        var (owner, first, dates) = await Tuesdays(app);
        var other = await owner.Series(
            "FREQ=WEEKLY;BYDAY=WE,FR",
            "2026-03-04",
            await app.HasClass(),
            await app.HasRoom()
        );
        var random = new Random(seed);
        var all = await app.Rows<long>("select id from sessions order by id");
        for (var n = 0; n < 5; n++)
        {
            var client = await app.HasClient();
            foreach (var session in all.Where(_ => random.Next(3) == 0))
                await app.HasBooking(session, client);
        }

        string[] rules =
        [
            "FREQ=WEEKLY;BYDAY=WE",
            "FREQ=WEEKLY;INTERVAL=2;BYDAY=MO,TH",
            "FREQ=DAILY;INTERVAL=3",
            "FREQ=MONTHLY;BYDAY=2TU,-1FR",
        ];
        for (var step = 0; step < 6; step++)
        {
            var series = (await app.Rows<long>("select id from series order by id")) is var ids
                ? ids[random.Next(ids.Count)]
                : first;
            var one = await owner.Read($"/api/series/{series}");
            var open = one["dates"]!.AsArray();
            if (open.Count == 0)
                continue;
            var on = open[random.Next(open.Count)]!.Text("seriesOn");
            var hour = $"{random.Next(16, 20)}:00";
            var body = random.Next(3) switch
            {
                0 => (object)
                    new
                    {
                        scope = "all",
                        startsLocal = hour,
                        byHandToo = random.Next(2) == 0,
                        anyway = true,
                    },
                1 => new
                {
                    scope = "fromHere",
                    on,
                    startsLocal = hour,
                    anyway = true,
                },
                _ => new
                {
                    scope = random.Next(2) == 0 ? "all" : "fromHere",
                    on,
                    rule = rules[random.Next(rules.Length)],
                    startsLocal = hour,
                    anyway = true,
                },
            };
            using var answer = await owner.Post(
                $"/api/series/{series}/changes",
                await app.Change(series, body)
            );
            Assert.True((int)answer.StatusCode is 200 or 400 or 409, $"{(int)answer.StatusCode}");
            Assert.Equal(
                0,
                await app.Value<long>(
                    """
                    select count(*) from bookings b join sessions s on s.id = b.session_id
                     where not (b.status = 'booked' and s.status = 'open')
                       and not (b.status = 'released' and b.let_go is not null
                                and exists (select 1 from messages m
                                             where m.client_id = b.client_id and m.kind = 'sessionCancelled'))
                    """
                )
            );
            Assert.Equal(
                0,
                await app.Value<long>(
                    """
                    select count(*) from sessions a join sessions b on b.id > a.id and b.status = 'open' and a.status = 'open'
                       and b.room_id = a.room_id and a.starts_at < b.ends_at and a.ends_at > b.starts_at
                    """
                )
            );
        }

        Assert.NotEmpty(dates);
        Assert.True(other.Number("id") > 0);
        Assert.Empty(app.Log.Errors);
    }

    private static object Body(string rule, string start, long of, long room) =>
        Serieses.Body(rule, start, of, room);

    private static async Task<(HttpClient Owner, long Series, List<long> Dates)> Tuesdays(
        StudioApp app
    )
    {
        var owner = await app.SignedInAs(Role.Owner);
        var made = await owner.Series(
            "FREQ=WEEKLY;BYDAY=TU",
            "2026-03-03",
            await app.HasClass(),
            await app.HasRoom()
        );
        return (
            owner,
            made.Number("id"),
            await app.Rows<long>("select id from sessions order by series_on")
        );
    }
}

internal static class Serieses
{
    public static object Body(string rule, string start, long of, long room) =>
        new
        {
            rule,
            start,
            startsLocal = "18:00",
            classId = of,
            roomId = room,
        };

    public static async Task<JsonNode> Series(
        this HttpClient owner,
        string rule,
        string start,
        long of,
        long room,
        string? key = null
    )
    {
        using var answer = await owner.Post("/api/series", Body(rule, start, of, room), key);
        return await answer.Is(201);
    }

    /// <summary>The nightly job of series, by hand; how many sessions it made.</summary>
    public static async Task<long> Night(this HttpClient owner)
    {
        using var ran = await owner.Post("/api/jobs/timetable/run");
        return (await ran.Is(200)).Number("changed");
    }

    /// <summary>A change of a series: as it is, but for this.</summary>
    public static async Task<JsonObject> Change(this StudioApp app, long series, object but) =>
        With(
            new JsonObject
            {
                ["roomId"] = await app.Value<long>(
                    "select room_id from series where id = @series",
                    new { series }
                ),
                ["minutes"] = await app.Value<long>(
                    "select minutes from series where id = @series",
                    new { series }
                ),
                ["seats"] = await app.Value<long>(
                    "select seats from series where id = @series",
                    new { series }
                ),
            },
            but
        );

    public static async Task<JsonNode> Change(
        this HttpClient owner,
        long series,
        object but,
        bool dryRun = false
    )
    {
        var one = await owner.Read($"/api/series/{series}");
        var body = new JsonObject
        {
            ["roomId"] = one.Number("roomId"),
            ["minutes"] = one.Number("minutes"),
            ["seats"] = one.Number("seats"),
        };
        using var answer = await owner.Post(
            $"/api/series/{series}/changes{(dryRun ? "?dryRun=true" : "")}",
            With(body, but)
        );
        return await answer.Is(200);
    }

    /// <summary>A session as it is, but for this.</summary>
    public static async Task<JsonObject> Hand(this StudioApp app, long session, object but)
    {
        var now = await app.Wanted(session);
        return With(
            new JsonObject
            {
                ["on"] = $"{now.On:uuuu-MM-dd}",
                ["startsLocal"] = $"{now.StartsLocal:HH:mm}",
                ["minutes"] = now.Minutes,
                ["roomId"] = now.RoomId,
                ["instructorId"] = now.InstructorId,
                ["seats"] = now.Seats,
                ["isHeld"] = now.IsHeld,
            },
            but
        );
    }

    public static async Task<JsonNode> ByHand(
        this HttpClient owner,
        StudioApp app,
        long session,
        object but,
        bool dryRun = false
    )
    {
        using var answer = await owner.Put(
            $"/api/sessions/{session}{(dryRun ? "?dryRun=true" : "")}",
            await app.Hand(session, but)
        );
        return await answer.Is(200);
    }

    private static JsonObject With(JsonObject body, object but)
    {
        foreach (
            var (name, value) in System
                .Text.Json.JsonSerializer.SerializeToNode(but)!
                .AsObject()
                .ToList()
        )
            body[name] = value?.DeepClone();
        return body;
    }
}
