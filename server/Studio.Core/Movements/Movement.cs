namespace Studio.Core.Movements;

/// <summary>A movement as it is taught, and what it asks of a body.</summary>
public sealed record Movement
{
    /// <summary>Stable, kebab-case.</summary>
    public required string Code { get; init; }

    /// <summary>Its common name.</summary>
    public required string Name { get; init; }

    /// <summary>One of <see cref="MovementGroups"/>.</summary>
    public required string Group { get; init; }

    /// <summary>One of <see cref="Positions"/>.</summary>
    public required string Position { get; init; }

    /// <summary>What it asks of a body; of <see cref="MovementTraits"/>.</summary>
    public IReadOnlySet<string> Traits { get; init; } = new HashSet<string>(StringComparer.Ordinal);

    /// <summary>Usual effort, 0 to 10.</summary>
    public required int Effort { get; init; }

    /// <summary>What is needed for it, in plain words.</summary>
    public IReadOnlyList<string> Equipment { get; init; } = [];

    /// <summary>How it is called out, in one sentence.</summary>
    public required string Cue { get; init; }

    /// <summary>Codes of its gentler options, the nearest first; never more effort, never in a circle.</summary>
    public IReadOnlyList<string> Options { get; init; } = [];

    /// <summary>Whether it is done in a position or has a trait.</summary>
    public bool Has(string positionOrTrait) =>
        Position == positionOrTrait || Traits.Contains(positionOrTrait);
}
