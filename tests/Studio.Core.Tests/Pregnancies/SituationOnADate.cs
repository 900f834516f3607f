using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>
/// Where she is on a date. Trimesters: ACOG, Committee Opinion 700 (2017), seen; term: ACOG/SMFM, Committee Opinion 579
/// (2013), seen; six and twelve weeks after birth: WHO and ACOG, Committee Opinion 736 (2018), seen.
/// </summary>
public class SituationOnADate
{
    private static readonly LocalDate Due = new(2026, 6, 30);
    private static readonly Pregnancy Expecting = new() { DueDate = Due };

    [Theory]
    [InlineData(-1, "BeforeDates", null, "the day before 0w 0d")]
    [InlineData(0, "Pregnant", "first-trimester", "0w 0d")]
    [InlineData(97, "Pregnant", "first-trimester", "13w 6d, the last day of the first trimester")]
    [InlineData(98, "Pregnant", "second-trimester", "14w 0d")]
    [InlineData(
        195,
        "Pregnant",
        "second-trimester",
        "27w 6d, the last day of the second trimester"
    )]
    [InlineData(196, "Pregnant", "third-trimester", "28w 0d")]
    [InlineData(287, "Pregnant", "third-trimester", "41w 0d is still the third trimester")]
    [InlineData(
        400,
        "Pregnant",
        "third-trimester",
        "no word of a birth keeps her pregnant as far as anybody knows"
    )]
    public void Before_a_birth_follows_gestational_age(
        int day,
        string phase,
        string? stage,
        string because
    )
    {
        var situation = Given.Stages.On(Expecting, Due.PlusDays(day - 280));
        Assert.True((phase, stage) == (situation.Phase.ToString(), situation.Stage?.Code), because);
        Assert.True((day < 0 ? null : day) == situation.Age?.Days, because);
        Assert.Null(situation.DaysSinceBirth);
    }

    [Theory]
    [InlineData(0, "early-recovery", "the day of birth")]
    [InlineData(41, "early-recovery", "the last day of six weeks")]
    [InlineData(42, "postnatal", "six weeks are over")]
    [InlineData(83, "postnatal", "the last day of twelve weeks")]
    [InlineData(84, "later-postnatal", "twelve weeks are over")]
    [InlineData(3650, "later-postnatal", "the last stage stays open")]
    public void From_the_birth_on_follows_the_days_since(int since, string stage, string because)
    {
        foreach (var born in (LocalDate[])[Due, Due.PlusDays(-60), Due.PlusDays(20)])
        {
            var situation = Given.Stages.On(Expecting with { BornOn = born }, born.PlusDays(since));
            Assert.True((Phase.Born, stage) == (situation.Phase, situation.Stage?.Code), because);
            Assert.True(since == situation.DaysSinceBirth, because);
            Assert.Equal(
                (null, null, false, false),
                (situation.Age, situation.Term, situation.MayHaveGivenBirth, situation.PastPostterm)
            );
        }
    }

    [Fact]
    public void Before_a_recorded_birth_is_still_pregnant()
    {
        var situation = Given.Stages.On(
            Expecting with
            {
                BornOn = Due.PlusDays(-60),
            },
            Due.PlusDays(-61)
        );
        Assert.Equal(
            (Phase.Pregnant, "31w 2d", "third-trimester"),
            (situation.Phase, situation.Age.ToString(), situation.Stage?.Code)
        );
    }

    [Fact]
    public void Before_a_birth_without_a_due_date_is_not_known() =>
        Assert.Equal(
            new Situation { On = Due, Phase = Phase.Unknown },
            Given.Stages.On(new() { BornOn = Due.PlusDays(1) }, Due)
        );

    [Fact]
    public void Without_a_pregnancy_is_not_known() =>
        Assert.Equal(new Situation { On = Due, Phase = Phase.Unknown }, Given.Stages.On(null, Due));

    [Fact]
    public void From_a_loss_on_has_no_age_and_no_stage()
    {
        var lost = Expecting with { EndedOn = Due.PlusDays(-200) };
        Assert.Equal(Phase.Pregnant, Given.Stages.On(lost, Due.PlusDays(-201)).Phase);
        foreach (var later in (int[])[-200, -199, 0, 500])
            Assert.Equal(
                new Situation { On = Due.PlusDays(later), Phase = Phase.Ended },
                Given.Stages.On(lost, Due.PlusDays(later))
            );
    }

    [Fact]
    public void After_a_loss_is_not_overruled_by_a_birth() =>
        Assert.Equal(
            Phase.Ended,
            Given
                .Stages.On(
                    Expecting with
                    {
                        BornOn = Due,
                        EndedOn = Due.PlusDays(3),
                    },
                    Due.PlusDays(3)
                )
                .Phase
        );

    [Theory]
    [InlineData(258, false, false, "36w 6d")]
    [InlineData(259, true, false, "37w 0d: she may have given birth by then")]
    [InlineData(293, true, false, "41w 6d")]
    [InlineData(294, true, true, "42w 0d: past postterm")]
    public void Near_the_due_date_says_what_may_have_happened(
        int day,
        bool mayHaveGivenBirth,
        bool pastPostterm,
        string because
    )
    {
        var situation = Given.Stages.On(Expecting, Due.PlusDays(day - 280));
        Assert.True(
            (mayHaveGivenBirth, pastPostterm)
                == (situation.MayHaveGivenBirth, situation.PastPostterm),
            because
        );
    }

    [Fact]
    public void Once_the_birth_is_known_nothing_may_have_happened_before_it()
    {
        var situation = Given.Stages.On(
            Expecting with
            {
                BornOn = Due.PlusDays(16),
            },
            Due.PlusDays(15)
        );
        Assert.Equal((false, true), (situation.MayHaveGivenBirth, situation.PastPostterm));
    }

    [Fact]
    public void Before_a_recorded_loss_no_birth_may_have_happened() =>
        Assert.False(
            Given.Stages.On(Expecting with { EndedOn = Due }, Due.PlusDays(-1)).MayHaveGivenBirth
        );

    [Theory]
    [InlineData(139, null, "19w 6d")]
    [InlineData(140, "preterm", "20w 0d, the usual US reporting limit (from memory)")]
    [InlineData(258, "preterm", "36w 6d")]
    [InlineData(259, "early term", "37w 0d")]
    [InlineData(273, "full term", "39w 0d")]
    [InlineData(287, "late term", "41w 0d")]
    [InlineData(294, "postterm", "42w 0d")]
    public void Names_the_term_a_birth_would_have(int day, string? term, string because) =>
        Assert.True(term == Given.Stages.On(Expecting, Due.PlusDays(day - 280)).Term, because);

    [Fact]
    public void Is_the_same_for_twins() =>
        Assert.Equal(
            Given.Stages.On(Expecting, Due),
            Given.Stages.On(Expecting with { Babies = 2 }, Due)
        );

    [Fact]
    public void Follows_a_revised_due_date()
    {
        var day = Given.Day("2025-04-14");
        Assert.Equal(
            "second-trimester",
            Given.Stages.On(new() { DueDate = Given.Day("2025-10-13") }, day).Stage?.Code
        );
        Assert.Equal(
            "first-trimester",
            Given.Stages.On(new() { DueDate = Given.Day("2025-10-21") }, day).Stage?.Code
        );
    }
}
