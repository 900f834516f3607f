using Studio.Api.Http;

namespace Studio.Api.Data;

/// <summary>The folder that holds everything this studio has written: the database and the keys.</summary>
/// <param name="Folder">Absolute path; made when it is missing.</param>
/// <param name="Keys">The folder of the keys that seal cookies, health records and letters; keep it apart from backups of the data.</param>
public sealed record DataFolder(string Folder, string Keys)
{
    /// <summary>A folder that holds its keys too.</summary>
    public DataFolder(string folder)
        : this(folder, Path.Combine(folder, "keys")) { }

    /// <summary>The database file.</summary>
    public string DatabaseFile => Path.Combine(Folder, "studio.db");

    /// <summary>The folder of clearance letters, sealed and under random names; never served.</summary>
    public string Letters => Path.Combine(Folder, "letters");

    /// <summary>The folder of the files that prove qualifications, kept in the same way.</summary>
    public string Proofs => Path.Combine(Folder, "proofs");

    /// <summary>
    /// From the setting <c>Studio:Data</c>, or else a folder <c>data</c> where the program was started; the keys from
    /// <c>Studio:Keys</c>, or else in a folder <c>keys</c> inside it.
    /// </summary>
    /// <exception cref="SettingException">The folder cannot be made, or not be written to.</exception>
    public static DataFolder From(IConfiguration configuration)
    {
        var folder = Path.GetFullPath(configuration["Studio:Data"] ?? "data");
        var keys = Path.GetFullPath(configuration["Studio:Keys"] ?? new DataFolder(folder).Keys);
        try
        {
            var made = new DataFolder(folder, keys);
            foreach (var one in new[] { folder, keys, made.Letters, made.Proofs })
                Make(one);
            var probe = Path.Combine(folder, $"writable-{Guid.NewGuid():N}");
            File.WriteAllText(probe, "");
            File.Delete(probe);
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            throw new SettingException(
                $"The data folder {folder} cannot be written to: {refused.Message} Choose another with Studio__Data, or change its rights."
            );
        }

        return new DataFolder(folder, keys);
    }

    // Health data: a folder made here is for the program's own user alone.
    private static void Make(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(
                folder,
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute
            );
    }
}
