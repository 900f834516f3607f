using Ical.Net.DataTypes;
using Ical.Net.Evaluation;
using NodaTime;

namespace Studio.Core.Timetable;

/// <summary>
/// Expands a recurrence rule of RFC 5545 (3.3.10) by the wall clock: the hour stays, whatever the zone's clocks do. The
/// start itself is an instance only where the rule gives it, as an EXDATE on a start outside its rule presumes (3.8.5.1).
/// </summary>
public static class Recurrence
{
    // The longest wait there can be for a rule over dates: a 29 February asked for day by day, across a year such as 2100.
    private const int MostInVain = 3000;

    /// <summary>
    /// The instances up to a last moment on the wall, in order, none twice. What a rule can never give ends the search:
    /// nothing runs away, however odd the rule.
    /// </summary>
    /// <param name="rule">The rule's text, without a name; UNTIL with a Z is a moment in UTC.</param>
    /// <param name="start">DTSTART on the wall.</param>
    /// <param name="zone">The zone of the wall; only an UNTIL in UTC needs it.</param>
    /// <param name="last">The last moment that is of interest.</param>
    /// <exception cref="ArgumentException">The rule cannot be read.</exception>
    public static IEnumerable<LocalDateTime> Instances(
        string rule,
        LocalDateTime start,
        DateTimeZone zone,
        LocalDateTime last
    )
    {
        var pattern = new RecurrenceRule(rule);
        if (pattern.Until is { } until)
        {
            // Compared on the wall, as everything else here is.
            var wall = LocalDateTime.FromDateTime(until.Value);
            if (until.IsUtc)
                wall = wall.InUtc().ToInstant().InZone(zone).LocalDateTime;
            else if (!until.HasTime)
                wall = wall.Date.At(LocalTime.MaxValue);
            if (wall < last)
                last = wall;
            pattern.Until = null;
        }

        var first = new CalDateTime(start.ToDateTimeUnspecified());
        var options = new EvaluationOptions { MaxUnmatchedIncrementsLimit = MostInVain };
        LocalDateTime? before = null;
        using var found = new RecurrencePatternEvaluator(pattern)
            .Evaluate(first, first, options)
            .GetEnumerator();
        while (Next(found))
        {
            var instance = LocalDateTime.FromDateTime(found.Current.StartTime.Value);
            if (instance > last)
                yield break;
            if (instance < start || instance <= before)
                continue;
            before = instance;
            yield return instance;
        }
    }

    /// <summary>
    /// The moment of a wall-clock time. One that the clock skips is read with the offset before the gap, so 02:30 becomes
    /// 03:30; one that the clock shows twice is the first of the two (RFC 5545, 3.3.5). The standard's other sentence, that
    /// such instances be ignored (3.3.10), is not followed: a class is never dropped without a word.
    /// </summary>
    public static ZonedDateTime On(this DateTimeZone zone, LocalDateTime wall) =>
        zone.AtLeniently(wall);

    private static bool Next(IEnumerator<Ical.Net.DataTypes.Period> found)
    {
        try
        {
            return found.MoveNext();
        }
        catch (EvaluationException)
        {
            // No instance for so long that there is none, or none before the calendar ends.
            return false;
        }
    }
}
