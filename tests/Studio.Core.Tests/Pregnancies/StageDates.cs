using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>The dates of the stages in one pregnancy, worked out by hand from the due date and the day counts.</summary>
public class StageDates
{
    private static readonly LocalDate Due = new(2025, 10, 13);
    private static readonly Pregnancy Expecting = new() { DueDate = Due };

    [Fact]
    public void Stay_open_at_the_end_while_there_is_no_birth() =>
        Assert.Equal(
            [
                "first-trimester 2025-01-06 2025-04-13",
                "second-trimester 2025-04-14 2025-07-20",
                "third-trimester 2025-07-21 open",
            ],
            Written(Expecting)
        );

    [Fact]
    public void End_the_day_before_the_birth_and_go_on_from_it() =>
        Assert.Equal(
            [
                "first-trimester 2025-01-06 2025-04-13",
                "second-trimester 2025-04-14 2025-07-20",
                "third-trimester 2025-07-21 2025-10-19",
                "early-recovery 2025-10-20 2025-11-30",
                "postnatal 2025-12-01 2026-01-11",
                "later-postnatal 2026-01-12 open",
            ],
            Written(Expecting with { BornOn = new(2025, 10, 20) })
        );

    [Fact]
    public void Leave_out_what_was_never_reached() =>
        Assert.Equal(
            [
                "first-trimester 2025-01-06 2025-04-13",
                "second-trimester 2025-04-14 2025-07-13",
                "early-recovery 2025-07-14 2025-08-24",
                "postnatal 2025-08-25 2025-10-05",
                "later-postnatal 2025-10-06 open",
            ],
            Written(Expecting with { BornOn = new(2025, 7, 14) })
        );

    [Fact]
    public void End_before_a_loss() =>
        Assert.Equal(
            ["first-trimester 2025-01-06 2025-03-31"],
            Written(Expecting with { EndedOn = new(2025, 4, 1) })
        );

    [Fact]
    public void Begin_with_the_birth_when_there_is_no_due_date() =>
        Assert.Equal(
            "early-recovery 2025-10-20 2025-11-30",
            Written(new() { BornOn = new(2025, 10, 20) })[0]
        );

    [Fact]
    public void Are_none_when_nothing_is_known() => Assert.Empty(Given.Stages.Bands(new()));

    [Theory]
    [InlineData(
        "2025-01-05",
        "first-trimester 2025-01-06 2025-04-13",
        "before it began, the first is next"
    )]
    [InlineData(
        "2025-01-06",
        "second-trimester 2025-04-14 2025-07-20",
        "on its first day a stage is no longer next"
    )]
    [InlineData("2025-07-20", "third-trimester 2025-07-21 open", "tomorrow")]
    [InlineData("2025-07-21", null, "nobody knows the day of birth")]
    public void Tell_what_comes_next(string day, string? next, string because) =>
        Assert.True(next == Write(Given.Stages.Next(Expecting, Given.Day(day))), because);

    [Theory]
    [InlineData("2025-08-01", "early-recovery 2025-10-20 2025-11-30", "the birth is known by now")]
    [InlineData("2025-12-01", "later-postnatal 2026-01-12 open", "from the first postnatal day")]
    [InlineData("2026-01-12", null, "the last stage has come")]
    public void Tell_what_comes_next_after_a_birth(string day, string? next, string because) =>
        Assert.True(
            next
                == Write(
                    Given.Stages.Next(Expecting with { BornOn = new(2025, 10, 20) }, Given.Day(day))
                ),
            because
        );

    [Fact]
    public void Tell_nothing_after_a_loss() =>
        Assert.Null(
            Given.Stages.Next(Expecting with { EndedOn = new(2025, 4, 1) }, new(2025, 3, 1))
        );

    private static List<string?> Written(Pregnancy pregnancy) =>
        [.. Given.Stages.Bands(pregnancy).Select(Write)];

    private static string? Write(StageBand? band) =>
        band is null
            ? null
            : $"{band.Stage.Code} {band.From:uuuu-MM-dd} {band.To?.ToString("uuuu-MM-dd", null) ?? "open"}";
}
