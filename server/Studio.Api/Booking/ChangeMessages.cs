using Studio.Core.Booking;
using Studio.Core.Movements;

namespace Studio.Api.Booking;

/// <summary>A movement that she does differently.</summary>
public sealed record ChangedMovementMessage
{
    /// <summary>Its place in the plan, from 1.</summary>
    public required int Position { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>How long it is taught.</summary>
    public required int Minutes { get; init; }

    /// <summary>Adapted, replaced or left out.</summary>
    public required MovementVerdict Verdict { get; init; }

    /// <summary>What she does instead, when it is replaced.</summary>
    public string? Option { get; init; }

    /// <summary>How she does it, or what takes its place; empty where there is nothing to add.</summary>
    public required string How { get; init; }
}

/// <summary>Why, in the words for her.</summary>
/// <param name="Text">In a sentence.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Lift">What would change it.</param>
public sealed record ChangeReasonMessage(string Text, SourceMessage? Source, LiftMessage? Lift);

/// <summary>Movements that change for the same reasons.</summary>
public sealed record ChangeMessage
{
    /// <summary>The reasons, strictest first.</summary>
    public required IReadOnlyList<ChangeReasonMessage> Reasons { get; init; }

    /// <summary>The movements, in the order of the plan.</summary>
    public required IReadOnlyList<ChangedMovementMessage> Movements { get; init; }

    /// <summary>What changes for her; nothing where the class does not suit at all or has no plan.</summary>
    public static IReadOnlyList<ChangeMessage> For(Fit fit) =>
        fit is { Plan: { } plan, Verdict: < Suits.NeedsClearance }
            ? [.. HerChanges.Of(plan).Select(Of)]
            : [];

    private static ChangeMessage Of(HerChange change) =>
        new()
        {
            Reasons =
            [
                .. change.Reasons.Select(r => new ChangeReasonMessage(
                    r.ForHer,
                    r.Source is { } source ? FitMessage.Cite(source) : null,
                    r.Lift is { } lift ? new LiftMessage(lift.Text, lift.On) : null
                )),
            ],
            Movements =
            [
                .. change.Movements.Select(m => new ChangedMovementMessage
                {
                    Position = m.Position,
                    Name = m.Movement.Movement?.Name ?? "A movement we do not know",
                    Minutes = m.Movement.Minutes,
                    Verdict = m.Movement.Verdict,
                    Option = m.Movement.Option?.Name,
                    How = m.How,
                }),
            ],
        };
}

/// <summary>One session laid before a client, with what changes for her in it.</summary>
public sealed record ChoiceInFull
{
    /// <summary>The session, how it suits her, and what can be done.</summary>
    public required Choice Choice { get; init; }

    /// <summary>What changes, movement by movement; for herself and the owner, empty for the front desk.</summary>
    public required IReadOnlyList<ChangeMessage> Changes { get; init; }
}
