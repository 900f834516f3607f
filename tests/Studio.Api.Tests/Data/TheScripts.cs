using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;

namespace Studio.Api.Tests.Data;

/// <summary>The scripts that make the database, from an empty file.</summary>
public class TheScripts
{
    public static TheoryData<string> Names => [.. Migrations.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void From_an_empty_file_up_to_one_and_then_the_rest_gives_the_same_tables(string script)
    {
        using var file = new EmptyFile();
        Migrations.Run(file.Connection, script);
        var before = file.Ask("select scriptname from schemaversions order by schemaversionid");
        Assert.Equal(Migrations.Names.TakeWhile(n => n != script).Append(script), before);
        Migrations.Run(file.Connection);
        using var whole = new EmptyFile();
        Migrations.Run(whole.Connection);
        Assert.Equal(whole.Schema(), file.Schema());
        Assert.NotEmpty(whole.Schema());
    }

    [Fact]
    public async Task Running_them_again_changes_nothing_even_with_a_studio_in_it()
    {
        await using var app = await StudioApp.Demo();
        var rows = await app.Value<long>("select count(*) from bookings");
        Migrations.Run(app.Services.GetRequiredService<Database>().ConnectionString);
        Assert.Equal(
            Migrations.Names.Count,
            await app.Value<long>("select count(*) from schemaversions")
        );
        Assert.Equal(rows, await app.Value<long>("select count(*) from bookings"));
    }

    [Fact]
    public void Every_table_is_strict()
    {
        using var file = new EmptyFile();
        Migrations.Run(file.Connection);
        // The list of scripts that have run belongs to the library that runs them.
        Assert.Empty(
            file.Ask(
                """
                select name from pragma_table_list
                 where type = 'table' and strict = 0 and name not like 'sqlite%' and lower(name) <> 'schemaversions'
                """
            )
        );
        Assert.Equal("wal", Assert.Single(file.Ask("pragma journal_mode")));
    }

    [Fact]
    public async Task The_demo_studio_breaks_no_reference_and_no_index()
    {
        await using var app = await StudioApp.Demo();
        Assert.Equal(0, await app.Value<long>("select count(*) from pragma_foreign_key_check"));
        Assert.Equal("ok", await app.Value<string>("pragma integrity_check"));
        Assert.Equal(1, await app.Value<long>("pragma foreign_keys"));
        Assert.Equal(2, await app.Value<long>("pragma synchronous"));
        Assert.Equal(
            0,
            await app.Value<long>(
                """
                select count(*) from sessions s
                 where s.seats_taken <> (select count(*) from bookings b
                                          where b.session_id = s.id and b.status = 'booked')
                """
            )
        );
    }

    private sealed class EmptyFile : IDisposable
    {
        private readonly string _folder = Directory
            .CreateTempSubdirectory("studio-scripts-")
            .FullName;

        public string Connection =>
            $"Data Source={Path.Combine(_folder, "studio.db")};Pooling=false";

        public List<string> Ask(string sql)
        {
            using var connection = new SqliteConnection(Connection);
            return connection.Query<string>(sql).AsList();
        }

        public List<string> Schema() =>
            Ask("select sql from sqlite_master where sql is not null order by name, sql");

        public void Dispose() => Directory.Delete(_folder, recursive: true);
    }
}
