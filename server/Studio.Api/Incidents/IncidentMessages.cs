using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Api.Booking;
using Studio.Core.Catalogue;

namespace Studio.Api.Incidents;

/// <summary>A warning sign at the door or in class. Everything in it may be left out: the hold must not wait for words.</summary>
public sealed record WarningRequest
{
    /// <summary>In which session.</summary>
    public long? SessionId { get; init; }

    /// <summary>Codes of warning signs.</summary>
    [MaxLength(20)]
    public IReadOnlyList<string?>? Signs { get; init; }

    /// <summary>What happened.</summary>
    [StringLength(2000)]
    public string? Happened { get; init; }

    /// <summary>What was done.</summary>
    [StringLength(2000)]
    public string? Done { get; init; }
}

/// <summary>What to do now.</summary>
/// <param name="IncidentId">The entry that was written.</param>
/// <param name="Says">Stop, refer, and what follows.</param>
/// <param name="EmergencyNumber">Of the session's location, or of hers.</param>
public sealed record StopAndRefer(long IncidentId, string Says, string EmergencyNumber);

/// <summary>What is added to an entry later.</summary>
public sealed record IncidentMore
{
    /// <summary>What became known.</summary>
    [Required, StringLength(2000, MinimumLength = 1)]
    public required string Happened { get; init; }

    /// <summary>What was done.</summary>
    [StringLength(2000)]
    public string? Done { get; init; }
}

/// <summary>A warning sign, for one tap.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Name">In a few words.</param>
/// <param name="Asks">In a sentence.</param>
/// <param name="When">To whom it is shown.</param>
/// <param name="Stops">Stop and refer; false: slow down and seek advice.</param>
/// <param name="Source">Where it stands.</param>
public sealed record WarningSignMessage(
    string Code,
    string Name,
    string Asks,
    AskedWhen When,
    bool Stops,
    SourceMessage Source
);

/// <summary>What was added to an entry.</summary>
/// <param name="Id">Key.</param>
/// <param name="At">When.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="Happened">What became known.</param>
/// <param name="Done">What was done.</param>
public sealed record IncidentAddition(
    long Id,
    Instant At,
    string? By,
    string Happened,
    string Done
);

/// <summary>An entry of the incident record, for the owner.</summary>
public sealed record IncidentMessage
{
    /// <summary>Key; ask for what lies before the last one seen to go on.</summary>
    public required long Id { get; init; }

    /// <summary>Whom it concerns.</summary>
    public required long ClientId { get; init; }

    /// <summary>Her name.</summary>
    public required string Name { get; init; }

    /// <summary>In which session.</summary>
    public long? SessionId { get; init; }

    /// <summary>The class of that session.</summary>
    public string? ClassName { get; init; }

    /// <summary>The day of that session where it is held.</summary>
    public LocalDate? SessionOn { get; init; }

    /// <summary>When that session begins where it is held, <c>09:30</c>.</summary>
    public string? StartsLocal { get; init; }

    /// <summary>The session's location, or the one she usually comes to.</summary>
    public required string Place { get; init; }

    /// <summary>The IANA zone of that location: moments of this entry are told in it.</summary>
    public required string Zone { get; init; }

    /// <summary>When it was raised.</summary>
    public required Instant RaisedAt { get; init; }

    /// <summary>Who raised it; null when the account is gone.</summary>
    public string? RaisedBy { get; init; }

    /// <summary>The warning signs, in words.</summary>
    public required IReadOnlyList<string> Signs { get; init; }

    /// <summary>What happened.</summary>
    public required string Happened { get; init; }

    /// <summary>What was done.</summary>
    public required string Done { get; init; }

    /// <summary>Whether the hold that followed still stands.</summary>
    public required bool HoldStands { get; init; }

    /// <summary>Since when it stands and what lifts it, or when it was lifted.</summary>
    public required string Hold { get; init; }

    /// <summary>What was added later, in the order it was written.</summary>
    public required IReadOnlyList<IncidentAddition> More { get; init; }
}
