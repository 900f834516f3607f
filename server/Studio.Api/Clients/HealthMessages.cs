using System.ComponentModel.DataAnnotations;
using NodaTime;
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

/// <summary>That a pregnancy ended.</summary>
public sealed record LossRequest(LocalDate? On);

/// <summary>What was let go of.</summary>
/// <param name="BookingsReleased">Bookings ahead that were released without charge.</param>
/// <param name="Preterm">The birth was before 37w 0d: a person follows up, and nothing cheerful is said.</param>
public sealed record Released(int BookingsReleased, bool Preterm);
