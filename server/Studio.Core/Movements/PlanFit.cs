using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;

namespace Studio.Core.Movements;

/// <summary>One reason for what becomes of a movement.</summary>
public sealed record MovementReason
{
    /// <summary>The rule's id; for a reason of the engine's own, one of its codes.</summary>
    public required string Rule { get; init; }

    /// <summary>What this reason alone comes to.</summary>
    public required MovementVerdict Verdict { get; init; }

    /// <summary>For the client: plain and kind.</summary>
    public required string ForHer { get; init; }

    /// <summary>For the mat: what to do, without naming a condition; blank where it is done as taught.</summary>
    public required string Instruction { get; init; }

    /// <summary>The factor's or condition's code, when it comes from one.</summary>
    public string? Factor { get; init; }

    /// <summary>Where it comes from; null for what a letter or her own record says.</summary>
    public Source? Source { get; init; }

    /// <summary>What would change it, for the client.</summary>
    public Lift? Lift { get; init; }

    /// <summary>The most effort it leaves, so that only the lowest of several stands on the mat.</summary>
    internal int? EffortMost { get; init; }

    /// <summary>It speaks of her and of every movement alike; the session's fit has it already.</summary>
    internal bool IsWhole { get; init; }
}

/// <summary>What becomes of one movement of a plan.</summary>
public sealed record PlannedMovement
{
    /// <summary>The movement's code, as planned.</summary>
    public required string Code { get; init; }

    /// <summary>The movement; null when the catalogue does not have it.</summary>
    public required Movement? Movement { get; init; }

    /// <summary>How long it is taught.</summary>
    public required int Minutes { get; init; }

    /// <summary>The strictest of its reasons; as taught when there are none.</summary>
    public required MovementVerdict Verdict { get; init; }

    /// <summary>What she does instead; only when it is replaced.</summary>
    public Movement? Option { get; init; }

    /// <summary>What stands on her mat; blank when it is done as taught.</summary>
    public required string Instruction { get; init; }

    /// <summary>Every reason, strictest first, in an order that depends on nothing but themselves.</summary>
    public required IReadOnlyList<MovementReason> Reasons { get; init; }

    /// <summary>The option's own reasons, in the same order.</summary>
    public IReadOnlyList<MovementReason> OptionReasons { get; init; } = [];

    /// <summary>Left out by a rule or a letter, and not only because she does not take part at all.</summary>
    internal bool LeftOutByItself { get; init; }
}

/// <summary>What becomes of each movement of a plan for one client on one date, provided that she takes part.</summary>
public sealed record PlanFit
{
    /// <summary>The plan's movements in order.</summary>
    public required IReadOnlyList<PlannedMovement> Items { get; init; }

    /// <summary>Where she is on that date.</summary>
    public required Situation Situation { get; init; }

    /// <summary>All minutes of the plan.</summary>
    public int Minutes => Items.Sum(i => i.Minutes);

    /// <summary>The minutes under a verdict.</summary>
    public int MinutesOf(MovementVerdict verdict) =>
        Items.Where(i => i.Verdict == verdict).Sum(i => i.Minutes);

    /// <summary>The share of the minutes under a verdict, 0 to 1; 0 for a plan without minutes.</summary>
    public double ShareOf(MovementVerdict verdict) =>
        Minutes == 0 ? 0 : (double)MinutesOf(verdict) / Minutes;
}
