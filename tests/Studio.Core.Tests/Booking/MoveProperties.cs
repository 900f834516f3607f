using CsCheck;
using Studio.Core.Booking;

namespace Studio.Core.Tests.Booking;

/// <summary>
/// What holds of suggested moves for any studio: a few clients, bookings and sessions, crowded enough to clash, held against
/// every assignment there is.
/// </summary>
public class MoveProperties
{
    private static readonly Gen<(int Days, int Minutes)> AStart = Gen.Select(
        Gen.Int[0, 2],
        Gen.Int[0, 1],
        Gen.Int[0, 5],
        (week, day, half) => ((7 * week) + day, 30 * half)
    );

    private static readonly Gen<Studio> AStudio = Gen.Select(
        Gen.Select(AStart, Gen.Int[1, 3], Gen.Int[1, 2], Gen.Int[0, 3]).Array[0, 4],
        Gen.Select(AStart, Gen.Int[1, 3], Gen.Int[1, 2], Gen.Int[0, 2]).Array[0, 5],
        Gen.Int[0, 1 << 24],
        Gen.Int[0, 9].Array[4],
        (bookings, sessions, unsuited, before) =>
            new Studio(
                [
                    .. bookings.Select(
                        (b, at) =>
                            Moving.Seat(
                                at + 1,
                                b.Item1.Days,
                                b.Item1.Minutes,
                                b.Item2,
                                b.Item4,
                                b.Item3
                            )
                    ),
                ],
                [
                    .. sessions.Select(
                        (s, at) =>
                            Moving.Session(
                                at,
                                s.Item1.Days,
                                s.Item1.Minutes,
                                s.Item3,
                                s.Item4,
                                length: 30 * s.Item2
                            )
                    ),
                ],
                unsuited,
                before
            )
    );

    private const int Cases = 400;

    [Fact]
    public void No_assignment_there_is_does_better() =>
        AStudio.Sample(
            studio =>
            {
                var chosen = studio.Steps();
                Assert.True(studio.IsAllowed(chosen));
                var best = studio.All().Where(studio.IsAllowed).Min(studio.Worth);
                Assert.Equal(best, studio.Worth(chosen));
            },
            iter: Cases
        );

    [Fact]
    public void No_two_suggestions_can_be_swapped_for_a_lower_total() =>
        AStudio.Sample(
            studio =>
            {
                var chosen = studio.Steps();
                var worth = studio.Worth(chosen);
                for (var a = 0; a < chosen.Count; a++)
                for (var b = a + 1; b < chosen.Count; b++)
                {
                    var swapped = chosen.ToArray();
                    (swapped[a], swapped[b]) = (
                        chosen[a] with
                        {
                            ToSessionId = chosen[b].ToSessionId,
                        },
                        chosen[b] with
                        {
                            ToSessionId = chosen[a].ToSessionId,
                        }
                    );
                    Assert.True(
                        !studio.IsAllowed(swapped) || studio.Worth(swapped).CompareTo(worth) >= 0
                    );
                }
            },
            iter: Cases
        );

    [Fact]
    public void What_is_suggested_tonight_is_suggested_tomorrow() =>
        AStudio.Sample(
            studio =>
            {
                var tonight = studio.Steps();
                var kept = tonight.ToDictionary(s => s.From.BookingId, s => s.ToSessionId);
                Assert.Equal(
                    tonight,
                    Moving.Solve(studio.Bookings, studio.Sessions, studio.Suits, b => kept[b])
                );
            },
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
                    Assert.Equal(studio.Steps(), mixed.Steps());
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
            iter: Cases
        );
        Assert.True(moved > 100 && left > 100, $"{moved} moved, {left} left");
    }

    private sealed record Studio(
        IReadOnlyList<OutgrownBooking> Bookings,
        IReadOnlyList<OpenSeats> Sessions,
        int Unsuited,
        int[] Before
    )
    {
        public bool Suits(OutgrownBooking booking, OpenSeats session) =>
            (Unsuited >> (int)(((booking.ClientId - 1) * 8) + session.SessionId) & 1) == 0;

        private long? SuggestedBefore(long booking) =>
            Before[booking - 1] < Sessions.Count ? Before[booking - 1] : null;

        public IReadOnlyList<MoveStep> Steps() =>
            Moving.Solve(Bookings, Sessions, Suits, SuggestedBefore);

        /// <summary>Every way to send each booking to a session or leave it where it is.</summary>
        public IEnumerable<IReadOnlyList<MoveStep>> All() =>
            Bookings.Aggregate(
                (IEnumerable<IReadOnlyList<MoveStep>>)
                    [
                        [],
                    ],
                (so, booking) =>
                    so.SelectMany(steps =>
                        Sessions
                            .Select(s => (long?)s.SessionId)
                            .Prepend(null)
                            .Select(to =>
                                (IReadOnlyList<MoveStep>)[.. steps, new MoveStep(booking, to)]
                            )
                    )
            );

        public bool IsAllowed(IReadOnlyList<MoveStep> steps)
        {
            var moved = steps.Where(s => s.ToSessionId is not null).ToList();
            return moved
                    .GroupBy(s => s.ToSessionId)
                    .All(g => g.Count() <= Sessions.Single(s => s.SessionId == g.Key).SeatsLeft)
                && moved.TrueForAll(m =>
                    Suits(m.From, Sessions.Single(s => s.SessionId == m.ToSessionId))
                    && MoveRules.IsNear(m.From, Sessions.Single(s => s.SessionId == m.ToSessionId))
                )
                && steps
                    .GroupBy(s => s.From.ClientId)
                    .All(hers =>
                    {
                        var spans = hers.Select(Span).ToList();
                        // Two bookings of hers that overlap already are the database's matter, not this one's.
                        return !spans
                            .SelectMany((a, at) => spans.Skip(at + 1).Select(b => (a, b)))
                            .Any(two =>
                                (two.a.Moved || two.b.Moved)
                                && two.a.From < two.b.To
                                && two.b.From < two.a.To
                            );
                    });

            (Instant From, Instant To, bool Moved) Span(MoveStep step) =>
                step.ToSessionId is { } to
                    ? (
                        Sessions.Single(s => s.SessionId == to).StartsAt,
                        Sessions.Single(s => s.SessionId == to).EndsAt,
                        true
                    )
                    : (step.From.StartsAt, step.From.EndsAt, false);
        }

        /// <summary>The aims in their order; less is better.</summary>
        public (int Left, int Cost, int Changed) Worth(IReadOnlyList<MoveStep> steps) =>
            (
                steps.Count(s => s.ToSessionId is null),
                steps.Sum(s =>
                    s.ToSessionId is { } to
                        ? MoveRules.Cost(s.From, Sessions.Single(o => o.SessionId == to), 1)
                        : 0
                ),
                steps.Count(s => s.ToSessionId != SuggestedBefore(s.From.BookingId))
            );
    }
}
