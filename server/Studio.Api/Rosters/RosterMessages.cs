using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Intensity;
using Studio.Api.Movements;
using Studio.Api.Timetable;
using Studio.Core.Booking;
using Studio.Core.Rosters;

namespace Studio.Api.Rosters;

/// <summary>A flag in the reader's words.</summary>
public sealed record FlagMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>What it is about.</summary>
    public required FlagKind Kind { get; init; }

    /// <summary>How loud.</summary>
    public required FlagSeverity Severity { get; init; }

    /// <summary>In words.</summary>
    public required string Text { get; init; }

    /// <summary>Since when it is true.</summary>
    public required LocalDate Since { get; init; }

    /// <summary>This reader has not ticked it as read.</summary>
    public required bool IsNew { get; init; }

    /// <summary>Whom it is about.</summary>
    public long? ClientId { get; init; }

    /// <summary>What she likes to be called.</summary>
    public string? Called { get; init; }

    /// <summary>Her name; for the desk.</summary>
    public string? Name { get; init; }

    /// <summary>Which session it is about.</summary>
    public long? SessionId { get; init; }
}

/// <summary>Something she does differently.</summary>
public sealed record InstructionMessage(string Text, SourceMessage? Source);

/// <summary>Whom to call.</summary>
public sealed record EmergencyMessage(string Name, string Phone);

/// <summary>A person on a roster, as far as the reader may know.</summary>
public sealed record PersonMessage
{
    /// <summary>Her booking.</summary>
    public required long BookingId { get; init; }

    /// <summary>Her.</summary>
    public required long ClientId { get; init; }

    /// <summary>What she likes to be called.</summary>
    public required string Called { get; init; }

    /// <summary>Her name.</summary>
    public required string Name { get; init; }

    /// <summary>Place on the waitlist.</summary>
    public int? Place { get; init; }

    /// <summary>Checked in at.</summary>
    public Instant? CheckedInAt { get; init; }

    /// <summary>When she said at the door that all was well; null when nobody asked her, or a warning sign came since.</summary>
    public Instant? WellAt { get; init; }

    /// <summary>How the session suits her on its date.</summary>
    public required Suits Verdict { get; init; }

    /// <summary>The administrative reason where it does not suit; for the desk.</summary>
    public string? Administrative { get; init; }

    /// <summary>"24w 3d" on the session's date.</summary>
    public string? Age { get; init; }

    /// <summary>Code of her stage on the session's date.</summary>
    public string? Stage { get; init; }

    /// <summary>Its name.</summary>
    public string? StageName { get; init; }

    /// <summary>Days since the birth on the session's date.</summary>
    public int? DaysSinceBirth { get; init; }

    /// <summary>37w 0d or later on that date, no birth reported.</summary>
    public required bool MayHaveGivenBirth { get; init; }

    /// <summary>The heart rate she keeps to on that date, where one is known; for the instructor and the owner.</summary>
    public HeartRateMessage? HeartRate { get; init; }

    /// <summary>What she can still say at moderate effort; for the instructor and the owner.</summary>
    public string? TalkTest { get; init; }

    /// <summary>What she does differently, in instruction words.</summary>
    public required IReadOnlyList<InstructionMessage> Instructions { get; init; }

    /// <summary>What she does for each movement of the plan; for the instructor and the owner.</summary>
    public required IReadOnlyList<HerMovementMessage> Movements { get; init; }

    /// <summary>Her flags.</summary>
    public required IReadOnlyList<FlagMessage> Flags { get; init; }

    /// <summary>Her conditions by name, where she agreed to share them.</summary>
    public required IReadOnlyList<string> Conditions { get; init; }

    /// <summary>Notes from earlier classes, the newest first; for the instructor and the owner, about people with a seat.</summary>
    public required IReadOnlyList<ClassNote> Notes { get; init; }

    /// <summary>Whom to call; from the day before until the day after the session.</summary>
    public EmergencyMessage? Emergency { get; init; }
}

/// <summary>Who is in a session.</summary>
public sealed record RosterMessage
{
    /// <summary>The session.</summary>
    public required SessionSummary Session { get; init; }

    /// <summary>Number to call at the location in an emergency.</summary>
    public required string EmergencyNumber { get; init; }

    /// <summary>What is taught, movement by movement; for the instructor and the owner.</summary>
    public required IReadOnlyList<PlannedMovementMessage> Plan { get; init; }

    /// <summary>Those with a seat, in the order of their names.</summary>
    public required IReadOnlyList<PersonMessage> People { get; init; }

    /// <summary>Those who wait, in order.</summary>
    public required IReadOnlyList<PersonMessage> Waiting { get; init; }
}
