using NodaTime;
using Studio.Api.Data;
using Studio.Core.Screenings;

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
}

/// <summary>Factors, letters, screenings and holds.</summary>
public static class HealthStore
{
    /// <summary>Her factors, past and present.</summary>
    public static Task<List<HeldFactorRow>> FactorsAsync(Read read, long clientId) =>
        read.ListAsync<HeldFactorRow>(
            """
            select id, client_id as ClientId, code, from_on as FromOn, to_on as ToOn
              from client_factors where client_id = @clientId order by to_on is not null, from_on desc, id desc
            """,
            new { clientId }
        );

    /// <summary>Adds a factor.</summary>
    public static Task<long> AddFactorAsync(
        Write write,
        long clientId,
        string code,
        LocalDate from,
        LocalDate? to,
        Instant at,
        long? by
    ) =>
        write.InsertAsync(
            """
            insert into client_factors (client_id, code, from_on, to_on, entered_at, entered_by)
            values (@clientId, @code, @from, @to, @at, @by)
            """,
            new
            {
                clientId,
                code,
                from,
                to,
                at,
                by,
            }
        );

    /// <summary>Sets a factor's last day.</summary>
    public static Task EndFactorAsync(Write write, long id, LocalDate on) =>
        write.ExecuteAsync("update client_factors set to_on = @on where id = @id", new { id, on });

    /// <summary>Files a clearance letter. One written since a hold began lifts it.</summary>
    public static async Task<long> AddLetterAsync(
        Write write,
        long clientId,
        string issuedBy,
        LocalDate issuedOn,
        LocalDate expiresOn,
        LocalDate today,
        Instant at,
        long? by
    )
    {
        await write.ExecuteAsync(
            """
            update holds set lifted_on = @today
             where client_id = @clientId and lifted_on is null and from_on <= @issuedOn and from_on <= @today
            """,
            new
            {
                clientId,
                issuedOn,
                today,
            }
        );
        return await write.InsertAsync(
            """
            insert into letters (client_id, issued_by, issued_on, expires_on, entered_at, entered_by)
            values (@clientId, @issuedBy, @issuedOn, @expiresOn, @at, @by)
            """,
            new
            {
                clientId,
                issuedBy,
                issuedOn,
                expiresOn,
                at,
                by,
            }
        );
    }

    /// <summary>Records that the health questions were answered and what came of them.</summary>
    public static Task<long> AddScreeningAsync(
        Write write,
        long clientId,
        LocalDate answeredOn,
        ScreeningOutcome outcome,
        Instant at,
        long? by
    ) =>
        write.InsertAsync(
            """
            insert into screenings (client_id, answered_on, outcome, entered_at, entered_by)
            values (@clientId, @answeredOn, @outcome, @at, @by)
            """,
            new
            {
                clientId,
                answeredOn,
                outcome = System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(
                    outcome.ToString()
                ),
                at,
                by,
            }
        );

    /// <summary>Holds all her bookings; a hold that stands already stays as it is.</summary>
    public static Task HoldAsync(
        Write write,
        long clientId,
        LocalDate from,
        Instant at,
        long? by
    ) =>
        write.ExecuteAsync(
            """
            insert into holds (client_id, from_on, entered_at, entered_by)
            values (@clientId, @from, @at, @by)
            on conflict do nothing
            """,
            new
            {
                clientId,
                from,
                at,
                by,
            }
        );
}
