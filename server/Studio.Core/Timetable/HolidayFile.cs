using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using NodaTime;
using Calendar = Ical.Net.Calendar;

namespace Studio.Core.Timetable;

/// <summary>Days read from a file.</summary>
/// <param name="Line">The line in the file it comes from.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Name">Its name.</param>
public sealed record HolidayRead(int Line, LocalDate From, LocalDate To, string Name);

/// <summary>An entry that cannot be taken.</summary>
/// <param name="Line">The line in the file it begins on.</param>
/// <param name="Reason">What is wrong and what would be right.</param>
public sealed record HolidayRefused(int Line, string Reason);

/// <summary>Reads public holidays from an iCalendar file (RFC 5545).</summary>
public static class HolidayFile
{
    private const int MostDays = 366;
    private const int MostEntries = 2000;

    /// <summary>The days of a calendar that fall into a range; a holiday that repeats stands once for each time.</summary>
    /// <param name="text">The file.</param>
    /// <param name="from">First day that is of interest.</param>
    /// <param name="to">Last day.</param>
    /// <param name="refused">Takes the entries that cannot be read.</param>
    public static IReadOnlyList<HolidayRead> Read(
        string text,
        LocalDate from,
        LocalDate to,
        List<HolidayRefused> refused
    )
    {
        Calendar? calendar;
        try
        {
            calendar = Calendar.Load(text);
        }
        catch (Exception broken)
            when (broken
                    is FormatException
                        or ArgumentException
                        or System.Runtime.Serialization.SerializationException
                        or InvalidOperationException
            )
        {
            calendar = null;
        }

        if (calendar is null)
        {
            refused.Add(
                new(
                    1,
                    "This is no iCalendar file, or it is damaged: it begins with BEGIN:VCALENDAR and ends with END:VCALENDAR."
                )
            );
            return [];
        }

        var lines = LinesOf(text);
        var events = calendar.Events.ToList();
        if (events.Count == 0)
            refused.Add(new(1, "The calendar has no days in it (no VEVENT)."));
        if (events.Count > MostEntries)
        {
            refused.Add(
                new(1, $"The calendar has more than {MostEntries} entries. Please split it.")
            );
            return [];
        }

        var read = new List<HolidayRead>();
        for (var i = 0; i < events.Count; i++)
        {
            var line = i < lines.Count ? lines[i] : 1;
            if (WhyNot(events[i]) is { } reason)
                refused.Add(new(line, reason));
            else
                read.AddRange(DaysOf(events[i], line, from, to, refused));
        }

        return [.. read.OrderBy(h => h.From).ThenBy(h => h.Line)];
    }

    private static string? WhyNot(CalendarEvent entry)
    {
        if (string.IsNullOrWhiteSpace(entry.Summary))
            return "This entry has no name (SUMMARY).";
        if (entry.DtStart is null)
            return $"{entry.Summary.Trim()} has no day (DTSTART).";
        if (entry.DtStart.HasTime)
            return $"{entry.Summary.Trim()} has a time of day; a day on which a location is shut is written as a date alone (DTSTART;VALUE=DATE).";
        if (entry.Properties.Count(p => p.Name == "RRULE") > 1)
            return $"{entry.Summary.Trim()} has more than one rule (RRULE); write it as two entries.";
        var days = LengthOf(entry);
        return days is < 1 or > MostDays
            ? $"{entry.Summary.Trim()} ends before it begins, or lasts for more than {MostDays} days."
            : null;
    }

    private static List<HolidayRead> DaysOf(
        CalendarEvent entry,
        int line,
        LocalDate from,
        LocalDate to,
        List<HolidayRefused> refused
    )
    {
        var start = Day(entry.DtStart!);
        var name = entry.Summary!.Trim();
        var length = LengthOf(entry);
        List<LocalDate> starts = [start];
        if (entry.RecurrenceRule is { } rule)
        {
            if (
                !SeriesRule
                    .Read(rule.ToString() ?? "", LocalTime.Midnight, DateTimeZone.Utc)
                    .TryGet(out var repeats, out var refusal)
            )
            {
                refused.Add(new(line, $"{name}: {refusal.Message}"));
                return [];
            }

            starts =
            [
                .. repeats.Dates(start, from.PlusDays(-length), to).Prepend(start).Distinct(),
            ];
        }

        starts.AddRange(entry.RecurrenceDates.GetAllPeriods().Select(p => Day(p.StartTime)));
        var left = entry.ExceptionDates.GetAllDates().Select(Day).ToHashSet();
        return
        [
            .. starts
                .Distinct()
                .Where(d => !left.Contains(d))
                .Select(d => new HolidayRead(line, d, d.PlusDays(length - 1), name))
                .Where(h => h.To >= from && h.From <= to),
        ];
    }

    // DTEND is the day after the last one (RFC 5545, 3.6.1); without it a date is one day.
    private static int LengthOf(CalendarEvent entry) =>
        entry.DtEnd is { } end
            ? Math.Max(
                NodaTime.Period.DaysBetween(Day(entry.DtStart!), Day(end)),
                end.Value == entry.DtStart!.Value ? 1 : int.MinValue
            )
        : entry.Duration is { } lasts ? (lasts.Weeks ?? 0) * 7 + (lasts.Days ?? 0)
        : 1;

    private static LocalDate Day(CalDateTime date) => new(date.Year, date.Month, date.Day);

    private static List<int> LinesOf(string text) =>
        [
            .. text.Split('\n')
                .Select((words, index) => (Words: words.Trim(), Line: index + 1))
                .Where(l => l.Words.Equals("BEGIN:VEVENT", StringComparison.OrdinalIgnoreCase))
                .Select(l => l.Line),
        ];
}
