using CsCheck;
using Studio.Core.Booking;

namespace Studio.Core.Tests.Booking;

/// <summary>What holds of suggested moves for any studio: a few clients, bookings and sessions, crowded enough to clash.</summary>
public class MoveProperties
{
    private static readonly Instant Monday = Instant.FromUtc(2026, 12, 14, 9, 0);

    // Three weeks of two weekdays, starts half an hour apart, lengths that overlap.
    private static readonly Gen<Instant> AStart = Gen.Select(
        Gen.Int[0, 2],
        Gen.Int[0, 1],
        Gen.Int[0, 5],
        (week, day, half) =>
            Monday + Duration.FromDays((7 * week) + day) + Duration.FromMinutes(30 * half)
    );

    private static readonly Gen<OpenSeats> ASession = Gen.Select(
        AStart,
        Gen.Int[1, 3],
        Gen.Int[1, 2],
        Gen.Int[0, 2],
        (starts, halves, location, seats) =>
            new OpenSeats(
                0,
                1,
                starts.InUtc().Date,
                starts,
                starts + Duration.FromMinutes(30 * halves),
                location,
                seats
            )
    );

    private static readonly Gen<OutgrownBooking> ABooking = Gen.Select(
        AStart,
        Gen.Int[1, 3],
        Gen.Int[1, 2],
        Gen.Int[0, 9],
        Gen.Int[0, 3],
        (starts, client, location, session, crosses) =>
            new OutgrownBooking(
                0,
                client,
                session,
                starts.InUtc().Date,
                starts,
                location,
                new LocalDate(2026, 12, 1).PlusDays(crosses)
            )
    );

    private static readonly Gen<Studio> AStudio = Gen.Select(
        ABooking.Array[0, 6],
        ASession.Array[0, 8],
        Gen.Int[0, 1 << 24],
        Gen.Int[0, 1 << 24],
        (bookings, sessions, unsuited, busy) =>
            new Studio(
                [.. bookings.Select((b, at) => b with { BookingId = at + 1 })],
                [.. sessions.Select((s, at) => s with { SessionId = at })],
                unsuited,
                busy
            )
    );

    private const int Cases = 5000;

    [Fact]
    public void Every_booking_gets_one_answer_in_the_order_of_crossing() =>
        AStudio.Sample(
            studio =>
                studio
                    .Steps()
                    .Select(s => s.From)
                    .SequenceEqual(
                        studio
                            .Bookings.OrderBy(b => b.CrossesOn)
                            .ThenBy(b => b.ClientId)
                            .ThenBy(b => b.StartsAt)
                            .ThenBy(b => b.BookingId)
                    ),
            iter: Cases
        );

    [Fact]
    public void No_session_is_suggested_more_often_than_it_has_seats() =>
        AStudio.Sample(
            studio =>
                studio
                    .Steps()
                    .Where(s => s.ToSessionId is not null)
                    .GroupBy(s => s.ToSessionId)
                    .All(g => g.Count() <= studio.Session(g.Key!.Value).SeatsLeft),
            iter: Cases
        );

    [Fact]
    public void Nothing_suggested_to_her_overlaps_anything_else_suggested_to_her() =>
        AStudio.Sample(
            studio =>
                studio
                    .Steps()
                    .Where(s => s.ToSessionId is not null)
                    .GroupBy(s => s.From.ClientId, s => studio.Session(s.ToSessionId!.Value))
                    .All(hers =>
                        hers.SelectMany((a, at) => hers.Skip(at + 1).Select(b => (a, b)))
                            .All(two =>
                                two.a.EndsAt <= two.b.StartsAt || two.b.EndsAt <= two.a.StartsAt
                            )
                    ),
            iter: Cases
        );

    [Fact]
    public void The_order_in_which_bookings_and_sessions_are_given_means_nothing() =>
        Gen.Select(AStudio, Gen.Int[0, int.MaxValue])
            .Sample(
                (studio, seed) =>
                {
                    var random = new Random(seed);
                    var mixed = studio with
                    {
                        Bookings = [.. studio.Bookings.OrderBy(_ => random.Next())],
                        Sessions = [.. studio.Sessions.OrderBy(_ => random.Next())],
                    };
                    return studio.Steps().SequenceEqual(mixed.Steps());
                },
                iter: Cases
            );

    /// <summary>Plays the suggestions through one by one, and at each turn looks at every session that could be had.</summary>
    [Fact]
    public void Each_choice_is_the_nearest_that_could_be_had_at_its_turn() =>
        AStudio.Sample(
            studio =>
            {
                var given = new List<(long Client, OpenSeats Session)>();
                foreach (var step in studio.Steps())
                {
                    var could = studio
                        .Sessions.Where(s => CouldHave(studio, given, step.From, s))
                        .ToList();
                    var chosen = step.ToSessionId is { } id ? studio.Session(id) : null;
                    if (chosen is null ? could.Count > 0 : !could.Contains(chosen))
                        return false;
                    if (
                        chosen is not null
                        && could.Exists(other => IsBetter(step.From, other, than: chosen))
                    )
                        return false;
                    if (chosen is not null)
                        given.Add((step.From.ClientId, chosen));
                }

                return true;
            },
            iter: Cases
        );

    [Fact]
    public void These_studios_are_crowded_enough_to_try_it()
    {
        var (moved, left) = (0, 0);
        AStudio.Sample(
            studio =>
            {
                foreach (var step in studio.Steps())
                    _ = step.ToSessionId is null
                        ? Interlocked.Increment(ref left)
                        : Interlocked.Increment(ref moved);
            },
            iter: 500
        );
        Assert.True(moved > 100 && left > 100, $"{moved} moved, {left} left");
    }

    private static bool CouldHave(
        Studio studio,
        List<(long Client, OpenSeats Session)> given,
        OutgrownBooking booking,
        OpenSeats session
    ) =>
        session.SessionId != booking.SessionId
        && session.On.DayOfWeek == booking.On.DayOfWeek
        && given.Count(g => g.Session == session) < session.SeatsLeft
        && studio.Suits(booking.ClientId, session)
        && studio.IsFree(booking, session)
        && !given.Exists(g =>
            g.Client == booking.ClientId
            && g.Session.StartsAt < session.EndsAt
            && session.StartsAt < g.Session.EndsAt
        );

    private static bool IsBetter(OutgrownBooking from, OpenSeats one, OpenSeats than)
    {
        var (a, b) = (Minutes(from, one), Minutes(from, than));
        if (a != b)
            return a < b;
        var (here, there) = (one.LocationId == from.LocationId, than.LocationId == from.LocationId);
        if (here != there)
            return here;
        return one.StartsAt != than.StartsAt
            ? one.StartsAt < than.StartsAt
            : one.SessionId < than.SessionId;
    }

    private static double Minutes(OutgrownBooking from, OpenSeats to) =>
        Math.Abs((to.StartsAt - from.StartsAt).TotalMinutes);

    private sealed record Studio(
        IReadOnlyList<OutgrownBooking> Bookings,
        IReadOnlyList<OpenSeats> Sessions,
        int Unsuited,
        int Busy
    )
    {
        public OpenSeats Session(long id) => Sessions.Single(s => s.SessionId == id);

        public bool Suits(long client, OpenSeats session) => !Bit(Unsuited, client, session);

        public bool IsFree(OutgrownBooking booking, OpenSeats session) =>
            !Bit(Busy, booking.ClientId, session);

        public IReadOnlyList<MoveStep> Steps() =>
            MoveRules.Suggest(Bookings, [.. Sessions], Suits, IsFree);

        private static bool Bit(int bits, long client, OpenSeats session) =>
            (bits >> (int)(((client - 1) * 8) + session.SessionId) & 1) == 1;
    }
}
