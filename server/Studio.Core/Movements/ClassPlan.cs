using Studio.Core.Catalogue;

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

    /// <summary>What is wrong with it in itself; a plan must have no fault before it is taught.</summary>
    /// <param name="book">The catalogue.</param>
    /// <param name="classMinutes">The length of the class, where it is to be filled.</param>
    public IEnumerable<string> Faults(RuleBook book, int? classMinutes = null)
    {
        if (Items.Count == 0)
            yield return "It has no movement.";
        foreach (var (item, at) in Items.Select((item, at) => (item, at + 1)))
        {
            if (book.MovementOf(item.Movement) is null)
                yield return $"Number {at}: there is no movement \"{item.Movement}\".";
            if (item.Minutes < 1)
                yield return $"Number {at}: {item.Minutes} minutes is no time for a movement.";
        }
        if (classMinutes is { } length && Minutes != length)
            yield return $"Its movements take {Minutes} minutes, and the class {length}.";
    }
}
