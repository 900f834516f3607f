using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.Extensions.Options;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Timetable.Drafts;
using Studio.Core.Accounts;
using Studio.Core.Pregnancies;

namespace Studio.Api.Timetable;

/// <summary>All sessions of a term given to instructors: a search beside the requests, whose result becomes a draft.</summary>
public static class AssignmentEndpoints
{
    private const int Latest = 20;

    /// <summary>Maps the routes.</summary>
    public static void MapAssignments(this IEndpointRouteBuilder app)
    {
        var assignments = app.MapGroup("/api/assignments")
            .WithTags("Assignments")
            .RequireAuthorization(Policies.Owner);
        assignments.MapGet("/", ListAsync).WithName("Assignments");
        assignments
            .MapPost("/", BeginAsync)
            .WithName("BeginAssignment")
            .ProducesProblem(400)
            .ProducesProblem(409);
        assignments.MapGet("/{assignmentId}", OneAsync).WithName("Assignment").ProducesProblem(404);
        assignments
            .MapDelete("/{assignmentId}", EndAsync)
            .WithName("EndAssignment")
            .ProducesProblem(404);
        assignments
            .MapPost("/{assignmentId}/draft", DraftAsync)
            .WithName("DraftOfAssignment")
            .ProducesProblem(404)
            .ProducesProblem(409);
    }

    private static async Task<List<AssignmentSummary>> ListAsync(
        Database database,
        IOptions<JsonOptions> json,
        IClock clock
    )
    {
        await using var read = await database.ReadAsync();
        return
        [
            .. (await AssignmentStore.LatestAsync(read, Latest)).Select(row =>
                Summary(row, json.Value.SerializerOptions, clock)
            ),
        ];
    }

    private static async Task<Results<Accepted<AssignmentMessage>, ProblemHttpResult>> BeginAsync(
        AssignmentRequest request,
        Reader reader,
        AssignmentRuns runs,
        Database database,
        IOptions<JsonOptions> json,
        IClock clock
    )
    {
        if (
            !(await runs.BeginAsync(request, reader.AccountId)).TryGet(out var run, out var refusal)
        )
            return refusal.ToProblem();
        await using var read = await database.ReadAsync();
        return TypedResults.Accepted(
            $"/api/assignments/{run}",
            Message((await AssignmentStore.FindAsync(read, run))!, runs, json, clock)
        );
    }

    private static async Task<Results<Ok<AssignmentMessage>, ProblemHttpResult>> OneAsync(
        long assignmentId,
        AssignmentRuns runs,
        Database database,
        IOptions<JsonOptions> json,
        IClock clock
    )
    {
        await using var read = await database.ReadAsync();
        return await AssignmentStore.FindAsync(read, assignmentId) is { } row
            ? TypedResults.Ok(Message(row, runs, json, clock))
            : AssignmentRefusals.NoSuchRun.ToProblem();
    }

    // While it is at it this ends it early; afterwards it puts it aside.
    private static async Task<Results<NoContent, ProblemHttpResult>> EndAsync(
        long assignmentId,
        AssignmentRuns runs,
        Database database,
        IClock clock
    )
    {
        if (runs.Cancel(assignmentId))
            return TypedResults.NoContent();
        await using var write = await database.BeginWriteAsync();
        if (await AssignmentStore.FindAsync(write, assignmentId) is null)
            return AssignmentRefusals.NoSuchRun.ToProblem();
        if (await AssignmentStore.DiscardAsync(write, assignmentId, clock.GetCurrentInstant()) == 1)
        {
            write.Tell("assignments", assignmentId);
            await write.CommitAsync();
        }

        return TypedResults.NoContent();
    }

    private static async Task<Results<Ok<AssignmentDraft>, ProblemHttpResult>> DraftAsync(
        long assignmentId,
        Reader reader,
        Database database,
        IOptions<JsonOptions> json,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await AssignmentStore.FindAsync(write, assignmentId) is not { } row)
            return AssignmentRefusals.NoSuchRun.ToProblem();
        if (
            row is not { DraftId: null, DiscardedAt: null }
            || Result(row, json.Value.SerializerOptions) is not { } result
        )
            return AssignmentRefusals.NothingToTake.ToProblem();

        var draft = await DraftStore.MakeAsync(
            write,
            $"Assigned, {Wording.Date(row.FromOn)} to {Wording.Date(row.ToOn)}",
            row.FromOn,
            row.ToOn,
            DraftOrigin.Assignment,
            reader.AccountId,
            clock.GetCurrentInstant()
        );
        await AssignmentStore.DraftedAsync(write, assignmentId, draft);
        // A session that changed since it was read is left to whoever teaches it now.
        var rows = (await DraftStore.RowsAsync(write, draft)).ToDictionary(r => r.SessionId!.Value);
        var left = 0;
        foreach (var change in result.Changes)
            if (
                rows.TryGetValue(change.Session.Id, out var session)
                && session.BasedOn == change.BasedOn
            )
                await DraftStore.PutAsync(
                    write,
                    draft,
                    session with
                    {
                        InstructorId = change.AfterId,
                    }
                );
            else
                left++;
        write.Tell("assignments", assignmentId);
        write.Tell("drafts", draft);
        await write.CommitAsync();
        return TypedResults.Ok(new AssignmentDraft(draft, left));
    }

    private static AssignmentMessage Message(
        AssignmentRow row,
        AssignmentRuns runs,
        IOptions<JsonOptions> json,
        IClock clock
    ) =>
        new()
        {
            Run = Summary(row, json.Value.SerializerOptions, clock),
            Progress = row.Status == AssignmentStatus.Running ? runs.ProgressOf(row.Id) : null,
            Result = Result(row, json.Value.SerializerOptions),
        };

    private static AssignmentSummary Summary(
        AssignmentRow row,
        JsonSerializerOptions json,
        IClock clock
    ) =>
        new()
        {
            Id = row.Id,
            Asked = JsonSerializer.Deserialize<AssignmentRequest>(row.Asked, json)!,
            Status = row.Status,
            MadeAt = row.MadeAt,
            EndedAt = row.EndedAt,
            Seconds = (int)((row.EndedAt ?? clock.GetCurrentInstant()) - row.MadeAt).TotalSeconds,
            Discarded = row.DiscardedAt is not null,
            DraftId = row.DraftId,
        };

    private static AssignmentResult? Result(AssignmentRow row, JsonSerializerOptions json) =>
        row.Result is { } text ? JsonSerializer.Deserialize<AssignmentResult>(text, json) : null;
}
