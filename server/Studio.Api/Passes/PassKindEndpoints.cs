using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Passes;
using Studio.Core.Staff;

namespace Studio.Api.Passes;

/// <summary>Kinds of pass: the owner enters and changes them, the desk sells them.</summary>
public static class PassKindEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapPassKinds(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/pass-kinds", ListAsync)
            .WithName("PassKinds")
            .WithTags("Passes")
            .RequireAuthorization(Policies.Desk);
        var kinds = app.MapGroup("/api/pass-kinds")
            .WithTags("Passes")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        kinds.MapPost("/", AddAsync).WithName("AddPassKind");
        kinds.MapPut("/{passKindId}", ChangeAsync).WithName("ChangePassKind");
    }

    private static async Task<List<PassKindMessage>> ListAsync(Database database)
    {
        await using var read = await database.ReadAsync();
        return await PassKindStore.AllAsync(read);
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> AddAsync(
        PassKindRequest request,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await WhyNotAsync(write, request, 0) is { } refusal)
            return refusal.ToProblem();
        var id = await PassKindStore.AddAsync(
            write,
            request,
            clock.GetCurrentInstant(),
            reader.AccountId
        );
        write.Tell("passes");
        await write.CommitAsync();
        return TypedResults.Created("/api/pass-kinds", new Made(id));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> ChangeAsync(
        long passKindId,
        PassKindRequest request,
        Database database
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await PassKindStore.FindAsync(write, passKindId) is null)
            return PassRefusals.NoSuchKind.ToProblem();
        if (await WhyNotAsync(write, request, passKindId) is { } refusal)
            return refusal.ToProblem();
        await PassKindStore.ChangeAsync(write, passKindId, request);
        write.Tell("passes");
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Refusal?> WhyNotAsync(Read read, PassKindRequest kind, long id)
    {
        if (kind.Name.Trim().Length == 0)
            return Bad("name", "Give it a name.");
        if (!Currency.Exists(kind.Currency))
            return Bad(
                "currency",
                $"There is no currency {kind.Currency}. Write its three letters as in EUR."
            );
        var classes = (await StudioStore.ClassesAsync(read)).Select(c => c.Id).ToHashSet();
        if (kind.ClassIds.Any(c => !classes.Contains(c)))
            return Bad("classIds", "One of these classes is not there. Choose from the list.");
        var sessions = await PassKindStore.DaysAsync(read, [.. kind.SessionIds]);
        // A session called off since stays in the course it was named for.
        var named = (await PassKindStore.FindAsync(read, id))?.SessionIds ?? [];
        if (kind.SessionIds.Any(s => !sessions.ContainsKey(s) && !named.Contains(s)))
            return Bad(
                "sessionIds",
                "One of these sessions is not held. Choose from those in the timetable."
            );
        if (
            new PassTerms(
                kind.Form,
                kind.Credits,
                kind.RunsDays,
                kind.Price,
                kind.SessionIds.Distinct().ToDictionary(s => s, s => sessions.GetValueOrDefault(s))
            ).WhyNot() is
            { } refusal
        )
            return refusal;
        return kind.OnSale && await PassKindStore.NameTakenAsync(read, kind.Name.Trim(), id)
            ? new Refusal(
                RefusalKind.Conflict,
                "name-taken",
                "Another kind on sale has this name. Choose another name, or stop selling the other one.",
                "name"
            )
            : null;
    }

    private static Refusal Bad(string field, string message) =>
        new(RefusalKind.Invalid, "bad-pass-kind", message, field);
}
