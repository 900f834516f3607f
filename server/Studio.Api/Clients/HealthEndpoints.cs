using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Clearance;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;
using Studio.Core.Clients;

namespace Studio.Api.Clients;

/// <summary>What changes what suits her: factors and letters.</summary>
public static class HealthEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapHealth(this IEndpointRouteBuilder app)
    {
        var her = app.MapGroup("/api/clients/{clientId}")
            .WithTags("Health")
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        her.MapPost("/factors", AddFactorAsync)
            .WithName("AddFactor")
            .RequireAuthorization(Policies.DeskOrClient);
        her.MapPost("/factors/{factorId}/end", EndFactorAsync)
            .WithName("EndFactor")
            .RequireAuthorization(Policies.DeskOrClient);
        her.MapPost("/clearances", FileLetterAsync)
            .WithName("FileClearance")
            .RequireAuthorization(Policies.Reviewer);
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> AddFactorAsync(
        long clientId,
        FactorRequest request,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes,
        RuleBook book
    )
    {
        if (book.FactorOf(request.Code) is null)
            return ClientRefusals.NoSuchFactor.ToProblem();
        if (request.To < request.From)
            return ClientRefusals
                .Invalid("bad-range", "The last day lies before the first.", "to")
                .ToProblem();
        await using var write = await database.BeginWriteAsync();
        if (!await KnowsAllAsync(write, reader, clientId))
            return BookingRefusals.NoSuchClient.ToProblem();
        var id = await HealthStore.AddFactorAsync(
            write,
            clientId,
            request.Code,
            request.From,
            request.To,
            changes.Now,
            reader.AccountId
        );
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Factors);
        await changes.DoneAsync(write, clientId);
        return TypedResults.Created($"/api/clients/{clientId}", new Made(id));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> EndFactorAsync(
        long clientId,
        long factorId,
        FactorEnd request,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (!await KnowsAllAsync(write, reader, clientId))
            return BookingRefusals.NoSuchClient.ToProblem();
        if (
            (await HealthStore.FactorsAsync(write, clientId)).Find(f => f.Id == factorId)
            is not { } factor
        )
            return ClientRefusals.NotHerFactor.ToProblem();
        if (request.On < factor.FromOn)
            return ClientRefusals
                .Invalid("bad-range", "The last day lies before the first.", "on")
                .ToProblem();
        await HealthStore.EndFactorAsync(write, factorId, request.On);
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Factors);
        await changes.DoneAsync(write, clientId);
        return TypedResults.NoContent();
    }

    // A paper letter that the reviewer has before her: filed and read in one.
    private static async Task<Results<Created<Made>, ProblemHttpResult>> FileLetterAsync(
        long clientId,
        LetterReview request,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            await ClientStore.FindAsync(write, clientId) is not { } row
            || !reader.ReadsLetters(clientId, row.Ended)
        )
            return BookingRefusals.NoSuchClient.ToProblem();
        var today = changes.Today(row);
        var letter = request.ToLetter();
        if (
            LetterRefusals.WhyNot(letter.IssuedOn, letter.ExpiresOn, letter.Terms, today) is
            { } refusal
        )
            return refusal.ToProblem();
        var id = await LetterStore.AddAsync(
            write,
            clientId,
            letter,
            today,
            changes.Now,
            reader.AccountId
        );
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Letter);
        await changes.DoneAsync(write, clientId);
        return TypedResults.Created($"/api/clients/{clientId}", new Made(id));
    }

    private static async Task<bool> KnowsAllAsync(Read read, Reader reader, long clientId) =>
        await ClientStore.AudienceAsync(read, reader, clientId)
            is Audience.Owner
                or Audience.Herself;
}
