using Studio.Core.Movements;

namespace Studio.Core.Booking;

/// <summary>A movement of a plan that becomes something else for her.</summary>
/// <param name="Name">The movement.</param>
/// <param name="From">Its verdict as things stood.</param>
/// <param name="To">Its verdict as things would stand.</param>
/// <param name="Before">What stood on her mat; blank for as taught.</param>
/// <param name="After">What would stand there.</param>
public sealed record MovementChange(
    string Name,
    MovementVerdict From,
    MovementVerdict To,
    string Before,
    string After
);

/// <summary>A session that would suit a client otherwise than it does.</summary>
/// <param name="From">How it suits her as things stand.</param>
/// <param name="To">How it would.</param>
/// <param name="Because">The strictest reason that is new, or of those that go when none is; for the owner.</param>
/// <param name="Movements">The movements that become something else.</param>
public sealed record FitChange(
    Suits From,
    Suits To,
    string? Because,
    IReadOnlyList<MovementChange> Movements
)
{
    /// <summary>The verdict of the session itself is another.</summary>
    public bool OfVerdict => From != To;
}

/// <summary>What other rules or policies make of the same question.</summary>
public static class FitChanges
{
    /// <summary>What differs between two answers to one question; null when nothing does that anybody would notice.</summary>
    /// <param name="before">The fit under the rules in force.</param>
    /// <param name="after">The fit of the same client, class, plan and date under others.</param>
    public static FitChange? Between(Fit before, Fit after)
    {
        List<MovementChange> movements =
            before.Plan is { } was && after.Plan is { } @is
                ?
                [
                    .. was
                        .Items.Zip(@is.Items)
                        .Where(pair => Differ(pair.First, pair.Second))
                        .Select(pair => new MovementChange(
                            pair.Second.Movement?.Name
                                ?? pair.First.Movement?.Name
                                ?? pair.First.Code,
                            pair.First.Verdict,
                            pair.Second.Verdict,
                            pair.First.Instruction,
                            pair.Second.Instruction
                        ))
                        .Distinct(),
                ]
                : [];
        if (before.Verdict == after.Verdict && movements.Count == 0)
            return null;
        return new(before.Verdict, after.Verdict, Because(before, after), movements);
    }

    private static bool Differ(PlannedMovement before, PlannedMovement after) =>
        before.Verdict != after.Verdict || before.Instruction != after.Instruction;

    // Reasons are in order of strictness, so the first that is in one list alone says it.
    private static string? Because(Fit before, Fit after) =>
        (OnlyIn(after, before) ?? OnlyIn(before, after))?.ForHer;

    private static Reason? OnlyIn(Fit one, Fit other) =>
        one.Reasons.FirstOrDefault(r =>
            !other.Reasons.Any(o =>
                (o.Code, o.Rule, o.Verdict, o.ForHer) == (r.Code, r.Rule, r.Verdict, r.ForHer)
            )
        );
}
