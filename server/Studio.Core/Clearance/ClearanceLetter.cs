using NodaTime;

namespace Studio.Core.Clearance;

/// <summary>What a letter asks for, as a reviewer read it.</summary>
public sealed record LetterTerms
{
    /// <summary>Positions and traits to leave out, by the codes of the movements.</summary>
    public IReadOnlySet<string> LeaveOut { get; init; } =
        new HashSet<string>(StringComparer.Ordinal);

    /// <summary>The most effort, of 10; null for no ceiling.</summary>
    public int? EffortMost { get; init; }

    /// <summary>The highest heart rate, in beats a minute; null for no ceiling.</summary>
    public int? HeartRateMost { get; init; }

    /// <summary>For the instructor, in the reviewer's own words; null when there is nothing to add.</summary>
    public string? Words { get; init; }

    /// <summary>Whether it asks for anything at all.</summary>
    public bool IsEmpty =>
        LeaveOut.Count == 0
        && EffortMost is null
        && HeartRateMost is null
        && string.IsNullOrEmpty(Words);
}

/// <summary>A clinician's letter that a reviewer has read, as far as the rules need it.</summary>
/// <param name="IssuedOn">The day it was written; the first day it may count.</param>
/// <param name="ExpiresOn">Its own last day: it still counts on that day.</param>
/// <param name="Withdrawn">Taken back: it never counts.</param>
public sealed record ClearanceLetter(
    LocalDate IssuedOn,
    LocalDate ExpiresOn,
    bool Withdrawn = false
)
{
    /// <summary>What it asks for.</summary>
    public LetterTerms Terms { get; init; } = new();

    /// <summary>It takes the place of what earlier letters asked for.</summary>
    public bool ReplacesEarlier { get; init; }
}
