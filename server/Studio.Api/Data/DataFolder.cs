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
    public static DataFolder From(IConfiguration configuration)
    {
        var folder = Path.GetFullPath(configuration["Studio:Data"] ?? "data");
        Directory.CreateDirectory(folder);
        return new DataFolder(folder);
    }
}
