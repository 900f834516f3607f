using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>
/// Every row of tests/reference/stages.csv: the ones our defaults follow, and the ones they deliberately do not,
/// each held to the published difference.
/// </summary>
public class PublishedStages
{
    private static readonly string[] Trimesters =
    [
        "first-trimester",
        "second-trimester",
        "third-trimester",
    ];

    // Days by which our boundaries differ from the published ones: (first day, last day). No last day: open in both,
    // or left open here where the source stops counting.
    private static readonly Dictionary<string, (int From, int? To)> TrimesterDifferences = new()
    {
        ["S01"] = (0, 0),
        ["S02"] = (0, 0),
        ["S03"] = (0, null),
        ["S04"] = (0, null),
        ["S05"] = (0, 0),
        ["S06"] = (0, 0),
        ["S07"] = (0, null),
        ["S08"] = (0, 14),
        ["S09"] = (14, 0),
        ["S10"] = (0, null),
        ["S11"] = (0, 7),
        ["S12"] = (7, 0),
        ["S13"] = (0, null),
        ["S14"] = (0, 7),
        ["S15"] = (7, -7),
        ["S16"] = (-7, null),
        ["S17"] = (0, 7),
        ["S18"] = (7, 0),
        ["S19"] = (0, null),
        ["S20"] = (7, 7),
        ["S21"] = (7, null),
        ["S22"] = (0, null),
    };

    // The label of ours that the whole published range falls under; the first and the last, where it spans two.
    private static readonly Dictionary<string, (string First, string Last)> Terms = new()
    {
        ["S30"] = ("preterm", "preterm"),
        ["S31"] = ("early term", "early term"),
        ["S32"] = ("full term", "full term"),
        ["S33"] = ("late term", "late term"),
        ["S34"] = ("postterm", "postterm"),
        ["S35"] = ("preterm", "preterm"),
        ["S36"] = ("preterm", "preterm"),
        ["S37"] = ("late term", "postterm"),
        ["S38"] = ("preterm", "preterm"),
        ["S39"] = ("preterm", "preterm"),
        ["S40"] = ("preterm", "preterm"),
    };

    // The stage of ours in which each published period after birth begins, and in which its last day falls. A period of
    // six weeks is complete on day 42, which is therefore the first day of the stage after it; of twelve weeks, on day 84.
    private static readonly Dictionary<string, (string First, string Last)> AfterBirth = new()
    {
        ["P01"] = ("early-recovery", "early-recovery"),
        ["P02"] = ("early-recovery", "later-postnatal"),
        ["P03"] = ("early-recovery", "later-postnatal"),
        ["P04"] = ("early-recovery", "early-recovery"),
        ["P05"] = ("early-recovery", "postnatal"),
        ["P06"] = ("early-recovery", "early-recovery"),
        ["P07"] = ("early-recovery", "postnatal"),
        ["P08"] = ("postnatal", "later-postnatal"),
        ["P09"] = ("early-recovery", "early-recovery"),
        ["P10"] = ("early-recovery", "early-recovery"),
        ["P11"] = ("early-recovery", "postnatal"),
        ["P12"] = ("early-recovery", "later-postnatal"),
        ["P13"] = ("early-recovery", "later-postnatal"),
        ["P14"] = ("postnatal", "postnatal"),
    };

    public static IEnumerable<TheoryDataRow<string>> Group(string group) =>
        Reference.Cases(
            Reference.Stages.Where(row => row["group"] == group),
            row => $"{row["scheme"]}, {row["stage"]}: {row["label_as_published"]}"
        );

    [Fact]
    public void Every_row_of_the_reference_is_of_a_group_that_is_checked() =>
        Assert.All(
            Reference.Stages,
            row => Assert.Contains(row["group"], (string[])["trimester", "term", "postpartum"])
        );

    [Theory]
    [MemberData(nameof(Group), "trimester")]
    public void A_trimester_is_ours_or_differs_by_the_published_days(string id)
    {
        var row = Reference.Stages.Row(id);
        Assert.True(
            TrimesterDifferences.TryGetValue(id, out var differs),
            $"{id} is a trimester that nothing checks."
        );
        var ours = Given.Stages.Stages.Single(stage =>
            stage.Code
            == Trimesters.Single(code =>
                code.StartsWith(row["stage"].Split(' ')[0], StringComparison.Ordinal)
            )
        );
        Assert.Equal(
            differs,
            (ours.FromDay - row.Day("from_day")!.Value, ours.ToDay - row.Day("to_day"))
        );
        if (row["scheme"] == "ACOG")
            Assert.Contains(
                $"Committee Opinion 700, Methods for Estimating the Due Date ({row["source_year"]})",
                ours.Source,
                StringComparison.Ordinal
            );
    }

    [Theory]
    [MemberData(nameof(Group), "term")]
    public void A_term_begins_and_ends_on_the_published_days(string id)
    {
        var row = Reference.Stages.Row(id);
        Assert.True(Terms.TryGetValue(id, out var term), $"{id} is a term that nothing checks.");
        var (from, to) = (row.Day("from_day"), row.Day("to_day"));
        Assert.Equal(term.First, Term(from ?? to!.Value));
        Assert.Equal(term.Last, Term(to ?? GestationalAge.Greatest));
        if (row["scheme"] != "ACOG/SMFM")
            return;
        Assert.NotEqual(row["stage"], Term(from!.Value - 1));
        Assert.Equal(row["stage"], term.First);
        if (to is { } last)
            Assert.NotEqual(row["stage"], Term(last + 1));
    }

    [Theory]
    [MemberData(nameof(Group), "postpartum")]
    public void A_period_after_birth_begins_and_ends_in_these_stages(string id)
    {
        var row = Reference.Stages.Row(id);
        Assert.True(
            AfterBirth.TryGetValue(id, out var stages),
            $"{id} is a period that nothing checks."
        );
        Assert.Equal(stages, (After(Completed(row["from_day"])), After(Completed(row["to_day"]))));
    }

    [Theory]
    [InlineData("P05", "early-recovery", "postnatal")]
    [InlineData("P11", "early-recovery", "postnatal")]
    [InlineData("P03", "postnatal", "later-postnatal")]
    [InlineData("P02", "postnatal", "later-postnatal")]
    public void A_period_we_follow_is_complete_when_its_stage_ends(
        string id,
        string ends,
        string begins
    )
    {
        var day = Reference.Stages.Row(id).Day("to_day")!.Value;
        Assert.Equal((ends, begins), (After(day - 1), After(day)));
    }

    private static string? Term(int days) =>
        On(
            new() { DueDate = new(2026, 1, 1) },
            new LocalDate(2026, 1, 1).PlusDays(days - 280)
        ).Term;

    private static string? After(int days) =>
        On(
            new() { BornOn = new(2026, 1, 1) },
            new LocalDate(2026, 1, 1).PlusDays(days)
        ).Stage?.Code;

    private static Situation On(Pregnancy pregnancy, LocalDate day) =>
        Given.Stages.On(pregnancy, day);

    private static int Completed(string days) =>
        (int)double.Parse(days, System.Globalization.CultureInfo.InvariantCulture);
}
