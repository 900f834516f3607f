using Studio.Core.Tests.Catalogue;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Movements;

/// <summary>
/// db/catalogue/coverage.csv: every row of the four files of published facts is covered by a rule, or it says why not.
/// </summary>
public class MovementCoverage
{
    private static readonly string[] Files =
    [
        "positions_and_movements.csv",
        "contraindications.csv",
        "intensity.csv",
        "postpartum_return.csv",
    ];

    private static readonly IReadOnlyList<ReferenceRow> Listed = Reference.ReadFrom(
        "catalogue",
        "coverage.csv"
    );

    public static IEnumerable<TheoryDataRow<string, string>> Rows() =>
        Files.SelectMany(file =>
            Reference
                .Read(file)
                .Select(row => new TheoryDataRow<string, string>(file, row.Id)
                {
                    TestDisplayName = $"{row.Id} ({row.Source})",
                })
        );

    [Fact]
    public void The_copies_are_the_whole_files() =>
        Assert.Equal([62, 40, 55, 47], Files.Select(file => Reference.Read(file).Count));

    [Theory]
    [MemberData(nameof(Rows))]
    public void Every_row_has_its_rules_or_a_reason_why_not(string file, string id)
    {
        var row = Assert.Single(Listed, r => r["row"] == id && r["file"] == file);

        Assert.NotEqual(row["rules"].Length == 0, row["not_covered_because"].Length == 0);
    }

    [Fact]
    public void Nothing_is_listed_that_no_file_has() =>
        Assert.Equal(
            Files.SelectMany(f => Reference.Read(f).Select(r => $"{f} {r.Id}")),
            Listed.Select(r => $"{r["file"]} {r["row"]}")
        );

    [Fact]
    public void Every_rule_named_is_there()
    {
        var book = TheCatalogue.Book;
        var known = book
            .MovementRules.Select(r => r.Id)
            .Concat(book.ClassRules.Select(r => r.Id))
            .Concat(book.Conditions.Select(c => c.Reference))
            .ToHashSet(StringComparer.Ordinal);

        Assert.All(
            Listed.SelectMany(r => r["rules"].Split(';', StringSplitOptions.RemoveEmptyEntries)),
            rule => Assert.Contains(rule, known)
        );
    }

    [Fact]
    public void A_rule_that_cites_a_row_covers_it()
    {
        var rows = Listed.ToDictionary(r => r["row"], StringComparer.Ordinal);

        Assert.All(
            TheCatalogue.Book.MovementRules.Where(r => rows.ContainsKey(r.Source.Id)),
            rule => Assert.Contains(rule.Id, rows[rule.Source.Id]["rules"].Split(';'))
        );
    }

    [Fact]
    public void Every_listed_condition_is_covered_by_itself() =>
        Assert.All(
            Listed.Where(r => r["file"] == "contraindications.csv"),
            r => Assert.Contains(r["row"], r["rules"].Split(';'))
        );
}
