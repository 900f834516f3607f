using NodaTime;

namespace Studio.Core.Feeds;

/// <summary>Whose sessions an address gives.</summary>
public enum FeedReads
{
    /// <summary>Those she teaches.</summary>
    Instructor,

    /// <summary>Those she has booked.</summary>
    Client,
}

/// <summary>What became of her place in a session, as far as a calendar is concerned.</summary>
public enum PlaceInSession
{
    /// <summary>She has a seat.</summary>
    Seat,

    /// <summary>She is on the waitlist.</summary>
    Waitlist,

    /// <summary>Given up by her or the desk, or moved to another session.</summary>
    GivenUp,

    /// <summary>Let go by the studio without a word of why.</summary>
    Released,
}

/// <summary>What a client's calendar asks about one session.</summary>
/// <param name="Place">Her place in it, as it stands or as it ended.</param>
/// <param name="EndedAt">When it ended.</param>
/// <param name="Held">The session is not called off.</param>
/// <param name="StartsAt">When it begins.</param>
public sealed record BookedSession(
    PlaceInSession Place,
    Instant? EndedAt,
    bool Held,
    Instant StartsAt
);

/// <summary>What stands in a calendar, and for how long.</summary>
public static class FeedRules
{
    /// <summary>How long what is over, and what was called off or given up, is still told.</summary>
    public static readonly Duration Remembered = Duration.FromDays(30);

    /// <summary>How a session stands in a client's calendar, or null when it does not.</summary>
    /// <param name="session">The session and her place in it.</param>
    /// <param name="ended">Her pregnancy ended in loss: what was stays, and nothing is struck through.</param>
    /// <param name="now">The moment of asking.</param>
    public static EntryState? StateFor(BookedSession session, bool ended, Instant now)
    {
        if (ended)
            return session is { Place: PlaceInSession.Seat, Held: true } && session.StartsAt <= now
                ? EntryState.Confirmed
                : null;
        var lately = session.EndedAt is not { } at || at > now - Remembered;
        if (!session.Held)
            return lately ? EntryState.Cancelled : null;
        return session.Place switch
        {
            PlaceInSession.Seat => EntryState.Confirmed,
            PlaceInSession.Waitlist => session.StartsAt > now ? EntryState.Tentative : null,
            PlaceInSession.GivenUp => lately ? EntryState.Cancelled : null,
            // A birth, or what she would rather not read in her calendar: it is simply no longer there.
            PlaceInSession.Released => null,
        };
    }
}

/// <summary>Every way of saying no to a calendar address.</summary>
public static class FeedRefusals
{
    /// <summary>Nothing at an address; whether there ever was is not told.</summary>
    public static readonly Refusal NoSuchCalendar = new(
        RefusalKind.NotFound,
        "no-such-calendar",
        "There is no calendar at this address. Make a new address in the studio's program."
    );

    /// <summary>No such address of this reader's.</summary>
    public static readonly Refusal NoSuchFeed = new(
        RefusalKind.NotFound,
        "no-such-feed",
        "There is no such calendar address, or it was taken back already."
    );

    /// <summary>Only those who teach have sessions they teach, only clients have bookings.</summary>
    public static Refusal NotYours(FeedReads reads) =>
        new(
            RefusalKind.NotAllowed,
            "feed-not-yours",
            reads switch
            {
                FeedReads.Instructor =>
                    "Only somebody who teaches here has a calendar of the classes she teaches.",
                FeedReads.Client => "Only a client has a calendar of the classes she has booked.",
            },
            "reads"
        );

    /// <summary>The choice is a client's.</summary>
    public static readonly Refusal AlwaysNamed = new(
        RefusalKind.Invalid,
        "always-named",
        "The calendar of the classes you teach always names them. Only a client chooses what hers says.",
        "namesClass"
    );
}
