namespace Studio.Core.Catalogue;

/// <summary>What a rule is about.</summary>
public enum RuleAbout
{
    /// <summary>Movements of a plan.</summary>
    Movements,

    /// <summary>Classes with a trait.</summary>
    ClassTrait,

    /// <summary>Every class.</summary>
    WholeClass,

    /// <summary>A listed condition, whatever the class.</summary>
    Condition,
}

/// <summary>What a rule comes to, whatever it is about; milder first.</summary>
public enum RuleOutcome
{
    /// <summary>Something to know.</summary>
    Note,

    /// <summary>As everybody does it.</summary>
    AsTaught,

    /// <summary>Done differently.</summary>
    Adapted,

    /// <summary>A gentler movement instead.</summary>
    Replaced,

    /// <summary>She rests.</summary>
    LeftOut,

    /// <summary>Only with a letter.</summary>
    Letter,

    /// <summary>The class does not suit.</summary>
    NotSuitable,
}

/// <summary>A rule of any kind in one shape, in words a person can read.</summary>
public sealed record RuleCard
{
    /// <summary>Its id; for a condition its reference and the list that speaks, such as <c>C04 canada</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What it is about.</summary>
    public required RuleAbout About { get; init; }

    /// <summary>What it speaks of, in words.</summary>
    public required string Speaks { get; init; }

    /// <summary>Codes of the positions and traits it speaks of.</summary>
    public IReadOnlyList<string> Traits { get; init; } = [];

    /// <summary>What it comes to.</summary>
    public required RuleOutcome Outcome { get; init; }

    /// <summary>When it holds: every one of these must be so; empty for always.</summary>
    public required IReadOnlyList<string> When { get; init; }

    /// <summary>Codes of the stages in which it can hold.</summary>
    public required IReadOnlyList<string> Stages { get; init; }

    /// <summary>The factor or condition it asks for.</summary>
    public string? Factor { get; init; }

    /// <summary>The policy it hangs on.</summary>
    public string? Policy { get; init; }

    /// <summary>Whether it counts under the studio's present choices.</summary>
    public required bool Counts { get; init; }

    /// <summary>Words for the client.</summary>
    public required string ForHer { get; init; }

    /// <summary>What the instructor does.</summary>
    public required string ForInstructor { get; init; }

    /// <summary>What would lift it.</summary>
    public string? Lift { get; init; }

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }
}
