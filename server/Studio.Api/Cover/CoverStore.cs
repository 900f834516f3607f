using NodaTime;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core.Cover;
using Studio.Core.Timetable;

namespace Studio.Api.Cover;

/// <summary>A request for cover that nobody has settled.</summary>
public sealed record CoverRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>The session.</summary>
    public long SessionId { get; init; }

    /// <summary>Who cannot teach it; null when nobody was to.</summary>
    public long? InsteadOf { get; init; }

    /// <summary>Her name.</summary>
    public string? InsteadOfName { get; init; }

    /// <summary>When it was asked.</summary>
    public Instant AskedAt { get; init; }
}

/// <summary>Requests for cover and what is answered to them.</summary>
public static class CoverStore
{
    /// <summary>
    /// Closes what is no longer open: the session began or is not held (lapsed), or somebody else teaches it by now,
    /// whichever way that came about (covered). Run again it changes nothing.
    /// </summary>
    public static Task<int> TidyAsync(Write write, Instant now) =>
        write.ExecuteAsync(
            """
            update cover_requests
               set status = case when s.status = 'open' and s.instructor_id is not cover_requests.instructor_id
                                      and s.instructor_id is not null then 'covered' else 'lapsed' end,
                   covered_by = case when s.status = 'open' and s.instructor_id is not cover_requests.instructor_id
                                     then s.instructor_id end,
                   settled_at = @now
              from sessions s
             where cover_requests.status = 'open' and s.id = cover_requests.session_id
               and (s.status <> 'open' or s.starts_at <= @now
                    or (s.instructor_id is not null and s.instructor_id is not cover_requests.instructor_id))
            """,
            new { now }
        );

    /// <summary>Requests that are open, of sessions that have not begun, the soonest first.</summary>
    public static Task<List<CoverRow>> OpenAsync(Read read, Instant now) =>
        read.ListAsync<CoverRow>(
            """
            select c.id, c.session_id as SessionId, c.instructor_id as InsteadOf, i.name as InsteadOfName,
                   c.asked_at as AskedAt
              from cover_requests c
              join sessions s on s.id = c.session_id
              left join instructors i on i.id = c.instructor_id
             where c.status = 'open' and s.status = 'open' and s.starts_at > @now
               and (s.instructor_id is null or s.instructor_id is c.instructor_id)
             order by s.starts_at, s.id
            """,
            new { now }
        );

    /// <summary>Sessions to come that nobody teaches and that begin by then.</summary>
    public static Task<List<long>> WithNobodyAsync(Read read, Instant now, Instant until) =>
        read.ListAsync<long>(
            """
            select id from sessions
             where status = 'open' and instructor_id is null and starts_at > @now and starts_at <= @until
             order by starts_at, id
            """,
            new { now, until }
        );

    /// <summary>Sessions of hers on these dates that are still to come and for which no cover is asked.</summary>
    public static Task<List<long>> OfHersAsync(
        Read read,
        long instructorId,
        LocalDate from,
        LocalDate to,
        Instant now
    ) =>
        read.ListAsync<long>(
            """
            select s.id from sessions s
             where s.instructor_id = @instructorId and s.status = 'open' and s.starts_at > @now
               and s.on_date between @from and @to
               and not exists (select 1 from cover_requests c where c.session_id = s.id and c.status = 'open')
             order by s.starts_at, s.id
            """,
            new
            {
                instructorId,
                from,
                to,
                now,
            }
        );

    /// <summary>Asks for cover of a session; the request's id.</summary>
    public static Task<long> AskAsync(Write write, SessionRow session, Instant now, long? by) =>
        write.InsertAsync(
            """
            insert into cover_requests (session_id, instructor_id, asked_at, asked_by)
            values (@Id, @InstructorId, @now, @by)
            """,
            new
            {
                session.Id,
                session.InstructorId,
                now,
                by,
            }
        );

    /// <summary>Takes an open request back.</summary>
    public static Task WithdrawAsync(Write write, long requestId, Instant now, long by) =>
        write.ExecuteAsync(
            """
            update cover_requests set status = 'withdrawn', settled_at = @now, settled_by = @by
             where id = @requestId and status = 'open'
            """,
            new
            {
                requestId,
                now,
                by,
            }
        );

    /// <summary>Notes who teaches it instead.</summary>
    public static Task SettleAsync(
        Write write,
        long requestId,
        long instructorId,
        Instant now,
        long by
    ) =>
        write.ExecuteAsync(
            """
            update cover_requests
               set status = 'covered', covered_by = @instructorId, settled_at = @now, settled_by = @by
             where id = @requestId and status = 'open'
            """,
            new
            {
                requestId,
                instructorId,
                now,
                by,
            }
        );

    /// <summary>Keeps what she answered; the newest counts.</summary>
    public static Task AnswerAsync(
        Write write,
        long requestId,
        long instructorId,
        CoverAnswer answer,
        Instant now
    ) =>
        write.ExecuteAsync(
            """
            insert into cover_answers (request_id, instructor_id, answer, at)
            values (@requestId, @instructorId, @said, @now)
            on conflict (request_id, instructor_id) do update set answer = excluded.answer, at = excluded.at
            """,
            new
            {
                requestId,
                instructorId,
                said = answer == CoverAnswer.Can ? "can" : "cannot",
                now,
            }
        );

    /// <summary>Notes that she is away on these days.</summary>
    public static Task AwayAsync(
        Write write,
        long instructorId,
        LocalDate from,
        LocalDate to,
        Instant now,
        long by
    ) =>
        write.ExecuteAsync(
            """
            insert into leave (instructor_id, from_on, to_on, entered_at, entered_by)
            select @instructorId, @from, @to, @now, @by
             where not exists (select 1 from leave l
                                where l.instructor_id = @instructorId and l.withdrawn_at is null
                                  and l.from_on <= @from and l.to_on >= @to)
            """,
            new
            {
                instructorId,
                from,
                to,
                now,
                by,
            }
        );

    /// <summary>Who was asked by a message of this request.</summary>
    public static Task<List<long>> AskedAsync(Read read, long requestId) =>
        read.ListAsync<long>(
            """
            select instructor_id from messages
             where kind = 'coverAsked' and instructor_id is not null and about like @about
            union
            select instructor_id from cover_answers where request_id = @requestId
            order by 1
            """,
            new { requestId, about = $"cover {requestId} asked %" }
        );

    /// <summary>The phone of everybody who teaches.</summary>
    public static async Task<IReadOnlyDictionary<long, string>> PhonesAsync(Read read) =>
        (await read.ListAsync<PhoneRow>("select id, phone from instructors")).ToDictionary(
            p => p.Id,
            p => p.Phone
        );

    /// <summary>What ranks people for these sessions. Nobody whose pregnancy ended is in any count.</summary>
    public static async Task<Dictionary<long, CoverQuestion>> QuestionsAsync(
        Read read,
        IReadOnlyCollection<PlacedSession> sessions,
        IReadOnlyCollection<CoverRow> open,
        Instant now
    )
    {
        var since = now - Duration.FromDays(7 * CoverRanking.WeeksBack);
        var ids = sessions.Select(s => s.Key).ToList();
        var booked = (
            await read.ListAsync<CountRow>(
                $"""
                select b.session_id as Id, count(*) as Count from bookings b
                 where b.session_id in @ids and b.status = 'booked' and {Spoken}
                 group by b.session_id
                """,
                new { ids }
            )
        ).ToDictionary(c => c.Id, c => c.Count);
        var knows = (
            await read.ListAsync<CountRow>(
                $"""
                select b.session_id as Id, p.instructor_id as InstructorId, count(distinct b.client_id) as Count
                  from bookings b
                  join bookings e on e.client_id = b.client_id and e.status = 'booked'
                  join sessions p on p.id = e.session_id
                 where b.session_id in @ids and b.status = 'booked' and {Spoken}
                   and p.status = 'open' and p.instructor_id is not null
                   and p.starts_at >= @since and p.ends_at <= @now
                 group by b.session_id, p.instructor_id
                """,
                new
                {
                    ids,
                    since,
                    now,
                }
            )
        ).ToLookup(c => c.Id);
        var taught = (
            await read.ListAsync<CountRow>(
                """
                select class_id as Id, instructor_id as InstructorId, count(*) as Count from sessions
                 where status = 'open' and instructor_id is not null and starts_at >= @since and ends_at <= @now
                 group by class_id, instructor_id
                """,
                new { since, now }
            )
        ).ToLookup(c => c.Id);
        var answers = (
            await read.ListAsync<AnswerRow>(
                """
                select request_id as RequestId, instructor_id as InstructorId, answer from cover_answers
                 where request_id in @requests
                """,
                new { requests = open.Select(o => o.Id).ToList() }
            )
        ).ToLookup(a => a.RequestId);
        var asks = (
            await read.ListAsync<AsksRow>(
                """
                select c.instructor_id as InstructorId, s.on_date as "On"
                  from cover_requests c join sessions s on s.id = c.session_id
                 where c.status = 'open' and c.instructor_id is not null and s.status = 'open'
                """
            )
        ).ToLookup(a => a.On, a => a.InstructorId);
        var requests = open.ToDictionary(o => o.SessionId);
        return sessions.ToDictionary(
            s => s.Key,
            s =>
            {
                var request = requests.GetValueOrDefault(s.Key);
                return new CoverQuestion
                {
                    Session = s,
                    InsteadOf = request?.InsteadOf ?? s.InstructorId,
                    Booked = booked.GetValueOrDefault(s.Key),
                    Knows = knows[s.Key].ToDictionary(k => k.InstructorId, k => k.Count),
                    Taught = taught[s.ClassId].ToDictionary(t => t.InstructorId, t => t.Count),
                    Answers = request is null
                        ? new Dictionary<long, CoverAnswer>()
                        : answers[request.Id].ToDictionary(a => a.InstructorId, a => a.Answer),
                    AskThatDay = asks[s.On].ToHashSet(),
                };
            }
        );
    }

    /// <summary>How many sessions each took over lately.</summary>
    public static async Task<Dictionary<long, int>> CoversAsync(Read read, Instant now) =>
        (
            await read.ListAsync<CountRow>(
                """
                select covered_by as Id, count(*) as Count from cover_requests
                 where status = 'covered' and settled_at >= @since group by covered_by
                """,
                new { since = now - Duration.FromDays(7 * CoverRanking.WeeksBack) }
            )
        ).ToDictionary(c => c.Id, c => c.Count);

    private const string Spoken =
        "not exists (select 1 from pregnancies x where x.client_id = b.client_id and x.is_current = 1 and x.ended_on is not null)";

    private sealed record CountRow
    {
        public long Id { get; init; }
        public long InstructorId { get; init; }
        public int Count { get; init; }
    }

    private sealed record AnswerRow
    {
        public long RequestId { get; init; }
        public long InstructorId { get; init; }
        public CoverAnswer Answer { get; init; }
    }

    private sealed record AsksRow
    {
        public long InstructorId { get; init; }
        public LocalDate On { get; init; }
    }

    private sealed record PhoneRow
    {
        public long Id { get; init; }
        public string Phone { get; init; } = "";
    }
}
