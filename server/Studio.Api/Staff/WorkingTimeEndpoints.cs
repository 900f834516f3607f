using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using NodaTime.Text;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Rosters;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Staff;
using Studio.Core.Timetable;

namespace Studio.Api.Staff;

/// <summary>When somebody can be asked for, when she is away, and what she likes to teach: kept by the owner and by her.</summary>
public static class WorkingTimeEndpoints
{
    private const int LongestLeaveDays = 731;

    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    /// <summary>Maps the routes.</summary>
    public static void MapWorkingTime(this IEndpointRouteBuilder staff)
    {
        var hers = staff
            .MapGroup("/{instructorId}")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        hers.MapPut("/availability", SetAvailabilityAsync).WithName("SetAvailability");
        hers.MapPost("/leave", AddLeaveAsync).WithName("AddLeave");
        hers.MapDelete("/leave/{leaveId}", WithdrawLeaveAsync).WithName("WithdrawLeave");
        hers.MapPut("/wishes", SetWishesAsync).WithName("SetWishes");
    }

    private static async Task<
        Results<Ok<AvailabilityAnswer>, ProblemHttpResult>
    > SetAvailabilityAsync(
        long instructorId,
        AvailabilityRequest request,
        Reader reader,
        Database database,
        RuleBook book,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            await StaffStore.FindAsync(write, instructorId) is null
            || !reader.MayKeep(instructorId)
        )
            return StaffRefusals.NoSuchInstructor.ToProblem();
        var hours = request
            .Hours.Select(h => new WeeklyHours(
                (IsoDayOfWeek)h.Weekday,
                Clock.Parse(h.From).Value,
                Clock.Parse(h.To).Value,
                h.LocationId
            ))
            .ToList();
        if (AvailabilityRules.WhyNot(hours) is { } refusal)
            return refusal.ToProblem();
        var places = (await StudioStore.LocationsAsync(write)).Select(l => l.Id).ToHashSet();
        var unknown = hours.FindIndex(h => h.LocationId is { } id && !places.Contains(id));
        if (unknown >= 0)
            return new Refusal(
                RefusalKind.Invalid,
                "no-such-location",
                "There is no such location. Choose one of the list, or any.",
                $"hours[{unknown}].locationId"
            ).ToProblem();
        await StaffStore.SetAvailabilityAsync(write, instructorId, request.Hours);
        var outside = await OutsideAsync(write, book, instructorId, clock.GetCurrentInstant());
        write.Tell("staff");
        await write.CommitAsync();
        return TypedResults.Ok(new AvailabilityAnswer(outside));
    }

    // As the timetable itself judges it.
    private static async Task<List<HerSession>> OutsideAsync(
        Read read,
        RuleBook book,
        long instructorId,
        Instant now
    )
    {
        var ahead = await StaffStore.AheadAsync(read, now, instructorId);
        if (ahead.Count == 0)
            return [];
        var hers = (
            await TimetableStore.PlacedAsync(
                read,
                ahead.Min(s => s.OnDate),
                ahead.Max(s => s.OnDate)
            )
        ).Where(s => s.InstructorId == instructorId);
        var outside = TimetableChecks
            .Of(hers, await TimetableStore.FactsAsync(read, book))
            .Where(c => c.Kind == ConflictKind.OutsideHours)
            .SelectMany(c => c.Sessions)
            .ToHashSet();
        return [.. ahead.Where(s => outside.Contains(s.Id)).Select(s => s.Named)];
    }

    private static async Task<Results<Created<LeaveMessage>, ProblemHttpResult>> AddLeaveAsync(
        long instructorId,
        LeaveRequest request,
        Reader reader,
        Database database,
        FlagSweep flags,
        IClock clock
    )
    {
        var now = clock.GetCurrentInstant();
        await using var write = await database.BeginWriteAsync();
        if (
            await StaffStore.FindAsync(write, instructorId) is null
            || !reader.MayKeep(instructorId)
        )
            return StaffRefusals.NoSuchInstructor.ToProblem();
        if (request.To < request.From)
            return StaffRefusals.LeaveEndsBefore.ToProblem();
        if (Period.DaysBetween(request.From, request.To) > LongestLeaveDays)
            return StaffRefusals.LeaveTooLong.ToProblem();
        if (
            (await StaffStore.LeaveAsync(write, request.From, instructorId)).Find(l =>
                l.From <= request.To
            ) is
            { } other
        )
            return StaffRefusals.AwayAlready(other.From, other.To).ToProblem();
        var id = await StaffStore.AddLeaveAsync(
            write,
            instructorId,
            request.From,
            request.To,
            now,
            reader.AccountId
        );
        var told = StaffPages.Told(
            new LeaveRow
            {
                Id = id,
                From = request.From,
                To = request.To,
            },
            await StaffStore.AheadAsync(write, now, instructorId, request.From, request.To)
        );
        await DoneAsync(write, flags);
        return TypedResults.Created($"/api/instructors/{instructorId}", told);
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> WithdrawLeaveAsync(
        long instructorId,
        long leaveId,
        Reader reader,
        Database database,
        FlagSweep flags,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (!reader.MayKeep(instructorId))
            return StaffRefusals.NoSuchLeave.ToProblem();
        if (
            await StaffStore.WithdrawLeaveAsync(
                write,
                instructorId,
                leaveId,
                clock.GetCurrentInstant()
            ) == 0
        )
            return StaffRefusals.NoSuchLeave.ToProblem();
        await DoneAsync(write, flags);
        return TypedResults.NoContent();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> SetWishesAsync(
        long instructorId,
        WishesRequest request,
        Reader reader,
        Database database
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            await StaffStore.FindAsync(write, instructorId) is null
            || !reader.MayKeep(instructorId)
        )
            return StaffRefusals.NoSuchInstructor.ToProblem();
        var classes = (await StudioStore.ClassesAsync(write)).Select(c => c.Code).ToList();
        var places = (await StudioStore.LocationsAsync(write)).Select(l => l.Code).ToList();
        if (
            WishRules.WhyNot(
                [.. request.Wishes.Select(w => new TeachingWish(w.Kind, w.Value, w.Weight))],
                classes,
                places
            ) is
            { } refusal
        )
            return refusal.ToProblem();
        await StaffStore.SetWishesAsync(write, instructorId, request.Wishes);
        write.Tell("staff");
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task DoneAsync(Write write, FlagSweep flags)
    {
        await flags.SessionsAsync(write);
        write.Tell("staff");
        write.Tell("session");
        await write.CommitAsync();
    }
}
