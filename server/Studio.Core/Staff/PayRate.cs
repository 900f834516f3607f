using NodaTime;

namespace Studio.Core.Staff;

/// <summary>What a rate is paid for.</summary>
public enum PayPer
{
    /// <summary>A session, whoever came.</summary>
    Session,

    /// <summary>Each person; who is counted stands with the rate.</summary>
    Head,

    /// <summary>An hour of class.</summary>
    Hour,
}

/// <summary>Whom a rate per head counts.</summary>
public enum HeadCount
{
    /// <summary>Those checked in: they were there.</summary>
    CheckedIn,

    /// <summary>Those who had a seat, whether they came or not.</summary>
    SeatsTaken,
}

/// <summary>What is paid from a date on, until a newer rate of the same kind says otherwise.</summary>
public sealed record PayRate
{
    /// <summary>Key; of two from the same date the later one counts.</summary>
    public required long Id { get; init; }

    /// <summary>For her; null: for everybody.</summary>
    public long? InstructorId { get; init; }

    /// <summary>For this class; null: for every class.</summary>
    public long? ClassId { get; init; }

    /// <summary>Paid for what.</summary>
    public required PayPer Per { get; init; }

    /// <summary>In the smallest unit of the currency.</summary>
    public required long Amount { get; init; }

    /// <summary>ISO 4217.</summary>
    public required string Currency { get; init; }

    /// <summary>The first day it counts for, by the session's own date.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Whom it counts, when it is per head.</summary>
    public HeadCount? Heads { get; init; }
}

/// <summary>A session that was held, as far as pay goes.</summary>
public sealed record PaidSession
{
    /// <summary>The session.</summary>
    public required long Id { get; init; }

    /// <summary>Who taught it.</summary>
    public required long InstructorId { get; init; }

    /// <summary>Its class.</summary>
    public required long ClassId { get; init; }

    /// <summary>Its own date, where it is held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Its length.</summary>
    public required int Minutes { get; init; }

    /// <summary>People checked in.</summary>
    public required int CheckedIn { get; init; }

    /// <summary>People who had a seat.</summary>
    public required int SeatsTaken { get; init; }
}

/// <summary>What is paid for one session.</summary>
/// <param name="Session">It.</param>
/// <param name="Rate">The rate that applies; null when there is none: then it is not known what is paid, which is not nothing.</param>
/// <param name="Heads">How many were counted; null when the rate counts nobody.</param>
/// <param name="Amount">In the smallest unit of the rate's currency.</param>
public sealed record PayLine(PaidSession Session, PayRate? Rate, int? Heads, long? Amount);

/// <summary>What lines come to in one currency.</summary>
public sealed record PayTotal(string Currency, long Amount, int Sessions);
