using Studio.Api.Clearance;
using Studio.Api.Data;
using Studio.Api.Messages;

namespace Studio.Api.Erasures;

/// <summary>
/// Takes from the disk the files that an erasure let go of. They were noted in the erasure's transaction, so a file that
/// cannot be deleted now, or a program that stopped in between, only means that it is done at the next bell.
/// </summary>
public sealed partial class ErasedFiles(
    Database database,
    LetterFiles files,
    MailFolder mail,
    ILogger<ErasedFiles> log
)
{
    /// <summary>How many are still to be taken.</summary>
    public static Task<int> CountAsync(Read read) =>
        read.ValueAsync<int>("select count(*) from files_to_remove");

    /// <summary>Takes what can be taken; how many are left.</summary>
    public async Task<int> RemoveAsync()
    {
        List<string> noted;
        await using (var read = await database.ReadAsync())
            noted = await read.ListAsync<string>(
                "select file_name from files_to_remove order by 1"
            );
        var left = 0;
        foreach (var name in noted)
        {
            try
            {
                if (name.StartsWith(MailFolder.Mark, StringComparison.Ordinal))
                    mail.Remove(name[MailFolder.Mark.Length..]);
                else
                    files.Remove(name);
            }
            catch (Exception stuck) when (stuck is IOException or UnauthorizedAccessException)
            {
                NotRemoved(stuck);
                left++;
                continue;
            }

            await using var write = await database.BeginWriteAsync();
            await write.ExecuteAsync(
                "delete from files_to_remove where file_name = @name",
                new { name }
            );
            await write.CommitAsync();
        }

        return left;
    }

    [LoggerMessage(
        LogLevel.Warning,
        "A file that was erased cannot be deleted; it is tried again in a few minutes."
    )]
    private partial void NotRemoved(Exception stuck);
}
