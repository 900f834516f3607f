using System.Globalization;
using NodaTime.Text;
using Studio.Core.Tests.Pregnancies;
using Studio.Core.Timetable;

namespace Studio.Core.Tests.Timetable;

/// <summary>
/// Every row of tests/reference/rfc5545_examples.csv: the examples of RFC 5545 (3.8.5.3, 3.3.5), and some computed from its
/// rules, which the file says. RFC-33a is held against what its own UNTIL allows, two instances, and not against the three
/// that are printed there; RFC-33b has the bound that gives the three.
/// </summary>
public class PublishedRecurrences
{
    private static readonly List<ReferenceRow> Rows = Reference.Read("rfc5545_examples.csv");

    private static readonly LocalDateTimePattern Basic =
        LocalDateTimePattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmss");

    private static readonly OffsetDateTimePattern Local =
        OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mmo<+HH:mm>");

    private static readonly InstantPattern Utc = InstantPattern.CreateWithInvariantCulture(
        "uuuu-MM-dd'T'HH:mm'Z'"
    );

    public static IEnumerable<TheoryDataRow<string>> All =>
        Reference.Cases(Rows, r => r["description"]);

    public static IEnumerable<TheoryDataRow<string>> OverDates =>
        Reference.Cases(
            Rows.Where(r =>
                r["rrule"].Length > 0
                && !r["rrule"].Contains("HOURLY")
                && !r["rrule"].Contains("MINUTELY")
                && !r["rrule"].Contains("BYHOUR")
            ),
            r => r["description"]
        );

    public static IEnumerable<TheoryDataRow<string>> WithinADay =>
        Reference.Cases(
            Rows.Where(r =>
                r["rrule"].Contains("HOURLY")
                || r["rrule"].Contains("MINUTELY")
                || r["rrule"].Contains("BYHOUR")
            ),
            r => r["description"]
        );

    [Fact]
    public void Are_all_there()
    {
        Assert.Equal(47, Rows.Count);
        Assert.Equal(Rows.Count - 2, OverDates.Count() + WithinADay.Count());
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Are_expanded_as_published(string id)
    {
        var row = Rows.Row(id);
        foreach (var rule in RulesOf(row))
        {
            var found = Expand(row, rule);
            var ten = found.Take(10).ToList();
            Assert.Equal(
                Listed(row, "expected_first_10_local"),
                ten.Select(i => Local.Format(i.ToOffsetDateTime()))
            );
            Assert.Equal(
                Listed(row, "expected_first_10_utc"),
                ten.Select(i => Utc.Format(i.ToInstant()))
            );
            if (row["total_count"] == "unbounded")
                Assert.True(found.Skip(10).Any(), "it goes on");
            else
                Assert.Equal(
                    int.Parse(row["total_count"], CultureInfo.InvariantCulture),
                    found.Count()
                );
        }
    }

    [Theory]
    [MemberData(nameof(OverDates))]
    public void Are_taken_for_a_series_where_they_speak_of_dates(string id)
    {
        var row = Rows.Row(id);
        var start = Basic.Parse(row["dtstart"]).Value;
        var zone = DateTimeZoneProviders.Tzdb[row["tzid"]];
        var skipped = row["exdate"]
            .Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(e => Basic.Parse(e).Value.Date)
            .ToHashSet();
        foreach (var text in RulesOf(row))
        {
            var rule = SeriesRule.Read(text, start.TimeOfDay, zone).Expected();
            Assert.Equal(
                Listed(row, "expected_first_10_local").Select(i => i[..10]),
                rule.Dates(start.Date, start.Date, start.Date.PlusYears(60))
                    .Where(d => !skipped.Contains(d))
                    .Take(10)
                    .Select(LocalDatePattern.Iso.Format)
            );
            // What is kept of it is the same rule.
            Assert.Equal(rule.Text, SeriesRule.Kept(rule.Text).Text);
        }
    }

    [Theory]
    [MemberData(nameof(WithinADay))]
    public void Are_refused_for_a_series_where_they_repeat_within_a_day(string id)
    {
        var row = Rows.Row(id);
        foreach (var text in RulesOf(row))
        {
            Assert.False(
                SeriesRule
                    .Read(text, LocalTime.Midnight, DateTimeZone.Utc)
                    .TryGet(out _, out var refusal)
            );
            Assert.Equal("rule-within-a-day", refusal!.Code);
            Assert.Contains("Make one series for each hour.", refusal.Message);
        }
    }

    private static IEnumerable<ZonedDateTime> Expand(ReferenceRow row, string rule)
    {
        var start = Basic.Parse(row["dtstart"]).Value;
        var zone = DateTimeZoneProviders.Tzdb[row["tzid"]];
        var skipped = row["exdate"]
            .Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(e => Basic.Parse(e).Value)
            .ToHashSet();
        return rule.Length == 0
            ? [zone.On(start)]
            : Recurrence
                .Instances(rule, start, zone, start.PlusYears(60))
                .Where(i => !skipped.Contains(i))
                .Select(i => zone.On(i));
    }

    private static IEnumerable<string> RulesOf(ReferenceRow row) =>
        row["alternative_rrule"].Length > 0
            ? [row["rrule"], row["alternative_rrule"]]
            : [row["rrule"]];

    private static string[] Listed(ReferenceRow row, string column) =>
        row[column].Split(" | ", StringSplitOptions.RemoveEmptyEntries);
}
