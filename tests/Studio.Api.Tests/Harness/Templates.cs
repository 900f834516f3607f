using System.Collections.Concurrent;
using Microsoft.Data.Sqlite;
using Studio.Api.Data;

namespace Studio.Api.Tests.Harness;

/// <summary>Data folders made once in a run and copied for every app, which is much quicker than making them again.</summary>
internal static class Templates
{
    private static readonly string Root = MakeRoot();
    private static readonly Lazy<string> EmptyFolder = new(MakeEmpty);
    private static readonly ConcurrentDictionary<Instant, Lazy<Task<string>>> Demos = new();
    private static int _number;

    /// <summary>A new folder whose database has every migration and no rows.</summary>
    public static string CopyOfEmpty() => CopyOf(EmptyFolder.Value);

    /// <summary>A new folder with the demo studio as loaded at that moment.</summary>
    public static async Task<string> CopyOfDemoAsync(Instant now) =>
        CopyOf(await Demos.GetOrAdd(now, at => new(() => MakeDemoAsync(at))).Value);

    /// <summary>A new folder with nothing in it.</summary>
    public static string NewFolder() =>
        Directory
            .CreateDirectory(Path.Combine(Root, Interlocked.Increment(ref _number).ToString("d4")))
            .FullName;

    private static string MakeEmpty()
    {
        var folder = NewFolder();
        var file = new DataFolder(folder).DatabaseFile;
        Migrations.Run($"Data Source={file};Pooling=false");
        WriteEverythingIntoTheFile(file);
        return folder;
    }

    private static async Task<string> MakeDemoAsync(Instant now)
    {
        var folder = NewFolder();
        await using (StudioApp.DemoIn(folder, now)) { }
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
        File.Copy(new DataFolder(template).DatabaseFile, new DataFolder(folder).DatabaseFile);
        return folder;
    }

    private static string MakeRoot()
    {
        var root = Directory.CreateTempSubdirectory("studio-tests-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(root, recursive: true);
        return root;
    }
}
