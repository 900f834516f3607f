using NodaTime;
using Studio.Api.Data;

namespace Studio.Api.Booking;

/// <summary>A seat that a change of the timetable let go and nobody has seen to.</summary>
public sealed record LetGoRow
{
    /// <summary>The booking.</summary>
    public long BookingId { get; init; }

    /// <summary>Its session.</summary>
    public long SessionId { get; init; }

    /// <summary>Whose.</summary>
    public long ClientId { get; init; }

    /// <summary>Her name.</summary>
    public string Name { get; init; } = "";

    /// <summary>What she likes to be called.</summary>
    public string Called { get; init; } = "";

    /// <summary>Her phone number.</summary>
    public string Phone { get; init; } = "";

    /// <summary>Why.</summary>
    public LetGo Why { get; init; }

    /// <summary>When.</summary>
    public Instant At { get; init; }
}

/// <summary>People a change of the timetable let go.</summary>
public static class LetGoStore
{
    /// <summary>
    /// Those whose session lies after a moment, the soonest first; nobody whose pregnancy ended since, and nobody who has
    /// a seat or a place in that session again.
    /// </summary>
    public static Task<List<LetGoRow>> OpenAsync(Read read, Instant since) =>
        read.ListAsync<LetGoRow>(
            """
            select b.id as BookingId, b.session_id as SessionId, b.client_id as ClientId, c.name, c.called, c.phone,
                   b.let_go as Why, b.ended_at as At
              from bookings b
              join clients c on c.id = b.client_id
              join sessions s on s.id = b.session_id
             where b.let_go is not null and b.seen_to_at is null and c.erased_at is null and s.starts_at > @since
               and not exists (select 1 from pregnancies p
                                where p.client_id = b.client_id and p.is_current = 1 and p.ended_on is not null)
               and not exists (select 1 from bookings other
                                where other.client_id = b.client_id and other.session_id = b.session_id
                                  and other.status in ('booked', 'waiting'))
             order by s.starts_at, c.name, b.id
            """,
            new { since }
        );

    /// <summary>Somebody saw to her; false when nothing of hers was let go, or it was seen to already.</summary>
    public static async Task<bool> SeenToAsync(Write write, long bookingId, Instant at) =>
        await write.ExecuteAsync(
            "update bookings set seen_to_at = @at where id = @bookingId and let_go is not null and seen_to_at is null",
            new { bookingId, at }
        ) == 1;
}
