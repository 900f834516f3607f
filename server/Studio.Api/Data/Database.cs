using Dapper;
using Microsoft.Data.Sqlite;
using Studio.Api.Catalogue;
using Studio.Api.Http;

namespace Studio.Api.Data;

/// <summary>The studio's SQLite file: many readers, one writer at a time inside this process.</summary>
public sealed class Database : IDisposable
{
    private readonly string _connectionString;
    private readonly SemaphoreSlim _writer = new(1, 1);
    private readonly Live _live;
    private readonly Seal _seal;
    private readonly CatalogueInForce _catalogue;

    static Database() => TypeHandlers.Register();

    /// <summary>Opens nothing yet; the file is made by <see cref="Migrations"/>.</summary>
    public Database(DataFolder folder, Live live, Seal seal, CatalogueInForce catalogue)
    {
        (_live, _seal, _catalogue) = (live, seal, catalogue);
        _connectionString = new SqliteConnectionStringBuilder
        {
            DataSource = folder.DatabaseFile,
            ForeignKeys = true,
            Pooling = true,
            DefaultTimeout = 30,
        }.ToString();
    }

    /// <summary>The connection string, for the migrations.</summary>
    public string ConnectionString => _connectionString;

    /// <summary>One consistent view of the data, for as long as it is held.</summary>
    public async Task<Read> ReadAsync()
    {
        var connection = await OpenAsync();
        return new Read(connection, connection.BeginTransaction(deferred: true), _seal);
    }

    /// <summary>
    /// Begins the one write transaction (<c>begin immediate</c>). Not committed means rolled back. Writers queue here
    /// rather than at SQLite's own lock, which keeps the wait short and fair.
    /// </summary>
    public async Task<Write> BeginWriteAsync()
    {
        await _writer.WaitAsync();
        try
        {
            var connection = await OpenAsync();
            return new Write(
                connection,
                connection.BeginTransaction(deferred: false),
                _seal,
                _live,
                _catalogue,
                () => _writer.Release()
            );
        }
        catch
        {
            _writer.Release();
            throw;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _writer.Dispose();

    private async Task<SqliteConnection> OpenAsync()
    {
        var connection = new SqliteConnection(_connectionString);
        await connection.OpenAsync();
        // A booking is on disk when she is told so.
        await connection.ExecuteAsync("pragma synchronous = full");
        // What is taken away is overwritten in the file, not only no longer pointed to.
        await connection.ExecuteAsync("pragma secure_delete = on");
        return connection;
    }

    /// <summary>
    /// Writes the log of changes into the file and empties it, so that what was taken away stands in neither. While
    /// somebody reads, as much as can be is done; the next call does the rest.
    /// </summary>
    public async Task EmptyLogAsync()
    {
        await using var connection = await OpenAsync();
        await connection.ExecuteAsync("pragma wal_checkpoint(truncate)");
    }
}
