using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;

namespace Studio.Api.Studios;

/// <summary>A policy as it stands.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Value">What holds.</param>
/// <param name="Default">The catalogue's cautious default.</param>
/// <param name="Allowed">What may be chosen.</param>
/// <param name="Means">What it means.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="LessCautious">What holds is less cautious than the default.</param>
public sealed record PolicyMessage(
    string Code,
    string Value,
    string Default,
    string Allowed,
    string Means,
    string Source,
    bool LessCautious
);

/// <summary>A value that may be chosen.</summary>
public sealed record PolicyValue
{
    /// <summary>The value; null for the default.</summary>
    [StringLength(60)]
    public string? Value { get; init; }
}

/// <summary>A value that is chosen.</summary>
public sealed record PolicyRequest
{
    /// <summary>The value; null for the default.</summary>
    [StringLength(60)]
    public string? Value { get; init; }

    /// <summary>Why, for those who look at the list of changes later.</summary>
    [StringLength(300)]
    public string? Why { get; init; }

    /// <summary>That it is less cautious than the default is meant.</summary>
    public bool? Confirmed { get; init; }
}

/// <summary>What the studio chooses where sources disagree.</summary>
public static class PolicyEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapPolicies(this IEndpointRouteBuilder app)
    {
        var policies = app.MapGroup("/api/policies")
            .WithTags("Studio")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        policies.MapGet("/", ListAsync).WithName("Policies");
        policies.MapGet("/changes", ChangesAsync).WithName("PolicyChanges");
        policies.MapPut("/{code}", ChooseAsync).WithName("ChoosePolicy");
        policies.MapPost("/{code}/preview", PreviewAsync).WithName("PreviewPolicy");
    }

    private static async Task<List<PolicyMessage>> ListAsync(Database database, RuleBook book)
    {
        await using var read = await database.ReadAsync();
        var chosen = await PolicyStore.ChosenAsync(read, book);
        return
        [
            .. book.PolicyChoices.Select(p =>
            {
                var value = chosen.GetValueOrDefault(p.Code, p.Default);
                return new PolicyMessage(
                    p.Code,
                    value,
                    p.Default,
                    p.Allowed,
                    p.Means,
                    p.Source.Cite,
                    PolicyCaution.Of(p.Code, value, p.Default) == Caution.Less
                );
            }),
        ];
    }

    private static async Task<List<PolicyChange>> ChangesAsync(Database database)
    {
        await using var read = await database.ReadAsync();
        return await PolicyStore.ChangesAsync(read);
    }

    private static async Task<Results<Ok<PolicyPreview>, ProblemHttpResult>> PreviewAsync(
        string code,
        PolicyValue request,
        Database database,
        RuleBook book,
        PolicyChanges changes
    )
    {
        await using var read = await database.ReadAsync();
        return (await changes.TryAsync(read, book, code, request.Value)).TryGet(
            out var preview,
            out var refusal
        )
            ? TypedResults.Ok(preview)
            : refusal.ToProblem();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> ChooseAsync(
        string code,
        PolicyRequest request,
        Reader reader,
        Database database,
        PolicyChanges changes
    )
    {
        await using var write = await database.BeginWriteAsync();
        var refusal = await changes.ChooseAsync(
            write,
            code,
            request.Value,
            request.Why?.Trim() ?? "",
            request.Confirmed == true,
            reader.AccountId
        );
        if (refusal is not null)
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.NoContent();
    }
}
