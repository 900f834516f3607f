using NodaTime;
using Studio.Api.Data;
using Studio.Core.Accounts;

namespace Studio.Api.Audit;

/// <summary>Writes down who reads and changes health records. A read is on record before its answer leaves.</summary>
public sealed class HealthAudit(Database database, IClock clock)
{
    private readonly HashSet<long> _seen = [];

    /// <summary>This answer speaks of her health; see <see cref="AuditedRoutes"/>.</summary>
    public void Saw(long clientId) => _seen.Add(clientId);

    /// <summary>These answers speak of their health.</summary>
    public void Saw(IEnumerable<long> clientIds) => _seen.UnionWith(clientIds);

    /// <summary>A change, recorded in the transaction that makes it.</summary>
    public Task ChangedAsync(Write write, Reader reader, long clientId, string kind) =>
        AuditStore.AddAsync(write, Entry(reader, AuditAct.Change, clientId, kind), [clientId]);

    /// <summary>What this request has read, recorded in a transaction of its own.</summary>
    internal async Task RecordReadsAsync(Reader reader, string kind, long? sessionId)
    {
        if (_seen.Count == 0)
            return;
        await using var write = await database.BeginWriteAsync();
        foreach (var one in _seen.GroupBy(id => reader.SeenAs(id)))
            await AuditStore.AddAsync(
                write,
                Entry(reader, AuditAct.Read, one.First(), kind) with
                {
                    SessionId = sessionId,
                },
                [.. one]
            );
        await write.CommitAsync();
        _seen.Clear();
    }

    private AuditRow Entry(Reader reader, AuditAct act, long clientId, string kind) =>
        new()
        {
            At = clock.GetCurrentInstant(),
            AccountId = reader.AccountId,
            SeenAs = reader.SeenAs(clientId),
            Act = act,
            Kind = kind,
        };
}
