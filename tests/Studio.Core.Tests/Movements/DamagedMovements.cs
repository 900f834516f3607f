using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Movements;

/// <summary>What the loader says of a whole file of movements or rules that is damaged.</summary>
public class DamagedMovements
{
    private const string Movements = "movements.csv";
    private const string Rules = "movement_rules.csv";

    [Theory]
    [InlineData(Movements, "code")]
    [InlineData(Movements, "name")]
    [InlineData(Rules, "id")]
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
    [InlineData(Movements, "cue", "call")]
    [InlineData(Rules, "instruction", "mat")]
    public void A_missing_column_and_one_too_many_are_named(
        string file,
        string column,
        string other
    ) =>
        Assert.Superset(
            new HashSet<string>
            {
                $"{file} line 1: the column '{column}' is missing.",
                $"{file} line 1: there is no column '{other}'.",
            },
            TheCatalogue
                .ErrorsOf((file, text => TheCatalogue.ReplaceOnLine(text, 1, column, other)))
                .ToHashSet()
        );

    [Fact]
    public void Every_error_of_both_files_is_told_at_once_in_the_order_of_the_lines()
    {
        var errors = TheCatalogue.ErrorsOf(
            (
                Movements,
                text =>
                    TheCatalogue.ReplaceOnLine(
                        TheCatalogue.ReplaceOnLine(text, 3, ",seated,", ",sitting,"),
                        2,
                        ",standing,",
                        ",upright,"
                    )
            ),
            (Rules, text => TheCatalogue.ReplaceOnLine(text, 2, ",M01,", ",M99,"))
        );

        Assert.Equal(
            [
                $"{Movements} line 2: position is 'upright': there is no such position.",
                $"{Movements} line 3: position is 'sitting': there is no such position.",
                $"{Rules} line 2: source is 'M99': there is no such source.",
            ],
            errors
        );
    }
}
