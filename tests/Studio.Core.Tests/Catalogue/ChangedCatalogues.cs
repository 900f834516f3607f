using Studio.Core.Catalogue;

namespace Studio.Core.Tests.Catalogue;

/// <summary>Two catalogues compared row by row, what a studio uses held against a new one, and the words of every rule.</summary>
public class ChangedCatalogues
{
    private const string Rules = "movement_rules.csv";

    private static readonly CatalogueTexts Own = new(
        CatalogueTexts.Names.ToDictionary(n => n, TheCatalogue.TextOf, StringComparer.Ordinal)
    );

    private static string Line(string file, int number) => Own[file].Split('\n')[number - 1];

    private static CatalogueTexts With(string file, Func<string, string> edit) =>
        Own.With([KeyValuePair.Create(file, edit(Own[file]))]);

    [Fact]
    public void A_catalogue_compared_with_itself_has_no_row_that_differs() =>
        Assert.Empty(CatalogueChanges.Between(Own, Own.With([])));

    [Fact]
    public void Rows_in_another_order_are_the_same_rows() =>
        Assert.Empty(
            CatalogueChanges.Between(
                Own,
                With(
                    Rules,
                    text =>
                    {
                        var lines = text.TrimEnd('\n').Split('\n');
                        return string.Join('\n', lines.Skip(1).Reverse().Prepend(lines[0])) + '\n';
                    }
                )
            )
        );

    [Fact]
    public void A_byte_order_mark_and_other_line_ends_are_no_difference() =>
        Assert.Empty(
            With(Rules, text => '\uFEFF' + text.Replace("\n", "\r\n", StringComparison.Ordinal))
                .DifferingFrom(Own)
        );

    [Fact]
    public void A_row_that_goes_one_that_comes_and_a_cell_that_changes_are_each_named()
    {
        var gone = Line(Rules, 2);
        var id = gone.Split(',')[0];
        var kept = Line(Rules, 3);
        var keptId = kept.Split(',')[0];

        var changes = CatalogueChanges.Between(
            Own,
            With(
                Rules,
                text =>
                    text.Replace(gone, "ours-" + gone, StringComparison.Ordinal)
                        .Replace(kept, kept + " again", StringComparison.Ordinal)
            )
        );

        Assert.Equal(
            [
                (id, RowChangeKind.Removed),
                (keptId, RowChangeKind.Changed),
                ("ours-" + id, RowChangeKind.Added),
            ],
            changes.Select(c => (c.Key, c.Kind))
        );
        var cell = Assert.Single(changes[1].Cells);
        Assert.Equal("note", cell.Column);
        Assert.EndsWith(" again", cell.To, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("stages.csv")]
    [InlineData("sources.csv")]
    [InlineData("factors.csv")]
    [InlineData("conditions.csv")]
    [InlineData("policies.csv")]
    [InlineData("class_rules.csv")]
    [InlineData("movements.csv")]
    [InlineData("movement_rules.csv")]
    [InlineData("coverage.csv")]
    public void An_empty_file_and_one_with_a_column_twice_are_errors_and_no_crash(string file)
    {
        foreach (
            var text in new[] { "", "\n", "\"", "code", Line(file, 1) + "," + Line(file, 1) + "\n" }
        )
        {
            var wrong = Assert.Throws<CatalogueException>(() => With(file, _ => text).Read());
            Assert.Contains(
                wrong.Errors,
                e => e.StartsWith($"{file} line 1: ", StringComparison.Ordinal)
            );
        }
    }

    [Fact]
    public void A_published_row_needs_its_rules_or_a_reason_and_never_both()
    {
        var wrong = Assert.Throws<CatalogueException>(() =>
            With("coverage.csv", text => text + "a.csv,A1,,\na.csv,A2,one,two\na.csv,A1,one,\n")
                .Read()
        );

        var end = Own["coverage.csv"].Split('\n').Length;
        Assert.Equal(
            [
                $"coverage.csv line {end}: give the rules that cover the row, or why none does.",
                $"coverage.csv line {end + 1}: it names rules and says why there are none: keep one of the two.",
                $"coverage.csv line {end + 2}: the row 'A1' is already on line {end}.",
            ],
            wrong.Errors
        );
    }

    [Fact]
    public void What_is_in_use_and_missing_is_named_with_those_who_use_it()
    {
        var use = new CatalogueUse
        {
            Factors = Using("back-pain", "3 clients", "wrist-pain", "1 client"),
            Stages = Using("postnatal", "the class Slow return"),
            Movements = Using("easy-march", "Morning strength"),
            Policies = Using("effort-most", "7", "lifting", "light"),
        };
        var next = Own.With([
            KeyValuePair.Create(
                "policies.csv",
                Own["policies.csv"]
                    .Replace("effort-most,6,4..7", "effort-most,6,4..6", StringComparison.Ordinal)
            ),
        ]);
        var factors = With(
                "factors.csv",
                text => text.Replace("wrist-pain", "wrist-ache", StringComparison.Ordinal)
            )
            .With([
                KeyValuePair.Create(
                    Rules,
                    Own[Rules].Replace("wrist-pain", "wrist-ache", StringComparison.Ordinal)
                ),
                KeyValuePair.Create(
                    "questions.csv",
                    Own["questions.csv"]
                        .Replace("wrist-pain", "wrist-ache", StringComparison.Ordinal)
                ),
                KeyValuePair.Create(
                    "class_rules.csv",
                    Own["class_rules.csv"]
                        .Replace("wrist-pain", "wrist-ache", StringComparison.Ordinal)
                ),
            ]);

        Assert.Empty(use.MissingIn(TheCatalogue.Book));
        Assert.Equal(["effort-most"], use.MissingIn(next.Read()).Select(u => u.Code));
        var missing = Assert.Single(use.MissingIn(factors.Read()));
        Assert.Equal("wrist-pain", missing.Code);
        Assert.Contains("1 client", missing.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_rule_has_a_card_of_its_own_with_words_and_a_source()
    {
        var book = TheCatalogue.Book;
        var cards = RuleCards.Of(book, book.Policies);

        Assert.Equal(
            cards.Count,
            cards.Select(c => (c.Id, c.About == RuleAbout.Movements)).Distinct().Count()
        );
        Assert.Equal(
            book.ClassRules.Count + book.MovementRules.Count,
            cards.Count(c => c.About != RuleAbout.Condition)
        );
        Assert.All(
            cards,
            c =>
            {
                Assert.NotEmpty(c.Speaks);
                Assert.NotEmpty(c.ForHer);
                Assert.NotEmpty(c.Stages);
                Assert.DoesNotContain(
                    "{",
                    c.ForHer + c.ForInstructor + c.Lift,
                    StringComparison.Ordinal
                );
                Assert.DoesNotContain(
                    "policy:",
                    string.Join(' ', c.When),
                    StringComparison.Ordinal
                );
            }
        );
    }

    [Fact]
    public void A_rule_says_when_it_holds_in_weeks_factors_and_policies()
    {
        var card = RuleCards
            .Of(TheCatalogue.Book, TheCatalogue.Book.Policies)
            .Single(c => c is { Id: "supine-from-14-weeks", About: RuleAbout.Movements });

        Assert.Equal("Flat on the back; not: works propped up", card.Speaks);
        Assert.Equal(["From 14w 0d on", "Policy supine from is 14w0d"], card.When);
        Assert.Equal(["second-trimester", "third-trimester"], card.Stages);
        Assert.True(card.Counts);
    }

    [Fact]
    public void Every_policy_is_known_to_be_cautious_one_way_or_to_have_nothing_to_do_with_it() =>
        Assert.Equal(
            StudioPolicies.Codes.Order(StringComparer.Ordinal),
            PolicyCaution.Codes.Order(StringComparer.Ordinal)
        );

    [Theory]
    [InlineData("supine-from", "28w0d", "14w0d", Caution.Less)]
    [InlineData("supine-from", "14w0d", "symptoms", Caution.More)]
    [InlineData("effort-most", "7", "6", Caution.Less)]
    [InlineData("after-caesarean-days", "42", "56", Caution.Less)]
    [InlineData("clearance-most-days", "none", "365", Caution.Less)]
    [InlineData("clearance-most-days", "90", "365", Caution.More)]
    [InlineData("guideline", "canada", "stricter", Caution.Less)]
    [InlineData("look-ahead-days", "60", "28", Caution.Same)]
    [InlineData("lifting", "light", "light", Caution.Same)]
    public void A_value_is_more_or_less_cautious_than_another(
        string code,
        string value,
        string than,
        Caution caution
    ) => Assert.Equal(caution, PolicyCaution.Of(code, value, than));

    [Fact]
    public void No_default_of_the_catalogue_is_less_cautious_than_the_programs()
    {
        var program = new StudioPolicies();

        Assert.All(
            TheCatalogue.Book.PolicyChoices,
            c =>
                Assert.NotEqual(
                    Caution.Less,
                    PolicyCaution.Of(c.Code, c.Default, program.ValueOf(c.Code))
                )
        );
    }

    private static Dictionary<string, string> Using(params string[] pairs) =>
        pairs.Chunk(2).ToDictionary(p => p[0], p => p[1], StringComparer.Ordinal);
}
