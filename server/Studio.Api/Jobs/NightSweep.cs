using NodaTime;
using Studio.Api.Cover;
using Studio.Api.Data;
using Studio.Api.Erasures;
using Studio.Api.Messages;
using Studio.Api.Rosters;
using Studio.Api.Studios;

namespace Studio.Api.Jobs;

/// <summary>
/// What happens once after each local midnight: everybody at that zone's locations is moved on, series are laid out, suggestions are made,
/// flags are settled, those whose page needs them are told, what was kept of former clients for a time is erased. Asks the tables which nights are due and not done, so it may run as often as it likes.
/// </summary>
public sealed class NightSweep(
    Database database,
    AdvanceSweep advance,
    MovesSweep moves,
    SeriesSweep series,
    FlagSweep flags,
    ErasureSweep erase,
    ErasedFiles files,
    AskSweep asks,
    Covers covers,
    StudioStore studio,
    IClock clock
)
{
    /// <summary>Runs the nights that are due; how many zones had one.</summary>
    public async Task<int> RunDueAsync()
    {
        var done = 0;
        foreach (var zone in await ZonesAsync())
        {
            await using var write = await database.BeginWriteAsync();
            var today = studio.Today(zone);
            if (await JobRunStore.RanAsync(write, zone, today))
                continue;
            await RecordAsync(write, "advance", zone, today, byHand: false);
            await RecordAsync(write, "timetable", zone, today, byHand: false);
            await RecordAsync(write, "moves", zone, today, byHand: false);
            await RecordAsync(write, "erase", zone, today, byHand: false);
            await RecordAsync(write, "flags", zone, today, byHand: false);
            await asks.ZoneAsync(write, zone, today);
            // Keys are replaced by themselves every 90 days; what they seal follows in the night.
            await Sealing.RunAsync(write);
            await write.CommitAsync();
            done++;
        }

        // At every bell, nights or not: a session that nobody teaches comes near at its own hour, not at midnight.
        await using (var write = await database.BeginWriteAsync())
        {
            await covers.SweepAsync(write);
            await write.CommitAsync();
        }

        // At every bell, nights or not: a file that could not be deleted, or a stop in between, is caught up here.
        await files.RemoveAsync();
        if (done > 0)
            await database.EmptyLogAsync();
        return done;
    }

    /// <summary>Runs one job now, for every zone; null when there is no such job.</summary>
    public async Task<JobRun?> RunByHandAsync(string job)
    {
        if (JobList.Find(job) is null)
            return null;
        JobRun? last = null;
        await using var write = await database.BeginWriteAsync();
        foreach (
            var zone in job is "advance" or "erase" or "timetable"
                ? await ZonesAsync()
                : [(await ZonesAsync())[0]]
        )
            last = await RecordAsync(write, job, zone, studio.Today(zone), byHand: true);
        await write.CommitAsync();
        if (job == "erase")
            await files.RemoveAsync();
        return last;
    }

    private async Task<JobRun> RecordAsync(
        Write write,
        string job,
        string zone,
        LocalDate today,
        bool byHand
    )
    {
        var changed = job switch
        {
            "advance" => await advance.ZoneAsync(write, zone, today),
            "timetable" => await series.ZoneAsync(write, zone),
            "moves" => await moves.AllAsync(write),
            "erase" => await erase.ZoneAsync(write, zone, today),
            _ => await flags.AllAsync(write),
        };
        var run = new JobRun
        {
            Job = job,
            Zone = zone,
            ForDate = today,
            RanAt = clock.GetCurrentInstant(),
            ByHand = byHand,
            Changed = changed,
            Result = JobList.Result(job, changed),
        };
        await JobRunStore.AddAsync(write, run);
        write.Tell("jobs");
        return run;
    }

    private async Task<List<string>> ZonesAsync()
    {
        await using var read = await database.ReadAsync();
        return await read.ListAsync<string>(
            "select zone from locations group by zone order by min(id)"
        );
    }
}
