using NodaTime;

namespace Studio.Core.Booking;

/// <summary>A booking that no longer suits because she will be in another stage by then.</summary>
public sealed record OutgrownBooking
{
    /// <summary>The booking.</summary>
    public required long BookingId { get; init; }

    /// <summary>Whose it is.</summary>
    public required long ClientId { get; init; }

    /// <summary>Its session.</summary>
    public required long SessionId { get; init; }

    /// <summary>The session's date, where it is held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Its start by the location's clock.</summary>
    public required LocalTime StartsLocal { get; init; }

    /// <summary>Its start.</summary>
    public required Instant StartsAt { get; init; }

    /// <summary>Its end.</summary>
    public required Instant EndsAt { get; init; }

    /// <summary>Where.</summary>
    public required long LocationId { get; init; }

    /// <summary>Who teaches it.</summary>
    public long? InstructorId { get; init; }

    /// <summary>The first day of the stage she will be in.</summary>
    public required LocalDate CrossesOn { get; init; }
}

/// <summary>A session that could take somebody.</summary>
public sealed record OpenSeats
{
    /// <summary>It.</summary>
    public required long SessionId { get; init; }

    /// <summary>Its class.</summary>
    public required long ClassId { get; init; }

    /// <summary>Its date, where it is held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Its start by the location's clock.</summary>
    public required LocalTime StartsLocal { get; init; }

    /// <summary>Its start.</summary>
    public required Instant StartsAt { get; init; }

    /// <summary>Its end.</summary>
    public required Instant EndsAt { get; init; }

    /// <summary>Where.</summary>
    public required long LocationId { get; init; }

    /// <summary>Who teaches it.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Seats left now.</summary>
    public required int SeatsLeft { get; init; }
}

/// <summary>What is suggested for one booking; no session when nothing was found.</summary>
public sealed record MoveStep(OutgrownBooking From, long? ToSessionId);

/// <summary>A session that would do for a booking.</summary>
/// <param name="SessionId">It.</param>
/// <param name="Cost">What the change costs her, in points; see <see cref="MoveRules.Cost"/>.</param>
public sealed record MoveOption(long SessionId, int Cost);

/// <summary>A booking with every session that would do for it.</summary>
/// <param name="From">The booking.</param>
/// <param name="Options">Sessions that suit her on their dates and cross nothing she keeps.</param>
/// <param name="Before">What was suggested for it last night; null when nothing was.</param>
public sealed record MoveQuestion(
    OutgrownBooking From,
    IReadOnlyList<MoveOption> Options,
    long? Before
);

/// <summary>What a change of session costs her. The weights are this studio program's own; no published source.</summary>
public static class MoveRules
{
    /// <summary>How far a suggestion may lie from the booking it is for, in days.</summary>
    public const int DaysApartMost = 7;

    /// <summary>Another weekday.</summary>
    public const int OtherWeekday = 120;

    /// <summary>Another location.</summary>
    public const int OtherLocation = 90;

    /// <summary>Somebody else teaching.</summary>
    public const int OtherInstructor = 30;

    /// <summary>Each day between the two dates: her rhythm is broken for so long.</summary>
    public const int PerDay = 20;

    /// <summary>Minutes of difference by the wall clock that cost a point.</summary>
    public const int MinutesAPoint = 2;

    /// <summary>
    /// Points that a change costs: weekday, hour by the wall clock, location, instructor, days between, and one for each
    /// percent of the class's minutes that is not as taught for her. 0: all is as it was.
    /// </summary>
    /// <param name="from">The booking she has.</param>
    /// <param name="to">The session she may go to.</param>
    /// <param name="shareAsTaught">Share of its plan's minutes that is as taught for her, 0 to 1; 1 when it has no plan.</param>
    public static int Cost(OutgrownBooking from, OpenSeats to, double shareAsTaught) =>
        (from.On.DayOfWeek == to.On.DayOfWeek ? 0 : OtherWeekday)
        + (int)(
            Math.Abs(Period.Between(from.StartsLocal, to.StartsLocal, PeriodUnits.Minutes).Minutes)
            / MinutesAPoint
        )
        + (from.LocationId == to.LocationId ? 0 : OtherLocation)
        + (from.InstructorId == to.InstructorId ? 0 : OtherInstructor)
        + (PerDay * Math.Abs(Period.DaysBetween(from.On, to.On)))
        + (int)Math.Round(100 * (1 - shareAsTaught), MidpointRounding.AwayFromZero);

    /// <summary>
    /// Whether a session may be suggested for a booking at all: not before the day she crosses, since she is to move on and
    /// not to be crowded into her last days where she is, and within a week, so that her rhythm holds.
    /// </summary>
    public static bool IsNear(OutgrownBooking from, OpenSeats to) =>
        to.On >= from.CrossesOn && Math.Abs(Period.DaysBetween(from.On, to.On)) <= DaysApartMost;
}
