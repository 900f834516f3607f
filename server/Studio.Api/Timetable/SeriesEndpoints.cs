using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Studio.Api.Accounts;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>Series: recurring sessions.</summary>
public static class SeriesEndpoints
{
    private const int NextShown = 4;

    /// <summary>Maps the routes.</summary>
    public static void MapSeries(this IEndpointRouteBuilder app)
    {
        var series = app.MapGroup("/api/series")
            .WithTags("Timetable")
            .RequireAuthorization(Policies.Owner);
        series.MapGet("/", ListAsync).WithName("AllSeries");
        series.MapPost("/preview", PreviewAsync).WithName("PreviewSeries").ProducesProblem(400);
        series
            .MapPost("/", AddAsync)
            .WithName("AddSeries")
            .Produces<Added>(StatusCodes.Status201Created)
            .ProducesProblem(400)
            .ProducesProblem(409);

        var one = series
            .MapGroup("/{seriesId}")
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        one.MapGet("/", OneAsync).WithName("OneSeries");
        one.MapPost("/changes", ChangeAsync).WithName("ChangeSeries");
        one.MapPost("/end", EndAsync).WithName("EndSeries");
        one.MapPut("/exceptions/{on}", SkipAsync).WithName("SkipDate");
        one.MapDelete("/exceptions/{on}", BringBackAsync).WithName("BringDateBack");
    }

    private static async Task<List<SeriesMessage>> ListAsync(Database database, SeriesPlans plans)
    {
        await using var read = await database.ReadAsync();
        return await plans.MessagesAsync(read, await SeriesStore.ListAsync(read), NextShown);
    }

    private static async Task<Results<Ok<SeriesMessage>, ProblemHttpResult>> OneAsync(
        long seriesId,
        Database database,
        SeriesPlans plans
    )
    {
        await using var read = await database.ReadAsync();
        return await SeriesStore.FindAsync(read, seriesId) is { } series
            ? TypedResults.Ok(await plans.InFullAsync(read, series))
            : SeriesRefusals.NoSuchSeries.ToProblem();
    }

    private static async Task<Results<Ok<SeriesPreviewMessage>, ProblemHttpResult>> PreviewAsync(
        SeriesRequest request,
        Database database,
        SeriesPlans plans
    )
    {
        await using var read = await database.ReadAsync();
        return (await plans.PreviewAsync(read, request)).TryGet(out var preview, out var refusal)
            ? TypedResults.Ok(preview)
            : refusal.ToProblem();
    }

    private static async Task<IResult> AddAsync(
        SeriesRequest request,
        [FromHeader(Name = "Idempotency-Key")] string? key,
        Reader reader,
        Database database,
        SeriesPlans plans,
        AnsweredRequests answered
    )
    {
        if (key is { Length: 0 or > 200 })
            return BookingRefusals.BadKey.ToProblem();
        await using var write = await database.BeginWriteAsync();
        var fingerprint = $"series {JsonSerializer.Serialize(request with { Exceptions = null })}";
        if (request.Exceptions is { } left)
            fingerprint += string.Join(' ', left);
        if (
            key is not null
            && await answered.EarlierAsync(write, reader.AccountId, key, fingerprint) is { } earlier
        )
            return earlier;
        var answer = await plans.AddAsync(write, request, reader.AccountId);
        // A refusal leaves nothing behind, so that the same request may be tried again once its reason is gone.
        if (!answer.TryGet(out var added, out var refusal))
            return refusal.ToProblem();
        if (key is not null)
            await answered.KeepAsync(
                write,
                reader.AccountId,
                key,
                fingerprint,
                StatusCodes.Status201Created,
                added
            );
        await write.CommitAsync();
        return TypedResults.Created($"/api/series/{added.Id}", added);
    }

    private static Task<Results<Ok<SeriesOutcome>, ProblemHttpResult>> ChangeAsync(
        long seriesId,
        SeriesChangeRequest request,
        bool? dryRun,
        Reader reader,
        Database database,
        SeriesPlans plans
    ) =>
        DoneAsync(
            database,
            seriesId,
            dryRun == true,
            (write, series) =>
                plans.ChangeAsync(write, series, request, dryRun == true, reader.AccountId)
        );

    private static Task<Results<Ok<SeriesOutcome>, ProblemHttpResult>> EndAsync(
        long seriesId,
        SeriesEndRequest request,
        bool? dryRun,
        Reader reader,
        Database database,
        SeriesPlans plans
    ) =>
        DoneAsync(
            database,
            seriesId,
            dryRun == true,
            (write, series) =>
                plans.EndAsync(write, series, request.LastOn, dryRun == true, reader.AccountId)
        );

    private static Task<Results<Ok<SeriesOutcome>, ProblemHttpResult>> SkipAsync(
        long seriesId,
        QueryDay on,
        bool? dryRun,
        Reader reader,
        Database database,
        SeriesPlans plans
    ) =>
        DoneAsync(
            database,
            seriesId,
            dryRun == true,
            (write, series) =>
                plans.SkipAsync(
                    write,
                    series,
                    on.Value,
                    skips: true,
                    dryRun == true,
                    new ChangeTerms(reader.AccountId, Anyway: true)
                )
        );

    private static Task<Results<Ok<SeriesOutcome>, ProblemHttpResult>> BringBackAsync(
        long seriesId,
        QueryDay on,
        bool? dryRun,
        bool? anyway,
        Reader reader,
        Database database,
        SeriesPlans plans
    ) =>
        DoneAsync(
            database,
            seriesId,
            dryRun == true,
            (write, series) =>
                plans.SkipAsync(
                    write,
                    series,
                    on.Value,
                    skips: false,
                    dryRun == true,
                    new ChangeTerms(reader.AccountId, anyway == true)
                )
        );

    private static async Task<Results<Ok<SeriesOutcome>, ProblemHttpResult>> DoneAsync(
        Database database,
        long seriesId,
        bool dryRun,
        Func<Write, SeriesRow, Task<Core.Answer<SeriesOutcome>>> change
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await SeriesStore.FindAsync(write, seriesId) is not { } series)
            return SeriesRefusals.NoSuchSeries.ToProblem();
        if (!(await change(write, series)).TryGet(out var outcome, out var refusal))
            return refusal.ToProblem();
        if (!dryRun)
            await write.CommitAsync();
        return TypedResults.Ok(outcome);
    }
}
