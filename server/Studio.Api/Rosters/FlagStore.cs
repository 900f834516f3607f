using NodaTime;
using Studio.Api.Data;
using Studio.Core.Rosters;

namespace Studio.Api.Rosters;

/// <summary>A flag as it stands in the table.</summary>
public sealed record FlagRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>What makes it this flag.</summary>
    public string Subject { get; init; } = "";

    /// <summary>What it is about.</summary>
    public FlagKind Kind { get; init; }

    /// <summary>How loud.</summary>
    public FlagSeverity Severity { get; init; }

    /// <summary>Whom it is about.</summary>
    public long? ClientId { get; init; }

    /// <summary>Which session.</summary>
    public long? SessionId { get; init; }

    /// <summary>Which instructor.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Words for the desk.</summary>
    public string ForDesk { get; init; } = "";

    /// <summary>Words for the instructor.</summary>
    public string? ForInstructor { get; init; }

    /// <summary>Since when it is true.</summary>
    public LocalDate Since { get; init; }

    /// <summary>When this reader ticked it as read.</summary>
    public Instant? ReadAt { get; init; }

    /// <summary>What the client likes to be called.</summary>
    public string? Called { get; init; }

    /// <summary>Her name.</summary>
    public string? Name { get; init; }
}

/// <summary>Flags that stand, and who has read them.</summary>
public static class FlagStore
{
    /// <summary>Flags that stand, loudest and nearest first; <c>ReadAt</c> is this account's tick.</summary>
    public static async Task<List<FlagRow>> StandingAsync(
        Read read,
        long accountId,
        IReadOnlyCollection<long>? clientIds = null
    ) =>
        Opened(
            read,
            await read.ListAsync<FlagRow>(
                """
                select f.id, f.subject, f.kind, f.severity, f.client_id as ClientId, f.session_id as SessionId,
                       f.instructor_id as InstructorId, f.for_desk as ForDesk, f.for_instructor as ForInstructor,
                       f.since, r.at as ReadAt, c.called, c.name
                  from flags f
                  left join clients c on c.id = f.client_id
                  left join flag_reads r on r.flag_id = f.id and r.account_id = @accountId
                 where f.closed_at is null and (@all or f.client_id in @clientIds)
                 order by case f.severity when 'urgent' then 0 when 'attention' then 1 else 2 end, f.since, f.id
                """,
                new
                {
                    accountId,
                    all = clientIds is null,
                    clientIds = clientIds ?? [],
                }
            )
        );

    /// <summary>Opens what is new, words anew what changed, closes what is gone; the number of rows touched.</summary>
    /// <param name="write">The transaction.</param>
    /// <param name="should">The flags that should stand within the scope.</param>
    /// <param name="scope">SQL condition on the flags table that the scope covers.</param>
    /// <param name="ids">The ids the scope speaks of, when it speaks of some.</param>
    /// <param name="at">Now.</param>
    public static async Task<int> SettleAsync(
        Write write,
        IReadOnlyCollection<StandingFlag> should,
        string scope,
        IReadOnlyCollection<long> ids,
        Instant at
    )
    {
        var stand = Opened(
                write,
                await write.ListAsync<FlagRow>(
                    $"""
                    select id, subject, kind, severity, for_desk as ForDesk, for_instructor as ForInstructor, since
                      from flags where closed_at is null and {scope}
                    """,
                    new { ids }
                )
            )
            .ToDictionary(f => f.Subject, StringComparer.Ordinal);
        var touched = 0;
        foreach (var flag in should)
        {
            if (!stand.Remove(flag.Subject, out var row))
                touched += await InsertAsync(write, flag, at);
            else if (
                row.ForDesk != flag.ForDesk
                || row.ForInstructor != flag.ForInstructor
                || row.Severity != flag.Severity
            )
                touched += await RewordAsync(write, row, flag);
        }

        foreach (var gone in stand.Values)
            touched += await write.ExecuteAsync(
                "update flags set closed_at = @at where id = @Id",
                new { at, gone.Id }
            );
        return touched;
    }

    /// <summary>Ticks flags as read.</summary>
    public static Task TickAsync(
        Write write,
        IReadOnlyCollection<long> flagIds,
        long accountId,
        Instant at
    ) =>
        write.ExecuteAsync(
            """
            insert into flag_reads (flag_id, account_id, at)
            select id, @accountId, @at from flags where id in @flagIds and closed_at is null
            on conflict do nothing
            """,
            new
            {
                flagIds,
                accountId,
                at,
            }
        );

    private static Task<int> InsertAsync(Write write, StandingFlag flag, Instant at) =>
        write.ExecuteAsync(
            """
            insert into flags (subject, kind, severity, client_id, session_id, instructor_id, for_desk, for_instructor,
                               since, opened_at)
            values (@Subject, @kind, @severity, @ClientId, @SessionId, @InstructorId, @ForDesk, @words,
                    @Since, @at)
            """,
            new
            {
                flag.Subject,
                kind = Wire(flag.Kind),
                severity = Wire(flag.Severity),
                flag.ClientId,
                flag.SessionId,
                flag.InstructorId,
                flag.ForDesk,
                words = Sealed(write, flag),
                flag.Since,
                at,
            }
        );

    // Words that changed have not been read yet; a louder flag neither. An instructor reads her own words only.
    private static async Task<int> RewordAsync(Write write, FlagRow row, StandingFlag flag)
    {
        await write.ExecuteAsync(
            """
            delete from flag_reads
             where flag_id = @Id
               and (@forAll or account_id not in (select account_id from instructors where account_id is not null))
            """,
            new
            {
                row.Id,
                forAll = row.ForInstructor != flag.ForInstructor || row.Severity != flag.Severity,
            }
        );
        return await write.ExecuteAsync(
            """
            update flags set for_desk = @ForDesk, for_instructor = @words, severity = @severity where id = @Id
            """,
            new
            {
                row.Id,
                flag.ForDesk,
                words = Sealed(write, flag),
                severity = Wire(flag.Severity),
            }
        );
    }

    private static string? Sealed(Write write, StandingFlag flag) =>
        flag.ForInstructor is { } words ? write.Seal.Close(words) : null;

    private static List<FlagRow> Opened(Read read, List<FlagRow> rows) =>
        [
            .. rows.Select(f =>
                f.ForInstructor is { } words ? f with { ForInstructor = read.Seal.Open(words) } : f
            ),
        ];

    private static string Wire<T>(T value)
        where T : struct, Enum =>
        System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}
