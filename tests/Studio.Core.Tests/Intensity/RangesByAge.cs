using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Intensity;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Catalogue;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Intensity;

/// <summary>
/// SOGC/CSEP 2019 (reference rows I02 and I05, from memory) print "under 29" and "30 and over"; ACOG's usual cap of 140 is
/// row I20 (seen). The age of 29 stands in neither row: the studio's policy decides.
/// </summary>
public class RangesByAge
{
    [Theory]
    [InlineData(HeartRatePolicy.Stricter, HeartRate29.Older, 28, "125 to 140")]
    [InlineData(HeartRatePolicy.Stricter, HeartRate29.Older, 29, "121 to 140")]
    [InlineData(HeartRatePolicy.Stricter, HeartRate29.Younger, 29, "125 to 140")]
    [InlineData(HeartRatePolicy.Stricter, HeartRate29.Older, 30, "121 to 140")]
    [InlineData(HeartRatePolicy.Canada, HeartRate29.Older, 28, "125 to 146")]
    [InlineData(HeartRatePolicy.Canada, HeartRate29.Older, 29, "121 to 141")]
    [InlineData(HeartRatePolicy.Canada, HeartRate29.Younger, 29, "125 to 146")]
    [InlineData(HeartRatePolicy.Canada, HeartRate29.Younger, 30, "121 to 141")]
    [InlineData(HeartRatePolicy.AcogCap, HeartRate29.Older, 28, "up to 140")]
    [InlineData(HeartRatePolicy.AcogCap, HeartRate29.Older, 45, "up to 140")]
    public void Are_those_of_the_table(
        HeartRatePolicy policy,
        HeartRate29 open,
        int years,
        string says
    ) =>
        Assert.Equal(
            says,
            HeartRates
                .ByAge(years, TheCatalogue.Book, new() { HeartRate = policy, HeartRate29 = open })
                .Says
        );

    [Theory]
    [InlineData("1997-12-15", "125 to 140", "28 on the eve of her birthday")]
    [InlineData("1997-12-14", "121 to 140", "29 on the day")]
    public void Follow_her_age_on_the_day(string birth, string says, string because) =>
        Assert.True(
            says == On(new() { Pregnancy = Due, BirthDate = Given.Day(birth) })?.Says,
            because
        );

    [Fact]
    public void Are_not_told_without_her_date_of_birth_nor_after_the_birth()
    {
        Assert.Null(On(new() { Pregnancy = Due }));
        Assert.Null(
            On(
                new()
                {
                    Pregnancy = Due with { BornOn = Given.Day("2026-12-01") },
                    BirthDate = Given.Day("1990-01-01"),
                }
            )
        );
    }

    [Theory]
    [InlineData(141, "121 to 140", "above the range it changes nothing")]
    [InlineData(130, "121 to 130", "within it, it is the upper end")]
    [InlineData(121, "up to 121", "at the lower end no range is left")]
    [InlineData(110, "up to 110", "below it, too")]
    public void Are_lowered_by_her_letter(int ceiling, string says, string because) =>
        Assert.True(
            says
                == On(
                    new()
                    {
                        Pregnancy = Due,
                        BirthDate = Given.Day("1990-01-01"),
                        Letters =
                        [
                            new(Given.Day("2026-12-01"), Given.Day("2027-02-01"))
                            {
                                Terms = new() { HeartRateMost = ceiling },
                            },
                        ],
                    }
                )?.Says,
            because
        );

    private static readonly Pregnancy Due = new() { DueDate = Given.Day("2027-03-01") };

    private static HeartRateRange? On(HerSituation her) =>
        HeartRates.On(her, Given.Day("2026-12-14"), TheCatalogue.Book, TheCatalogue.Book.Policies);
}
