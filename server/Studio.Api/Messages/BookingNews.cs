using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>Tells a client what became of her bookings, in the transaction that makes it so.</summary>
public sealed class BookingNews(Outbox outbox)
{
    /// <summary>Something about one booking.</summary>
    /// <param name="write">The transaction.</param>
    /// <param name="kind">What.</param>
    /// <param name="bookingId">The booking; each is told once of each kind.</param>
    /// <param name="clientId">Whose.</param>
    /// <param name="session">Its session.</param>
    /// <param name="by">Who did it; null for the program.</param>
    /// <param name="place">Her number on the waitlist, when she waits.</param>
    public Task TellAsync(
        Write write,
        MessageKind kind,
        long bookingId,
        long clientId,
        SessionRow session,
        Reader? by = null,
        int? place = null
    )
    {
        var facts = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["lines"] = MessageLines.Of(session),
        };
        if (by?.ClientId == clientId)
            facts["by"] = "her";
        if (place is { } number)
            facts["place"] = $"{number}";
        return outbox.PutAsync(
            write,
            new()
            {
                Kind = kind,
                About = $"booking:{bookingId}:{kind.OnTheWire()}",
                ClientId = clientId,
                SessionId = session.Id,
                Facts = facts,
            }
        );
    }

    /// <summary>Her bookings were moved together.</summary>
    public Task MovedAsync(
        Write write,
        long moveId,
        long clientId,
        IReadOnlyList<SessionRow> to,
        Reader by
    )
    {
        var facts = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["lines"] = string.Join('\n', to.Select(MessageLines.Of)),
            ["moved"] = "yes",
        };
        if (by.ClientId == clientId)
            facts["by"] = "her";
        return outbox.PutAsync(
            write,
            new()
            {
                Kind = MessageKind.BookingMade,
                About = $"move:{moveId}:accepted",
                ClientId = clientId,
                Facts = facts,
            }
        );
    }
}
