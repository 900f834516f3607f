using Studio.Core.Rosters;
using Studio.Core.Staff;
using Studio.Core.Timetable;

namespace Studio.Core.Tests.Staff;

/// <summary>Sixty days ahead: common practice, no published source.</summary>
public class WhatRunsOut
{
    private static readonly LocalDate Today = new(2027, 3, 1);

    [Theory]
    [InlineData(-1, QualificationStatus.Expired)]
    [InlineData(0, QualificationStatus.EndsSoon)]
    [InlineData(60, QualificationStatus.EndsSoon)]
    [InlineData(61, QualificationStatus.Valid)]
    public void Is_said_sixty_days_ahead(int days, QualificationStatus status)
    {
        Assert.Equal(status, QualificationRules.On(Today.PlusDays(days), false, Today));
        Assert.Equal(
            QualificationStatus.Withdrawn,
            QualificationRules.On(Today.PlusDays(days), true, Today)
        );
    }

    [Fact]
    public void Is_not_what_has_been_renewed()
    {
        var old = new HeldQualification("prenatal", Today.PlusDays(-300), Today.PlusDays(5));
        Assert.Equal(old, Assert.Single(QualificationRules.RunningOut([old], Today)));
        Assert.Empty(
            QualificationRules.RunningOut(
                [old, new("prenatal", Today.PlusDays(-1), Today.PlusDays(364))],
                Today
            )
        );
    }

    [Theory]
    [InlineData(40, 0, FlagSeverity.Info)]
    [InlineData(40, 2, FlagSeverity.Attention)]
    [InlineData(14, 0, FlagSeverity.Attention)]
    public void Is_louder_when_it_is_near_or_sessions_lie_after_it(
        int days,
        int sessions,
        FlagSeverity severity
    )
    {
        var ends = Today.PlusDays(days);
        var flag = Flags.Of(
            new EndingQualification(
                3,
                "Ilvane Corradine",
                "postnatal",
                ends,
                Today,
                [.. Enumerable.Range(1, sessions).Select(i => ends.PlusDays(i))]
            )
        );
        Assert.Equal(severity, flag.Severity);
        Assert.Equal((null, 3), (flag.ClientId, flag.InstructorId));
        Assert.Contains("postnatal", flag.ForInstructor, StringComparison.Ordinal);
        Assert.Contains("Ilvane Corradine", flag.ForDesk, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Absence.Away, "away")]
    [InlineData(Absence.Left, "no longer")]
    public void A_session_whose_instructor_is_not_there_has_nobody(Absence absence, string word)
    {
        var flag = Assert.Single(
            Flags.Of(
                new SessionState(
                    41,
                    "Invented",
                    Today.PlusDays(1),
                    Today,
                    3,
                    "Ilvane Corradine",
                    "prenatal",
                    Qualified: true,
                    absence
                )
            )
        );
        Assert.Equal((FlagKind.NoInstructor, FlagSeverity.Urgent), (flag.Kind, flag.Severity));
        Assert.Contains("nobody to teach it", flag.ForDesk, StringComparison.Ordinal);
        Assert.Contains(word.Split(' ')[^1], flag.ForDesk, StringComparison.Ordinal);
    }
}
