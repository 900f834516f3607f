using System.Text.Json;

namespace Studio.Core.Messages;

/// <summary>What goes for each kind of message.</summary>
public static class MessageKinds
{
    /// <summary>All kinds, in the order in which they are shown.</summary>
    public static IReadOnlyList<MessageKind> All { get; } = Enum.GetValues<MessageKind>();

    /// <summary>The kinds a client may do without.</summary>
    public static IReadOnlyList<MessageKind> AClientMayStop { get; } =
    [MessageKind.MoveSuggested, MessageKind.NeedsHer, MessageKind.PassRunsOut];

    /// <summary>The kinds an instructor may do without.</summary>
    public static IReadOnlyList<MessageKind> AnInstructorMayStop { get; } =
    [MessageKind.CoverAsked];

    /// <summary>Its name in tables and routes: <c>bookingMade</c>.</summary>
    public static string OnTheWire(this MessageKind kind) =>
        JsonNamingPolicy.CamelCase.ConvertName(kind.ToString());

    /// <summary>The kind of that name; null when there is none.</summary>
    public static MessageKind? Find(string name)
    {
        foreach (var kind in All)
            if (kind.OnTheWire() == name)
                return kind;
        return null;
    }

    /// <summary>
    /// It is about something of hers that would go wrong unread: a booking, a session, her own timetable. It cannot be
    /// stopped, and may be sent in quiet hours when the class is near.
    /// </summary>
    public static bool IsEssential(this MessageKind kind) =>
        kind switch
        {
            MessageKind.BookingMade
            or MessageKind.BookingCancelled
            or MessageKind.WaitlistPlace
            or MessageKind.SeatFromWaitlist
            or MessageKind.SeatOffered
            or MessageKind.SessionChanged
            or MessageKind.SessionCancelled
            or MessageKind.CoverSettled
            or MessageKind.TimetableChanged
            or MessageKind.Test => true,
            MessageKind.MoveSuggested
            or MessageKind.NeedsHer
            or MessageKind.PassRunsOut
            or MessageKind.CoverAsked => false,
        };

    /// <summary>It says that she has a seat or place in a session; without one it is no longer true.</summary>
    public static bool NeedsHerPlace(this MessageKind kind) =>
        kind
            is MessageKind.BookingMade
                or MessageKind.WaitlistPlace
                or MessageKind.SeatFromWaitlist
                or MessageKind.SeatOffered
                or MessageKind.SessionChanged;

    /// <summary>It is of no use once the session it speaks of has begun.</summary>
    public static bool EndsWithTheStart(this MessageKind kind) =>
        NeedsHerPlace(kind) || kind is MessageKind.SessionCancelled or MessageKind.CoverAsked;

    /// <summary>A birth makes it void: it speaks of what has been let go, or asks for what can wait.</summary>
    public static bool EndsWithABirth(this MessageKind kind) =>
        NeedsHerPlace(kind) || kind is MessageKind.MoveSuggested or MessageKind.NeedsHer;

    /// <summary>What it is called in lists and choices.</summary>
    public static string Title(this MessageKind kind) =>
        kind switch
        {
            MessageKind.BookingMade => "A seat booked",
            MessageKind.BookingCancelled => "A booking cancelled",
            MessageKind.WaitlistPlace => "A place on the waitlist",
            MessageKind.SeatFromWaitlist => "A seat from the waitlist",
            MessageKind.SeatOffered => "A seat kept for a time",
            MessageKind.MoveSuggested => "Suggestions for your classes",
            MessageKind.SessionChanged => "A class changed",
            MessageKind.SessionCancelled => "A class not held",
            MessageKind.NeedsHer => "Something on your page needs you",
            MessageKind.PassRunsOut => "A pass runs out",
            MessageKind.CoverAsked => "Asked to take a class",
            MessageKind.CoverSettled => "A class has somebody to teach it",
            MessageKind.TimetableChanged => "Your timetable changed",
            MessageKind.Test => "A test message",
        };
}
