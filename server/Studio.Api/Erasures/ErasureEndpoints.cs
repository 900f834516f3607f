using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Clients;

namespace Studio.Api.Erasures;

/// <summary>A client's wish to be erased, and the owner who carries it out.</summary>
public static class ErasureEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapErasures(this IEndpointRouteBuilder app)
    {
        var hers = app.MapGroup("/api/clients/{clientId}/erasure")
            .WithTags("Erasures")
            .RequireAuthorization(Policies.OwnerOrClient)
            .ProducesProblem(404);
        hers.MapGet("/", PlanAsync).WithName("ErasurePlan");
        hers.MapPost("/wish", AskAsync).WithName("AskForErasure");
        hers.MapDelete("/wish", WithdrawAsync).WithName("TakeBackErasure");
        app.MapPost("/api/clients/{clientId}/erasure", EraseAsync)
            .WithName("Erase")
            .WithTags("Erasures")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        SetApartEndpoints.Map(app);
    }

    private static async Task<Results<Ok<ErasurePlan>, ProblemHttpResult>> PlanAsync(
        long clientId,
        Reader reader,
        Database database,
        ErasureOfClient erasure
    )
    {
        await using var read = await database.ReadAsync();
        return await FindAsync(read, reader, clientId) is { } her
            ? TypedResults.Ok(await erasure.PlanAsync(read, her))
            : BookingRefusals.NoSuchClient.ToProblem();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> AskAsync(
        long clientId,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await FindAsync(write, reader, clientId) is null)
            return BookingRefusals.NoSuchClient.ToProblem();
        await ErasureStore.AskAsync(write, clientId, clock.GetCurrentInstant(), reader.AccountId);
        write.Tell("erasures");
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> WithdrawAsync(
        long clientId,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await FindAsync(write, reader, clientId) is null)
            return BookingRefusals.NoSuchClient.ToProblem();
        if (!await ErasureStore.WithdrawAsync(write, clientId, clock.GetCurrentInstant()))
            return ErasureRefusals.NotAsked.ToProblem();
        write.Tell("erasures");
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<Ok<Erased>, ProblemHttpResult>> EraseAsync(
        long clientId,
        ErasureConfirmed request,
        Reader reader,
        Database database,
        ErasureOfClient erasure,
        ErasedFiles files
    )
    {
        long id;
        await using (var write = await database.BeginWriteAsync())
        {
            if (await ClientStore.FindAsync(write, clientId) is { } her)
            {
                var answer = await erasure.CarryOutAsync(write, reader, her, request);
                if (!answer.TryGet(out id, out var refusal))
                    return refusal.ToProblem();
                await write.CommitAsync();
            }
            // Once more changes nothing.
            else if (await ErasureStore.DoneForAsync(write, clientId) is { } before)
                id = before;
            else
                return BookingRefusals.NoSuchClient.ToProblem();
        }

        var left = await files.RemoveAsync();
        await database.EmptyLogAsync();
        return TypedResults.Ok(new Erased(id, left));
    }

    private static async Task<ClientRow?> FindAsync(Read read, Reader reader, long clientId) =>
        await ClientStore.FindAsync(read, reader, clientId)
            is { Audience: Audience.Owner or Audience.Herself } seen
            ? seen.Row
            : null;
}
