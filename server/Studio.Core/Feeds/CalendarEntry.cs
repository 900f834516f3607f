using NodaTime;

namespace Studio.Core.Feeds;

/// <summary>How an entry stands; the STATUS of RFC 5545, 3.8.1.11.</summary>
public enum EntryState
{
    /// <summary>It is held, and for a client: she has a seat.</summary>
    Confirmed,

    /// <summary>A place on the waitlist.</summary>
    Tentative,

    /// <summary>Called off, or for a client: no longer hers.</summary>
    Cancelled,
}

/// <summary>One session as it stands in somebody's calendar.</summary>
public sealed record CalendarEntry
{
    /// <summary>The same for as long as it is the same session in the same person's calendar.</summary>
    public required string Uid { get; init; }

    /// <summary>How often it changed; never falls.</summary>
    public required long Sequence { get; init; }

    /// <summary>When it last changed.</summary>
    public required Instant ChangedAt { get; init; }

    /// <summary>Start.</summary>
    public required Instant StartsAt { get; init; }

    /// <summary>End.</summary>
    public required Instant EndsAt { get; init; }

    /// <summary>IANA zone of the location.</summary>
    public required string Zone { get; init; }

    /// <summary>What the calendar shows.</summary>
    public required string Summary { get; init; }

    /// <summary>Room and location.</summary>
    public required string Place { get; init; }

    /// <summary>A sentence more; empty where there is none.</summary>
    public string About { get; init; } = "";

    /// <summary>How it stands.</summary>
    public required EntryState State { get; init; }
}
