using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core;
using Studio.Core.Accounts;

namespace Studio.Api.Catalogue;

/// <summary>New rules: tried first, then put in force at once. The answers name clients, so they are the owner's alone.</summary>
public static class CatalogueImportEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapCatalogueImports(this IEndpointRouteBuilder app)
    {
        var routes = app.MapGroup("/api")
            .WithTags("Catalogue")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        routes.MapPost("/imports/catalogue", ImportAsync).WithName("ImportCatalogue");
        routes
            .MapPost("/catalogue/versions/{version:int}/return", ReturnAsync)
            .WithName("ReturnToCatalogue");
    }

    private static async Task<
        Results<Ok<CatalogueReport>, UnprocessableEntity<CatalogueReport>, ProblemHttpResult>
    > ImportAsync(
        bool? dryRun,
        CatalogueRequest request,
        Reader reader,
        Database database,
        CatalogueImports imports
    )
    {
        if (dryRun == true)
        {
            await using var read = await database.ReadAsync();
            return imports.With(request.Files!).TryGet(out var tried, out var unusable)
                ? TypedResults.Ok(await imports.TryAsync(read, tried))
                : unusable.ToProblem();
        }

        await using var write = await database.BeginWriteAsync();
        if (!imports.With(request.Files!).TryGet(out var texts, out var refusal))
            return refusal.ToProblem();
        return await AnswerAsync(
            write,
            await imports.PutInForceAsync(
                write,
                texts,
                request.BasedOn,
                at =>
                    CatalogueStore.AddAsync(
                        write,
                        texts,
                        null,
                        request.Why?.Trim() ?? "",
                        at,
                        reader.AccountId
                    )
            )
        );
    }

    private static async Task<
        Results<Ok<CatalogueReport>, UnprocessableEntity<CatalogueReport>, ProblemHttpResult>
    > ReturnAsync(
        int version,
        bool? dryRun,
        ReturnRequest request,
        Reader reader,
        Database database,
        CatalogueInForce catalogue,
        CatalogueImports imports
    )
    {
        if (dryRun == true)
        {
            await using var read = await database.ReadAsync();
            return await CatalogueEndpoints.TextsAsync(read, catalogue, version) is { } tried
                ? TypedResults.Ok(await imports.TryAsync(read, tried.Texts))
                : CatalogueEndpoints.NoSuchVersion.ToProblem();
        }

        await using var write = await database.BeginWriteAsync();
        if (await CatalogueEndpoints.TextsAsync(write, catalogue, version) is not { } back)
            return CatalogueEndpoints.NoSuchVersion.ToProblem();
        return await AnswerAsync(
            write,
            await imports.PutInForceAsync(
                write,
                back.Texts,
                request.BasedOn,
                at =>
                    CatalogueStore.AddAsync(
                        write,
                        back.Own ? null : back.Texts,
                        version == 0 ? null : version,
                        request.Why?.Trim() ?? "",
                        at,
                        reader.AccountId
                    )
            )
        );
    }

    private static async Task<
        Results<Ok<CatalogueReport>, UnprocessableEntity<CatalogueReport>, ProblemHttpResult>
    > AnswerAsync(Write write, Answer<CatalogueReport> answer)
    {
        if (!answer.TryGet(out var report, out var refusal))
            return refusal.ToProblem();
        if (report.Version is null)
            return TypedResults.UnprocessableEntity(report);
        await write.CommitAsync();
        return TypedResults.Ok(report);
    }
}
