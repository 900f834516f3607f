using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>A series asked for, or looked at before it is made.</summary>
public sealed record SeriesRequest
{
    /// <summary>Its rule: RFC 5545, for dates.</summary>
    [Required, StringLength(500, MinimumLength = 1)]
    public required string Rule { get; init; }

    /// <summary>The day the rule counts from.</summary>
    public required LocalDate Start { get; init; }

    /// <summary>Start by the wall clock, "18:00".</summary>
    [Required, RegularExpression(@"([01]\d|2[0-3]):[0-5]\d")]
    public required string StartsLocal { get; init; }

    /// <summary>IANA zone of that clock; left out, that of the room's location.</summary>
    [StringLength(60)]
    public string? Zone { get; init; }

    /// <summary>Dates on which nothing is held.</summary>
    [MaxLength(400)]
    public IReadOnlyList<LocalDate>? Exceptions { get; init; }

    /// <summary>The class; a preview of dates alone needs none.</summary>
    public long? ClassId { get; init; }

    /// <summary>The room; a preview of dates alone needs none.</summary>
    public long? RoomId { get; init; }

    /// <summary>Who teaches it; null when nobody does yet.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Length in minutes; left out, that of the class.</summary>
    public int? Minutes { get; init; }

    /// <summary>Seats; left out, those of the room.</summary>
    public int? Seats { get; init; }

    /// <summary>Warnings (hours, rest, a plan that is longer) are accepted.</summary>
    public bool Anyway { get; init; }
}

/// <summary>How far a change of a series goes.</summary>
public enum SeriesScope
{
    /// <summary>One date.</summary>
    ThisOne,

    /// <summary>That date and all after it.</summary>
    FromHere,

    /// <summary>All that lies ahead.</summary>
    All,
}

/// <summary>A change of a series.</summary>
public sealed record SeriesChangeRequest
{
    /// <summary>How far it goes.</summary>
    public required SeriesScope Scope { get; init; }

    /// <summary>The date of the rule it begins on; needed unless it is for all.</summary>
    public LocalDate? On { get; init; }

    /// <summary>Another rule; left out, it stays.</summary>
    [StringLength(500, MinimumLength = 1)]
    public string? Rule { get; init; }

    /// <summary>Start by the wall clock, "18:00".</summary>
    [Required, RegularExpression(@"([01]\d|2[0-3]):[0-5]\d")]
    public required string StartsLocal { get; init; }

    /// <summary>The room.</summary>
    public required long RoomId { get; init; }

    /// <summary>Who teaches it; null when nobody does yet.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>Seats.</summary>
    public required int Seats { get; init; }

    /// <summary>Dates that were changed or called off by hand follow as well.</summary>
    public bool ByHandToo { get; init; }

    /// <summary>Warnings (hours, rest, a plan that is longer) are accepted.</summary>
    public bool Anyway { get; init; }
}

/// <summary>When a series ends.</summary>
public sealed record SeriesEndRequest
{
    /// <summary>The last day on which it may be held.</summary>
    public required LocalDate LastOn { get; init; }
}

/// <summary>How a date of a series stands.</summary>
public enum SeriesDateState
{
    /// <summary>It would be held; in a preview.</summary>
    Planned,

    /// <summary>It is held.</summary>
    Held,

    /// <summary>It was called off.</summary>
    CalledOff,

    /// <summary>The series leaves it out.</summary>
    Skipped,

    /// <summary>The location is shut.</summary>
    Shut,

    /// <summary>It is not laid out: something stands against it.</summary>
    Missing,
}

/// <summary>A date of a series.</summary>
public sealed record SeriesDateMessage
{
    /// <summary>The date the rule gives.</summary>
    public required LocalDate SeriesOn { get; init; }

    /// <summary>How it stands.</summary>
    public required SeriesDateState State { get; init; }

    /// <summary>Its own date: another one where it was moved by hand.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Start by the location's clock.</summary>
    public required string StartsLocal { get; init; }

    /// <summary>Start.</summary>
    public required Instant StartsAt { get; init; }

    /// <summary>The session, when there is one.</summary>
    public long? SessionId { get; init; }

    /// <summary>Seats taken in it.</summary>
    public int SeatsTaken { get; init; }

    /// <summary>It was changed by hand: it is not as the series says.</summary>
    public bool ByHand { get; init; }

    /// <summary>What there is to say of it: why it is shut or missing, or that the clocks change.</summary>
    public string? Says { get; init; }

    /// <summary>Conflicts, each in a sentence.</summary>
    public IReadOnlyList<string> Conflicts { get; init; } = [];
}

/// <summary>What a rule gives.</summary>
public sealed record SeriesPreviewMessage
{
    /// <summary>The rule as it would be kept.</summary>
    public required string Rule { get; init; }

    /// <summary>It in words.</summary>
    public required string Words { get; init; }

    /// <summary>IANA zone of its clock.</summary>
    public required string Zone { get; init; }

    /// <summary>Its first date.</summary>
    public required LocalDate Start { get; init; }

    /// <summary>Its dates: the next 26 weeks, 60 at most.</summary>
    public required IReadOnlyList<SeriesDateMessage> Dates { get; init; }

    /// <summary>It goes on after them.</summary>
    public required bool GoesOn { get; init; }

    /// <summary>Until when its sessions would be laid out now; later ones follow by night.</summary>
    public required LocalDate LaidOutTo { get; init; }

    /// <summary>All conflicts.</summary>
    public required IReadOnlyList<Conflict> Conflicts { get; init; }
}

/// <summary>A series.</summary>
public sealed record SeriesMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>Its rule in words.</summary>
    public required string Words { get; init; }

    /// <summary>Its rule.</summary>
    public required string Rule { get; init; }

    /// <summary>The class.</summary>
    public required long ClassId { get; init; }

    /// <summary>Its name.</summary>
    public required string ClassName { get; init; }

    /// <summary>The room.</summary>
    public required long RoomId { get; init; }

    /// <summary>Its name.</summary>
    public required string RoomName { get; init; }

    /// <summary>The location.</summary>
    public required long LocationId { get; init; }

    /// <summary>Its name.</summary>
    public required string LocationName { get; init; }

    /// <summary>IANA zone of the location.</summary>
    public required string Zone { get; init; }

    /// <summary>Who teaches it.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Her name.</summary>
    public string? InstructorName { get; init; }

    /// <summary>Seats.</summary>
    public required int Seats { get; init; }

    /// <summary>Length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>Its first date.</summary>
    public required LocalDate StartsOn { get; init; }

    /// <summary>Start by the location's clock.</summary>
    public required string StartsLocal { get; init; }

    /// <summary>The series this one goes on from.</summary>
    public long? ContinuesId { get; init; }

    /// <summary>No date lies ahead.</summary>
    public required bool HasEnded { get; init; }

    /// <summary>Until when its sessions are laid out.</summary>
    public required LocalDate LaidOutTo { get; init; }

    /// <summary>Its dates ahead that are laid out; in the list the next four.</summary>
    public required IReadOnlyList<SeriesDateMessage> Dates { get; init; }

    /// <summary>Dates within reach that could not be laid out.</summary>
    public required int Missing { get; init; }
}

/// <summary>What a change does, or would do.</summary>
public sealed record SeriesOutcome
{
    /// <summary>It was kept; false when it was only looked at.</summary>
    public required bool Kept { get; init; }

    /// <summary>The series as it goes on: itself, or the one that continues it. Null where that one is not made yet.</summary>
    public long? SeriesId { get; init; }

    /// <summary>Its rule in words.</summary>
    public required string Words { get; init; }

    /// <summary>The old one in words, where it ends here.</summary>
    public string? EndedWords { get; init; }

    /// <summary>What it brings about.</summary>
    public required ChangesPreview Changes { get; init; }

    /// <summary>Dates in this range that were changed by hand and stay as they are.</summary>
    public int StayByHand { get; init; }
}
