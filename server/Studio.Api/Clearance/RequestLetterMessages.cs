using NodaTime;
using Studio.Api.Intensity;
using Studio.Core.Pregnancies;

namespace Studio.Api.Clearance;

/// <summary>A class she may come to, as her clinician needs to know it.</summary>
public sealed record RequestedClass
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>One sentence on what it is.</summary>
    public required string About { get; init; }

    /// <summary>Length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>The highest effort asked for in it, of 10.</summary>
    public required int Effort { get; init; }

    /// <summary>Positions and demands in it, in words.</summary>
    public required IReadOnlyList<string> Asks { get; init; }
}

/// <summary>What a clinician is asked, on one page.</summary>
public sealed record RequestLetter
{
    /// <summary>The studio.</summary>
    public required string StudioName { get; init; }

    /// <summary>Her name.</summary>
    public required string Name { get; init; }

    /// <summary>Today at her location.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Where she stands today.</summary>
    public required Phase Phase { get; init; }

    /// <summary>Due date in force, while pregnant.</summary>
    public LocalDate? DueDate { get; init; }

    /// <summary>"24w 3d" today.</summary>
    public string? Age { get; init; }

    /// <summary>Days since the birth.</summary>
    public int? DaysSinceBirth { get; init; }

    /// <summary>The classes of her stage and of those that follow.</summary>
    public required IReadOnlyList<RequestedClass> Classes { get; init; }

    /// <summary>The most effort, of 10, that the studio asks of anybody pregnant; null after a birth.</summary>
    public int? EffortMost { get; init; }

    /// <summary>What can still be said at moderate effort.</summary>
    public required string TalkTest { get; init; }

    /// <summary>Her heart rate; null where none is known, and for the front desk.</summary>
    public HeartRateMessage? HeartRate { get; init; }

    /// <summary>What her record says that her clinician should speak to; null for the front desk.</summary>
    public IReadOnlyList<string>? Conditions { get; init; }

    /// <summary>What may be left out: positions.</summary>
    public required IReadOnlyList<string> Positions { get; init; }

    /// <summary>What may be left out: what a movement asks of a body.</summary>
    public required IReadOnlyList<string> Demands { get; init; }
}

/// <summary>A position or a trait of movements.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Name">In words.</param>
/// <param name="IsPosition">A position; else something that is asked of a body.</param>
public sealed record TraitChoice(string Code, string Name, bool IsPosition);
