using Studio.Core.Catalogue;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Catalogue;

/// <summary>Every source that names a fact row says who, what, when and how checked exactly as that row does.</summary>
public class PublishedSources
{
    private static readonly Dictionary<string, ReferenceRow> Facts = new[]
    {
        "clearance.csv",
        "postpartum_return.csv",
        "positions_and_movements.csv",
        "intensity.csv",
        "warning_signs.csv",
    }
        .SelectMany(Reference.Read)
        .ToDictionary(row => row.Id, StringComparer.Ordinal);

    public static IEnumerable<TheoryDataRow<string>> Cited() =>
        Reference.Cases(
            Facts.Values.Where(r => TheCatalogue.Book.Sources.ContainsKey(r.Id)),
            row =>
                row.Fields.GetValueOrDefault(
                    "statement",
                    row.Fields.GetValueOrDefault("value_text", "")
                )
        );

    [Theory]
    [MemberData(nameof(Cited))]
    public void A_source_repeats_its_fact_row(string id)
    {
        var (row, source) = (Facts[id], TheCatalogue.Book.Sources[id]);

        Assert.Equal(row["how_verified"], Mark(source.Verification));
        if (id == "CL14")
            return; // the row is this collection's own inference and names no text
        Assert.Equal(row["source_org"], source.Organisation);
        Assert.Equal(row["source_title"], source.Title);
        Assert.Equal(row["source_year"], source.Year);
        Assert.Equal(row["source_locator"], source.Section);
    }

    [Fact]
    public void Whatever_is_not_a_list_or_a_custom_has_a_fact_row() =>
        Assert.Equal(
            ["acog-list", "canada-list", "common-practice", "studio-setting"],
            TheCatalogue
                .Book.Sources.Keys.Except(Facts.Keys, StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)
        );

    [Fact]
    public void A_citation_carries_the_mark_from_memory() =>
        Assert.Equal(
            "ACOG, Committee Opinion 804 (list as printed in its predecessor 650) (2020), boxes of contraindications; from memory",
            TheCatalogue.Book.Sources["acog-list"].Cite
        );

    [Fact]
    public void A_custom_says_that_nothing_is_published() =>
        Assert.Equal(
            "Common practice, no published source",
            TheCatalogue.Book.Sources["common-practice"].Cite
        );

    private static string Mark(Verification verification) =>
        verification switch
        {
            Verification.Seen => "seen",
            Verification.FromMemory => "from memory",
            Verification.Computed => "computed from rule",
            Verification.CommonPractice => "",
        };
}
