using NodaTime;

namespace Studio.Core.Screenings;

/// <summary>What came of the screening questions, milder first.</summary>
public enum ScreeningOutcome
{
    /// <summary>Nothing that needs a clinician's word.</summary>
    NothingFound,

    /// <summary>A clearance letter is needed.</summary>
    ClearanceNeeded,

    /// <summary>No exercise here for now.</summary>
    NoExercise,
}

/// <summary>One answered screening.</summary>
/// <param name="AnsweredOn">The day she answered.</param>
/// <param name="Outcome">What came of it.</param>
public sealed record Screening(LocalDate AnsweredOn, ScreeningOutcome Outcome);
