using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core.Accounts;

namespace Studio.Api.Timetable;

/// <summary>How the owner wants one session to stand.</summary>
public sealed record SessionRequest
{
    /// <summary>Its date, where it is held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Start by the location's clock, "18:00".</summary>
    [Required, RegularExpression(@"([01]\d|2[0-3]):[0-5]\d")]
    public required string StartsLocal { get; init; }

    /// <summary>Length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>The room.</summary>
    public required long RoomId { get; init; }

    /// <summary>Who teaches it; null when nobody does yet.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Seats.</summary>
    public required int Seats { get; init; }

    /// <summary>Whether it is held; false calls it off.</summary>
    public required bool IsHeld { get; init; }

    /// <summary>Warnings (hours, rest, a plan that is longer) are accepted.</summary>
    public bool Anyway { get; init; }
}

/// <summary>What a change of one session does, or would do.</summary>
/// <param name="Kept">It was kept; false when it was only looked at.</param>
/// <param name="Changes">What it brings about.</param>
public sealed record SessionOutcome(bool Kept, ChangesPreview Changes);

/// <summary>One session, changed by the owner's hand.</summary>
public static class SessionChangeEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapSessionChanges(this IEndpointRouteBuilder app) =>
        app.MapPut("/api/sessions/{sessionId}", ChangeAsync)
            .WithName("ChangeSession")
            .WithTags("Timetable")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);

    private static async Task<Results<Ok<SessionOutcome>, ProblemHttpResult>> ChangeAsync(
        long sessionId,
        SessionRequest request,
        bool? dryRun,
        Reader reader,
        Database database,
        SessionChanges changes
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await SessionStore.FindAsync(write, sessionId) is not { } row)
            return TimetableRefusals.NoSuchSession.ToProblem();
        var wanted = SessionWanted.As(row) with
        {
            On = request.On,
            StartsLocal = SeriesPlans.TimeOf(request.StartsLocal),
            Minutes = request.Minutes,
            RoomId = request.RoomId,
            InstructorId = request.InstructorId,
            Seats = request.Seats,
            IsHeld = request.IsHeld,
        };
        if (!(await changes.PreviewAsync(write, [wanted])).TryGet(out var preview, out var refusal))
            return refusal.ToProblem();
        if (dryRun == true)
            return TypedResults.Ok(new SessionOutcome(false, preview));
        var made = await changes.ApplyAsync(
            write,
            [wanted],
            new ChangeTerms(reader.AccountId, request.Anyway)
        );
        if (!made.TryGet(out _, out refusal))
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.Ok(new SessionOutcome(true, preview));
    }
}
