using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Core;
using Studio.Core.Pregnancies;

namespace Studio.Api.Pregnancies;

/// <summary>An ultrasound: its date and the age it measured.</summary>
public sealed record ScanRequest
{
    /// <summary>Date of the scan.</summary>
    public required LocalDate Date { get; init; }

    /// <summary>Completed weeks measured.</summary>
    public required int Weeks { get; init; }

    /// <summary>Days beyond those weeks, 0 to 6.</summary>
    public required int Days { get; init; }
}

/// <summary>An embryo transfer: its date and the embryo's age.</summary>
public sealed record TransferRequest
{
    /// <summary>Date of the transfer.</summary>
    public required LocalDate Date { get; init; }

    /// <summary>Age of the embryo in days.</summary>
    public required int EmbryoDays { get; init; }
}

/// <summary>What may date a pregnancy; at least one part.</summary>
public record EvidenceRequest
{
    /// <summary>First day of the last period.</summary>
    public LocalDate? LastPeriod { get; init; }

    /// <summary>Length of her cycle in days, 28 when left out.</summary>
    public int? CycleDays { get; init; }

    /// <summary>Ultrasound.</summary>
    public ScanRequest? Scan { get; init; }

    /// <summary>Embryo transfer.</summary>
    public TransferRequest? Transfer { get; init; }

    /// <summary>Due date stated by her clinician.</summary>
    public LocalDate? Stated { get; init; }

    /// <summary>As the core takes it.</summary>
    public Answer<DatingEvidence> ToEvidence()
    {
        IReadOnlyList<Scan> scans = [];
        if (Scan is { } request)
        {
            if (
                !Core
                    .Pregnancies.Scan.Of(request.Date, request.Weeks, request.Days)
                    .TryGet(out var scan, out var refusal)
            )
                return refusal;
            scans = [scan];
        }

        return new DatingEvidence
        {
            LastPeriod = LastPeriod is { } day ? new LastPeriod(day, CycleDays) : null,
            Scans = scans,
            Transfer = Transfer is { } transfer
                ? new EmbryoTransfer(transfer.Date, transfer.EmbryoDays)
                : null,
            Stated = Stated,
        };
    }
}

/// <summary>A question to the dating rules.</summary>
public sealed record DatingRequest : EvidenceRequest
{
    /// <summary>The date for which age and stage are asked.</summary>
    [Required]
    public required LocalDate On { get; init; }
}

/// <summary>Weeks and days.</summary>
public sealed record AgeMessage(int Weeks, int Days);

/// <summary>What the dating rules answer; nothing is stored.</summary>
public sealed record DatingAnswer
{
    /// <summary>Due date.</summary>
    public required LocalDate DueDate { get; init; }

    /// <summary>What it rests on.</summary>
    public required DatingBasis Basis { get; init; }

    /// <summary>How it came about.</summary>
    public required string Explanation { get; init; }

    /// <summary>Gestational age on the date asked for.</summary>
    public required AgeMessage GestationalAge { get; init; }

    /// <summary>Code of the stage on that date.</summary>
    public required string Stage { get; init; }

    /// <summary>Its name.</summary>
    public required string StageName { get; init; }

    /// <summary>Term class on that date, from 20w 0d.</summary>
    public string? Term { get; init; }
}

/// <summary>A due date that was in force, with what was given for it.</summary>
public sealed record DatingRevision
{
    /// <summary>Due date.</summary>
    public required LocalDate DueDate { get; init; }

    /// <summary>What it rests on.</summary>
    public required DatingBasis Basis { get; init; }

    /// <summary>How it came about.</summary>
    public required string Explanation { get; init; }

    /// <summary>Since when.</summary>
    public required Instant EnteredAt { get; init; }

    /// <summary>Who entered it.</summary>
    public string? EnteredBy { get; init; }
}

/// <summary>Something that was given about the date.</summary>
public sealed record EvidenceMessage
{
    /// <summary>lastPeriod, scan, transfer or stated.</summary>
    public required string Kind { get; init; }

    /// <summary>Its date.</summary>
    public required LocalDate Day { get; init; }

    /// <summary>Cycle length, measured age or embryo age in words.</summary>
    public string? Detail { get; init; }

    /// <summary>When it was entered.</summary>
    public required Instant EnteredAt { get; init; }

    /// <summary>Who entered it.</summary>
    public string? EnteredBy { get; init; }
}

/// <summary>All that is known of her dates.</summary>
public sealed record DatingHistory
{
    /// <summary>Due dates, the one in force first.</summary>
    public required IReadOnlyList<DatingRevision> Revisions { get; init; }

    /// <summary>Everything given, newest first.</summary>
    public required IReadOnlyList<EvidenceMessage> Evidence { get; init; }
}

/// <summary>What a new date did.</summary>
/// <param name="DueDate">Due date now in force.</param>
/// <param name="Basis">What it rests on.</param>
/// <param name="Explanation">How it came about.</param>
/// <param name="Changed">The due date is another than before.</param>
/// <param name="BookingsNowUnsuitable">Bookings ahead that suit her no longer.</param>
public sealed record DatingChange(
    LocalDate DueDate,
    DatingBasis Basis,
    string Explanation,
    bool Changed,
    int BookingsNowUnsuitable
);
