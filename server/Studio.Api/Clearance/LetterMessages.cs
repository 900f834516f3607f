using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Core.Clearance;

namespace Studio.Api.Clearance;

/// <summary>What a reviewer reads off a letter.</summary>
public sealed record LetterReview
{
    /// <summary>Who wrote it.</summary>
    [Required, StringLength(200, MinimumLength = 1)]
    public required string IssuedBy { get; init; }

    /// <summary>The day it was written.</summary>
    public required LocalDate IssuedOn { get; init; }

    /// <summary>Its own last day.</summary>
    public required LocalDate ExpiresOn { get; init; }

    /// <summary>Positions and traits to leave out, by their codes.</summary>
    [MaxLength(40)]
    public IReadOnlyList<string?>? LeaveOut { get; init; }

    /// <summary>The most effort, 0 to 10.</summary>
    [Range(0, 10)]
    public int? EffortMost { get; init; }

    /// <summary>The highest heart rate, in beats a minute.</summary>
    [Range(60, 220)]
    public int? HeartRateMost { get; init; }

    /// <summary>For the instructor, in own words; no condition by name.</summary>
    [StringLength(500)]
    public string? Words { get; init; }

    /// <summary>It takes the place of what earlier letters asked for.</summary>
    public bool? ReplacesEarlier { get; init; }

    internal LetterRead ToLetter() =>
        new(
            IssuedBy.Trim(),
            IssuedOn,
            ExpiresOn,
            new LetterTerms
            {
                LeaveOut = (LeaveOut ?? [])
                    .Select(code => code ?? "")
                    .ToHashSet(StringComparer.Ordinal),
                EffortMost = EffortMost,
                HeartRateMost = HeartRateMost,
                Words = string.IsNullOrWhiteSpace(Words) ? null : Words.Trim(),
            },
            ReplacesEarlier == true
        );
}

/// <summary>Why a letter cannot count.</summary>
/// <param name="Because">For the client to read.</param>
public sealed record LetterRefusal([Required, StringLength(500, MinimumLength = 1)] string Because);

/// <summary>How much there is to read.</summary>
/// <param name="Letters">Letters nobody has read yet.</param>
public sealed record WaitingCount(long Letters);

/// <summary>What a letter asks for, as far as it was read.</summary>
public sealed record LetterTermsMessage
{
    /// <summary>Positions and traits to leave out, by their codes.</summary>
    public required IReadOnlyList<string> LeaveOut { get; init; }

    /// <summary>The same in words.</summary>
    public required IReadOnlyList<string> LeaveOutWords { get; init; }

    /// <summary>The most effort, 0 to 10.</summary>
    public int? EffortMost { get; init; }

    /// <summary>The highest heart rate, in beats a minute.</summary>
    public int? HeartRateMost { get; init; }

    /// <summary>For the instructor, in own words.</summary>
    public string? Words { get; init; }

    /// <summary>It takes the place of what earlier letters asked for.</summary>
    public required bool ReplacesEarlier { get; init; }
}

/// <summary>A clearance letter, as far as the reader may know.</summary>
public sealed record LetterMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>Whose.</summary>
    public required long ClientId { get; init; }

    /// <summary>Her name.</summary>
    public required string Name { get; init; }

    /// <summary>Waiting, counts or refused.</summary>
    public required LetterState State { get; init; }

    /// <summary>In words: what its state means today.</summary>
    public required string Says { get; init; }

    /// <summary>When it came.</summary>
    public required Instant FiledAt { get; init; }

    /// <summary>It lies on paper at the studio; there is no file.</summary>
    public required bool OnPaper { get; init; }

    /// <summary>What its file is; null without one, and for the front desk.</summary>
    public string? MediaType { get; init; }

    /// <summary>The day it was written.</summary>
    public LocalDate? IssuedOn { get; init; }

    /// <summary>The last day it counts, by the earliest of its own expiry, the policies and the birth.</summary>
    public LocalDate? CountsUntil { get; init; }

    /// <summary>It was taken back.</summary>
    public required bool Withdrawn { get; init; }

    /// <summary>Who wrote it; not for the front desk.</summary>
    public string? IssuedBy { get; init; }

    /// <summary>Its own last day; not for the front desk.</summary>
    public LocalDate? ExpiresOn { get; init; }

    /// <summary>What it asks for; not for the front desk.</summary>
    public LetterTermsMessage? Terms { get; init; }

    /// <summary>Why it cannot count; not for the front desk.</summary>
    public string? RefusedBecause { get; init; }

    /// <summary>Who read it, and when; not for the front desk.</summary>
    public string? ReviewedBy { get; init; }

    /// <summary>When it was read.</summary>
    public Instant? ReviewedAt { get; init; }

    /// <summary>
    /// Everything of hers is held since that day: only a letter written then or later lifts it. While the letter waits, for
    /// whoever reads letters.
    /// </summary>
    public LocalDate? HeldSince { get; init; }
}
