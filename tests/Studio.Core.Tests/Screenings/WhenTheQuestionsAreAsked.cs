using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Screenings;

/// <summary>
/// No published source gives an interval in pregnancy (reference row CL14); a change in health, a warning sign and the
/// crossing of a week at which a rule starts are the moments it names.
/// </summary>
public class WhenTheQuestionsAreAsked
{
    // Due 1 March 2027: 28w 0d, the third trimester, begins on 7 December 2026.
    private static readonly Pregnancy Expecting = new() { DueDate = Given.Day("2027-03-01") };
    private static readonly StudioPolicies Policies = new() { ScreeningMostDays = 30 };

    [Theory]
    [InlineData("2026-11-09", "Never", ScreeningStatus.None, "the day before she answered")]
    [InlineData("2026-11-10", "", ScreeningStatus.Current, "the day she answered")]
    [InlineData("2026-12-06", "", ScreeningStatus.Current, "27w 6d, the last day of her stage")]
    [InlineData("2026-12-07", "NewStage", ScreeningStatus.Current, "28w 0d, a new stage: asked")]
    [InlineData("2026-12-10", "NewStage", ScreeningStatus.Current, "30 days after")]
    [InlineData("2026-12-11", "Interval NewStage", ScreeningStatus.Due, "31 days after")]
    public void By_the_policies_interval_and_at_a_new_stage(
        string day,
        string why,
        ScreeningStatus status,
        string because
    ) => Check(Answered("2026-11-10"), day, why, status, because, Policies);

    [Theory]
    [InlineData("2026-12-06", ScreeningStatus.Current, "27w 6d")]
    [InlineData("2026-12-07", ScreeningStatus.Due, "28w 0d")]
    public void Where_the_policy_says_so_a_new_stage_needs_them(
        string day,
        ScreeningStatus status,
        string because
    ) =>
        Check(
            Answered("2026-11-10"),
            day,
            status == ScreeningStatus.Due ? "NewStage" : "",
            status,
            because,
            Policies with
            {
                ScreeningAtStage = ScreeningAtStage.Needed,
            }
        );

    [Theory]
    [InlineData("2026-11-14", "", ScreeningStatus.Current, "the day before the sign")]
    [InlineData("2026-11-15", "WarningSign", ScreeningStatus.Due, "the day of the sign")]
    [InlineData("2026-11-25", "WarningSign", ScreeningStatus.Due, "after a letter lifted the hold")]
    public void After_a_warning_sign(
        string day,
        string why,
        ScreeningStatus status,
        string because
    ) =>
        Check(
            Answered("2026-11-10") with
            {
                Holds = [new Hold(Given.Day("2026-11-15"), Given.Day("2026-11-20"))],
            },
            day,
            why,
            status,
            because,
            Policies
        );

    [Fact]
    public void Answered_on_the_day_of_the_sign_they_count() =>
        Check(
            Answered("2026-11-15") with
            {
                Holds = [new Hold(Given.Day("2026-11-15"), null)],
            },
            "2026-11-15",
            "",
            ScreeningStatus.Current,
            "she has answered since",
            Policies
        );

    [Theory]
    [InlineData("2026-11-19", "", ScreeningStatus.Current, "the day before the birth")]
    [InlineData("2026-11-20", "Birth NewStage", ScreeningStatus.Due, "the birth")]
    public void After_the_birth(string day, string why, ScreeningStatus status, string because) =>
        Check(
            Answered("2026-11-10") with
            {
                Pregnancy = Expecting with { BornOn = Given.Day("2026-11-20") },
            },
            day,
            why,
            status,
            because,
            Policies
        );

    [Theory]
    [InlineData("2026-11-22", false, "two days before the first class of the week")]
    [InlineData("2026-11-23", true, "the day before it")]
    [InlineData("2026-11-24", true, "the day of it, a Tuesday")]
    [InlineData("2026-11-25", false, "the day after: Thursday's is the second of the week")]
    [InlineData("2026-11-30", true, "the day before the first of the next week")]
    [InlineData("2026-12-02", false, "nothing is booked any more")]
    public void Whether_anything_has_changed_before_the_first_class_of_a_week(
        string today,
        bool asked,
        string because
    ) =>
        Assert.True(
            asked
                == WeeklyQuestion.IsAsked(
                    Given.Day(today),
                    [Given.Day("2026-11-24"), Given.Day("2026-11-26"), Given.Day("2026-12-01")],
                    lastSaid: Given.Day("2026-11-17")
                ),
            because
        );

    [Theory]
    [InlineData("2026-11-22", true, "said two days before: too early to count")]
    [InlineData("2026-11-23", false, "said the day before")]
    public void Once_said_it_is_not_asked_again(string said, bool asked, string because) =>
        Assert.True(
            asked
                == WeeklyQuestion.IsAsked(
                    Given.Day("2026-11-24"),
                    [Given.Day("2026-11-24")],
                    Given.Day(said)
                ),
            because
        );

    private static HerSituation Answered(string on) =>
        new()
        {
            Pregnancy = Expecting,
            Screening = new Screening(Given.Day(on), ScreeningOutcome.NothingFound),
        };

    private static void Check(
        HerSituation her,
        string day,
        string why,
        ScreeningStatus status,
        string because,
        StudioPolicies policies
    )
    {
        var on = Given.Day(day);
        var asked = ScreeningRules.Asked(her, on, Given.Stages, policies);
        Assert.True(why == string.Join(' ', asked), $"{string.Join(' ', asked)}: {because}");
        Assert.True(status == ScreeningRules.On(her, on, Given.Stages, policies), because);
    }
}
