using System.Text.Json;
using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Feeds;

namespace Studio.Api.Feeds;

/// <summary>A calendar address as it stands in the table.</summary>
public sealed record FeedRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Whose sessions it gives.</summary>
    public FeedReads Reads { get; init; }

    /// <summary>The client's calendar names the class.</summary>
    public bool NamesClass { get; init; }

    /// <summary>When it was made.</summary>
    public Instant MadeAt { get; init; }

    /// <summary>The instructor it belongs to.</summary>
    public long? InstructorId { get; init; }

    /// <summary>The client it belongs to.</summary>
    public long? ClientId { get; init; }
}

/// <summary>A session as a calendar needs it.</summary>
public record FeedSession
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Name of the class.</summary>
    public string ClassName { get; init; } = "";

    /// <summary>Name of the room.</summary>
    public string RoomName { get; init; } = "";

    /// <summary>Name of the location.</summary>
    public string LocationName { get; init; } = "";

    /// <summary>The location's zone.</summary>
    public string Zone { get; init; } = "";

    /// <summary>Start.</summary>
    public Instant StartsAt { get; init; }

    /// <summary>End.</summary>
    public Instant EndsAt { get; init; }

    /// <summary>Whether it is held.</summary>
    public SessionStatus Status { get; init; }

    /// <summary>How often it changed.</summary>
    public int Changes { get; init; }

    /// <summary>When it last changed.</summary>
    public Instant ChangedAt { get; init; }

    /// <summary>The last time somebody in it booked.</summary>
    public Instant? LastMadeAt { get; init; }

    /// <summary>The last time somebody came up from the waitlist.</summary>
    public Instant? LastPromotedAt { get; init; }

    /// <summary>The last time a place ended.</summary>
    public Instant? LastEndedAt { get; init; }

    /// <summary>When the session or a place in it last changed.</summary>
    public Instant Latest =>
        new[] { LastMadeAt, LastPromotedAt, LastEndedAt }.OfType<Instant>().Append(ChangedAt).Max();
}

/// <summary>A session for those who work in it: with numbers of people.</summary>
public sealed record TaughtSession : FeedSession
{
    /// <summary>Who teaches it.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Seats.</summary>
    public int Seats { get; init; }

    /// <summary>People with a seat.</summary>
    public int Booked { get; init; }

    /// <summary>People waiting.</summary>
    public int Waiting { get; init; }
}

/// <summary>A session for a client: with her own place in it.</summary>
public sealed record ClientSession : FeedSession
{
    /// <summary>Her newest place in it.</summary>
    public BookingStatus Place { get; init; }

    /// <summary>When that ended.</summary>
    public Instant? EndedAt { get; init; }

    /// <summary>How many places she has had in it.</summary>
    public int Times { get; init; }

    /// <summary>How many of them came up from the waitlist.</summary>
    public int Promoted { get; init; }

    /// <summary>How many of them ended.</summary>
    public int Ended { get; init; }
}

/// <summary>Calendar addresses, and what is read through them.</summary>
public static class FeedStore
{
    private const string Select = """
        select f.id, f.reads, f.names_class as NamesClass, f.made_at as MadeAt,
               i.id as InstructorId, c.id as ClientId
          from feeds f
          join accounts a on a.id = f.account_id and a.closed_at is null
          join account_roles r on r.account_id = a.id and r.role = f.reads
          left join instructors i on i.account_id = a.id
          left join clients c on c.account_id = a.id and c.erased_at is null
         where f.revoked_at is null
        """;

    /// <summary>The address with this digest; null when there is none, none any more, or its owner is that no more.</summary>
    public static Task<FeedRow?> FindAsync(Read read, string digest) =>
        read.FindAsync<FeedRow>($"{Select} and f.token_digest = @digest", new { digest });

    /// <summary>The standing addresses of an account.</summary>
    public static Task<List<FeedRow>> OfAsync(Read read, long accountId) =>
        read.ListAsync<FeedRow>(
            $"{Select} and f.account_id = @accountId order by f.id",
            new { accountId }
        );

    /// <summary>Makes an address; the one before it ends.</summary>
    public static async Task<long> MakeAsync(
        Write write,
        long accountId,
        FeedReads reads,
        bool namesClass,
        string digest,
        Instant at
    )
    {
        var feed = new
        {
            accountId,
            reads = reads.OnTheWire(),
            namesClass,
            digest,
            at,
        };
        await write.ExecuteAsync(
            """
            update feeds set revoked_at = @at
             where account_id = @accountId and reads = @reads and revoked_at is null
            """,
            feed
        );
        return await write.InsertAsync(
            """
            insert into feeds (account_id, reads, names_class, token_digest, made_at)
            values (@accountId, @reads, @namesClass, @digest, @at)
            """,
            feed
        );
    }

    /// <summary>Takes an address of an account's back; false when it has no such address.</summary>
    public static async Task<bool> RevokeAsync(Write write, long accountId, long id, Instant at) =>
        await write.ExecuteAsync(
            "update feeds set revoked_at = @at where id = @id and account_id = @accountId and revoked_at is null",
            new
            {
                accountId,
                id,
                at,
            }
        ) == 1;

    /// <summary>Chooses whether a client's calendar names the class.</summary>
    public static Task NameAsync(Write write, long id, bool namesClass) =>
        write.ExecuteAsync(
            "update feeds set names_class = @namesClass where id = @id and revoked_at is null",
            new { id, namesClass }
        );

    /// <summary>What goes into the name of every entry.</summary>
    public static Task<string> KeyAsync(Read read) =>
        read.ValueAsync<string>("select key from calendar_key");

    /// <summary>
    /// Sessions not over before a moment that an instructor teaches, or one session, whoever teaches it. Whoever is on no
    /// list any more is in no number, and nothing of hers is a change.
    /// </summary>
    public static Task<List<TaughtSession>> TaughtAsync(
        Read read,
        long? instructorId,
        Instant since,
        long? sessionId = null
    ) =>
        read.ListAsync<TaughtSession>(
            $"""
            select {Session}, s.instructor_id as InstructorId, s.seats,
                   coalesce(k.booked, 0) as Booked, coalesce(k.waiting, 0) as Waiting,
                   k.made as LastMadeAt, k.promoted as LastPromotedAt, k.ended as LastEndedAt
              from {Places}
              left join (select b.session_id,
                                sum(case when b.status = 'booked' then 1 else 0 end) as booked,
                                sum(case when b.status = 'waiting' then 1 else 0 end) as waiting,
                                max(b.made_at) as made, max(b.promoted_at) as promoted, max(b.ended_at) as ended
                           from bookings b
                           join sessions t on t.id = b.session_id
                          where (@instructorId is null or t.instructor_id = @instructorId)
                            and (@sessionId is null or t.id = @sessionId)
                            and t.ends_at > @since
                            and not exists (select 1 from pregnancies p
                                             where p.client_id = b.client_id and p.is_current = 1
                                               and p.ended_on is not null)
                          group by b.session_id) k on k.session_id = s.id
             where s.ends_at > @since
               and (@instructorId is null or s.instructor_id = @instructorId)
               and (@sessionId is null or s.id = @sessionId)
             order by s.starts_at, s.id
            """,
            new
            {
                instructorId,
                since,
                sessionId,
            }
        );

    /// <summary>Sessions not over before a moment in which a client has or had a place, or one of them.</summary>
    public static Task<List<ClientSession>> BookedAsync(
        Read read,
        long clientId,
        Instant since,
        long? sessionId = null
    ) =>
        read.ListAsync<ClientSession>(
            $"""
            select {Session}, b.status as Place, b.ended_at as EndedAt,
                   k.times, k.was_promoted as Promoted, k.was_ended as Ended,
                   k.made as LastMadeAt, k.promoted as LastPromotedAt, k.ended as LastEndedAt
              from {Places}
              join (select session_id, max(id) as newest, count(*) as times,
                           count(promoted_at) as was_promoted, count(ended_at) as was_ended,
                           max(made_at) as made, max(promoted_at) as promoted, max(ended_at) as ended
                      from bookings where client_id = @clientId
                     group by session_id) k on k.session_id = s.id
              join bookings b on b.id = k.newest
             where s.ends_at > @since and (@sessionId is null or s.id = @sessionId)
             order by s.starts_at, s.id
            """,
            new
            {
                clientId,
                since,
                sessionId,
            }
        );

    private const string Session = """
        s.id, c.name as ClassName, r.name as RoomName, l.name as LocationName, l.zone, s.starts_at as StartsAt,
        s.ends_at as EndsAt, s.status, s.changes, s.changed_at as ChangedAt
        """;

    private const string Places = """
        sessions s
              join classes c on c.id = s.class_id
              join rooms r on r.id = s.room_id
              join locations l on l.id = r.location_id
        """;

    /// <summary>"instructor", "client".</summary>
    public static string OnTheWire(this FeedReads reads) =>
        JsonNamingPolicy.CamelCase.ConvertName(reads.ToString());

    /// <summary>Whether a reader can have such an address.</summary>
    public static bool CanHave(this Reader reader, FeedReads reads) =>
        reads switch
        {
            FeedReads.Instructor => reader.InstructorId is not null
                && reader.Roles.Contains(Role.Instructor),
            FeedReads.Client => reader.ClientId is not null && reader.Roles.Contains(Role.Client),
        };
}
