using System.Globalization;
using System.Text;
using CsCheck;
using NodaTime.Text;
using Studio.Core.Feeds;

namespace Studio.Core.Tests.Feeds;

/// <summary>Held against RFC 5545 line by line, by a reading that shares nothing with what writes.</summary>
public class ACalendarWritten
{
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 2, 9, 0);

    [Theory]
    [InlineData("Core; and, more\\than that: \"quoted\"")]
    [InlineData("Line\r\nBEGIN:VEVENT\r\nSUMMARY:Sneaked in")]
    [InlineData("Bell\u0007, null\0, tab\t, delete\u007f and next line\u0085")]
    [InlineData("ends with a backslash \\")]
    [InlineData("\\n is not a line break here")]
    [InlineData(
        "É😀 äöü ẞ 日本語のクラス 👩🏽‍🍼 ééééééééééééééééééééééééééééééééééééééééééééééééééééééé😀😀😀😀😀😀😀😀😀😀"
    )]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa 😀 b   c")]
    [InlineData("Half of a pair: \ud83d")]
    public void Holds_to_the_standard_whatever_a_name_is(string name)
    {
        var (calendar, _) = Read(
            [Entry() with { Summary = name, Place = name, About = name }],
            name
        );
        var told = calendar.Of("VEVENT").Single();
        var meant = string.Concat(name.Select(c => char.IsControl(c) ? ' ' : c)).Trim();
        meant = Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(meant));
        foreach (var field in new[] { "SUMMARY", "LOCATION", "DESCRIPTION" })
            Assert.Equal(meant, Rfc5545.Unescape(told.Value(field)));
        Assert.Equal(meant, Rfc5545.Unescape(calendar.Value("NAME")));
    }

    [Fact]
    public void Holds_to_the_standard_for_any_text() =>
        Gen.String.Sample(
            name => Read([Entry() with { Summary = name, Place = name }], name),
            iter: 300
        );

    // RFC 5545, 3.6: an object holds at least one component.
    [Fact]
    public void Is_valid_when_there_is_nothing_in_it()
    {
        var (calendar, _) = Read([]);
        Assert.Empty(calendar.Of("VEVENT"));
        Assert.Equal("Europe/Lisbon", calendar.Of("VTIMEZONE").Single().Value("TZID"));
    }

    [Fact]
    public void Is_the_same_however_often_it_is_asked_for() =>
        Assert.Equal(Text([Entry()], Now), Text([Entry()], Now + Duration.FromDays(1)));

    [Theory]
    [InlineData(EntryState.Confirmed, "CONFIRMED", "OPAQUE")]
    [InlineData(EntryState.Tentative, "TENTATIVE", "TRANSPARENT")]
    [InlineData(EntryState.Cancelled, "CANCELLED", "TRANSPARENT")]
    public void Says_how_an_entry_stands(EntryState state, string status, string busy)
    {
        var told = Read([Entry() with { State = state, Sequence = 4 }])
            .Calendar.Of("VEVENT")
            .Single();
        Assert.Equal(status, told.Value("STATUS"));
        Assert.Equal(busy, told.Value("TRANSP"));
        Assert.Equal("4", told.Value("SEQUENCE"));
        Assert.Equal("PRIVATE", told.Value("CLASS"));
        Assert.Equal("20260301T101112Z", told.Value("LAST-MODIFIED"));
        Assert.Equal("20260301T101112Z", told.Value("DTSTAMP"));
    }

    // Each local time, read by the calendar's own VTIMEZONE as 3.6.5 says, is the moment it was written for. The moments
    // and zones come from the IANA data, with changes of the clock in the span, and with the hour that comes twice.
    [Theory]
    [InlineData("Europe/Lisbon", 2026, "Europe's change of clocks")]
    [InlineData("America/New_York", 2026, "on other days than Europe's")]
    [InlineData("Australia/Lord_Howe", 2026, "by half an hour")]
    [InlineData("Pacific/Auckland", 2026, "where summer is in January")]
    [InlineData("Africa/Casablanca", 2026, "where Ramadan has a time of its own")]
    [InlineData("Asia/Kolkata", 2026, "no change at all, half an hour off")]
    [InlineData("Europe/Dublin", 2026, "where winter is the exception")]
    [InlineData("UTC", 2026, "no zone at all")]
    [InlineData("Africa/Monrovia", 2026, "an offset that once had seconds")]
    public void Tells_every_hour_of_two_years(string zone, int year, string because)
    {
        var from = Instant.FromUtc(year, 1, 1, 0, 0);
        var entries = Enumerable
            .Range(0, 2 * 365 * 2)
            .Select(i => from + Duration.FromMinutes((i * 12 * 60) + (i * 7 % 720)))
            .Concat(
                DateTimeZoneProviders
                    .Tzdb[zone]
                    .GetZoneIntervals(from, from + Duration.FromDays(720))
                    .Where(i => i.HasEnd && i.End < from + Duration.FromDays(730))
                    .SelectMany(i =>
                        new[] { -90, -60, -30, -1, 0, 1, 29, 30, 59, 60, 90 }.Select(m =>
                            i.End + Duration.FromMinutes(m)
                        )
                    )
            )
            .Distinct()
            .Select(
                (at, i) =>
                    Entry() with
                    {
                        Uid = $"{i}",
                        Zone = zone,
                        StartsAt = at,
                        EndsAt = at + Duration.FromMinutes(50),
                    }
            )
            .ToList();
        var (calendar, _) = Read(entries);
        var told = calendar.Of("VEVENT").ToDictionary(e => e.Value("UID"));
        var zones = calendar.Of("VTIMEZONE").ToDictionary(z => z.Value("TZID"));
        foreach (var entry in entries)
        foreach (var (name, at) in new[] { ("DTSTART", entry.StartsAt), ("DTEND", entry.EndsAt) })
        {
            var (_, with, value) = told[entry.Uid].Properties.Single(p => p.Name == name);
            var read = with.TryGetValue("TZID", out var id)
                ? ByItsOwnRules(zones[id], value)
                : Moment(value);
            Assert.True(at == read, $"{because}: {zone} {name} {value} is {read}, not {at}");
        }
    }

    [Fact]
    public void Knows_each_zone_it_names_once()
    {
        var (calendar, _) = Read([
            Entry() with
            {
                Uid = "a",
                Zone = "Europe/Lisbon",
            },
            Entry() with
            {
                Uid = "b",
                Zone = "America/New_York",
            },
            Entry() with
            {
                Uid = "c",
                Zone = "Europe/Lisbon",
                StartsAt = Now + Duration.FromDays(40),
                EndsAt = Now + Duration.FromDays(41),
            },
        ]);
        Assert.Equal(
            ["America/New_York", "Europe/Lisbon"],
            calendar.Of("VTIMEZONE").Select(z => z.Value("TZID"))
        );
    }

    // 3.6.5: the observance in force is that with the latest onset before the time; 3.3.5: a time that comes twice is the
    // first, one that never comes is read by the offset before the gap.
    private static Instant ByItsOwnRules(Rfc5545.Component zone, string local)
    {
        var wanted = Local(local);
        var onsets = zone
            .Inside.Select(o =>
                (
                    At: Local(o.Value("DTSTART"))
                        .Minus(Period.FromSeconds(Seconds(o.Value("TZOFFSETFROM")))),
                    To: Seconds(o.Value("TZOFFSETTO"))
                )
            )
            .OrderBy(o => o.At)
            .ToList();
        return onsets
            .Select(
                (o, i) =>
                    (
                        Utc: wanted.Minus(Period.FromSeconds(o.To)),
                        From: o.At,
                        Until: i + 1 < onsets.Count ? onsets[i + 1].At : LocalDateTime.MaxIsoValue
                    )
            )
            .First(c => c.Utc >= c.From && c.Utc < c.Until)
            .Utc.InUtc()
            .ToInstant();
    }

    private static LocalDateTime Local(string text) =>
        LocalDateTimePattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmss").Parse(text).Value;

    private static Instant Moment(string text) => Local(text[..^1]).InUtc().ToInstant();

    private static int Seconds(string offset)
    {
        var digits = offset[1..].PadRight(6, '0');
        var seconds =
            (int.Parse(digits[..2], CultureInfo.InvariantCulture) * 3600)
            + (int.Parse(digits[2..4], CultureInfo.InvariantCulture) * 60)
            + int.Parse(digits[4..], CultureInfo.InvariantCulture);
        return offset[0] == '-' ? -seconds : seconds;
    }

    private static (Rfc5545.Component Calendar, string Text) Read(
        IReadOnlyCollection<CalendarEntry> entries,
        string name = "Classes at Saltmarsh studio"
    )
    {
        var text = Text(entries, Now, name);
        var (calendar, wrong) = Rfc5545.Read(Encoding.UTF8.GetBytes(text));
        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Take(5)));
        return (calendar!, text);
    }

    private static string Text(
        IReadOnlyCollection<CalendarEntry> entries,
        Instant now,
        string name = "Classes at Saltmarsh studio"
    ) => StudioCalendar.Write(name, entries, DateTimeZoneProviders.Tzdb["Europe/Lisbon"], now);

    private static CalendarEntry Entry() =>
        new()
        {
            Uid = "0193f7a0-0000-8000-8000-000000000001",
            Sequence = 0,
            ChangedAt = Instant.FromUtc(2026, 3, 1, 10, 11, 12),
            StartsAt = Now + Duration.FromHours(9),
            EndsAt = Now + Duration.FromHours(10),
            Zone = "Europe/Lisbon",
            Summary = "Class at Saltmarsh studio",
            Place = "Garden room, Quay house",
            State = EntryState.Confirmed,
        };
}
