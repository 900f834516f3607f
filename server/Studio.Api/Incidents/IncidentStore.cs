using System.Text.Json;
using NodaTime;
using Studio.Api.Clients;
using Studio.Api.Data;

namespace Studio.Api.Incidents;

/// <summary>Something that happened at the door, in class, or that she told.</summary>
public sealed record NewIncident
{
    /// <summary>Whom it concerns.</summary>
    public required long ClientId { get; init; }

    /// <summary>In which session; null outside of one.</summary>
    public long? SessionId { get; init; }

    /// <summary>The entry this one adds to; null for a first one.</summary>
    public long? AboutId { get; init; }

    /// <summary>Codes of warning signs; may be empty when it was something else.</summary>
    public required IReadOnlyList<string> Signs { get; init; }

    /// <summary>What happened.</summary>
    public required string Happened { get; init; }

    /// <summary>What was done.</summary>
    public required string Done { get; init; }
}

/// <summary>Which entries are wanted; everything given must be met.</summary>
public sealed record IncidentsWanted
{
    /// <summary>About one client.</summary>
    public long? ClientId { get; init; }

    /// <summary>Raised in one session.</summary>
    public long? SessionId { get; init; }

    /// <summary>Raised in a session of one day.</summary>
    public LocalDate? On { get; init; }

    /// <summary>Words that her name holds, folded when they are compared.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Written before this entry.</summary>
    public long? Before { get; init; }
}

/// <summary>Entries: they are only ever added.</summary>
public static class IncidentStore
{
    private const string Select = """
        select i.id, i.client_id as ClientId, c.name, i.session_id as SessionId, k.name as ClassName,
               s.on_date as SessionOn, s.starts_local as StartsLocal, l.name as Place, l.zone, i.about_id as AboutId,
               i.raised_at as RaisedAt, a.name as RaisedBy, i.signs, i.happened, i.done,
               h.from_on as HeldFrom, h.lifted_on as LiftedOn
          from incidents i
          join clients c on c.id = i.client_id
          left join accounts a on a.id = i.raised_by
          left join sessions s on s.id = i.session_id
          left join classes k on k.id = s.class_id
          left join rooms r on r.id = s.room_id
          join locations l on l.id = coalesce(r.location_id, c.home_location_id)
          -- What she was held by once this had been written: a hold of its own, or the one of the same day.
          left join holds h on h.id = (select max(x.id) from holds x
                                        where x.client_id = i.client_id
                                          and (x.incident_id = i.id or x.entered_at <= i.raised_at))
        """;

    /// <summary>Adds an entry.</summary>
    public static Task<long> AddAsync(Write write, NewIncident incident, Instant at, long by) =>
        write.InsertAsync(
            """
            insert into incidents (client_id, session_id, about_id, raised_at, raised_by, signs, happened, done)
            values (@ClientId, @SessionId, @AboutId, @at, @by, @signs, @happened, @done)
            """,
            new
            {
                incident.ClientId,
                incident.SessionId,
                incident.AboutId,
                at,
                by,
                signs = write.Seal.Close(JsonSerializer.Serialize(incident.Signs)),
                happened = write.Seal.Close(incident.Happened),
                done = write.Seal.Close(incident.Done),
            }
        );

    /// <summary>One entry, or null.</summary>
    public static async Task<IncidentRow?> FindAsync(Read read, long id) =>
        (
            await OpenedAsync(
                read,
                $"{Select} where i.id = @id",
                new Dictionary<string, object?>(StringComparer.Ordinal) { ["id"] = id }
            )
        ).SingleOrDefault();

    /// <summary>First entries, newest first; what was added to them is asked for by <see cref="MoreAsync"/>.</summary>
    /// <param name="read">The transaction.</param>
    /// <param name="wanted">Which.</param>
    /// <param name="most">How many at most.</param>
    public static Task<List<IncidentRow>> ListAsync(Read read, IncidentsWanted wanted, int most)
    {
        var parameters = new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            ["client"] = wanted.ClientId,
            ["session"] = wanted.SessionId,
            ["on"] = wanted.On,
            ["before"] = wanted.Before,
            ["most"] = most,
        };
        var named = wanted.Words.Select(
            (word, i) =>
            {
                parameters[$"w{i}"] = SearchText.Like(word);
                return $" and c.search like @w{i} escape '\\'";
            }
        );
        return OpenedAsync(
            read,
            $"""
            {Select}
             where i.about_id is null
               and (@client is null or i.client_id = @client)
               and (@session is null or i.session_id = @session)
               and (@on is null or s.on_date = @on)
               and (@before is null or i.id < @before)
               {string.Concat(named)}
             order by i.id desc
             limit @most
            """,
            parameters
        );
    }

    /// <summary>What was added to these entries, in the order it was written.</summary>
    public static async Task<ILookup<long, IncidentRow>> MoreAsync(
        Read read,
        IReadOnlyCollection<long> ids
    ) =>
        (
            await OpenedAsync(
                read,
                $"{Select} where i.about_id in @ids order by i.id",
                new Dictionary<string, object?>(StringComparer.Ordinal) { ["ids"] = ids }
            )
        ).ToLookup(i => i.AboutId!.Value);

    private static async Task<List<IncidentRow>> OpenedAsync(
        Read read,
        string sql,
        Dictionary<string, object?> parameters
    ) =>
        [
            .. (await read.ListAsync<IncidentRow>(sql, parameters)).Select(i =>
                i with
                {
                    Signs = read.Seal.Open(i.Signs),
                    Happened = read.Seal.Open(i.Happened),
                    Done = read.Seal.Open(i.Done),
                }
            ),
        ];
}
