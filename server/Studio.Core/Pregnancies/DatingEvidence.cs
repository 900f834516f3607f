using NodaTime;

namespace Studio.Core.Pregnancies;

/// <summary>The last period, as she remembers it.</summary>
/// <param name="FirstDay">Its first day.</param>
/// <param name="CycleDays">Her usual cycle in days, 20 to 45, when the date shall be adjusted for it; 28 changes nothing.</param>
public sealed record LastPeriod(LocalDate FirstDay, int? CycleDays = null);

/// <summary>An ultrasound scan that measured the pregnancy's age.</summary>
/// <param name="On">The day of the scan.</param>
/// <param name="Measured">The age it measured on that day, 4w 0d to 42w 0d.</param>
public sealed record Scan(LocalDate On, GestationalAge Measured)
{
    /// <summary>A scan whose age was entered as weeks and days; refused when the days are not 0 to 6.</summary>
    public static Answer<Scan> Of(LocalDate on, int weeks, int days) =>
        days is < 0 or > 6
            ? DatingRefusals.ScanDays(days)
            : new Scan(on, GestationalAge.Of(weeks, days));
}

/// <summary>The transfer of an embryo.</summary>
/// <param name="On">The day of the transfer.</param>
/// <param name="EmbryoDays">The embryo's age on that day, in days since fertilisation, 1 to 7.</param>
public sealed record EmbryoTransfer(LocalDate On, int EmbryoDays);

/// <summary>All that is known about when a pregnancy began. Dates are ISO calendar dates; what is not known is left out.</summary>
public sealed record DatingEvidence
{
    /// <summary>The last period.</summary>
    public LastPeriod? LastPeriod { get; init; }

    /// <summary>Scans, in any order.</summary>
    public IReadOnlyList<Scan> Scans { get; init; } = [];

    /// <summary>The embryo transfer, of a pregnancy that began with one.</summary>
    public EmbryoTransfer? Transfer { get; init; }

    /// <summary>The due date a clinician stated.</summary>
    public LocalDate? Stated { get; init; }
}

/// <summary>What a due date rests on.</summary>
public enum DatingBasis
{
    /// <summary>The first day of the last period.</summary>
    LastPeriod,

    /// <summary>The first scan.</summary>
    Scan,

    /// <summary>The embryo transfer.</summary>
    Transfer,

    /// <summary>A clinician's word.</summary>
    Stated,
}

/// <summary>The due date in force.</summary>
/// <param name="On">The due date, 40w 0d.</param>
/// <param name="Basis">What it rests on.</param>
/// <param name="Explanation">Why this date and no other, in plain sentences.</param>
public sealed record DueDate(LocalDate On, DatingBasis Basis, string Explanation);
