using System.Reflection;
using Dapper;
using DbUp;
using DbUp.Engine;
using Microsoft.Data.Sqlite;

namespace Studio.Api.Data;

/// <summary>Brings the database file up to date; forward only, each script once, in the order of their names.</summary>
public static class Migrations
{
    /// <summary>The scripts, in order.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [.. Scripts().Select(s => s.Name).Order(StringComparer.Ordinal)];

    /// <summary>Runs what has not run yet, up to and including <paramref name="last"/> (all when null).</summary>
    /// <exception cref="InvalidOperationException">A script failed; the database stays as it was before that script.</exception>
    public static void Run(string connectionString, string? last = null)
    {
        using (var connection = new SqliteConnection(connectionString))
        {
            connection.Open();
            connection.Execute("pragma journal_mode = wal");
        }

        var result = DeployChanges
            .To.SqliteDatabase(connectionString)
            .WithScripts(
                Scripts().Where(s => last is null || string.CompareOrdinal(s.Name, last) <= 0)
            )
            .WithTransactionPerScript()
            .WithVariablesDisabled()
            .LogToNowhere()
            .Build()
            .PerformUpgrade();
        if (!result.Successful)
            throw new InvalidOperationException(
                $"Migration {result.ErrorScript?.Name} failed.",
                result.Error
            );
    }

    private static IEnumerable<SqlScript> Scripts()
    {
        var assembly = Assembly.GetExecutingAssembly();
        const string prefix = "migrations.";
        foreach (
            var name in assembly
                .GetManifestResourceNames()
                .Where(n => n.StartsWith(prefix, StringComparison.Ordinal))
        )
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            using var reader = new StreamReader(stream);
            yield return new SqlScript(name[prefix.Length..], reader.ReadToEnd());
        }
    }
}
