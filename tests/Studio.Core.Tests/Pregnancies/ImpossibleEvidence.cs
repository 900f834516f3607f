using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>What cannot be true of any pregnancy. The limits are this program's own; no source publishes them.</summary>
public class ImpossibleEvidence
{
    private static readonly DatingEvidence Period = Given.Period("2025-01-06");

    public static IEnumerable<TheoryDataRow<DatingEvidence, string, string>> Refused() =>
        [
            Row("nothing at all", new(), "nothing-given", "lastPeriod"),
            Row(
                "a scan the day before the period",
                Period.AndScan("2025-01-05", "6w0d"),
                "scan-before-period",
                "scan.date"
            ),
            Row(
                "a scan 44w 1d after the period",
                Period.AndScan("2025-11-11", "41w0d"),
                "scan-long-after-period",
                "scan.date"
            ),
            Row("a scan of 3w 6d", Given.Scanned("2025-03-03", "3w6d"), "scan-age", "scan.weeks"),
            Row("a scan of 42w 1d", Given.Scanned("2025-03-03", "42w1d"), "scan-age", "scan.weeks"),
            Row(
                "an embryo of 0 days",
                Given.Transfer("2025-01-22", 0),
                "embryo-days",
                "transfer.embryoDays"
            ),
            Row(
                "an embryo of 8 days",
                Given.Transfer("2025-01-22", 8),
                "embryo-days",
                "transfer.embryoDays"
            ),
            Row("a cycle of 19 days", Given.Period("2025-01-06", 19), "cycle-days", "cycleDays"),
            Row("a cycle of 46 days", Given.Period("2025-01-06", 46), "cycle-days", "cycleDays"),
            Row(
                "a cycle beyond reckoning",
                Given.Period("2025-01-06", int.MaxValue),
                "cycle-days",
                "cycleDays"
            ),
            Row(
                "an embryo beyond reckoning",
                Given.Transfer("2025-01-22", int.MinValue),
                "embryo-days",
                "transfer.embryoDays"
            ),
            Row(
                "a scan before the transfer",
                Given.Transfer("2025-01-22", 5).AndScan("2025-01-21", "4w0d"),
                "scan-before-transfer",
                "scan.date"
            ),
            Row(
                "two ages on one day",
                Period.AndScan("2025-03-03", "8w1d").AndScan("2025-03-03", "7w1d"),
                "scans-disagree",
                "scan.date"
            ),
            Row(
                "a scan 6 weeks after the stated date",
                Given.Stated("2025-06-01").AndScan("2025-07-13", "20w0d"),
                "scan-outside-pregnancy",
                "scan.date"
            ),
            Row(
                "a scan before the stated pregnancy",
                Given.Stated("2025-10-13").AndScan("2025-01-05", "4w0d"),
                "scan-outside-pregnancy",
                "scan.date"
            ),
            Row(
                "a stated date 50 weeks off the period's",
                Period.AndStated("2026-09-28"),
                "not-this-pregnancy",
                "lastPeriod"
            ),
            Row(
                "a stated date 281 days off the period's",
                Period.AndStated("2026-07-21"),
                "not-this-pregnancy",
                "lastPeriod"
            ),
            Row(
                "a stated date 50 weeks off the transfer's",
                Given.Transfer("2025-01-25", 5).AndStated("2026-09-28"),
                "not-this-pregnancy",
                "stated"
            ),
            Row("a year typed short", Given.Period("0205-01-06"), "date-implausible", "lastPeriod"),
            Row(
                "a stated year typed wrong",
                Given.Stated("2925-01-06"),
                "date-implausible",
                "stated"
            ),
            Row(
                "a transfer at the calendar's end",
                Given.Transfer("9999-12-31", 5),
                "date-implausible",
                "transfer.date"
            ),
            Row(
                "a scan at the calendar's beginning",
                Given.Scanned("-9998-01-01", "8w1d"),
                "date-implausible",
                "scan.date"
            ),
        ];

    [Theory]
    [MemberData(nameof(Refused))]
    public void Is_refused_by_name(DatingEvidence evidence, string code, string field)
    {
        var refusal = evidence.Refused();
        Assert.Equal(
            (RefusalKind.Invalid, code, field),
            (refusal.Kind, refusal.Code, refusal.Field)
        );
        Assert.EndsWith(".", refusal.Message, StringComparison.Ordinal);
        Assert.False(char.IsLower(refusal.Message[0]), refusal.Message);
    }

    public static IEnumerable<TheoryDataRow<DatingEvidence>> Accepted() =>
        [
            new(Period.AndScan("2025-01-06", "4w0d"))
            {
                TestDisplayName = "a scan on the day the period began",
            },
            new(Period.AndScan("2025-11-10", "42w0d"))
            {
                TestDisplayName = "a scan 44w 0d after the period",
            },
            new(Given.Scanned("2025-03-03", "4w0d")) { TestDisplayName = "a scan of 4w 0d" },
            new(Given.Scanned("2025-03-03", "42w0d")) { TestDisplayName = "a scan of 42w 0d" },
            new(Given.Transfer("2025-01-22", 5).AndScan("2025-01-22", "4w0d"))
            {
                TestDisplayName = "a scan on the day of the transfer",
            },
            new(Given.Transfer("2025-01-22", 1)) { TestDisplayName = "an embryo of 1 day" },
            new(Given.Transfer("2025-01-22", 7)) { TestDisplayName = "an embryo of 7 days" },
            new(Given.Period("2025-01-06", 20)) { TestDisplayName = "a cycle of 20 days" },
            new(Given.Period("2025-01-06", 45)) { TestDisplayName = "a cycle of 45 days" },
            new(Period.AndStated("2026-07-20"))
            {
                TestDisplayName = "a stated date 280 days after the period's, as with rare periods",
            },
        ];

    [Theory]
    [MemberData(nameof(Accepted))]
    public void Ends_where_the_possible_begins(DatingEvidence evidence) =>
        Assert.NotNull(evidence.Reckoned());

    [Theory]
    [InlineData(8, -1, "scan.days")]
    [InlineData(8, 7, "scan.days")]
    [InlineData(8, int.MaxValue, "scan.days")]
    [InlineData(3, 6, "scan.weeks")]
    [InlineData(42, 1, "scan.weeks")]
    [InlineData(int.MaxValue, 6, "scan.weeks")]
    [InlineData(int.MinValue, 0, "scan.weeks")]
    [InlineData(613566764, 3, "scan.weeks")]
    public void Includes_a_scan_whose_weeks_and_days_are_no_age(int weeks, int days, string field)
    {
        var refusal = Scan.Of(new(2025, 3, 3), weeks, days).TryGet(out var scan, out var refused)
            ? new DatingEvidence { Scans = [scan] }.Refused()
            : refused;
        Assert.Equal(field, refusal.Field);
    }

    [Theory]
    [InlineData("2025-01-06", true, "0w 0d, the first day")]
    [InlineData("2025-01-05", false, "the day before 0w 0d")]
    [InlineData("2025-11-10", true, "44w 0d, the last day")]
    [InlineData("2025-11-11", false, "44w 1d")]
    [InlineData("-9998-01-01", false, "the calendar's first day")]
    [InlineData("9999-12-31", false, "the calendar's last day")]
    public void Includes_a_day_on_which_the_pregnancy_is_not(
        string day,
        bool answered,
        string because
    )
    {
        Assert.True(
            answered
                == Dating
                    .AgeOn(Given.Day(day), Given.Day("2025-10-13"))
                    .TryGet(out _, out var refusal),
            because
        );
        Assert.True(
            answered
                || refusal is { Kind: RefusalKind.Invalid, Code: "age-impossible", Field: "on" },
            because
        );
    }

    [Fact]
    public void Says_what_the_age_came_to_and_what_to_check()
    {
        Dating.AgeOn(Given.Day("2026-10-13"), Given.Day("2025-10-13")).TryGet(out _, out var late);
        Assert.Equal(
            "By a due date of 13 October 2025, she would be 92w 1d on 13 October 2026; 0w 0d to 44w 0d is possible."
                + " Check the year of the due date, or of what it was reckoned from, and the day asked about.",
            late?.Message
        );
        Dating.AgeOn(Given.Day("2025-01-05"), Given.Day("2025-10-13")).TryGet(out _, out var early);
        Assert.StartsWith(
            "By a due date of 13 October 2025, 5 January 2025 is 1 day before that pregnancy began;",
            early?.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Does_not_include_a_day_before_the_scan() =>
        Assert.Equal(
            "5w 0d",
            Dating
                .AgeOn(Given.Day("2025-02-09"), Given.Scanned("2025-03-03", "8w1d").Reckoned().On)
                .Expected()
                .ToString()
        );

    private static TheoryDataRow<DatingEvidence, string, string> Row(
        string says,
        DatingEvidence evidence,
        string code,
        string field
    ) => new(evidence, code, field) { TestDisplayName = $"{says} is refused as {code}" };
}
