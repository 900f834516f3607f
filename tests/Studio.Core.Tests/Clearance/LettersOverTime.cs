using Studio.Core.Catalogue;
using Studio.Core.Clearance;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Clearance;

public class LettersOverTime
{
    private static readonly StudioPolicies Policies = new() { ClearanceMostDays = 100 };
    private static readonly Pregnancy Expecting = new() { DueDate = Given.Day("2027-03-01") };
    private static readonly Pregnancy Born = Expecting with { BornOn = Given.Day("2026-11-20") };

    [Theory]
    [InlineData("2026-10-31", false, "the day before it was written")]
    [InlineData("2026-11-01", true, "the day it was written")]
    [InlineData("2026-12-14", true, "its own last day")]
    [InlineData("2026-12-15", false, "the day after its last")]
    public void A_letter_counts_from_its_date_to_its_own_last_day(
        string day,
        bool counts,
        string because
    ) => Assert.True(counts == IsValid("2026-11-01", "2026-12-14", Expecting, day), because);

    // PAR-Q+ 2020 (reference row CL13, from memory): a clearance lapses after 12 months at most. The number is the studio's.
    [Theory]
    [InlineData("2027-02-09", true, "100 days after its date")]
    [InlineData("2027-02-10", false, "101 days after its date")]
    public void The_policys_length_goes_before_a_later_expiry(
        string day,
        bool counts,
        string because
    ) => Assert.True(counts == IsValid("2026-11-01", "2027-12-31", Expecting, day), because);

    [Fact]
    public void Without_a_policys_length_its_own_expiry_decides() =>
        Assert.True(
            ClearanceRules.ValidOn(
                Letter("2026-11-01", "2027-12-31"),
                Expecting,
                Given.Day("2027-12-31"),
                Given.Stages,
                Policies with
                {
                    ClearanceMostDays = null,
                }
            )
        );

    // The design of this program: birth ends it, a postnatal one is needed (as the separate postpartum questionnaire, CL07, also implies).
    [Theory]
    [InlineData("2026-11-19", "2026-11-19", true, "the day before the birth it still counted")]
    [InlineData("2026-11-19", "2026-11-20", false, "the day of birth ends a letter written before")]
    [InlineData("2026-11-19", "2026-12-01", false, "and it stays ended")]
    [InlineData("2026-11-20", "2026-12-01", true, "one written on the day of birth is postnatal")]
    [InlineData("2026-11-25", "2026-12-01", true, "one written since the birth counts")]
    public void Birth_ends_a_letter_written_before_it(
        string issued,
        string day,
        bool counts,
        string because
    ) => Assert.True(counts == IsValid(issued, "2027-01-31", Born, day), because);

    [Fact]
    public void A_withdrawn_letter_never_counts()
    {
        var letter = Letter("2026-11-01", "2026-12-14") with { Withdrawn = true };

        Assert.Null(ClearanceRules.ValidUntil(letter, Expecting, Given.Stages, Policies));
        Assert.False(
            ClearanceRules.ValidOn(
                letter,
                Expecting,
                Given.Day("2026-11-10"),
                Given.Stages,
                Policies
            )
        );
    }

    [Fact]
    public void A_letter_that_expires_before_its_date_never_counts() =>
        Assert.Null(
            ClearanceRules.ValidUntil(
                Letter("2026-12-14", "2026-12-13"),
                Expecting,
                Given.Stages,
                Policies
            )
        );

    [Theory]
    [InlineData("2026-11-29", ClearanceStatus.Valid, "15 days before its last")]
    [InlineData(
        "2026-11-30",
        ClearanceStatus.EndsSoon,
        "14 days before its last: the studio's setting"
    )]
    [InlineData("2026-12-14", ClearanceStatus.EndsSoon, "its last day")]
    [InlineData("2026-12-15", ClearanceStatus.Expired, "the day after")]
    [InlineData("2026-10-31", ClearanceStatus.None, "before it was written")]
    public void A_card_says_how_the_letters_stand(
        string day,
        ClearanceStatus status,
        string because
    )
    {
        var standing = Standing(Expecting, day, Letter("2026-11-01", "2026-12-14"));

        Assert.True(status == standing.Status, because);
        Assert.False(standing.EndedByBirth);
        Assert.Equal(
            status == ClearanceStatus.None ? null : Given.Day("2026-12-14"),
            standing.ValidUntil
        );
    }

    [Fact]
    public void A_card_says_when_the_birth_ended_the_letter()
    {
        var standing = Standing(Born, "2026-12-01", Letter("2026-11-01", "2027-01-15"));

        Assert.Equal(
            new ClearanceStanding(
                ClearanceStatus.Expired,
                Given.Day("2026-11-19"),
                EndedByBirth: true
            ),
            standing
        );
    }

    [Fact]
    public void The_letter_that_lasts_longest_decides_whatever_the_order()
    {
        var (one, other) = (Letter("2026-11-01", "2026-12-01"), Letter("2026-10-01", "2026-12-31"));

        Assert.Equal(
            Standing(Expecting, "2026-11-15", one, other),
            Standing(Expecting, "2026-11-15", other, one)
        );
        Assert.Equal(
            Given.Day("2026-12-31"),
            Standing(Expecting, "2026-11-15", one, other).ValidUntil
        );
    }

    // Due 1 March 2027: 14w 0d is 31 August and 28w 0d is 7 December (ACOG Committee Opinion 700, reference rows of stages.csv).
    [Theory]
    [InlineData("2026-12-06", true, "27w 6d, the last day of the stage it was written in")]
    [InlineData("2026-12-07", false, "28w 0d, the first day of the next")]
    public void Where_the_policy_says_so_a_letter_ends_with_its_stage(
        string day,
        bool counts,
        string because
    ) =>
        Assert.True(
            counts
                == ClearanceRules.ValidOn(
                    Letter("2026-11-01", "2027-01-31"),
                    Expecting,
                    Given.Day(day),
                    Given.Stages,
                    Policies with
                    {
                        LetterEndsWithStage = true,
                    }
                ),
            because
        );

    private static ClearanceLetter Letter(string issued, string expires) =>
        new(Given.Day(issued), Given.Day(expires));

    private static bool IsValid(string issued, string expires, Pregnancy pregnancy, string day) =>
        ClearanceRules.ValidOn(
            Letter(issued, expires),
            pregnancy,
            Given.Day(day),
            Given.Stages,
            Policies
        );

    private static ClearanceStanding Standing(
        Pregnancy pregnancy,
        string day,
        params ClearanceLetter[] letters
    ) => ClearanceRules.On(letters, pregnancy, Given.Day(day), Given.Stages, Policies);
}
