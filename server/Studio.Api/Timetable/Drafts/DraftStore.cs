using NodaTime;
using Studio.Api.Data;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable.Drafts;

/// <summary>Where a draft came from.</summary>
public enum DraftOrigin
{
    /// <summary>Somebody made it.</summary>
    Hand,

    /// <summary>A term was assigned.</summary>
    Assignment,
}

/// <summary>What became of a draft.</summary>
public enum DraftStatus
{
    /// <summary>It can be changed.</summary>
    Open,

    /// <summary>It is the timetable.</summary>
    Published,

    /// <summary>It was thrown away.</summary>
    Discarded,
}

/// <summary>A draft as it stands in the table.</summary>
public sealed record DraftRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Its name.</summary>
    public string Name { get; init; } = "";

    /// <summary>First day, each session's own where it is held.</summary>
    public LocalDate FromOn { get; init; }

    /// <summary>Last day.</summary>
    public LocalDate ToOn { get; init; }

    /// <summary>Where it came from.</summary>
    public DraftOrigin Origin { get; init; }

    /// <summary>What became of it.</summary>
    public DraftStatus Status { get; init; }

    /// <summary>Counts its changes, from 1.</summary>
    public int Version { get; init; }

    /// <summary>When it was made.</summary>
    public Instant MadeAt { get; init; }

    /// <summary>When it was published or thrown away.</summary>
    public Instant? EndedAt { get; init; }
}

/// <summary>Drafts of the timetable.</summary>
public static class DraftStore
{
    private const string Draft = """
        select id, name, from_on as FromOn, to_on as ToOn, origin, status, version, made_at as MadeAt, ended_at as EndedAt
          from drafts
        """;

    /// <summary>Those that are open, the newest first, then a few that ended.</summary>
    public static Task<List<DraftRow>> ListAsync(Read read) =>
        read.ListAsync<DraftRow>(
            $"{Draft} where status <> 'discarded' order by status <> 'open', id desc limit 50"
        );

    /// <summary>One draft.</summary>
    public static Task<DraftRow?> FindAsync(Read read, long id) =>
        read.FindAsync<DraftRow>($"{Draft} where id = @id", new { id });

    /// <summary>Makes a draft of some weeks: a copy of every session that is held in them and has not begun.</summary>
    /// <param name="write">The transaction.</param>
    /// <param name="name">Its name.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day.</param>
    /// <param name="origin">Where it comes from.</param>
    /// <param name="by">Whose account makes it.</param>
    /// <param name="now">The moment.</param>
    public static async Task<long> MakeAsync(
        Write write,
        string name,
        LocalDate from,
        LocalDate to,
        DraftOrigin origin,
        long? by,
        Instant now
    )
    {
        var id = await write.InsertAsync(
            """
            insert into drafts (name, from_on, to_on, origin, made_at, made_by)
            values (@name, @from, @to, @origin, @now, @by)
            """,
            new
            {
                name,
                from,
                to,
                origin = origin == DraftOrigin.Hand ? "hand" : "assignment",
                now,
                by,
            }
        );
        await write.ExecuteAsync(
            """
            insert into draft_sessions (draft_id, session_id, based_on, series_id, series_on, class_id, room_id,
                                        instructor_id, on_date, starts_local, minutes, seats)
            select @id, s.id, s.changes, s.series_id, s.series_on, s.class_id, s.room_id, s.instructor_id, s.on_date,
                   s.starts_local, (unixepoch(s.ends_at) - unixepoch(s.starts_at)) / 60, s.seats
              from sessions s
             where s.status = 'open' and s.on_date between @from and @to and s.starts_at > @now
             order by s.starts_at, s.id
            """,
            new
            {
                id,
                from,
                to,
                now,
            }
        );
        return id;
    }

    /// <summary>The rows of a draft, in the order of days and hours.</summary>
    public static Task<List<DraftSession>> RowsAsync(Read read, long draftId) =>
        read.ListAsync<DraftSession>(
            """
            select id, session_id as SessionId, based_on as BasedOn, series_id as SeriesId, series_on as SeriesOn,
                   class_id as ClassId, room_id as RoomId, instructor_id as InstructorId, on_date as "On",
                   starts_local as StartsLocal, minutes, seats, is_held as IsHeld
              from draft_sessions where draft_id = @draftId
             order by on_date, starts_local, id
            """,
            new { draftId }
        );

    /// <summary>The sessions those rows are copies of, as they stand now; BasedOn is their count of changes.</summary>
    public static async Task<Dictionary<long, DraftSession>> LiveAsync(Read read, long draftId) =>
        (
            await read.ListAsync<DraftSession>(
                """
                select d.id, s.id as SessionId, s.changes as BasedOn, s.series_id as SeriesId, s.series_on as SeriesOn,
                       s.class_id as ClassId, s.room_id as RoomId, s.instructor_id as InstructorId, s.on_date as "On",
                       s.starts_local as StartsLocal, (unixepoch(s.ends_at) - unixepoch(s.starts_at)) / 60 as Minutes,
                       s.seats, s.status = 'open' as IsHeld
                  from draft_sessions d join sessions s on s.id = d.session_id
                 where d.draft_id = @draftId
                """,
                new { draftId }
            )
        ).ToDictionary(s => s.SessionId!.Value);

    /// <summary>Counts a change; false when the draft is not open at this version.</summary>
    public static async Task<bool> StepAsync(Write write, long id, int version) =>
        await write.ExecuteAsync(
            "update drafts set version = version + 1 where id = @id and version = @version and status = 'open'",
            new { id, version }
        ) == 1;

    /// <summary>Adds a row (Id 0), or makes one stand as it is given; false when the draft has no such row.</summary>
    public static async Task<bool> PutAsync(Write write, long draftId, DraftSession row)
    {
        var parameters = new
        {
            draftId,
            row.Id,
            row.SeriesId,
            row.SeriesOn,
            row.ClassId,
            row.RoomId,
            row.InstructorId,
            row.On,
            row.StartsLocal,
            row.Minutes,
            row.Seats,
            row.IsHeld,
            row.BasedOn,
        };
        return await write.ExecuteAsync(
                row.Id == 0
                    ? """
                    insert into draft_sessions (draft_id, series_id, series_on, class_id, room_id, instructor_id, on_date,
                                                starts_local, minutes, seats)
                    values (@draftId, @SeriesId, @SeriesOn, @ClassId, @RoomId, @InstructorId, @On, @StartsLocal,
                            @Minutes, @Seats)
                    """
                    : """
                    update draft_sessions
                       set class_id = @ClassId, room_id = @RoomId, instructor_id = @InstructorId, on_date = @On,
                           starts_local = @StartsLocal, minutes = @Minutes, seats = @Seats, is_held = @IsHeld,
                           based_on = case when session_id is null then null else coalesce(@BasedOn, based_on) end
                     where id = @Id and draft_id = @draftId
                    """,
                parameters
            ) == 1;
    }

    /// <summary>Takes a row that the draft added out of it.</summary>
    public static Task RemoveAsync(Write write, long draftId, long rowId) =>
        write.ExecuteAsync(
            "delete from draft_sessions where id = @rowId and draft_id = @draftId and session_id is null",
            new { rowId, draftId }
        );

    /// <summary>Ends an open draft; false when it was not open.</summary>
    public static async Task<bool> EndAsync(
        Write write,
        long id,
        DraftStatus how,
        long? by,
        Instant now
    ) =>
        await write.ExecuteAsync(
            """
            update drafts set status = @how, ended_at = @now, ended_by = @by
             where id = @id and status = 'open'
            """,
            new
            {
                id,
                how = how == DraftStatus.Published ? "published" : "discarded",
                now,
                by,
            }
        ) == 1;
}
