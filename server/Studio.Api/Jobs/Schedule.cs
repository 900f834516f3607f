using Hangfire;

namespace Studio.Api.Jobs;

/// <summary>
/// Every recurring job, with a stable id and an explicit zone. Hangfire only rings the bell: what is due is asked of our
/// own tables, so a missed bell is caught by the next one, and a night the clocks change has exactly one local midnight.
/// </summary>
public static class Schedule
{
    /// <summary>The id of the bell for the nights.</summary>
    public const string Nights = "nights";

    /// <summary>Registers the recurring jobs and rings once now.</summary>
    public static void Register(IRecurringJobManager recurring, IBackgroundJobClient background)
    {
        recurring.AddOrUpdate<NightSweep>(
            Nights,
            sweep => sweep.RunDueAsync(),
            "*/5 * * * *",
            new RecurringJobOptions { TimeZone = TimeZoneInfo.Utc }
        );
        background.Enqueue<NightSweep>(sweep => sweep.RunDueAsync());
    }
}
