using System.Collections.Concurrent;
using Microsoft.Data.Sqlite;
using Studio.Api.Data;

namespace Studio.Api.Tests.Harness;

/// <summary>Data folders made once in a run and copied for every app, which is much quicker than making them again.</summary>
internal static class Templates
{
    private static readonly string Root = MakeRoot();
    private static readonly Lazy<Task<string>> EmptyFolder = new(() =>
        MakeAsync(demo: false, StudioApp.Start)
    );
    private static readonly ConcurrentDictionary<Instant, Lazy<Task<string>>> Demos = new();
    private static int _number;

    /// <summary>A new folder as the first start leaves it when there is neither a demo nor a setup.</summary>
    public static async Task<string> CopyOfEmptyAsync() => CopyOf(await EmptyFolder.Value);

    /// <summary>A new folder with the demo studio as loaded at that moment.</summary>
    public static async Task<string> CopyOfDemoAsync(Instant now) =>
        CopyOf(await Demos.GetOrAdd(now, at => new(() => MakeAsync(demo: true, at))).Value);

    /// <summary>A new folder with nothing in it.</summary>
    public static string NewFolder() =>
        Directory
            .CreateDirectory(Path.Combine(Root, Interlocked.Increment(ref _number).ToString("d4")))
            .FullName;

    private static async Task<string> MakeAsync(bool demo, Instant now)
    {
        var folder = NewFolder();
        await using (StudioApp.In(folder, now, demo)) { }
        WriteEverythingIntoTheFile(new DataFolder(folder).DatabaseFile);
        return folder;
    }

    // What stands only in the write-ahead log would be missing from the copy.
    private static void WriteEverythingIntoTheFile(string file)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=false");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "pragma wal_checkpoint(truncate)";
        command.ExecuteNonQuery();
    }

    private static string CopyOf(string template)
    {
        var folder = NewFolder();
        var (from, to) = (new DataFolder(template), new DataFolder(folder));
        File.Copy(from.DatabaseFile, to.DatabaseFile);
        Directory.CreateDirectory(to.Keys);
        foreach (var key in Directory.GetFiles(from.Keys))
            File.Copy(key, Path.Combine(to.Keys, Path.GetFileName(key)));
        return folder;
    }

    private static string MakeRoot()
    {
        // Every write waits for the disk; on a memory file system, where there is one, it need not.
        const string memory = "/dev/shm";
        var root = Directory.Exists(memory)
            ? Directory
                .CreateDirectory(Path.Combine(memory, $"studio-tests-{Guid.NewGuid():n}"))
                .FullName
            : Directory.CreateTempSubdirectory("studio-tests-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(root, recursive: true);
        return root;
    }
}
