using NodaTime;

namespace Studio.Core.Screenings;

/// <summary>"Has anything changed?": asked the day before and on the day of the first class of a week.</summary>
public static class WeeklyQuestion
{
    /// <summary>Whether she is asked on a day.</summary>
    /// <param name="today">The day, at her location.</param>
    /// <param name="classes">The dates of her booked classes, past and to come.</param>
    /// <param name="lastSaid">The last day on which she answered this, or the whole screening; null when never.</param>
    public static bool IsAsked(
        LocalDate today,
        IReadOnlyCollection<LocalDate> classes,
        LocalDate? lastSaid
    )
    {
        if (!classes.Any(on => on >= today))
            return false;
        var next = classes.Where(on => on >= today).Min();
        var eve = next.PlusDays(-1);
        return today >= eve
            && !classes.Any(on => on < next && MondayOf(on) == MondayOf(next))
            && !(lastSaid >= eve);
    }

    // ISO 8601: a week begins on Monday.
    private static LocalDate MondayOf(LocalDate day) =>
        day.PlusDays(-((int)day.DayOfWeek - (int)IsoDayOfWeek.Monday));
}
