using Studio.Core.Booking;
using static Studio.Core.Tests.Booking.Moving;

namespace Studio.Core.Tests.Booking;

/// <summary>Where outgrown bookings may go; what counts as near is common practice, no published source.</summary>
public class MoveSuggestions
{
    [Theory]
    [InlineData(0, 0, 1, 1, 1.0, 0, "nothing changes")]
    [InlineData(0, 60, 1, 1, 1.0, 30, "an hour later")]
    [InlineData(0, -60, 1, 1, 1.0, 30, "an hour earlier")]
    [InlineData(7, 0, 1, 1, 1.0, 140, "a week later")]
    [InlineData(1, 0, 1, 1, 1.0, 140, "the day after: another weekday, and a day")]
    [InlineData(0, 0, 2, 1, 1.0, 90, "at the other place")]
    [InlineData(0, 0, 1, 2, 1.0, 30, "with somebody else")]
    [InlineData(0, 0, 1, 1, 0.75, 25, "a quarter of it done differently")]
    [InlineData(-7, 30, 2, 2, 0.5, 325, "all of that together")]
    public void What_changes_for_her_is_added_up(
        int days,
        int minutes,
        long location,
        long by,
        double asTaught,
        int cost,
        string because
    ) =>
        Assert.True(
            cost == MoveRules.Cost(Seat(), Session(1, days, minutes, location, by: by), asTaught),
            because
        );

    [Fact]
    public void What_costs_her_least_is_suggested()
    {
        Assert.Equal(
            [2],
            ToOf([Seat()], [Session(1, minutes: 90), Session(2, minutes: -60), Session(3, 7)])
        );
        Assert.Equal([3], ToOf([Seat()], [Session(3, 7), Session(4, 8)]));
    }

    [Fact]
    public void Of_two_that_cost_the_same_the_earlier_is_suggested_then_the_lower_number()
    {
        Assert.Equal([2], ToOf([Seat()], [Session(1, minutes: 60), Session(2, minutes: -60)]));
        Assert.Equal([1], ToOf([Seat()], [Session(2), Session(1)]));
    }

    [Fact]
    public void What_lies_too_far_off_is_not_suggested()
    {
        Assert.Equal([1], ToOf([Seat()], [Session(1, MoveRules.DaysApartMost)]));
        Assert.Equal([null], ToOf([Seat()], [Session(1, MoveRules.DaysApartMost + 1)]));
    }

    [Fact]
    public void Nothing_is_suggested_before_the_day_she_crosses()
    {
        // Crosses on 14 December, the day of the booking itself.
        var crossing = Seat(crosses: 13);
        Assert.Equal([1], ToOf([crossing], [Session(1), Session(2, -1)]));
        Assert.Equal([null], ToOf([crossing], [Session(2, -1), Session(3, -7)]));
        Assert.Equal([2], ToOf([Seat(crosses: 12)], [Session(2, -1)]));
    }

    [Fact]
    public void The_last_seat_is_suggested_once_to_whoever_crosses_first()
    {
        var first = Seat(1, client: 20, crosses: 3);
        var second = Seat(2, client: 10, crosses: 4);
        Assert.Equal(
            [(20L, (long?)1), (10L, null)],
            Solve([second, first], [Session(1)]).Select(s => (s.From.ClientId, s.ToSessionId))
        );
    }

    [Fact]
    public void The_last_seat_goes_to_her_who_has_nothing_else_though_another_crosses_first()
    {
        var steps = Solve(
            [Seat(1, client: 20, crosses: 3), Seat(2, client: 10, crosses: 4)],
            [Session(1), Session(2, 7)],
            (b, s) => b.ClientId == 20 || s.SessionId == 1
        );
        Assert.Equal([2, 1], steps.Select(s => s.ToSessionId));
    }

    [Fact]
    public void What_was_suggested_before_stays_where_nothing_is_better()
    {
        OpenSeats[] open = [Session(1, minutes: -60), Session(2, minutes: 60)];
        Assert.Equal([2], Solve([Seat()], open, before: _ => 2).Select(s => s.ToSessionId));
        // One that costs less was added since.
        Assert.Equal(
            [3],
            Solve([Seat()], [.. open, Session(3)], before: _ => 2).Select(s => s.ToSessionId)
        );
    }

    [Fact]
    public void Two_bookings_of_hers_are_never_sent_to_the_same_or_to_overlapping_sessions() =>
        Assert.Equal(
            [1, 3],
            ToOf(
                [Seat(1), Seat(2, minutes: 90)],
                [
                    Session(1, seats: 5),
                    Session(2, minutes: 30, seats: 5),
                    Session(3, minutes: 200, seats: 5),
                ]
            )
        );

    [Fact]
    public void Nothing_is_suggested_across_a_booking_that_finds_no_place()
    {
        // The second has nowhere to go, so it stays, and the only session for the first lies across it.
        var steps = Solve(
            [Seat(1), Seat(2, minutes: 120)],
            [Session(1, minutes: 150)],
            (b, _) => b.BookingId == 1
        );
        Assert.Equal([null, null], steps.Select(s => s.ToSessionId));
    }

    [Fact]
    public void A_session_that_only_touches_another_does_not_overlap_it() =>
        Assert.Equal(
            [1, 2],
            ToOf(
                [Seat(1), Seat(2, minutes: 60)],
                [Session(1, seats: 5), Session(2, minutes: 60, seats: 5)]
            )
        );

    [Fact]
    public void A_booking_for_which_nothing_is_found_stays_in_the_answer() =>
        Assert.Equal([null], ToOf([Seat()], [Session(1, seats: 0)]));

    private static long?[] ToOf(OutgrownBooking[] outgrown, OpenSeats[] open) =>
        [.. Solve(outgrown, open).Select(s => s.ToSessionId)];
}
