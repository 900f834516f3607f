using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Clients;

namespace Studio.Core.Tests.Booking;

/// <summary>Every way of being refused a seat, and which is told when several are true; common practice, no published source.</summary>
public class WhyNotASeat
{
    private static readonly Instant Now = Instant.FromUtc(2026, 12, 14, 9, 0);
    private static readonly LocalDate Today = Someone.Day;
    private static readonly Fit Suiting = Someone.Pregnant("22w 0d").In(Someone.AClass());

    [Fact]
    public void Nothing_speaks_against_a_session_that_is_open_ahead_and_suits() =>
        Assert.Null(WhyNot());

    [Theory]
    [InlineData(-1, "session-begun", "it began a minute ago")]
    [InlineData(0, "session-begun", "it begins now")]
    [InlineData(1, null, "a minute before it begins")]
    public void A_session_can_be_booked_until_it_begins(
        int minutes,
        string? code,
        string because
    ) => Assert.True(code == WhyNot(startsIn: Duration.FromMinutes(minutes))?.Code, because);

    [Theory]
    [InlineData(28, null, "the last day that is open")]
    [InlineData(29, "too-far-ahead", "the day after")]
    public void Booking_opens_so_many_days_ahead(int days, string? code, string because) =>
        Assert.True(code == WhyNot(on: Today.PlusDays(days))?.Code, because);

    [Fact]
    public void One_refusal_is_told_at_a_time_the_hardest_to_change_first()
    {
        var unsuited = Someone.Pregnant("22w 0d").In(Someone.For(["first-trimester"]));
        var far = Today.PlusDays(40);
        string? Code(bool open, bool begun, bool tooFar, bool hasIt, bool suits) =>
            WhyNot(
                open,
                begun ? Duration.Zero : Duration.FromHours(3),
                tooFar ? far : Today,
                suits ? Suiting : unsuited,
                hasIt,
                overlaps: true
            )?.Code;
        Assert.Equal("session-cancelled", Code(false, true, true, true, false));
        Assert.Equal("session-begun", Code(true, true, true, true, false));
        Assert.Equal("too-far-ahead", Code(true, false, true, true, false));
        Assert.Equal("already-booked", Code(true, false, false, true, false));
        Assert.Equal("does-not-suit", Code(true, false, false, false, false));
        Assert.Equal("overlap", Code(true, false, false, false, true));
    }

    [Fact]
    public void Every_refusal_of_a_state_is_a_conflict_and_of_a_fit_is_not_allowed()
    {
        Assert.Equal(RefusalKind.Conflict, WhyNot(open: false)!.Kind);
        Assert.Equal(RefusalKind.Conflict, WhyNot(overlaps: true)!.Kind);
        Assert.Equal(RefusalKind.Conflict, WhyNot(hasIt: true)!.Kind);
        Assert.Equal(
            RefusalKind.NotAllowed,
            WhyNot(fit: Someone.Pregnant("22w 0d").WithoutLetters().In(Someone.AClass()))!.Kind
        );
    }

    [Fact]
    public void A_missing_letter_has_its_own_code_and_so_has_a_hold()
    {
        var her = Someone.Pregnant("22w 0d");
        Assert.Equal(
            "clearance-needed",
            WhyNot(fit: her.WithoutLetters().In(Someone.AClass()))!.Code
        );
        Assert.Equal(
            "on-hold",
            WhyNot(
                fit: (her with { Holds = [new Hold(Today, null)] }).In(
                    Someone.For(["first-trimester"])
                )
            )!.Code
        );
    }

    [Fact]
    public void Changes_alone_refuse_nobody()
    {
        var fit = Someone.Pregnant("22w 0d").In(Someone.AClass("supine"));
        Assert.Equal(Suits.WithModifications, fit.Verdict);
        Assert.Null(WhyNot(fit: fit));
    }

    [Fact]
    public void Every_strict_reason_and_what_lifts_it_is_told_each_once()
    {
        var fit = Someone
            .Pregnant("22w 0d")
            .WithoutLetters()
            .In(Someone.For(["first-trimester"], "supine"));
        var message = WhyNot(fit: fit)!.Message;
        Assert.All(
            fit.Reasons.Where(r => r.Verdict >= Suits.NeedsClearance),
            r => Assert.Contains(r.ForHer, message, StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            fit.Reasons.First(r => r.Verdict == Suits.WithModifications).ForHer,
            message,
            StringComparison.Ordinal
        );
        Assert.Equal(
            message.Split(". ").Length,
            message.Split(". ").Distinct(StringComparer.Ordinal).Count()
        );
    }

    [Fact]
    public void The_desk_is_refused_in_its_own_words() =>
        Any.Case.AlwaysHolds(c =>
        {
            var fit = c.Her.In(c.Class, c.Policies);
            var message = WhyNot(fit: fit, audience: Audience.FrontDesk)?.Message ?? "";
            return fit
                .Reasons.Where(r => r.Factor is not null)
                .All(r =>
                    !message.Contains(r.ForHer, StringComparison.Ordinal)
                    && (
                        r.Lift is not { } lift
                        || lift.Text == r.DeskLift?.Text
                        || fit.Reasons.Any(other => other.DeskLift?.Text == lift.Text)
                        || !message.Contains(lift.Text, StringComparison.Ordinal)
                    )
                );
        });

    [Theory]
    [InlineData(121, true, "two hours and a minute before")]
    [InlineData(120, false, "two hours before")]
    [InlineData(119, false, "a minute later")]
    public void A_free_seat_goes_to_the_waitlist_up_to_the_cut_off(
        int minutesBefore,
        bool goes,
        string because
    ) =>
        Assert.True(
            goes
                == BookingRules.PromotesAt(
                    Now + Duration.FromMinutes(minutesBefore),
                    cutOffMinutes: 120,
                    Now
                ),
            because
        );

    private static Refusal? WhyNot(
        bool open = true,
        Duration? startsIn = null,
        LocalDate? on = null,
        Fit? fit = null,
        bool hasIt = false,
        bool overlaps = false,
        Audience audience = Audience.Herself
    ) =>
        BookingRules.WhyNot(
            new BookableSession(open, Now + (startsIn ?? Duration.FromHours(3)), on ?? Today),
            fit ?? Suiting,
            audience,
            hasIt,
            overlaps,
            Today,
            daysAhead: 28,
            Now
        );
}
