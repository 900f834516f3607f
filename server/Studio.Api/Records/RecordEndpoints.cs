using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core.Accounts;
using Studio.Core.Booking;

namespace Studio.Api.Records;

/// <summary>All that is held about a client, for herself and, when she asks for it elsewhere, the owner.</summary>
public static class RecordEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapRecords(this IEndpointRouteBuilder app)
    {
        var record = app.MapGroup("/api/clients/{clientId}/record")
            .WithTags("Records")
            .RequireAuthorization(Policies.OwnerOrClient)
            .ProducesProblem(404);
        record.MapGet("/", ReadAsync).WithName("Record").Audited(AuditKinds.Export);
        record
            .MapGet("/file", FileAsync)
            .WithName("RecordFile")
            .Produces(StatusCodes.Status200OK, contentType: "application/json")
            .Audited(AuditKinds.Export);
    }

    private static async Task<Results<Ok<HeldRecord>, ProblemHttpResult>> ReadAsync(
        long clientId,
        Reader reader,
        Database database,
        HeldRows held,
        IClock clock
    )
    {
        await using var read = await database.ReadAsync();
        if (await FindAsync(read, reader, clientId) is not { } her)
            return BookingRefusals.NoSuchClient.ToProblem();
        return TypedResults.Ok(
            new HeldRecord
            {
                Format = RecordFile.Format,
                Made = clock.GetCurrentInstant(),
                Name = her.Name,
                Sections = HeldWords.Of(
                    await held.OfAsync(read, clientId),
                    DateTimeZoneProviders.Tzdb[her.Zone],
                    onlyHeld: false
                ),
            }
        );
    }

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> FileAsync(
        long clientId,
        Reader reader,
        Database database,
        HeldRows held,
        IClock clock,
        HttpResponse response
    )
    {
        await using var read = await database.ReadAsync();
        if (await FindAsync(read, reader, clientId) is not { } her)
            return BookingRefusals.NoSuchClient.ToProblem();
        var made = clock.GetCurrentInstant();
        var file = RecordFile.Of(await held.OfAsync(read, clientId), made);
        response.Headers.CacheControl = "no-store";
        return TypedResults.File(
            RecordFile.Bytes(file),
            "application/json",
            $"record-{made.InZone(DateTimeZoneProviders.Tzdb[her.Zone]).Date:uuuu-MM-dd}.json"
        );
    }

    // For her and the owner; for everybody else there is no such client.
    private static async Task<ClientRow?> FindAsync(Read read, Reader reader, long clientId) =>
        await ClientStore.FindAsync(read, reader, clientId)
            is { Audience: Audience.Owner or Audience.Herself } seen
            ? seen.Row
            : null;
}
