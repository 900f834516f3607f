using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Movements;

namespace Studio.Api.Movements;

/// <summary>The plans of classes. They name nobody, so everybody who teaches may read them.</summary>
public static class ClassPlanEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapClassPlans(this IEndpointRouteBuilder app)
    {
        var plan = app.MapGroup("/api/classes/{classId}/plan")
            .WithTags("Movements")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(404);
        plan.MapGet("/", ReadAsync).WithName("ClassPlan");
        plan.MapGet("/versions/{version}", VersionAsync).WithName("ClassPlanVersion");
        plan.MapPut("/", ChangeAsync)
            .WithName("ChangeClassPlan")
            .ProducesProblem(400)
            .ProducesProblem(403)
            .ProducesProblem(409);
    }

    private static async Task<Results<Ok<ClassPlanMessage>, ProblemHttpResult>> ReadAsync(
        long classId,
        Reader reader,
        Database database,
        RuleBook book,
        StudioStore studio
    )
    {
        var today = (await studio.AboutAsync()).Today;
        await using var read = await database.ReadAsync();
        return await ClassAsync(read, classId) is { } cls
            ? TypedResults.Ok(await MessageAsync(read, cls, reader, today, book))
            : PlanRefusals.NoSuchClass.ToProblem();
    }

    private static async Task<Results<Ok<PlanVersionItems>, ProblemHttpResult>> VersionAsync(
        long classId,
        int version,
        Database database,
        RuleBook book
    )
    {
        await using var read = await database.ReadAsync();
        if (
            (await PlanStore.VersionsAsync(read, classId)).Find(v => v.Version == version)
            is not { } row
        )
            return PlanRefusals.NoSuchVersion.ToProblem();
        return TypedResults.Ok(
            new PlanVersionItems(
                PlanVersionMessage.Of(row),
                PlanItemMessage.All(await PlanStore.ItemsAsync(read, row.Id), book)
            )
        );
    }

    private static async Task<Results<Ok<ClassPlanMessage>, ProblemHttpResult>> ChangeAsync(
        long classId,
        PlanRequest request,
        Reader reader,
        Database database,
        RuleBook book,
        StudioStore studio,
        PlanChanges changes
    )
    {
        var today = (await studio.AboutAsync()).Today;
        await using var write = await database.BeginWriteAsync();
        if (await ClassAsync(write, classId) is not { } cls)
            return PlanRefusals.NoSuchClass.ToProblem();
        if (!await MayChangeAsync(write, cls, reader, today))
            return PlanRefusals.NotQualified(cls.NeedsQualification).ToProblem();

        var plan = PlanDraft.Plan(request.Items);
        if ((PlanChecks.Fault(plan, book) ?? PlanChecks.TooLong(plan, cls.Minutes)) is { } fault)
            return fault.ToProblem();
        var nobody = PlanChecks.LeftOut(
            plan,
            cls.Stages.ToHashSet(StringComparer.Ordinal),
            book,
            await PolicyStore.InForceAsync(write, book)
        );
        if (nobody.Count > 0)
            return PlanChecks.NobodyDoes(nobody[0], book).ToProblem();

        var newest = (await PlanStore.VersionsAsync(write, classId)).FirstOrDefault();
        if (request.BasedOn != (newest?.Version ?? 0))
            return PlanRefusals.ChangedMeanwhile(newest).ToProblem();
        var same =
            newest is not null && plan.IsSameAs(await PlanStore.ItemsAsync(write, newest.Id));
        if (!same)
            await PlanStore.AddAsync(write, classId, plan, changes.Now, reader.AccountId);
        var answer = await MessageAsync(write, cls, reader, today, book);
        if (!same)
            await changes.DoneAsync(
                write,
                [
                    .. (
                        await SessionStore.ListAsync(
                            write,
                            new SessionsWanted { ClassId = classId }
                        )
                    ).Where(s => s.StartsAt >= changes.Now && s.Status == SessionStatus.Open),
                ]
            );
        return TypedResults.Ok(answer);
    }

    private static async Task<ClassPlanMessage> MessageAsync(
        Read read,
        StudioClass cls,
        Reader reader,
        LocalDate today,
        RuleBook book
    )
    {
        var versions = await PlanStore.VersionsAsync(read, cls.Id);
        var may = await MayChangeAsync(read, cls, reader, today);
        return new()
        {
            ClassId = cls.Id,
            ClassName = cls.Name,
            Minutes = cls.Minutes,
            Version = versions.FirstOrDefault()?.Version ?? 0,
            MayChange = may,
            WhyNot = may ? null : PlanRefusals.NotQualified(cls.NeedsQualification).Message,
            Versions = [.. versions.Select(PlanVersionMessage.Of)],
            Items = PlanItemMessage.All(
                versions.Count == 0 ? null : await PlanStore.ItemsAsync(read, versions[0].Id),
                book
            ),
        };
    }

    /// <summary>
    /// The owner, and instructors who hold the qualification the class asks of its instructor, on the studio's own today:
    /// they answer for what is taught in it, whoever teaches the next session. One whose qualification has run out, or
    /// never covered this class, changes her own sessions only.
    /// </summary>
    private static async Task<bool> MayChangeAsync(
        Read read,
        StudioClass cls,
        Reader reader,
        LocalDate today
    ) =>
        reader.IsOwner
        || reader.InstructorId is { } instructor
            && await read.ValueAsync<bool>(
                """
                select exists (select 1 from qualifications
                                where instructor_id = @instructor and kind = @NeedsQualification
                                  and withdrawn_at is null and issued_on <= @today and expires_on >= @today)
                """,
                new
                {
                    instructor,
                    cls.NeedsQualification,
                    today,
                }
            );

    private static async Task<StudioClass?> ClassAsync(Read read, long classId) =>
        (await StudioStore.ClassesAsync(read)).Find(c => c.Id == classId);
}
