using Studio.Core.Pregnancies;

namespace Studio.Api.Tests.Jobs;

/// <summary>
/// Every night is run once, after the local midnight of its zone. Offsets and changes of the clocks are those of the IANA
/// time zone database; each row first checks that the clocks there do what it says.
/// </summary>
public class LocalMidnights
{
    [Theory]
    [InlineData("Europe/Lisbon", "2026-03-29", "01:30", 0, "spring, not at midnight")]
    [InlineData("Europe/Lisbon", "2026-10-25", "01:30", 2, "autumn, not at midnight")]
    [InlineData("America/Havana", "2026-03-08", "00:00", 0, "midnight does not exist")]
    [InlineData("America/Havana", "2024-11-03", "00:30", 2, "the first hour happens twice")]
    [InlineData("Asia/Beirut", "2026-03-29", "00:00", 0, "midnight does not exist")]
    [InlineData("Asia/Beirut", "2026-10-24", "23:30", 2, "the last hour of the day happens twice")]
    [InlineData("Africa/Cairo", "2026-04-24", "00:00", 0, "midnight does not exist")]
    [InlineData("Africa/Cairo", "2026-10-29", "23:30", 2, "the last hour of the day happens twice")]
    [InlineData("Atlantic/Azores", "2026-03-29", "00:00", 0, "midnight does not exist")]
    [InlineData("Atlantic/Azores", "2026-10-25", "00:00", 2, "midnight happens twice")]
    [InlineData("America/Sao_Paulo", "2018-11-04", "00:00", 0, "midnight does not exist")]
    [InlineData("America/Sao_Paulo", "2018-02-17", "23:30", 2, "the last hour happens twice")]
    [InlineData("America/St_Johns", "2010-11-07", "00:00", 2, "the day begins, ends and begins")]
    [InlineData("Asia/Kathmandu", "2026-03-08", "00:00", 1, "no quarter of an hour matters")]
    [InlineData("Pacific/Apia", "2011-12-30", "12:00", 0, "the whole day does not exist")]
    [InlineData("Pacific/Chatham", "2026-04-05", "03:00", 2, "three quarters of an hour off")]
    public async Task A_night_is_run_exactly_once(
        string zone,
        string day,
        string time,
        int happens,
        string because
    )
    {
        var tz = DateTimeZoneProviders.Tzdb[zone];
        var date = NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value;
        var wall =
            date
            + NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(time).Value;
        Assert.True(happens == tz.MapLocal(wall).Count, because);

        var from = tz.AtStartOfDay(date.PlusDays(-1)).ToInstant() + Duration.FromHours(22);
        var until = tz.AtStartOfDay(date.PlusDays(1)).ToInstant() + Duration.FromHours(2);
        await using var app = await StudioApp.Empty(from);
        await app.HasLocation(zone: zone);
        await app.Bell();
        var nights = new HashSet<LocalDate> { date.PlusDays(-1) };
        // A bell every five minutes, as the schedule has it, around midnight; by day an hourly one is enough here.
        while (app.Clock.GetCurrentInstant() < until)
        {
            var now = app.Clock.GetCurrentInstant().InZone(tz);
            nights.Add(now.Date);
            await app.Bell();
            app.Clock.AdvanceMinutes(now.Hour is >= 3 and < 22 ? 60 : 5);
        }

        var runs = await app.Rows<Run>(
            "select job, for_date as ForDate, ran_at as RanAt from job_runs where by_hand = 0 order by id"
        );
        Assert.Equal(
            nights
                .Order()
                .SelectMany(n =>
                    new[]
                    {
                        ("advance", n),
                        ("timetable", n),
                        ("moves", n),
                        ("erase", n),
                        ("flags", n),
                    }
                ),
            runs.Select(r => (r.Job, r.ForDate))
        );
        // Within five minutes of the first moment that belongs to the day.
        Assert.All(
            runs.Where(r => r.ForDate >= date),
            r =>
                Assert.InRange(
                    r.RanAt - tz.AtStartOfDay(r.ForDate).ToInstant(),
                    Duration.Zero,
                    Duration.FromMinutes(5)
                )
        );
        Assert.Equal(happens == 0 && time == "12:00", !nights.Contains(date));
    }

    [Fact]
    public async Task Each_zone_follows_its_own_midnight()
    {
        // 09:00 on Monday in Lisbon is 22:00 on Monday in Auckland and 01:00 on Monday in Los Angeles.
        await using var app = await StudioApp.Empty(Instant.FromUtc(2026, 3, 2, 9, 0));
        var monday = new LocalDate(2026, 3, 2);
        string[] zones = ["Europe/Lisbon", "Pacific/Auckland", "America/Los_Angeles"];
        foreach (var zone in zones)
            await app.HasClient(
                due: monday.PlusDays(100),
                location: await app.HasLocation(zone, zone)
            );
        Assert.Equal(3, await app.Bell());
        Assert.Equal([180, 180, 180], await Days(app));

        app.Clock.Advance(Duration.FromMinutes(119));
        Assert.Equal(0, await app.Bell());
        app.Clock.AdvanceMinutes(1);
        Assert.Equal(1, await app.Bell());
        Assert.Equal([180, 181, 180], await Days(app));

        app.Clock.Advance(Duration.FromHours(13));
        Assert.Equal(1, await app.Bell());
        Assert.Equal([181, 181, 180], await Days(app));

        app.Clock.Advance(Duration.FromHours(8));
        Assert.Equal(1, await app.Bell());
        Assert.Equal([181, 181, 181], await Days(app));
        Assert.Equal(181, GestationalAge.On(monday.PlusDays(1), monday.PlusDays(100)).Days);
    }

    [Fact]
    public async Task A_clock_that_is_set_back_runs_no_night_twice()
    {
        await using var app = await StudioApp.Empty();
        await app.HasLocation();
        await app.Sleeps();
        app.Clock.Advance(Duration.FromDays(-1));
        Assert.Equal(0, await app.Bell());
        app.Clock.Advance(Duration.FromDays(1));
        Assert.Equal(0, await app.Bell());
    }

    private static Task<List<int>> Days(StudioApp app) =>
        app.Rows<int>("select gestational_day from pregnancies order by id");

    private sealed record Run
    {
        public string Job { get; init; } = "";
        public LocalDate ForDate { get; init; }
        public Instant RanAt { get; init; }
    }
}
