using System.Text.Json;
using NodaTime;
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

/// <summary>An entry as it stands in the table, opened.</summary>
public sealed record IncidentRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Whom it concerns.</summary>
    public long ClientId { get; init; }

    /// <summary>Her name.</summary>
    public string Name { get; init; } = "";

    /// <summary>In which session.</summary>
    public long? SessionId { get; init; }

    /// <summary>The class of that session.</summary>
    public string? ClassName { get; init; }

    /// <summary>The entry this one adds to.</summary>
    public long? AboutId { get; init; }

    /// <summary>When it was raised.</summary>
    public Instant RaisedAt { get; init; }

    /// <summary>Who raised it.</summary>
    public string? RaisedBy { get; init; }

    /// <summary>Codes of warning signs, as JSON.</summary>
    public string Signs { get; init; } = "";

    /// <summary>What happened.</summary>
    public string Happened { get; init; } = "";

    /// <summary>What was done.</summary>
    public string Done { get; init; } = "";

    /// <summary>Codes of warning signs.</summary>
    public IReadOnlyList<string> Codes => JsonSerializer.Deserialize<string[]>(Signs)!;
}

/// <summary>Incidents: entries are only ever added.</summary>
public static class IncidentStore
{
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

    /// <summary>Entries about one client, or about all, newest first.</summary>
    public static async Task<List<IncidentRow>> ListAsync(Read read, long? clientId) =>
        [
            .. (
                await read.ListAsync<IncidentRow>(
                    """
                    select i.id, i.client_id as ClientId, c.name, i.session_id as SessionId, k.name as ClassName,
                           i.about_id as AboutId, i.raised_at as RaisedAt, a.name as RaisedBy, i.signs, i.happened, i.done
                      from incidents i
                      join clients c on c.id = i.client_id
                      left join accounts a on a.id = i.raised_by
                      left join sessions s on s.id = i.session_id
                      left join classes k on k.id = s.class_id
                     where @clientId is null or i.client_id = @clientId
                     order by i.id desc
                    """,
                    new { clientId }
                )
            ).Select(i =>
                i with
                {
                    Signs = read.Seal.Open(i.Signs),
                    Happened = read.Seal.Open(i.Happened),
                    Done = read.Seal.Open(i.Done),
                }
            ),
        ];
}
