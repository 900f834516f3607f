using Studio.Core.Catalogue;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Movements;

/// <summary>Which two rules contradict each other, and which only add to one another.</summary>
public class ContradictingRules
{
    private const string Rules = "movement_rules.csv";

    private static readonly string[] Columns = TheCatalogue.TextOf(Rules).Split('\n')[0].Split(',');

    private static readonly Dictionary<string, string> One = new(StringComparer.Ordinal)
    {
        ["id"] = "one",
        ["stages"] = "second-trimester",
        ["movement"] = "tree",
        ["verdict"] = "adapted",
        ["for_her"] = "This way.",
        ["instruction"] = "this way",
        ["source"] = "common-practice",
    };

    [Theory]
    [InlineData("", "", "nothing but the instruction differs")]
    [InlineData("stages", "second-trimester;third-trimester", "the stages meet")]
    [InlineData("stages", "", "every stage meets one")]
    [InlineData("from_ga", "20w0d", "the weeks meet")]
    [InlineData("policy", "lifting=light", "both count under the light policy")]
    [InlineData("source", "M26", "sources that disagree need a policy")]
    public void The_same_person_cannot_be_told_two_things_at_once(
        string column,
        string value,
        string because
    )
    {
        var first = TheCatalogue.TextOf(Rules).TrimEnd('\n').Split('\n').Length + 1;

        var errors = TheCatalogue.ErrorsOf((Rules, text => Add(text, One, Other(column, value))));

        Assert.Equal(
            [
                $"{Rules} line {first + 1}: it contradicts 'one' on line {first}: the same person, the same movements, as strict, and another instruction.",
            ],
            errors
        );
        Assert.NotEmpty(because);
    }

    [Theory]
    [InlineData("verdict", "replaced", "strictness decides")]
    [InlineData("factor", "back-pain", "another factor adds to it")]
    [InlineData("movement", "tandem-stand", "another movement")]
    [InlineData("movement", "tree;tandem-stand", "another target")]
    [InlineData("stages", "third-trimester", "the stages do not meet")]
    [InlineData("instruction", "this way", "they say the same")]
    public void What_is_about_something_else_only_adds_to_it(
        string column,
        string value,
        string because
    ) => Assert.True(Parse(One, Other(column, value)).MovementRules.Count > 2, because);

    [Fact]
    public void Policies_that_exclude_each_other_never_meet()
    {
        var one = new Dictionary<string, string>(One) { ["policy"] = "lifting=light" };

        Assert.NotEmpty(Parse(one, Other("policy", "lifting=by-weight|by-symptoms")).MovementRules);
        Assert.Single(
            TheCatalogue.ErrorsOf(
                (Rules, text => Add(text, one, Other("policy", "lifting=light|by-weight")))
            )
        );
    }

    [Fact]
    public void A_rule_that_leaves_it_as_taught_contradicts_nothing()
    {
        var one = new Dictionary<string, string>(One) { ["verdict"] = "as-taught" };

        Assert.NotEmpty(Parse(one, Other("verdict", "as-taught")).MovementRules);
    }

    private static RuleBook Parse(params Dictionary<string, string>[] rows) =>
        TheCatalogue.Parse((Rules, text => Add(text, rows)));

    private static Dictionary<string, string> Other(string column, string value)
    {
        var other = new Dictionary<string, string>(One)
        {
            ["id"] = "two",
            ["instruction"] = "that way",
        };
        if (column.Length > 0)
            other[column] = value;
        return other;
    }

    private static string Add(string text, params Dictionary<string, string>[] rows) =>
        string.Join(
            '\n',
            [
                text.TrimEnd('\n'),
                .. rows.Select(row =>
                    string.Join(',', Columns.Select(c => row.GetValueOrDefault(c, "")))
                ),
            ]
        );
}
