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

/// <summary>What is told to whom, for the owner: the log, examples, a test, trying again.</summary>
public static class MessageEndpoints
{
    private const int PageOf = 50;

    private static readonly Refusal NoSuchMessage = new(
        RefusalKind.NotFound,
        "no-such-message",
        "There is no such message."
    );

    private static readonly Refusal NoFile = new(
        RefusalKind.NotFound,
        "no-file",
        "This message was not written to a file: only those are that were sent while there was no mail server."
    );

    private static readonly Refusal HasEnded = new(
        RefusalKind.Conflict,
        "message-has-ended",
        "This message is sent, is being sent, or has lost its reason, so it is not tried again."
    );

    /// <summary>Maps the routes.</summary>
    public static void MapMessages(this IEndpointRouteBuilder app)
    {
        var messages = app.MapGroup("/api/messages")
            .WithTags("Messages")
            .RequireAuthorization(Policies.Owner);
        messages.MapGet("/", LogAsync).WithName("Messages").ProducesProblem(400);
        messages.MapGet("/counts", CountsAsync).WithName("MessageCounts");
        messages.MapGet("/kinds", KindsAsync).WithName("MessageKinds");
        messages.MapPost("/test", TestAsync).WithName("TestMessage");
        messages.MapPost("/retry", RetryAllAsync).WithName("RetryMessages");
        messages.MapGet("/{messageId}", OneAsync).WithName("Message").ProducesProblem(404);
        messages
            .MapGet("/{messageId}/file", FileAsync)
            .WithName("MessageFile")
            .ProducesProblem(404);
        messages
            .MapPost("/{messageId}/retry", RetryAsync)
            .WithName("RetryMessage")
            .ProducesProblem(404)
            .ProducesProblem(409);
    }

    private static async Task<Results<Ok<MessageLog>, ProblemHttpResult>> LogAsync(
        Database database,
        MailSettings settings,
        string? status,
        string? kind,
        string? find,
        long? before
    )
    {
        MessageStatus? wantedStatus = null;
        if (status is { Length: > 0 })
        {
            if (
                !Enum.TryParse<MessageStatus>(status, ignoreCase: true, out var known)
                || known.OnTheWire() != status
            )
                return Unknown("status", status).ToProblem();
            wantedStatus = known;
        }

        MessageKind? wantedKind = null;
        if (kind is { Length: > 0 })
        {
            if (MessageKinds.Find(kind) is not { } known)
                return Unknown("kind", kind).ToProblem();
            wantedKind = known;
        }

        await using var read = await database.ReadAsync();
        var rows = await MessageStore.ListAsync(
            read,
            new()
            {
                Status = wantedStatus,
                Kind = wantedKind,
                Find = string.IsNullOrWhiteSpace(find) ? null : find,
                Before = before,
                Most = PageOf + 1,
            }
        );
        return TypedResults.Ok(
            new MessageLog(
                [.. rows.Take(PageOf).Select(LoggedMessage.Of)],
                rows.Count > PageOf,
                await MessageStore.CountsAsync(read),
                new(settings.Server?.ToString(), settings.From, settings.PublicUrl)
            )
        );
    }

    private static async Task<MessageCounts> CountsAsync(Database database)
    {
        await using var read = await database.ReadAsync();
        return await MessageStore.CountsAsync(read);
    }

    private static async Task<List<KindMessage>> KindsAsync(StudioStore studio, MailLinks links)
    {
        var name = (await studio.AboutAsync()).Name;
        return
        [
            .. MessageKinds.All.Select(kind =>
            {
                var said = MessageText.Of(
                    kind,
                    MessageExamples.Of(kind),
                    new()
                    {
                        StudioName = name,
                        Called = "Ilka",
                        Page = links.Page("/my"),
                        Stop = kind.IsEssential() ? null : links.Page("/mail/stop/example"),
                        Choices = links.Page("/my/messages"),
                    }
                );
                return new KindMessage(
                    kind,
                    kind.Title(),
                    kind.IsEssential(),
                    said.Subject,
                    said.Text,
                    said.Html
                );
            }),
        ];
    }

    private static async Task<NoContent> TestAsync(Reader reader, Database database, Outbox outbox)
    {
        await using var write = await database.BeginWriteAsync();
        await outbox.PutAsync(
            write,
            new()
            {
                Kind = MessageKind.Test,
                About = $"test:{Guid.NewGuid():N}",
                AccountId = reader.AccountId,
                Facts = new Dictionary<string, string> { ["by"] = "her" },
            }
        );
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Retried> RetryAllAsync(Database database, IClock clock)
    {
        await using var write = await database.BeginWriteAsync();
        var again = await MessageStore.RetryStuckAsync(write, clock.GetCurrentInstant());
        write.Tell(Outbox.Topic);
        await write.CommitAsync();
        return new(again);
    }

    private static async Task<Results<Ok<MessageInFull>, ProblemHttpResult>> OneAsync(
        long messageId,
        Database database,
        StudioStore studio,
        MailLinks links,
        MailFolder folder
    )
    {
        await using var read = await database.ReadAsync();
        if (await MessageStore.FindAsync(read, messageId) is not { } row)
            return NoSuchMessage.ToProblem();
        var said = MessageText.Of(
            row.Kind,
            row.Facts,
            MessageFrames.Of(row, (await studio.AboutAsync()).Name, links)
        );
        await using var file = folder.Open(row.MessageId);
        return TypedResults.Ok(
            new MessageInFull(
                LoggedMessage.Of(row),
                said.Subject,
                said.Text,
                said.Html,
                file is not null
            )
        );
    }

    private static async Task<Results<FileStreamHttpResult, ProblemHttpResult>> FileAsync(
        long messageId,
        Database database,
        MailFolder folder
    )
    {
        await using var read = await database.ReadAsync();
        if (await MessageStore.FindAsync(read, messageId) is not { } row)
            return NoSuchMessage.ToProblem();
        return folder.Open(row.MessageId) is { } file
            ? TypedResults.Stream(file, "message/rfc822", MailFolder.NameOf(row.MessageId))
            : NoFile.ToProblem();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> RetryAsync(
        long messageId,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await MessageStore.FindAsync(write, messageId) is null)
            return NoSuchMessage.ToProblem();
        if (!await MessageStore.RetryAsync(write, messageId, clock.GetCurrentInstant()))
            return HasEnded.ToProblem();
        write.Tell(Outbox.Topic);
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static Refusal Unknown(string field, string value) =>
        new(RefusalKind.Invalid, $"unknown-{field}", $"There is no {field} '{value}'.", field);
}
