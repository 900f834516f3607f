using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Jobs;
using Studio.Api.Rosters;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Clients;
using Studio.Core.Intensity;

namespace Studio.Api.Clients;

/// <summary>Finding, adding and changing clients.</summary>
public static class ClientEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapClients(this IEndpointRouteBuilder app)
    {
        var desk = app.MapGroup("/api/clients")
            .WithTags("Clients")
            .RequireAuthorization(Policies.Desk);
        desk.MapGet("/", FindAsync).WithName("FindClients");
        desk.MapPost("/", AddAsync).WithName("AddClient").ProducesProblem(400).ProducesProblem(409);

        var client = app.MapGroup("/api/clients/{clientId}")
            .WithTags("Clients")
            .RequireAuthorization(Policies.DeskOrClient)
            .ProducesProblem(404);
        client.MapGet("/", CardAsync).WithName("Client").Audited(AuditKinds.Card);
        client
            .MapPut("/", ChangeAsync)
            .WithName("ChangeClient")
            .ProducesProblem(400)
            .ProducesProblem(403)
            .ProducesProblem(409);
    }

    private static async Task<List<ClientFound>> FindAsync(
        string? find,
        Reader reader,
        Database database
    )
    {
        await using var read = await database.ReadAsync();
        return await ClientStore.SearchAsync(
            read,
            SearchText.Words(find),
            withEnded: reader.IsOwner
        );
    }

    private static async Task<Results<Ok<ClientCard>, ProblemHttpResult>> CardAsync(
        long clientId,
        Reader reader,
        Database database,
        ClientCards cards
    )
    {
        await using var read = await database.ReadAsync();
        return await ClientStore.FindAsync(read, reader, clientId) is { } seen
            ? TypedResults.Ok(await cards.OfAsync(read, seen))
            : BookingRefusals.NoSuchClient.ToProblem();
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> AddAsync(
        NewClient request,
        Reader reader,
        Database database,
        ClientIntake intake,
        FlagSweep flags,
        AdvanceSweep advance,
        HealthAudit audit
    )
    {
        if (request.SharesConditions == true && !reader.IsOwner)
            return ClientRefusals.SharingIsHers.ToProblem();
        await using var write = await database.BeginWriteAsync();
        var answer = await intake.AddAsync(write, request, reader.AccountId);
        if (!answer.TryGet(out var id, out var refusal))
            return refusal.ToProblem();
        await advance.OfAsync(write, id);
        await flags.RefreshAsync(write, [id]);
        await audit.ChangedAsync(write, reader, id, AuditKinds.Intake);
        write.Tell("client", id);
        await write.CommitAsync();
        return TypedResults.Created($"/api/clients/{id}", new Made(id));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> ChangeAsync(
        long clientId,
        ContactChange request,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await ClientStore.FindAsync(write, reader, clientId) is not { } seen)
            return BookingRefusals.NoSuchClient.ToProblem();
        if (
            request.SharesConditions is { } shares
            && shares != seen.Row.SharesConditions
            && seen.Audience == Audience.FrontDesk
        )
            return ClientRefusals.SharingIsHers.ToProblem();
        var dated = request.BornOn is not null || request.ForgetBornOn == true;
        if (dated && seen.Audience == Audience.FrontDesk)
            return ClientRefusals.BirthDateIsHers.ToProblem();
        if (
            request.BornOn is { } birth
            && HeartRates.WhyNot(birth, changes.Today(seen.Row)) is { } notHers
        )
            return notHers.ToProblem();
        var row = ClientIntake.Contact(request, seen.Row);
        if (ClientIntake.WhyNot(row) is { } refusal)
            return refusal.ToProblem();
        if (await ClientStore.EmailTakenAsync(write, row.Email, clientId))
            return ClientRefusals.EmailTaken.ToProblem();
        await ClientStore.ChangeAsync(write, row, changes.Now);
        if (dated)
        {
            await BirthDates.SetAsync(
                write,
                clientId,
                request.ForgetBornOn == true ? null : request.BornOn
            );
            await audit.ChangedAsync(write, reader, clientId, AuditKinds.Card);
            write.Tell("session");
        }
        if (row.SharesConditions != seen.Row.SharesConditions)
            await audit.ChangedAsync(write, reader, clientId, AuditKinds.Sharing);
        write.Tell("client", clientId);
        await write.CommitAsync();
        return TypedResults.NoContent();
    }
}
