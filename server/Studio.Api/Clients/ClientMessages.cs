using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Intensity;
using Studio.Api.Pregnancies;
using Studio.Core.Booking;
using Studio.Core.Clearance;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Api.Clients;

/// <summary>A client's contact details as typed.</summary>
public record ContactRequest
{
    /// <summary>Full name.</summary>
    [Required, StringLength(200, MinimumLength = 1)]
    public required string Name { get; init; }

    /// <summary>What she likes to be called; her name when left out.</summary>
    [StringLength(100)]
    public string? Called { get; init; }

    /// <summary>Phone.</summary>
    [StringLength(60)]
    public string? Phone { get; init; }

    /// <summary>E-mail address; nobody else may have it.</summary>
    [
        StringLength(254),
        RegularExpression(@"^$|^[^@\s]+@[^@\s]+$", ErrorMessage = "This is not an e-mail address.")
    ]
    public string? Email { get; init; }

    /// <summary>Whom to call in an emergency.</summary>
    [StringLength(200)]
    public string? EmergencyName { get; init; }

    /// <summary>At what number.</summary>
    [StringLength(60)]
    public string? EmergencyPhone { get; init; }

    /// <summary>Instructors may see her conditions by name. Only she herself or the owner changes it.</summary>
    public bool? SharesConditions { get; init; }
}

/// <summary>A change of a client's details.</summary>
public sealed record ContactChange : ContactRequest
{
    /// <summary>Her own date of birth; stays when left out. Only she herself or the owner gives it.</summary>
    public LocalDate? BornOn { get; init; }

    /// <summary>Her date of birth is to be forgotten.</summary>
    public bool? ForgetBornOn { get; init; }
}

/// <summary>A new client, with what is known of her dates.</summary>
public sealed record NewClient : ContactRequest
{
    /// <summary>The location she usually comes to.</summary>
    public required long HomeLocationId { get; init; }

    /// <summary>What dates the pregnancy; may be left out after a birth.</summary>
    public EvidenceRequest? Dating { get; init; }

    /// <summary>How many babies; 1 when left out.</summary>
    [Range(1, 8)]
    public int? Babies { get; init; }

    /// <summary>Date of birth of the baby, when she comes after it.</summary>
    public LocalDate? BornOn { get; init; }

    /// <summary>How the baby was born.</summary>
    public BirthMode? BirthMode { get; init; }
}

/// <summary>A pregnancy on the client's card.</summary>
public sealed record PregnancyMessage
{
    /// <summary>Due date in force.</summary>
    public LocalDate? DueDate { get; init; }

    /// <summary>What it rests on.</summary>
    public DatingBasis? Basis { get; init; }

    /// <summary>How it came about.</summary>
    public string? Explanation { get; init; }

    /// <summary>How many babies; for the owner and herself, since more than one is a listed condition.</summary>
    public int? Babies { get; init; }

    /// <summary>"24w 3d" today.</summary>
    public string? Age { get; init; }

    /// <summary>The same in days.</summary>
    public int? AgeDays { get; init; }

    /// <summary>Term class today.</summary>
    public string? Term { get; init; }

    /// <summary>Code of her stage today.</summary>
    public string? Stage { get; init; }

    /// <summary>Its name.</summary>
    public string? StageName { get; init; }

    /// <summary>Days since the birth.</summary>
    public int? DaysSinceBirth { get; init; }

    /// <summary>Date of birth.</summary>
    public LocalDate? BornOn { get; init; }

    /// <summary>How the baby was born; for the owner and herself.</summary>
    public BirthMode? BirthMode { get; init; }

    /// <summary>The due date has passed and no birth is reported.</summary>
    public required bool PastDue { get; init; }

    /// <summary>37w 0d or later, no birth reported.</summary>
    public required bool MayHaveGivenBirth { get; init; }

    /// <summary>A birth can be reported: 20w 0d or later. In plain sight only where it may have been.</summary>
    public required bool BirthReportable { get; init; }

    /// <summary>This reader may take the reported birth back.</summary>
    public required bool BirthRevocable { get; init; }

    /// <summary>Her next stage and its first day.</summary>
    public NextStage? NextStage { get; init; }
}

/// <summary>The stage that comes next.</summary>
public sealed record NextStage(string Code, string Name, LocalDate On);

/// <summary>Clearance on the card: status and date, never the content.</summary>
public sealed record ClearanceMessage(ClearanceStatus Status, LocalDate? ValidUntil, string Says);

/// <summary>Screening on the card: that it was answered and when, never what.</summary>
public sealed record ScreeningMessage(ScreeningStatus Status, LocalDate? AnsweredOn, string Says);

/// <summary>Something the studio needs of her.</summary>
/// <param name="Code">dates, hold, screening, letter, birth-word, ring-her.</param>
/// <param name="Says">In plain and kind words.</param>
/// <param name="By">By when, when there is a date.</param>
public sealed record Need(string Code, string Says, LocalDate? By);

/// <summary>A factor she has.</summary>
public sealed record FactorMessage(
    long Id,
    string Code,
    string Name,
    bool IsCondition,
    LocalDate From,
    LocalDate? To
);

/// <summary>A stage on the tape.</summary>
public sealed record TapeBand(string Stage, string Name, LocalDate From, LocalDate? To);

/// <summary>The validity of a clearance letter on the tape.</summary>
public sealed record TapeLetter(LocalDate From, LocalDate To);

/// <summary>A booking on the tape.</summary>
public sealed record TapeBooking(
    long BookingId,
    long SessionId,
    LocalDate On,
    string ClassName,
    Suits Verdict,
    BookingStatus Status
);

/// <summary>Her time as a tape.</summary>
public sealed record Tape
{
    /// <summary>First day drawn: 0w 0d, or the birth when the due date is not known.</summary>
    public required LocalDate Start { get; init; }

    /// <summary>Last day drawn.</summary>
    public required LocalDate End { get; init; }

    /// <summary>Today at her location.</summary>
    public required LocalDate Today { get; init; }

    /// <summary>Due date in force.</summary>
    public LocalDate? DueDate { get; init; }

    /// <summary>Date of birth.</summary>
    public LocalDate? BornOn { get; init; }

    /// <summary>The stages.</summary>
    public required IReadOnlyList<TapeBand> Bands { get; init; }

    /// <summary>Validity of her letters.</summary>
    public required IReadOnlyList<TapeLetter> Letters { get; init; }

    /// <summary>Her bookings.</summary>
    public required IReadOnlyList<TapeBooking> Bookings { get; init; }
}

/// <summary>All that a reader may see of a client on one card.</summary>
public sealed record ClientCard
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>Full name.</summary>
    public required string Name { get; init; }

    /// <summary>What she likes to be called.</summary>
    public required string Called { get; init; }

    /// <summary>Phone.</summary>
    public required string Phone { get; init; }

    /// <summary>E-mail address.</summary>
    public required string Email { get; init; }

    /// <summary>Whom to call.</summary>
    public required string EmergencyName { get; init; }

    /// <summary>At what number.</summary>
    public required string EmergencyPhone { get; init; }

    /// <summary>The location she usually comes to.</summary>
    public required long HomeLocationId { get; init; }

    /// <summary>Its zone.</summary>
    public required string Zone { get; init; }

    /// <summary>Instructors may see her conditions by name.</summary>
    public required bool SharesConditions { get; init; }

    /// <summary>She can sign in.</summary>
    public required bool HasAccount { get; init; }

    /// <summary>Where she stands today.</summary>
    public required Phase Phase { get; init; }

    /// <summary>Her pregnancy; null when none is recorded or it ended.</summary>
    public PregnancyMessage? Pregnancy { get; init; }

    /// <summary>Her clearance.</summary>
    public required ClearanceMessage Clearance { get; init; }

    /// <summary>Her screening.</summary>
    public required ScreeningMessage Screening { get; init; }

    /// <summary>All her bookings are held until a new letter.</summary>
    public required bool OnHold { get; init; }

    /// <summary>What the studio needs of her.</summary>
    public required IReadOnlyList<Need> Needs { get; init; }

    /// <summary>Her own date of birth; for the owner and herself, else null.</summary>
    public LocalDate? BornOn { get; init; }

    /// <summary>How hard she works today; for the owner and herself, else null.</summary>
    public IntensityMessage? Intensity { get; init; }

    /// <summary>Her factors and conditions; for the owner and herself, else null.</summary>
    public IReadOnlyList<FactorMessage>? Factors { get; init; }

    /// <summary>Her time as a tape; null when there is no date to draw it from.</summary>
    public Tape? Tape { get; init; }
}
