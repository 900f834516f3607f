using NodaTime;
using Studio.Api.Data;

namespace Studio.Api.Jobs;

/// <summary>That a job ran.</summary>
public sealed record JobRun
{
    /// <summary>Which job.</summary>
    public string Job { get; init; } = "";

    /// <summary>For which zone's night.</summary>
    public string Zone { get; init; } = "";

    /// <summary>For which local date.</summary>
    public LocalDate ForDate { get; init; }

    /// <summary>When.</summary>
    public Instant RanAt { get; init; }

    /// <summary>The owner ran it by hand.</summary>
    public bool ByHand { get; init; }

    /// <summary>How much it changed.</summary>
    public int Changed { get; init; }

    /// <summary>What it did, in words.</summary>
    public string Result { get; init; } = "";
}

/// <summary>Records of job runs.</summary>
public static class JobRunStore
{
    /// <summary>Whether the night of that date was run for a zone.</summary>
    public static async Task<bool> RanAsync(Read read, string zone, LocalDate forDate) =>
        await read.ValueAsync<long>(
            """
            select count(*) from job_runs
             where zone = @zone and for_date >= @forDate and by_hand = 0 and job = 'flags'
            """,
            new { zone, forDate }
        ) > 0;

    /// <summary>Records a run.</summary>
    public static Task AddAsync(Write write, JobRun run) =>
        write.ExecuteAsync(
            """
            insert into job_runs (job, zone, for_date, ran_at, by_hand, changed, result)
            values (@Job, @Zone, @ForDate, @RanAt, @ByHand, @Changed, @Result)
            """,
            run
        );

    /// <summary>The latest runs of a job, newest first.</summary>
    public static Task<List<JobRun>> LatestAsync(Read read, string job, int most) =>
        read.ListAsync<JobRun>(
            """
            select job, zone, for_date as ForDate, ran_at as RanAt, by_hand as ByHand, changed, result
              from job_runs where job = @job order by id desc limit @most
            """,
            new { job, most }
        );
}
