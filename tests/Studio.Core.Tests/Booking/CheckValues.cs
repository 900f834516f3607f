using Studio.Core.Booking;
using Studio.Core.Catalogue;

namespace Studio.Core.Tests.Booking;

/// <summary>
/// What teachers of prenatal classes hold to, at the level of a whole class. Common practice, no published source, except
/// where a check names one.
/// </summary>
public class CheckValues
{
    [Fact]
    public void Effort_stays_at_six_to_seven_of_ten_and_she_can_still_talk()
    {
        var note = Someone
            .Pregnant("20w0d")
            .In(Someone.AClass(ClassTraits.ModerateEffort))
            .Because(ReasonCodes.Note);

        Assert.Equal(Suits.Suitable, note.Verdict);
        Assert.Contains("6 to 7 of 10 at most", note.ForInstructor, StringComparison.Ordinal);
        Assert.Contains("conversation", note.ForInstructor, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("13w6d", false, Suits.Suitable)]
    [InlineData("13w6d", true, Suits.WithModifications)]
    [InlineData("14w0d", false, Suits.WithModifications)]
    public void Loaded_trunk_flexion_only_in_the_first_trimester_and_not_showing(
        string age,
        bool showing,
        Suits verdict
    ) =>
        Assert.Equal(
            verdict,
            VerdictFor(ClassTraits.LoadedFlexion, age, showing ? "showing" : null)
        );

    // 14w0d: ACOG 1994 (reference row M01, seen). Earlier when showing: common practice.
    [Theory]
    [InlineData("13w6d", false, Suits.Suitable)]
    [InlineData("10w0d", true, Suits.WithModifications)]
    [InlineData("14w0d", false, Suits.WithModifications)]
    public void Flat_on_the_back_is_dropped_from_the_second_trimester_and_earlier_once_she_shows(
        string age,
        bool showing,
        Suits verdict
    ) => Assert.Equal(verdict, VerdictFor(ClassTraits.Supine, age, showing ? "showing" : null));

    [Fact]
    public void Flat_on_the_back_names_the_rule_it_comes_from()
    {
        var reason = Someone
            .Pregnant("14w0d")
            .In(Someone.AClass(ClassTraits.Supine))
            .Because(ReasonCodes.Adapted);

        Assert.Equal("M01", reason.Source!.Id);
        Assert.Equal("Prop up or side-lying instead of flat on the back.", reason.ForInstructor);
    }

    [Theory]
    [InlineData("13w6d", null, Suits.Suitable)]
    [InlineData("14w0d", null, Suits.WithModifications)]
    [InlineData("10w0d", "separation-now", Suits.WithModifications)]
    [InlineData("10w0d", "separation-earlier", Suits.WithModifications)]
    public void Front_support_only_in_the_first_trimester_and_never_with_a_separation(
        string age,
        string? factor,
        Suits verdict
    ) => Assert.Equal(verdict, VerdictFor(ClassTraits.FrontSupport, age, factor));

    [Fact]
    public void Instead_of_a_front_plank_there_is_a_rest_or_a_side_plank() =>
        Assert.All(
            Someone
                .Pregnant("20w0d")
                .Holding("separation-now")
                .In(Someone.AClass(ClassTraits.FrontSupport))
                .Reasons,
            r =>
                Assert.Contains(
                    "rest or a side plank",
                    r.ForInstructor,
                    StringComparison.OrdinalIgnoreCase
                )
        );

    [Fact]
    public void With_a_separation_leg_slides_take_the_place_of_curling_up() =>
        Assert.Contains(
            "Leg slides",
            Someone
                .Born(100)
                .Holding("separation-now")
                .In(Someone.AClass(ClassTraits.LoadedFlexion))
                .Because(ReasonCodes.Adapted)
                .ForInstructor,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(3)]
    [InlineData(60)]
    [InlineData(120)]
    public void After_the_birth_nothing_speaks_against_lying_on_the_back(int days) =>
        Assert.Equal(
            Suits.Suitable,
            Someone
                .Born(days)
                .Holding("separation-now")
                .In(Someone.AClass(ClassTraits.Supine))
                .Verdict
        );

    [Fact]
    public void A_later_pregnancy_is_not_taken_to_show_at_any_week() =>
        Assert.Equal(
            Suits.Suitable,
            VerdictFor(ClassTraits.Supine, "13w6d", "second-or-later-pregnancy")
        );

    // ACOG 1994 (reference row M26, seen): balance, above all in the third trimester, 28w0d.
    [Theory]
    [InlineData("27w6d", Suits.Suitable)]
    [InlineData("28w0d", Suits.WithModifications)]
    public void Balances_have_a_wall_or_chair_in_the_third_trimester(string age, Suits verdict) =>
        Assert.Equal(verdict, VerdictFor(ClassTraits.Balance, age, null));

    [Theory]
    [InlineData("25w6d", Suits.Suitable)]
    [InlineData("26w0d", Suits.NeedsClearance)]
    public void A_low_placenta_asks_for_a_word_once_the_cautious_week_is_reached(
        string age,
        Suits verdict
    ) =>
        Assert.Equal(
            verdict,
            Someone
                .Pregnant(age)
                .Holding("low-placenta")
                .WithoutLetters()
                .In(Someone.AClass(), Someone.OnlyFlagged)
                .Verdict
        );

    // Reference rows C04 and C12: neither list says whether its week includes the first day, so the studio chooses.
    [Theory]
    [InlineData("placenta-praevia", "26w0d", Guideline.Acog, Suits.NotSuitable)]
    [InlineData("placenta-praevia", "28w0d", Guideline.Canada, Suits.NotSuitable)]
    [InlineData("twin-pregnancy", "28w0d", Guideline.Canada, Suits.NeedsClearance)]
    public void The_first_day_of_a_week_counts_unless_the_studio_reads_it_a_week_later(
        string condition,
        string age,
        Guideline guideline,
        Suits verdict
    )
    {
        var her = Someone.Pregnant(age).Holding(condition).WithoutLetters();
        var later = Someone.OnlyFlagged with
        {
            Guideline = guideline,
            WeekReading = WeekReading.WeekLater,
        };

        Assert.Equal(
            verdict,
            her.In(Someone.AClass(), later with { WeekReading = WeekReading.FirstDay }).Verdict
        );
        Assert.Equal(
            Suits.Suitable,
            her.On(Someone.Day.PlusDays(6), Someone.AClass(), later).Verdict
        );
        Assert.Equal(verdict, her.On(Someone.Day.PlusDays(7), Someone.AClass(), later).Verdict);
    }

    [Theory]
    [InlineData(1, "28w0d", Suits.Suitable)]
    [InlineData(2, "27w6d", Suits.Suitable)]
    [InlineData(2, "28w0d", Suits.NeedsClearance)]
    [InlineData(3, "10w0d", Suits.NotSuitable)]
    [InlineData(4, "10w0d", Suits.NotSuitable)]
    public void The_number_of_babies_speaks_for_itself(int babies, string age, Suits verdict) =>
        Assert.Equal(
            verdict,
            Someone
                .Pregnant(age, babies)
                .WithoutLetters()
                .In(Someone.AClass(), Someone.OnlyFlagged)
                .Verdict
        );

    [Fact]
    public void The_factor_twins_counts_as_the_listed_condition() =>
        Assert.Equal(
            "C12",
            Someone
                .Pregnant("28w0d")
                .Holding("twins")
                .In(Someone.AClass())
                .Because(ReasonCodes.ClearanceNeeded)
                .Rule
        );

    // Meah et al. 2020 (reference row CL04, seen): absolute leaves out moderate and harder effort and is not bed rest.
    [Fact]
    public void An_absolute_condition_leaves_out_the_gentlest_class_and_says_that_it_is_not_bed_rest()
    {
        var reason = Someone
            .Pregnant("20w0d")
            .Holding("pre-eclampsia")
            .In(Someone.AClass(ClassTraits.BreathOnly))
            .Because(ReasonCodes.DoesNotSuit);

        Assert.Equal(Suits.NotSuitable, reason.Verdict);
        Assert.Contains("not mean bed rest", reason.ForHer, StringComparison.Ordinal);
    }

    [Fact]
    public void A_factor_that_is_over_changes_nothing()
    {
        var cls = Someone.AClass(ClassTraits.WideHips);

        Assert.Equal(
            Suits.WithModifications,
            Someone.Pregnant("20w0d").Holding("pelvic-girdle-pain", 30, 0).In(cls).Verdict
        );
        Assert.Equal(
            Suits.Suitable,
            Someone.Pregnant("20w0d").Holding("pelvic-girdle-pain", 30, 1).In(cls).Verdict
        );
        Assert.Equal(
            Suits.Suitable,
            Someone.Pregnant("20w0d").Holding("pelvic-girdle-pain", -1).In(cls).Verdict
        );
    }

    private static Suits VerdictFor(string trait, string age, string? factor)
    {
        var her = Someone.Pregnant(age);
        return (factor is null ? her : her.Holding(factor)).In(Someone.AClass(trait)).Verdict;
    }
}
