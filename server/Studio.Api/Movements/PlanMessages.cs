using Studio.Api.Booking;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Movements;

namespace Studio.Api.Movements;

/// <summary>A movement of a class plan.</summary>
/// <param name="Position">Its place, from 1.</param>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="Group">Its group.</param>
/// <param name="Cue">How it is taught, in a sentence.</param>
/// <param name="Minutes">How long.</param>
/// <param name="Effort">Usual effort, 0 to 10.</param>
public sealed record PlannedMovementMessage(
    int Position,
    string Code,
    string Name,
    string Group,
    string Cue,
    int Minutes,
    int Effort
);

/// <summary>Why a movement is done differently.</summary>
/// <param name="Text">In the reader's words.</param>
/// <param name="Source">Where it comes from, as far as the reader may know.</param>
public sealed record MovementReasonMessage(string Text, SourceMessage? Source);

/// <summary>What one person does for one movement of the plan.</summary>
public sealed record HerMovementMessage
{
    /// <summary>Its place in the plan, from 1.</summary>
    public required int Position { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>As taught, adapted, replaced or left out.</summary>
    public required MovementVerdict Verdict { get; init; }

    /// <summary>What she does instead, when it is replaced.</summary>
    public string? Option { get; init; }

    /// <summary>What stands on her mat; empty when she does it as taught.</summary>
    public required string Instruction { get; init; }

    /// <summary>Every reason, strictest first.</summary>
    public required IReadOnlyList<MovementReasonMessage> Reasons { get; init; }
}

/// <summary>How much of a class is as taught for her, and what changes.</summary>
public sealed record PlanShareMessage
{
    /// <summary>Minutes of the plan.</summary>
    public required int Minutes { get; init; }

    /// <summary>Minutes as taught.</summary>
    public required int AsTaught { get; init; }

    /// <summary>Minutes with another version of the same movement.</summary>
    public required int Adapted { get; init; }

    /// <summary>Minutes with another movement.</summary>
    public required int Replaced { get; init; }

    /// <summary>Minutes in which she rests.</summary>
    public required int LeftOut { get; init; }

    /// <summary>How many movements are not as taught.</summary>
    public required int Changed { get; init; }
}

/// <summary>Makes messages of plans and of what becomes of them.</summary>
public static class PlanWords
{
    /// <summary>How many minutes come to what.</summary>
    public static PlanShareMessage Share(PlanFit plan) =>
        new()
        {
            Minutes = plan.Minutes,
            AsTaught = plan.MinutesOf(MovementVerdict.AsTaught),
            Adapted = plan.MinutesOf(MovementVerdict.Adapted),
            Replaced = plan.MinutesOf(MovementVerdict.Replaced),
            LeftOut = plan.MinutesOf(MovementVerdict.LeftOut),
            Changed = plan.Items.Count(i => i.Verdict != MovementVerdict.AsTaught),
        };

    /// <summary>The plan itself, as the instructor teaches it.</summary>
    public static IReadOnlyList<PlannedMovementMessage> Taught(ClassPlan plan, RuleBook book) =>
        [
            .. plan.Items.Select(
                (item, at) =>
                {
                    var movement = book.MovementOf(item.Movement);
                    return new PlannedMovementMessage(
                        at + 1,
                        item.Movement,
                        movement?.Name ?? item.Movement,
                        movement?.Group ?? "",
                        movement?.Cue ?? "",
                        item.Minutes,
                        movement?.Effort ?? 0
                    );
                }
            ),
        ];

    /// <summary>What one person does for each movement, in the words for the reader.</summary>
    /// <param name="plan">What becomes of the plan for her.</param>
    /// <param name="audience">For whom.</param>
    /// <param name="shares">Sources that may name a condition may be shown.</param>
    public static IReadOnlyList<HerMovementMessage> Hers(
        PlanFit plan,
        Audience audience,
        bool shares
    ) => [.. plan.Items.Select((item, at) => Hers(item, at + 1, audience, shares))];

    private static HerMovementMessage Hers(
        PlannedMovement item,
        int position,
        Audience audience,
        bool shares
    ) =>
        new()
        {
            Position = position,
            Name = item.Movement?.Name ?? item.Code,
            Verdict = item.Verdict,
            Option = item.Option?.Name,
            Instruction = item.Instruction,
            Reasons =
            [
                .. item
                    .Reasons.Where(r => r.Verdict > MovementVerdict.AsTaught)
                    .Select(r => new MovementReasonMessage(
                        audience == Audience.Instructor ? r.Instruction : r.ForHer,
                        r.Source is { } source && (r.Factor is null || shares)
                            ? FitMessage.Cite(source)
                            : null
                    ))
                    .Where(r => r.Text.Length > 0)
                    .Distinct(),
            ],
        };
}
