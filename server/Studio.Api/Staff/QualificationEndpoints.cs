using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Clearance;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Rosters;
using Studio.Core.Accounts;
using Studio.Core.Clearance;
using Studio.Core.Staff;

namespace Studio.Api.Staff;

/// <summary>Qualifications and their proof: filed by the owner, seen by her and by whoever holds them.</summary>
public static class QualificationEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapQualifications(this IEndpointRouteBuilder staff)
    {
        var held = staff
            .MapGroup("/{instructorId}/qualifications")
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        held.MapPost("/", AddAsync)
            .WithName("AddQualification")
            .RequireAuthorization(Policies.Owner);
        held.MapPost("/{qualificationId}/withdraw", WithdrawAsync)
            .WithName("WithdrawQualification")
            .RequireAuthorization(Policies.Owner);
        held.MapPut("/{qualificationId}/proof", ProveAsync)
            .WithName("ProveQualification")
            .RequireAuthorization(Policies.Owner)
            .Accepts<IFormFile>("multipart/form-data")
            .ProducesProblem(413)
            .DisableAntiforgery();
        held.MapGet("/{qualificationId}/proof", OpenAsync)
            .WithName("ProofOfQualification")
            .RequireAuthorization(Policies.Teaching)
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf");
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> AddAsync(
        long instructorId,
        QualificationRequest request,
        Database database,
        FlagSweep flags
    )
    {
        if (request.ExpiresOn < request.IssuedOn)
            return StaffRefusals.LastBeforeFirst.ToProblem();
        await using var write = await database.BeginWriteAsync();
        if (await StaffStore.FindAsync(write, instructorId) is null)
            return StaffRefusals.NoSuchInstructor.ToProblem();
        if (
            await StaffStore.FileAsync(
                write,
                instructorId,
                request.Kind.Trim(),
                request.IssuedOn,
                request.ExpiresOn
            )
            is not { } id
        )
            return StaffRefusals.FiledAlready.ToProblem();
        await DoneAsync(write, flags);
        return TypedResults.Created($"/api/instructors/{instructorId}", new Made(id));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> WithdrawAsync(
        long instructorId,
        long qualificationId,
        Reader reader,
        Database database,
        FlagSweep flags,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await FindAsync(write, instructorId, qualificationId) is not { } held)
            return StaffRefusals.NoSuchQualification.ToProblem();
        if (held.WithdrawnAt is not null)
            return StaffRefusals.WithdrawnAlready.ToProblem();
        await StaffStore.WithdrawAsync(
            write,
            qualificationId,
            clock.GetCurrentInstant(),
            reader.AccountId
        );
        await DoneAsync(write, flags);
        return TypedResults.NoContent();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> ProveAsync(
        long instructorId,
        long qualificationId,
        HttpRequest request,
        Database database,
        ProofFiles files
    )
    {
        await using (var read = await database.ReadAsync())
            if (await FindAsync(read, instructorId, qualificationId) is null)
                return StaffRefusals.NoSuchQualification.ToProblem();
        var given = await UploadedFile.ReadAsync(
            request,
            LetterFile.MostBytes,
            StaffRefusals.ProofMissing
        );
        if (!given.TryGet(out var bytes, out var refusal))
            return (refusal ?? StaffRefusals.ProofMissing).ToProblem();
        if (!LetterFile.KindOf(bytes).TryGet(out var kind, out refusal))
            return refusal.ToProblem(
                refusal == LetterFile.TooLarge ? StatusCodes.Status413PayloadTooLarge : null
            );

        var name = await files.KeepAsync(bytes);
        string? unused = name;
        try
        {
            await using var write = await database.BeginWriteAsync();
            if (await FindAsync(write, instructorId, qualificationId) is not { } held)
                return StaffRefusals.NoSuchQualification.ToProblem();
            if (held.WithdrawnAt is not null)
                return StaffRefusals.WithdrawnAlready.ToProblem();
            await StaffStore.ProveAsync(
                write,
                qualificationId,
                name,
                LetterStore.MediaTypeOf(kind)
            );
            write.Tell("staff");
            await write.CommitAsync();
            unused = held.ProofName;
            return TypedResults.NoContent();
        }
        finally
        {
            // The one that was not filed, or the one whose place it took.
            if (unused is not null)
                files.Remove(unused);
        }
    }

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> OpenAsync(
        long instructorId,
        long qualificationId,
        Reader reader,
        Database database,
        ProofFiles files,
        HttpResponse response
    )
    {
        QualificationRow? held = null;
        if (reader.MayKeep(instructorId))
            await using (var read = await database.ReadAsync())
                held = await FindAsync(read, instructorId, qualificationId);
        if (held is null)
            return StaffRefusals.NoSuchQualification.ToProblem();
        if (held.ProofName is not { } name || await files.OpenAsync(name) is not { } bytes)
            return StaffRefusals.NoProof.ToProblem();
        // Shown by the browser, yet able to do nothing there, and kept by nobody on the way.
        response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
        response.Headers.CacheControl = "no-store";
        return TypedResults.File(bytes, held.ProofMediaType);
    }

    private static async Task<QualificationRow?> FindAsync(
        Read read,
        long instructorId,
        long qualificationId
    ) =>
        (await StaffStore.QualificationsAsync(read, instructorId)).Find(q =>
            q.Id == qualificationId
        );

    private static async Task DoneAsync(Write write, FlagSweep flags)
    {
        await flags.SessionsAsync(write);
        write.Tell("staff");
        write.Tell("session");
        await write.CommitAsync();
    }
}
