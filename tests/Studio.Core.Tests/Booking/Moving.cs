using Studio.Core.Booking;

namespace Studio.Core.Tests.Booking;

/// <summary>Bookings and sessions on Monday 14 December 2026, 18:00, for one hour, unless a test says otherwise.</summary>
internal static class Moving
{
    public static readonly LocalDate Monday = new(2026, 12, 14);

    public static OutgrownBooking Seat(
        long id = 1,
        int days = 0,
        int minutes = 0,
        long client = 10,
        int crosses = 0,
        long location = 1
    )
    {
        var (on, local, at) = When(days, minutes);
        return new OutgrownBooking
        {
            BookingId = id,
            ClientId = client,
            SessionId = 1000 + id,
            On = on,
            StartsLocal = local,
            StartsAt = at,
            EndsAt = at + Duration.FromHours(1),
            LocationId = location,
            InstructorId = 1,
            CrossesOn = new LocalDate(2026, 12, 1).PlusDays(crosses),
        };
    }

    public static OpenSeats Session(
        long id,
        int days = 0,
        int minutes = 0,
        long location = 1,
        int seats = 1,
        long by = 1,
        int length = 60
    )
    {
        var (on, local, at) = When(days, minutes);
        return new OpenSeats
        {
            SessionId = id,
            ClassId = 1,
            On = on,
            StartsLocal = local,
            StartsAt = at,
            EndsAt = at + Duration.FromMinutes(length),
            LocationId = location,
            InstructorId = by,
            SeatsLeft = seats,
        };
    }

    /// <summary>Every near session would do for every booking, at what it costs.</summary>
    public static IReadOnlyList<MoveStep> Solve(
        IEnumerable<OutgrownBooking> bookings,
        IReadOnlyCollection<OpenSeats> open,
        Func<OutgrownBooking, OpenSeats, bool>? suits = null,
        Func<long, long?>? before = null
    ) =>
        MoveAssignment.Solve(
            bookings.Select(b => new MoveQuestion(
                b,
                [
                    .. open.Where(s => MoveRules.IsNear(b, s) && (suits?.Invoke(b, s) ?? true))
                        .Select(s => new MoveOption(s.SessionId, MoveRules.Cost(b, s, 1))),
                ],
                before?.Invoke(b.BookingId)
            )),
            open.ToDictionary(s => s.SessionId)
        );

    private static (LocalDate On, LocalTime Local, Instant At) When(int days, int minutes)
    {
        var local = Monday.At(new LocalTime(18, 0)).PlusDays(days).PlusMinutes(minutes);
        return (local.Date, local.TimeOfDay, local.InUtc().ToInstant());
    }
}
