using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Api.Demo;
using Studio.Api.Http;
using Studio.Api.Timetable;
using Studio.Core.Timetable;

namespace Studio.Api.Tests.Demo;

public class StaffOfASetup
{
    [Fact]
    public async Task The_demo_shows_when_they_work_and_what_they_like()
    {
        await using var app = await StudioApp.Demo();
        using var owner = await Owner(app);
        var tome = await Id(owner, "Tomé Arribalune");
        var page = await owner.Read($"/api/instructors/{tome}");
        Assert.Equal(300, (int)page["weeklyMinutesMost"]!);
        Assert.Contains(
            page["availability"]!.AsArray(),
            h => (int)h!["weekday"]! == 3 && h.Text("from") == "16:00" && h.Text("to") == "21:00"
        );
        Assert.Contains(
            page["wishes"]!.AsArray(),
            w => w!.Text("value") == "early-core" && (int)w!["weight"]! == 2
        );
        Assert.Contains(
            page["leave"]!.AsArray(),
            l =>
                l!.Text("from") == $"{app.Today.PlusDays(50):uuuu-MM-dd}"
                && l!.Text("to") == $"{app.Today.PlusDays(59):uuuu-MM-dd}"
        );
        var hours = await owner.Read($"/api/instructors/{tome}/hours");
        Assert.Equal(300, (int)hours["weeklyMinutesMost"]!);
    }

    [Fact]
    public async Task The_demo_knows_both_ways_between_its_locations()
    {
        await using var app = await StudioApp.Demo();
        using var owner = await Owner(app);
        var ways = (await owner.Read("/api/travel")).AsArray();
        Assert.Equal(2, ways.Count);
        Assert.All(ways, w => Assert.Equal(75, (int)w!["minutes"]!));
    }

    [Fact]
    public async Task The_demo_pays_by_the_session_the_head_and_the_hour()
    {
        await using var app = await StudioApp.Demo();
        app.Clock.Advance(Duration.FromDays(6));
        using var owner = await Owner(app);
        var rates = (await owner.Read("/api/pay/rates")).AsArray();
        Assert.Equal(
            ["head", "hour", "session"],
            rates.Select(r => r!.Text("per")).Distinct().Order()
        );
        var pay = await owner.Read("/api/pay");
        Assert.Equal(0, (int)pay["withoutRate"]!);
        // Fifty minutes at 46.50 an hour.
        Assert.Contains(
            pay["lines"]!.AsArray(),
            l =>
                l!.Text("instructorName") == "Marisol Quintavelle"
                && (int)l!["minutes"]! == 50
                && l!.Text("amountText") == "38.75"
        );
    }

    [Theory]
    [InlineData("2026-03-02T09:00:00Z")]
    [InlineData("2026-11-25T12:00:00Z")]
    [InlineData("2026-12-31T23:30:00Z")]
    public async Task Nobody_of_the_demo_works_against_what_was_agreed(string moment)
    {
        await using var app = await StudioApp.Demo(
            NodaTime.Text.InstantPattern.ExtendedIso.Parse(moment).Value
        );
        await using var read = await app.Services.GetRequiredService<Database>().ReadAsync();
        var conflicts = TimetableChecks.Of(
            await TimetableStore.PlacedAsync(read, app.Today.PlusDays(-7), app.Today.PlusDays(60)),
            await TimetableStore.FactsAsync(read, StudioApp.Book)
        );
        // One whose qualification ran out, and one whose will: the demo has them to show.
        Assert.DoesNotContain(
            conflicts,
            c => c.Kind is not (ConflictKind.NotQualified or ConflictKind.TooLittleRest)
        );
    }

    [Fact]
    public async Task A_studio_may_do_without_these_files()
    {
        await using var app = await StudioApp.Empty();
        await SetUp(app, name => StudioSetup.Optional.GetValueOrDefault(name));
        Assert.Equal(8, await app.Value<long>("select count(*) from instructors"));
        foreach (
            var table in new[]
            {
                "availability",
                "leave",
                "teaching_wishes",
                "travel_times",
                "pay_rates",
            }
        )
            Assert.Equal(0, await app.Value<long>($"select count(*) from {table}"));
        Assert.True(await app.Value<long>("select count(*) from sessions") > 0);
    }

    [Theory]
    [InlineData("availability.csv", "tome@quillmere.example,8,09:00,12:00,", "weekday")]
    [InlineData("availability.csv", "tome@quillmere.example,1,9 o'clock,12:00,", "from")]
    [InlineData("availability.csv", "tome@quillmere.example,1,12:00,09:00,", "from")]
    [InlineData("availability.csv", "tome@quillmere.example,1,09:00,12:00,moon", "location")]
    [InlineData("leave.csv", "nobody@quillmere.example,today,today", "instructor_email")]
    [InlineData("leave.csv", "tome@quillmere.example,today+2,today", "to")]
    [InlineData("leave.csv", "tome@quillmere.example,tomorrow,today", "from")]
    [InlineData("wishes.csv", "tome@quillmere.example,class,juggling,1", "value")]
    [InlineData("wishes.csv", "tome@quillmere.example,colour,blue,1", "kind")]
    [InlineData("wishes.csv", "tome@quillmere.example,weekday,1,3", "weight")]
    [InlineData("bounds.csv", "tome@quillmere.example,many,", "weekly_minutes_most")]
    [InlineData("travel.csv", "ormero,ormero,20", "to")]
    [InlineData("travel.csv", "ormero,vilarmeira,0", "minutes")]
    [InlineData("pay_rates.csv", ",,week,,10.00,EUR,today", "per")]
    [InlineData("pay_rates.csv", ",,session,checkedIn,10.00,EUR,today", "heads")]
    [InlineData("pay_rates.csv", ",,session,,10.005,EUR,today", "amount")]
    [InlineData("pay_rates.csv", ",,session,,10.00,XXQ,today", "currency")]
    public async Task A_wrong_row_is_named_by_file_and_line(string file, string row, string column)
    {
        await using var app = await StudioApp.Empty();
        var refused = await Assert.ThrowsAsync<SettingException>(() =>
            SetUp(
                app,
                name =>
                    StudioSetup.Optional.GetValueOrDefault(name) is { } empty
                        ? empty + (name == file ? row + "\n" : "")
                        : null
            )
        );
        Assert.StartsWith($"{file} line 2: {column}: ", refused.Message, StringComparison.Ordinal);
        Assert.Equal(0, await app.Value<long>("select count(*) from instructors"));
    }

    [Fact]
    public async Task While_somebody_is_away_nobody_teaches_her_sessions_yet()
    {
        await using var app = await StudioApp.Empty();
        await SetUp(
            app,
            name =>
                name == "leave.csv"
                    ? "instructor_email,from,to\ntome@quillmere.example,today+7,today+13\n"
                    : null
        );
        // His four of that week, beside the two of the timetable that never had anybody.
        Assert.Equal(
            6,
            await app.Value<long>(
                "select count(*) from sessions where instructor_id is null and on_date between @from and @to",
                new { from = app.Today.PlusDays(7), to = app.Today.PlusDays(13) }
            )
        );
    }

    [Fact]
    public async Task A_timetable_without_time_for_the_way_is_refused_by_name()
    {
        await using var app = await StudioApp.Empty();
        var refused = await Assert.ThrowsAsync<SettingException>(() =>
            SetUp(
                app,
                name =>
                    name == "timetable.csv"
                        ? """
                            location,room,class,instructor_email,weekday,start
                            vilarmeira,Window room,early-core,tome@quillmere.example,1,09:30
                            ormero,Tile room,early-core,tome@quillmere.example,1,12:00
                            """
                        : null
            )
        );
        Assert.Contains(
            "Tomé Arribalune needs 75 minutes",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    // The demo's files, some of them in another shape.
    private static async Task SetUp(StudioApp app, Func<string, string?> instead)
    {
        await using var write = await app.Services.GetRequiredService<Database>().BeginWriteAsync();
        await write.ExecuteAsync("delete from studio");
        await StudioSetup.RunAsync(
            write,
            name => instead(name) ?? DemoStudio.Text(name),
            StudioApp.Book,
            app.Clock.GetCurrentInstant(),
            isDemo: false
        );
        await write.CommitAsync();
    }

    private static Task<HttpClient> Owner(StudioApp app) =>
        app.SignedInWith("owner@demo.example", DemoStudio.Password);

    private static async Task<long> Id(HttpClient owner, string name) =>
        (long)
            (await owner.Read("/api/instructors")).AsArray().Single(i => i!.Text("name") == name)![
                "id"
            ]!;
}
