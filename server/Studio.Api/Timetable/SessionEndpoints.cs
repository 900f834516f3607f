using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Booking;

namespace Studio.Api.Timetable;

/// <summary>Sessions for the people who work here.</summary>
public static class SessionEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapSessions(this IEndpointRouteBuilder app)
    {
        var sessions = app.MapGroup("/api/sessions")
            .WithTags("Timetable")
            .RequireAuthorization(Policies.Staff);
        sessions.MapGet("/", ListAsync).WithName("Sessions").ProducesProblem(400);
        sessions.MapGet("/{sessionId}", OneAsync).WithName("Session").ProducesProblem(404);
    }

    private static async Task<Results<Ok<List<SessionSummary>>, ProblemHttpResult>> ListAsync(
        QueryDay? from,
        QueryDay? to,
        bool? mine,
        Reader reader,
        Database database,
        SessionSummaries summaries,
        StudioStore studio
    )
    {
        var first = from?.Value ?? (await studio.AboutAsync()).Today;
        var last = to?.Value ?? first.PlusDays(6);
        if (last < first || Period.DaysBetween(first, last) > 93)
            return new Refusal(
                RefusalKind.Invalid,
                "bad-range",
                "The last date must not lie before the first, nor more than 93 days after it.",
                "to"
            ).ToProblem();
        if ((mine == true || !reader.WorksAtDesk) && reader.InstructorId is null)
            return TypedResults.Ok(new List<SessionSummary>());

        await using var read = await database.ReadAsync();
        var rows = await SessionStore.ListAsync(
            read,
            new SessionsWanted
            {
                From = first,
                To = last,
                InstructorId = mine == true || !reader.WorksAtDesk ? reader.InstructorId : null,
            }
        );
        return TypedResults.Ok(await summaries.WithUnsuitableAsync(read, rows));
    }

    private static async Task<Results<Ok<SessionSummary>, ProblemHttpResult>> OneAsync(
        long sessionId,
        Reader reader,
        Database database,
        SessionSummaries summaries
    )
    {
        await using var read = await database.ReadAsync();
        return
            await SessionStore.FindAsync(read, sessionId) is { } row
            && reader.OnRoster(row.InstructorId) is not null
            ? TypedResults.Ok((await summaries.WithUnsuitableAsync(read, [row])).Single())
            : BookingRefusals.NoSuchSession.ToProblem();
    }
}
