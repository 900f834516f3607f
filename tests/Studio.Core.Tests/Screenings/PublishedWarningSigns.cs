using Studio.Core.Tests.Catalogue;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Screenings;

/// <summary>Every row of tests/reference/warning_signs.csv: three published lists and their predecessor of 2002.</summary>
public class PublishedWarningSigns
{
    private static readonly IReadOnlyList<ReferenceRow> Rows = Reference.Read("warning_signs.csv");
    private static readonly IReadOnlyList<ReferenceRow> Ours = Reference.ReadFrom(
        "catalogue",
        "warning_signs.csv"
    );

    public static IEnumerable<TheoryDataRow<string>> AllRows() =>
        Reference.Cases(Rows, row => row["sign"]);

    [Theory]
    [MemberData(nameof(AllRows))]
    public void Stands_in_the_catalogue_as_the_lists_have_it(string id)
    {
        var (row, ours) = (Rows.Row(id), Ours.Single(o => o["ref"] == id));
        Assert.Equal(
            (row["acog804"], row["canada2019"], row["australia2020"], row["acog2002"]),
            (ours["acog"], ours["canada"], ours["australia"], ours["acog_2002"])
        );
        var sign = Assert.Single(TheCatalogue.Book.WarningSigns, s => s.Reference == id);
        Assert.Equal(row["action"].StartsWith("stop", StringComparison.Ordinal), sign.Stops);
        Assert.Equal(id, sign.Source.Id);
    }

    [Fact]
    public void None_is_left_out_and_none_made_up() =>
        Assert.Equal(
            Rows.Select(r => r.Id),
            TheCatalogue.Book.WarningSigns.Select(s => s.Reference)
        );
}
