using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;

namespace Studio.Api.Jobs;

/// <summary>One booking and where it may go.</summary>
public sealed record MoveStepMessage
{
    /// <summary>The booking.</summary>
    public required long BookingId { get; init; }

    /// <summary>Its session.</summary>
    public required SessionSummary From { get; init; }

    /// <summary>Where it may go; null when nothing was found.</summary>
    public SessionSummary? To { get; init; }

    /// <summary>How the new session suits her on its date.</summary>
    public FitMessage? Fit { get; init; }
}

/// <summary>A suggested move.</summary>
public sealed record MoveMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>For whom.</summary>
    public required long ClientId { get; init; }

    /// <summary>What she likes to be called.</summary>
    public required string Called { get; init; }

    /// <summary>Her name.</summary>
    public required string Name { get; init; }

    /// <summary>When it was suggested.</summary>
    public required Instant MadeAt { get; init; }

    /// <summary>Code of the stage she crosses into.</summary>
    public required string CrossesTo { get; init; }

    /// <summary>Its name.</summary>
    public required string CrossesToName { get; init; }

    /// <summary>On which day.</summary>
    public required LocalDate CrossesOn { get; init; }

    /// <summary>Her bookings behind the line, and where they may go.</summary>
    public required IReadOnlyList<MoveStepMessage> Steps { get; init; }
}

/// <summary>How many bookings were moved.</summary>
public sealed record MovedMessage(int Moved);

/// <summary>Why a suggestion is declined.</summary>
public sealed record DeclineRequest
{
    /// <summary>In a few words; may be left out.</summary>
    [StringLength(500)]
    public string? Reason { get; init; }
}

/// <summary>Suggested moves.</summary>
public static class MoveEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapMoves(this IEndpointRouteBuilder app)
    {
        var moves = app.MapGroup("/api/moves")
            .WithTags("Moves")
            .RequireAuthorization(Policies.DeskOrClient);
        moves.MapGet("/", ListAsync).WithName("Moves");
        moves
            .MapPost("/{moveId}/accept", AcceptAsync)
            .WithName("AcceptMove")
            .ProducesProblem(404)
            .ProducesProblem(409);
        moves
            .MapPost("/{moveId}/decline", DeclineAsync)
            .WithName("DeclineMove")
            .ProducesProblem(400)
            .ProducesProblem(404);
    }

    private static async Task<List<MoveMessage>> ListAsync(
        Reader reader,
        Database database,
        SessionSummaries summaries,
        RuleBook book
    )
    {
        await using var read = await database.ReadAsync();
        if (!reader.WorksAtDesk && reader.ClientId is null)
            return [];
        var moves = await MoveStore.OpenAsync(read, reader.WorksAtDesk ? null : reader.ClientId);
        var steps = (await MoveStore.StepsAsync(read, [.. moves.Select(m => m.Id)])).ToLookup(s =>
            s.MoveId
        );
        var wanted = steps
            .SelectMany(s => s)
            .SelectMany(s => new[] { s.FromSessionId, s.ToSessionId ?? 0 })
            .ToHashSet();
        var rows = (await SessionStore.ListAsync(read, new SessionsWanted()))
            .Where(s => wanted.Contains(s.Id))
            .ToDictionary(s => s.Id);
        var summaryOf = (await summaries.OfAsync(read, rows.Values)).ToDictionary(s => s.Id);
        var fits = await Fits.LoadAsync(read, book, [.. moves.Select(m => m.ClientId)]);
        return
        [
            .. moves.Select(m => new MoveMessage
            {
                Id = m.Id,
                ClientId = m.ClientId,
                Called = m.Called,
                Name = m.Name,
                MadeAt = m.MadeAt,
                CrossesTo = m.ToStage,
                CrossesToName = book.Stages.Stages.First(s => s.Code == m.ToStage).Name,
                CrossesOn = m.CrossesOn,
                Steps =
                [
                    .. steps[m.Id]
                        .Select(s => new MoveStepMessage
                        {
                            BookingId = s.BookingId,
                            From = summaryOf[s.FromSessionId],
                            To = s.ToSessionId is { } to ? summaryOf[to] : null,
                            Fit = s.ToSessionId is { } target
                                ? FitMessage.For(
                                    fits.Of(m.ClientId, rows[target]),
                                    reader.On(m.ClientId, ended: false) ?? Audience.FrontDesk
                                )
                                : null,
                        }),
                ],
            }),
        ];
    }

    private static async Task<Results<Ok<MovedMessage>, ProblemHttpResult>> AcceptAsync(
        long moveId,
        Reader reader,
        Database database,
        Moves moves
    )
    {
        await using var write = await database.BeginWriteAsync();
        var answer = await moves.AcceptAsync(write, reader, moveId);
        if (!answer.TryGet(out var moved, out var refusal))
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.Ok(new MovedMessage(moved));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> DeclineAsync(
        long moveId,
        DeclineRequest request,
        Reader reader,
        Database database,
        Moves moves
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await moves.DeclineAsync(write, reader, moveId, request.Reason) is { } refusal)
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.NoContent();
    }
}
