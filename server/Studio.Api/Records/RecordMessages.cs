using NodaTime;

namespace Studio.Api.Records;

/// <summary>All that is held about a client, in words for her to read and print.</summary>
public sealed record HeldRecord
{
    /// <summary>Name and version of this form; see <see cref="RecordFile.Format"/>.</summary>
    public required string Format { get; init; }

    /// <summary>When it was made.</summary>
    public required Instant Made { get; init; }

    /// <summary>Her name.</summary>
    public required string Name { get; init; }

    /// <summary>What is held, by subject; a subject of which nothing is held has no entries.</summary>
    public required IReadOnlyList<HeldSection> Sections { get; init; }
}

/// <summary>One subject.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Says">What it is, in a sentence.</param>
/// <param name="Entries">What is held.</param>
public sealed record HeldSection(
    string Code,
    string Title,
    string Says,
    IReadOnlyList<HeldEntry> Entries
);

/// <summary>One thing that is held.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Facts">What stands in it.</param>
/// <param name="LetterId">The letter whose file can be opened; null when there is no file.</param>
public sealed record HeldEntry(string Title, IReadOnlyList<HeldFact> Facts, long? LetterId);

/// <summary>One line.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Text">What is held.</param>
public sealed record HeldFact(string Label, string Text);
