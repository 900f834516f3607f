using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

public class StageFileErrors
{
    private const string Header =
        "code,name,counts_from,from_day,to_day,source_org,source_title,source_year,source_section,verified,note";

    private static readonly string[] Good =
    [
        "early,Early,pregnancy,0,97,WHO,Title,2020,Part 1,seen,",
        "late,Late,pregnancy,98,,WHO,Title,,,from memory,a note",
        "after,After,birth,0,41,,,,,common practice,",
        "longer,Longer,birth,42,,WHO,Title,2020,,computed,",
    ];

    [Fact]
    public void Are_none_in_a_good_file()
    {
        var stages = Parse(Good).Stages;
        Assert.Equal(["early", "late", "after", "longer"], stages.Select(stage => stage.Code));
        Assert.Equal(
            [
                "WHO, Title (2020), Part 1",
                "WHO, Title; from memory",
                "Common practice, no published source",
                "WHO, Title (2020); computed",
            ],
            stages.Select(stage => stage.Source)
        );
        Assert.Equal(
            new Stage("late", "Late", StageCount.Pregnancy, 98, null, "WHO, Title; from memory"),
            stages[1]
        );
    }

    [Fact]
    public void Do_not_come_from_the_order_of_the_rows() =>
        Assert.Equal(Parse(Good).Stages, Parse([.. Good.Reverse()]).Stages);

    [Theory]
    [InlineData(
        0,
        "early,Early,weeks,0,97,WHO,Title,2020,Part 1,seen,",
        "line 2: counts_from is 'weeks': it must be pregnancy or birth."
    )]
    [InlineData(
        0,
        ",Early,pregnancy,0,97,WHO,Title,2020,Part 1,seen,",
        "line 2: the code is missing."
    )]
    [InlineData(
        0,
        "early,,pregnancy,0,97,WHO,Title,2020,Part 1,seen,",
        "line 2: the name is missing."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,-1,97,WHO,Title,2020,Part 1,seen,",
        "line 2: from_day is -1: it must not be negative."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,0,13w6d,WHO,Title,2020,,seen,",
        "line 2: to_day is '13w6d': it must be a whole number of days."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,,97,WHO,Title,2020,,seen,",
        "line 2: from_day is '': it must be a whole number of days."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,9,8,WHO,Title,2020,,seen,",
        "line 2: to_day 8 is before from_day 9."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,0,97,,Title,2020,,seen,",
        "line 2: the source_org is missing."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,0,97,WHO,,2020,,seen,",
        "line 2: the source_title is missing."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,0,97,WHO,Title,2020,,maybe,",
        "line 2: verified is 'maybe': it must be seen, from memory, common practice, computed."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,0,97,WHO,Title,2020,,seen",
        "line 2: the number of fields is not that of the header."
    )]
    [InlineData(
        0,
        "early,\"Early\"x,pregnancy,0,97,WHO,Title,2020,,seen,",
        "line 2: a quotation mark is in the wrong place."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,1,97,WHO,Title,2020,,seen,",
        "line 2: the first stage counted from pregnancy begins on day 1: it must begin on day 0."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,0,95,WHO,Title,2020,,seen,",
        "line 3: a gap: 'early' ends on day 95 and 'late' begins on day 98."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,0,98,WHO,Title,2020,,seen,",
        "line 3: an overlap: 'early' ends on day 98 and 'late' begins on day 98."
    )]
    [InlineData(
        0,
        "early,Early,pregnancy,0,,WHO,Title,2020,,seen,",
        "line 2: 'early' has no to_day, yet 'late' on line 3 follows it."
    )]
    [InlineData(
        1,
        "late,Late,pregnancy,98,300,WHO,Title,2020,,seen,",
        "line 3: the last stage counted from pregnancy ends on day 300: leave its to_day empty."
    )]
    [InlineData(
        1,
        "late,Late,pregnancy,309,,WHO,Title,2020,,seen,",
        "line 3: from_day 309 is later than a stage can begin, day 308."
    )]
    [InlineData(
        3,
        "longer,Longer,birth,366,,WHO,Title,2020,,seen,",
        "line 5: from_day 366 is later than a stage can begin, day 365."
    )]
    [InlineData(
        3,
        "after,Longer,birth,42,,WHO,Title,2020,,seen,",
        "line 5: the code 'after' is already used on line 4."
    )]
    public void Name_file_and_line(int row, string replaced, string error)
    {
        var rows = (string[])Good.Clone();
        rows[row] = replaced;
        Assert.Contains($"stages.csv {error}", Errors(rows));
    }

    [Fact]
    public void Are_all_told_at_once_in_the_order_of_the_lines()
    {
        var errors = Errors([
            "early,,weeks,-4,97,WHO,Title,2020,,seen,",
            Good[1].Replace("from memory", "perhaps", StringComparison.Ordinal),
            "",
            Good[2],
            Good[3],
            Good[3],
        ]);
        Assert.Equal(
            [
                "stages.csv line 1: no usable stage counts from pregnancy.",
                "stages.csv line 2: the name is missing.",
                "stages.csv line 2: counts_from is 'weeks': it must be pregnancy or birth.",
                "stages.csv line 2: from_day is -4: it must not be negative.",
                "stages.csv line 3: verified is 'perhaps': it must be seen, from memory, common practice, computed.",
                "stages.csv line 6: 'longer' has no to_day, yet 'longer' on line 7 follows it.",
                "stages.csv line 7: the code 'longer' is already used on line 6.",
            ],
            errors
        );
    }

    [Theory]
    [InlineData("")]
    [InlineData("code,name")]
    [InlineData(Header)]
    [InlineData(Header + ",colour")]
    [InlineData(Header + ",code")]
    [InlineData("\"")]
    public void Include_a_file_without_a_usable_header_or_rows(string text) =>
        Assert.NotEmpty(
            Assert
                .Throws<CatalogueException>(() =>
                    StageScheme.Parse(new StringReader(text), "stages.csv")
                )
                .Errors
        );

    [Fact]
    public void Stand_in_the_message() =>
        Assert.Contains(
            "stages.csv line 1: there is no column 'colour'.",
            Assert
                .Throws<CatalogueException>(() =>
                    StageScheme.Parse(new StringReader($"{Header},colour"), "stages.csv")
                )
                .Message,
            StringComparison.Ordinal
        );

    private static StageScheme Parse(string[] rows) =>
        StageScheme.Parse(new StringReader(string.Join('\n', [Header, .. rows])), "stages.csv");

    private static IReadOnlyList<string> Errors(string[] rows) =>
        Assert.Throws<CatalogueException>(() => Parse(rows)).Errors;
}
