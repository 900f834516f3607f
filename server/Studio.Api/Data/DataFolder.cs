using Studio.Api.Http;

namespace Studio.Api.Data;

/// <summary>The folder that holds everything this studio has written: the database and the keys.</summary>
/// <param name="Folder">Absolute path; made when it is missing.</param>
public sealed record DataFolder(string Folder)
{
    /// <summary>The database file.</summary>
    public string DatabaseFile => Path.Combine(Folder, "studio.db");

    /// <summary>The folder of the keys that protect cookies.</summary>
    public string Keys => Path.Combine(Folder, "keys");

    /// <summary>From the setting <c>Studio:Data</c>; a folder <c>data</c> where the program was started when it is not set.</summary>
    /// <exception cref="SettingException">The folder cannot be made, or not be written to.</exception>
    public static DataFolder From(IConfiguration configuration)
    {
        var folder = Path.GetFullPath(configuration["Studio:Data"] ?? "data");
        try
        {
            // Health data: a folder made here is for the program's own user alone.
            if (OperatingSystem.IsWindows())
                Directory.CreateDirectory(folder);
            else
                Directory.CreateDirectory(
                    folder,
                    UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute
                );
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

        return new DataFolder(folder);
    }
}
