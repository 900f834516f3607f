using Studio.Core.Booking;
using Studio.Core.Clients;
using Studio.Core.Screenings;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Booking;

/// <summary>What her stage and her dates say about a class, as of the session's date.</summary>
public class StageOnTheDate
{
    private static readonly ClassProfile Second = Someone.For(["second-trimester"]);
    private static readonly ClassProfile Third = Someone.For(["third-trimester"]);
    private static readonly ClassProfile Postnatal = Someone.For(["postnatal", "later-postnatal"]);

    // Trimester limits 14w0d and 28w0d: ACOG, Committee Opinion 700 (reference rows S01 to S03, seen).
    [Theory]
    [InlineData("13w6d", Suits.NotSuitable)]
    [InlineData("14w0d", Suits.Suitable)]
    [InlineData("27w6d", Suits.Suitable)]
    [InlineData("28w0d", Suits.NotSuitable)]
    public void A_class_is_for_its_stages_on_the_date_of_the_session(string age, Suits verdict) =>
        Assert.Equal(verdict, Someone.Pregnant(age).In(Second).Verdict);

    [Fact]
    public void The_reason_names_her_stage_that_day_and_when_the_class_is_right()
    {
        // 24w 3d on 14 December 2026: 28w 0d is 25 days later.
        var reason = Someone.Pregnant("24w3d").In(Third).Because(ReasonCodes.Stage);

        Assert.Equal(
            "On 14 December 2026 your stage is second trimester (24w 3d). This class is for: third trimester.",
            reason.ForHer
        );
        Assert.Equal("Not her stage on that date: second trimester.", reason.ForDesk);
        Assert.Equal(new LocalDate(2027, 1, 8), reason.Lift!.On);
        Assert.Equal(
            "From 8 January 2027 on (third trimester) the stage is right for this class.",
            reason.Lift.Text
        );
    }

    [Fact]
    public void The_dates_run_to_the_end_of_the_last_stage_the_class_is_for()
    {
        // 13w 6d: the second trimester is the next 98 days.
        var reason = Someone.Pregnant("13w6d").In(Second).Because(ReasonCodes.Stage);

        Assert.Equal(
            "From 15 December 2026 to 22 March 2027 (second trimester) the stage is right for this class.",
            reason.Lift!.Text
        );
    }

    [Fact]
    public void A_stage_that_is_over_lifts_nothing() =>
        Assert.Null(Someone.Pregnant("30w0d").In(Second).Because(ReasonCodes.Stage).Lift);

    [Fact]
    public void A_postnatal_class_waits_for_the_reported_birth() =>
        Assert.StartsWith(
            "After the birth",
            Someone.Pregnant("30w0d").In(Postnatal).Because(ReasonCodes.Stage).Lift!.Text,
            StringComparison.Ordinal
        );

    [Fact]
    public void After_the_birth_the_dates_count_from_it()
    {
        var reason = Someone.Born(10).In(Postnatal).Because(ReasonCodes.Stage);

        // Postnatal begins on day 42 (six completed weeks: WHO, reference row P05, seen).
        Assert.Equal(Someone.Day.PlusDays(32), reason.Lift!.On);
    }

    // Term begins at 37w0d, postterm at 42w0d: ACOG/SMFM, Committee Opinion 579 (reference rows S31 and S34, seen).
    [Theory]
    [InlineData("36w6d", false)]
    [InlineData("37w0d", true)]
    [InlineData("41w6d", true)]
    [InlineData("42w0d", false)]
    public void From_37_weeks_a_place_is_kept_and_marked(string age, bool marked)
    {
        var reasons = Someone.Pregnant(age).In(Third).Reasons;

        Assert.Equal(
            marked,
            reasons.Any(r => r is { Code: ReasonCodes.MayHaveGivenBirth, Verdict: Suits.Suitable })
        );
    }

    [Theory]
    [InlineData("41w6d", Suits.Suitable)]
    [InlineData("42w0d", Suits.NotSuitable)]
    public void Past_42_weeks_nothing_prenatal_can_be_booked(string age, Suits verdict) =>
        Assert.Equal(verdict, Someone.Pregnant(age).In(Third).Verdict);

    [Fact]
    public void Past_42_weeks_the_birth_is_asked_for() =>
        Assert.Contains(
            "Tell us the day of the birth",
            Someone.Pregnant("42w0d").In(Third).Because(ReasonCodes.ReportTheBirth).Lift!.Text,
            StringComparison.Ordinal
        );

    [Fact]
    public void Without_dates_nothing_suits_and_the_dates_are_asked_for()
    {
        var fit = new HerSituation
        {
            Screening = new(Someone.Day, ScreeningOutcome.NothingFound),
        }.In(Second);

        Assert.Equal(Suits.NotSuitable, fit.Because(ReasonCodes.DatesNeeded).Verdict);
        Assert.Equal("Her dates are needed.", fit.Because(ReasonCodes.DatesNeeded).ForDesk);
        Assert.NotNull(fit.Because(ReasonCodes.DatesNeeded).Lift);
    }

    [Fact]
    public void A_date_before_the_pregnancy_began_asks_for_the_dates_too() =>
        Assert.Equal(
            Suits.NotSuitable,
            (Someone.Pregnant("0w0d"))
                .On(Someone.Day.PlusDays(-1), Second)
                .Because(ReasonCodes.DatesNeeded)
                .Verdict
        );

    [Fact]
    public void After_a_loss_one_quiet_reason_stands_alone()
    {
        var her = Someone.Pregnant("24w0d").Holding("anaemia").WithoutLetters() with
        {
            Pregnancy = Someone.Pregnant("24w0d").Pregnancy! with
            {
                EndedOn = Someone.Day.PlusDays(-3),
            },
            Holds = [new(Someone.Day.PlusDays(-3), null)],
        };
        var reason = Assert.Single(her.In(Second).Reasons);

        Assert.Equal((ReasonCodes.NotBookable, Suits.NotSuitable), (reason.Code, reason.Verdict));
        Assert.Null(reason.Lift);
        foreach (var word in new[] { "loss", "lost", "end", "pregnan", "baby", "sorry" })
            Assert.DoesNotContain(
                word,
                $"{reason.ForHer} {reason.ForDesk}",
                StringComparison.OrdinalIgnoreCase
            );
    }

    [Fact]
    public void A_studios_own_boundary_moves_the_classes_with_it()
    {
        var moved = TheCatalogue.Book.Stages.WithBoundary("third-trimester", 189).Value!;
        var fit = FitRules.Of(
            Someone.Pregnant("27w0d"),
            Third,
            Someone.Day,
            TheCatalogue.Book.WithStages(moved),
            Someone.Policies
        );

        Assert.Equal(Suits.Suitable, fit.Verdict);
    }

    [Fact]
    public void A_class_the_catalogue_does_not_understand_suits_nobody() =>
        Assert.Equal(
            Suits.NotSuitable,
            Someone
                .Pregnant("20w0d")
                .In(Someone.AClass("headstands"))
                .Because(ReasonCodes.ClassUnclear)
                .Verdict
        );

    [Fact]
    public void An_entry_the_catalogue_does_not_know_is_never_taken_for_cleared() =>
        Assert.Equal(
            Suits.NeedsClearance,
            Someone
                .Pregnant("20w0d")
                .Holding("something-new")
                .In(Second)
                .Because(ReasonCodes.RecordUnclear)
                .Verdict
        );
}
