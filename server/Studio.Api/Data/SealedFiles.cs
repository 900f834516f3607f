using System.Security.Cryptography;

namespace Studio.Api.Data;

/// <summary>Files on paper that somebody sent: sealed, under random names, in a folder that is never served.</summary>
/// <param name="folder">The folder.</param>
/// <param name="seal">What seals them.</param>
public abstract class SealedFiles(string folder, Seal seal)
{
    /// <summary>Keeps a file; the name it got. On disk before it returns.</summary>
    public async Task<string> KeepAsync(byte[] bytes)
    {
        var name = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(20));
        Directory.CreateDirectory(folder);
        await using var file = new FileStream(
            PathOf(name),
            FileMode.CreateNew,
            FileAccess.Write,
            FileShare.None
        );
        await file.WriteAsync(seal.Close(bytes));
        file.Flush(flushToDisk: true);
        return name;
    }

    /// <summary>The file's bytes, opened; null when the file is gone.</summary>
    public async Task<byte[]?> OpenAsync(string name) =>
        File.Exists(PathOf(name)) ? seal.Open(await File.ReadAllBytesAsync(PathOf(name))) : null;

    /// <summary>Removes a file; nothing happens when it is gone already.</summary>
    public void Remove(string name) => File.Delete(PathOf(name));

    // The name comes from our own table, and yet never leaves the folder.
    private string PathOf(string name) => Path.Combine(folder, Path.GetFileName(name));
}
