using NodaTime;
using Studio.Api.Data;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>A series as it stands in the tables, with the names that go with it.</summary>
public sealed record SeriesRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>The class.</summary>
    public long ClassId { get; init; }

    /// <summary>Its name.</summary>
    public string ClassName { get; init; } = "";

    /// <summary>The room.</summary>
    public long RoomId { get; init; }

    /// <summary>Its name.</summary>
    public string RoomName { get; init; } = "";

    /// <summary>The location.</summary>
    public long LocationId { get; init; }

    /// <summary>Its name.</summary>
    public string LocationName { get; init; } = "";

    /// <summary>The location's zone.</summary>
    public string Zone { get; init; } = "";

    /// <summary>Who teaches it; null when nobody does yet.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Her name.</summary>
    public string? InstructorName { get; init; }

    /// <summary>Seats.</summary>
    public int Seats { get; init; }

    /// <summary>Length in minutes.</summary>
    public int Minutes { get; init; }

    /// <summary>The day its rule counts from.</summary>
    public LocalDate StartsOn { get; init; }

    /// <summary>Start by the location's clock.</summary>
    public LocalTime StartsLocal { get; init; }

    /// <summary>Its rule.</summary>
    public string Rule { get; init; } = "";

    /// <summary>The series this one goes on from.</summary>
    public long? ContinuesId { get; init; }

    /// <summary>Dates on which nothing is held.</summary>
    public IReadOnlyList<LocalDate> Exceptions { get; init; } = [];

    /// <summary>As the rules know it.</summary>
    public SeriesShape Shape =>
        new()
        {
            RoomId = RoomId,
            InstructorId = InstructorId,
            Seats = Seats,
            Minutes = Minutes,
            StartsOn = StartsOn,
            StartsLocal = StartsLocal,
            Rule = SeriesRule.Kept(Rule),
            Exceptions = Exceptions,
        };
}

/// <summary>Series and the sessions that come from them.</summary>
public static class SeriesStore
{
    /// <summary>All series in the order of the week, or one.</summary>
    public static async Task<List<SeriesRow>> ListAsync(Read read, long? id = null)
    {
        var exceptions = (
            await read.ListAsync<ExceptionRow>(
                """
                select series_id as SeriesId, on_date as "On" from series_exceptions
                 where @id is null or series_id = @id order by on_date
                """,
                new { id }
            )
        ).ToLookup(e => e.SeriesId, e => e.On);
        var rows = await read.ListAsync<SeriesRow>(
            """
            select s.id, s.class_id as ClassId, c.name as ClassName, s.room_id as RoomId, r.name as RoomName,
                   l.id as LocationId, l.name as LocationName, l.zone,
                   s.instructor_id as InstructorId, i.name as InstructorName, s.seats, s.minutes,
                   s.starts_on as StartsOn, s.starts_local as StartsLocal, s.rule, s.continues_id as ContinuesId
              from series s
              join classes c on c.id = s.class_id
              join rooms r on r.id = s.room_id
              join locations l on l.id = r.location_id
              left join instructors i on i.id = s.instructor_id
             where @id is null or s.id = @id
             order by l.id, (cast(strftime('%w', s.starts_on) as integer) + 6) % 7, s.starts_local, s.id
            """,
            new { id }
        );
        return [.. rows.Select(r => r with { Exceptions = [.. exceptions[r.Id]] })];
    }

    /// <summary>One series.</summary>
    public static async Task<SeriesRow?> FindAsync(Read read, long id) =>
        (await ListAsync(read, id)).SingleOrDefault();

    /// <summary>Adds a series; its id, or null when the same stands already.</summary>
    public static async Task<long?> AddAsync(
        Write write,
        long classId,
        SeriesShape shape,
        long? continues,
        Instant at,
        long? by
    )
    {
        var id = await write.FindAsync<long?>(
            """
            insert into series (class_id, room_id, instructor_id, seats, minutes, starts_on, starts_local, rule,
                                continues_id, made_at, made_by)
            select @classId, @RoomId, @InstructorId, @Seats, @Minutes, @StartsOn, @StartsLocal, @rule, @continues, @at, @by
             where not exists (select 1 from series
                                where class_id = @classId and room_id = @RoomId and starts_on = @StartsOn
                                  and starts_local = @StartsLocal and rule = @rule)
            returning id
            """,
            new
            {
                classId,
                shape.RoomId,
                shape.InstructorId,
                shape.Seats,
                shape.Minutes,
                shape.StartsOn,
                shape.StartsLocal,
                rule = shape.Rule.Text,
                continues,
                at,
                by,
            }
        );
        if (id is { } made)
            await ExceptAsync(write, made, shape.Exceptions);
        return id;
    }

    /// <summary>Makes a series stand like this.</summary>
    public static async Task PutAsync(Write write, long id, SeriesShape shape)
    {
        await write.ExecuteAsync(
            """
            update series
               set room_id = @RoomId, instructor_id = @InstructorId, seats = @Seats, minutes = @Minutes,
                   starts_on = @StartsOn, starts_local = @StartsLocal, rule = @rule
             where id = @id
            """,
            new
            {
                id,
                shape.RoomId,
                shape.InstructorId,
                shape.Seats,
                shape.Minutes,
                shape.StartsOn,
                shape.StartsLocal,
                rule = shape.Rule.Text,
            }
        );
        await write.ExecuteAsync("delete from series_exceptions where series_id = @id", new { id });
        await ExceptAsync(write, id, shape.Exceptions);
    }

    /// <summary>Its sessions in the order of the rule's dates.</summary>
    public static async Task<List<SessionRow>> SessionsAsync(
        Read read,
        IReadOnlyCollection<long> series,
        LocalDate from
    ) =>
        [
            .. (
                await SessionStore.OfAsync(
                    read,
                    await read.ListAsync<long>(
                        "select id from sessions where series_id in @series and (series_on >= @from or on_date >= @from)",
                        new { series, from }
                    )
                )
            ).OrderBy(s => s.SeriesOn),
        ];

    /// <summary>Says of sessions that are there which date of which series they are.</summary>
    public static async Task LinkAsync(
        Write write,
        long series,
        IReadOnlyCollection<(long Session, LocalDate On)> dates
    )
    {
        // Two that change their dates would meet on the way.
        await write.ExecuteAsync(
            "update sessions set series_id = null, series_on = null where id in @ids",
            new { ids = dates.Select(d => d.Session).ToList() }
        );
        foreach (var (session, on) in dates)
            await write.ExecuteAsync(
                "update sessions set series_id = @series, series_on = @on where id = @session",
                new
                {
                    series,
                    on,
                    session,
                }
            );
    }

    private static async Task ExceptAsync(Write write, long id, IEnumerable<LocalDate> dates)
    {
        foreach (var on in dates.Distinct())
            await write.ExecuteAsync(
                "insert into series_exceptions (series_id, on_date) values (@id, @on)",
                new { id, on }
            );
    }

    private sealed record ExceptionRow
    {
        public long SeriesId { get; init; }
        public LocalDate On { get; init; }
    }
}
