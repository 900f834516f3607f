using System.Text.Json;
using NodaTime;
using Studio.Api.Data;

namespace Studio.Api.Audit;

/// <summary>The audit trail: entries are only ever added.</summary>
public static class AuditStore
{
    /// <summary>Adds entries in this transaction, one for each client.</summary>
    /// <param name="write">The transaction.</param>
    /// <param name="entry">What was done; number, client and hash are set here.</param>
    /// <param name="clientIds">Whose records.</param>
    public static async Task AddAsync(
        Write write,
        AuditRow entry,
        IReadOnlyCollection<long> clientIds
    )
    {
        if (clientIds.Count == 0)
            return;
        var head = await HeadAsync(write);
        var key = Convert.FromBase64String(write.Seal.Open(head.Key));
        var (last, hash) = (head.Entries, head.Hash);
        foreach (var client in clientIds.Order())
        {
            var next = entry with
            {
                Id = ++last,
                ClientId = client,
                At = entry.At.WholeMilliseconds(),
            };
            hash = AuditChain.Next(key, hash, next);
            await write.ExecuteAsync(
                """
                insert into audit (id, at, account_id, seen_as, client_id, act, kind, session_id, hash)
                values (@Id, @At, @AccountId, @SeenAs, @ClientId, @act, @Kind, @SessionId, @hash)
                """,
                new
                {
                    next.Id,
                    next.At,
                    next.AccountId,
                    next.SeenAs,
                    next.ClientId,
                    act = JsonNamingPolicy.CamelCase.ConvertName(next.Act.ToString()),
                    next.Kind,
                    next.SessionId,
                    hash,
                }
            );
        }

        await write.ExecuteAsync(
            "update audit_head set entries = @last, hash = @hash, proof = @proof where id = 1",
            new
            {
                last,
                hash,
                proof = AuditChain.Proof(key, last, hash),
            }
        );
    }

    /// <summary>The newest entries first, of one client or of all.</summary>
    public static Task<List<AuditRow>> ListAsync(
        Read read,
        long? clientId,
        long? before,
        int take
    ) =>
        read.ListAsync<AuditRow>(
            """
            select a.id, a.at, a.account_id as AccountId, case when u.closed_at is null then u.name end as Who, a.seen_as as SeenAs, a.client_id as ClientId,
                   case when c.erased_at is null then c.name end as Whose, a.act, a.kind, a.session_id as SessionId, a.hash
              from audit a
              left join accounts u on u.id = a.account_id
              left join clients c on c.id = a.client_id
             where (@clientId is null or a.client_id = @clientId) and (@before is null or a.id < @before)
             order by a.id desc limit @take
            """,
            new
            {
                clientId,
                before,
                take,
            }
        );

    /// <summary>Goes through the whole chain; the number of entries, and the first that does not fit, if any.</summary>
    public static async Task<(long Entries, long? FirstBroken)> CheckAsync(Read read)
    {
        const int page = 5_000;
        var head = await read.FindAsync<HeadRow>(SelectHead);
        var (number, hash) = (0L, AuditChain.Beginning);
        if (head is null)
            return await read.ValueAsync<long>("select count(*) from audit") is var any and > 0
                ? (any, 1)
                : (0, null);
        var key = Convert.FromBase64String(read.Seal.Open(head.Key));
        while (true)
        {
            var rows = await read.ListAsync<AuditRow>(
                """
                select id, at, account_id as AccountId, seen_as as SeenAs, client_id as ClientId, act, kind,
                       session_id as SessionId, hash
                  from audit where id > @number order by id limit @page
                """,
                new { number, page }
            );
            foreach (var row in rows)
            {
                hash = AuditChain.Next(key, hash, row);
                if (row.Id != ++number || row.Hash != hash)
                    return (head.Entries, Math.Min(number, row.Id));
            }

            if (rows.Count < page)
                break;
        }

        var whole =
            head.Entries == number
            && head.Hash == hash
            && head.Proof == AuditChain.Proof(key, number, hash);
        return (head.Entries, whole ? null : number + 1);
    }

    private const string SelectHead =
        "select key, entries, hash, proof from audit_head where id = 1";

    private static async Task<HeadRow> HeadAsync(Write write)
    {
        if (await write.FindAsync<HeadRow>(SelectHead) is { } head)
            return head;
        var key = AuditChain.NewKey();
        head = new HeadRow
        {
            Key = write.Seal.Close(Convert.ToBase64String(key)),
            Hash = AuditChain.Beginning,
        };
        await write.ExecuteAsync(
            "insert into audit_head (id, key, entries, hash, proof) values (1, @Key, 0, @Hash, @proof)",
            new
            {
                head.Key,
                head.Hash,
                proof = AuditChain.Proof(key, 0, head.Hash),
            }
        );
        return head;
    }

    // What the table keeps, so that the hash is over what will be read back.
    private static Instant WholeMilliseconds(this Instant at) =>
        Instant.FromUnixTimeMilliseconds(at.ToUnixTimeMilliseconds());

    private sealed record HeadRow
    {
        public string Key { get; init; } = "";
        public long Entries { get; init; }
        public string Hash { get; init; } = "";
        public string Proof { get; init; } = "";
    }
}
