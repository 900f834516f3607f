using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Core.Staff;

namespace Studio.Api.Staff;

/// <summary>What is paid for one session that was held.</summary>
public sealed record PayLineMessage
{
    /// <summary>The session.</summary>
    public required long SessionId { get; init; }

    /// <summary>Its own date, where it was held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Start by the location's clock.</summary>
    public required string StartsLocal { get; init; }

    /// <summary>Who taught it.</summary>
    public required long InstructorId { get; init; }

    /// <summary>Her name.</summary>
    public required string InstructorName { get; init; }

    /// <summary>Its class.</summary>
    public required string ClassName { get; init; }

    /// <summary>Where.</summary>
    public required string LocationName { get; init; }

    /// <summary>Its length.</summary>
    public required int Minutes { get; init; }

    /// <summary>How many were counted; null when the rate counts nobody.</summary>
    public int? Heads { get; init; }

    /// <summary>Paid for what; null when no rate applies.</summary>
    public PayPer? Per { get; init; }

    /// <summary>The rate as a decimal number.</summary>
    public string? Rate { get; init; }

    /// <summary>ISO 4217.</summary>
    public string? Currency { get; init; }

    /// <summary>In the smallest unit; null when no rate applies, which is not nothing.</summary>
    public long? Amount { get; init; }

    /// <summary>The same as a decimal number.</summary>
    public string? AmountText { get; init; }
}

/// <summary>What lines come to.</summary>
/// <param name="InstructorId">For one instructor; null: for all of them.</param>
/// <param name="InstructorName">Her name.</param>
/// <param name="Currency">ISO 4217.</param>
/// <param name="Sessions">How many sessions.</param>
/// <param name="Amount">In the smallest unit: the sum of the lines.</param>
/// <param name="AmountText">The same as a decimal number.</param>
public sealed record PayTotalMessage(
    long? InstructorId,
    string? InstructorName,
    string Currency,
    int Sessions,
    long Amount,
    string AmountText
);

/// <summary>Pay of some days.</summary>
public sealed record PayMessage
{
    /// <summary>First day.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Last day.</summary>
    public required LocalDate To { get; init; }

    /// <summary>A line a session, in the order of time.</summary>
    public required IReadOnlyList<PayLineMessage> Lines { get; init; }

    /// <summary>Sums by instructor and currency.</summary>
    public required IReadOnlyList<PayTotalMessage> ByInstructor { get; init; }

    /// <summary>Sums by currency.</summary>
    public required IReadOnlyList<PayTotalMessage> Totals { get; init; }

    /// <summary>Sessions for which there is no rate.</summary>
    public required int WithoutRate { get; init; }
}

/// <summary>A rate as it was agreed.</summary>
public sealed record PayRateMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>For her; null: for everybody.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Her name.</summary>
    public string? InstructorName { get; init; }

    /// <summary>For this class; null: for every class.</summary>
    public long? ClassId { get; init; }

    /// <summary>Its name.</summary>
    public string? ClassName { get; init; }

    /// <summary>Paid for what.</summary>
    public required PayPer Per { get; init; }

    /// <summary>Whom it counts, when it is per head.</summary>
    public HeadCount? Heads { get; init; }

    /// <summary>In the smallest unit.</summary>
    public required long Amount { get; init; }

    /// <summary>The same as a decimal number.</summary>
    public required string AmountText { get; init; }

    /// <summary>ISO 4217.</summary>
    public required string Currency { get; init; }

    /// <summary>The first day it counts for.</summary>
    public required LocalDate From { get; init; }

    /// <summary>When it was entered.</summary>
    public required Instant MadeAt { get; init; }

    /// <summary>It was wrong; since then it counts for nothing.</summary>
    public Instant? WithdrawnAt { get; init; }
}

/// <summary>A rate to enter.</summary>
public sealed record PayRateRequest
{
    /// <summary>For her; null: for everybody.</summary>
    public long? InstructorId { get; init; }

    /// <summary>For this class; null: for every class.</summary>
    public long? ClassId { get; init; }

    /// <summary>Paid for what.</summary>
    public required PayPer Per { get; init; }

    /// <summary>Whom it counts: only per head, and there those checked in unless said otherwise.</summary>
    public HeadCount? Heads { get; init; }

    /// <summary>In the smallest unit of the currency.</summary>
    [Range(0, 100_000_000)]
    public required long Amount { get; init; }

    /// <summary>ISO 4217.</summary>
    [Required, StringLength(3, MinimumLength = 3)]
    public required string Currency { get; init; }

    /// <summary>The first day it counts for, by the session's own date.</summary>
    public required LocalDate From { get; init; }
}
