using Studio.Core.Booking;

namespace Studio.Core.Tests.Booking;

/// <summary>Where outgrown bookings may go; what counts as near is common practice, no published source.</summary>
public class MoveSuggestions
{
    // Monday 14 December 2026, 18:00, for one hour, like every session here unless a test says otherwise.
    private static readonly Instant Monday = Instant.FromUtc(2026, 12, 14, 18, 0);

    [Theory]
    [InlineData(1, "a Tuesday is another weekday")]
    [InlineData(-1, "so is a Sunday")]
    public void Another_weekday_is_never_suggested(int days, string because) =>
        Assert.True(ToOf([Booking()], [Seats(1, Duration.FromDays(days))]) is [null], because);

    [Fact]
    public void The_nearest_in_time_is_suggested_earlier_or_later()
    {
        Assert.Equal(
            [2],
            ToOf(
                [Booking()],
                [
                    Seats(1, Duration.FromMinutes(90)),
                    Seats(2, Duration.FromMinutes(-60)),
                    Seats(3, Duration.FromDays(7)),
                ]
            )
        );
        Assert.Equal([3], ToOf([Booking()], [Seats(3, Duration.FromDays(7))]));
    }

    [Fact]
    public void Of_two_equally_near_the_same_location_is_suggested_then_the_earlier_then_the_lower_number()
    {
        var (early, late) = (Duration.FromMinutes(-60), Duration.FromMinutes(60));
        Assert.Equal([2], ToOf([Booking()], [Seats(1, early, location: 9), Seats(2, late)]));
        Assert.Equal([2], ToOf([Booking()], [Seats(1, late), Seats(2, early)]));
        Assert.Equal([1], ToOf([Booking()], [Seats(2, late), Seats(1, late)]));
    }

    [Fact]
    public void The_last_seat_is_suggested_once_to_whoever_crosses_first()
    {
        var first = Booking(1, client: 20, crosses: 3);
        var second = Booking(2, client: 10, crosses: 4);
        var steps = MoveRules.Suggest([second, first], [Seats(1, Duration.Zero)], Always, Always);
        Assert.Equal(
            [(20L, (long?)1), (10L, null)],
            steps.Select(s => (s.From.ClientId, s.ToSessionId))
        );
    }

    [Fact]
    public void Two_bookings_of_hers_are_never_sent_to_the_same_or_to_overlapping_sessions()
    {
        var steps = ToOf(
            [Booking(1), Booking(2, Duration.FromMinutes(90))],
            [
                Seats(1, Duration.Zero, seats: 5),
                Seats(2, Duration.FromMinutes(30), seats: 5),
                Seats(3, Duration.FromMinutes(200), seats: 5),
            ]
        );
        Assert.Equal([1, 3], steps);
    }

    [Fact]
    public void A_session_that_only_touches_another_does_not_overlap_it() =>
        Assert.Equal(
            [1, 2],
            ToOf(
                [Booking(1), Booking(2, Duration.FromMinutes(60))],
                [Seats(1, Duration.Zero, seats: 5), Seats(2, Duration.FromMinutes(60), seats: 5)]
            )
        );

    [Fact]
    public void What_does_not_suit_her_or_is_not_free_for_her_is_passed_over()
    {
        OpenSeats[] open =
        [
            Seats(1, Duration.Zero),
            Seats(2, Duration.FromDays(7)),
            Seats(3, Duration.FromDays(14)),
        ];
        var steps = MoveRules.Suggest(
            [Booking()],
            open,
            (_, s) => s.SessionId != 1,
            (_, s) => s.SessionId != 2
        );
        Assert.Equal(3, Assert.Single(steps).ToSessionId);
    }

    [Fact]
    public void A_booking_for_which_nothing_is_found_stays_in_the_answer() =>
        Assert.Equal([null], ToOf([Booking()], [Seats(1, Duration.Zero, seats: 0)]));

    private static bool Always<T>(T whom, OpenSeats session) => true;

    private static long?[] ToOf(OutgrownBooking[] outgrown, OpenSeats[] open) =>
        [.. MoveRules.Suggest(outgrown, open, Always, Always).Select(s => s.ToSessionId)];

    private static OutgrownBooking Booking(
        long id = 1,
        Duration after = default,
        long client = 10,
        int crosses = 0
    ) =>
        new(
            id,
            client,
            1000 + id,
            (Monday + after).InUtc().Date,
            Monday + after,
            LocationId: 1,
            new LocalDate(2026, 12, 1).PlusDays(crosses)
        );

    private static OpenSeats Seats(long id, Duration after, long location = 1, int seats = 1) =>
        new(
            id,
            ClassId: 1,
            (Monday + after).InUtc().Date,
            Monday + after,
            Monday + after + Duration.FromHours(1),
            location,
            seats
        );
}
