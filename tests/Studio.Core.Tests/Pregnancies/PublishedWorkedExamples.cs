using System.Globalization;
using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>Every worked example of tests/reference/dating.csv.</summary>
public class PublishedWorkedExamples
{
    public static IEnumerable<TheoryDataRow<string>> Examples() =>
        Reference.Cases(
            Reference.Dating.Where(row => row["kind"] == "worked_example"),
            row => $"{row["input"]} gives {row["expected"]}"
        );

    [Fact]
    public void Every_row_of_the_reference_is_of_a_kind_that_is_checked() =>
        Assert.All(
            Reference.Dating,
            row => Assert.Contains(row["kind"], (string[])["rule", "threshold", "worked_example"])
        );

    [Theory]
    [MemberData(nameof(Examples))]
    public void Comes_out_as_published(string id)
    {
        var row = Reference.Dating.Row(id);
        Action<ReferenceRow> check = row["topic"] switch
        {
            "published EDD from LMP, calendar rule against +280 days" => CalendarRule,
            "EDD from LMP" => FromPeriod,
            "EDD from embryo transfer" => FromTransfer,
            "EDD from conception date" => FromConception,
            "gestational age on a date" => AgeOnADate,
            "redating decision" => RedatingDecision,
            "first scan fixes EDD" => FirstScanFixes,
            "ART dating takes precedence" => TransferComesFirst,
            var topic => throw new InvalidOperationException(
                $"{id}: nothing checks the topic '{topic}'."
            ),
        };
        check(row);
    }

    // Ours is +280 days. The calendar form (back three months, on seven days and a year) is not, and differs as published.
    private static void CalendarRule(ReferenceRow row)
    {
        var (given, expected) = (row.Pairs("input"), row.Pairs("expected"));
        var calendar = Given.Day(given["lmp"]).PlusMonths(-3).PlusDays(7).PlusYears(1);
        var ours = Given.Period(given["lmp"]).Reckoned().On;
        Assert.Equal(Given.Day(expected["edd_naegele"]), calendar);
        Assert.Equal(Given.Day(expected["edd_280"]), ours);
        Assert.Equal(Number(expected["difference_days"]), Period.DaysBetween(ours, calendar));
    }

    private static void FromPeriod(ReferenceRow row)
    {
        var due = Given.Period(row.Pairs("input")["lmp"]).Reckoned();
        Assert.Equal(
            (Given.Day(row.Pairs("expected")["edd"]), DatingBasis.LastPeriod),
            (due.On, due.Basis)
        );
    }

    private static void FromTransfer(ReferenceRow row)
    {
        var (given, expected) = (row.Pairs("input"), row.Pairs("expected"));
        var due = Given.Transfer(given["transfer"], Number(given["embryo_age_days"])).Reckoned();
        Assert.Equal((Given.Day(expected["edd"]), DatingBasis.Transfer), (due.On, due.Basis));
        Assert.Equal(0, GestationalAge.On(Given.Day(expected["equivalent_lmp"]), due.On).Days);
        Assert.Equal(
            Given.Age(expected["ga_on_transfer_day"]),
            GestationalAge.On(Given.Day(given["transfer"]), due.On)
        );
    }

    // A conception date is not entered as such: it is the day on which a transferred embryo would be 0 days old.
    private static void FromConception(ReferenceRow row)
    {
        var conceived = Given.Day(row.Pairs("input")["date"]);
        foreach (var days in Enumerable.Range(1, 7))
        {
            var evidence = new DatingEvidence { Transfer = new(conceived.PlusDays(days), days) };
            Assert.Equal(Given.Day(row.Pairs("expected")["edd"]), evidence.Reckoned().On);
        }
    }

    private static void AgeOnADate(ReferenceRow row)
    {
        var (given, expected) = (row.Pairs("input"), Given.Age(row.Pairs("expected")["ga"]));
        Assert.Equal(
            expected,
            Dating.AgeOn(Given.Day(given["on"]), Given.Day(given["edd"])).Expected()
        );
    }

    private static void RedatingDecision(ReferenceRow row)
    {
        var (given, expected) = (row.Pairs("input"), row.Pairs("expected"));
        var byPeriod = GestationalAge.On(
            Given.Day(given["scan"]),
            Given.Period(given["lmp"]).Reckoned().On
        );
        Assert.Equal(Given.Age(expected["ga_by_lmp"]), byPeriod);
        Assert.Equal(
            Number(expected["difference_days"]),
            Given.Age(given["ga_by_ultrasound"]).Days - byPeriod.Days
        );
        Assert.Equal(Number(expected["threshold_days"]), RedatingTable.At(byPeriod).MostDays);

        var due = Given
            .Period(given["lmp"])
            .AndScan(given["scan"], given["ga_by_ultrasound"])
            .Reckoned();
        Assert.Equal(Given.Day(expected["edd"]), due.On);
        Assert.Equal(
            expected["redate"] == "yes" ? DatingBasis.Scan : DatingBasis.LastPeriod,
            due.Basis
        );
        Assert.Contains(
            $"{expected["difference_days"].TrimStart('-')} days",
            due.Explanation,
            StringComparison.Ordinal
        );
        Assert.Contains(byPeriod.ToString(), due.Explanation, StringComparison.Ordinal);
        Assert.Equal(
            byPeriod.Weeks >= 28,
            due.Explanation.Contains("Caution", StringComparison.Ordinal)
        );
    }

    private static void FirstScanFixes(ReferenceRow row)
    {
        var (given, expected) = (row.Pairs("input"), row.Pairs("expected"));
        var evidence = Given.Period(given["lmp"]);
        foreach (var scan in (string[])[given["scan2"], given["scan1"]])
            evidence = evidence.AndScan(scan.Split(" ga ")[0], scan.Split(" ga ")[1]);
        var due = evidence.Reckoned();
        Assert.Equal(
            (Given.Day(expected["edd"]), "no"),
            (due.On, expected["later_scan_changes_edd"])
        );
    }

    private static void TransferComesFirst(ReferenceRow row)
    {
        var (given, expected) = (row.Pairs("input"), row.Pairs("expected"));
        var due = Given
            .Transfer(given["transfer"], Number(given["embryo_age_days"]))
            .AndScan(given["scan"][..10], given["scan"].Split(" ga ")[1])
            .Reckoned();
        Assert.Equal(
            (Given.Day(expected["edd"]), "no", DatingBasis.Transfer),
            (due.On, expected["redate"], due.Basis)
        );
        Assert.Equal("9w 6d", GestationalAge.On(Given.Day(given["scan"][..10]), due.On).ToString());
    }

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
