using NodaTime;

namespace Studio.Core.Pregnancies;

/// <summary>Where in the course of things a date falls.</summary>
public enum Phase
{
    /// <summary>Earlier than 0w 0d.</summary>
    BeforeDates,

    /// <summary>From 0w 0d, with no birth up to that date.</summary>
    Pregnant,

    /// <summary>The day of birth or later.</summary>
    Born,

    /// <summary>The pregnancy was lost on that date or before.</summary>
    Ended,

    /// <summary>No pregnancy is recorded, or no date that says where she is in it.</summary>
    Unknown,
}

/// <summary>Where a client is on one date.</summary>
public sealed record Situation
{
    /// <summary>The date.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Where in the course of things it falls; the rest is filled as far as the phase has it.</summary>
    public required Phase Phase { get; init; }

    /// <summary>Gestational age; only while pregnant.</summary>
    public GestationalAge? Age { get; init; }

    /// <summary>Completed days since the birth, 0 on the day itself; only from then on.</summary>
    public int? DaysSinceBirth { get; init; }

    /// <summary>The one stage the date belongs to; while pregnant and after the birth.</summary>
    public Stage? Stage { get; init; }

    /// <summary>From 37w 0d while neither a birth nor a loss is recorded: she may have given birth by that date.</summary>
    public bool MayHaveGivenBirth { get; init; }

    /// <summary>From 42w 0d, while pregnant: nothing prenatal can be booked.</summary>
    public bool PastPostterm { get; init; }

    /// <summary>The term a birth on that date would have, from 20w 0d while pregnant; see <see cref="TermOf"/>.</summary>
    public string? Term { get; init; }

    /// <summary>
    /// <c>preterm</c> from 20w 0d (the lower bound is the usual US reporting limit, from memory), <c>early term</c>
    /// from 37w 0d, <c>full term</c> from 39w 0d, <c>late term</c> from 41w 0d, <c>postterm</c> from 42w 0d;
    /// null before. Source: ACOG/SMFM, Committee Opinion 579 (2013), box 1.
    /// </summary>
    public static string? TermOf(GestationalAge age) =>
        age.Days switch
        {
            >= GestationalAge.AtPostterm => "postterm",
            >= 41 * 7 => "late term",
            >= 39 * 7 => "full term",
            >= GestationalAge.AtEarlyTerm => "early term",
            >= 20 * 7 => "preterm",
            _ => null,
        };
}
