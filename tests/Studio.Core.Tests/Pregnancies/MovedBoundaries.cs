using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

public class MovedBoundaries
{
    private static StageScheme Scheme => Given.Stages;

    [Fact]
    public void Move_the_end_of_the_stage_before()
    {
        var moved = Scheme.WithBoundary("second-trimester", 91).Expected();
        Assert.Equal(
            [(0, 90), (91, 195), (196, null)],
            moved
                .Stages.Where(stage => stage.CountsFrom == StageCount.Pregnancy)
                .Select(stage => (stage.FromDay, stage.ToDay))
        );
        Assert.Equal(
            "second-trimester",
            moved
                .On(
                    new() { DueDate = new(2026, 6, 30) },
                    new LocalDate(2026, 6, 30).PlusDays(91 - 280)
                )
                .Stage?.Code
        );
        Assert.Equal(98, Scheme.Stages[1].FromDay);
    }

    [Fact]
    public void No_longer_claim_the_published_source_until_they_are_moved_back()
    {
        var moved = Scheme.WithBoundary("postnatal", 56).Expected();
        Assert.StartsWith(
            "Set by the studio; published otherwise: WHO",
            moved.Stages[3].Source,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Set by the studio; published otherwise: ACOG",
            moved.Stages[4].Source,
            StringComparison.Ordinal
        );
        Assert.Equal(Scheme.Stages[5], moved.Stages[5]);
        Assert.Equal(
            Scheme.Stages,
            moved
                .WithBoundary("postnatal", 49)
                .Expected()
                .WithBoundary("postnatal", 42)
                .Expected()
                .Stages
        );
    }

    [Theory]
    [InlineData("fourth-trimester", 20, "no-such-stage", "there is none")]
    [InlineData("first-trimester", 1, "stage-begins-the-count", "a count begins on day 0")]
    [InlineData("early-recovery", 0, "stage-begins-the-count", "so does the one after birth")]
    [InlineData("second-trimester", 0, "stage-left-empty", "nothing would be left of the first")]
    [InlineData("second-trimester", 196, "stage-left-empty", "nothing would be left of the second")]
    [InlineData("third-trimester", 309, "stage-left-empty", "no pregnancy reaches it")]
    [InlineData("later-postnatal", 366, "stage-left-empty", "more than a year after the birth")]
    [InlineData("third-trimester", int.MaxValue, "stage-left-empty", "absurd")]
    [InlineData("third-trimester", int.MinValue, "stage-left-empty", "absurd")]
    public void Are_refused_where_they_would_break_the_scheme(
        string code,
        int fromDay,
        string refused,
        string because
    )
    {
        Assert.False(Scheme.WithBoundary(code, fromDay).TryGet(out _, out var refusal), because);
        Assert.True(refused == refusal?.Code, because);
    }

    [Theory]
    [InlineData("second-trimester", 1, "a stage of one day before it")]
    [InlineData("second-trimester", 195, "a stage of one day")]
    [InlineData("third-trimester", 308, "the last day there is")]
    [InlineData("later-postnatal", 365, "a year after the birth")]
    public void Can_go_as_far_as_a_day_is_left(string code, int fromDay, string because) =>
        Assert.True(Scheme.WithBoundary(code, fromDay).TryGet(out _, out _), because);
}
