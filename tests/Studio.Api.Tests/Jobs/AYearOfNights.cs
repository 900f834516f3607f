using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Jobs;
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
        var stages = StudioApp.Book.Stages;
        await using var scope = app.Services.CreateAsyncScope();
        var advance = scope.ServiceProvider.GetRequiredService<AdvanceSweep>();
        await using var write = await app.Services.GetRequiredService<Database>().BeginWriteAsync();
        // Nobody enters anything in this year: what is known of everybody stays as it was loaded.
        var hers = await SituationStore.OfAsync(write, null);
        var zones = await write.ListAsync<string>("select distinct zone from locations");
        Assert.True(hers.Count > 200 && zones.Count > 1, "the demo has many clients in two zones");
        var crossings = 0;
        for (var today = app.Today; today <= app.Today.PlusDays(365); today = today.PlusDays(1))
        {
            foreach (var zone in zones)
                await advance.ZoneAsync(write, zone, today);
            var rows = await write.ListAsync<Row>(
                """
                select c.id as ClientId, p.gestational_day as GestationalDay, p.stage
                  from clients c left join pregnancies p on p.client_id = c.id and p.is_current = 1
                """
            );
            Assert.Equal(hers.Count, rows.Count);
            foreach (var row in rows)
            {
                var should = stages.On(hers[row.ClientId].Pregnancy, today);
                Assert.True(
                    (should.Age?.Days, should.Stage?.Code) == (row.GestationalDay, row.Stage),
                    $"client {row.ClientId} on {today}: {row.GestationalDay} {row.Stage}, not {should}"
                );
            }

            crossings = await CompareCrossings(write, stages, hers, today);
        }

        Assert.True(crossings > 200, $"{crossings} crossings");
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
        Write write,
        StageScheme stages,
        IReadOnlyDictionary<long, HerSituation> hers,
        LocalDate today
    )
    {
        var should =
            from her in hers
            where her.Value.Pregnancy is { EndedOn: null }
            from band in stages.Bands(her.Value.Pregnancy!)
            where band.From <= today
            where band.Stage is not { CountsFrom: StageCount.Pregnancy, FromDay: 0 }
            select (her.Key, band.Stage.Code, band.From);
        var are = (
            await write.ListAsync<Crossing>(
                """
                select p.client_id as ClientId, s.stage, s.on_date as OnDate
                  from stage_changes s join pregnancies p on p.id = s.pregnancy_id
                """
            )
        ).ConvertAll(c => (c.ClientId, c.Stage, c.OnDate));
        Assert.True(are.ToHashSet().SetEquals(should), $"crossings up to {today}");
        return are.Count;
    }

    private sealed record Row
    {
        public long ClientId { get; init; }
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
