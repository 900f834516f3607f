using NodaTime;
using Studio.Core.Clearance;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Core.Clients;

/// <summary>A factor or condition a client holds for a time.</summary>
/// <param name="Code">Of a factor or condition of the catalogue.</param>
/// <param name="From">The first day it is true.</param>
/// <param name="To">The last day it is true; null while it lasts.</param>
public sealed record HeldFactor(string Code, LocalDate From, LocalDate? To)
{
    /// <summary>Whether it is true on a day.</summary>
    public bool IsHeldOn(LocalDate day) => From <= day && (To is null || day <= To);
}

/// <summary>Everything stands still, after a warning sign.</summary>
/// <param name="From">The day it was set.</param>
/// <param name="LiftedOn">The day a new letter lifted it: no longer held on that day; null while it stands.</param>
public sealed record Hold(LocalDate From, LocalDate? LiftedOn)
{
    /// <summary>Whether it stands on a day.</summary>
    public bool StandsOn(LocalDate day) => From <= day && (LiftedOn is null || day < LiftedOn);
}

/// <summary>What a clearance letter asks for.</summary>
public sealed record Restriction
{
    /// <summary>The first day it holds.</summary>
    public required LocalDate From { get; init; }

    /// <summary>The last day it holds; null until another letter lifts it.</summary>
    public LocalDate? To { get; init; }

    /// <summary>Positions and traits to leave out, by the codes of the movements; one that is not known leaves out everything.</summary>
    public IReadOnlySet<string> LeaveOut { get; init; } =
        new HashSet<string>(StringComparer.Ordinal);

    /// <summary>The most effort, of 10; null for no ceiling.</summary>
    public int? EffortMost { get; init; }

    /// <summary>The highest heart rate, in beats a minute; null for no ceiling.</summary>
    public int? HeartRateMost { get; init; }

    /// <summary>For the instructor, in the reviewer's own words.</summary>
    public string? Words { get; init; }

    /// <summary>Whether it holds on a day.</summary>
    public bool HoldsOn(LocalDate day) => From <= day && (To is null || day <= To);
}

/// <summary>All the rules need to know of a client; the order of its lists has no meaning.</summary>
public sealed record HerSituation
{
    /// <summary>The pregnancy in force; null when none is recorded.</summary>
    public Pregnancy? Pregnancy { get; init; }

    /// <summary>Her own date of birth; null when she has not said.</summary>
    public LocalDate? BirthDate { get; init; }

    /// <summary>Her factors and conditions, past and present.</summary>
    public IReadOnlyList<HeldFactor> Factors { get; init; } = [];

    /// <summary>Her clearance letters, past and present.</summary>
    public IReadOnlyList<ClearanceLetter> Letters { get; init; } = [];

    /// <summary>The latest screening; null when she has answered none.</summary>
    public Screening? Screening { get; init; }

    /// <summary>Her holds, past and present.</summary>
    public IReadOnlyList<Hold> Holds { get; init; } = [];

    /// <summary>What is asked of her besides what her letters say, past and present.</summary>
    public IReadOnlyList<Restriction> Restrictions { get; init; } = [];
}
