using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Rosters;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Staff;

namespace Studio.Api.Staff;

/// <summary>The people who teach: the owner's list, and each one's own page.</summary>
public static class StaffEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapStaff(this IEndpointRouteBuilder app)
    {
        var staff = app.MapGroup("/api/instructors").WithTags("Staff");
        staff.MapGet("/", ListAsync).WithName("Instructors").RequireAuthorization(Policies.Owner);
        staff
            .MapPost("/", AddAsync)
            .WithName("AddInstructor")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400)
            .ProducesProblem(409);
        staff
            .MapGet("/{instructorId}", OneAsync)
            .WithName("Instructor")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(404);
        staff
            .MapPut("/{instructorId}", ChangeAsync)
            .WithName("ChangeInstructor")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        staff
            .MapGet("/{instructorId}/sessions", AheadAsync)
            .WithName("SessionsOfInstructor")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(400)
            .ProducesProblem(404);
        staff.MapQualifications();
        staff.MapWorkingTime();
        app.MapHours();
    }

    private static async Task<List<InstructorMessage>> ListAsync(
        Database database,
        StudioStore studio,
        IClock clock
    )
    {
        var today = (await studio.AboutAsync()).Today;
        await using var read = await database.ReadAsync();
        return await StaffPages.ListAsync(read, today, clock.GetCurrentInstant());
    }

    private static async Task<Results<Ok<InstructorPage>, ProblemHttpResult>> OneAsync(
        long instructorId,
        Reader reader,
        Database database,
        StudioStore studio,
        IClock clock
    )
    {
        if (!reader.MayKeep(instructorId))
            return StaffRefusals.NoSuchInstructor.ToProblem();
        var today = (await studio.AboutAsync()).Today;
        await using var read = await database.ReadAsync();
        return
            await StaffPages.FindAsync(read, instructorId, today, clock.GetCurrentInstant())
                is { } page
            ? TypedResults.Ok(page)
            : StaffRefusals.NoSuchInstructor.ToProblem();
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> AddAsync(
        InstructorRequest request,
        Database database
    )
    {
        var row = Row(0, request);
        await using var write = await database.BeginWriteAsync();
        if (Missing(row) is { } missing)
            return missing.ToProblem();
        if (await StaffStore.EmailTakenAsync(write, row.Email, null))
            return StaffRefusals.EmailTaken.ToProblem();
        var id = await StaffStore.AddAsync(write, row);
        write.Tell("staff");
        await write.CommitAsync();
        return TypedResults.Created($"/api/instructors/{id}", new Made(id));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> ChangeAsync(
        long instructorId,
        InstructorRequest request,
        Database database,
        FlagSweep flags,
        IClock clock
    )
    {
        var row = Row(instructorId, request);
        await using var write = await database.BeginWriteAsync();
        if (await StaffStore.FindAsync(write, instructorId) is not { } before)
            return StaffRefusals.NoSuchInstructor.ToProblem();
        if (Missing(row) is { } missing)
            return missing.ToProblem();
        if (await StaffStore.EmailTakenAsync(write, row.Email, instructorId))
            return StaffRefusals.EmailTaken.ToProblem();
        if (row.LeftOn is { } left && left != before.LeftOn && !request.Confirmed)
        {
            var behind = await StaffStore.AheadAsync(
                write,
                clock.GetCurrentInstant(),
                instructorId,
                left
            );
            if (behind.Count > 0)
                return StaffRefusals
                    .StillTeaches(behind.Count, behind.Min(s => s.OnDate))
                    .ToProblem();
        }

        await StaffStore.ChangeAsync(write, row);
        await flags.SessionsAsync(write);
        write.Tell("staff");
        write.Tell("session");
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    // Shown before she leaves, or goes away for some days.
    private static async Task<Results<Ok<List<HerSession>>, ProblemHttpResult>> AheadAsync(
        long instructorId,
        QueryDay? from,
        QueryDay? to,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var read = await database.ReadAsync();
        if (!reader.MayKeep(instructorId) || await StaffStore.FindAsync(read, instructorId) is null)
            return StaffRefusals.NoSuchInstructor.ToProblem();
        if (from is { } first && to is { } last && last.Value < first.Value)
            return StaffRefusals.LeaveEndsBefore.ToProblem();
        return TypedResults.Ok(
            (
                await StaffStore.AheadAsync(
                    read,
                    clock.GetCurrentInstant(),
                    instructorId,
                    from?.Value,
                    to?.Value
                )
            )
                .Select(s => s.Named)
                .ToList()
        );
    }

    private static InstructorRow Row(long id, InstructorRequest request)
    {
        var name = request.Name.Trim();
        return new InstructorRow
        {
            Id = id,
            Name = name,
            Called = request.Called?.Trim() is { Length: > 0 } called ? called : name.Split(' ')[0],
            Email = request.Email.Trim(),
            Phone = request.Phone?.Trim() ?? "",
            WeeklyMinutesMost = request.WeeklyMinutesMost,
            RestMinutesLeast = request.RestMinutesLeast,
            LeftOn = request.LeftOn,
        };
    }

    private static Refusal? Missing(InstructorRow row) =>
        row.Name.Length == 0
            ? new Refusal(RefusalKind.Invalid, "name-missing", "Please enter her name.", "name")
            : null;
}
