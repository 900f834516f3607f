using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>The reader's own messages, what she wants to receive, and the link that stops a kind.</summary>
public static class MessageChoiceEndpoints
{
    private static readonly Refusal NoSuchChoice = new(
        RefusalKind.NotFound,
        "no-such-choice",
        "Messages of this kind are not yours to stop."
    );

    private static readonly Refusal NoSuchLink = new(
        RefusalKind.NotFound,
        "no-such-link",
        "This link is not whole, or not one of ours any more. Sign in and choose on your page what you receive."
    );

    /// <summary>Maps the routes.</summary>
    public static void MapMessageChoices(this IEndpointRouteBuilder app)
    {
        var mine = app.MapGroup("/api/messages")
            .WithTags("Messages")
            .RequireAuthorization(Policies.SignedIn);
        mine.MapGet("/mine", MineAsync).WithName("MyMessages");
        mine.MapGet("/choices", ChoicesAsync).WithName("MessageChoices");
        mine.MapPut("/choices/{kind}", ChooseAsync).WithName("ChooseMessages").ProducesProblem(404);

        var stops = app.MapGroup("/api/mail-stops/{token}")
            .WithTags("Messages")
            .AllowAnonymous()
            .ProducesProblem(404);
        stops.MapGet("/", WhatStopsAsync).WithName("MessageStop");
        stops.MapPost("/", StopAsync).WithName("StopMessages");
        // The address in the messages themselves: a page for a person (GET), one press for her mail program (RFC 8058).
        app.MapPost("/mail/stop/{token}", StopAsync).AllowAnonymous().ExcludeFromDescription();
    }

    private static async Task<List<MyMessage>> MineAsync(
        Reader reader,
        Database database,
        StudioStore studio,
        MailLinks links
    )
    {
        var name = (await studio.AboutAsync()).Name;
        await using var read = await database.ReadAsync();
        var rows = await MessageStore.ListAsync(
            read,
            new()
            {
                ClientId = reader.ClientId,
                InstructorId = reader.InstructorId,
                AccountId = reader.AccountId,
            }
        );
        return
        [
            .. rows.Where(row => row.Status != MessageStatus.Dropped)
                .Select(row =>
                {
                    var said = MessageText.Of(
                        row.Kind,
                        row.Facts,
                        MessageFrames.Of(row, name, links)
                    );
                    return new MyMessage(
                        row.Id,
                        row.Kind,
                        said.Subject,
                        said.Heart,
                        row.EndedAt ?? row.MadeAt,
                        MessageStates.Says(row.Status, row.Attempts, row.HeldBack)
                    );
                }),
        ];
    }

    private static async Task<List<MessageChoice>> ChoicesAsync(Reader reader, Database database)
    {
        await using var read = await database.ReadAsync();
        var unwanted = await MessageStore.UnwantedAsync(read, reader.ClientId, reader.InstructorId);
        return
        [
            .. KindsOf(reader)
                .Select(kind => new MessageChoice(kind, kind.Title(), !unwanted.Contains(kind))),
        ];
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> ChooseAsync(
        string kind,
        ChoiceOfMessages request,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        if (MessageKinds.Find(kind) is not { } known || !KindsOf(reader).Contains(known))
            return NoSuchChoice.ToProblem();
        var hers = MessageKinds.AClientMayStop.Contains(known) && reader.ClientId is not null;
        await using var write = await database.BeginWriteAsync();
        await MessageStore.WantAsync(
            write,
            new(hers ? reader.ClientId : null, hers ? null : reader.InstructorId, known),
            request.Wanted,
            byLink: false,
            clock.GetCurrentInstant()
        );
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<Ok<StopMessage>, ProblemHttpResult>> WhatStopsAsync(
        string token,
        Database database,
        MailLinks links
    )
    {
        await using var read = await database.ReadAsync();
        if (await HeldAsync(read, links, token) is not { } what)
            return NoSuchLink.ToProblem();
        var unwanted = await MessageStore.UnwantedAsync(read, what.ClientId, what.InstructorId);
        return TypedResults.Ok(new StopMessage(what.Kind.Title(), unwanted.Contains(what.Kind)));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> StopAsync(
        string token,
        Database database,
        MailLinks links,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await HeldAsync(write, links, token) is not { } what)
            return NoSuchLink.ToProblem();
        await MessageStore.WantAsync(
            write,
            what,
            wanted: false,
            byLink: true,
            clock.GetCurrentInstant()
        );
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    // Of somebody erased since, nothing is kept any more.
    private static async Task<Stopping?> HeldAsync(Read read, MailLinks links, string token) =>
        links.Read(token) is { } what
        && !what.Kind.IsEssential()
        && await read.ValueAsync<long>(
            """
            select (select count(*) from clients where id = @ClientId and erased_at is null)
                 + (select count(*) from instructors where id = @InstructorId)
            """,
            new { what.ClientId, what.InstructorId }
        ) == 1
            ? what
            : null;

    private static IEnumerable<MessageKind> KindsOf(Reader reader) =>
        (reader.ClientId is null ? [] : MessageKinds.AClientMayStop).Concat(
            reader.InstructorId is null ? [] : MessageKinds.AnInstructorMayStop
        );
}
