using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>Which births can be what was reported.</summary>
public class BirthsReported
{
    private static readonly LocalDate Due = new(2026, 6, 30);
    private static readonly Pregnancy Hers = new() { DueDate = Due };

    // 20w 0d is the usual US limit of reporting a birth (from memory); 44w 0d is the studio's own limit.
    [Theory]
    [InlineData("19w 6d", "birth-too-early")]
    [InlineData("20w 0d", null)]
    [InlineData("36w 6d", null)]
    [InlineData("40w 0d", null)]
    [InlineData("44w 0d", null)]
    [InlineData("44w 1d", "birth-too-late")]
    public void A_birth_lies_between_20_and_44_weeks(string age, string? code)
    {
        var on = Day(age);
        var refusal = BirthRules.WhyNot(Hers, on, today: on);
        Assert.Equal(code, refusal?.Code);
        if (refusal is not null)
        {
            Assert.Equal("on", refusal.Field);
            Assert.Equal(RefusalKind.Invalid, refusal.Kind);
            Assert.Contains(age, refusal.Message, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(0, null, "today")]
    [InlineData(1, "birth-in-future", "tomorrow")]
    public void A_birth_is_reported_once_it_has_happened(int days, string? code, string because)
    {
        var today = Day("39w 0d");
        Assert.True(code == BirthRules.WhyNot(Hers, today.PlusDays(days), today)?.Code, because);
    }

    [Fact]
    public void Without_a_due_date_any_day_that_has_come_may_be_the_birth()
    {
        var unknown = new Pregnancy();
        Assert.Null(BirthRules.WhyNot(unknown, Due.PlusDays(-2000), Due));
        Assert.Equal("birth-in-future", BirthRules.WhyNot(unknown, Due.PlusDays(1), Due)?.Code);
        Assert.False(BirthRules.IsPreterm(unknown, Due.PlusDays(-200)));
    }

    // Preterm ends at 37w 0d: ACOG/SMFM, Committee Opinion 579 (2013), Box 1.
    [Theory]
    [InlineData("36w 6d", true)]
    [InlineData("37w 0d", false)]
    [InlineData("41w 0d", false)]
    public void Preterm_is_before_37_completed_weeks(string age, bool preterm) =>
        Assert.Equal(preterm, BirthRules.IsPreterm(Hers, Day(age)));

    [Theory]
    [InlineData("19w 6d", false)]
    [InlineData("20w 0d", true)]
    [InlineData("42w 3d", true)]
    public void Can_be_told_from_20_weeks_until_it_or_a_loss_is(string age, bool can)
    {
        var on = Day(age);
        Assert.Equal(can, BirthRules.CanBeReported(Hers, on));
        Assert.False(BirthRules.CanBeReported(Hers with { BornOn = on }, on));
        Assert.False(BirthRules.CanBeReported(Hers with { EndedOn = on }, on));
        Assert.False(BirthRules.CanBeReported(null, on));
    }

    [Theory]
    [InlineData("36w 6d", true)]
    [InlineData("37w 0d", false)]
    public void Before_37_weeks_somebody_rings_her_once(string age, bool rung)
    {
        var told = Hers with { BornOn = Day(age), AwaitsCall = true };
        Assert.Equal(rung, BirthRules.IsToBeRung(told));
        Assert.False(BirthRules.IsToBeRung(told with { AwaitsCall = false }));
    }

    private static LocalDate Day(string age) =>
        GestationalAge.TryParse(age, out var on)
            ? Due.PlusDays(on.Days - GestationalAge.AtDueDate)
            : throw new FormatException(age);
}
