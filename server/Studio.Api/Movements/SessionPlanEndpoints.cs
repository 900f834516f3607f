using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Movements;

namespace Studio.Api.Movements;

/// <summary>The plan of one session: its own instructor's and the owner's. For anybody else there is no such session.</summary>
public static class SessionPlanEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapSessionPlans(this IEndpointRouteBuilder app)
    {
        var plan = app.MapGroup("/api/sessions/{sessionId}/plan")
            .WithTags("Movements")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(404);
        plan.MapGet("/", ReadAsync).WithName("SessionPlan");
        plan.MapPut("/", ChangeAsync)
            .WithName("ChangeSessionPlan")
            .ProducesProblem(400)
            .ProducesProblem(409);
        plan.MapDelete("/", FollowClassAsync).WithName("FollowClassPlan").ProducesProblem(409);
        plan.MapPost("/preview", PreviewAsync).WithName("PreviewPlan").ProducesProblem(400);
        plan.MapPost("/suit", SuitAsync).WithName("SuitPlan").ProducesProblem(400);
    }

    private static async Task<Results<Ok<SessionPlanMessage>, ProblemHttpResult>> ReadAsync(
        long sessionId,
        Reader reader,
        Database database,
        RuleBook book,
        PlanChanges changes
    )
    {
        await using var read = await database.ReadAsync();
        return await FindAsync(read, reader, sessionId) is { } session
            ? TypedResults.Ok(await MessageAsync(read, session, changes.Now, book))
            : BookingRefusals.NoSuchSession.ToProblem();
    }

    private static async Task<Results<Ok<SessionPlanMessage>, ProblemHttpResult>> ChangeAsync(
        long sessionId,
        PlanRequest request,
        Reader reader,
        Database database,
        RuleBook book,
        PlanChanges changes
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await FindAsync(write, reader, sessionId) is not { } session)
            return BookingRefusals.NoSuchSession.ToProblem();
        if (session.EndsAt <= changes.Now)
            return PlanRefusals.SessionIsOver.ToProblem();
        var plan = PlanDraft.Plan(request.Items);
        if (
            (PlanChecks.Fault(plan, book) ?? PlanChecks.TooLong(plan, MinutesOf(session))) is
            { } fault
        )
            return fault.ToProblem();
        var newest = (await PlanStore.VersionsOfSessionAsync(write, sessionId)).FirstOrDefault();
        if (request.BasedOn != (newest?.Version ?? 0))
            return PlanRefusals.ChangedMeanwhile(newest).ToProblem();

        var same = plan.IsSameAs((await PlanStore.AllAsync(write)).Of(session.Dated));
        if (!same)
            await PlanStore.AddToSessionAsync(
                write,
                sessionId,
                plan,
                changes.Now,
                reader.AccountId
            );
        var answer = await MessageAsync(write, session, changes.Now, book);
        if (!same)
            await changes.DoneAsync(write, [session]);
        return TypedResults.Ok(answer);
    }

    private static async Task<Results<Ok<SessionPlanMessage>, ProblemHttpResult>> FollowClassAsync(
        long sessionId,
        Reader reader,
        Database database,
        RuleBook book,
        PlanChanges changes
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await FindAsync(write, reader, sessionId) is not { } session)
            return BookingRefusals.NoSuchSession.ToProblem();
        if (session.EndsAt <= changes.Now)
            return PlanRefusals.SessionIsOver.ToProblem();
        var newest = (await PlanStore.VersionsOfSessionAsync(write, sessionId)).FirstOrDefault();
        var varies = newest is { FollowsClass: false };
        if (varies)
            await PlanStore.AddToSessionAsync(
                write,
                sessionId,
                null,
                changes.Now,
                reader.AccountId
            );
        var answer = await MessageAsync(write, session, changes.Now, book);
        if (varies)
            await changes.DoneAsync(write, [session]);
        return TypedResults.Ok(answer);
    }

    private static async Task<Results<Ok<PlanPreview>, ProblemHttpResult>> PreviewAsync(
        long sessionId,
        PlanDraft request,
        Reader reader,
        Database database,
        RuleBook book,
        PlanPreviews previews
    )
    {
        await using var read = await database.ReadAsync();
        if (await FindAsync(read, reader, sessionId) is not { } session)
            return BookingRefusals.NoSuchSession.ToProblem();
        var draft = PlanDraft.Plan(request.Items);
        return PlanChecks.Fault(draft, book) is { } fault
            ? fault.ToProblem()
            : TypedResults.Ok(await previews.OfAsync(read, session, draft));
    }

    private static async Task<Results<Ok<ProposedPlan>, ProblemHttpResult>> SuitAsync(
        long sessionId,
        PlanDraft request,
        Reader reader,
        Database database,
        RuleBook book,
        PlanPreviews previews
    )
    {
        await using var read = await database.ReadAsync();
        if (await FindAsync(read, reader, sessionId) is not { } session)
            return BookingRefusals.NoSuchSession.ToProblem();
        var draft = PlanDraft.Plan(request.Items);
        return PlanChecks.Fault(draft, book) is { } fault
            ? fault.ToProblem()
            : TypedResults.Ok(await previews.SuitingAsync(read, session, draft));
    }

    private static async Task<SessionPlanMessage> MessageAsync(
        Read read,
        SessionRow session,
        Instant now,
        RuleBook book
    )
    {
        var versions = await PlanStore.VersionsOfSessionAsync(read, session.Id);
        var over = session.EndsAt <= now;
        return new()
        {
            SessionId = session.Id,
            ClassId = session.ClassId,
            ClassName = session.ClassName,
            On = session.OnDate,
            StartsLocal = session.StartsLocal.ToString("HH:mm", null),
            Minutes = MinutesOf(session),
            Version = versions.FirstOrDefault()?.Version ?? 0,
            FollowsClass = versions.FirstOrDefault() is null or { FollowsClass: true },
            MayChange = !over,
            WhyNot = over ? PlanRefusals.SessionIsOver.Message : null,
            Versions = [.. versions.Select(PlanVersionMessage.Of)],
            Items = PlanItemMessage.All((await PlanStore.AllAsync(read)).Of(session.Dated), book),
        };
    }

    // Working at the desk shows a roster, and not what is taught on it.
    private static async Task<SessionRow?> FindAsync(Read read, Reader reader, long sessionId) =>
        await SessionStore.FindAsync(read, sessionId) is { } session
        && reader.OnRoster(session.InstructorId) is Audience.Owner or Audience.Instructor
            ? session
            : null;

    private static int MinutesOf(SessionRow session) =>
        (int)(session.EndsAt - session.StartsAt).TotalMinutes;
}
