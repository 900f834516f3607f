using MimeKit;
using Studio.Api.Data;

namespace Studio.Api.Messages;

/// <summary>The folder messages are written to while there is no mail server: one file each, as RFC 5322 has it.</summary>
public sealed class MailFolder(DataFolder folder)
{
    /// <summary>What stands before the name of such a file where files are noted to be taken away.</summary>
    public const string Mark = "mail/";

    private readonly string _path = Path.Combine(folder.Folder, "mail");

    /// <summary>The name of a message's file; the random part of its Message-ID.</summary>
    public static string NameOf(string messageId) =>
        $"{messageId.Trim('<', '>').Split('@')[0]}.eml";

    /// <summary>Writes a message, whole or not at all; writing it again changes nothing.</summary>
    public async Task<string> WriteAsync(MimeMessage message, string messageId)
    {
        var name = NameOf(messageId);
        Make();
        var unfinished = Path.Combine(_path, $"{name}.part");
        await using (var file = File.Create(unfinished))
            await message.WriteToAsync(file);
        File.Move(unfinished, Path.Combine(_path, name), overwrite: true);
        return name;
    }

    /// <summary>A message's file; null when there is none.</summary>
    public FileStream? Open(string messageId)
    {
        var path = Path.Combine(_path, NameOf(messageId));
        return File.Exists(path) ? File.OpenRead(path) : null;
    }

    /// <summary>Takes a file away; one that is gone already is no error.</summary>
    public void Remove(string name)
    {
        var path = Path.Combine(_path, Path.GetFileName(name));
        if (File.Exists(path))
            File.Delete(path);
    }

    // What is in it names people: for the program's own user alone.
    private void Make()
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(_path);
        else
            Directory.CreateDirectory(
                _path,
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute
            );
    }
}
