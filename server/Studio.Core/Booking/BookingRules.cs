using NodaTime;

namespace Studio.Core.Booking;

/// <summary>What a booking asks of a session, apart from how it suits her.</summary>
/// <param name="Open">It is held.</param>
/// <param name="StartsAt">When it begins.</param>
/// <param name="OnDate">Its own date, where it is held.</param>
public sealed record BookableSession(bool Open, Instant StartsAt, LocalDate OnDate);

/// <summary>Whether she may have a seat. Seats themselves are counted by the store, in the same transaction.</summary>
public static class BookingRules
{
    /// <summary>Why this client may not have a seat or a place on the waitlist, or null when she may.</summary>
    /// <param name="session">The session.</param>
    /// <param name="fit">How it suits her on its date.</param>
    /// <param name="audience">For whom the words are.</param>
    /// <param name="hasItAlready">She is booked or waiting for it.</param>
    /// <param name="overlaps">She has a seat elsewhere at that time.</param>
    /// <param name="today">Today at the session's location.</param>
    /// <param name="daysAhead">How far ahead booking is open, in days (policy).</param>
    /// <param name="now">The moment of asking.</param>
    public static Refusal? WhyNot(
        BookableSession session,
        Fit fit,
        Accounts.Audience audience,
        bool hasItAlready,
        bool overlaps,
        LocalDate today,
        int daysAhead,
        Instant now
    ) =>
        !session.Open ? BookingRefusals.SessionIsCancelled
        : session.StartsAt <= now ? BookingRefusals.SessionHasBegun
        : session.OnDate > today.PlusDays(daysAhead) ? BookingRefusals.TooFarAhead(daysAhead)
        : hasItAlready ? BookingRefusals.AlreadyBooked
        : fit.Verdict >= Suits.NeedsClearance ? BookingRefusals.DoesNotSuit(fit, audience)
        : overlaps ? BookingRefusals.Overlaps
        : null;

    /// <summary>Whether a seat that becomes free is still given to the waitlist by itself.</summary>
    /// <param name="startsAt">When the session begins.</param>
    /// <param name="cutOffMinutes">Minutes before the start at which that ends (policy).</param>
    /// <param name="now">The moment the seat became free.</param>
    public static bool PromotesAt(Instant startsAt, int cutOffMinutes, Instant now) =>
        now < startsAt - Duration.FromMinutes(cutOffMinutes);
}

/// <summary>Every way of saying no to a booking.</summary>
public static class BookingRefusals
{
    /// <summary>No such session for this reader.</summary>
    public static readonly Refusal NoSuchSession = new(
        RefusalKind.NotFound,
        "no-such-session",
        "There is no such session."
    );

    /// <summary>No such client for this reader.</summary>
    public static readonly Refusal NoSuchClient = new(
        RefusalKind.NotFound,
        "no-such-client",
        "There is no such client."
    );

    /// <summary>No such booking for this reader.</summary>
    public static readonly Refusal NoSuchBooking = new(
        RefusalKind.NotFound,
        "no-such-booking",
        "There is no such booking, or it has been cancelled already."
    );

    /// <summary>Too late.</summary>
    public static readonly Refusal SessionHasBegun = new(
        RefusalKind.Conflict,
        "session-begun",
        "This session has already begun. Please choose a later one."
    );

    /// <summary>Not held.</summary>
    public static readonly Refusal SessionIsCancelled = new(
        RefusalKind.Conflict,
        "session-cancelled",
        "This session has been cancelled. Please choose another one."
    );

    /// <summary>Once is enough.</summary>
    public static readonly Refusal AlreadyBooked = new(
        RefusalKind.Conflict,
        "already-booked",
        "She has a seat in this session or waits for one already."
    );

    /// <summary>Two rooms at once.</summary>
    public static readonly Refusal Overlaps = new(
        RefusalKind.Conflict,
        "overlap",
        "She has a seat in another session at that time. Cancel that one first, or choose another time."
    );

    /// <summary>The same key for something else.</summary>
    public static readonly Refusal KeyReused = new(
        RefusalKind.Conflict,
        "key-reused",
        "This Idempotency-Key was used for another request. Send a new key with a new request.",
        "Idempotency-Key"
    );

    /// <summary>The Idempotency-Key is too long, or empty.</summary>
    public static readonly Refusal BadKey = new(
        RefusalKind.Invalid,
        "bad-key",
        "An Idempotency-Key has 1 to 200 characters.",
        "Idempotency-Key"
    );

    /// <summary>Only people with a seat are checked in.</summary>
    public static readonly Refusal NoSeat = new(
        RefusalKind.Conflict,
        "no-seat",
        "She has no seat in this session; only people with a seat are checked in."
    );

    /// <summary>Everything of hers is held: she cannot be let in.</summary>
    public static readonly Refusal OnHoldAtTheDoor = new(
        RefusalKind.Conflict,
        "on-hold",
        "Her bookings are on hold: she takes part again once a new letter has been read. Her seat stays hers."
    );

    /// <summary>Not open for booking yet.</summary>
    /// <param name="days">The policy, in days.</param>
    public static Refusal TooFarAhead(int days) =>
        new(
            RefusalKind.Conflict,
            "too-far-ahead",
            $"Booking opens {days} days ahead. Please come back nearer the day."
        );

    /// <summary>It does not suit her; every reason, in the words for this reader.</summary>
    public static Refusal DoesNotSuit(Fit fit, Accounts.Audience audience) =>
        new(
            RefusalKind.NotAllowed,
            fit.Reasons.Any(r => r.Code == ReasonCodes.OnHold) ? "on-hold"
                : fit.Verdict == Suits.NeedsClearance ? "clearance-needed"
                : "does-not-suit",
            string.Join(
                " ",
                fit.Reasons.Where(r => r.Verdict >= Suits.NeedsClearance)
                    .SelectMany(r =>
                        new[] { FitWords.Text(r, audience), FitWords.Lift(r, audience)?.Text }
                    )
                    .OfType<string>()
                    .Distinct(StringComparer.Ordinal)
            )
        );
}
