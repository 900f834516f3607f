using Studio.Core.Pregnancies;

namespace Studio.Core.Catalogue;

/// <summary>A number of days since birth: written in the rule, or set by a studio's policy.</summary>
/// <param name="Days">The number, when the rule states it.</param>
/// <param name="Policy">The policy's code, when that decides.</param>
public sealed record DayLimit(int? Days, string? Policy)
{
    /// <summary>The number that counts under these policies.</summary>
    public int In(StudioPolicies policies) => Days ?? policies.DaysOf(Policy!);
}

/// <summary>Under which choice of the studio a rule counts at all.</summary>
/// <param name="Code">The policy's code.</param>
/// <param name="Values">The values under which it counts.</param>
public sealed record PolicyCondition(string Code, IReadOnlySet<string> Values)
{
    /// <summary>Whether it counts under these policies.</summary>
    public bool HoldsIn(StudioPolicies policies) => Values.Contains(policies.ValueOf(Code));
}

/// <summary>When a rule holds: every condition that is given must be met.</summary>
public record RuleWhen
{
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

    /// <summary>The studio's choice it counts under; null when it always does.</summary>
    public PolicyCondition? Policy { get; init; }

    /// <summary>Whether a rule for some modes of birth also holds where the mode is not known.</summary>
    public virtual bool HoldsForUnknownMode => false;

    /// <summary>Whether it can only hold once the baby is born.</summary>
    public bool AfterBirthOnly =>
        BirthModes.Count > 0 || FromBorn is not null || UntilBorn is not null;

    /// <summary>Whether it can only hold until the birth.</summary>
    public bool InPregnancyOnly => FromAge is not null || ToAge is not null;
}
