using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>Every threshold of tests/reference/dating.csv, at both ends of its band.</summary>
public class PublishedThresholds
{
    private static readonly LocalDate Begun = new(2025, 1, 6);

    public static IEnumerable<TheoryDataRow<string>> Thresholds() =>
        Reference.Cases(
            Reference.Dating.Where(row => row["kind"] == "threshold"),
            row => $"{row["input"]}: {row["expected"]}"
        );

    [Theory]
    [MemberData(nameof(Thresholds))]
    public void Stands_in_the_table_for_its_whole_band(string id)
    {
        var (from, to, days) = Band(id);
        for (var age = from; age <= to; age++)
            Assert.Equal(days, RedatingTable.At(new(age)).MostDays);
        var ours = RedatingTable.At(new(from));
        Assert.Equal(from, ours.From.Days);
        Assert.Equal(to == GestationalAge.Greatest ? null : to, ours.To?.Days);
    }

    [Theory]
    [MemberData(nameof(Thresholds))]
    public void Keeps_a_scan_that_differs_by_just_as_much_and_follows_one_that_differs_by_more(
        string id
    )
    {
        var (from, to, days) = Band(id);
        // Within the band, as far as a scan can measure so much less or more: 4w 0d to 42w 0d.
        foreach (
            var age in (int[])
                [Math.Max(from, (4 * 7) + days + 1), Math.Min(to, (42 * 7) - days - 1)]
        )
        foreach (var sign in (int[])[-1, 1])
        {
            Assert.Equal(DatingBasis.LastPeriod, Basis(age, age + (sign * days)));
            Assert.Equal(DatingBasis.Scan, Basis(age, age + (sign * (days + 1))));
        }
    }

    private static DatingBasis Basis(int byPeriod, int measured)
    {
        var evidence = new DatingEvidence
        {
            LastPeriod = new(Begun),
            Scans = [new(Begun.PlusDays(byPeriod), new(measured))],
        };
        return evidence.Reckoned().Basis;
    }

    private static (int From, int To, int Days) Band(string id)
    {
        var row = Reference.Dating.Row(id);
        var input = row.Pairs("input");
        return (
            Given.Age(input["ga_by_lmp_from"]).Days,
            Given.Age(input["ga_by_lmp_to"]).Days,
            row.Day("value")!.Value
        );
    }
}
