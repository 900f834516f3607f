using Studio.Core.Pregnancies;

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

/// <summary>A number of days since birth: written in the rule, or set by a studio's policy.</summary>
/// <param name="Days">The number, when the rule states it.</param>
/// <param name="Policy">The policy's code, when that decides.</param>
public sealed record DayLimit(int? Days, string? Policy)
{
    /// <summary>The number that counts under these policies.</summary>
    public int In(StudioPolicies policies) => Days ?? policies.DaysOf(Policy!);
}

/// <summary>When (stage, age or days since birth, and a factor or mode of birth) a trait of a class needs something.</summary>
public sealed record ClassRule
{
    /// <summary>The row's id.</summary>
    public required string Id { get; init; }

    /// <summary>Stages it holds in; empty for every one.</summary>
    public IReadOnlySet<string> Stages { get; init; } = new HashSet<string>(StringComparer.Ordinal);

    /// <summary>A factor or condition she must hold; null when none is needed.</summary>
    public string? Factor { get; init; }

    /// <summary>Modes of birth it holds for; empty when the mode does not matter.</summary>
    public IReadOnlySet<BirthMode> BirthModes { get; init; } = new HashSet<BirthMode>();

    /// <summary>First gestational age it holds at.</summary>
    public GestationalAge? FromAge { get; init; }

    /// <summary>Last gestational age it holds at.</summary>
    public GestationalAge? ToAge { get; init; }

    /// <summary>First day after birth it holds on; the birth itself is day 0.</summary>
    public int? FromBorn { get; init; }

    /// <summary>First day after birth it no longer holds on.</summary>
    public DayLimit? UntilBorn { get; init; }

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

    /// <summary>Whether it can only hold once the baby is born.</summary>
    public bool AfterBirthOnly =>
        BirthModes.Count > 0 || FromBorn is not null || UntilBorn is not null;

    /// <summary>Whether it can only hold until the birth.</summary>
    public bool InPregnancyOnly => FromAge is not null || ToAge is not null;
}
