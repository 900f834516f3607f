namespace Studio.Core.Catalogue;

/// <summary>What a class rule asks for, milder first.</summary>
public enum RuleVerdict
{
    /// <summary>Something to know; the class suits as taught.</summary>
    Note,

    /// <summary>The class suits when taught as the rule says.</summary>
    Adapted,

    /// <summary>Only with a letter; with one, taught as the rule says.</summary>
    Letter,

    /// <summary>The class does not suit.</summary>
    NotSuitable,
}

/// <summary>When (stage, age or days since birth, and a factor or mode of birth) a trait of a class needs something.</summary>
public sealed record ClassRule : RuleWhen
{
    /// <summary>A rule that holds when these conditions do.</summary>
    public ClassRule(RuleWhen when)
        : base(when) { }

    /// <summary>The row's id.</summary>
    public required string Id { get; init; }

    /// <summary>The class trait it speaks of; null for any class.</summary>
    public string? Trait { get; init; }

    /// <summary>Classes with this trait are spared.</summary>
    public string? Except { get; init; }

    /// <summary>What it asks for.</summary>
    public required RuleVerdict Verdict { get; init; }

    /// <summary>Words for the client.</summary>
    public required string ForHer { get; init; }

    /// <summary>What the instructor does about it; blank when the class does not suit at all.</summary>
    public required string ForInstructor { get; init; }

    /// <summary>What would change it, for the client; <c>{date}</c> is the first day the rule no longer holds.</summary>
    public string? Lift { get; init; }

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }
}
