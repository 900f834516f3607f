using NodaTime;
using Studio.Api.Data;
using Studio.Api.Messages;
using Studio.Api.Records;

namespace Studio.Api.Erasures;

/// <summary>The single steps of an erasure, in the order in which they are taken. The schema refuses any that is left out.</summary>
internal static class ErasureSteps
{
    /// <summary>A letter's file.</summary>
    internal sealed record LetterFile
    {
        public long LetterId { get; init; }
        public string FileName { get; init; } = "";
        public string MediaType { get; init; } = "";
    }

    /// <summary>The files of her letters.</summary>
    public static Task<List<LetterFile>> FilesAsync(Read read, long clientId) =>
        read.ListAsync<LetterFile>(
            """
            select id as LetterId, file_name as FileName, media_type as MediaType
              from letters where client_id = @clientId and file_name is not null order by id
            """,
            new { clientId }
        );

    /// <summary>From here on what is otherwise never taken away can be, for her alone.</summary>
    public static Task OpenDoorAsync(Write write, long clientId) =>
        write.ExecuteAsync(
            "insert into erasing (id, client_id) values (1, @clientId)",
            new { clientId }
        );

    /// <summary>Shuts it; the schema looks whether everything is gone.</summary>
    public static Task CloseDoorAsync(Write write) =>
        write.ExecuteAsync("delete from erasing where id = 1");

    /// <summary>Takes away all that is held about her but what names nobody; how many entries.</summary>
    public static async Task<int> TakeAwayAsync(Write write, long clientId, Instant at)
    {
        var accountId = await write.ValueAsync<long?>(
            "select account_id from clients where id = @clientId",
            new { clientId }
        );
        var hers = new { clientId, accountId };
        var entries = 0;
        await LetGoOfMailAsync(write, clientId, at);
        foreach (var table in HeldTables.All.Reverse())
            if (table.AtErasure == AtErasure.Go)
                entries += await write.ExecuteAsync(
                    $"delete from {table.Name} where {table.Of}",
                    hers
                );
            else if (table.Name == "bookings")
                entries += await EmptyBookingsAsync(write, clientId);
        await write.ExecuteAsync(
            """
            update clients
               set name = @Nobody, called = @Nobody, phone = '', email = '', emergency_name = '', emergency_phone = '',
                   shares_conditions = 0, search = '', born_on = null, account_id = null, joined_at = @at,
                   erased_at = @at
             where id = @clientId
            """,
            new
            {
                ErasureWords.Nobody,
                at,
                clientId,
            }
        );
        // Answers to bookings that somebody else made for her.
        await write.ExecuteAsync(
            "delete from answered_requests where fingerprint like 'book % ' || @clientId",
            hers
        );
        if (accountId is { } account)
            await CloseAccountAsync(write, account, at);
        return entries;
    }

    /// <summary>Writes down that it was done; her wish becomes the erasure.</summary>
    public static async Task<long> RecordAsync(
        Write write,
        long clientId,
        long by,
        int entries,
        int files,
        Instant at
    )
    {
        var done = new
        {
            clientId,
            by,
            entries,
            files,
            at,
        };
        await write.ExecuteAsync(
            """
            update erasures set done_at = @at, done_by = @by, entries = @entries, files = @files
             where client_id = @clientId and withdrawn_at is null
            """,
            done
        );
        await write.ExecuteAsync(
            """
            insert into erasures (client_id, done_at, done_by, entries, files)
            values (@clientId, @at, @by, @entries, @files)
            on conflict do nothing
            """,
            done
        );
        return (await ErasureStore.DoneForAsync(write, clientId))!.Value;
    }

    /// <summary>Files that stay as long as the record they belong to.</summary>
    public static async Task KeepFilesAsync(
        Write write,
        long setApartId,
        IEnumerable<LetterFile> files
    )
    {
        foreach (var file in files)
            await write.ExecuteAsync(
                """
                insert into set_apart_files (file_name, set_apart_id, letter_id, media_type)
                values (@FileName, @setApartId, @LetterId, @MediaType)
                """,
                new
                {
                    file.FileName,
                    setApartId,
                    file.LetterId,
                    file.MediaType,
                }
            );
    }

    /// <summary>Notes files to be taken from the disk once this is committed.</summary>
    public static async Task LetGoOfFilesAsync(
        Write write,
        IEnumerable<LetterFile> files,
        Instant at
    )
    {
        foreach (var file in files)
            await write.ExecuteAsync(
                "insert into files_to_remove (file_name, noted_at) values (@FileName, @at)",
                new { file.FileName, at }
            );
    }

    // Copies of messages on the disk; what has to be kept of them stands in the record that is set apart.
    private static async Task LetGoOfMailAsync(Write write, long clientId, Instant at)
    {
        foreach (var messageId in await MessageStore.MessageIdsAsync(write, clientId))
            await write.ExecuteAsync(
                "insert into files_to_remove (file_name, noted_at) values (@name, @at)",
                new { name = MailFolder.Mark + MailFolder.NameOf(messageId), at }
            );
    }

    // A seat that was taken in the past stays counted, and says nothing but that somebody had it and whether she came.
    private static async Task<int> EmptyBookingsAsync(Write write, long clientId)
    {
        var gone = await write.ExecuteAsync(
            "delete from bookings where client_id = @clientId and status <> 'booked'",
            new { clientId }
        );
        await write.ExecuteAsync(
            """
            update bookings
               set made_by = null, promoted_at = null, well_at = null, let_go = null, seen_to_at = null,
                   made_at = (select s.starts_at from sessions s where s.id = session_id),
                   checked_in_at = case when checked_in_at is not null
                                        then (select s.starts_at from sessions s where s.id = session_id) end
             where client_id = @clientId
            """,
            new { clientId }
        );
        return gone;
    }

    // The row stays, because entries she made may name it; whoever is staff as well keeps the account for that.
    private static async Task CloseAccountAsync(Write write, long accountId, Instant at)
    {
        var parameters = new
        {
            accountId,
            at,
            ErasureWords.Nobody,
            email = $"erased-{accountId}@erased.invalid",
            normalized = $"ERASED-{accountId}@ERASED.INVALID",
            stamp = Guid.NewGuid().ToString("n"),
        };
        await write.ExecuteAsync(
            "delete from answered_requests where account_id = @accountId",
            parameters
        );
        await write.ExecuteAsync(
            "delete from account_roles where account_id = @accountId and role = 'client'",
            parameters
        );
        await write.ExecuteAsync(
            "update accounts set security_stamp = @stamp where id = @accountId",
            parameters
        );
        await write.ExecuteAsync(
            """
            update accounts
               set email = @email, normalized_email = @normalized, name = @Nobody, password_hash = null,
                   lockout_until = null, failed_count = 0, is_demo = 0, made_at = @at, closed_at = @at
             where id = @accountId
               and not exists (select 1 from account_roles r where r.account_id = @accountId)
               and not exists (select 1 from instructors i where i.account_id = @accountId)
            """,
            parameters
        );
    }
}
