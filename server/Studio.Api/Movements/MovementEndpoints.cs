using Studio.Api.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Movements;

namespace Studio.Api.Movements;

/// <summary>Something a movement asks of a body.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its words for people.</param>
public sealed record TraitMessage(string Code, string Name);

/// <summary>A movement of the catalogue.</summary>
public sealed record MovementMessage
{
    /// <summary>Its code.</summary>
    public required string Code { get; init; }

    /// <summary>Its common name.</summary>
    public required string Name { get; init; }

    /// <summary>Code of its group.</summary>
    public required string Group { get; init; }

    /// <summary>What the group is called.</summary>
    public required string GroupName { get; init; }

    /// <summary>Code of the position it is done in.</summary>
    public required string Position { get; init; }

    /// <summary>What the position is called.</summary>
    public required string PositionName { get; init; }

    /// <summary>What it asks of a body, in the order of their codes.</summary>
    public required IReadOnlyList<TraitMessage> Traits { get; init; }

    /// <summary>Usual effort, 0 to 10.</summary>
    public required int Effort { get; init; }

    /// <summary>What is needed for it, in plain words.</summary>
    public required IReadOnlyList<string> Equipment { get; init; }

    /// <summary>How it is called out, in one sentence.</summary>
    public required string Cue { get; init; }

    /// <summary>Codes of its gentler options, the nearest first.</summary>
    public required IReadOnlyList<string> Options { get; init; }

    internal static MovementMessage Of(Movement movement) =>
        new()
        {
            Code = movement.Code,
            Name = movement.Name,
            Group = movement.Group,
            GroupName = MovementGroups.All.GetValueOrDefault(movement.Group, movement.Group),
            Position = movement.Position,
            PositionName = Positions.All.GetValueOrDefault(movement.Position, movement.Position),
            Traits =
            [
                .. movement
                    .Traits.Order(StringComparer.Ordinal)
                    .Select(t => new TraitMessage(t, MovementTraits.NameOf(t) ?? t)),
            ],
            Effort = movement.Effort,
            Equipment = movement.Equipment,
            Cue = movement.Cue,
            Options = movement.Options,
        };
}

/// <summary>The movements there are.</summary>
public static class MovementEndpoints
{
    /// <summary>Maps the route.</summary>
    public static void MapMovements(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/movements", (RuleBook book) => book.Movements.Select(MovementMessage.Of))
            .WithName("Movements")
            .WithTags("Movements")
            .RequireAuthorization(Policies.Teaching);
}
