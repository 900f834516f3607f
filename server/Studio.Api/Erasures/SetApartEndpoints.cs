using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using NodaTime.Text;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Clearance;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Records;
using Studio.Core.Clients;

namespace Studio.Api.Erasures;

/// <summary>The owner's list of wishes and erasures, and what is set apart.</summary>
internal static class SetApartEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void Map(IEndpointRouteBuilder app)
    {
        var erasures = app.MapGroup("/api/erasures")
            .WithTags("Erasures")
            .RequireAuthorization(Policies.Owner);
        erasures.MapGet("/", ListAsync).WithName("Erasures");
        erasures
            .MapGet("/{erasureId}/kept", KeptAsync)
            .WithName("SetApart")
            .ProducesProblem(404)
            .Audited(AuditKinds.Export);
        erasures
            .MapGet("/{erasureId}/letters/{letterId}/file", FileAsync)
            .WithName("SetApartFile")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .ProducesProblem(404)
            .Audited(AuditKinds.LetterFile);
    }

    private static async Task<ErasureList> ListAsync(Database database)
    {
        await using var read = await database.ReadAsync();
        var apart = (await ErasureStore.SetApartAsync(read, null)).ToLookup(s => s.ErasureId);
        return new ErasureList
        {
            Wishes = await ErasureStore.WishesAsync(read),
            Done =
            [
                .. (await ErasureStore.DoneAsync(read)).Select(e => new ErasureDone
                {
                    Id = e.Id,
                    DoneAt = e.DoneAt,
                    DoneBy = e.DoneBy,
                    Entries = e.Entries,
                    Files = e.Files,
                    Kept =
                    [
                        .. apart[e.Id]
                            .Select(s => new SetApart(
                                s.Part,
                                ErasureWords.Title(s.Part),
                                s.LastDay,
                                s.ErasedAt
                            )),
                    ],
                }),
            ],
            FilesLeft = await ErasedFiles.CountAsync(read),
        };
    }

    private static async Task<Results<Ok<List<HeldRecord>>, ProblemHttpResult>> KeptAsync(
        long erasureId,
        Database database,
        HealthAudit audit
    )
    {
        await using var read = await database.ReadAsync();
        var kept = (await ErasureStore.SetApartAsync(read, erasureId))
            .Where(s => s.Record is not null)
            .ToList();
        if (kept.Count == 0)
            return ErasureRefusals.NothingSetApart.ToProblem();
        var zone = DateTimeZoneProviders.Tzdb[
            await read.ValueAsync<string>(
                "select l.zone from clients c join locations l on l.id = c.home_location_id where c.id = @ClientId",
                kept[0]
            )
        ];
        audit.Saw(kept[0].ClientId);
        return TypedResults.Ok(
            kept.Select(s =>
                {
                    var file = JsonNode.Parse(s.Record!)!.AsObject();
                    return new HeldRecord
                    {
                        Format = (string)file["format"]!,
                        Made = InstantPattern.ExtendedIso.Parse((string)file["made"]!).Value,
                        Name = ErasureWords.Title(s.Part),
                        Sections = HeldWords.Of(file, zone, onlyHeld: true),
                    };
                })
                .ToList()
        );
    }

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> FileAsync(
        long erasureId,
        long letterId,
        Database database,
        LetterFiles files,
        HealthAudit audit,
        HttpResponse response
    )
    {
        SetApartFile? file;
        await using (var read = await database.ReadAsync())
            file = await ErasureStore.FileAsync(read, erasureId, letterId);
        if (file is null || await files.OpenAsync(file.FileName) is not { } bytes)
            return ErasureRefusals.NothingSetApart.ToProblem();
        audit.Saw(file.ClientId);
        response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
        response.Headers.CacheControl = "no-store";
        return TypedResults.File(bytes, file.MediaType);
    }
}
