using Studio.Api.Demo;

namespace Studio.Api.Tests.Demo;

public class TheDemoStudio
{
    [Theory]
    [InlineData("2026-03-28T10:00:00Z", "Saturday, the day before the clocks go forward")]
    [InlineData("2026-03-29T01:30:00Z", "Sunday, half an hour after the clocks went forward")]
    [InlineData("2026-03-30T06:00:00Z", "Monday, the day after")]
    [InlineData("2028-02-29T23:30:00Z", "Tuesday, a leap day; in Madrid it is the day after")]
    [InlineData("2026-11-25T12:00:00Z", "an ordinary Wednesday")]
    [InlineData("2026-12-31T23:30:00Z", "Thursday, the last day of the year; the first in Madrid")]
    [InlineData("2027-12-31T08:00:00Z", "Friday, the last day of a year before a leap year")]
    [InlineData("2026-10-25T00:30:00Z", "Sunday, half an hour before the clocks go back")]
    public async Task Loads_whole_on_any_day(string moment, string because)
    {
        await using var app = await StudioApp.Demo(
            NodaTime.Text.InstantPattern.ExtendedIso.Parse(moment).Value
        );
        (string What, long Expected)[] counts =
        [
            ("locations", 2),
            ("rooms", 4),
            ("instructors", 8),
            ("classes", 10),
            ("clients", 220),
            ("series", 40),
            ("closures", 2),
        ];
        foreach (var (what, expected) in counts)
            Assert.True(
                expected == await app.Value<long>($"select count(*) from {what}"),
                $"{what} on {because}"
            );
        Assert.Equal(
            6,
            await app.Value<long>(
                "select count(distinct strftime('%Y-%W', on_date)) from sessions where cast(strftime('%w', on_date) as integer) = 3"
            )
        );
        // Over all stages, and every kind of person the studio has to be ready for.
        Assert.Equal(
            6,
            await app.Value<long>(
                "select count(distinct stage) from pregnancies where is_current = 1 and stage is not null"
            )
        );
        foreach (
            var (who, sql) in new[]
            {
                ("twins", "babies = 2"),
                ("a loss", "ended_on is not null"),
                ("born last week", $"born_on >= date('{app.Today:uuuu-MM-dd}', '-7 days')"),
                (
                    "past her due date",
                    $"born_on is null and ended_on is null and due_date < '{app.Today:uuuu-MM-dd}'"
                ),
            }
        )
            Assert.True(
                await app.Value<long>($"select count(*) from pregnancies where {sql}") > 0,
                $"{who} on {because}"
            );
        Assert.True(
            await app.Value<long>(
                "select count(*) from (select name from clients group by name having count(*) > 1)"
            ) > 0,
            $"a name that two have on {because}"
        );
        await SessionsStandByTheWallClock(app);
        Assert.Empty(app.Log.Errors);
    }

    [Fact]
    public async Task Is_opened_by_its_four_accounts()
    {
        await using var app = await StudioApp.Demo();
        var demo = await app.Browser().Read("/api/demo");
        Assert.True((bool)demo["loaded"]!);
        Assert.Equal(
            [
                "client@demo.example client",
                "desk@demo.example frontDesk",
                "instructor@demo.example instructor",
                "owner@demo.example owner",
            ],
            demo["accounts"]!.AsArray().Select(a => $"{a!.Text("email")} {a!.Text("role")}").Order()
        );
        foreach (var account in demo["accounts"]!.AsArray())
            await app.SignedInWith(account!.Text("email"), account!.Text("password"));
    }

    [Fact]
    public async Task Leaves_no_account_in_a_studio_that_did_not_load_it()
    {
        await using var app = await StudioApp.Empty();
        var demo = await app.Browser().Read("/api/demo");
        Assert.False((bool)demo["loaded"]!);
        Assert.Empty(demo["accounts"]!.AsArray());
        foreach (var who in new[] { "owner", "desk", "instructor", "client" })
        {
            using var answer = await app.Browser()
                .Post(
                    "/api/session",
                    new { email = $"{who}@demo.example", password = DemoStudio.Password }
                );
            await answer.IsRefused(401, "wrong-sign-in");
        }
    }

    [Fact]
    public async Task Is_loaded_once_and_kept_as_it_was_left()
    {
        await using var app = await StudioApp.Demo();
        // This app started on a folder that had the demo already.
        Assert.Equal(220, await app.Value<long>("select count(*) from clients"));
        Assert.Equal(4, await app.Value<long>("select count(*) from accounts"));
    }

    private static async Task SessionsStandByTheWallClock(StudioApp app)
    {
        var sessions = await app.Rows<SessionTimes>(
            """
            select s.starts_at as StartsAt, s.ends_at as EndsAt, s.on_date as OnDate, s.starts_local as StartsLocal,
                   l.zone, c.minutes
              from sessions s join classes c on c.id = s.class_id
              join rooms r on r.id = s.room_id join locations l on l.id = r.location_id
            """
        );
        Assert.NotEmpty(sessions);
        Assert.All(
            sessions,
            s =>
            {
                var starts = s.StartsAt.InZone(DateTimeZoneProviders.Tzdb[s.Zone]);
                Assert.Equal(s.OnDate + s.StartsLocal, starts.LocalDateTime);
                Assert.Equal(Duration.FromMinutes(s.Minutes), s.EndsAt - s.StartsAt);
            }
        );
    }

    private sealed record SessionTimes
    {
        public Instant StartsAt { get; init; }
        public Instant EndsAt { get; init; }
        public LocalDate OnDate { get; init; }
        public LocalTime StartsLocal { get; init; }
        public string Zone { get; init; } = "";
        public int Minutes { get; init; }
    }
}
