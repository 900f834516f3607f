using Studio.Core.Rosters;

namespace Studio.Core.Tests.Rosters;

/// <summary>Common practice, no published source: what is remembered after a week is no longer what was seen.</summary>
public class WhenNotesAreWritten
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 18, 0);
    private static readonly LocalDate On = new(2026, 3, 2);

    [Fact]
    public void Not_before_the_start() =>
        Assert.Equal("not-begun", Asked(Start - Duration.Epsilon, On)?.Code);

    [Fact]
    public void From_the_start_on() => Assert.Null(Asked(Start, On));

    [Theory]
    [InlineData(7, null)]
    [InlineData(8, "note-closed")]
    public void Until_the_end_of_the_seventh_day(int days, string? code) =>
        Assert.Equal(code, Asked(Start, On.PlusDays(days))?.Code);

    [Fact]
    public void Says_until_when_they_could_be() =>
        Assert.Contains("9 March 2026", Asked(Start, On.PlusDays(8))!.Message);

    [Fact]
    public void Never_about_a_session_that_was_cancelled() =>
        Assert.Equal("session-cancelled", ClassNoteRules.WhyNot(false, Start, On, Start, On)?.Code);

    private static Refusal? Asked(Instant now, LocalDate today) =>
        ClassNoteRules.WhyNot(true, Start, On, now, today);
}
