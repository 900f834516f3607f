using System.Text.Json;
using NodaTime;
using Studio.Api.Data;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>Something to be told to one person.</summary>
public sealed record OutboxMessage
{
    /// <summary>What it is about.</summary>
    public required MessageKind Kind { get; init; }

    /// <summary>What makes it this message and no other: told once, however often it is put.</summary>
    public required string About { get; init; }

    /// <summary>To this client; exactly one of the three is set.</summary>
    public long? ClientId { get; init; }

    /// <summary>To this instructor.</summary>
    public long? InstructorId { get; init; }

    /// <summary>To whoever holds this account.</summary>
    public long? AccountId { get; init; }

    /// <summary>The session it speaks of.</summary>
    public long? SessionId { get; init; }

    /// <summary>What the template names: class, place, day and hour as they stand. Never anything of anybody's health.</summary>
    public required IReadOnlyDictionary<string, string> Facts { get; init; }

    /// <summary>Not before this moment; null: as soon as may be.</summary>
    public Instant? NotBefore { get; init; }
}

/// <summary>Writes what is to be told into the transaction of what it tells; sending is somebody else's work.</summary>
public sealed class Outbox(IClock clock)
{
    /// <summary>What open pages, and the bell for sending, hear when there is something new to send.</summary>
    public const string Topic = "messages";

    /// <summary>
    /// Puts a message, once. Nothing is put for a client whose pregnancy ended: after a loss every message stops.
    /// </summary>
    /// <returns>Whether it was new.</returns>
    public async Task<bool> PutAsync(Write write, OutboxMessage message)
    {
        var now = clock.GetCurrentInstant();
        var put = await write.ExecuteAsync(
            """
            insert into messages (kind, about, client_id, instructor_id, account_id, session_id, facts, made_at,
                                  not_before, message_id)
            select @kind, @About, @ClientId, @InstructorId, @AccountId, @SessionId, @facts, @now, @notBefore, @messageId
             where not exists (select 1 from pregnancies p
                                where p.client_id = @ClientId and p.is_current = 1 and p.ended_on is not null)
               and not exists (select 1 from clients c where c.id = @ClientId and c.erased_at is not null)
            on conflict (about) do nothing
            """,
            new
            {
                kind = message.Kind.OnTheWire(),
                message.About,
                message.ClientId,
                message.InstructorId,
                message.AccountId,
                message.SessionId,
                facts = JsonSerializer.Serialize(message.Facts),
                now,
                notBefore = message.NotBefore ?? now,
                messageId = $"<{Guid.NewGuid():N}@studio.invalid>",
            }
        );
        if (put == 1)
            write.Tell(Topic);
        return put == 1;
    }
}
