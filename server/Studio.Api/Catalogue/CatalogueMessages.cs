using NodaTime;
using Studio.Api.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Movements;

namespace Studio.Api.Catalogue;

/// <summary>A rule of any kind, in words.</summary>
public sealed record RuleMessage
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>What it is about.</summary>
    public required RuleAbout About { get; init; }

    /// <summary>What it speaks of, in words.</summary>
    public required string Speaks { get; init; }

    /// <summary>Codes of the positions and traits it speaks of.</summary>
    public required IReadOnlyList<string> Traits { get; init; }

    /// <summary>What it comes to.</summary>
    public required RuleOutcome Outcome { get; init; }

    /// <summary>When it holds; empty for always.</summary>
    public required IReadOnlyList<string> When { get; init; }

    /// <summary>Codes of the stages in which it can hold.</summary>
    public required IReadOnlyList<string> Stages { get; init; }

    /// <summary>Code of the factor or condition it asks for.</summary>
    public required string? Factor { get; init; }

    /// <summary>Code of the policy it hangs on.</summary>
    public required string? Policy { get; init; }

    /// <summary>Whether it counts under the studio's present choices.</summary>
    public required bool Counts { get; init; }

    /// <summary>Words for the client.</summary>
    public required string ForHer { get; init; }

    /// <summary>What the instructor does.</summary>
    public required string ForInstructor { get; init; }

    /// <summary>What lifts it.</summary>
    public required string? Lift { get; init; }

    /// <summary>Where it comes from.</summary>
    public required SourceMessage Source { get; init; }

    /// <summary>A rule's card on the wire.</summary>
    public static RuleMessage Of(RuleCard card) =>
        new()
        {
            Id = card.Id,
            About = card.About,
            Speaks = card.Speaks,
            Traits = card.Traits,
            Outcome = card.Outcome,
            When = card.When,
            Stages = card.Stages,
            Factor = card.Factor,
            Policy = card.Policy,
            Counts = card.Counts,
            ForHer = card.ForHer,
            ForInstructor = card.ForInstructor,
            Lift = card.Lift,
            Source = FitMessage.Cite(card.Source),
        };
}

/// <summary>A source with the rules that rest on it.</summary>
public sealed record SourceInUse(
    string Id,
    string Cite,
    Verification Verification,
    IReadOnlyList<string> Rules
);

/// <summary>A published row: covered by which rules, or why not.</summary>
/// <param name="File">The file of published facts.</param>
/// <param name="Row">The row in it.</param>
/// <param name="Rules">The rules that restate it.</param>
/// <param name="Gone">Of those, the ones the catalogue no longer has.</param>
/// <param name="WhyNot">Why no rule does; blank where one does.</param>
public sealed record CoverageMessage(
    string File,
    string Row,
    IReadOnlyList<string> Rules,
    IReadOnlyList<string> Gone,
    string WhyNot
);

/// <summary>A code with its name.</summary>
public sealed record Named(string Code, string Name);

/// <summary>A movement as the catalogue has it.</summary>
public sealed record CatalogueMovement
{
    /// <summary>Its code.</summary>
    public required string Code { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Name of its group.</summary>
    public required string Group { get; init; }

    /// <summary>Its position.</summary>
    public required Named Position { get; init; }

    /// <summary>Its traits.</summary>
    public required IReadOnlyList<Named> Traits { get; init; }

    /// <summary>Usual effort, 0 to 10.</summary>
    public required int Effort { get; init; }

    /// <summary>What is needed for it.</summary>
    public required IReadOnlyList<string> Equipment { get; init; }

    /// <summary>How it is called out.</summary>
    public required string Cue { get; init; }

    /// <summary>Its gentler options, the nearest first.</summary>
    public required IReadOnlyList<Named> Options { get; init; }

    /// <summary>Ids of the rules that may speak of it, under the studio's present choices.</summary>
    public required IReadOnlyList<string> Rules { get; init; }
}

/// <summary>The movements, and every rule that may speak of one.</summary>
/// <param name="Restrictions">Every position and trait a letter can ask to leave out.</param>
/// <param name="Movements">The movements in the order of a class.</param>
/// <param name="Rules">The movement rules.</param>
public sealed record CatalogueMovements(
    IReadOnlyList<Named> Restrictions,
    IReadOnlyList<CatalogueMovement> Movements,
    IReadOnlyList<RuleMessage> Rules
)
{
    /// <summary>Made from the rules and policies in force.</summary>
    public static CatalogueMovements Of(RuleBook book, StudioPolicies policies)
    {
        var cards = RuleCards.OfMovements(book, policies).ToList();
        return new(
            [.. Positions.All.Concat(MovementTraits.All).Select(p => new Named(p.Key, p.Value))],
            [.. book.Movements.Select(m => Of(m, book, policies))],
            [.. cards.Select(RuleMessage.Of)]
        );
    }

    private static CatalogueMovement Of(
        Movement movement,
        RuleBook book,
        StudioPolicies policies
    ) =>
        new()
        {
            Code = movement.Code,
            Name = movement.Name,
            Group = MovementGroups.All[movement.Group],
            Position = new(movement.Position, Positions.All[movement.Position]),
            Traits =
            [
                .. MovementTraits
                    .All.Where(t => movement.Traits.Contains(t.Key))
                    .Select(t => new Named(t.Key, t.Value)),
            ],
            Effort = movement.Effort,
            Equipment = movement.Equipment,
            Cue = movement.Cue,
            Options =
            [
                .. movement.Options.Select(o => new Named(o, book.MovementOf(o)?.Name ?? o)),
            ],
            Rules =
            [
                .. book
                    .MovementRules.Where(r =>
                        r.Target.Names(movement)
                        && r.Target.ReachesEffort(movement, policies)
                        && (r.Policy?.HoldsIn(policies) ?? true)
                    )
                    .Select(r => r.Id),
            ],
        };
}

/// <summary>A version of the catalogue that was put in force here.</summary>
/// <param name="Number">Its number; 0 for the program's own as it came.</param>
/// <param name="MadeAt">When; null for the program's own as it came.</param>
/// <param name="MadeBy">Who; null when it was done at a start.</param>
/// <param name="Why">Why, in her words.</param>
/// <param name="Own">It is the program's own catalogue.</param>
/// <param name="BackTo">The version it went back to.</param>
/// <param name="InForce">It is in force.</param>
public sealed record VersionMessage(
    int Number,
    Instant? MadeAt,
    string? MadeBy,
    string Why,
    bool Own,
    int? BackTo,
    bool InForce
);

/// <summary>The versions, and how far the one in force is from the program's own.</summary>
/// <param name="InForce">Number of the version in force; 0 for the program's own as it came.</param>
/// <param name="Files">The files of a catalogue.</param>
/// <param name="RowsNotAsOwn">Rows in which the version in force differs from the program's own.</param>
/// <param name="Versions">The newest first; the program's own, as it came, last.</param>
public sealed record VersionsMessage(
    int InForce,
    IReadOnlyList<string> Files,
    int RowsNotAsOwn,
    IReadOnlyList<VersionMessage> Versions
);
