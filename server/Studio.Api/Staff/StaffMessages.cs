using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Api.Http;
using Studio.Core.Staff;
using Studio.Core.Timetable;

namespace Studio.Api.Staff;

/// <summary>A session to come of hers, as far as it takes to name it.</summary>
public sealed record HerSession
{
    /// <summary>The session.</summary>
    public long SessionId { get; init; }

    /// <summary>Its own date, where it is held.</summary>
    public LocalDate On { get; init; }

    /// <summary>Start by the location's clock, "18:00".</summary>
    public string StartsLocal { get; init; } = "";

    /// <summary>Its class.</summary>
    public string ClassName { get; init; } = "";

    /// <summary>Where.</summary>
    public string LocationName { get; init; } = "";
}

/// <summary>A qualification.</summary>
public sealed record QualificationMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>Its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The day it was issued.</summary>
    public required LocalDate IssuedOn { get; init; }

    /// <summary>Its last day.</summary>
    public required LocalDate ExpiresOn { get; init; }

    /// <summary>How it stands today.</summary>
    public required QualificationStatus Status { get; init; }

    /// <summary>Its proof is filed.</summary>
    public required bool HasProof { get; init; }

    /// <summary>Sessions after its last day that need it of her, where it runs out and nothing takes its place.</summary>
    public required IReadOnlyList<HerSession> SessionsAfter { get; init; }
}

/// <summary>An instructor in the owner's list.</summary>
public sealed record InstructorMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>What she likes to be called.</summary>
    public required string Called { get; init; }

    /// <summary>E-mail address.</summary>
    public required string Email { get; init; }

    /// <summary>Phone.</summary>
    public required string Phone { get; init; }

    /// <summary>She can sign in.</summary>
    public required bool HasAccount { get; init; }

    /// <summary>Sessions to come.</summary>
    public required int SessionsAhead { get; init; }

    /// <summary>Of those, sessions for which she has no valid qualification on the day.</summary>
    public required int SessionsUnqualified { get; init; }

    /// <summary>Of those, sessions on days on which she is away or works here no longer.</summary>
    public required int SessionsAbsent { get; init; }

    /// <summary>Minutes of this ISO week, taught and to come, across all locations.</summary>
    public required int MinutesThisWeek { get; init; }

    /// <summary>Most minutes in a week; null when no bound was set.</summary>
    public int? WeeklyMinutesMost { get; init; }

    /// <summary>The first day on which she no longer works here.</summary>
    public LocalDate? LeftOn { get; init; }

    /// <summary>Her qualifications that count, what ends first comes first.</summary>
    public required IReadOnlyList<QualificationMessage> Qualifications { get; init; }
}

/// <summary>Hours of a weekday in which she can be asked for.</summary>
public sealed record AvailableHours
{
    /// <summary>1 (Monday) to 7.</summary>
    [Range(1, 7)]
    public required int Weekday { get; init; }

    /// <summary>First hour by the clock of the location, "09:00".</summary>
    [Required, RegularExpression("^([01][0-9]|2[0-3]):[0-5][0-9]$")]
    public required string From { get; init; }

    /// <summary>A class has to end by then.</summary>
    [Required, RegularExpression("^([01][0-9]|2[0-3]):[0-5][0-9]$")]
    public required string To { get; init; }

    /// <summary>Only at this location; null: at any.</summary>
    public long? LocationId { get; init; }
}

/// <summary>Days away.</summary>
public sealed record LeaveMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>First day.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Last day.</summary>
    public required LocalDate To { get; init; }

    /// <summary>Her sessions to come on those days.</summary>
    public required IReadOnlyList<HerSession> Sessions { get; init; }
}

/// <summary>What she likes to teach, or does not.</summary>
public sealed record TeachingWishMessage
{
    /// <summary>What it is about.</summary>
    public required WishKind Kind { get; init; }

    /// <summary>A class's code, a location's code, a weekday 1 to 7, or morning, afternoon, evening.</summary>
    [Required, StringLength(100, MinimumLength = 1)]
    public required string Value { get; init; }

    /// <summary>-2 (rather not) to 2 (gladly); 0 is no wish.</summary>
    [Range(-2, 2)]
    public required int Weight { get; init; }
}

/// <summary>An instructor's own page, for the owner and for her.</summary>
public sealed record InstructorPage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>What she likes to be called.</summary>
    public required string Called { get; init; }

    /// <summary>E-mail address.</summary>
    public required string Email { get; init; }

    /// <summary>Phone.</summary>
    public required string Phone { get; init; }

    /// <summary>She can sign in.</summary>
    public required bool HasAccount { get; init; }

    /// <summary>Most minutes in a week; null when no bound was set.</summary>
    public int? WeeklyMinutesMost { get; init; }

    /// <summary>Least minutes from one day's teaching to the next; null: the studio's policy.</summary>
    public int? RestMinutesLeast { get; init; }

    /// <summary>The first day on which she no longer works here.</summary>
    public LocalDate? LeftOn { get; init; }

    /// <summary>Her qualifications, those withdrawn last.</summary>
    public required IReadOnlyList<QualificationMessage> Qualifications { get; init; }

    /// <summary>When she can be asked for; empty: at any hour.</summary>
    public required IReadOnlyList<AvailableHours> Availability { get; init; }

    /// <summary>Days away that end today or later, and those of the year behind.</summary>
    public required IReadOnlyList<LeaveMessage> Leave { get; init; }

    /// <summary>Her wishes.</summary>
    public required IReadOnlyList<TeachingWishMessage> Wishes { get; init; }
}

/// <summary>What the owner knows of an instructor.</summary>
public sealed record InstructorRequest
{
    /// <summary>Name.</summary>
    [Required, StringLength(200, MinimumLength = 1)]
    public required string Name { get; init; }

    /// <summary>What she likes to be called; her first name when empty.</summary>
    [StringLength(100)]
    public string? Called { get; init; }

    /// <summary>E-mail address; no other instructor may have it.</summary>
    [Required, EmailAddress, StringLength(254)]
    public required string Email { get; init; }

    /// <summary>Phone.</summary>
    [StringLength(60)]
    public string? Phone { get; init; }

    /// <summary>Most minutes in a week; null for no bound.</summary>
    [Range(0, 10080)]
    public int? WeeklyMinutesMost { get; init; }

    /// <summary>Least minutes from one day's teaching to the next; null for the studio's policy.</summary>
    [Range(0, 1440)]
    public int? RestMinutesLeast { get; init; }

    /// <summary>The first day on which she no longer works here.</summary>
    public LocalDate? LeftOn { get; init; }

    /// <summary>The sessions she would leave behind were looked at.</summary>
    public bool Confirmed { get; init; }
}

/// <summary>A qualification to add.</summary>
public sealed record QualificationRequest
{
    /// <summary>Its kind; classes name the kind they need.</summary>
    [Required, StringLength(60, MinimumLength = 1)]
    public required string Kind { get; init; }

    /// <summary>The day it was issued.</summary>
    public required LocalDate IssuedOn { get; init; }

    /// <summary>Its last day.</summary>
    public required LocalDate ExpiresOn { get; init; }
}

/// <summary>All the hours in which she can be asked for, from now on.</summary>
public sealed record AvailabilityRequest
{
    /// <summary>None: at any hour.</summary>
    [Required, MaxLength(100)]
    [NoGaps]
    public required IReadOnlyList<AvailableHours> Hours { get; init; }
}

/// <summary>What became of the hours given.</summary>
/// <param name="Outside">Her sessions to come that lie outside of them; they stay as they are.</param>
public sealed record AvailabilityAnswer(IReadOnlyList<HerSession> Outside);

/// <summary>Days away to enter.</summary>
public sealed record LeaveRequest
{
    /// <summary>First day.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Last day.</summary>
    public required LocalDate To { get; init; }
}

/// <summary>All her wishes, from now on.</summary>
public sealed record WishesRequest
{
    /// <summary>One at most about each thing.</summary>
    [Required, MaxLength(200)]
    [NoGaps]
    public required IReadOnlyList<TeachingWishMessage> Wishes { get; init; }
}

/// <summary>Hours taught, and to come.</summary>
public sealed record HoursMessage
{
    /// <summary>Most minutes in a week; null when no bound was set.</summary>
    public int? WeeklyMinutesMost { get; init; }

    /// <summary>ISO weeks, whole, the earliest first.</summary>
    public required IReadOnlyList<HoursOf> Weeks { get; init; }

    /// <summary>Months, whole, the earliest first.</summary>
    public required IReadOnlyList<HoursOf> Months { get; init; }
}
