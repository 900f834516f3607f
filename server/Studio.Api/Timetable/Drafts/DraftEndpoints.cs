using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable.Drafts;

/// <summary>The timetable with its conflicts, and drafts of it, for the owner.</summary>
public static class DraftEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapDrafts(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/timetable", TimetableAsync)
            .WithName("TimetableWithConflicts")
            .WithTags("Timetable")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400);

        var drafts = app.MapGroup("/api/drafts")
            .WithTags("Drafts")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        drafts.MapGet("/", ListAsync).WithName("Drafts");
        drafts.MapPost("/", MakeAsync).WithName("MakeDraft");
        drafts.MapGet("/{draftId}", OneAsync).WithName("Draft");
        drafts.MapPut("/{draftId}/sessions", ChangeAsync).WithName("ChangeDraft");
        drafts.MapPost("/{draftId}/check", CheckAsync).WithName("CheckDraftSession");
        drafts.MapPost("/{draftId}/copy-week", CopyAsync).WithName("CopyWeek");
        drafts.MapPost("/{draftId}/meanwhile", DecideAsync).WithName("DecideMeanwhile");
        drafts.MapGet("/{draftId}/consequences", ConsequencesAsync).WithName("DraftConsequences");
        drafts.MapPost("/{draftId}/publish", PublishAsync).WithName("PublishDraft");
        drafts.MapDelete("/{draftId}", DiscardAsync).WithName("DiscardDraft");
    }

    private static async Task<Results<Ok<TimetableMessage>, ProblemHttpResult>> TimetableAsync(
        QueryDay from,
        QueryDay to,
        Database database,
        SessionSummaries summaries,
        RuleBook book
    )
    {
        if (to.Value < from.Value || Period.DaysBetween(from.Value, to.Value) > 93)
            return new Refusal(
                RefusalKind.Invalid,
                "bad-range",
                "The last date must not lie before the first, nor more than 93 days after it.",
                "to"
            ).ToProblem();
        await using var read = await database.ReadAsync();
        var rows = await SessionStore.ListAsync(
            read,
            new SessionsWanted { From = from.Value, To = to.Value }
        );
        var shown = rows.Select(r => r.Id).ToHashSet();
        // A week's hours and a night's rest reach beyond the days that are shown.
        var placed = await TimetableStore.PlacedAsync(
            read,
            TimetableChecks.WeekOf(from.Value).PlusDays(-1),
            TimetableChecks.WeekOf(to.Value).PlusDays(7)
        );
        return TypedResults.Ok(
            new TimetableMessage(
                await summaries.WithUnsuitableAsync(read, rows),
                [
                    .. TimetableChecks
                        .Of(placed, await TimetableStore.FactsAsync(read, book))
                        .Where(c => c.Sessions.Any(shown.Contains))
                        .Select(c => ConflictMessage.Of(c, isNew: false)),
                ]
            )
        );
    }

    private static async Task<List<DraftSummary>> ListAsync(Database database)
    {
        await using var read = await database.ReadAsync();
        return [.. (await DraftStore.ListAsync(read)).Select(DraftSummary.Of)];
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> MakeAsync(
        DraftRequest request,
        Reader reader,
        Database database,
        DraftChanges drafts
    )
    {
        await using var write = await database.BeginWriteAsync();
        var made = await drafts.MakeAsync(write, request, reader.AccountId);
        if (made.Refusal is { } refusal)
            return refusal.ToProblem();
        write.Tell("drafts");
        await write.CommitAsync();
        return TypedResults.Created($"/api/drafts/{made.Value}", new Made(made.Value));
    }

    private static async Task<Results<Ok<DraftMessage>, ProblemHttpResult>> OneAsync(
        long draftId,
        Database database,
        DraftChanges drafts
    )
    {
        await using var read = await database.ReadAsync();
        return await drafts.ShowAsync(read, draftId) is { } draft
            ? TypedResults.Ok(draft)
            : DraftRefusals.NoSuchDraft.ToProblem();
    }

    private static Task<Results<Ok<DraftMessage>, ProblemHttpResult>> ChangeAsync(
        long draftId,
        DraftChangeRequest request,
        Database database,
        DraftChanges drafts
    ) => ChangedAsync(draftId, database, drafts, w => drafts.ChangeAsync(w, draftId, request));

    private static async Task<Results<Ok<List<ConflictMessage>>, ProblemHttpResult>> CheckAsync(
        long draftId,
        DraftCheckRequest request,
        Database database,
        DraftChanges drafts
    )
    {
        await using var read = await database.ReadAsync();
        return (await drafts.CheckAsync(read, draftId, request.Session)).TryGet(
            out var conflicts,
            out var refusal
        )
            ? TypedResults.Ok(conflicts)
            : refusal.ToProblem();
    }

    private static Task<Results<Ok<DraftMessage>, ProblemHttpResult>> CopyAsync(
        long draftId,
        CopyWeekRequest request,
        Database database,
        DraftChanges drafts
    ) => ChangedAsync(draftId, database, drafts, w => drafts.CopyWeekAsync(w, draftId, request));

    private static Task<Results<Ok<DraftMessage>, ProblemHttpResult>> DecideAsync(
        long draftId,
        MeanwhileRequest request,
        Database database,
        DraftChanges drafts
    ) => ChangedAsync(draftId, database, drafts, w => drafts.DecideAsync(w, draftId, request));

    private static async Task<Results<Ok<DraftMessage>, ProblemHttpResult>> ChangedAsync(
        long draftId,
        Database database,
        DraftChanges drafts,
        Func<Write, Task<Refusal?>> change
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await change(write) is { } refusal)
            return refusal.ToProblem();
        var draft = (await drafts.ShowAsync(write, draftId))!;
        write.Tell("drafts", draftId);
        await write.CommitAsync();
        return TypedResults.Ok(draft);
    }

    private static async Task<Results<Ok<ChangesPreview>, ProblemHttpResult>> ConsequencesAsync(
        long draftId,
        Database database,
        DraftChanges drafts
    )
    {
        await using var read = await database.ReadAsync();
        return (await drafts.ConsequencesAsync(read, draftId)).TryGet(
            out var preview,
            out var refusal
        )
            ? TypedResults.Ok(preview)
            : refusal.ToProblem();
    }

    private static async Task<Results<Ok<ChangesMade>, ProblemHttpResult>> PublishAsync(
        long draftId,
        PublishRequest request,
        Reader reader,
        Database database,
        DraftChanges drafts
    )
    {
        await using var write = await database.BeginWriteAsync();
        var made = await drafts.PublishAsync(write, draftId, request, reader.AccountId);
        if (!made.TryGet(out var done, out var refusal))
            return refusal.ToProblem();
        write.Tell("drafts", draftId);
        await write.CommitAsync();
        return TypedResults.Ok(done);
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> DiscardAsync(
        long draftId,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            !await DraftStore.EndAsync(
                write,
                draftId,
                DraftStatus.Discarded,
                reader.AccountId,
                clock.GetCurrentInstant()
            )
        )
            return DraftRefusals.NoSuchDraft.ToProblem();
        write.Tell("drafts", draftId);
        await write.CommitAsync();
        return TypedResults.NoContent();
    }
}
