using Dapper;
using Microsoft.Data.Sqlite;
using Studio.Api.Catalogue;
using Studio.Api.Http;
using Studio.Core.Catalogue;

namespace Studio.Api.Data;

/// <summary>A transaction that reads; see <see cref="Database.ReadAsync"/>.</summary>
public class Read(SqliteConnection connection, SqliteTransaction transaction, Seal seal)
    : IAsyncDisposable
{
    /// <summary>Seals and opens what the health record holds.</summary>
    public Seal Seal { get; } = seal;

    /// <summary>All rows.</summary>
    public async Task<List<T>> ListAsync<T>(string sql, object? parameters = null) =>
        (await Connection.QueryAsync<T>(sql, parameters, Transaction)).AsList();

    /// <summary>The one row, or nothing.</summary>
    public Task<T?> FindAsync<T>(string sql, object? parameters = null) =>
        Connection.QuerySingleOrDefaultAsync<T>(sql, parameters, Transaction);

    /// <summary>The one value; a query that always has one.</summary>
    public async Task<T> ValueAsync<T>(string sql, object? parameters = null) =>
        (await Connection.ExecuteScalarAsync<T>(sql, parameters, Transaction))!;

    /// <inheritdoc/>
    public virtual async ValueTask DisposeAsync()
    {
        await Transaction.DisposeAsync();
        await Connection.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    private protected SqliteConnection Connection { get; } = connection;

    private protected SqliteTransaction Transaction { get; } = transaction;
}

/// <summary>The write transaction; see <see cref="Database.BeginWriteAsync"/>.</summary>
public sealed class Write(
    SqliteConnection connection,
    SqliteTransaction transaction,
    Seal seal,
    Live live,
    CatalogueInForce catalogue,
    Action release
) : Read(connection, transaction, seal)
{
    private CatalogueVersion? _next;
    private readonly List<Change> _changes = [];
    private Action? _release = release;

    /// <summary>Runs a statement; the number of rows it touched.</summary>
    public Task<int> ExecuteAsync(string sql, object? parameters = null) =>
        Connection.ExecuteAsync(sql, parameters, Transaction);

    /// <summary>Runs an insert and gives the new row's id.</summary>
    public Task<long> InsertAsync(string sql, object parameters) =>
        ValueAsync<long>($"{sql} returning id", parameters);

    /// <summary>The rules that hold for this write: those in force since it has its turn, or those it puts in force itself.</summary>
    public RuleBook Book => (_next ?? catalogue.Current).Book;

    /// <summary>From here on this write goes by another catalogue, and once it is committed everybody does.</summary>
    public void GoBy(CatalogueVersion next) => _next = next;

    /// <summary>Something that open pages may want to ask for again once this is committed.</summary>
    public void Tell(string topic, long? id = null) => _changes.Add(new Change(topic, id));

    /// <summary>Makes it true, then tells the open pages.</summary>
    public async Task CommitAsync()
    {
        var unspoken = await UnspokenAsync();
        await Transaction.CommitAsync();
        // No other write can have its turn before this one is disposed of.
        if (_next is not null)
            catalogue.Put(_next);
        foreach (var change in _changes.Distinct())
            live.Publish(
                change with
                {
                    Unspoken = change is { Topic: "client", Id: { } id } && unspoken.Contains(id),
                }
            );
    }

    private async Task<HashSet<long>> UnspokenAsync()
    {
        var told = _changes.Where(c => c.Topic == "client").Select(c => c.Id).OfType<long>();
        return
        [
            .. await ListAsync<long>(
                """
                select client_id from pregnancies
                 where is_current = 1 and ended_on is not null and client_id in @told
                """,
                new { told = told.ToHashSet() }
            ),
        ];
    }

    /// <inheritdoc/>
    public override async ValueTask DisposeAsync()
    {
        try
        {
            await base.DisposeAsync();
        }
        finally
        {
            Interlocked.Exchange(ref _release, null)?.Invoke();
        }
    }
}
