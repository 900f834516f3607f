using System.Text.Json;
using NodaTime;
using Studio.Api.Data;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>A message with whom it is for, as it stands in the tables.</summary>
public sealed record MessageRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>What it is about, by its name in the table.</summary>
    public string KindName { get; init; } = "";

    /// <summary>To this client.</summary>
    public long? ClientId { get; init; }

    /// <summary>Or to this instructor.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Or to whoever holds this account.</summary>
    public long? AccountId { get; init; }

    /// <summary>The session it speaks of.</summary>
    public long? SessionId { get; init; }

    /// <summary>What it names, as JSON.</summary>
    public string FactsJson { get; init; } = "{}";

    /// <summary>When it was put.</summary>
    public Instant MadeAt { get; init; }

    /// <summary>Not before this moment.</summary>
    public Instant NotBefore { get; init; }

    /// <summary>How far it has come.</summary>
    public MessageStatus Status { get; init; }

    /// <summary>How often it was tried.</summary>
    public int Attempts { get; init; }

    /// <summary>How often the answer never came.</summary>
    public int Unanswered { get; init; }

    /// <summary>When it was tried last.</summary>
    public Instant? TriedAt { get; init; }

    /// <summary>When its end came.</summary>
    public Instant? EndedAt { get; init; }

    /// <summary>What was answered last.</summary>
    public string? LastAnswer { get; init; }

    /// <summary>Why it waits although nothing went wrong.</summary>
    public HeldBack? HeldBack { get; init; }

    /// <summary>Its Message-ID.</summary>
    public string MessageId { get; init; } = "";

    /// <summary>Name of whom it is for.</summary>
    public string Name { get; init; } = "";

    /// <summary>What she likes to be called.</summary>
    public string Called { get; init; } = "";

    /// <summary>Her e-mail address; empty when none is known.</summary>
    public string Address { get; init; } = "";

    /// <summary>The zone of the place she usually comes to.</summary>
    public string Zone { get; init; } = "";

    /// <summary>She has an account, and so a page of her own.</summary>
    public bool HasPage { get; init; }

    /// <summary>After a loss, or erased: nothing is sent.</summary>
    public bool Gone { get; init; }

    /// <summary>She said that she does without this kind.</summary>
    public bool Unwanted { get; init; }

    /// <summary>She has a seat or place in its session.</summary>
    public bool HasPlace { get; init; }

    /// <summary>A suggestion for her stands.</summary>
    public bool HasMove { get; init; }

    /// <summary>Its session is held.</summary>
    public bool IsHeld { get; init; }

    /// <summary>When its session starts.</summary>
    public Instant? StartsAt { get; init; }

    /// <summary>What it is about.</summary>
    /// <exception cref="InvalidOperationException">The table holds a kind this program does not know.</exception>
    public MessageKind Kind =>
        MessageKinds.Find(KindName)
        ?? throw new InvalidOperationException($"There is no kind of message '{KindName}'.");

    /// <summary>What it names.</summary>
    public IReadOnlyDictionary<string, string> Facts =>
        JsonSerializer.Deserialize<Dictionary<string, string>>(FactsJson)!;
}

/// <summary>Which messages; every part that is set must hold.</summary>
public sealed record MessagesWanted
{
    /// <summary>How far they have come.</summary>
    public MessageStatus? Status { get; init; }

    /// <summary>What they are about.</summary>
    public MessageKind? Kind { get; init; }

    /// <summary>Part of a name or address of whom they are for.</summary>
    public string? Find { get; init; }

    /// <summary>To this client.</summary>
    public long? ClientId { get; init; }

    /// <summary>To this instructor.</summary>
    public long? InstructorId { get; init; }

    /// <summary>To whoever holds this account.</summary>
    public long? AccountId { get; init; }

    /// <summary>Older than this one.</summary>
    public long? Before { get; init; }

    /// <summary>How many at the most.</summary>
    public int Most { get; init; } = 50;
}

/// <summary>How many messages wait, and how many could not be delivered.</summary>
public sealed record MessageCounts
{
    /// <summary>Still to be sent.</summary>
    public int Waiting { get; init; }

    /// <summary>Of those, tried and not through.</summary>
    public int Stuck { get; init; }

    /// <summary>Not delivered.</summary>
    public int Failed { get; init; }
}

/// <summary>Messages and what is not wanted.</summary>
public static class MessageStore
{
    private const string Select = """
        select m.id, m.kind as KindName, m.client_id as ClientId, m.instructor_id as InstructorId,
               m.account_id as AccountId, m.session_id as SessionId, m.facts as FactsJson, m.made_at as MadeAt,
               m.not_before as NotBefore, m.status, m.attempts, m.unanswered, m.tried_at as TriedAt,
               m.ended_at as EndedAt, m.last_answer as LastAnswer, m.held_back as HeldBack, m.message_id as MessageId,
               coalesce(c.name, i.name, a.name) as Name, coalesce(c.called, i.called, a.name) as Called,
               coalesce(c.email, i.email, a.email) as Address,
               coalesce(h.zone, l.zone, (select zone from locations order by id limit 1), 'UTC') as Zone,
               coalesce(c.account_id, i.account_id, a.id) is not null as HasPage,
               c.erased_at is not null
                   or exists (select 1 from pregnancies p
                               where p.client_id = c.id and p.is_current = 1 and p.ended_on is not null) as Gone,
               exists (select 1 from unwanted_messages u
                        where u.kind = m.kind and (u.client_id = m.client_id or u.instructor_id = m.instructor_id)) as Unwanted,
               exists (select 1 from bookings b
                        where b.client_id = m.client_id and b.session_id = m.session_id
                          and (b.status = case m.kind when 'waitlistPlace' then 'waiting' else 'booked' end
                               or m.kind = 'sessionChanged' and b.status = 'waiting')) as HasPlace,
               exists (select 1 from moves v where v.client_id = m.client_id and v.status = 'open') as HasMove,
               coalesce(s.status = 'open', 0) as IsHeld, s.starts_at as StartsAt
          from messages m
          left join clients c on c.id = m.client_id
          left join locations h on h.id = c.home_location_id
          left join instructors i on i.id = m.instructor_id
          left join accounts a on a.id = m.account_id
          left join sessions s on s.id = m.session_id
          left join rooms r on r.id = s.room_id
          left join locations l on l.id = r.location_id
        """;

    /// <summary>One message.</summary>
    public static Task<MessageRow?> FindAsync(Read read, long id) =>
        read.FindAsync<MessageRow>($"{Select} where m.id = @id", new { id });

    /// <summary>Messages, the newest first.</summary>
    public static Task<List<MessageRow>> ListAsync(Read read, MessagesWanted wanted) =>
        read.ListAsync<MessageRow>(
            $"""
            {Select}
             where (@status is null or m.status = @status) and (@kind is null or m.kind = @kind)
               and (@find is null or instr(lower(coalesce(c.name, i.name, a.name)), @find) > 0
                    or instr(lower(coalesce(c.email, i.email, a.email)), @find) > 0)
               and (@ClientId is null and @InstructorId is null and @AccountId is null
                    or m.client_id = @ClientId or m.instructor_id = @InstructorId or m.account_id = @AccountId)
               and (@Before is null or m.id < @Before)
             order by m.id desc limit @Most
            """,
            new
            {
                status = wanted.Status?.OnTheWire(),
                kind = wanted.Kind?.OnTheWire(),
                find = wanted.Find?.Trim().ToLowerInvariant(),
                wanted.ClientId,
                wanted.InstructorId,
                wanted.AccountId,
                wanted.Before,
                wanted.Most,
            }
        );

    /// <summary>How many wait, and how many could not be delivered.</summary>
    public static async Task<MessageCounts> CountsAsync(Read read) =>
        (
            await read.FindAsync<MessageCounts>(
                """
                select coalesce(sum(status = 'waiting'), 0) as Waiting,
                       coalesce(sum(status = 'waiting' and attempts > 0), 0) as Stuck,
                       coalesce(sum(status = 'refused'), 0) as Failed
                  from messages where status in ('waiting', 'refused')
                """
            )
        )!;

    /// <summary>What is due, those that have waited longest first.</summary>
    public static Task<List<long>> DueAsync(Read read, Instant now, int most) =>
        read.ListAsync<long>(
            """
            select id from messages
             where status = 'waiting' and claimed_at is null and not_before <= @now
             order by not_before, id limit @most
            """,
            new { now, most }
        );

    /// <summary>When the person of a message was sent something within the last day, the newest first.</summary>
    public static Task<List<Instant>> SentLatelyAsync(Read read, MessageRow row, Instant now) =>
        read.ListAsync<Instant>(
            """
            select ended_at from messages
             where status = 'sent' and ended_at > @since
               and (client_id = @ClientId or instructor_id = @InstructorId or account_id = @AccountId)
             order by ended_at desc
            """,
            new
            {
                since = now - Duration.FromDays(1),
                row.ClientId,
                row.InstructorId,
                row.AccountId,
            }
        );

    /// <summary>Claims a message for one try; false when it is somebody else's by now, or waits no longer.</summary>
    public static async Task<bool> ClaimAsync(Write write, long id, Instant now) =>
        await write.ExecuteAsync(
            """
            update messages set claimed_at = @now, tried_at = @now, attempts = attempts + 1, held_back = null
             where id = @id and status = 'waiting' and claimed_at is null
            """,
            new { id, now }
        ) == 1;

    /// <summary>
    /// Messages whose answer never came: the program stopped between the claim and the record. Their keys.
    /// </summary>
    public static Task<List<long>> LeftClaimedAsync(Read read) =>
        read.ListAsync<long>(
            "select id from messages where status = 'waiting' and claimed_at is not null order by id"
        );

    /// <summary>It waits, though nothing went wrong.</summary>
    public static Task HoldBackAsync(Write write, long id, Instant until, HeldBack why) =>
        write.ExecuteAsync(
            """
            update messages set not_before = @until, held_back = @why
             where id = @id and status = 'waiting' and claimed_at is null
            """,
            new
            {
                id,
                until,
                why = JsonNamingPolicy.CamelCase.ConvertName(why.ToString()),
            }
        );

    /// <summary>It failed for now, and is tried again.</summary>
    public static Task AgainAsync(
        Write write,
        long id,
        Instant at,
        int unanswered,
        string answer
    ) =>
        write.ExecuteAsync(
            """
            update messages set claimed_at = null, not_before = @at, unanswered = @unanswered, last_answer = @answer
             where id = @id and status = 'waiting'
            """,
            new
            {
                id,
                at,
                unanswered,
                answer,
            }
        );

    /// <summary>A try that came to nothing because the server could not be reached.</summary>
    public static Task NotReachedAsync(Write write, long id, Instant now) =>
        write.ExecuteAsync(
            """
            update messages set tried_at = @now, attempts = attempts + 1, held_back = null
             where id = @id and status = 'waiting' and claimed_at is null
            """,
            new { id, now }
        );

    /// <summary>It ends here.</summary>
    public static async Task<bool> EndAsync(
        Write write,
        long id,
        MessageStatus how,
        string answer,
        Instant now
    ) =>
        await write.ExecuteAsync(
            """
            update messages set status = @how, ended_at = @now, claimed_at = null, held_back = null, last_answer = @answer
             where id = @id and status = 'waiting'
            """,
            new
            {
                id,
                how = how.OnTheWire(),
                answer,
                now,
            }
        ) == 1;

    /// <summary>Once more and at once: one that waits, or one that could not be delivered; false for any other.</summary>
    public static async Task<bool> RetryAsync(Write write, long id, Instant now) =>
        await write.ExecuteAsync(
            """
            update messages
               set status = 'waiting', ended_at = null, held_back = null, not_before = @now, unanswered = 0
             where id = @id and status in ('waiting', 'refused') and claimed_at is null
            """,
            new { id, now }
        ) == 1;

    /// <summary>All that were tried and are not through, at once; how many.</summary>
    public static Task<int> RetryStuckAsync(Write write, Instant now) =>
        write.ExecuteAsync(
            """
            update messages set not_before = @now
             where status = 'waiting' and attempts > 0 and claimed_at is null and not_before > @now
            """,
            new { now }
        );

    /// <summary>
    /// Drops what waits for a client: all of it, or these kinds. One that is with the mail server this moment is past
    /// being held back.
    /// </summary>
    public static async Task DropAsync(
        Write write,
        long clientId,
        Instant now,
        Func<MessageKind, bool>? which = null
    )
    {
        await write.ExecuteAsync(
            """
            update messages
               set status = 'dropped', ended_at = @now, claimed_at = null, held_back = null,
                   last_answer = 'It was no longer true when its turn came.'
             where client_id = @clientId and status = 'waiting' and kind in @kinds
            """,
            new
            {
                clientId,
                now,
                kinds = MessageKinds
                    .All.Where(k => which is null || which(k))
                    .Select(k => k.OnTheWire()),
            }
        );
    }

    /// <summary>Names of her messages' files, to be taken away with an erasure.</summary>
    public static Task<List<string>> MessageIdsAsync(Read read, long clientId) =>
        read.ListAsync<string>(
            """
            select m.message_id from messages m
             where m.client_id = @clientId
                or m.account_id = (select account_id from clients where id = @clientId)
            """,
            new { clientId }
        );

    /// <summary>The kinds somebody does without.</summary>
    public static async Task<HashSet<MessageKind>> UnwantedAsync(
        Read read,
        long? clientId,
        long? instructorId
    ) =>
        [
            .. (
                await read.ListAsync<string>(
                    "select kind from unwanted_messages where client_id = @clientId or instructor_id = @instructorId",
                    new { clientId, instructorId }
                )
            )
                .Select(MessageKinds.Find)
                .OfType<MessageKind>(),
        ];

    /// <summary>She does without a kind, or wants it again.</summary>
    public static Task WantAsync(
        Write write,
        Stopping what,
        bool wanted,
        bool byLink,
        Instant now
    ) =>
        write.ExecuteAsync(
            wanted
                ? """
                delete from unwanted_messages
                 where kind = @kind and (client_id = @ClientId or instructor_id = @InstructorId)
                """
                : """
                insert into unwanted_messages (client_id, instructor_id, kind, since, by_link)
                values (@ClientId, @InstructorId, @kind, @now, @byLink)
                on conflict do nothing
                """,
            new
            {
                what.ClientId,
                what.InstructorId,
                kind = what.Kind.OnTheWire(),
                now,
                byLink,
            }
        );

    /// <summary>"waiting", "sent" and so on.</summary>
    public static string OnTheWire(this MessageStatus status) =>
        JsonNamingPolicy.CamelCase.ConvertName(status.ToString());
}
