using Studio.Core.Staff;
using Studio.Core.Timetable;

namespace Studio.Core.Tests.Staff;

public class WhenSheCanBeAskedFor
{
    [Theory]
    [InlineData(
        "09:00",
        "12:00",
        null,
        "12:00",
        "15:00",
        null,
        true,
        "one ends as the other begins"
    )]
    [InlineData("09:00", "12:00", null, "11:59", "15:00", null, false, "a minute of both")]
    [InlineData("09:00", "12:00", 1L, "10:00", "11:00", 2L, true, "at either of two locations")]
    [InlineData("09:00", "12:00", 1L, "10:00", "11:00", 1L, false, "one inside the other")]
    [InlineData("09:00", "12:00", null, "10:00", "11:00", 2L, false, "anywhere is there too")]
    [InlineData("09:00", "09:00", null, "10:00", "11:00", null, false, "no time at all")]
    [InlineData("12:00", "09:00", null, "13:00", "14:00", null, false, "the wrong way round")]
    public void Hours_of_one_weekday_do_not_overlap(
        string from,
        string to,
        long? at,
        string otherFrom,
        string otherTo,
        long? otherAt,
        bool stands,
        string because
    )
    {
        var one = new WeeklyHours(IsoDayOfWeek.Monday, Time(from), Time(to), at);
        var other = new WeeklyHours(IsoDayOfWeek.Monday, Time(otherFrom), Time(otherTo), otherAt);
        Assert.True(stands == AvailabilityRules.WhyNot([one, other]) is null, because);
        Assert.True(stands == AvailabilityRules.WhyNot([other, one]) is null, because);
    }

    [Fact]
    public void Hours_of_two_weekdays_have_nothing_to_do_with_each_other() =>
        Assert.Null(
            AvailabilityRules.WhyNot([
                new(IsoDayOfWeek.Monday, Time("09:00"), Time("12:00")),
                new(IsoDayOfWeek.Tuesday, Time("09:00"), Time("12:00")),
            ])
        );

    [Fact]
    public void A_wish_is_about_something_there_is_and_stands_once()
    {
        Refusal? WhyNot(params TeachingWish[] wishes) =>
            WishRules.WhyNot(wishes, ["core"], ["quay"]);
        Assert.Null(
            WhyNot(
                new(WishKind.Class, "core", 2),
                new(WishKind.Location, "quay", -1),
                new(WishKind.Weekday, "7", 1),
                new(WishKind.PartOfDay, "evening", -2)
            )
        );
        Assert.Equal("wishes[0].value", WhyNot(new TeachingWish(WishKind.Class, "quay", 1))?.Field);
        Assert.Equal("no-such-wish", WhyNot(new TeachingWish(WishKind.Weekday, "8", 1))?.Code);
        Assert.Equal(
            "wish-twice",
            WhyNot(new(WishKind.Weekday, "1", 1), new TeachingWish(WishKind.Weekday, "1", 2))?.Code
        );
    }

    private static LocalTime Time(string text) =>
        NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(text).Value;
}
