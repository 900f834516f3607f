namespace Studio.Core.Messages;

/// <summary>What a message says, before it is laid out.</summary>
/// <param name="Subject">Its subject.</param>
/// <param name="Before">What stands before the lines.</param>
/// <param name="Lines">Sentences with class, day, hour and place.</param>
/// <param name="After">What stands after them.</param>
/// <param name="Press">What the link to her page says.</param>
internal sealed record Said(
    string Subject,
    IReadOnlyList<string> Before,
    IReadOnlyList<string> Lines,
    IReadOnlyList<string> After,
    string Press
);

/// <summary>The words of each kind.</summary>
internal static class MessageWords
{
    private const string YourPage = "Open your page";

    public static Said Of(MessageKind kind, IReadOnlyDictionary<string, string> facts, bool hasPage)
    {
        var lines = OneLine.Each(facts.GetValueOrDefault("lines") ?? "");
        var several = lines.Count > 1;
        return kind switch
        {
            MessageKind.BookingMade when facts.GetValueOrDefault("moved") == "yes" => new(
                "Your bookings have moved",
                ["Your bookings have moved, all together. These are yours now:"],
                lines,
                [GiveUp(hasPage)],
                YourPage
            ),
            MessageKind.BookingMade => new(
                several ? "Your seats are booked" : "Your seat is booked",
                ["This is booked for you:"],
                lines,
                [GiveUp(hasPage)],
                YourPage
            ),
            MessageKind.BookingCancelled => new(
                "Your booking is cancelled",
                ["This is no longer booked for you:"],
                lines,
                ["If that is not what you meant, you can book again as long as there are seats."],
                YourPage
            ),
            MessageKind.WaitlistPlace => new(
                "You are on the waitlist",
                ["This class is full. You are waiting for a seat:"],
                lines,
                [
                    .. Place(facts),
                    "When a seat becomes free it goes to whoever has waited longest, and we write to you.",
                ],
                YourPage
            ),
            MessageKind.SeatFromWaitlist => new(
                "A seat became free, and it is yours",
                ["You were waiting for a seat, and now you have one:"],
                lines,
                [GiveUp(hasPage)],
                YourPage
            ),
            MessageKind.SeatOffered => new(
                "A seat is kept for you for a time",
                ["A seat became free and is kept for you:"],
                lines,
                [Until(facts)],
                YourPage
            ),
            MessageKind.MoveSuggested => new(
                "A suggestion for your classes",
                [
                    "We have looked ahead, and have a suggestion for some of your bookings.",
                    hasPage
                        ? "Nothing changes until you say so. You can accept or decline it on your page."
                        : "Nothing changes until you say so. Please get in touch with us to hear it.",
                ],
                [],
                [],
                "See the suggestion"
            ),
            MessageKind.SessionChanged => new(
                "A class of yours has changed",
                ["Something has changed that you should know before you set out:"],
                lines,
                ["If it no longer suits your day, you can give your seat up or choose another."],
                YourPage
            ),
            MessageKind.SessionCancelled => new(
                several ? "Classes of yours are not held" : "A class of yours is not held",
                [several ? "These classes are not held:" : "This class is not held:"],
                lines,
                ["We are sorry. You need not do anything, and it costs you nothing."],
                "Find another class"
            ),
            MessageKind.NeedsHer => new(
                hasPage ? "Something on your page needs you" : "The studio needs a word with you",
                [
                    hasPage
                        ? "There is something on your page that only you can do. It does not take long."
                        : "There is something we need from you before your next classes. Please get in touch with us.",
                ],
                [],
                [],
                "See what it is"
            ),
            MessageKind.PassRunsOut => new(
                "Your pass runs out soon",
                ["Your pass runs out soon:"],
                lines,
                [],
                YourPage
            ),
            MessageKind.CoverAsked => new(
                several ? "Can you take these classes?" : "Can you take this class?",
                [
                    several
                        ? "Somebody is needed for these classes, and you could take them:"
                        : "Somebody is needed for this class, and you could take it:",
                ],
                lines,
                ["Please say yes or no on your page, as soon as you can."],
                "Answer on your page"
            ),
            MessageKind.CoverSettled => new(
                several
                    ? "Classes have somebody to teach them"
                    : "A class has somebody to teach it",
                ["It is settled who teaches:"],
                lines,
                [],
                "Open your timetable"
            ),
            MessageKind.TimetableChanged => new(
                "Your timetable has changed",
                ["Your timetable has changed:"],
                lines,
                ["If this cannot be right, please tell the studio at once."],
                "Open your timetable"
            ),
            MessageKind.Test => new(
                "A test message",
                ["This message was sent to try whether messages arrive. You need not do anything."],
                [],
                [],
                "Open the list of messages"
            ),
        };
    }

    private static string GiveUp(bool hasPage) =>
        hasPage
            ? "If you cannot come, please give it up on your page: somebody else may be waiting."
            : "If you cannot come, please tell us: somebody else may be waiting.";

    private static IEnumerable<string> Place(IReadOnlyDictionary<string, string> facts) =>
        int.TryParse(facts.GetValueOrDefault("place"), out var place) && place > 0
            ? [$"You are number {place}."]
            : [];

    private static string Until(IReadOnlyDictionary<string, string> facts) =>
        facts.GetValueOrDefault("until") is { Length: > 0 } until
            ? $"It is kept until {OneLine.Of(until)}; after that it goes to whoever waits next."
            : "Please take it soon; after a time it goes to whoever waits next.";
}
