using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

public class AgeOnADate
{
    [Theory]
    [InlineData("2026-06-29", "39w 6d", "the day before the due date")]
    [InlineData("2026-06-30", "40w 0d", "the due date itself")]
    [InlineData("2026-07-01", "40w 1d", "the day after")]
    [InlineData("2025-09-23", "0w 0d", "280 days before")]
    [InlineData("2025-09-22", "-0w 1d", "the day before that, which is no age of a pregnancy")]
    public void Is_counted_in_completed_weeks_and_days(string day, string age, string because) =>
        Assert.True(
            age == GestationalAge.On(Given.Day(day), Given.Day("2026-06-30")).ToString(),
            because
        );

    [Theory]
    [InlineData("2024-02-28", "2024-03-01", 2, "over a leap day")]
    [InlineData("2025-02-28", "2025-03-01", 1, "over the end of a February without one")]
    [InlineData("2000-02-28", "2000-03-01", 2, "2000 was a leap year")]
    [InlineData("2100-02-28", "2100-03-01", 1, "2100 will not be")]
    [InlineData("2024-12-31", "2025-01-01", 1, "over the end of a year")]
    public void Goes_on_day_by_day(string from, string to, int days, string because)
    {
        var due = Given.Day(to).PlusDays(100);
        Assert.True(
            days
                == GestationalAge.On(Given.Day(to), due).Days
                    - GestationalAge.On(Given.Day(from), due).Days,
            because
        );
    }

    [Fact]
    public void Agrees_with_the_calendar_of_the_platform_on_every_day_of_eight_years()
    {
        foreach (var offset in Enumerable.Range(0, 8 * 366))
        {
            var first = new DateOnly(2021, 1, 1).AddDays(offset);
            var due = new DatingEvidence { LastPeriod = new(LocalDate.FromDateOnly(first)) }
                .Reckoned()
                .On;
            Assert.Equal(first.AddDays(280), due.ToDateOnly());
            Assert.Equal(0, GestationalAge.On(LocalDate.FromDateOnly(first), due).Days);
        }
    }

    [Theory]
    [InlineData("13w6d", 97)]
    [InlineData("13w 6d", 97)]
    [InlineData("0w0d", 0)]
    [InlineData("8W1D", 57)]
    [InlineData("99w6d", 699)]
    public void Can_be_written_in_two_ways(string text, int days) =>
        Assert.Equal((true, days), (GestationalAge.TryParse(text, out var age), age.Days));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("13w")]
    [InlineData("13w7d")]
    [InlineData("13w  6d")]
    [InlineData("-1w0d")]
    [InlineData("100w0d")]
    [InlineData("13w6d\n")]
    [InlineData("13+6")]
    [InlineData("١٣w6d")]
    public void Is_not_read_from_anything_else(string? text) =>
        Assert.Equal((false, 0), (GestationalAge.TryParse(text, out var age), age.Days));

    [Fact]
    public void Keeps_an_absurd_number_absurd()
    {
        Assert.Equal(int.MaxValue, GestationalAge.Of(int.MaxValue, 6).Days);
        Assert.Equal(int.MinValue, GestationalAge.Of(int.MinValue, 0).Days);
        Assert.Equal("-306783378w 2d", new GestationalAge(int.MinValue).ToString());
    }
}
