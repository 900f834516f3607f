using NodaTime;

namespace Studio.Core.Timetable;

/// <summary>A session with its time, its room and, when somebody is named, its instructor.</summary>
public sealed record PlacedSession
{
    /// <summary>The caller's key: a session, or a row of a draft.</summary>
    public required long Key { get; init; }

    /// <summary>The class.</summary>
    public required long ClassId { get; init; }

    /// <summary>Its code.</summary>
    public required string ClassCode { get; init; }

    /// <summary>Its name.</summary>
    public required string ClassName { get; init; }

    /// <summary>The qualification its instructor needs on the session's date.</summary>
    public required string NeedsQualification { get; init; }

    /// <summary>Minutes of its plan; 0 when it has none.</summary>
    public int PlanMinutes { get; init; }

    /// <summary>The room.</summary>
    public required long RoomId { get; init; }

    /// <summary>Its name.</summary>
    public required string RoomName { get; init; }

    /// <summary>How many fit into the room.</summary>
    public required int RoomSeats { get; init; }

    /// <summary>The location.</summary>
    public required long LocationId { get; init; }

    /// <summary>Its code.</summary>
    public required string LocationCode { get; init; }

    /// <summary>Its name.</summary>
    public required string LocationName { get; init; }

    /// <summary>Who teaches it; null when nobody does yet.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Its own date, where it is held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Start by the location's clock.</summary>
    public required LocalTime StartsLocal { get; init; }

    /// <summary>Start.</summary>
    public required Instant StartsAt { get; init; }

    /// <summary>End.</summary>
    public required Instant EndsAt { get; init; }

    /// <summary>Seats.</summary>
    public required int Seats { get; init; }

    /// <summary>Seats that people have already.</summary>
    public int SeatsTaken { get; init; }

    /// <summary>Length in minutes.</summary>
    public int Minutes => (int)(EndsAt - StartsAt).TotalMinutes;

    /// <summary>End by the location's clock, on the day it begins.</summary>
    public LocalTime EndsLocal => StartsLocal.PlusMinutes(Minutes);

    /// <summary>Whether the two are held at the same time, for a minute at least.</summary>
    public bool Overlaps(PlacedSession other) => StartsAt < other.EndsAt && other.StartsAt < EndsAt;
}
