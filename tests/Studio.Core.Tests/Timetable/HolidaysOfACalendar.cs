using Studio.Core.Timetable;

namespace Studio.Core.Tests.Timetable;

/// <summary>What stands in a VEVENT of an all-day entry: RFC 5545, 3.6.1 (DTEND is the day after the last one).</summary>
public class HolidaysOfACalendar
{
    private static readonly LocalDate From = new(2027, 1, 1);
    private static readonly LocalDate To = new(2028, 12, 31);

    [Fact]
    public void Are_read_with_the_line_they_begin_on()
    {
        var read = Read(
            """
            BEGIN:VEVENT
            UID:1
            DTSTART;VALUE=DATE:20270101
            DTEND;VALUE=DATE:20270102
            SUMMARY:First of the year
            END:VEVENT
            BEGIN:VEVENT
            UID:2
            DTSTART;VALUE=DATE:20270802
            DTEND;VALUE=DATE:20270816
            SUMMARY:Two weeks of summer
            END:VEVENT
            BEGIN:VEVENT
            UID:3
            DTSTART;VALUE=DATE:20200425
            RRULE:FREQ=YEARLY
            SUMMARY:A day in April
            END:VEVENT
            BEGIN:VEVENT
            UID:4
            DTSTART;VALUE=DATE:20261231
            SUMMARY:Before it begins
            END:VEVENT
            BEGIN:VEVENT
            UID:5
            DTSTART;VALUE=DATE:20270610
            DURATION:P2D
            SUMMARY:Two days
            END:VEVENT
            """,
            out var refused
        );
        Assert.Empty(refused);
        Assert.Equal(
            [
                "4 2027-01-01 2027-01-01 First of the year",
                "16 2027-04-25 2027-04-25 A day in April",
                "27 2027-06-10 2027-06-11 Two days",
                "10 2027-08-02 2027-08-15 Two weeks of summer",
                "16 2028-04-25 2028-04-25 A day in April",
            ],
            read.Select(h => $"{h.Line} {h.From:uuuu-MM-dd} {h.To:uuuu-MM-dd} {h.Name}")
        );
    }

    [Theory]
    [InlineData("DTSTART;VALUE=DATE:20270101", "has no name")]
    [InlineData("SUMMARY:Nowhere", "has no day")]
    [InlineData("DTSTART:20270101T100000Z\nSUMMARY:Noon", "has a time of day")]
    [InlineData(
        "DTSTART;VALUE=DATE:20270105\nDTEND;VALUE=DATE:20270101\nSUMMARY:Backwards",
        "ends before it begins"
    )]
    [InlineData(
        "DTSTART;VALUE=DATE:20270105\nDTEND;VALUE=DATE:20290101\nSUMMARY:Ages",
        "more than 366 days"
    )]
    [InlineData(
        "DTSTART;VALUE=DATE:20270105\nRRULE:FREQ=HOURLY\nSUMMARY:Hourly",
        "repeats within a day"
    )]
    public void Say_on_which_line_they_cannot_be_read(string entry, string because)
    {
        Assert.Empty(
            Read(
                $"""
                BEGIN:VEVENT
                UID:1
                {entry}
                END:VEVENT
                """,
                out var refused
            )
        );
        var one = Assert.Single(refused);
        Assert.Equal(4, one.Line);
        Assert.Contains(because, one.Reason);
    }

    [Theory]
    [InlineData("")]
    [InlineData("date,name\n2027-01-01,First of the year")]
    [InlineData("BEGIN:VCALENDAR\nBEGIN:VEVENT\nDTSTART;VALUE=DATE:2027")]
    [InlineData("BEGIN:VCALENDAR\nEND:VCALENDAR")]
    [InlineData("END:VCALENDAR")]
    public void A_file_that_is_none_is_refused(string text)
    {
        var refused = new List<HolidayRefused>();
        Assert.Empty(HolidayFile.Read(text, From, To, refused));
        Assert.NotEmpty(refused);
    }

    private static IReadOnlyList<HolidayRead> Read(string entries, out List<HolidayRefused> refused)
    {
        refused = [];
        return HolidayFile.Read(
            $"BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:-//Saltmarsh//Days//EN\n{entries}\nEND:VCALENDAR\n",
            From,
            To,
            refused
        );
    }
}
