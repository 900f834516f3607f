namespace Studio.Core.Messages;

/// <summary>Invented facts, so that every kind can be looked at before any is sent.</summary>
public static class MessageExamples
{
    private const string Evening =
        "Slow strength, Tuesday 9 March 2027 at 18:00, Quay house (Loft)";
    private const string Morning =
        "Sitting tall, Thursday 11 March 2027 at 09:30, Quay house (Hall)";

    /// <summary>Facts for a kind.</summary>
    public static IReadOnlyDictionary<string, string> Of(MessageKind kind) =>
        kind switch
        {
            MessageKind.BookingMade
            or MessageKind.BookingCancelled
            or MessageKind.SeatFromWaitlist
            or MessageKind.SessionCancelled => Facts(("lines", Evening)),
            MessageKind.WaitlistPlace => Facts(("lines", Evening), ("place", "2")),
            MessageKind.SeatOffered => Facts(
                ("lines", Evening),
                ("until", "Tuesday 9 March 2027 at 12:00")
            ),
            MessageKind.SessionChanged => Facts(
                ("lines", $"{Evening}: it begins at 18:30 instead, in the Hall.")
            ),
            MessageKind.PassRunsOut => Facts(
                ("lines", "8 classes: 2 are left, to be used by 3 April 2027")
            ),
            MessageKind.CoverAsked => Facts(("lines", $"{Evening}\n{Morning}")),
            MessageKind.CoverSettled => Facts(("lines", $"{Evening}: Ilka teaches it.")),
            MessageKind.TimetableChanged => Facts(("lines", $"{Morning}: this is yours now.")),
            MessageKind.MoveSuggested or MessageKind.NeedsHer or MessageKind.Test => Facts(),
        };

    private static Dictionary<string, string> Facts(params (string Name, string Words)[] facts) =>
        facts.ToDictionary(f => f.Name, f => f.Words, StringComparer.Ordinal);
}
