using System.Text.Json;
using NodaTime;
using Studio.Api.Data;

namespace Studio.Api.Timetable;

/// <summary>A search as it stands in the tables.</summary>
public sealed record AssignmentRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>First day.</summary>
    public LocalDate FromOn { get; init; }

    /// <summary>Last day.</summary>
    public LocalDate ToOn { get; init; }

    /// <summary>What was asked, as JSON.</summary>
    public string Asked { get; init; } = "";

    /// <summary>What has become of it.</summary>
    public AssignmentStatus Status { get; init; }

    /// <summary>What it found, as JSON.</summary>
    public string? Result { get; init; }

    /// <summary>When it was begun.</summary>
    public Instant MadeAt { get; init; }

    /// <summary>When it ended.</summary>
    public Instant? EndedAt { get; init; }

    /// <summary>When it was put aside.</summary>
    public Instant? DiscardedAt { get; init; }

    /// <summary>The draft made of it.</summary>
    public long? DraftId { get; init; }
}

/// <summary>Reads and writes searches for the best way to staff a term.</summary>
public static class AssignmentStore
{
    private const string Columns =
        "id, from_on as FromOn, to_on as ToOn, asked, status, made_at as MadeAt, ended_at as EndedAt, discarded_at as DiscardedAt, draft_id as DraftId";

    /// <summary>The latest, newest first, without what they found.</summary>
    public static Task<List<AssignmentRow>> LatestAsync(Read read, int most) =>
        read.ListAsync<AssignmentRow>(
            $"select {Columns} from assignment_runs order by id desc limit @most",
            new { most }
        );

    /// <summary>One, with what it found.</summary>
    public static Task<AssignmentRow?> FindAsync(Read read, long id) =>
        read.FindAsync<AssignmentRow>(
            $"select {Columns}, result from assignment_runs where id = @id",
            new { id }
        );

    /// <summary>Whether one is at it.</summary>
    public static async Task<bool> IsOneRunningAsync(Read read) =>
        await read.ValueAsync<long>("select count(*) from assignment_runs where status = 'running'")
        > 0;

    /// <summary>Begins one.</summary>
    public static Task<long> BeginAsync(
        Write write,
        AssignmentRequest asked,
        JsonSerializerOptions json,
        long by,
        Instant at
    ) =>
        write.InsertAsync(
            """
            insert into assignment_runs (from_on, to_on, asked, made_at, made_by)
            values (@From, @To, @asked, @at, @by)
            """,
            new
            {
                asked.From,
                asked.To,
                asked = JsonSerializer.Serialize(asked, json),
                at,
                by,
            }
        );

    /// <summary>Ends one.</summary>
    public static Task EndAsync(
        Write write,
        long id,
        AssignmentStatus status,
        string? result,
        Instant at
    ) =>
        write.ExecuteAsync(
            """
            update assignment_runs set status = @status, result = @result, ended_at = @at
             where id = @id and status = 'running'
            """,
            new
            {
                id,
                status = JsonNamingPolicy.CamelCase.ConvertName(status.ToString()),
                result,
                at,
            }
        );

    /// <summary>Whatever was at it when the program was stopped is said to have been cut off.</summary>
    public static Task CutOffAsync(Write write, Instant at) =>
        write.ExecuteAsync(
            "update assignment_runs set status = 'cutOff', ended_at = @at where status = 'running'",
            new { at }
        );

    /// <summary>Puts one aside.</summary>
    public static Task<int> DiscardAsync(Write write, long id, Instant at) =>
        write.ExecuteAsync(
            """
            update assignment_runs set discarded_at = @at
             where id = @id and status <> 'running' and draft_id is null and discarded_at is null
            """,
            new { id, at }
        );

    /// <summary>How often each session of a span has changed so far.</summary>
    public static async Task<Dictionary<long, long>> ChangesAsync(
        Read read,
        LocalDate from,
        LocalDate to
    ) =>
        (
            await read.ListAsync<ChangesRow>(
                "select id, changes from sessions where on_date between @from and @to",
                new { from, to }
            )
        ).ToDictionary(s => s.Id, s => s.Changes);

    /// <summary>Notes the draft that was made of one.</summary>
    public static Task DraftedAsync(Write write, long id, long draft) =>
        write.ExecuteAsync(
            "update assignment_runs set draft_id = @draft where id = @id",
            new { id, draft }
        );

    private sealed record ChangesRow
    {
        public long Id { get; init; }
        public long Changes { get; init; }
    }
}
