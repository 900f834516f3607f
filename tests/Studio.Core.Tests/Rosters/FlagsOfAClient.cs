using Studio.Core.Booking;
using Studio.Core.Clearance;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Rosters;
using Studio.Core.Screenings;
using Studio.Core.Tests.Booking;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Rosters;

/// <summary>
/// Each kind of flag opens and closes on its day. How many days a change is announced and when a flag becomes urgent are
/// the studio's own habits: common practice, no published source.
/// </summary>
public class FlagsOfAClient
{
    private static readonly LocalDate Day = Someone.Day;
    private static readonly ClassProfile Gentle = Standing.Gentle;

    [Fact]
    public void A_client_with_her_papers_in_order_has_no_flag() =>
        Assert.Empty(Someone.Pregnant("22w 0d").Flags(Gentle, 1, 8, 15));

    [Theory]
    [InlineData(1, null, false, "it begins tomorrow")]
    [InlineData(0, null, true, "it begins today")]
    [InlineData(-9, null, true, "it has stood for a while")]
    [InlineData(-9, 1, true, "a letter lifts it from tomorrow")]
    [InlineData(-9, 0, false, "a letter has lifted it today")]
    public void A_hold_is_urgent_while_it_stands(int from, int? lifted, bool stands, string because)
    {
        var hold = new Hold(Day.PlusDays(from), lifted is { } days ? Day.PlusDays(days) : null);
        var flags = (Someone.Pregnant("22w 0d") with { Holds = [hold] }).Flags(Gentle);
        Assert.True(stands == flags.Of(FlagKind.OnHold).Any(), because);
        Assert.All(
            flags.Of(FlagKind.OnHold),
            f =>
            {
                Assert.Equal(FlagSeverity.Urgent, f.Severity);
                Assert.Equal(hold.From, f.Since);
                Assert.StartsWith("On hold", f.ForDesk, StringComparison.Ordinal);
                Assert.NotNull(f.ForInstructor);
            }
        );
    }

    // 42 days is the policy's default: the six-week check (reference row PR07).
    [Theory]
    [InlineData(0)]
    [InlineData(41)]
    [InlineData(60)]
    public void After_a_birth_nothing_is_flagged_about_papers_while_she_has_no_seat(int days)
    {
        var her = Someone.Born(days).WithoutLetters() with { Screening = null };
        Assert.Empty(her.Flags(Gentle));
        // Once she has a seat again she has come back by herself, and it is said what is missing.
        Assert.NotEmpty(her.Flags(Gentle, 1).Of(FlagKind.Screening));
    }

    [Fact]
    public void A_hold_from_before_the_birth_waits_and_one_since_then_speaks()
    {
        var her = Someone.Born(10);
        Assert.Empty((her with { Holds = [new(Day.PlusDays(-11), null)] }).Flags(Gentle));
        Assert.Single((her with { Holds = [new(Day.PlusDays(-9), null)] }).Flags(Gentle));
    }

    [Fact]
    public void Of_several_holds_the_longest_standing_is_told_whatever_their_order()
    {
        Hold[] holds = [new(Day.PlusDays(-2), null), new(Day.PlusDays(-12), Day.PlusDays(5))];
        foreach (var order in new[] { holds, [.. holds.Reverse()] })
            Assert.Equal(
                Day.PlusDays(-12),
                Assert
                    .Single(
                        (Someone.Pregnant("22w 0d") with { Holds = order })
                            .Flags(Gentle)
                            .Of(FlagKind.OnHold)
                    )
                    .Since
            );
    }

    [Theory]
    [InlineData(30, 30, null, "her seat is on the letter's last day")]
    [InlineData(30, 31, FlagSeverity.Attention, "her seat is the day after it")]
    [InlineData(4, 5, FlagSeverity.Attention, "the letter ends in 4 days: there is time")]
    [InlineData(
        3,
        5,
        FlagSeverity.Urgent,
        "the letter ends in 3 days, and she has booked beyond it"
    )]
    [InlineData(2, 3, FlagSeverity.Urgent, "3 days ahead there is none")]
    [InlineData(-1, 0, FlagSeverity.Urgent, "her seat is today and the letter ended yesterday")]
    public void A_letter_that_does_not_reach_a_seat_is_flagged(
        int lastDay,
        int seat,
        FlagSeverity? severity,
        string because
    )
    {
        var her = Someone.Pregnant("22w 0d") with
        {
            Letters = [new(Day.PlusDays(-20), Day.PlusDays(lastDay))],
        };
        var missing = her.Flags(Gentle, seat).Where(f => f.Subject.StartsWith("letter:")).ToList();
        Assert.True(severity == missing.SingleOrDefault()?.Severity, because);
        Assert.All(missing, f => Assert.Contains(Wording.Date(Day.PlusDays(seat)), f.ForDesk));
    }

    [Fact]
    public void A_letter_that_has_ended_is_missing_since_the_day_after_its_last()
    {
        var her = Someone.Pregnant("22w 0d") with
        {
            Letters = [new(Day.PlusDays(-60), Day.PlusDays(-10))],
        };
        var flag = Assert.Single(her.Flags(Gentle, 5, 12), f => f.Kind == FlagKind.Letter);
        Assert.Equal(Day.PlusDays(-9), flag.Since);
        Assert.StartsWith(
            "2 booked sessions need a letter",
            flag.ForDesk,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "1 booked session needs",
            her.Flags(Gentle, 5).Of(FlagKind.Letter).Single().ForDesk
        );
    }

    [Theory]
    [InlineData(29, null, "29 days before")]
    [InlineData(28, FlagSeverity.Info, "28 days before: the first reminder")]
    [InlineData(15, FlagSeverity.Info, "15 days before")]
    [InlineData(14, FlagSeverity.Attention, "14 days before: the second")]
    [InlineData(4, FlagSeverity.Attention, "4 days before")]
    [InlineData(3, FlagSeverity.Attention, "3 days before, and nothing booked beyond it")]
    [InlineData(0, FlagSeverity.Attention, "its last day")]
    [InlineData(-1, null, "it has ended, and she has booked nothing")]
    public void A_letter_that_ends_is_announced_28_14_and_3_days_ahead(
        int lastDay,
        FlagSeverity? severity,
        string because
    )
    {
        var her = Someone.Pregnant("22w 0d") with
        {
            Letters = [new(Day.PlusDays(-20), Day.PlusDays(lastDay))],
        };
        var flags = her.Flags(Gentle).Of(FlagKind.Letter).ToList();
        Assert.True(severity == flags.SingleOrDefault()?.Severity, because);
        Assert.All(
            flags,
            f => Assert.Contains(Wording.Date(Day.PlusDays(lastDay)), f.ForInstructor)
        );
    }

    [Fact]
    public void A_withdrawn_letter_is_no_letter()
    {
        var her = Someone.Pregnant("22w 0d") with
        {
            Letters = [new ClearanceLetter(Day.PlusDays(-20), Day.PlusDays(100), Withdrawn: true)],
        };
        Assert.Single(her.Flags(Gentle, 6).Of(FlagKind.Letter));
    }

    [Theory]
    [InlineData(90, null, "the last day on which her answers count")]
    [InlineData(91, FlagSeverity.Attention, "the day after")]
    public void Health_questions_are_due_before_a_seat(
        int seat,
        FlagSeverity? severity,
        string because
    )
    {
        var her = Someone.Pregnant("10w 0d") with
        {
            Screening = new(Day, ScreeningOutcome.NothingFound),
        };
        Assert.True(
            severity == her.Flags(Gentle, seat).Of(FlagKind.Screening).SingleOrDefault()?.Severity,
            because
        );
    }

    [Fact]
    public void Health_questions_are_urgent_three_days_before_and_nothing_without_a_seat()
    {
        var her = Someone.Pregnant("22w 0d") with { Screening = null };
        Assert.Equal(
            FlagSeverity.Urgent,
            her.Flags(Gentle, 3, 10).Of(FlagKind.Screening).Single().Severity
        );
        Assert.Equal(
            FlagSeverity.Attention,
            her.Flags(Gentle, 4, 10).Of(FlagKind.Screening).Single().Severity
        );
        Assert.Empty(her.Flags(Gentle).Of(FlagKind.Screening));
    }

    [Fact]
    public void Only_a_seat_that_no_longer_suits_is_flagged_and_on_its_own_session()
    {
        // 97 days along on the day: the first trimester's last (ACOG, Committee Opinion 700, 2017).
        var her = Someone.Pregnant("13w 6d");
        var flag = Assert.Single(
            her.Flags(Someone.For(["first-trimester"]), 0, 1).Of(FlagKind.BookingNoLongerSuits)
        );
        Assert.Equal(101, flag.SessionId);
        Assert.Equal(FlagSeverity.Urgent, flag.Severity);
        Assert.Contains("second trimester", flag.ForDesk, StringComparison.Ordinal);
        Assert.Equal(
            FlagSeverity.Attention,
            her.Flags(Someone.For(["first-trimester"]), 4)
                .Of(FlagKind.BookingNoLongerSuits)
                .Single()
                .Severity
        );
    }

    [Fact]
    public void A_seat_that_suits_with_changes_is_no_flag()
    {
        var her = Someone.Pregnant("22w 0d");
        Assert.Equal(Suits.WithModifications, her.In(Someone.AClass("supine")).Verdict);
        Assert.Empty(her.Flags(Someone.AClass("supine"), 0, 7));
    }

    [Theory]
    [InlineData(-1, false, "it begins tomorrow")]
    [InlineData(0, true, "it begins today")]
    [InlineData(14, true, "the last day on which it is new")]
    [InlineData(15, false, "it is not new any more")]
    public void What_is_new_stays_new_for_two_weeks(int sinceDaysAgo, bool stands, string because)
    {
        var her = Someone.Pregnant("22w 0d").Holding("back-pain", sinceDaysAgo);
        var flags = her.Flags(Gentle, 6).Of(FlagKind.NewFactor).ToList();
        Assert.True(stands == (flags.Count == 1), because);
        var words = TheCatalogue.Book.FactorOf("back-pain")!.InstructorWords;
        Assert.All(
            flags,
            f =>
            {
                Assert.EndsWith(words, f.ForInstructor, StringComparison.Ordinal);
                Assert.Equal(Day.PlusDays(-sinceDaysAgo), f.Since);
            }
        );
        Assert.Empty(her.Flags(Gentle).Of(FlagKind.NewFactor));
    }

    [Fact]
    public void What_has_passed_is_not_new() =>
        Assert.Empty(
            Someone
                .Pregnant("22w 0d")
                .Holding("wrist-pain", sinceDaysAgo: 5, untilDaysAgo: 1)
                .Flags(Gentle, 6)
                .Of(FlagKind.NewFactor)
        );

    [Fact]
    public void The_same_entry_made_twice_is_one_flag() =>
        Assert.Single(
            Someone
                .Pregnant("22w 0d")
                .Holding("back-pain", 2)
                .Holding("back-pain", 2)
                .Flags(Gentle, 6)
                .Of(FlagKind.NewFactor)
        );

    [Fact]
    public void An_entry_that_was_ended_and_made_again_stands() =>
        Assert.Single(
            Someone
                .Pregnant("22w 0d")
                .Holding("back-pain", 2, untilDaysAgo: 1)
                .Holding("back-pain", 2)
                .Flags(Gentle, 6)
                .Of(FlagKind.NewFactor)
        );

    [Fact]
    public void Something_the_catalogue_does_not_know_asks_the_instructor_to_ask() =>
        Assert.EndsWith(
            "ask her what she needs today.",
            Someone
                .Pregnant("22w 0d")
                .Holding("not-in-the-catalogue", 1)
                .Flags(Gentle, 6)
                .Of(FlagKind.NewFactor)
                .Single()
                .ForInstructor,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("11w 6d", null, "15 days before 14w 0d")]
    [InlineData("12w 0d", "Enters second trimester on 28 December 2026.", "14 days before it")]
    [InlineData("13w 6d", "Enters second trimester on 15 December 2026.", "the eve")]
    [InlineData("14w 0d", "Second trimester since 14 December 2026.", "the day itself")]
    [InlineData("16w 0d", "Second trimester since 30 November 2026.", "14 days after")]
    [InlineData("16w 1d", null, "15 days after")]
    public void A_change_of_stage_is_told_two_weeks_around(string age, string? says, string because)
    {
        // 14w 0d begins the second trimester: ACOG, Committee Opinion 700 (2017).
        var flag = Someone
            .Pregnant(age)
            .Flags(Gentle, 1)
            .Of(FlagKind.StageChange)
            .SingleOrDefault();
        Assert.True(says == flag?.ForDesk, because);
        Assert.Equal(flag?.ForDesk, flag?.ForInstructor);
        Assert.Empty(Someone.Pregnant(age).Flags(Gentle).Of(FlagKind.StageChange));
    }

    [Fact]
    public void The_beginning_of_a_pregnancy_is_no_change_of_stage_and_a_birth_is_one()
    {
        Assert.Empty(Someone.Pregnant("0w 3d").Flags(Gentle, 1).Of(FlagKind.StageChange));
        Assert.Equal(
            "Early recovery since 12 December 2026.",
            Someone.Born(2).Flags(Gentle, 1).Of(FlagKind.StageChange).Single().ForDesk
        );
    }

    [Theory]
    [InlineData(1, false, "due tomorrow")]
    [InlineData(0, false, "due today")]
    [InlineData(-1, true, "due yesterday")]
    public void A_due_date_that_has_passed_with_no_word_is_told_gently(
        int dueIn,
        bool stands,
        string because
    )
    {
        var flags = Someone.Pregnant("30w 0d").DueIn(dueIn).Flags(Gentle).Of(FlagKind.PastDue);
        Assert.True(stands == flags.Any(), because);
        Assert.All(
            flags,
            f =>
            {
                Assert.Equal(FlagSeverity.Info, f.Severity);
                Assert.Equal(Day.PlusDays(dueIn + 1), f.Since);
                Assert.Null(f.ForInstructor);
            }
        );
    }

    [Fact]
    public void After_a_birth_nobody_asks_for_word() =>
        Assert.Empty(Someone.Born(3).Flags(Gentle).Of(FlagKind.PastDue));
}
