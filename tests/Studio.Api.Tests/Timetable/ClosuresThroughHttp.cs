using System.Net.Http.Headers;
using System.Text;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Timetable;

public class ClosuresThroughHttp
{
    [Fact]
    public async Task Show_what_falls_on_them_and_call_off_only_when_they_are_told_to()
    {
        await using var app = await StudioApp.Empty();
        var location = await app.HasLocation();
        var room = await app.HasRoom(location);
        var session = await app.HasSession(app.Today.PlusDays(4), room: room);
        var elsewhere = await app.HasSession(
            app.Today.PlusDays(4),
            room: await app.HasRoom(await app.HasLocation("Hill house"))
        );
        var her = await app.HasClient();
        await app.HasBooking(session, her);
        var owner = await app.SignedInAs(Role.Owner);
        var body = new
        {
            locationId = location,
            from = "2026-03-05",
            to = "2026-03-07",
            kind = "closure",
            name = "The floor is sanded",
            callOff = true,
        };
        using (var seen = await owner.Post("/api/closures?dryRun=true", body))
        {
            var outcome = await seen.Is(200);
            Assert.Equal(session, Assert.Single(outcome["sessions"]!.AsArray())!.Number("id"));
            Assert.Equal(1, outcome["changes"]!.Number("calledOff"));
            Assert.Equal(1, outcome["changes"]!["consequences"]![0]!.Number("letGo"));
        }

        Assert.Equal(0, await app.Value<long>("select count(*) from closures"));
        using (var kept = await owner.Post("/api/closures", body with { callOff = false }))
            await kept.Is(200);
        Assert.Equal("booked", await app.Value<string>("select status from bookings"));
        var closure = Assert.Single((await owner.Read("/api/closures")).AsArray())!;
        Assert.Equal(1, closure.Number("sessionsStanding"));
        using (var twice = await owner.Post("/api/closures", body))
            await twice.IsRefused(409, "closed-already", "name");

        using (var off = await owner.Post($"/api/closures/{closure.Number("id")}/call-off"))
            await off.Is(200);
        Assert.Equal("released", await app.Value<string>("select status from bookings"));
        Assert.Equal(
            ["sessionCancelled"],
            await app.Rows<string>("select kind from messages where client_id = @her", new { her })
        );
        Assert.Equal(
            "open",
            await app.Value<string>(
                "select status from sessions where id = @elsewhere",
                new { elsewhere }
            )
        );
        // Nothing can be put there while it is shut.
        using var other = await owner.Put(
            $"/api/sessions/{elsewhere}",
            await app.Hand(elsewhere, new { roomId = room })
        );
        await other.IsRefused(409, "timetable-conflict");
    }

    [Fact]
    public async Task A_range_the_wrong_way_round_is_refused()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        using var answer = await owner.Post(
            "/api/closures",
            new
            {
                locationId = await app.HasLocation(),
                from = "2026-03-07",
                to = "2026-03-05",
                kind = "closure",
                name = "Backwards",
            }
        );
        await answer.IsRefused(400, "bad-range", "to");
    }

    [Fact]
    public async Task Are_imported_from_a_table_all_or_nothing_with_line_and_reason()
    {
        await using var app = await StudioApp.Empty();
        var quay = await app.HasLocation();
        await app.HasLocation("Hill house");
        var owner = await app.SignedInAs(Role.Owner);
        using (
            var wrong = await owner.Import(
                "days.csv",
                "from,to,location,kind,name\n2026-05-01,,quay-house,holiday,First of May\n2026-13-01,,quay-house,,Never\n2026-06-10,2026-06-01,hill-house,,Backwards\n2026-06-10,,barn,,Nowhere\n2026-06-11,,,,Unplaced\n"
            )
        )
        {
            var report = await wrong.Is(422);
            Assert.Equal(0, report.Number("added"));
            Assert.Equal(
                ["3 from", "4 to", "5 location", "6 location"],
                report["refused"]!.AsArray().Select(r => $"{r!.Number("line")} {r!.Text("column")}")
            );
        }

        Assert.Equal(0, await app.Value<long>("select count(*) from closures"));
        const string good =
            "from,to,location,name\n2026-05-01,,quay-house,First of May\n2026-08-03,2026-08-14,hill-house,Summer\n2026-06-11,,,Unplaced\n";
        using (var dry = await owner.Import("days.csv", good, quay, dryRun: true))
            Assert.Equal(3, (await dry.Is(200)).Number("added"));
        Assert.Equal(0, await app.Value<long>("select count(*) from closures"));
        using (var first = await owner.Import("days.csv", good, quay))
            Assert.Equal(3, (await first.Is(200)).Number("added"));
        using (var again = await owner.Import("days.csv", good, quay))
        {
            var report = await again.Is(200);
            Assert.Equal(0, report.Number("added"));
            Assert.All(report["days"]!.AsArray(), d => Assert.True((bool)d!["thereAlready"]!));
        }
    }

    [Fact]
    public async Task Are_imported_from_a_calendar_for_the_location_that_was_chosen()
    {
        await using var app = await StudioApp.Empty();
        var quay = await app.HasLocation();
        var owner = await app.SignedInAs(Role.Owner);
        const string calendar =
            "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Saltmarsh//Days//EN\r\nBEGIN:VEVENT\r\nUID:1\r\nDTSTART;VALUE=DATE:20200610\r\nRRULE:FREQ=YEARLY\r\nSUMMARY:Day of the Estuary\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n";
        using (var nowhere = await owner.Import("days.ics", calendar))
            Assert.Equal("location", (await nowhere.Is(422))["refused"]![0]!.Text("column"));
        using (var kept = await owner.Import("days.ics", calendar, quay))
            Assert.Equal(3, (await kept.Is(200)).Number("added"));
        Assert.Equal(
            ["2026-06-10", "2027-06-10", "2028-06-10"],
            await app.Rows<string>(
                "select from_on from closures where kind = 'publicHoliday' order by 1"
            )
        );
        using (
            var nothing = await owner.Import(
                "days.ics",
                "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n",
                quay
            )
        )
            Assert.NotEmpty((await nothing.Is(422))["refused"]!.AsArray());
        using var none = await owner.Post("/api/closures/import");
        await none.IsRefused(400, "no-file", "file");
    }
}

internal static class Holidays
{
    public static async Task<HttpResponseMessage> Import(
        this HttpClient owner,
        string name,
        string text,
        long? location = null,
        bool dryRun = false
    )
    {
        using var file = new ByteArrayContent(Encoding.UTF8.GetBytes(text));
        file.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        using var form = new MultipartFormDataContent { { file, "file", name } };
        return await owner.PostAsync(
            $"/api/closures/import?dryRun={(dryRun ? "true" : "false")}{(location is { } at ? $"&locationId={at}" : "")}",
            form,
            TestContext.Current.CancellationToken
        );
    }
}
