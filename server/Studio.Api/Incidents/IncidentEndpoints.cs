using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;

namespace Studio.Api.Incidents;

/// <summary>What happened, for the owner: read, and added to, never rewritten.</summary>
public static class IncidentEndpoints
{
    private const int PageSize = 100;

    private static readonly Refusal NoSuchIncident = new(
        RefusalKind.NotFound,
        "no-such-incident",
        "There is no such entry."
    );

    /// <summary>Maps the routes.</summary>
    public static void MapIncidents(this IEndpointRouteBuilder app)
    {
        app.MapWarnings();
        var incidents = app.MapGroup("/api/incidents")
            .WithTags("Incidents")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400)
            .ProducesProblem(404);
        incidents.MapGet("/", ListAsync).WithName("Incidents").Audited(AuditKinds.Incident);
        incidents.MapPost("/{incidentId}/more", MoreAsync).WithName("AddToIncident");
    }

    private static async Task<Ok<List<IncidentMessage>>> ListAsync(
        long? client,
        long? session,
        QueryDay? on,
        string? find,
        [Range(1, long.MaxValue)] long? before,
        Database database,
        RuleBook book,
        HealthAudit audit
    )
    {
        await using var read = await database.ReadAsync();
        var wanted = new IncidentsWanted
        {
            ClientId = client,
            SessionId = session,
            On = on?.Value,
            Words = SearchText.Words(find),
            Before = before,
        };
        var firsts = await IncidentStore.ListAsync(read, wanted, PageSize);
        var more = await IncidentStore.MoreAsync(read, firsts.ConvertAll(i => i.Id));
        audit.Saw(firsts.Select(i => i.ClientId));
        return TypedResults.Ok(firsts.ConvertAll(i => IncidentWords.For(i, more[i.Id], book)));
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> MoreAsync(
        long incidentId,
        IncidentMore request,
        Reader reader,
        Database database,
        HealthAudit audit,
        NodaTime.IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await IncidentStore.FindAsync(write, incidentId) is not { } entry)
            return NoSuchIncident.ToProblem();
        var id = await IncidentStore.AddAsync(
            write,
            new NewIncident
            {
                ClientId = entry.ClientId,
                SessionId = entry.SessionId,
                AboutId = entry.AboutId ?? entry.Id,
                Signs = [],
                Happened = request.Happened.Trim(),
                Done = request.Done?.Trim() ?? "",
            },
            clock.GetCurrentInstant(),
            reader.AccountId
        );
        await audit.ChangedAsync(write, reader, entry.ClientId, AuditKinds.Incident);
        write.Tell("client", entry.ClientId);
        await write.CommitAsync();
        return TypedResults.Created("/api/incidents", new Made(id));
    }
}
