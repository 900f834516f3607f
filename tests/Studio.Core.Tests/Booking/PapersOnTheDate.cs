using Studio.Core.Booking;
using Studio.Core.Clients;
using Studio.Core.Screenings;

namespace Studio.Core.Tests.Booking;

/// <summary>Letters, screening and holds, as of the session's date.</summary>
public class PapersOnTheDate
{
    private static readonly ClassProfile Plain = Someone.AClass();

    [Fact]
    public void With_papers_in_order_a_plain_class_suits() =>
        Assert.Equal((Suits.Suitable, 0), Of(Someone.Pregnant("20w0d")));

    // ACOG, Committee Opinion 804 summary (reference row CL01, seen): a clinical evaluation first, for everyone.
    [Fact]
    public void Everybody_needs_a_letter_by_default()
    {
        var reason = Someone
            .Pregnant("20w0d")
            .WithoutLetters()
            .In(Plain)
            .Because(ReasonCodes.ClearanceNeeded);

        Assert.Equal(Suits.NeedsClearance, reason.Verdict);
        Assert.Equal("CL01", reason.Source!.Id);
        Assert.Equal("A letter valid on 14 December 2026.", reason.Lift!.Text);
        Assert.Equal(
            "No clearance letter on file counts: one valid on 14 December 2026 is needed.",
            reason.ForDesk
        );
    }

    // SOGC/CSEP as described by CSEP 2021 (reference row CL02, seen): no letter for those without contraindications.
    [Fact]
    public void A_studio_may_ask_only_those_who_are_flagged() =>
        Assert.Equal(
            Suits.Suitable,
            Someone.Pregnant("20w0d").WithoutLetters().In(Plain, Someone.OnlyFlagged).Verdict
        );

    [Theory]
    [InlineData(0, Suits.Suitable, "the letter's own last day")]
    [InlineData(1, Suits.NeedsClearance, "the day after")]
    public void A_letter_counts_on_its_last_day(int daysAfter, Suits verdict, string because)
    {
        var her = Someone.Pregnant("20w0d").WithoutLetters().WithLetter(10, 10);

        Assert.True(verdict == her.On(Someone.Day.PlusDays(daysAfter), Plain).Verdict, because);
    }

    [Fact]
    public void An_expired_letter_is_told_apart_from_none() =>
        Assert.Equal(
            "Your letter counts until 13 December 2026, which is before this class.",
            Someone
                .Pregnant("20w0d")
                .WithoutLetters()
                .WithLetter(10, 9)
                .In(Plain)
                .Because(ReasonCodes.ClearanceNeeded)
                .ForHer
        );

    [Fact]
    public void A_letter_the_birth_ended_is_told_apart_from_an_expired_one()
    {
        var reason = Someone
            .Born(60)
            .WithoutLetters()
            .WithLetter(80, 200)
            .In(Plain)
            .Because(ReasonCodes.ClearanceNeeded);

        Assert.Contains(
            "The birth ended your earlier letter",
            reason.ForHer,
            StringComparison.Ordinal
        );
        Assert.Contains("ended with the birth", reason.ForDesk, StringComparison.Ordinal);
    }

    [Fact]
    public void A_question_never_answered_is_never_cleared()
    {
        var fit = (Someone.Pregnant("20w0d") with { Screening = null }).In(Plain);

        Assert.Equal(Suits.NeedsClearance, fit.Verdict);
        Assert.Equal(
            "You have not answered our screening questions yet.",
            fit.Because(ReasonCodes.ScreeningNeeded).ForHer
        );
    }

    // No published interval (reference row CL14, computed): the studio's own, 90 days by default.
    [Theory]
    [InlineData(90, Suits.Suitable, "on the last day")]
    [InlineData(91, Suits.NeedsClearance, "a day later")]
    public void A_screening_counts_for_the_studios_interval(
        int daysAgo,
        Suits verdict,
        string because
    )
    {
        var her = Someone.Pregnant("20w0d") with
        {
            Screening = new(Someone.Day.PlusDays(-daysAgo), ScreeningOutcome.NothingFound),
        };

        Assert.True(verdict == her.In(Plain).Verdict, because);
    }

    // CSEP 2025 (reference row CL07, seen) has a questionnaire of its own for the time after birth.
    [Fact]
    public void A_screening_answered_before_the_birth_does_not_count_after_it()
    {
        var her = Someone.Born(10, Core.Pregnancies.BirthMode.Vaginal);
        her = her with
        {
            Screening = new(Someone.Day.PlusDays(-11), ScreeningOutcome.NothingFound),
        };

        Assert.Equal(
            Suits.NeedsClearance,
            her.In(Plain).Because(ReasonCodes.ScreeningNeeded).Verdict
        );
    }

    [Fact]
    public void A_screening_that_asks_for_a_letter_is_answered_by_one()
    {
        var her = Someone.Pregnant("20w0d") with
        {
            Screening = new(Someone.Day.PlusDays(-5), ScreeningOutcome.ClearanceNeeded),
        };

        Assert.Equal(Suits.Suitable, her.In(Plain, Someone.OnlyFlagged).Verdict);
        Assert.Equal(
            Suits.NeedsClearance,
            her.WithoutLetters().In(Plain, Someone.OnlyFlagged).Verdict
        );
    }

    [Fact]
    public void No_exercise_for_now_stands_until_she_answers_again_and_the_desk_is_not_told()
    {
        var her = Someone.Pregnant("30w0d") with
        {
            Screening = new(Someone.Day.PlusDays(-200), ScreeningOutcome.NoExercise),
        };
        var fit = her.In(Plain);

        Assert.Equal(Suits.NotSuitable, fit.Because(ReasonCodes.NoExercise).Verdict);
        Assert.NotNull(fit.Because(ReasonCodes.NoExercise).Lift);
        Assert.DoesNotContain(fit.ForDesk(), r => r.Code == ReasonCodes.NoExercise);
    }

    [Theory]
    [InlineData(0, null, true, "from the day it is set")]
    [InlineData(-1, null, false, "not before")]
    [InlineData(5, 0, false, "not on the day a letter lifts it")]
    [InlineData(5, -1, true, "still the day before")]
    public void A_hold_stands_until_it_is_lifted(
        int setDaysAgo,
        int? liftedDaysAgo,
        bool stands,
        string because
    )
    {
        var lifted = liftedDaysAgo is { } ago ? Someone.Day.PlusDays(-ago) : (LocalDate?)null;
        var her = Someone.Pregnant("20w0d") with
        {
            Holds = [new Hold(Someone.Day.PlusDays(-setDaysAgo), lifted)],
        };

        Assert.True(
            stands
                == her.In(Plain)
                    .Reasons.Any(r =>
                        r is { Code: ReasonCodes.OnHold, Verdict: Suits.NotSuitable }
                    ),
            because
        );
    }

    // Reference row CL15 (seen): what is allowed early becomes a contraindication later, so clearance is looked at again that day.
    [Theory]
    [InlineData("27w6d", 20, Suits.Suitable, "the day before it counts nothing is asked")]
    [InlineData(
        "28w0d",
        1,
        Suits.NeedsClearance,
        "a letter of the day before does not speak of it"
    )]
    [InlineData("28w0d", 0, Suits.WithModifications, "one written on the day does")]
    [InlineData("29w0d", 7, Suits.WithModifications, "and so does one written then, a week later")]
    public void A_letter_must_be_as_new_as_the_week_from_which_twins_count(
        string age,
        int writtenDaysAgo,
        Suits verdict,
        string because
    )
    {
        var her = Someone.Pregnant(age, babies: 2).WithoutLetters().WithLetter(writtenDaysAgo, 200);

        Assert.True(verdict == her.In(Plain).Verdict, because);
    }

    [Fact]
    public void A_letter_must_be_as_new_as_the_condition_it_answers_for()
    {
        var her = Someone.Pregnant("20w0d").Holding("anaemia", sinceDaysAgo: 5);
        var reason = her.In(Plain).Because(ReasonCodes.ClearanceNeeded);

        Assert.Equal(
            "A letter written on or after 9 December 2026 and valid on 14 December 2026.",
            reason.Lift!.Text
        );
        Assert.Equal(Suits.WithModifications, her.WithLetter(5, 60).In(Plain).Verdict);
        Assert.Equal(
            Suits.WithModifications,
            her.In(Plain, Someone.Policies with { LetterFollowsChange = false }).Verdict
        );
    }

    [Fact]
    public void Entered_twice_the_later_beginning_is_the_one_to_answer_for()
    {
        var her = Someone
            .Pregnant("20w0d")
            .Holding("anaemia", sinceDaysAgo: 60)
            .Holding("anaemia", sinceDaysAgo: 5);

        Assert.Equal(Suits.NeedsClearance, her.In(Plain, Someone.OnlyFlagged).Verdict);
    }

    [Fact]
    public void A_letter_needed_for_the_class_alone_is_not_asked_of_her_everywhere()
    {
        var her = Someone.Pregnant("20w0d").Holding("high-blood-pressure").WithoutLetters();

        Assert.False(
            FitRules.AsksForLetter(
                her,
                Someone.Day,
                Catalogue.TheCatalogue.Book,
                Someone.OnlyFlagged
            )
        );
        Assert.True(
            FitRules.AsksForLetter(
                her.Holding("anaemia"),
                Someone.Day,
                Catalogue.TheCatalogue.Book,
                Someone.OnlyFlagged
            )
        );
        Assert.True(
            FitRules.AsksForLetter(her, Someone.Day, Catalogue.TheCatalogue.Book, Someone.Policies)
        );
    }

    private static (Suits, int) Of(HerSituation her) =>
        (her.In(Plain).Verdict, her.In(Plain).Reasons.Count);
}
