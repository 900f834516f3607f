using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Core.Clients;

namespace Studio.Api.Erasures;

/// <summary>What an erasure would do today, and whether one has been asked for.</summary>
public sealed record ErasurePlan
{
    /// <summary>Her name as it stands on her page.</summary>
    public required string Name { get; init; }

    /// <summary>When it was asked for; null when it was not.</summary>
    public Instant? AskedAt { get; init; }

    /// <summary>She asked herself; false: somebody at the studio filed it for her.</summary>
    public required bool AskedByHerself { get; init; }

    /// <summary>What goes at once.</summary>
    public required IReadOnlyList<ErasedPart> Goes { get; init; }

    /// <summary>What has to be kept for a time, set apart.</summary>
    public required IReadOnlyList<PartToKeep> Stays { get; init; }

    /// <summary>What stays for good and names nobody.</summary>
    public required IReadOnlyList<string> StaysWithoutName { get; init; }

    /// <summary>Seats and waitlist places to come, which are let go without charge.</summary>
    public required int Released { get; init; }

    /// <summary>Names what has to be kept and until when; to be sent back, so that nothing else is done than was shown.</summary>
    public required string Seen { get; init; }
}

/// <summary>Something that goes at once.</summary>
/// <param name="Title">What.</param>
/// <param name="Entries">How many; null where it is not counted.</param>
public sealed record ErasedPart(string Title, int? Entries);

/// <summary>Something that has to be kept for a time.</summary>
/// <param name="Part">Which part.</param>
/// <param name="Title">What it is.</param>
/// <param name="LastDay">The last day on which it is kept.</param>
/// <param name="Why">Why, and who can read it meanwhile.</param>
public sealed record PartToKeep(KeptPart Part, string Title, LocalDate LastDay, string Why);

/// <summary>The word to erase her.</summary>
public sealed record ErasureConfirmed
{
    /// <summary>Her full name, typed.</summary>
    [Required, StringLength(200, MinimumLength = 1)]
    public required string Name { get; init; }

    /// <summary>What the preview gave as <c>seen</c>.</summary>
    [Required(AllowEmptyStrings = true), StringLength(400)]
    public required string Seen { get; init; }
}

/// <summary>That she was erased.</summary>
/// <param name="ErasureId">Key of the entry in the owner's list.</param>
/// <param name="FilesLeft">Files that could not be taken from the disk yet; it is tried again every few minutes.</param>
public sealed record Erased(long ErasureId, int FilesLeft);

/// <summary>The owner's list.</summary>
public sealed record ErasureList
{
    /// <summary>Wishes to be carried out, the oldest first.</summary>
    public required IReadOnlyList<ErasureWish> Wishes { get; init; }

    /// <summary>What was carried out, the newest first; without names.</summary>
    public required IReadOnlyList<ErasureDone> Done { get; init; }

    /// <summary>Files that could not be taken from the disk yet.</summary>
    public required int FilesLeft { get; init; }
}

/// <summary>A wish.</summary>
public sealed record ErasureWish
{
    /// <summary>Whose.</summary>
    public long ClientId { get; init; }

    /// <summary>Her name.</summary>
    public string Name { get; init; } = "";

    /// <summary>When.</summary>
    public Instant AskedAt { get; init; }

    /// <summary>She asked herself.</summary>
    public bool ByHerself { get; init; }
}

/// <summary>An erasure that was carried out.</summary>
public sealed record ErasureDone
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>When.</summary>
    public required Instant DoneAt { get; init; }

    /// <summary>By whom.</summary>
    public required string DoneBy { get; init; }

    /// <summary>How many entries were taken away.</summary>
    public required int Entries { get; init; }

    /// <summary>How many files.</summary>
    public required int Files { get; init; }

    /// <summary>What was kept for a time.</summary>
    public required IReadOnlyList<SetApart> Kept { get; init; }
}

/// <summary>A part that was set apart.</summary>
/// <param name="Part">Which.</param>
/// <param name="Title">What it is.</param>
/// <param name="LastDay">The last day on which it is kept.</param>
/// <param name="ErasedAt">When it was erased for good; null while it is kept.</param>
public sealed record SetApart(KeptPart Part, string Title, LocalDate LastDay, Instant? ErasedAt);
