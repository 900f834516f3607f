using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;

namespace Studio.Api.Clearance;

/// <summary>Clearance letters: filed by her or the desk, and seen by whoever may.</summary>
public static class LetterEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapLetters(this IEndpointRouteBuilder app)
    {
        var letters = app.MapGroup("/api/clients/{clientId}/letters")
            .WithTags("Letters")
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        letters
            .MapGet("/", ListAsync)
            .WithName("LettersOfClient")
            .RequireAuthorization(Policies.DeskReviewerOrClient)
            .Audited(AuditKinds.Letter);
        letters
            .MapPost("/", FileAsync)
            .WithName("FileLetter")
            .RequireAuthorization(Policies.DeskReviewerOrClient)
            .Accepts<IFormFile>("multipart/form-data")
            .ProducesProblem(413)
            .DisableAntiforgery();
        letters
            .MapGet("/{letterId}/file", OpenAsync)
            .WithName("LetterFile")
            .RequireAuthorization(Policies.SignedIn)
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .Audited(AuditKinds.LetterFile);
        letters
            .MapGet("/request", RequestAsync)
            .WithName("RequestLetter")
            .RequireAuthorization(Policies.DeskReviewerOrClient)
            .Audited(AuditKinds.Letter);
        app.MapGet("/api/letters/traits", () => RequestLetters.Choices)
            .WithName("LetterTraits")
            .WithTags("Letters")
            .RequireAuthorization(Policies.SignedIn);
    }

    private static async Task<Results<Ok<List<LetterMessage>>, ProblemHttpResult>> ListAsync(
        long clientId,
        Reader reader,
        Database database,
        RuleBook book,
        HealthChanges changes
    )
    {
        await using var read = await database.ReadAsync();
        if (
            await ClientStore.FindAsync(read, clientId) is not { } row
            || !(
                reader.ReadsLetters(clientId, row.Ended)
                || reader.On(clientId, row.Ended) is not null
            )
        )
            return BookingRefusals.NoSuchClient.ToProblem();
        var her = await SituationStore.OfAsync(read, clientId);
        var policies = await PolicyStore.InForceAsync(read, book);
        return TypedResults.Ok(
            (await LetterStore.OfAsync(read, clientId))
                .Select(l =>
                    LetterWords.For(
                        l,
                        her,
                        changes.Today(row),
                        book,
                        policies,
                        reader.ReadsLetters(clientId, row.Ended)
                    )
                )
                .ToList()
        );
    }

    private static async Task<Results<Ok<RequestLetter>, ProblemHttpResult>> RequestAsync(
        long clientId,
        Reader reader,
        Database database,
        RequestLetters requests
    )
    {
        await using var read = await database.ReadAsync();
        return
            await ClientStore.FindAsync(read, clientId) is { } row
            && (
                reader.ReadsLetters(clientId, row.Ended)
                || reader.On(clientId, row.Ended) is not null
            )
            ? TypedResults.Ok(
                await requests.OfAsync(read, row, reader.ReadsLetters(clientId, row.Ended))
            )
            : BookingRefusals.NoSuchClient.ToProblem();
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> FileAsync(
        long clientId,
        bool? onPaper,
        HttpRequest request,
        Reader reader,
        Database database,
        LetterFiles files,
        HealthAudit audit,
        HealthChanges changes
    )
    {
        await using (var read = await database.ReadAsync())
            if (!await MayFileAsync(read, reader, clientId))
                return BookingRefusals.NoSuchClient.ToProblem();

        // Paper that lies at the desk needs no file; whoever sits at home sends one.
        var paper = onPaper == true && reader.WorksAtDesk;
        byte[]? bytes = null;
        LetterFileKind? kind = null;
        if (!paper || request.HasFormContentType)
        {
            var given = await UploadedFile.ReadAsync(
                request,
                LetterFile.MostBytes,
                LetterRefusals.FileMissing
            );
            if (!given.TryGet(out bytes, out var refusal))
                return refusal.ToProblem();
            if (bytes is null && !paper)
                return LetterRefusals.FileMissing.ToProblem();
            if (bytes is not null)
            {
                if (!LetterFile.KindOf(bytes).TryGet(out var found, out refusal))
                    return refusal.ToProblem(
                        refusal == LetterFile.TooLarge ? StatusCodes.Status413PayloadTooLarge : null
                    );
                kind = found;
            }
        }

        var name = bytes is null ? null : await files.KeepAsync(bytes);
        try
        {
            await using var write = await database.BeginWriteAsync();
            if (!await MayFileAsync(write, reader, clientId))
                return BookingRefusals.NoSuchClient.ToProblem();
            var id = await LetterStore.FileAsync(
                write,
                clientId,
                name,
                kind,
                bytes?.Length,
                changes.Now,
                reader.AccountId
            );
            await audit.ChangedAsync(write, reader, clientId, AuditKinds.Letter);
            await changes.DoneAsync(write, clientId);
            name = null;
            return TypedResults.Created($"/api/clients/{clientId}/letters", new Made(id));
        }
        finally
        {
            // Nothing points to it: a letter that was not filed leaves no file behind.
            if (name is not null)
                files.Remove(name);
        }
    }

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> OpenAsync(
        long clientId,
        long letterId,
        Reader reader,
        Database database,
        LetterFiles files,
        HttpResponse response
    )
    {
        LetterRow? letter;
        await using (var read = await database.ReadAsync())
            letter = await FindAsync(read, reader, clientId, letterId);
        if (letter is null)
            return LetterRefusals.NoSuchLetter.ToProblem();
        if (letter.FileName is not { } name || await files.OpenAsync(name) is not { } bytes)
            return LetterRefusals.NoFile.ToProblem();
        // Shown by the browser, yet able to do nothing there, and kept by nobody on the way.
        response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
        response.Headers.CacheControl = "no-store";
        return TypedResults.File(bytes, letter.MediaType);
    }

    // For whoever may read it; for everybody else there is no such letter.
    internal static async Task<LetterRow?> FindAsync(
        Read read,
        Reader reader,
        long clientId,
        long letterId
    ) =>
        await ClientStore.FindAsync(read, clientId) is { } row
        && reader.ReadsLetters(clientId, row.Ended)
            ? await LetterStore.FindAsync(read, clientId, letterId)
            : null;

    private static async Task<bool> MayFileAsync(Read read, Reader reader, long clientId) =>
        await ClientStore.FindAsync(read, clientId) is { } row
        && (reader.ReadsLetters(clientId, row.Ended) || reader.On(clientId, row.Ended) is not null);
}
