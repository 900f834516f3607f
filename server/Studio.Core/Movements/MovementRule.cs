using Studio.Core.Catalogue;

namespace Studio.Core.Movements;

/// <summary>How a movement is for a client on a date, in order of strictness.</summary>
public enum MovementVerdict
{
    /// <summary>As everybody does it.</summary>
    AsTaught,

    /// <summary>The same movement, done as the instruction says.</summary>
    Adapted,

    /// <summary>A gentler option takes its place.</summary>
    Replaced,

    /// <summary>Neither it nor an option; she rests or breathes.</summary>
    LeftOut,
}

/// <summary>A limit of effort: written in the rule, or set by a studio's policy.</summary>
/// <param name="Effort">The effort of 10, when the rule states it.</param>
/// <param name="Policy">The policy's code, when that decides.</param>
public sealed record EffortLimit(int? Effort, string? Policy)
{
    /// <summary>The effort that counts under these policies.</summary>
    public int In(StudioPolicies policies) => Effort ?? policies.EffortOf(Policy!);
}

/// <summary>The movements a rule speaks of: those that are everything given here.</summary>
public sealed record MovementTarget
{
    /// <summary>Done in this position.</summary>
    public string? Position { get; init; }

    /// <summary>With this trait.</summary>
    public string? Trait { get; init; }

    /// <summary>Of this group.</summary>
    public string? Group { get; init; }

    /// <summary>One of these; empty for any.</summary>
    public IReadOnlySet<string> Movements { get; init; } =
        new HashSet<string>(StringComparer.Ordinal);

    /// <summary>Of more effort than this.</summary>
    public EffortLimit? EffortOver { get; init; }

    /// <summary>Spared: positions, traits or movements.</summary>
    public IReadOnlySet<string> Except { get; init; } = new HashSet<string>(StringComparer.Ordinal);

    /// <summary>Whether it speaks of a movement, whatever its effort.</summary>
    public bool Names(Movement movement) =>
        (Position is null || Position == movement.Position)
        && (Trait is null || movement.Traits.Contains(Trait))
        && (Group is null || Group == movement.Group)
        && (Movements.Count == 0 || Movements.Contains(movement.Code))
        && !Except.Contains(movement.Code)
        && !Except.Any(movement.Has);

    /// <summary>Whether a movement's effort is such that it speaks of it.</summary>
    public bool ReachesEffort(Movement movement, StudioPolicies policies) =>
        EffortOver is not { } limit || movement.Effort > limit.In(policies);
}

/// <summary>When something about her or her stage changes what becomes of some movements.</summary>
public sealed record MovementRule : RuleWhen
{
    /// <summary>A rule that holds when these conditions do.</summary>
    public MovementRule(RuleWhen when)
        : base(when) { }

    /// <summary>The row's id.</summary>
    public required string Id { get; init; }

    /// <summary>The movements it speaks of.</summary>
    public required MovementTarget Target { get; init; }

    /// <summary>What becomes of them.</summary>
    public required MovementVerdict Verdict { get; init; }

    /// <summary>Words for the client; <c>{limit}</c> stands for the effort limit.</summary>
    public required string ForHer { get; init; }

    /// <summary>What stands on the mat; blank only where it is done as taught. <c>{limit}</c> as in <see cref="ForHer"/>.</summary>
    public required string Instruction { get; init; }

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }

    /// <summary>A mode of birth that is not known counts as every one of them: nothing is cleared by silence.</summary>
    public override bool HoldsForUnknownMode => true;
}
