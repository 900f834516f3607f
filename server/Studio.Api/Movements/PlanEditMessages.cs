using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Movements;

namespace Studio.Api.Movements;

/// <summary>A movement somebody wants in a plan.</summary>
/// <param name="Movement">Its code.</param>
/// <param name="Minutes">How long, 1 to 240 whole minutes.</param>
public sealed record WantedItem(string? Movement, int Minutes);

/// <summary>A plan to be looked at; nothing is kept.</summary>
public sealed record PlanDraft
{
    /// <summary>The movements in order, 1 to 60.</summary>
    [Required]
    public required IReadOnlyList<WantedItem?> Items { get; init; }

    internal static ClassPlan Plan(IReadOnlyList<WantedItem?> items) =>
        new([.. items.Select(i => new PlanItem(i?.Movement ?? "", i?.Minutes ?? 0))]);
}

/// <summary>A plan to be kept.</summary>
public sealed record PlanRequest
{
    /// <summary>The version it was made from; 0 where there was none.</summary>
    [Range(0, int.MaxValue)]
    public required int BasedOn { get; init; }

    /// <summary>The movements in order, 1 to 60.</summary>
    [Required]
    public required IReadOnlyList<WantedItem?> Items { get; init; }
}

/// <summary>A movement in a plan that is kept or proposed.</summary>
/// <param name="Movement">Its code.</param>
/// <param name="Name">Its name; the code where the catalogue does not have it any more.</param>
/// <param name="Minutes">How long.</param>
public sealed record PlanItemMessage(string Movement, string Name, int Minutes)
{
    internal static IReadOnlyList<PlanItemMessage> All(ClassPlan? plan, RuleBook book) =>
        [
            .. (plan?.Items ?? []).Select(i => new PlanItemMessage(
                i.Movement,
                book.MovementOf(i.Movement)?.Name ?? i.Movement,
                i.Minutes
            )),
        ];
}

/// <summary>A version of a plan.</summary>
/// <param name="Version">Its number, from 1.</param>
/// <param name="MadeAt">When.</param>
/// <param name="MadeBy">By whom; null when it came with the studio.</param>
/// <param name="FollowsClass">A session's: from then on it followed its class.</param>
public sealed record PlanVersionMessage(
    int Version,
    Instant MadeAt,
    string? MadeBy,
    bool FollowsClass
)
{
    internal static PlanVersionMessage Of(PlanVersionRow row) =>
        new(row.Version, row.MadeAt, row.MadeBy, row.FollowsClass);
}

/// <summary>A version with what it is made of.</summary>
public sealed record PlanVersionItems(
    PlanVersionMessage Version,
    IReadOnlyList<PlanItemMessage> Items
);

/// <summary>The plan of a class.</summary>
public sealed record ClassPlanMessage
{
    /// <summary>The class.</summary>
    public required long ClassId { get; init; }

    /// <summary>Its name.</summary>
    public required string ClassName { get; init; }

    /// <summary>Its length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>The newest version; 0 while there is none.</summary>
    public required int Version { get; init; }

    /// <summary>Whether the reader may change it.</summary>
    public required bool MayChange { get; init; }

    /// <summary>Why not, where she may not.</summary>
    public string? WhyNot { get; init; }

    /// <summary>Every version, the newest first.</summary>
    public required IReadOnlyList<PlanVersionMessage> Versions { get; init; }

    /// <summary>What the newest is made of.</summary>
    public required IReadOnlyList<PlanItemMessage> Items { get; init; }
}

/// <summary>The plan of one session.</summary>
public sealed record SessionPlanMessage
{
    /// <summary>The session.</summary>
    public required long SessionId { get; init; }

    /// <summary>Its class.</summary>
    public required long ClassId { get; init; }

    /// <summary>The class's name.</summary>
    public required string ClassName { get; init; }

    /// <summary>The session's own date.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Its start by the location's clock.</summary>
    public required string StartsLocal { get; init; }

    /// <summary>Its length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>The newest version of its own plan; 0 while it never had one.</summary>
    public required int Version { get; init; }

    /// <summary>It has no plan of its own and is taught as its class.</summary>
    public required bool FollowsClass { get; init; }

    /// <summary>Whether it can still be changed: until the session is over.</summary>
    public required bool MayChange { get; init; }

    /// <summary>Why not, where it cannot.</summary>
    public string? WhyNot { get; init; }

    /// <summary>Every version of its own plan, the newest first.</summary>
    public required IReadOnlyList<PlanVersionMessage> Versions { get; init; }

    /// <summary>What it is made of.</summary>
    public required IReadOnlyList<PlanItemMessage> Items { get; init; }
}

/// <summary>Somebody who does something else.</summary>
/// <param name="ClientId">Her.</param>
/// <param name="Called">What she likes to be called; her whole name where two are called the same.</param>
/// <param name="Verdict">Adapted, replaced or left out.</param>
/// <param name="Option">What she does instead, when it is replaced.</param>
/// <param name="Instruction">What stands on her mat.</param>
public sealed record DoesElse(
    long ClientId,
    string Called,
    MovementVerdict Verdict,
    string? Option,
    string Instruction
);

/// <summary>What becomes of one movement of a draft.</summary>
public sealed record PreviewedItem
{
    /// <summary>Its place, from 1.</summary>
    public required int Position { get; init; }

    /// <summary>Its code.</summary>
    public required string Movement { get; init; }

    /// <summary>How many do it as taught.</summary>
    public required int AsTaught { get; init; }

    /// <summary>How many do it in another way.</summary>
    public required int Adapted { get; init; }

    /// <summary>How many do something else.</summary>
    public required int Replaced { get; init; }

    /// <summary>How many rest.</summary>
    public required int LeftOut { get; init; }

    /// <summary>All who do not do it as taught.</summary>
    public required IReadOnlyList<DoesElse> People { get; init; }
}

/// <summary>How a draft is for one person.</summary>
/// <param name="ClientId">Her.</param>
/// <param name="Called">What she likes to be called; her whole name where two are called the same.</param>
/// <param name="Share">Her minutes under each verdict.</param>
/// <param name="Before">How the session suits her as it is planned now.</param>
/// <param name="After">How it would.</param>
public sealed record PreviewedPerson(
    long ClientId,
    string Called,
    PlanShareMessage Share,
    Suits Before,
    Suits After
);

/// <summary>A movement that nobody in a stage of the class does.</summary>
/// <param name="Position">Its place, from 1.</param>
/// <param name="Stage">The stage's name.</param>
public sealed record NobodyDoes(int Position, string Stage);

/// <summary>What a draft would come to in one session.</summary>
public sealed record PlanPreview
{
    /// <summary>The session.</summary>
    public required long SessionId { get; init; }

    /// <summary>Each movement.</summary>
    public required IReadOnlyList<PreviewedItem> Items { get; init; }

    /// <summary>Each person with a seat, in the order of their names.</summary>
    public required IReadOnlyList<PreviewedPerson> People { get; init; }

    /// <summary>Movements left out for everybody in a stage that the class admits.</summary>
    public required IReadOnlyList<NobodyDoes> Nobody { get; init; }
}

/// <summary>A movement that gave way to a gentler one.</summary>
public sealed record ProposedChange
{
    /// <summary>Its place, from 1.</summary>
    public required int Position { get; init; }

    /// <summary>The name of the one that stood there.</summary>
    public required string From { get; init; }

    /// <summary>The name of the one in its place.</summary>
    public required string To { get; init; }

    /// <summary>Who does it now, and did something else before.</summary>
    public required IReadOnlyList<string> Gains { get; init; }

    /// <summary>Who did it before, and does something else now.</summary>
    public required IReadOnlyList<string> Loses { get; init; }

    /// <summary>In a sentence.</summary>
    public required string Why { get; init; }
}

/// <summary>A movement that somebody still does not do.</summary>
/// <param name="Position">Its place, from 1.</param>
/// <param name="Name">Its name.</param>
/// <param name="Who">Who rests or does something else.</param>
public sealed record StillElseMessage(int Position, string Name, IReadOnlyList<string> Who);

/// <summary>A plan that suits more of those who are booked.</summary>
public sealed record ProposedPlan
{
    /// <summary>The plan, with the minutes of the draft.</summary>
    public required IReadOnlyList<PlanItemMessage> Items { get; init; }

    /// <summary>What changed; empty when nothing did.</summary>
    public required IReadOnlyList<ProposedChange> Changes { get; init; }

    /// <summary>What somebody still does not do.</summary>
    public required IReadOnlyList<StillElseMessage> Remaining { get; init; }

    /// <summary>Who takes part in nothing that day, whatever is planned.</summary>
    public required IReadOnlyList<string> NotTakingPart { get; init; }
}
