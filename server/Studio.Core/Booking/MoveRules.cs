using NodaTime;

namespace Studio.Core.Booking;

/// <summary>A booking that no longer suits because she will be in another stage by then.</summary>
/// <param name="BookingId">The booking.</param>
/// <param name="ClientId">Whose it is.</param>
/// <param name="SessionId">Its session.</param>
/// <param name="On">The session's date.</param>
/// <param name="StartsAt">Its start.</param>
/// <param name="LocationId">Where.</param>
/// <param name="CrossesOn">The first day of the stage she will be in.</param>
public sealed record OutgrownBooking(
    long BookingId,
    long ClientId,
    long SessionId,
    LocalDate On,
    Instant StartsAt,
    long LocationId,
    LocalDate CrossesOn
);

/// <summary>A session that could take somebody.</summary>
/// <param name="SessionId">It.</param>
/// <param name="ClassId">Its class.</param>
/// <param name="On">Its date.</param>
/// <param name="StartsAt">Its start.</param>
/// <param name="EndsAt">Its end.</param>
/// <param name="LocationId">Where.</param>
/// <param name="SeatsLeft">Seats left now.</param>
public sealed record OpenSeats(
    long SessionId,
    long ClassId,
    LocalDate On,
    Instant StartsAt,
    Instant EndsAt,
    long LocationId,
    int SeatsLeft
);

/// <summary>What is suggested for one booking; no session when nothing was found.</summary>
public sealed record MoveStep(OutgrownBooking From, long? ToSessionId);

/// <summary>Suggests where bookings that were outgrown may go.</summary>
public static class MoveRules
{
    /// <summary>
    /// For each booking the session on the same weekday that is nearest in time, suits her on its date, has a seat left
    /// and overlaps nothing else of hers; the same location first where two are equally near. A seat is suggested once:
    /// those who cross first choose first.
    /// </summary>
    /// <param name="outgrown">Every outgrown booking of everybody.</param>
    /// <param name="open">Sessions to come that can be booked.</param>
    /// <param name="suits">Whether a session suits a client on its date.</param>
    /// <param name="isFree">Whether, that booking given up, nothing she keeps overlaps a session and she is not in it already.</param>
    /// <returns>One step a booking, in the order of crossing, client and time.</returns>
    public static IReadOnlyList<MoveStep> Suggest(
        IEnumerable<OutgrownBooking> outgrown,
        IReadOnlyCollection<OpenSeats> open,
        Func<long, OpenSeats, bool> suits,
        Func<OutgrownBooking, OpenSeats, bool> isFree
    )
    {
        var left = open.ToDictionary(s => s.SessionId, s => s.SeatsLeft);
        var taken = new List<(long ClientId, OpenSeats Session)>();
        var steps = new List<MoveStep>();
        foreach (
            var booking in outgrown
                .OrderBy(b => b.CrossesOn)
                .ThenBy(b => b.ClientId)
                .ThenBy(b => b.StartsAt)
                .ThenBy(b => b.BookingId)
        )
        {
            var best = open.Where(s =>
                    s.On.DayOfWeek == booking.On.DayOfWeek
                    && left[s.SessionId] > 0
                    && s.SessionId != booking.SessionId
                    && isFree(booking, s)
                    && !taken.Exists(t => t.ClientId == booking.ClientId && Overlap(t.Session, s))
                    && suits(booking.ClientId, s)
                )
                .OrderBy(s => Distance(booking.StartsAt, s.StartsAt))
                .ThenBy(s => s.LocationId == booking.LocationId ? 0 : 1)
                .ThenBy(s => s.StartsAt)
                .ThenBy(s => s.SessionId)
                .FirstOrDefault();
            if (best is not null)
            {
                left[best.SessionId]--;
                taken.Add((booking.ClientId, best));
            }

            steps.Add(new MoveStep(booking, best?.SessionId));
        }

        return steps;
    }

    private static bool Overlap(OpenSeats a, OpenSeats b) =>
        a.StartsAt < b.EndsAt && a.EndsAt > b.StartsAt;

    private static Duration Distance(Instant a, Instant b) => a < b ? b - a : a - b;
}
