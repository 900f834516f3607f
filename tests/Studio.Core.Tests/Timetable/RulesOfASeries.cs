using CsCheck;
using Studio.Core.Tests.Pregnancies;
using Studio.Core.Timetable;

namespace Studio.Core.Tests.Timetable;

public class RulesOfASeries
{
    private static readonly LocalDate Start = new(2026, 12, 1); // a Tuesday
    private static readonly LocalTime Six = new(18, 0);
    private static readonly DateTimeZone Lisbon = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];

    [Theory]
    [InlineData("FREQ=WEEKLY;BYDAY=TU", "Every Tuesday at 18:00")]
    [InlineData("FREQ=WEEKLY", "Every Tuesday at 18:00")]
    [InlineData(
        "RRULE:FREQ=WEEKLY;INTERVAL=2;BYDAY=TU,TH;UNTIL=20270304",
        "Every second Tuesday and Thursday at 18:00 until 4 March 2027"
    )]
    [InlineData(
        "freq=weekly;byday=th,mo,we;count=12",
        "Every Monday, Wednesday and Thursday at 18:00, 12 times"
    )]
    [InlineData("FREQ=WEEKLY;INTERVAL=3;BYDAY=SA", "Every 3 weeks on Saturday at 18:00")]
    [InlineData("FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR,SA,SU", "Every day of the week at 18:00")]
    [InlineData("FREQ=DAILY", "Every day at 18:00")]
    [InlineData("FREQ=DAILY;INTERVAL=2;COUNT=1", "Every second day at 18:00, once")]
    [InlineData("FREQ=DAILY;INTERVAL=10", "Every 10 days at 18:00")]
    [InlineData("FREQ=DAILY;BYMONTH=1", "Every day in January at 18:00")]
    [InlineData("FREQ=MONTHLY", "On the 1st of every month at 18:00")]
    [InlineData("FREQ=MONTHLY;BYDAY=1TU", "On the first Tuesday of every month at 18:00")]
    [InlineData(
        "FREQ=MONTHLY;INTERVAL=2;BYDAY=-1FR,2MO",
        "On the last Friday and the second Monday of every second month at 18:00"
    )]
    [InlineData(
        "FREQ=MONTHLY;BYMONTHDAY=15,-1",
        "On the 15th and last day of every month at 18:00"
    )]
    [InlineData(
        "FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13",
        "On the 13th, when it is a Friday, of every month at 18:00"
    )]
    [InlineData(
        "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2",
        "The second last of these in each month: on every Monday, Tuesday, Wednesday, Thursday and Friday of every month at 18:00"
    )]
    [InlineData("FREQ=YEARLY", "On the 1st of December, every year at 18:00")]
    [InlineData(
        "FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3",
        "On the 2nd and 3rd, when it is a Tuesday, of November, every 4 years at 18:00"
    )]
    [InlineData("FREQ=YEARLY;BYDAY=20MO", "On the 20th Monday of every year at 18:00")]
    [InlineData("FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO", "On Monday of week 20 of every year at 18:00")]
    [InlineData("FREQ=YEARLY;BYYEARDAY=1,100", "On day 1 and 100 of every year at 18:00")]
    public void Are_told_in_words(string rule, string words) =>
        Assert.Equal(words, RuleWords.Of(Rule(rule), Start, Six));

    [Theory]
    [InlineData("", "FREQ is missing")]
    [InlineData("Tuesdays", "is not a part of a rule")]
    [InlineData("FREQ=WEEKLY;BYDAY", "is not a part of a rule")]
    [InlineData("FREQ=WEEKLY;FREQ=DAILY", "FREQ stands in the rule twice")]
    [InlineData("FREQ=FORTNIGHTLY", "it is DAILY, WEEKLY, MONTHLY or YEARLY")]
    [InlineData("FREQ=2", "it is DAILY, WEEKLY, MONTHLY or YEARLY")]
    [InlineData("FREQ=WEEKLY;INTERVAL=0", "a number from 1 to 366")]
    [InlineData("FREQ=WEEKLY;COUNT=1001", "a number from 1 to 1000")]
    [InlineData("FREQ=WEEKLY;COUNT=3;UNTIL=20270101", "do not stand together")]
    [InlineData("FREQ=WEEKLY;UNTIL=20270230", "is no date")]
    [InlineData("FREQ=WEEKLY;BYDAY=XX", "is no weekday")]
    [InlineData("FREQ=WEEKLY;BYDAY=1TU", "only in a monthly rule")]
    [InlineData("FREQ=YEARLY;BYWEEKNO=3;BYDAY=1TU", "only in a monthly rule")]
    [InlineData("FREQ=WEEKLY;BYMONTHDAY=1", "does not stand in a weekly rule")]
    [InlineData("FREQ=MONTHLY;BYWEEKNO=1", "only in a yearly rule")]
    [InlineData("FREQ=MONTHLY;BYYEARDAY=1", "only in a yearly rule")]
    [InlineData("FREQ=MONTHLY;BYMONTHDAY=32", "from 1 to 31, or from -31 to -1")]
    [InlineData("FREQ=MONTHLY;BYMONTH=-1", "from 1 to 12")]
    [InlineData("FREQ=MONTHLY;BYSETPOS=1", "there is none")]
    [InlineData("FREQ=WEEKLY;WKST=1", "it is MO to SU")]
    [InlineData("FREQ=WEEKLY;X-OWN=1", "no part of a rule of RFC 5545")]
    public void Say_what_is_wrong_with_them(string rule, string because)
    {
        Assert.False(SeriesRule.Read(rule, Six, Lisbon).TryGet(out _, out var refusal));
        Assert.Equal("rule", refusal!.Field);
        Assert.Contains(because, refusal.Message);
    }

    [Fact]
    public void A_rule_as_long_as_a_book_is_refused() =>
        Assert.False(
            SeriesRule
                .Read("FREQ=DAILY;BYMONTHDAY=" + string.Join(',', new int[2000]), Six, Lisbon)
                .TryGet(out _, out _)
        );

    [Theory]
    [InlineData("20270304", "2027-03-04", "a date is its whole day")]
    [InlineData("20270304T180000Z", "2027-03-04", "18:00 in Lisbon in winter, which is UTC")]
    [InlineData("20270304T175959Z", "2027-03-03", "a second before the class begins")]
    [InlineData("20270704T170000Z", "2027-07-04", "18:00 in Lisbon in summer")]
    [InlineData("20270704T165959Z", "2027-07-03", "a second before it")]
    [InlineData("20270304T180000", "2027-03-04", "on the wall")]
    [InlineData("20270304T120000", "2027-03-03", "on the wall, before the class begins")]
    public void An_end_with_a_time_is_the_last_date_whose_class_begins_by_then(
        string until,
        string last,
        string because
    ) => Assert.True(Day(last) == Rule($"FREQ=DAILY;UNTIL={until}").Until, because);

    [Fact]
    public void What_never_comes_gives_no_date_and_does_not_run_away()
    {
        foreach (
            var never in new[]
            {
                "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30",
                "FREQ=DAILY;BYMONTH=2;BYMONTHDAY=31",
                "FREQ=MONTHLY;INTERVAL=12;BYMONTH=5;BYDAY=MO",
                "FREQ=MONTHLY;BYDAY=MO;BYSETPOS=6",
                "FREQ=WEEKLY;UNTIL=20200101",
            }
        )
        {
            Assert.Null(Rule(never).First(Start));
            Assert.Empty(Rule(never).Dates(Start, Start, Start.PlusYears(500)));
        }
    }

    [Fact]
    public void A_leap_day_asked_for_day_by_day_is_found() =>
        Assert.Equal(
            [new LocalDate(2096, 2, 29), new LocalDate(2104, 2, 29)],
            Rule("FREQ=DAILY;BYMONTH=2;BYMONTHDAY=29")
                .Dates(new(2096, 1, 1), new(2096, 1, 1), new(2105, 1, 1))
        );

    [Fact]
    public void Every_n_weeks_on_some_days_is_what_counting_days_gives() =>
        Gen.Select(Gen.Int[0, 6], Gen.Int[1, 4], Gen.Int[1, 127])
            .Sample(
                (offset, every, days) =>
                {
                    var start = Start.PlusDays(offset);
                    var monday = TimetableChecks.WeekOf(start);
                    var counted = Enumerable
                        .Range(0, 120)
                        .Select(n => start.PlusDays(n))
                        .Where(d =>
                            (days & (1 << ((int)d.DayOfWeek - 1))) != 0
                            && Period.DaysBetween(monday, d) / 7 % every == 0
                        );
                    Assert.Equal(
                        counted,
                        Weekly(every, days).Dates(start, start, start.PlusDays(119))
                    );
                },
                iter: 300
            );

    [Fact]
    public void Expanding_in_slices_is_expanding_whole() =>
        Gen.Select(Any, Gen.Int[0, 400], Gen.Int[1, 60].Array[1, 12])
            .Sample(
                (text, offset, lengths) =>
                {
                    var rule = Rule(text);
                    var start = Start.PlusDays(offset);
                    var end = start.PlusDays(lengths.Sum() - 1);
                    var sliced = new List<LocalDate>();
                    var from = start;
                    foreach (var length in lengths)
                    {
                        sliced.AddRange(rule.Dates(start, from, from.PlusDays(length - 1)));
                        from = from.PlusDays(length);
                    }

                    var whole = rule.Dates(start, start, end).ToList();
                    Assert.Equal(whole, sliced);
                    Assert.Equal(whole.Distinct().Order(), whole);
                },
                iter: 400
            );

    [Fact]
    public void Counting_from_the_first_date_gives_the_same_dates() =>
        Gen.Select(Any, Gen.Int[0, 400])
            .Sample(
                (text, offset) =>
                {
                    var rule = Rule(text);
                    var start = Start.PlusDays(offset);
                    if (rule.First(start) is not { } first)
                        return;
                    var end = start.PlusDays(500);
                    // A rule that leaves its day open takes it from its start, and keeps it.
                    Assert.Equal(rule.Dates(start, start, end), rule.Dates(first, first, end));
                },
                iter: 300
            );

    [Theory]
    [InlineData(
        "2027-03-28",
        "01:30",
        "Europe/Lisbon",
        "2027-03-28T01:30:00Z",
        "skipped: read an hour on, 02:30 on the wall"
    )]
    [InlineData(
        "2027-10-31",
        "01:30",
        "Europe/Lisbon",
        "2027-10-31T00:30:00Z",
        "shown twice: the first"
    )]
    [InlineData(
        "2027-03-14",
        "02:30",
        "America/New_York",
        "2027-03-14T07:30:00Z",
        "skipped: 03:30 on the wall"
    )]
    [InlineData(
        "2027-11-07",
        "01:30",
        "America/New_York",
        "2027-11-07T05:30:00Z",
        "shown twice: the first"
    )]
    [InlineData(
        "2027-10-03",
        "02:15",
        "Australia/Lord_Howe",
        "2027-10-02T15:45:00Z",
        "half an hour is skipped there: 02:45 on the wall"
    )]
    public void An_hour_that_the_clocks_skip_or_show_twice_is_a_certain_moment(
        string on,
        string at,
        string zone,
        string moment,
        string because
    ) =>
        Assert.True(
            NodaTime.Text.InstantPattern.ExtendedIso.Parse(moment).Value
                == DateTimeZoneProviders
                    .Tzdb[zone]
                    .On(
                        Day(on) + NodaTime.Text.LocalTimePattern.ExtendedIso.Parse($"{at}:00").Value
                    )
                    .ToInstant(),
            because
        );

    private static readonly Gen<string> Any = Gen.OneOf(
        Gen.Select(Gen.Int[1, 3], Gen.Int[1, 127], Gen.Int[0, 30])
            .Select((every, days, count) => Weekly(every, days, count).Text),
        Gen.Select(Gen.Int[1, 9], Gen.Int[0, 30])
            .Select((every, count) => $"FREQ=DAILY;INTERVAL={every}{Counted(count)}"),
        Gen.Select(Gen.Int[1, 3], Gen.Int[1, 5], Gen.Int[0, 12])
            .Select(
                (every, nth, count) =>
                    $"FREQ=MONTHLY;INTERVAL={every};BYDAY={(nth == 5 ? -1 : nth)}WE,1FR{Counted(count)}"
            ),
        Gen.Select(Gen.Int[1, 31], Gen.Int[0, 5])
            .Select((day, count) => $"FREQ=MONTHLY;BYMONTHDAY={day},-1{Counted(count)}"),
        Gen.Select(Gen.Int[1, 12], Gen.Int[1, 28])
            .Select((month, day) => $"FREQ=YEARLY;BYMONTH={month};BYMONTHDAY={day}"),
        Gen.Int[1, 4]
            .Select(pos => $"FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-{pos};UNTIL=20271231")
    );

    private static string Counted(int count) => count == 0 ? "" : $";COUNT={count}";

    private static SeriesRule Weekly(int every, int days, int count = 0)
    {
        string[] codes = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"];
        return Rule(
            $"FREQ=WEEKLY;INTERVAL={every};BYDAY={string.Join(',', codes.Where((_, i) => (days & (1 << i)) != 0))}{Counted(count)}"
        );
    }

    private static SeriesRule Rule(string text) => SeriesRule.Read(text, Six, Lisbon).Expected();

    private static LocalDate Day(string iso) => Given.Day(iso);
}
