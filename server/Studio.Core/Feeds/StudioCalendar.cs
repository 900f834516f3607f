using System.Text;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;

namespace Studio.Core.Feeds;

/// <summary>
/// Writes a calendar as RFC 5545 has it. The same entries always give the same text: nothing in it says when it was
/// asked for, so that whoever asks again can be told that nothing changed.
/// </summary>
public static class StudioCalendar
{
    private const int OctetsInALine = 75;

    /// <summary>The calendar's text, lines ended by CRLF and folded.</summary>
    /// <param name="name">What the calendar is called.</param>
    /// <param name="entries">Its entries.</param>
    /// <param name="home">The zone of an empty calendar, which must hold something (RFC 5545, 3.6).</param>
    /// <param name="now">The moment whose offset that zone then tells.</param>
    public static string Write(
        string name,
        IReadOnlyCollection<CalendarEntry> entries,
        DateTimeZone home,
        Instant now
    )
    {
        var calendar = new Calendar { ProductId = "-//Studio//Timetable//EN" };
        // RFC 7986, 5.1 and 5.7.
        calendar.AddProperty("NAME", Plain(name));
        var refresh = new CalendarProperty("REFRESH-INTERVAL", "PT1H");
        refresh.AddParameter("VALUE", "DURATION");
        calendar.Properties.Add(refresh);

        var zones = entries.Where(e => e.Zone != Utc).ToLookup(e => e.Zone);
        foreach (var zone in zones.OrderBy(z => z.Key, StringComparer.Ordinal))
            calendar.AddTimeZone(
                CalendarZones.Of(
                    DateTimeZoneProviders.Tzdb[zone.Key],
                    zone.Min(e => e.StartsAt),
                    zone.Max(e => e.EndsAt)
                )
            );
        if (entries.Count == 0)
            calendar.AddTimeZone(CalendarZones.Of(home, now, now));
        foreach (
            var entry in entries.OrderBy(e => e.StartsAt).ThenBy(e => e.Uid, StringComparer.Ordinal)
        )
            calendar.Events.Add(Event(entry));
        return Fold(new CalendarSerializer().SerializeToString(calendar)!);
    }

    private const string Utc = "UTC";

    private static CalendarEvent Event(CalendarEntry entry)
    {
        var zone = DateTimeZoneProviders.Tzdb[entry.Zone];
        return new CalendarEvent
        {
            Uid = entry.Uid,
            Sequence = (int)entry.Sequence,
            // Without a METHOD both say the same (3.8.7.2).
            DtStamp = Moment(entry.ChangedAt),
            LastModified = Moment(entry.ChangedAt),
            Start = Local(entry.StartsAt, zone),
            End = Local(entry.EndsAt, zone),
            Summary = Plain(entry.Summary),
            Location = Plain(entry.Place),
            Description = entry.About.Length == 0 ? null : Plain(entry.About),
            Class = "PRIVATE",
            Status = entry.State switch
            {
                EntryState.Confirmed => EventStatus.Confirmed,
                EntryState.Tentative => EventStatus.Tentative,
                EntryState.Cancelled => EventStatus.Cancelled,
            },
            Transparency =
                entry.State == EntryState.Confirmed
                    ? TransparencyType.Opaque
                    : TransparencyType.Transparent,
        };
    }

    private static CalDateTime Moment(Instant at) =>
        new(at.InUtc().LocalDateTime.ToDateTimeUnspecified(), Utc);

    // A local time that comes twice means the first time (3.3.5); the second can only be written in UTC.
    private static CalDateTime Local(Instant at, DateTimeZone zone)
    {
        var local = at.InZone(zone).LocalDateTime;
        return zone.Id == Utc || zone.MapLocal(local).First().ToInstant() != at
            ? Moment(at)
            : new CalDateTime(local.ToDateTimeUnspecified(), zone.Id);
    }

    // Text may hold no control characters (3.1); a line break would be one too many in a name.
    private static string Plain(string text) =>
        string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)).Trim();

    // Lines of 75 octets at most (3.1), never cut inside a character: whoever joins them octet by octet or letter by
    // letter reads the same.
    private static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length + 64);
        foreach (var line in text.ReplaceLineEndings("\n").Replace("\n ", "").Split('\n'))
        {
            if (line.Length == 0)
                continue;
            var octets = 0;
            foreach (var rune in line.EnumerateRunes())
            {
                if (octets + rune.Utf8SequenceLength > OctetsInALine)
                {
                    folded.Append("\r\n ");
                    octets = 1;
                }
                folded.Append(rune.ToString());
                octets += rune.Utf8SequenceLength;
            }
            folded.Append("\r\n");
        }
        return folded.ToString();
    }
}
