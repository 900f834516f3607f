using NodaTime;

namespace Studio.Core.Pregnancies;

/// <summary>How a baby was born.</summary>
public enum BirthMode
{
    /// <summary>Vaginal, without instruments.</summary>
    Vaginal,

    /// <summary>Vaginal, with forceps or vacuum.</summary>
    Assisted,

    /// <summary>Caesarean.</summary>
    Caesarean,

    /// <summary>Not said.</summary>
    Unknown,
}

/// <summary>A pregnancy as far as the studio knows it. Dates are ISO calendar dates.</summary>
public sealed record Pregnancy
{
    /// <summary>The due date in force; null when she came after the birth and none was asked for.</summary>
    public LocalDate? DueDate { get; init; }

    /// <summary>How many babies are expected or were born: 2 for twins.</summary>
    public int Babies { get; init; } = 1;

    /// <summary>The day of birth, once reported.</summary>
    public LocalDate? BornOn { get; init; }

    /// <summary>How the birth went, once reported.</summary>
    public BirthMode? BirthMode { get; init; }

    /// <summary>The day from which the pregnancy counts as lost. It goes before every other date.</summary>
    public LocalDate? EndedOn { get; init; }

    /// <summary>
    /// Letters and answers from before this day speak of an earlier pregnancy and do not count; null when there was none.
    /// </summary>
    public LocalDate? PapersFrom { get; init; }

    /// <summary>The birth was reported to the studio, and nobody has noted a call to her since.</summary>
    public bool AwaitsCall { get; init; }
}
