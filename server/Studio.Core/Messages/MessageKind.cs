namespace Studio.Core.Messages;

/// <summary>What a message is about. Kept in the table by name, so a name is never given another meaning.</summary>
public enum MessageKind
{
    /// <summary>She has a seat.</summary>
    BookingMade,

    /// <summary>Her seat or place was given up, by her or by the desk.</summary>
    BookingCancelled,

    /// <summary>She waits for a seat.</summary>
    WaitlistPlace,

    /// <summary>A seat became free and is hers.</summary>
    SeatFromWaitlist,

    /// <summary>A seat became free and is kept for her for a time.</summary>
    SeatOffered,

    /// <summary>Another class is suggested for bookings ahead.</summary>
    MoveSuggested,

    /// <summary>A session she is booked in has another time, place or instructor.</summary>
    SessionChanged,

    /// <summary>A session she is booked in is not held.</summary>
    SessionCancelled,

    /// <summary>Her page asks for something: a letter, the questions.</summary>
    NeedsHer,

    /// <summary>A pass runs out.</summary>
    PassRunsOut,

    /// <summary>An instructor is asked whether she can take a session.</summary>
    CoverAsked,

    /// <summary>A session has somebody else to teach it.</summary>
    CoverSettled,

    /// <summary>An instructor's own timetable changed: a session given, taken away, moved or not held.</summary>
    TimetableChanged,

    /// <summary>The owner tries whether messages arrive.</summary>
    Test,
}
