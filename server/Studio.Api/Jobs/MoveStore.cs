using NodaTime;
using Studio.Api.Data;

namespace Studio.Api.Jobs;

/// <summary>A suggested move as it stands in the table.</summary>
public sealed record MoveRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>For whom.</summary>
    public long ClientId { get; init; }

    /// <summary>What she likes to be called.</summary>
    public string Called { get; init; } = "";

    /// <summary>Her name.</summary>
    public string Name { get; init; } = "";

    /// <summary>Code of the stage she crosses into.</summary>
    public string ToStage { get; init; } = "";

    /// <summary>On which day.</summary>
    public LocalDate CrossesOn { get; init; }

    /// <summary>When it was suggested.</summary>
    public Instant MadeAt { get; init; }
}

/// <summary>One booking of a suggested move.</summary>
public sealed record MoveStepRow
{
    /// <summary>The move.</summary>
    public long MoveId { get; init; }

    /// <summary>The booking that falls behind the line.</summary>
    public long BookingId { get; init; }

    /// <summary>Its session.</summary>
    public long FromSessionId { get; init; }

    /// <summary>Where it may go; null when nothing was found.</summary>
    public long? ToSessionId { get; init; }
}

/// <summary>Suggested moves.</summary>
public static class MoveStore
{
    /// <summary>Open moves, of one client or of everybody; those who cross first come first.</summary>
    public static Task<List<MoveRow>> OpenAsync(
        Read read,
        long? clientId = null,
        long? id = null
    ) =>
        read.ListAsync<MoveRow>(
            """
            select m.id, m.client_id as ClientId, c.called, c.name, m.to_stage as ToStage, m.crosses_on as CrossesOn,
                   m.made_at as MadeAt
              from moves m join clients c on c.id = m.client_id
              left join pregnancies p on p.client_id = c.id and p.is_current = 1
             where m.status = 'open' and p.ended_on is null and (@clientId is null or m.client_id = @clientId) and (@id is null or m.id = @id)
             order by m.crosses_on, m.id
            """,
            new { clientId, id }
        );

    /// <summary>The steps of these moves, in the order of their bookings.</summary>
    public static Task<List<MoveStepRow>> StepsAsync(
        Read read,
        IReadOnlyCollection<long> moveIds
    ) =>
        read.ListAsync<MoveStepRow>(
            """
            select t.move_id as MoveId, t.booking_id as BookingId, b.session_id as FromSessionId,
                   t.to_session_id as ToSessionId
              from move_steps t
              join bookings b on b.id = t.booking_id
              join sessions s on s.id = b.session_id
             where t.move_id in @moveIds
             order by s.starts_at, t.booking_id
            """,
            new { moveIds }
        );

    /// <summary>Booking and session pairs that were declined and are not suggested again.</summary>
    public static Task<List<MoveStepRow>> DeclinedAsync(Read read) =>
        read.ListAsync<MoveStepRow>(
            """
            select t.move_id as MoveId, t.booking_id as BookingId, b.session_id as FromSessionId,
                   t.to_session_id as ToSessionId
              from move_steps t
              join moves m on m.id = t.move_id
              join bookings b on b.id = t.booking_id
             where m.status = 'declined' and b.status = 'booked' and t.to_session_id is not null
            """
        );

    /// <summary>Suggests a move.</summary>
    public static async Task<long> SuggestAsync(
        Write write,
        long clientId,
        string toStage,
        LocalDate crossesOn,
        IEnumerable<(long BookingId, long? ToSessionId)> steps,
        Instant at
    )
    {
        var id = await write.InsertAsync(
            """
            insert into moves (client_id, to_stage, crosses_on, status, made_at)
            values (@clientId, @toStage, @crossesOn, 'open', @at)
            """,
            new
            {
                clientId,
                toStage,
                crossesOn,
                at,
            }
        );
        foreach (var (bookingId, toSessionId) in steps)
            await write.ExecuteAsync(
                "insert into move_steps (move_id, booking_id, to_session_id) values (@id, @bookingId, @toSessionId)",
                new
                {
                    id,
                    bookingId,
                    toSessionId,
                }
            );
        return id;
    }

    /// <summary>Closes a move: accepted, declined or lapsed; false when it was closed already.</summary>
    public static async Task<bool> CloseAsync(
        Write write,
        long id,
        string how,
        Instant at,
        long? by,
        string? reason = null
    ) =>
        await write.ExecuteAsync(
            """
            update moves set status = @how, decided_at = @at, decided_by = @by, reason = @reason
             where id = @id and status = 'open'
            """,
            new
            {
                id,
                how,
                at,
                by,
                reason,
            }
        ) == 1;

    /// <summary>Closes open moves from or into sessions that are not where they were when it was suggested.</summary>
    public static async Task LapseForAsync(
        Write write,
        IReadOnlyCollection<long> sessions,
        Instant at
    )
    {
        var lapsed = await write.ExecuteAsync(
            """
            update moves set status = 'lapsed', decided_at = @at
             where status = 'open'
               and id in (select t.move_id from move_steps t join bookings b on b.id = t.booking_id
                           where t.to_session_id in @sessions or b.session_id in @sessions)
            """,
            new { sessions, at }
        );
        if (lapsed > 0)
            write.Tell("moves");
    }

    /// <summary>Closes the open move a booking belongs to: what it suggested can no longer be accepted as a whole.</summary>
    public static async Task LapseAsync(Write write, long bookingId, Instant at)
    {
        var lapsed = await write.ExecuteAsync(
            """
            update moves set status = 'lapsed', decided_at = @at
             where status = 'open' and id in (select move_id from move_steps where booking_id = @bookingId)
            """,
            new { bookingId, at }
        );
        if (lapsed > 0)
            write.Tell("moves");
    }
}
