using Hangfire;
using Studio.Api.Http;
using Studio.Api.Messages;

namespace Studio.Api.Jobs;

/// <summary>
/// Every recurring job, with a stable id and an explicit zone. Hangfire only rings the bell: what is due is asked of our
/// own tables, so a missed bell is caught by the next one, and a night the clocks change has exactly one local midnight.
/// </summary>
public static class Schedule
{
    /// <summary>The id of the bell for the nights.</summary>
    public const string Nights = "nights";

    /// <summary>The id of the bell for messages.</summary>
    public const string Mail = "mail";

    /// <summary>
    /// Registers the recurring jobs and rings once now; for messages it rings as well whenever one was put.
    /// </summary>
    public static void Register(
        IRecurringJobManager recurring,
        IBackgroundJobClient background,
        Live live
    )
    {
        recurring.AddOrUpdate<NightSweep>(
            Nights,
            sweep => sweep.RunDueAsync(),
            "*/5 * * * *",
            new RecurringJobOptions { TimeZone = TimeZoneInfo.Utc }
        );
        background.Enqueue<NightSweep>(sweep => sweep.RunDueAsync());
        recurring.AddOrUpdate<MailSweep>(
            Mail,
            sweep => sweep.RunDueAsync(),
            "*/5 * * * *",
            new RecurringJobOptions { TimeZone = TimeZoneInfo.Utc }
        );
        background.Enqueue<MailSweep>(sweep => sweep.RunDueAsync());
        live.Hear(change =>
        {
            if (change.Topic == Outbox.Topic)
                background.Enqueue<MailSweep>(sweep => sweep.RunDueAsync());
        });
    }
}
