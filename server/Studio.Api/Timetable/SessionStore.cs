using NodaTime;
using Studio.Api.Data;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>A session as it stands in the tables, with the names that go with it.</summary>
public sealed record SessionRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>The class.</summary>
    public long ClassId { get; init; }

    /// <summary>Code of the class.</summary>
    public string ClassCode { get; init; } = "";

    /// <summary>Name of the class.</summary>
    public string ClassName { get; init; } = "";

    /// <summary>Who teaches it; null when nobody does yet.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Her name.</summary>
    public string? InstructorName { get; init; }

    /// <summary>Where.</summary>
    public long LocationId { get; init; }

    /// <summary>Name of the location.</summary>
    public string LocationName { get; init; } = "";

    /// <summary>The room.</summary>
    public long RoomId { get; init; }

    /// <summary>Name of the room.</summary>
    public string RoomName { get; init; } = "";

    /// <summary>The location's zone.</summary>
    public string Zone { get; init; } = "";

    /// <summary>Start.</summary>
    public Instant StartsAt { get; init; }

    /// <summary>End.</summary>
    public Instant EndsAt { get; init; }

    /// <summary>The session's own date, where it is held.</summary>
    public LocalDate OnDate { get; init; }

    /// <summary>Start by the location's clock.</summary>
    public LocalTime StartsLocal { get; init; }

    /// <summary>Seats.</summary>
    public int Seats { get; init; }

    /// <summary>Seats taken.</summary>
    public int SeatsTaken { get; init; }

    /// <summary>Of those, people whose pregnancy ended since: they stand on no list, so they are in no count either.</summary>
    public int Unspoken { get; init; }

    /// <summary>People on the waitlist, without those who stand on no list any more.</summary>
    public int Waiting { get; init; }

    /// <summary>People checked in.</summary>
    public int CheckedIn { get; init; }

    /// <summary>open or cancelled.</summary>
    public SessionStatus Status { get; init; }

    /// <summary>How often it changed since it was made (SEQUENCE of RFC 5545, 3.8.7.4).</summary>
    public int Changes { get; init; }

    /// <summary>The series it comes from; null for a session by itself.</summary>
    public long? SeriesId { get; init; }

    /// <summary>The date the series' rule gave.</summary>
    public LocalDate? SeriesOn { get; init; }

    /// <summary>Seats left.</summary>
    public int SeatsLeft => Seats - SeatsTaken;

    /// <summary>What its plan and its fit depend on.</summary>
    public DatedClass Dated => new(Id, ClassId, OnDate, StartsAt);
}

/// <summary>A session as far as its plan and its fit depend on it.</summary>
/// <param name="SessionId">The session.</param>
/// <param name="ClassId">Its class.</param>
/// <param name="On">Its own date, where it is held.</param>
/// <param name="StartsAt">Its start.</param>
public sealed record DatedClass(long SessionId, long ClassId, LocalDate On, Instant StartsAt);

/// <summary>Whether a session is held.</summary>
public enum SessionStatus
{
    /// <summary>It is held.</summary>
    Open,

    /// <summary>It is not.</summary>
    Cancelled,
}

/// <summary>Which sessions; every part that is set must hold.</summary>
public sealed record SessionsWanted
{
    /// <summary>First date, each at its own location.</summary>
    public LocalDate? From { get; init; }

    /// <summary>Last date.</summary>
    public LocalDate? To { get; init; }

    /// <summary>Taught by her.</summary>
    public long? InstructorId { get; init; }

    /// <summary>This one.</summary>
    public long? Id { get; init; }

    /// <summary>Those this client has a seat in or waits for.</summary>
    public long? ClientId { get; init; }

    /// <summary>Of this class.</summary>
    public long? ClassId { get; init; }

    /// <summary>One of these.</summary>
    public IReadOnlyCollection<long>? Ids { get; init; }
}

/// <summary>Reads sessions.</summary>
public static class SessionStore
{
    /// <summary>Sessions in the order of time.</summary>
    public static Task<List<SessionRow>> ListAsync(Read read, SessionsWanted wanted) =>
        read.ListAsync<SessionRow>(
            """
            select s.id, s.class_id as ClassId, c.code as ClassCode, c.name as ClassName,
                   s.instructor_id as InstructorId, i.name as InstructorName,
                   l.id as LocationId, l.name as LocationName, r.id as RoomId, r.name as RoomName, l.zone,
                   s.starts_at as StartsAt, s.ends_at as EndsAt, s.on_date as OnDate, s.starts_local as StartsLocal,
                   s.seats, s.seats_taken as SeatsTaken, s.status, s.changes, s.series_id as SeriesId, s.series_on as SeriesOn,
                   (select count(*) from bookings b
                     where b.session_id = s.id and b.status = 'waiting'
                       and not exists (select 1 from pregnancies p
                                        where p.client_id = b.client_id and p.is_current = 1
                                          and p.ended_on is not null)) as Waiting,
                   (select count(*) from bookings b
                     where b.session_id = s.id and b.status = 'booked' and b.checked_in_at is not null
                       and not exists (select 1 from pregnancies p
                                        where p.client_id = b.client_id and p.is_current = 1
                                          and p.ended_on is not null)) as CheckedIn,
                   (select count(*) from bookings b join pregnancies p on p.client_id = b.client_id and p.is_current = 1
                     where b.session_id = s.id and b.status = 'booked' and p.ended_on is not null) as Unspoken
              from sessions s
              join classes c on c.id = s.class_id
              join rooms r on r.id = s.room_id
              join locations l on l.id = r.location_id
              left join instructors i on i.id = s.instructor_id
             where (@Id is null or s.id = @Id)
               and (@anyId or s.id in @ids)
               and (@From is null or s.on_date >= @From)
               and (@To is null or s.on_date <= @To)
               and (@InstructorId is null or s.instructor_id = @InstructorId)
               and (@ClassId is null or s.class_id = @ClassId)
               and (@ClientId is null or s.id in (
                       select b.session_id from bookings b
                        where b.client_id = @ClientId and b.status in ('booked', 'waiting')))
             order by s.starts_at, s.id
            """,
            new
            {
                wanted.Id,
                wanted.From,
                wanted.To,
                wanted.InstructorId,
                wanted.ClassId,
                wanted.ClientId,
                anyId = wanted.Ids is null,
                ids = wanted.Ids ?? [],
            }
        );

    /// <summary>One session.</summary>
    public static async Task<SessionRow?> FindAsync(Read read, long id) =>
        (await ListAsync(read, new SessionsWanted { Id = id })).SingleOrDefault();

    /// <summary>These sessions, in the order of time.</summary>
    public static Task<List<SessionRow>> OfAsync(Read read, IReadOnlyCollection<long> ids) =>
        ListAsync(read, new SessionsWanted { Ids = ids });

    /// <summary>
    /// Sets sessions aside inside a transaction that puts each of them in its place again, so that two may change places.
    /// </summary>
    public static Task SetAsideAsync(Write write, IReadOnlyCollection<long> ids) =>
        write.ExecuteAsync(
            "update sessions set status = 'cancelled' where id in @ids",
            new { ids }
        );

    /// <summary>Makes a session, or makes it stand as it is wanted; its id.</summary>
    public static async Task<long> PutAsync(Write write, ChangeStep step)
    {
        if (step.Was is not { } was)
            return await InsertAsync(write, step.Wanted, step.Now!);
        if (step.Now is not { } now)
            await write.ExecuteAsync(
                "update sessions set status = 'cancelled' where id = @Id",
                new { was.Id }
            );
        // Where and when it is held stays out of a statement about its seats: whatever stood already is not asked again.
        else if (step.OnlySeats)
            await write.ExecuteAsync("update sessions set seats = @Seats where id = @Key", now);
        else
            await write.ExecuteAsync(
                """
                update sessions
                   set room_id = @RoomId, instructor_id = @InstructorId, starts_at = @StartsAt, ends_at = @EndsAt,
                       on_date = @On, starts_local = @StartsLocal, seats = @Seats, status = 'open'
                 where id = @Key
                """,
                now
            );
        // Setting it aside was counted as well; for a calendar it is one change.
        await write.ExecuteAsync(
            "update sessions set changes = @changes where id = @Id",
            new { was.Id, changes = was.Changes + 1 }
        );
        return was.Id;
    }

    private static Task<long> InsertAsync(Write write, SessionWanted wanted, PlacedSession now) =>
        write.InsertAsync(
            """
            insert into sessions (class_id, room_id, instructor_id, starts_at, ends_at, on_date, starts_local, seats,
                                  series_id, series_on)
            values (@ClassId, @RoomId, @InstructorId, @StartsAt, @EndsAt, @On, @StartsLocal, @Seats,
                    @SeriesId, @SeriesOn)
            """,
            new
            {
                now.ClassId,
                now.RoomId,
                now.InstructorId,
                now.StartsAt,
                now.EndsAt,
                now.On,
                now.StartsLocal,
                now.Seats,
                wanted.SeriesId,
                wanted.SeriesOn,
            }
        );

    /// <summary>How often each of these sessions changed since it was made.</summary>
    public static async Task<Dictionary<long, int>> ChangeCountsAsync(
        Read read,
        IReadOnlyCollection<long> ids
    ) =>
        (
            await read.ListAsync<CountRow>(
                "select id, changes from sessions where id in @ids",
                new { ids }
            )
        ).ToDictionary(c => c.Id, c => c.Changes);

    private sealed record CountRow
    {
        public long Id { get; init; }
        public int Changes { get; init; }
    }
}
