using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Booking;

/// <summary>The rows of tests/reference/postpartum_return.csv that the class rules rely on, the day before and the day of.</summary>
public class PublishedReturnAfterBirth
{
    private static readonly IReadOnlyList<ReferenceRow> Rows = Reference.Read(
        "postpartum_return.csv"
    );
    private static readonly ClassProfile Jumping = Someone.AClass(ClassTraits.Impact);
    private static readonly ClassProfile Gentle = Someone.AClass();
    private static readonly ClassProfile Breath = Someone.AClass(ClassTraits.BreathOnly);

    public static IEnumerable<TheoryDataRow<string>> ImpactRows() =>
        Reference.Cases(
            Rows.Where(r => r.Id is "PR07" or "PR08" or "PR12" or "PR13"),
            r => r["statement"]
        );

    [Theory]
    [MemberData(nameof(ImpactRows))]
    public void Impact_waits_until_the_published_day_when_the_studio_chooses_it(string id)
    {
        var day = Rows.Row(id).Day("from_day")!.Value;
        var policies = Someone.Policies with { ImpactAfterBirthDays = day };

        Assert.Equal(Suits.NotSuitable, Someone.Born(day - 1).In(Jumping, policies).Verdict);
        Assert.Equal(Suits.Suitable, Someone.Born(day).In(Jumping, policies).Verdict);
    }

    [Fact]
    public void The_longest_published_wait_for_impact_is_the_default()
    {
        var longest = Rows.Where(r => r.Id is "PR07" or "PR08" or "PR12" or "PR13")
            .Max(r => r.Day("from_day"));

        Assert.Equal(longest, Someone.Policies.ImpactAfterBirthDays);
        Assert.Equal(longest, 91);
    }

    [Theory]
    [InlineData(90, Suits.NotSuitable)]
    [InlineData(91, Suits.Suitable)]
    public void Impact_suits_from_day_91(int days, Suits verdict)
    {
        var fit = Someone.Born(days).In(Jumping);

        Assert.Equal(verdict, fit.Verdict);
        if (verdict == Suits.NotSuitable)
            Assert.Equal(Someone.Day.PlusDays(1), fit.Because(ReasonCodes.DoesNotSuit).Lift!.On);
    }

    [Fact]
    public void Eight_weeks_after_a_caesarean_is_the_published_wait()
    {
        // NHS Suffolk and North East Essex, After Birth booklet, p 22 (PR09, seen).
        var day = Rows.Row("PR09").Day("from_day")!.Value;

        Assert.Equal(day, Someone.Policies.AfterCaesareanDays);
        Assert.Equal(
            Suits.NotSuitable,
            Someone.Born(day - 1, BirthMode.Caesarean).In(Gentle).Verdict
        );
        Assert.Equal(
            Suits.WithModifications,
            Someone.Born(day, BirthMode.Caesarean).In(Gentle).Verdict
        );
    }

    [Theory]
    [InlineData(55, BirthMode.Caesarean, Suits.NotSuitable)]
    [InlineData(56, BirthMode.Caesarean, Suits.WithModifications)]
    [InlineData(55, BirthMode.Unknown, Suits.NotSuitable)]
    [InlineData(55, null, Suits.NotSuitable)]
    [InlineData(56, BirthMode.Unknown, Suits.Suitable)]
    [InlineData(55, BirthMode.Vaginal, Suits.Suitable)]
    public void A_mode_of_birth_nobody_told_is_read_as_the_cautious_one(
        int days,
        BirthMode? mode,
        Suits verdict
    ) => Assert.Equal(verdict, Someone.Born(days, mode).In(Gentle).Verdict);

    [Theory]
    [InlineData(BirthMode.Caesarean)]
    [InlineData(BirthMode.Unknown)]
    [InlineData(BirthMode.Vaginal)]
    public void Talk_and_breath_suits_from_the_first_day(BirthMode mode) =>
        Assert.Equal(Suits.Suitable, Someone.Born(0, mode).In(Breath).Verdict);

    // Mayo Clinic (PR03) and NHS (PR10), both seen: after a caesarean or a complicated birth ask first.
    [Theory]
    [InlineData(60, BirthMode.Caesarean, Suits.NeedsClearance)]
    [InlineData(83, BirthMode.Caesarean, Suits.NeedsClearance)]
    [InlineData(84, BirthMode.Caesarean, Suits.Suitable)]
    [InlineData(41, BirthMode.Assisted, Suits.NeedsClearance)]
    [InlineData(42, BirthMode.Assisted, Suits.Suitable)]
    [InlineData(41, BirthMode.Vaginal, Suits.Suitable)]
    public void A_caesarean_or_an_assisted_birth_asks_for_a_letter_even_where_not_everybody_needs_one(
        int days,
        BirthMode mode,
        Suits verdict
    ) =>
        Assert.Equal(
            verdict,
            Someone.Born(days, mode).WithoutLetters().In(Gentle, Someone.OnlyFlagged).Verdict
        );

    [Theory]
    [InlineData("PR02", BirthMode.Vaginal)]
    public void Gentle_classes_begin_a_few_days_after_a_vaginal_birth(string id, BirthMode mode)
    {
        var day = Rows.Row(id).Day("from_day")!.Value;

        Assert.Equal(Suits.NotSuitable, Someone.Born(day - 1, mode).In(Gentle).Verdict);
        Assert.Equal(Suits.Suitable, Someone.Born(day, mode).In(Gentle).Verdict);
    }

    // Light activity first (PR19, seen); early recovery ends with day 41 (WHO, six weeks).
    [Theory]
    [InlineData(41, Suits.NotSuitable)]
    [InlineData(42, Suits.Suitable)]
    public void Only_gentle_classes_in_early_recovery(int days, Suits verdict) =>
        Assert.Equal(
            verdict,
            Someone.Born(days).In(Someone.AClass(ClassTraits.ModerateEffort)).Verdict
        );

    // Davenport et al. 2025 (PR22, seen): a possible contraindication asks for a provider's word; its abstract names no absolute one (PR42).
    [Fact]
    public void After_the_birth_a_listed_condition_asks_for_a_letter_and_forbids_nothing()
    {
        foreach (var condition in Catalogue.TheCatalogue.Book.Conditions)
        {
            var her = Someone.Born(100).Holding(condition.Factor.Code);
            var expected = condition.AfterBirth is null ? Suits.Suitable : Suits.NeedsClearance;

            Assert.Equal(expected, her.WithoutLetters().In(Gentle, Someone.OnlyFlagged).Verdict);
        }
    }

    [Fact]
    public void What_only_a_pregnancy_can_have_ends_with_the_birth()
    {
        var her = Someone.Born(100).Holding("placenta-praevia").Holding("showing").Holding("twins");

        Assert.Empty(
            (her with { Pregnancy = her.Pregnancy! with { Babies = 2 } })
                .In(Someone.AClass(ClassTraits.Supine))
                .Reasons
        );
    }
}
