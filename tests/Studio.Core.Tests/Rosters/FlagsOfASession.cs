using Studio.Core.Rosters;
using Studio.Core.Tests.Booking;

namespace Studio.Core.Tests.Rosters;

/// <summary>A session to come needs somebody to teach it, qualified on its date; common practice, no published source.</summary>
public class FlagsOfASession
{
    private static SessionState InDays(int days) =>
        new(
            41,
            "Invented",
            Someone.Day.PlusDays(days),
            Someone.Day,
            InstructorId: 3,
            "Ilvane Corradine",
            "prenatal",
            Qualified: true
        );

    [Fact]
    public void Taught_by_somebody_qualified_it_has_no_flag() => Assert.Empty(Flags.Of(InDays(0)));

    [Theory]
    [InlineData(0, FlagSeverity.Urgent, "today")]
    [InlineData(1, FlagSeverity.Urgent, "tomorrow")]
    [InlineData(2, FlagSeverity.Attention, "there is a day to find somebody")]
    public void Without_an_instructor_it_is_flagged_for_the_desk_alone(
        int days,
        FlagSeverity severity,
        string because
    )
    {
        var flag = Assert.Single(
            Flags.Of(
                InDays(days) with
                {
                    InstructorId = null,
                    InstructorName = null,
                    Qualified = false,
                }
            )
        );
        Assert.Equal(FlagKind.NoInstructor, flag.Kind);
        Assert.True(severity == flag.Severity, because);
        Assert.Equal(41, flag.SessionId);
        Assert.Null(flag.ClientId);
        Assert.Null(flag.ForInstructor);
    }

    [Theory]
    [InlineData(1, FlagSeverity.Urgent)]
    [InlineData(2, FlagSeverity.Attention)]
    public void Without_a_qualification_on_its_date_it_is_flagged_for_her_too(
        int days,
        FlagSeverity severity
    )
    {
        var flag = Assert.Single(Flags.Of(InDays(days) with { Qualified = false }));
        Assert.Equal(FlagKind.Qualification, flag.Kind);
        Assert.Equal(severity, flag.Severity);
        Assert.Equal(3, flag.InstructorId);
        Assert.Contains("Ilvane Corradine", flag.ForDesk, StringComparison.Ordinal);
        Assert.Contains("prenatal", flag.ForInstructor, StringComparison.Ordinal);
    }
}
