using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Booking;

namespace Studio.Api.Audit;

/// <summary>One entry of the trail.</summary>
public sealed record AuditMessage
{
    /// <summary>Its number; ask for what lies before the last one seen to go on.</summary>
    public required long Id { get; init; }

    /// <summary>When.</summary>
    public required Instant At { get; init; }

    /// <summary>Who: a name, "the program", or "an account that is gone".</summary>
    public required string Who { get; init; }

    /// <summary>As what: owner, reviewer, herself, instructor, frontDesk or program.</summary>
    public required string SeenAs { get; init; }

    /// <summary>Read or change.</summary>
    public required AuditAct Act { get; init; }

    /// <summary>Which part of the record.</summary>
    public required string Kind { get; init; }

    /// <summary>Whose record.</summary>
    public required long ClientId { get; init; }

    /// <summary>Her name; null once she was erased.</summary>
    public string? Whose { get; init; }

    /// <summary>The session whose roster it was.</summary>
    public long? SessionId { get; init; }
}

/// <summary>Whether the trail is whole.</summary>
/// <param name="Entries">How many entries it should have.</param>
/// <param name="Whole">Nothing was changed, dropped or slipped in.</param>
/// <param name="FirstBroken">The first entry that does not fit.</param>
public sealed record AuditCheck(long Entries, bool Whole, long? FirstBroken);

/// <summary>The audit trail, for the owner and, of her own record, for the client.</summary>
public static class AuditEndpoints
{
    private const int PageSize = 100;

    /// <summary>Maps the routes.</summary>
    public static void MapAudit(this IEndpointRouteBuilder app)
    {
        var audit = app.MapGroup("/api/audit").WithTags("Audit");
        audit
            .MapGet("/", ListAsync)
            .WithName("Audit")
            .RequireAuthorization(Policies.OwnerOrClient)
            .ProducesProblem(400)
            .ProducesProblem(404);
        audit
            .MapGet("/check", CheckAsync)
            .WithName("CheckAudit")
            .RequireAuthorization(Policies.Owner);
    }

    private static async Task<Results<Ok<List<AuditMessage>>, ProblemHttpResult>> ListAsync(
        long? client,
        [Range(1, long.MaxValue)] long? before,
        Reader reader,
        Database database
    )
    {
        await using var read = await database.ReadAsync();
        if (client is null && !reader.IsOwner)
            return new Refusal(
                RefusalKind.Invalid,
                "client-missing",
                "Say whose record: a client sees the trail of her own.",
                "client"
            ).ToProblem();
        if (
            client is { } id
            && await ClientStore.AudienceAsync(read, reader, id)
                is not (Audience.Owner or Audience.Herself)
        )
            return BookingRefusals.NoSuchClient.ToProblem();
        return TypedResults.Ok(
            (await AuditStore.ListAsync(read, client, before, PageSize))
                .Select(row => new AuditMessage
                {
                    Id = row.Id,
                    At = row.At,
                    Who = row.AccountId is null
                        ? "the program"
                        : row.Who ?? "an account that is gone",
                    SeenAs = row.SeenAs,
                    Act = row.Act,
                    Kind = row.Kind,
                    ClientId = row.ClientId,
                    Whose = row.Whose,
                    SessionId = row.SessionId,
                })
                .ToList()
        );
    }

    private static async Task<Ok<AuditCheck>> CheckAsync(Database database)
    {
        await using var read = await database.ReadAsync();
        var (entries, broken) = await AuditStore.CheckAsync(read);
        return TypedResults.Ok(new AuditCheck(entries, broken is null, broken));
    }
}
