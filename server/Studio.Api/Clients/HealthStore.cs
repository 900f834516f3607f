using NodaTime;
using Studio.Api.Data;

namespace Studio.Api.Clients;

/// <summary>A factor as it stands in the table.</summary>
public sealed record HeldFactorRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Client.</summary>
    public long ClientId { get; init; }

    /// <summary>Code of the catalogue.</summary>
    public string Code { get; init; } = "";

    /// <summary>First day.</summary>
    public LocalDate FromOn { get; init; }

    /// <summary>Last day.</summary>
    public LocalDate? ToOn { get; init; }

    /// <summary>The screening in which she told it; null when staff entered it.</summary>
    public long? ScreeningId { get; init; }
}

/// <summary>Factors and holds.</summary>
public static class HealthStore
{
    /// <summary>Her factors, past and present.</summary>
    public static async Task<List<HeldFactorRow>> FactorsAsync(Read read, long clientId) =>
        [
            .. (
                await read.ListAsync<HeldFactorRow>(
                    """
                    select id, client_id as ClientId, code, from_on as FromOn, to_on as ToOn, screening_id as ScreeningId
                      from client_factors where client_id = @clientId
                     order by to_on is not null, from_on desc, id desc
                    """,
                    new { clientId }
                )
            ).Select(f => f with { Code = read.Seal.Open(f.Code) }),
        ];

    /// <summary>Adds a factor.</summary>
    public static Task<long> AddFactorAsync(
        Write write,
        long clientId,
        string code,
        LocalDate from,
        LocalDate? to,
        Instant at,
        long? by,
        long? screeningId = null
    ) =>
        write.InsertAsync(
            """
            insert into client_factors (client_id, code, from_on, to_on, entered_at, entered_by, screening_id)
            values (@clientId, @code, @from, @to, @at, @by, @screeningId)
            """,
            new
            {
                clientId,
                code = write.Seal.Close(code),
                from,
                to,
                at,
                by,
                screeningId,
            }
        );

    /// <summary>Sets a factor's last day.</summary>
    public static Task EndFactorAsync(Write write, long id, LocalDate on) =>
        write.ExecuteAsync("update client_factors set to_on = @on where id = @id", new { id, on });

    /// <summary>Holds all her bookings; a hold that stands already stays as it is.</summary>
    public static Task HoldAsync(
        Write write,
        long clientId,
        LocalDate from,
        Instant at,
        long? by,
        long? incidentId = null
    ) =>
        write.ExecuteAsync(
            """
            insert into holds (client_id, from_on, entered_at, entered_by, incident_id)
            values (@clientId, @from, @at, @by, @incidentId)
            on conflict do nothing
            """,
            new
            {
                clientId,
                from,
                at,
                by,
                incidentId,
            }
        );
}
