using System.Text.Json;
using NodaTime;
using Studio.Api.Data;
using Studio.Core.Clients;

namespace Studio.Api.Erasures;

/// <summary>A part that is set apart, as it stands in the table.</summary>
public sealed record SetApartRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>The erasure it belongs to.</summary>
    public long ErasureId { get; init; }

    /// <summary>The number that named her.</summary>
    public long ClientId { get; init; }

    /// <summary>Which part.</summary>
    public KeptPart Part { get; init; }

    /// <summary>The last day on which it is kept.</summary>
    public LocalDate LastDay { get; init; }

    /// <summary>The record, opened; null once it is erased.</summary>
    public string? Record { get; init; }

    /// <summary>When it was erased for good.</summary>
    public Instant? ErasedAt { get; init; }
}

/// <summary>An erasure carried out, as it stands in the table.</summary>
public sealed record ErasureRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>When.</summary>
    public Instant DoneAt { get; init; }

    /// <summary>By whom.</summary>
    public string DoneBy { get; init; } = "";

    /// <summary>Entries taken away.</summary>
    public int Entries { get; init; }

    /// <summary>Files taken away.</summary>
    public int Files { get; init; }
}

/// <summary>Wishes, erasures, and what is set apart.</summary>
public static class ErasureStore
{
    /// <summary>Her wish, when there is one that was neither taken back nor carried out.</summary>
    public static Task<ErasureWish?> WishAsync(Read read, long clientId) =>
        read.FindAsync<ErasureWish>($"{Wishes} and e.client_id = @clientId", new { clientId });

    /// <summary>Every wish still to be carried out, the oldest first.</summary>
    public static Task<List<ErasureWish>> WishesAsync(Read read) =>
        read.ListAsync<ErasureWish>($"{Wishes} order by e.id");

    private const string Wishes = """
        select e.client_id as ClientId, c.name, e.asked_at as AskedAt, e.asked_by is c.account_id as ByHerself
          from erasures e join clients c on c.id = e.client_id
         where e.done_at is null and e.withdrawn_at is null
        """;

    /// <summary>Files a wish; a second one changes nothing.</summary>
    public static Task AskAsync(Write write, long clientId, Instant at, long by) =>
        write.ExecuteAsync(
            """
            insert into erasures (client_id, asked_at, asked_by) values (@clientId, @at, @by)
            on conflict do nothing
            """,
            new
            {
                clientId,
                at,
                by,
            }
        );

    /// <summary>Takes a wish back; false when there was none.</summary>
    public static async Task<bool> WithdrawAsync(Write write, long clientId, Instant at) =>
        await write.ExecuteAsync(
            """
            update erasures set withdrawn_at = @at
             where client_id = @clientId and done_at is null and withdrawn_at is null
            """,
            new { clientId, at }
        ) > 0;

    /// <summary>The erasure that was carried out for a client; null when there was none.</summary>
    public static Task<long?> DoneForAsync(Read read, long clientId) =>
        read.FindAsync<long?>(
            "select id from erasures where client_id = @clientId and done_at is not null",
            new { clientId }
        );

    /// <summary>What was carried out, the newest first.</summary>
    public static Task<List<ErasureRow>> DoneAsync(Read read) =>
        read.ListAsync<ErasureRow>(
            """
            select e.id, e.done_at as DoneAt, a.name as DoneBy, e.entries, e.files
              from erasures e join accounts a on a.id = e.done_by
             where e.done_at is not null
             order by e.id desc
            """
        );

    /// <summary>Everything set apart, of one erasure or of all; records are opened for one erasure only.</summary>
    public static async Task<List<SetApartRow>> SetApartAsync(Read read, long? erasureId) =>
        [
            .. (
                await read.ListAsync<SetApartRow>(
                    """
                    select s.id, s.erasure_id as ErasureId, e.client_id as ClientId, s.part, s.last_day as LastDay,
                           case when @erasureId is not null then s.record end as Record, s.erased_at as ErasedAt
                      from set_apart s join erasures e on e.id = s.erasure_id
                     where @erasureId is null or s.erasure_id = @erasureId
                     order by s.id
                    """,
                    new { erasureId }
                )
            ).Select(s => s with { Record = s.Record is { } text ? read.Seal.Open(text) : null }),
        ];

    /// <summary>Sets a part apart; its key.</summary>
    public static Task<long> SetApartAsync(
        Write write,
        long erasureId,
        KeptPart part,
        LocalDate lastDay,
        string record
    ) =>
        write.InsertAsync(
            """
            insert into set_apart (erasure_id, part, last_day, record) values (@erasureId, @part, @lastDay, @record)
            """,
            new
            {
                erasureId,
                part = JsonNamingPolicy.CamelCase.ConvertName(part.ToString()),
                lastDay,
                record = write.Seal.Close(record),
            }
        );

    /// <summary>What was set apart at locations of a zone and has had its last day before this one.</summary>
    public static Task<List<SetApartRow>> OverAsync(Read read, string zone, LocalDate today) =>
        read.ListAsync<SetApartRow>(
            """
            select s.id, s.erasure_id as ErasureId, e.client_id as ClientId, s.part, s.last_day as LastDay
              from set_apart s
              join erasures e on e.id = s.erasure_id
              join clients c on c.id = e.client_id
              join locations l on l.id = c.home_location_id
             where s.erased_at is null and s.last_day < @today and l.zone = @zone
             order by s.id
            """,
            new { zone, today }
        );

    /// <summary>Erases for good what was set apart; its files are noted to be taken from the disk.</summary>
    public static async Task EndAsync(Write write, long setApartId, Instant at)
    {
        var parameters = new { setApartId, at };
        await write.ExecuteAsync(
            """
            insert into files_to_remove (file_name, noted_at)
            select file_name, @at from set_apart_files where set_apart_id = @setApartId
            """,
            parameters
        );
        await write.ExecuteAsync(
            "delete from set_apart_files where set_apart_id = @setApartId",
            parameters
        );
        await write.ExecuteAsync(
            "update set_apart set record = null, erased_at = @at where id = @setApartId and erased_at is null",
            parameters
        );
    }

    /// <summary>The file of a letter that is set apart; null when there is none.</summary>
    public static Task<SetApartFile?> FileAsync(Read read, long erasureId, long letterId) =>
        read.FindAsync<SetApartFile>(
            """
            select f.file_name as FileName, f.media_type as MediaType, e.client_id as ClientId
              from set_apart_files f
              join set_apart s on s.id = f.set_apart_id
              join erasures e on e.id = s.erasure_id
             where s.erasure_id = @erasureId and f.letter_id = @letterId
            """,
            new { erasureId, letterId }
        );
}

/// <summary>The file of a letter that is set apart.</summary>
public sealed record SetApartFile
{
    /// <summary>Its name in the folder of letters.</summary>
    public string FileName { get; init; } = "";

    /// <summary>What it is.</summary>
    public string MediaType { get; init; } = "";

    /// <summary>The number that named her.</summary>
    public long ClientId { get; init; }
}
