using System.Globalization;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Booking;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Catalogue;

/// <summary>
/// Every row of tests/reference/contraindications.csv: the ACOG lists as printed before Committee Opinion 804 (from memory)
/// and Table 2 of the 2019 Canadian guideline (seen), against the catalogue and against what the engine answers.
/// </summary>
public class PublishedContraindications
{
    private static readonly IReadOnlyList<ReferenceRow> Rows = Reference.Read(
        "contraindications.csv"
    );

    public static IEnumerable<TheoryDataRow<string>> AllRows() =>
        Reference.Cases(
            Rows,
            row => $"{row["condition"]}: ACOG {row["acog804"]}, Canada {row["canada2019"]}"
        );

    [Fact]
    public void There_are_forty_rows_and_one_condition_for_each() =>
        Assert.Equal(Rows.Select(r => r.Id), TheCatalogue.Book.Conditions.Select(c => c.Reference));

    [Theory]
    [MemberData(nameof(AllRows))]
    public void The_catalogue_says_what_both_lists_say(string id)
    {
        var (row, condition) = (Rows.Row(id), ConditionOf(id));

        Assert.Equal(row["acog804"], Word(condition.Acog));
        Assert.Equal(row["canada2019"], Word(condition.Canada));
        Assert.Equal(Week(row["week_from_acog"]), condition.Acog.From);
        Assert.Equal(Week(row["week_from_canada"]), condition.Canada.From);
    }

    [Theory]
    [MemberData(nameof(AllRows))]
    public void The_catalogue_keeps_how_each_list_was_checked(string id)
    {
        var (row, condition) = (Rows.Row(id), ConditionOf(id));

        Assert.Equal(row["how_verified_acog"], Mark(condition.Acog.Source));
        Assert.Equal(row["how_verified_canada"], Mark(condition.Canada.Source));
        Assert.Equal(
            row["source_org"],
            $"{condition.Acog.Source.Organisation}; {condition.Canada.Source.Organisation}"
        );
    }

    [Theory]
    [MemberData(nameof(AllRows))]
    public void The_engine_follows_acog_alone(string id) => Follows(id, Guideline.Acog, "acog804");

    [Theory]
    [MemberData(nameof(AllRows))]
    public void The_engine_follows_canada_alone(string id) =>
        Follows(id, Guideline.Canada, "canada2019");

    [Theory]
    [MemberData(nameof(AllRows))]
    public void The_stricter_reading_takes_the_stricter_of_both(string id)
    {
        var (row, condition) = (Rows.Row(id), ConditionOf(id));
        // Meah et al. 2020 (reference row CL21, seen): abruption and vasa praevia, on neither list, are to be absolute.
        var expected = id is "C39" or "C40"
            ? "absolute"
            : new[] { row["acog804"], row["canada2019"] }.MaxBy(Strictness)!;
        var policies = Someone.OnlyFlagged with { Guideline = Guideline.Stricter };
        var weeks = new[] { Week(row["week_from_acog"]), Week(row["week_from_canada"]) }
            .Where(w => w is not null)
            .ToList();
        var from =
            weeks.Count == 0 ? GestationalAge.Of(25, 6) : weeks.MinBy(w => w!.Value.Days)!.Value;

        Assert.Equal(VerdictFor(expected), VerdictAt(condition, from, policies));
        if (weeks.Count > 0)
            Assert.Equal(Suits.Suitable, VerdictAt(condition, new(from.Days - 1), policies));
        if (id is "C39" or "C40")
            Assert.Equal("CL21", condition.Review!.Source.Id);
    }

    private static void Follows(string id, Guideline guideline, string column)
    {
        var (row, condition) = (Rows.Row(id), ConditionOf(id));
        var policies = Someone.OnlyFlagged with { Guideline = guideline };
        var week = Week(row[guideline == Guideline.Acog ? "week_from_acog" : "week_from_canada"]);
        // Where no week is printed the row holds at any time; 25w 6d is early enough for no class rule to speak.
        var from = week ?? GestationalAge.Of(25, 6);

        Assert.Equal(VerdictFor(row[column]), VerdictAt(condition, from, policies));
        if (week is not null)
            Assert.Equal(Suits.Suitable, VerdictAt(condition, new(from.Days - 1), policies));
    }

    private static Suits VerdictAt(
        Condition condition,
        GestationalAge age,
        StudioPolicies policies
    ) =>
        Someone
            .Pregnant(age.ToString())
            .WithoutLetters()
            .Holding(condition.Factor.Code)
            .In(Someone.AClass(), policies)
            .Verdict;

    private static Suits VerdictFor(string published) =>
        published switch
        {
            "absolute" => Suits.NotSuitable,
            "relative" => Suits.NeedsClearance,
            _ => Suits.Suitable,
        };

    private static int Strictness(string published) =>
        Array.IndexOf(["none", "relative", "absolute"], published);

    private static Condition ConditionOf(string id) =>
        Assert.Single(TheCatalogue.Book.Conditions, c => c.Reference == id);

    private static string Word(Listing listing) => listing.Severity.ToString().ToLowerInvariant();

    private static GestationalAge? Week(string weeks) =>
        weeks.Length == 0
            ? null
            : GestationalAge.Of(int.Parse(weeks, CultureInfo.InvariantCulture), 0);

    private static string Mark(Source source) =>
        source.Verification == Verification.FromMemory ? "from memory" : "seen";
}
