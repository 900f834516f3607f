namespace Studio.Core.Movements;

/// <summary>One movement of a plan.</summary>
/// <param name="Movement">The movement's code.</param>
/// <param name="Minutes">How long it is taught, in whole minutes.</param>
public sealed record PlanItem(string Movement, int Minutes);

/// <summary>What a class is made of, in order.</summary>
/// <param name="Items">The movements; the same one may come more than once.</param>
public sealed record ClassPlan(IReadOnlyList<PlanItem> Items)
{
    /// <summary>All minutes together.</summary>
    public int Minutes => Items.Sum(i => i.Minutes);

    /// <summary>The same movements, in the same order, for as long.</summary>
    public bool IsSameAs(ClassPlan? other) => other is not null && Items.SequenceEqual(other.Items);
}
