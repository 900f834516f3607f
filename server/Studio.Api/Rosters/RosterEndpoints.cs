using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Booking;

namespace Studio.Api.Rosters;

/// <summary>Rosters and flags.</summary>
public static class RosterEndpoints
{
    private static readonly Refusal NoSuchFlag = new(
        RefusalKind.NotFound,
        "no-such-flag",
        "There is no such flag, or it does not stand any more."
    );

    /// <summary>Maps the routes.</summary>
    public static void MapRosters(this IEndpointRouteBuilder app)
    {
        var roster = app.MapGroup("/api/sessions/{sessionId}/roster")
            .WithTags("Rosters")
            .RequireAuthorization(Policies.Staff)
            .ProducesProblem(404);
        roster.MapGet("/", RosterAsync).WithName("Roster").Audited(AuditKinds.Roster);
        roster.MapPost("/read", ReadAllAsync).WithName("ReadRosterFlags");

        var flags = app.MapGroup("/api/flags")
            .WithTags("Rosters")
            .RequireAuthorization(Policies.Staff);
        flags.MapGet("/", FlagsAsync).WithName("Flags");
        flags.MapPost("/{flagId}/read", ReadOneAsync).WithName("ReadFlag").ProducesProblem(404);
    }

    private static async Task<Results<Ok<RosterMessage>, ProblemHttpResult>> RosterAsync(
        long sessionId,
        Reader reader,
        Database database,
        RosterSheets rosters
    )
    {
        await using var read = await database.ReadAsync();
        return
            await SessionStore.FindAsync(read, sessionId) is { } session
            && reader.OnRoster(session.InstructorId) is { } audience
            ? TypedResults.Ok(await rosters.OfAsync(read, session, audience, reader.AccountId))
            : BookingRefusals.NoSuchSession.ToProblem();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> ReadAllAsync(
        long sessionId,
        Reader reader,
        Database database,
        RosterSheets rosters,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            await SessionStore.FindAsync(write, sessionId) is not { } session
            || reader.OnRoster(session.InstructorId) is not { } audience
        )
            return BookingRefusals.NoSuchSession.ToProblem();
        var roster = await rosters.OfAsync(write, session, audience, reader.AccountId);
        var ids = roster
            .People.Concat(roster.Waiting)
            .SelectMany(p => p.Flags)
            .Select(f => f.Id)
            .ToList();
        await FlagStore.TickAsync(write, ids, reader.AccountId, clock.GetCurrentInstant());
        write.Tell("flags");
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<List<FlagMessage>> FlagsAsync(
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var read = await database.ReadAsync();
        return await ForAsync(read, reader, clock);
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> ReadOneAsync(
        long flagId,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (!(await ForAsync(write, reader, clock)).Exists(f => f.Id == flagId))
            return NoSuchFlag.ToProblem();
        await FlagStore.TickAsync(write, [flagId], reader.AccountId, clock.GetCurrentInstant());
        write.Tell("flags", flagId);
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    // The desk and the owner see every flag; an instructor those about herself and about people on her rosters to come.
    private static async Task<List<FlagMessage>> ForAsync(Read read, Reader reader, IClock clock)
    {
        var flags = await FlagStore.StandingAsync(read, reader.AccountId);
        if (reader.WorksAtDesk)
            return
            [
                .. flags.Select(f => FlagWords.For(f, Audience.FrontDesk)).OfType<FlagMessage>(),
            ];
        var hers = (
            await read.ListAsync<RosterSeat>(
                """
                select b.client_id as ClientId, b.session_id as SessionId
                  from bookings b join sessions s on s.id = b.session_id
                 where b.status in ('booked', 'waiting') and s.instructor_id = @InstructorId and s.ends_at > @now
                """,
                new { reader.InstructorId, now = clock.GetCurrentInstant() }
            )
        ).ToHashSet();
        var clients = hers.Select(h => h.ClientId).ToHashSet();
        return
        [
            .. flags
                .Where(f =>
                    f.ClientId is { } client
                        ? clients.Contains(client)
                            && (
                                f.SessionId is not { } session
                                || hers.Contains(
                                    new RosterSeat { ClientId = client, SessionId = session }
                                )
                            )
                        : f.InstructorId is not null && f.InstructorId == reader.InstructorId
                )
                .Select(f => FlagWords.For(f, Audience.Instructor))
                .OfType<FlagMessage>(),
        ];
    }

    private sealed record RosterSeat
    {
        public long ClientId { get; init; }
        public long SessionId { get; init; }
    }
}
