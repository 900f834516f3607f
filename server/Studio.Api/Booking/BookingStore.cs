using NodaTime;
using Studio.Api.Data;

namespace Studio.Api.Booking;

/// <summary>A booking's state.</summary>
public enum BookingStatus
{
    /// <summary>She has a seat.</summary>
    Booked,

    /// <summary>She has a place on the waitlist.</summary>
    Waiting,

    /// <summary>Cancelled by her or the desk.</summary>
    Cancelled,

    /// <summary>Let go without charge: birth, or the end of a pregnancy.</summary>
    Released,

    /// <summary>Given up for a seat in another session in the same transaction.</summary>
    Moved,
}

/// <summary>Why a change of the timetable let a seat or place go.</summary>
public enum LetGo
{
    /// <summary>It stays.</summary>
    No,

    /// <summary>The session is not held.</summary>
    CalledOff,

    /// <summary>The session was moved onto another seat of hers.</summary>
    Overlap,
}

/// <summary>A booking as it stands in the table.</summary>
public sealed record BookingRow
{
    /// <summary>Key; also the order of the waitlist.</summary>
    public long Id { get; init; }

    /// <summary>Session.</summary>
    public long SessionId { get; init; }

    /// <summary>Client.</summary>
    public long ClientId { get; init; }

    /// <summary>State.</summary>
    public BookingStatus Status { get; init; }

    /// <summary>Checked in at.</summary>
    public Instant? CheckedInAt { get; init; }

    /// <summary>When she said at the door that all was well; null when she was not asked.</summary>
    public Instant? WellAt { get; init; }

    /// <summary>What she likes to be called.</summary>
    public string Called { get; init; } = "";

    /// <summary>Her name.</summary>
    public string Name { get; init; } = "";
}

/// <summary>Seats and waitlists.</summary>
public static class BookingStore
{
    private const string Select = """
        select b.id, b.session_id as SessionId, b.client_id as ClientId, b.status, b.checked_in_at as CheckedInAt,
               b.well_at as WellAt,
               c.called, c.name
          from bookings b join clients c on c.id = b.client_id
        """;

    /// <summary>One booking.</summary>
    public static Task<BookingRow?> FindAsync(Read read, long id) =>
        read.FindAsync<BookingRow>($"{Select} where b.id = @id", new { id });

    /// <summary>
    /// Seats and waitlist places in these sessions, in the order they were made; not the seats in past sessions that
    /// belong to nobody any more.
    /// </summary>
    public static Task<List<BookingRow>> InAsync(Read read, IReadOnlyCollection<long> sessionIds) =>
        read.ListAsync<BookingRow>(
            $"""
            {Select}
             where b.session_id in @sessionIds and b.status in ('booked', 'waiting') and c.erased_at is null
             order by b.id
            """,
            new { sessionIds }
        );

    /// <summary>A client's seats and waitlist places.</summary>
    public static Task<List<BookingRow>> OfAsync(Read read, long clientId) =>
        read.ListAsync<BookingRow>(
            $"{Select} where b.client_id = @clientId and b.status in ('booked', 'waiting') order by b.id",
            new { clientId }
        );

    /// <summary>Sessions still to come in which a seat or place of hers was let go since a moment, in the order of time.</summary>
    public static Task<List<long>> ReleasedAsync(
        Read read,
        long clientId,
        Instant since,
        Instant now
    ) =>
        read.ListAsync<long>(
            """
            select distinct s.id from bookings b join sessions s on s.id = b.session_id
             where b.client_id = @clientId and b.status = 'released' and b.ended_at >= @since
               and s.status = 'open' and s.starts_at > @now
             order by s.starts_at, s.id
            """,
            new
            {
                clientId,
                since,
                now,
            }
        );

    /// <summary>Whether she has a seat in a session that is not over.</summary>
    public static async Task<bool> HasSeatAheadAsync(Read read, long clientId, Instant now) =>
        await read.ValueAsync<long>(
            """
            select count(*) from bookings b join sessions s on s.id = b.session_id
             where b.client_id = @clientId and b.status = 'booked' and s.status = 'open' and s.ends_at > @now
            """,
            new { clientId, now }
        ) > 0;

    /// <summary>Her seats that overlap a time.</summary>
    public static Task<List<long>> OverlappingAsync(
        Read read,
        long clientId,
        Instant from,
        Instant to,
        long exceptSession
    ) =>
        read.ListAsync<long>(
            """
            select s.id from bookings b join sessions s on s.id = b.session_id
             where b.client_id = @clientId and b.status = 'booked' and s.id <> @exceptSession
               and s.starts_at < @to and s.ends_at > @from
            """,
            new
            {
                clientId,
                from,
                to,
                exceptSession,
            }
        );

    /// <summary>Takes a seat, or the next place on the waitlist when there is none: one statement decides.</summary>
    public static async Task<BookingRow> TakeAsync(
        Write write,
        long sessionId,
        long clientId,
        Instant at,
        long? by,
        Instant heldSince
    )
    {
        var id = await write.InsertAsync(
            $"""
            insert into bookings (session_id, client_id, status, made_at, made_by)
            select s.id, @clientId,
                   case when s.seats_taken + {Held(
                "s.id",
                "@clientId"
            )} < s.seats then 'booked' else 'waiting' end, @at, @by
              from sessions s where s.id = @sessionId
            """,
            new
            {
                sessionId,
                clientId,
                at,
                by,
                heldSince,
            }
        );
        return (await FindAsync(write, id))!;
    }

    /// <summary>Takes a seat in a session that has one; the booking, or null when it has none left.</summary>
    public static Task<long?> TakeSeatAsync(
        Write write,
        long sessionId,
        long clientId,
        Instant at,
        long? by
    ) =>
        write.FindAsync<long?>(
            """
            insert into bookings (session_id, client_id, status, made_at, made_by)
            select s.id, @clientId, 'booked', @at, @by
              from sessions s where s.id = @sessionId and s.seats_taken < s.seats and s.status = 'open'
            returning id
            """,
            new
            {
                sessionId,
                clientId,
                at,
                by,
            }
        );

    /// <summary>Ends a seat or place; false when it had ended already.</summary>
    public static async Task<bool> EndAsync(
        Write write,
        long id,
        BookingStatus how,
        Instant at,
        long? by
    ) =>
        await write.ExecuteAsync(
            """
            update bookings set status = @how, ended_at = @at, ended_by = @by, checked_in_at = null, well_at = null
             where id = @id and status in ('booked', 'waiting')
            """,
            new
            {
                id,
                how = how.OnTheWire(),
                at,
                by,
            }
        ) == 1;

    /// <summary>Ends a seat or place because the timetable changed, at no charge.</summary>
    public static async Task LetGoAsync(Write write, long id, LetGo why, Instant at, long? by)
    {
        if (await EndAsync(write, id, BookingStatus.Released, at, by))
            await write.ExecuteAsync(
                "update bookings set let_go = @why where id = @id",
                new
                {
                    id,
                    why = System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(why.ToString()),
                }
            );
    }

    /// <summary>All seats of these clients, whenever they are.</summary>
    public static Task<List<BookingRow>> SeatsOfAsync(
        Read read,
        IReadOnlyCollection<long> clientIds
    ) =>
        read.ListAsync<BookingRow>(
            $"{Select} where b.client_id in @clientIds and b.status = 'booked' order by b.id",
            new { clientIds }
        );

    /// <summary>Gives a waiting client the seat that is free; false when none is, or she waits no longer.</summary>
    public static async Task<bool> PromoteAsync(
        Write write,
        long id,
        Instant at,
        Instant heldSince
    ) =>
        await write.ExecuteAsync(
            $"""
            update bookings set status = 'booked', promoted_at = @at
             where id = @id and status = 'waiting'
               and exists (select 1 from sessions s
                            where s.id = bookings.session_id and s.status = 'open'
                              and s.seats_taken + {Held("s.id", "bookings.client_id")} < s.seats)
            """,
            new
            {
                id,
                at,
                heldSince,
            }
        ) == 1;

    /// <summary>How many seats of each session are kept for others than this client, by moves suggested since a moment.</summary>
    public static async Task<Dictionary<long, int>> HeldAsync(
        Read read,
        long clientId,
        Instant heldSince
    ) =>
        (
            await read.ListAsync<HeldRow>(
                $"""
                select s.id as SessionId, {Held("s.id", "@clientId")} as Seats
                  from sessions s
                 where s.id in (select t.to_session_id from move_steps t join moves m on m.id = t.move_id
                                 where m.status = 'open')
                """,
                new { clientId, heldSince }
            )
        ).ToDictionary(h => h.SessionId, h => h.Seats);

    // Seats of a session that open suggestions made since a moment keep for others.
    private static string Held(string sessionId, string exceptFor) =>
        $"""
            (select count(*) from move_steps t
               join moves m on m.id = t.move_id
               join bookings o on o.id = t.booking_id
              where t.to_session_id = {sessionId} and m.status = 'open' and o.status = 'booked'
                and m.client_id <> {exceptFor} and m.made_at > @heldSince)
            """;

    private sealed record HeldRow
    {
        public long SessionId { get; init; }
        public int Seats { get; init; }
    }

    /// <summary>Her place on the waitlist, from 1.</summary>
    public static Task<int> PlaceAsync(Read read, BookingRow booking) =>
        read.ValueAsync<int>(
            """
            select count(*) from bookings
             where session_id = @SessionId and status = 'waiting' and id <= @Id
            """,
            booking
        );

    /// <summary>Checks her in, with what she said of herself; false when she has no seat. The first moment stays.</summary>
    /// <param name="write">The transaction.</param>
    /// <param name="id">Her booking.</param>
    /// <param name="at">Now.</param>
    /// <param name="well">She was asked, and said that all was well; false when she was not asked.</param>
    public static async Task<bool> CheckInAsync(Write write, long id, Instant at, bool well) =>
        await write.ExecuteAsync(
            """
            update bookings set checked_in_at = coalesce(checked_in_at, @at),
                   well_at = case when @well then coalesce(well_at, @at) end
             where id = @id and status = 'booked'
            """,
            new
            {
                id,
                at,
                well,
            }
        ) == 1;

    /// <summary>Takes a check-in back, and what she said with it; false when she has no seat.</summary>
    public static async Task<bool> UndoCheckInAsync(Write write, long id) =>
        await write.ExecuteAsync(
            """
            update bookings set checked_in_at = null, well_at = null
             where id = @id and status = 'booked'
            """,
            new { id }
        ) == 1;

    /// <summary>A warning sign was raised: what she said at the door that day no longer stands.</summary>
    public static Task NoLongerWellAsync(Write write, long clientId, LocalDate today) =>
        write.ExecuteAsync(
            """
            update bookings set well_at = null
             where client_id = @clientId and well_at is not null
               and session_id in (select id from sessions where on_date >= @today)
            """,
            new { clientId, today }
        );

    /// <summary>"booked", "waiting" and so on.</summary>
    public static string OnTheWire(this BookingStatus status) =>
        System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(status.ToString());
}
