using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;

namespace Studio.Core.Booking;

/// <summary>How a class suits a client on a date, in order of strictness.</summary>
public enum Suits
{
    /// <summary>As taught.</summary>
    Suitable,

    /// <summary>With what her reasons say done differently.</summary>
    WithModifications,

    /// <summary>Not before a letter or a screening is there.</summary>
    NeedsClearance,

    /// <summary>Not on that date.</summary>
    NotSuitable,
}

/// <summary>What would change a reason.</summary>
/// <param name="Text">In a sentence.</param>
/// <param name="On">The date it hangs on, where there is one: the day a letter must count on, or the first day the reason is gone.</param>
public sealed record Lift(string Text, LocalDate? On = null);

/// <summary>A class as the rules see it.</summary>
public sealed record ClassProfile
{
    /// <summary>The class's code.</summary>
    public required string Code { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Codes of the stages it is for.</summary>
    public required IReadOnlySet<string> Stages { get; init; }

    /// <summary>What it asks of a body; see <see cref="ClassTraits"/>.</summary>
    public required IReadOnlySet<string> Traits { get; init; }

    /// <summary>What the catalogue cannot understand about it; a class must have none before it is offered.</summary>
    public IEnumerable<string> Faults(RuleBook book)
    {
        if (Stages.Count == 0)
            yield return "It is for no stage.";
        foreach (
            var stage in Stages
                .Where(s => book.Stages.Stages.All(known => known.Code != s))
                .Order(StringComparer.Ordinal)
        )
            yield return $"There is no stage \"{stage}\".";
        foreach (
            var trait in Traits
                .Where(t => !ClassTraits.All.Contains(t))
                .Order(StringComparer.Ordinal)
        )
            yield return $"There is no trait \"{trait}\".";
    }
}

/// <summary>One reason in a verdict, worded for each reader.</summary>
public sealed record Reason
{
    /// <summary>Stable, for programs; one of <see cref="ReasonCodes"/>. Not for the front desk as it stands: see <see cref="Fit.ForDesk"/>.</summary>
    public required string Code { get; init; }

    /// <summary>What this reason alone comes to.</summary>
    public required Suits Verdict { get; init; }

    /// <summary>For the client: plain and kind.</summary>
    public required string ForHer { get; init; }

    /// <summary>For the front desk: never a condition, a factor or an answer.</summary>
    public required string ForDesk { get; init; }

    /// <summary>For the instructor: what to do, without naming a condition; null when there is nothing to do.</summary>
    public string? ForInstructor { get; init; }

    /// <summary>The factor's or condition's code, when it comes from one.</summary>
    public string? Factor { get; init; }

    /// <summary>The class rule's id or the condition's reference, when it comes from the catalogue.</summary>
    public string? Rule { get; init; }

    /// <summary>Where it comes from; it may name a condition, so it is not for the front desk.</summary>
    public Source? Source { get; init; }

    /// <summary>What would change it, for the client.</summary>
    public Lift? Lift { get; init; }

    /// <summary>What would change it, for the front desk.</summary>
    public Lift? DeskLift { get; init; }
}

/// <summary>A reason as the front desk may see it.</summary>
/// <param name="Code">Administrative codes as they are; everything else by its verdict.</param>
/// <param name="Verdict">What it comes to.</param>
/// <param name="Text">The administrative words.</param>
/// <param name="Lift">What would change it, as far as the desk may know.</param>
public sealed record DeskReason(string Code, Suits Verdict, string Text, Lift? Lift);

/// <summary>How a class suits a client on a date.</summary>
/// <param name="Verdict">The strictest of the reasons; suitable when there are none.</param>
/// <param name="Reasons">Every reason, strictest first, in an order that depends on nothing but themselves.</param>
/// <param name="Situation">Where she is on that date.</param>
public sealed record Fit(Suits Verdict, IReadOnlyList<Reason> Reasons, Situation Situation)
{
    /// <summary>What becomes of each movement; null when the class has no plan.</summary>
    public PlanFit? Plan { get; init; }

    /// <summary>The reasons the front desk may see, each once; without factors, sources or telling codes.</summary>
    public IReadOnlyList<DeskReason> ForDesk() =>
        [
            .. Reasons
                .Select(r => new DeskReason(
                    ReasonCodes.ForDesk(r),
                    r.Verdict,
                    r.ForDesk,
                    r.DeskLift
                ))
                .Distinct(),
        ];
}
