using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Api.Booking;
using Studio.Core.Rosters;

namespace Studio.Api.Rosters;

/// <summary>What was seen of one person in one class. Never for the front desk.</summary>
public sealed record ClassNote
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>The session it is about.</summary>
    public required long SessionId { get; init; }

    /// <summary>The person it is about.</summary>
    public required long ClientId { get; init; }

    /// <summary>What was seen.</summary>
    public required string Text { get; init; }

    /// <summary>Its version, from 1; a change sends the one it began from.</summary>
    public required int Version { get; init; }

    /// <summary>The session's own date.</summary>
    public required LocalDate On { get; init; }

    /// <summary>The session's class.</summary>
    public required string ClassName { get; init; }

    /// <summary>What its writer is called.</summary>
    public required string By { get; init; }

    /// <summary>When it was first written.</summary>
    public required Instant WrittenAt { get; init; }

    /// <summary>When it was last changed; null when it never was.</summary>
    public Instant? ChangedAt { get; init; }

    /// <summary>This reader wrote it.</summary>
    public required bool IsMine { get; init; }
}

/// <summary>The notes about one session, and whether more may be written.</summary>
public sealed record SessionNotes
{
    /// <summary>From when on notes may be written: the session's start.</summary>
    public required Instant OpensAt { get; init; }

    /// <summary>The last day on which they may, where the session is held.</summary>
    public required LocalDate LastDay { get; init; }

    /// <summary>Why none may be written now; null when they may.</summary>
    public RefusalMessage? WhyNot { get; init; }

    /// <summary>Those that stand.</summary>
    public required IReadOnlyList<ClassNote> Notes { get; init; }
}

/// <summary>A note to write.</summary>
public sealed record NoteRequest
{
    /// <summary>The person it is about; she has a seat in the session.</summary>
    [Range(1, long.MaxValue)]
    public required long ClientId { get; init; }

    /// <summary>What was seen, up to 2,000 characters.</summary>
    [Required, StringLength(ClassNoteRules.LongestText)]
    public required string Text { get; init; }
}

/// <summary>A note's new words.</summary>
public sealed record NoteChange
{
    /// <summary>What was seen, up to 2,000 characters.</summary>
    [Required, StringLength(ClassNoteRules.LongestText)]
    public required string Text { get; init; }

    /// <summary>The version the change began from.</summary>
    [Range(1, int.MaxValue)]
    public required int Version { get; init; }
}
