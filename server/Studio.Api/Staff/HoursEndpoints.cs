using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core.Accounts;
using Studio.Core.Staff;

namespace Studio.Api.Staff;

/// <summary>Hours taught by week and by month, for the owner and for her.</summary>
public static class HoursEndpoints
{
    private const int WeeksBack = 8;
    private const int DaysAhead = 28;

    /// <summary>Maps the routes.</summary>
    public static void MapHours(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/instructors/{instructorId}/hours", OfAsync)
            .WithName("HoursOfInstructor")
            .WithTags("Staff")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(400)
            .ProducesProblem(404);

    private static async Task<Results<Ok<HoursMessage>, ProblemHttpResult>> OfAsync(
        long instructorId,
        QueryDay? from,
        QueryDay? to,
        Reader reader,
        Database database,
        StudioStore studio,
        IClock clock
    )
    {
        var today = (await studio.AboutAsync()).Today;
        await using var read = await database.ReadAsync();
        if (
            !reader.MayKeep(instructorId)
            || await StaffStore.FindAsync(read, instructorId) is not { } her
        )
            return StaffRefusals.NoSuchInstructor.ToProblem();
        var asked = StaffSpan.Of(from, to, today, day => day.PlusDays(-7 * WeeksBack), DaysAhead);
        if (!asked.TryGet(out var span, out var refusal))
            return refusal.ToProblem();
        var now = clock.GetCurrentInstant();
        var covered = TaughtHours.Covered(span.From, span.To);
        var sessions = (
            await StaffStore.SessionsAsync(read, covered.From, covered.To, instructorId)
        )
            .Select(s => new TaughtSession(s.OnDate, s.Minutes, s.EndsAt <= now))
            .ToList();
        return TypedResults.Ok(
            new HoursMessage
            {
                WeeklyMinutesMost = her.WeeklyMinutesMost,
                Weeks = TaughtHours.Weeks(sessions, span.From, span.To),
                Months = TaughtHours.Months(sessions, span.From, span.To),
            }
        );
    }
}
