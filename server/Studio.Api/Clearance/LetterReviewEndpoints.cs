using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;

namespace Studio.Api.Clearance;

/// <summary>The work of whoever reads letters: what waits, what was read, and what came of it.</summary>
public static class LetterReviewEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapLetterReviews(this IEndpointRouteBuilder app)
    {
        var letters = app.MapGroup("/api/clients/{clientId}/letters")
            .WithTags("Letters")
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        letters
            .MapPost("/{letterId}/review", ReviewAsync)
            .WithName("ReviewLetter")
            .RequireAuthorization(Policies.Reviewer);
        letters
            .MapPost("/{letterId}/refuse", RefuseAsync)
            .WithName("RefuseLetter")
            .RequireAuthorization(Policies.Reviewer);
        letters
            .MapPost("/{letterId}/withdraw", WithdrawAsync)
            .WithName("WithdrawLetter")
            .RequireAuthorization(Policies.Reviewer);
        app.MapGet("/api/letters/read", ReadAsync)
            .WithName("ReadLetters")
            .WithTags("Letters")
            .RequireAuthorization(Policies.Reviewer)
            .Audited(AuditKinds.Letter);
        app.MapGet("/api/letters/waiting", WaitingAsync)
            .WithName("WaitingLetters")
            .WithTags("Letters")
            .RequireAuthorization(Policies.Reviewer)
            .Audited(AuditKinds.Letter);
        // Names and nothing else: what stands in the letters is asked for, and noted, one person at a time.
        app.MapGet("/api/letters/people", PeopleAsync)
            .WithName("FindLetters")
            .WithTags("Letters")
            .RequireAuthorization(Policies.Reviewer);
        // Names nobody, so that the number in the menu leaves no trace in anybody's record.
        app.MapGet("/api/letters/waiting/count", CountAsync)
            .WithName("CountWaitingLetters")
            .WithTags("Letters")
            .RequireAuthorization(Policies.Reviewer);
    }

    private static async Task<List<LetterPerson>> PeopleAsync(
        string? find,
        Reader reader,
        Database database
    )
    {
        await using var read = await database.ReadAsync();
        return await LetterPeople.FindAsync(
            read,
            SearchText.Words(find),
            withEnded: reader.IsOwner
        );
    }

    private static async Task<Ok<WaitingCount>> CountAsync(Database database)
    {
        await using var read = await database.ReadAsync();
        return TypedResults.Ok(new WaitingCount(await LetterStore.CountWaitingAsync(read)));
    }

    private static Task<Ok<List<LetterMessage>>> WaitingAsync(
        Database database,
        RuleBook book,
        StudioStore studio,
        HealthAudit audit
    ) => ListedAsync(LetterStore.WaitingAsync, database, book, studio, audit);

    private static Task<Ok<List<LetterMessage>>> ReadAsync(
        Database database,
        RuleBook book,
        StudioStore studio,
        HealthAudit audit
    ) => ListedAsync(LetterStore.ReadAsync, database, book, studio, audit);

    private static async Task<Ok<List<LetterMessage>>> ListedAsync(
        Func<Read, Task<List<LetterRow>>> load,
        Database database,
        RuleBook book,
        StudioStore studio,
        HealthAudit audit
    )
    {
        var today = (await studio.AboutAsync()).Today;
        await using var read = await database.ReadAsync();
        var letters = await load(read);
        var policies = await PolicyStore.InForceAsync(read, book);
        var ids = letters.Select(l => l.ClientId).Distinct().ToList();
        var situations = await SituationStore.OfAsync(read, ids);
        audit.Saw(ids);
        return TypedResults.Ok(
            letters
                .Select(l =>
                    LetterWords.For(
                        l,
                        situations[l.ClientId],
                        today,
                        book,
                        policies,
                        readsAll: true
                    )
                )
                .ToList()
        );
    }

    private static Task<Results<NoContent, ProblemHttpResult>> ReviewAsync(
        long clientId,
        long letterId,
        LetterReview request,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes
    ) =>
        DecideAsync(
            clientId,
            letterId,
            reader,
            database,
            audit,
            changes,
            async (write, letter, today) =>
            {
                if (letter.State != LetterState.Waiting || letter.WithdrawnAt is not null)
                    return LetterRefusals.AlreadyReviewed;
                var read = request.ToLetter();
                if (
                    LetterRefusals.WhyNot(read.IssuedOn, read.ExpiresOn, read.Terms, today) is
                    { } refusal
                )
                    return refusal;
                await LetterStore.CountAsync(
                    write,
                    letter,
                    read,
                    today,
                    changes.Now,
                    reader.AccountId
                );
                return null;
            }
        );

    private static Task<Results<NoContent, ProblemHttpResult>> RefuseAsync(
        long clientId,
        long letterId,
        LetterRefusal request,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes
    ) =>
        DecideAsync(
            clientId,
            letterId,
            reader,
            database,
            audit,
            changes,
            async (write, letter, _) =>
            {
                if (letter.State != LetterState.Waiting || letter.WithdrawnAt is not null)
                    return LetterRefusals.AlreadyReviewed;
                await LetterStore.RefuseAsync(
                    write,
                    letter.Id,
                    request.Because.Trim(),
                    changes.Now,
                    reader.AccountId
                );
                return null;
            }
        );

    private static Task<Results<NoContent, ProblemHttpResult>> WithdrawAsync(
        long clientId,
        long letterId,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes
    ) =>
        DecideAsync(
            clientId,
            letterId,
            reader,
            database,
            audit,
            changes,
            async (write, letter, _) =>
            {
                if (letter.State == LetterState.Refused || letter.WithdrawnAt is not null)
                    return LetterRefusals.NotCounting;
                await LetterStore.WithdrawAsync(write, letter.Id, changes.Now, reader.AccountId);
                return null;
            }
        );

    private static async Task<Results<NoContent, ProblemHttpResult>> DecideAsync(
        long clientId,
        long letterId,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes,
        Func<Write, LetterRow, NodaTime.LocalDate, Task<Core.Refusal?>> decide
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await LetterEndpoints.FindAsync(write, reader, clientId, letterId) is not { } letter)
            return LetterRefusals.NoSuchLetter.ToProblem();
        var row = (await ClientStore.FindAsync(write, clientId))!;
        if (await decide(write, letter, changes.Today(row)) is { } refusal)
            return refusal.ToProblem();
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Letter);
        await changes.DoneAsync(write, clientId);
        return TypedResults.NoContent();
    }
}
