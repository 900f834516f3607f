using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;

namespace Studio.Api.Tests.Jobs;

/// <summary>The nights of the demo studio against the rules asked for each date directly.</summary>
public class AYearOfNights
{
    [Fact]
    public async Task Says_of_everybody_every_day_what_the_rules_say_of_that_date()
    {
        await using var app = await StudioApp.Demo();
        var stages = app.Services.GetRequiredService<RuleBook>().Stages;
        var compared = 0;
        var crossings = 0;
        // Nobody enters anything in this year: what is known of everybody stays as it was loaded.
        var hers = await Everybody(app);
        await app.Bell();
        for (var night = 0; night <= 365; night++)
        {
            var rows = await Advanced(app);
            Assert.Equal(hers.Count, rows.Count);
            Assert.True(rows.Count > 200, "the demo has more than 200 clients");
            foreach (var row in rows)
            {
                var today = app
                    .Clock.GetCurrentInstant()
                    .InZone(DateTimeZoneProviders.Tzdb[row.Zone])
                    .Date;
                var should = stages.On(hers[row.ClientId].Pregnancy, today);
                Assert.True(
                    (should.Age?.Days, should.Stage?.Code) == (row.GestationalDay, row.Stage),
                    $"client {row.ClientId} on {today}: {row.GestationalDay} {row.Stage}, not {should}"
                );
                compared++;
            }

            // Crossings are never taken back while nothing about her changes, so some nights speak for all.
            if (night % 30 == 5 || night == 365)
                crossings = await CompareCrossings(app, stages, hers);
            await app.Sleeps();
        }

        Assert.True(compared > 200 * 365 && crossings > 200, $"{compared}, {crossings}");
    }

    [Fact]
    public async Task Ten_days_of_downtime_are_caught_up_to_the_same_rows()
    {
        await using var awake = await StudioApp.Demo();
        await using var asleep = await StudioApp.Demo();
        await awake.Bell();
        await asleep.Bell();
        for (var night = 0; night < 10; night++)
            await awake.Sleeps();
        await asleep.Sleeps(days: 10);
        Assert.Equal(await awake.WhatNightsWrite(), await asleep.WhatNightsWrite());
    }

    [Fact]
    public async Task Running_every_job_again_in_the_same_night_changes_nothing()
    {
        await using var app = await StudioApp.Demo();
        await app.Bell();
        await app.Sleeps();
        var rows = await app.EveryRow();
        foreach (var job in new[] { "advance", "moves", "flags", "moves", "flags", "advance" })
        {
            var run = await app.ByHand(job);
            Assert.Equal((job, 0, "Nothing had changed."), (run.Job, run.Changed, run.Result));
        }

        Assert.Equal(0, await app.Bell());
        Assert.Equal(rows, await app.EveryRow());
    }

    [Fact]
    public async Task Suggestions_keep_their_numbers_while_nothing_changes()
    {
        await using var app = await StudioApp.Demo();
        await app.Bell();
        var before = await app.RowsOf("select id, client_id from moves where status = 'open'");
        Assert.NotEmpty(before.Trim());
        // An hour later nothing about anybody has changed.
        app.Clock.Advance(Duration.FromHours(1));
        await app.ByHand("moves");
        Assert.Equal(
            before,
            await app.RowsOf("select id, client_id from moves where status = 'open'")
        );
    }

    private static async Task<int> CompareCrossings(
        StudioApp app,
        StageScheme stages,
        IReadOnlyDictionary<long, HerSituation> hers
    )
    {
        var should =
            from her in hers
            where her.Value.Pregnancy is { EndedOn: null }
            from band in stages.Bands(her.Value.Pregnancy!)
            where band.Stage is not { CountsFrom: StageCount.Pregnancy, FromDay: 0 }
            select (her.Key, band.Stage.Code, band.From);
        var are = (
            await app.Rows<Crossing>(
                """
                select p.client_id as ClientId, s.stage, s.on_date as OnDate
                  from stage_changes s join pregnancies p on p.id = s.pregnancy_id
                """
            )
        ).Select(c => (c.ClientId, c.Stage, c.OnDate)).ToHashSet();
        // At 09:00 in Lisbon it is the same day in Madrid.
        var due = should.Where(s => s.From <= app.Today).ToHashSet();
        Assert.True(due.SetEquals(are), $"on {app.Today}: {due.Count} due, {are.Count} written");
        return are.Count;
    }

    private static Task<List<Row>> Advanced(StudioApp app) =>
        app.Rows<Row>(
            """
            select c.id as ClientId, l.zone, p.gestational_day as GestationalDay, p.stage
              from clients c
              join locations l on l.id = c.home_location_id
              left join pregnancies p on p.client_id = c.id and p.is_current = 1
             order by c.id
            """
        );

    private static async Task<IReadOnlyDictionary<long, HerSituation>> Everybody(StudioApp app)
    {
        await using var read = await app.Services.GetRequiredService<Database>().ReadAsync();
        return await SituationStore.OfAsync(read, null);
    }

    private sealed record Row
    {
        public long ClientId { get; init; }
        public string Zone { get; init; } = "";
        public int? GestationalDay { get; init; }
        public string? Stage { get; init; }
    }

    private sealed record Crossing
    {
        public long ClientId { get; init; }
        public string Stage { get; init; } = "";
        public LocalDate OnDate { get; init; }
    }
}
