using System.Globalization;
using CsCheck;
using Studio.Core.Staff;

namespace Studio.Core.Tests.Staff;

/// <summary>Hours by ISO week and by month; weeks as System.Globalization.ISOWeek, another implementation, has them.</summary>
public class HoursTaught
{
    private static readonly LocalDate First = new(2026, 1, 1);

    private static readonly Gen<TaughtSession[]> Sessions = Gen.Select(
        Gen.Int[0, 500],
        Gen.Int[5, 240],
        Gen.Bool,
        (day, minutes, held) => new TaughtSession(First.PlusDays(day), minutes, held)
    ).Array[0, 40];

    [Theory]
    [InlineData("2026-12-31", "2026-W53", "a Thursday: the week has most of its days in 2026")]
    [InlineData("2027-01-03", "2026-W53", "its Sunday, in another year")]
    [InlineData("2027-01-04", "2027-W01", "the Monday after")]
    [InlineData("2024-12-30", "2025-W01", "a Monday that belongs to the next year's first week")]
    [InlineData("2021-01-01", "2020-W53", "a Friday that belongs to the last year's last week")]
    public void A_session_counts_in_the_week_of_its_own_date(string on, string week, string because)
    {
        var day = NodaTime.Text.LocalDatePattern.Iso.Parse(on).Value;
        var one = Assert.Single(
            TaughtHours.Weeks([new TaughtSession(day, 50, IsHeld: true)], day, day)
        );
        Assert.True(one.Name == week, because);
        Assert.Equal(50, one.HeldMinutes);
        Assert.Equal(1, one.HeldSessions);
    }

    [Fact]
    public void Weeks_are_named_as_the_other_implementation_names_them() =>
        Gen.Int[0, 40_000]
            .Sample(
                days =>
                {
                    var day = new LocalDate(1980, 1, 1).PlusDays(days);
                    var other = day.ToDateTimeUnspecified();
                    Assert.Equal(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{ISOWeek.GetYear(other):0000}-W{ISOWeek.GetWeekOfYear(other):00}"
                        ),
                        Assert.Single(TaughtHours.Weeks([], day, day)).Name
                    );
                },
                iter: 2000
            );

    [Fact]
    public void Weeks_and_months_that_cover_the_same_days_come_to_the_same() =>
        // February 2027 begins on a Monday and ends on a Sunday: four weeks are the month.
        Sessions.Sample(
            sessions =>
            {
                var (from, to) = (new LocalDate(2027, 2, 1), new LocalDate(2027, 2, 28));
                var weeks = TaughtHours.Weeks(sessions, from, to);
                var month = Assert.Single(TaughtHours.Months(sessions, from, to));
                Assert.Equal(4, weeks.Count);
                Assert.Equal(month.HeldMinutes, weeks.Sum(w => w.HeldMinutes));
                Assert.Equal(month.HeldSessions, weeks.Sum(w => w.HeldSessions));
                Assert.Equal(month.AheadMinutes, weeks.Sum(w => w.AheadMinutes));
            },
            iter: 300
        );

    [Fact]
    public void No_session_is_counted_twice_or_left_out() =>
        Sessions.Sample(
            sessions =>
            {
                var (from, to) = (First, First.PlusDays(500));
                var held = sessions.Where(s => s.IsHeld).Sum(s => s.Minutes);
                Assert.Equal(held, TaughtHours.Weeks(sessions, from, to).Sum(w => w.HeldMinutes));
                Assert.Equal(held, TaughtHours.Months(sessions, from, to).Sum(m => m.HeldMinutes));
            },
            iter: 300
        );

    [Fact]
    public void What_is_still_to_come_is_not_taught_yet()
    {
        var week = Assert.Single(
            TaughtHours.Weeks(
                [new(First, 50, IsHeld: true), new(First, 45, IsHeld: false)],
                First,
                First
            )
        );
        Assert.Equal((50, 45), (week.HeldMinutes, week.AheadMinutes));
    }
}
