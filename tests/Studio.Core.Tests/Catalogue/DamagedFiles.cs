namespace Studio.Core.Tests.Catalogue;

/// <summary>Each thing the loader must catch, shown by the shipped file with one thing broken.</summary>
public class DamagedFiles
{
    private const string Rules = "class_rules.csv";
    private const string Conditions = "conditions.csv";

    [Fact]
    public void The_shipped_catalogue_has_no_error() =>
        Assert.NotEmpty(TheCatalogue.Book.ClassRules);

    [Theory]
    [InlineData(Rules, "id")]
    [InlineData(Conditions, "code")]
    [InlineData("factors.csv", "code")]
    [InlineData("sources.csv", "id")]
    [InlineData("policies.csv", "code")]
    public void A_row_that_is_there_twice_is_named_with_the_first(string file, string column)
    {
        var lines = TheCatalogue.TextOf(file).TrimEnd('\n').Split('\n');

        var errors = TheCatalogue.ErrorsOf((file, text => text.TrimEnd('\n') + '\n' + lines[1]));

        Assert.Contains(
            errors,
            e =>
                e.StartsWith(
                    $"{file} line {lines.Length + 1}: the {column} '",
                    StringComparison.Ordinal
                ) && e.EndsWith("is already used on line 2.", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData(Rules)]
    [InlineData(Conditions)]
    [InlineData("factors.csv")]
    [InlineData("sources.csv")]
    [InlineData("policies.csv")]
    [InlineData("stages.csv")]
    public void A_missing_column_and_one_too_many_are_named(string file)
    {
        var errors = TheCatalogue.ErrorsOf(
            (
                file,
                text =>
                    text.Replace(",note\n", ",remark\n", StringComparison.Ordinal)
                        .Replace(",means,", ",meaning,", StringComparison.Ordinal)
            )
        );

        Assert.Contains(
            errors,
            e => e.StartsWith($"{file} line 1: the column '", StringComparison.Ordinal)
        );
        Assert.Contains(
            errors,
            e => e.StartsWith($"{file} line 1: there is no column '", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_row_with_a_field_too_many_is_named() =>
        Assert.Contains(
            "factors.csv line 2: the number of fields is not that of the header.",
            TheCatalogue.ErrorsOf(
                (
                    "factors.csv",
                    text => TheCatalogue.ReplaceOnLine(text, 2, "showing,", "showing,,")
                )
            )
        );

    [Fact]
    public void A_policy_that_is_missing_or_unknown_is_named()
    {
        var line = TheCatalogue.LineOf("policies.csv", "ends-soon-days");

        var errors = TheCatalogue.ErrorsOf(
            (
                "policies.csv",
                text => TheCatalogue.ReplaceOnLine(text, line, "ends-soon-days", "ends-later-days")
            )
        );

        Assert.Equal(
            [
                "policies.csv line 1: the policy 'ends-soon-days' is missing.",
                $"policies.csv line {line}: there is no policy 'ends-later-days'.",
            ],
            errors
        );
    }

    [Fact]
    public void A_condition_that_a_factor_counts_as_must_be_there() =>
        Assert.Contains(
            "conditions.csv line 1: the condition 'twin-pregnancy', which the factor 'twins' counts as, is missing.",
            TheCatalogue.ErrorsOf(
                (
                    Conditions,
                    text =>
                        text.Replace("twin-pregnancy", "twins-expected", StringComparison.Ordinal)
                )
            )
        );

    [Fact]
    public void Every_error_of_every_file_is_told_at_once_in_the_order_of_the_lines()
    {
        var errors = TheCatalogue.ErrorsOf(
            (
                "stages.csv",
                text =>
                    text.Replace(
                        "postnatal,Postnatal,birth,42,",
                        "postnatal,Postnatal,birth,43,",
                        StringComparison.Ordinal
                    )
            ),
            (
                Conditions,
                text =>
                    TheCatalogue.ReplaceOnLine(
                        TheCatalogue.ReplaceOnLine(text, 3, "acog-list", "x"),
                        2,
                        "canada-list",
                        "y"
                    )
            ),
            (Rules, text => TheCatalogue.ReplaceOnLine(text, 2, "supine,", "floating,"))
        );

        Assert.Equal(4, errors.Count);
        Assert.StartsWith("stages.csv line 6: ", errors[0], StringComparison.Ordinal);
        Assert.Equal(
            "conditions.csv line 2: canada_source is 'y': there is no such source.",
            errors[1]
        );
        Assert.Equal(
            "conditions.csv line 3: acog_source is 'x': there is no such source.",
            errors[2]
        );
        Assert.Equal($"{Rules} line 2: trait is 'floating': there is no such trait.", errors[3]);
    }
}
