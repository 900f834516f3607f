using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Api.Pregnancies;
using Studio.Core.Pregnancies;

namespace Studio.Api.Clients;

/// <summary>A factor or condition to add.</summary>
public sealed record FactorRequest
{
    /// <summary>Code of the catalogue.</summary>
    [Required, StringLength(80)]
    public required string Code { get; init; }

    /// <summary>First day.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Last day; left out while it lasts.</summary>
    public LocalDate? To { get; init; }
}

/// <summary>The last day of a factor.</summary>
public sealed record FactorEnd(LocalDate On);

/// <summary>A birth.</summary>
public sealed record BirthRequest
{
    /// <summary>Date of birth.</summary>
    public required LocalDate On { get; init; }

    /// <summary>How the baby was born.</summary>
    public required BirthMode Mode { get; init; }
}

/// <summary>What a birth on record should have said.</summary>
public sealed record BirthCorrection
{
    /// <summary>Date of birth.</summary>
    public required LocalDate On { get; init; }

    /// <summary>How the baby was born; as it was when left out.</summary>
    public BirthMode? Mode { get; init; }
}

/// <summary>With what she comes back after a loss: a new pregnancy, a birth, or, set by mistake, with everything as it was.</summary>
public sealed record WayBackRequest
{
    /// <summary>What dates the new pregnancy.</summary>
    public EvidenceRequest? Dating { get; init; }

    /// <summary>The day she gave birth, where she comes in the time after it.</summary>
    public LocalDate? BornOn { get; init; }

    /// <summary>How the baby was born.</summary>
    public BirthMode? BirthMode { get; init; }

    /// <summary>How many babies; 1 when left out.</summary>
    [Range(1, 8)]
    public int? Babies { get; init; }

    /// <summary>There was no loss: the pregnancy goes on, and what can be had back of her bookings comes back.</summary>
    public bool? SetByMistake { get; init; }
}

/// <summary>What became of the bookings that had been let go.</summary>
/// <param name="Booked">So many have their seat again.</param>
/// <param name="Waiting">So many are on a waitlist now: somebody else has the seat.</param>
/// <param name="Gone">So many cannot be had back.</param>
public sealed record BroughtBack(int Booked, int Waiting, int Gone)
{
    /// <summary>None had been let go.</summary>
    public static readonly BroughtBack Nothing = new(0, 0, 0);
}

/// <summary>That a pregnancy ended.</summary>
public sealed record LossRequest(LocalDate? On);

/// <summary>What was let go of.</summary>
/// <param name="BookingsReleased">Bookings ahead that were released without charge.</param>
/// <param name="Preterm">The birth was before 37w 0d: a person follows up, and nothing cheerful is said.</param>
public sealed record Released(int BookingsReleased, bool Preterm);
