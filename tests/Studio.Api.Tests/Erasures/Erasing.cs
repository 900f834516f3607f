using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;

namespace Studio.Api.Tests.Erasures;

/// <summary>Erases as the owner's page does, and looks for what is left.</summary>
internal static class Erasing
{
    /// <summary>Reads what would be done and confirms it.</summary>
    public static async Task<long> Erase(this HttpClient owner, long client)
    {
        var plan = await owner.Read($"/api/clients/{client}/erasure");
        using var answer = await owner.Post(
            $"/api/clients/{client}/erasure",
            new { name = (string)plan["name"]!, seen = (string)plan["seen"]! }
        );
        return (long)(await answer.Is(200))["erasureId"]!;
    }

    /// <summary>The studio keeps nothing for anybody.</summary>
    public static async Task KeepsNothing(this StudioApp app)
    {
        await app.HasPolicy("health-kept-years", "0");
        await app.HasPolicy("contact-kept-years", "0");
    }

    /// <summary>Every text of every table, opened, with the table it stands in.</summary>
    public static async Task<List<(string Table, string Text)>> EveryText(this StudioApp app)
    {
        var seal = app.Services.GetRequiredService<Seal>();
        var all = new List<(string, string)>();
        await using var connection = new SqliteConnection(
            app.Services.GetRequiredService<Database>().ConnectionString
        );
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        foreach (
            var table in await connection.QueryAsync<string>(
                "select name from sqlite_master where type = 'table'"
            )
        )
        {
            await using var reader = await connection.ExecuteReaderAsync(
                $"select * from \"{table}\""
            );
            while (await reader.ReadAsync(TestContext.Current.CancellationToken))
                for (var at = 0; at < reader.FieldCount; at++)
                    if (reader.GetValue(at) is string text)
                        all.Add((table, seal.Open(text)));
        }

        return all;
    }

    /// <summary>The bytes of the database and its log as they stand on the disk.</summary>
    public static string OnDisk(this StudioApp app)
    {
        var file = app.Services.GetRequiredService<DataFolder>().DatabaseFile;
        var text = new StringBuilder();
        foreach (var part in (string[])["", "-wal"])
            if (File.Exists(file + part))
            {
                using var stream = new FileStream(
                    file + part,
                    FileMode.Open,
                    FileAccess.Read,
                    FileShare.ReadWrite | FileShare.Delete
                );
                using var copy = new MemoryStream();
                stream.CopyTo(copy);
                text.Append(Encoding.Latin1.GetString(copy.ToArray()));
            }

        return text.ToString();
    }

    /// <summary>The letters' files on the disk.</summary>
    public static string[] LetterFiles(this StudioApp app) =>
        Directory.GetFiles(app.Services.GetRequiredService<DataFolder>().Letters);
}
