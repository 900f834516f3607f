using NodaTime;
using Studio.Api.Data;
using Studio.Api.Studios;
using Studio.Core.Catalogue;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>Lets one sweep go at a time; who comes meanwhile leaves word that there is more to do.</summary>
public sealed class MailGate : IDisposable
{
    private readonly SemaphoreSlim _gate = new(1, 1);
    private int _wanted;

    /// <summary>Does the work, and again as long as somebody asked for it meanwhile.</summary>
    public async Task PassAsync(Func<Task> work)
    {
        Volatile.Write(ref _wanted, 1);
        while (Volatile.Read(ref _wanted) == 1 && await _gate.WaitAsync(0))
        {
            try
            {
                while (Interlocked.Exchange(ref _wanted, 0) == 1)
                    await work();
            }
            finally
            {
                _gate.Release();
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _gate.Dispose();
}

/// <summary>
/// Sends what is due. A message is claimed, handed to the mail server, and what came of it recorded: three steps, and the
/// database's one writer is held in none but the first and the last. Stopped between them, the message is found claimed at
/// the next bell and sent once more under the same Message-ID, and never a third time by itself.
/// </summary>
public sealed partial class MailSweep(
    Database database,
    RuleBook book,
    IMailTransport transport,
    MailGate gate,
    MailLinks links,
    MailSettings settings,
    StudioStore studio,
    IClock clock,
    ILogger<MailSweep> log
)
{
    private const int AtOnce = 100;
    private const int MostBreaks = 3;

    private const string NotKnown =
        "The program stopped, or the connection broke, before the mail server had answered.";

    /// <summary>Sends until nothing more is due.</summary>
    public Task RunDueAsync() => gate.PassAsync(OnceAsync);

    private async Task OnceAsync()
    {
        await TakeUpAgainAsync();
        var studioName = (await studio.AboutAsync()).Name;
        var breaks = 0;
        while (true)
        {
            List<long> due;
            await using (var read = await database.ReadAsync())
                due = await MessageStore.DueAsync(read, clock.GetCurrentInstant(), AtOnce);
            if (due.Count == 0)
                return;
            foreach (var id in due)
            {
                if (!await IsToBeSentAsync(id))
                    continue;
                if (await transport.OpenAsync() is { } closed)
                {
                    await NothingGoesAsync(closed);
                    return;
                }

                if (await ClaimAsync(id) is not { } row)
                    continue;
                var frame = MessageFrames.Of(row, studioName, links);
                var said = MessageText.Of(row.Kind, row.Facts, frame);
                var result = MailSettings.IsAddress(row.Address)
                    ? await transport.SendAsync(
                        MailLetter.Of(row, said, frame, settings.From, clock.GetCurrentInstant()),
                        row.MessageId
                    )
                    : new(MailOutcome.Never, "The e-mail address cannot be written to.");
                await RecordAsync(row, result);
                if (result.Outcome == MailOutcome.Closed)
                {
                    await NothingGoesAsync(result);
                    return;
                }

                // Somebody else's turn, unless it is the server that breaks every time.
                if (result.Outcome is MailOutcome.Unanswered or MailOutcome.Later)
                    breaks++;
                else
                    breaks = 0;
                if (breaks == MostBreaks)
                    return;
            }
        }
    }

    // What was claimed by a run that never came to its end: at most one is out without an answer.
    private async Task TakeUpAgainAsync()
    {
        List<long> left;
        await using (var read = await database.ReadAsync())
            left = await MessageStore.LeftClaimedAsync(read);
        foreach (var id in left)
        {
            await using var write = await database.BeginWriteAsync();
            if (await MessageStore.FindAsync(write, id) is not { } row)
                continue;
            var now = clock.GetCurrentInstant();
            await AfterNoAnswerAsync(write, row, NotKnown, now, again: now);
            await DoneAsync(write);
        }
    }

    // Settles what needs no server: what waits, is dropped or cannot be sent. True for what is to go out.
    private async Task<bool> IsToBeSentAsync(long id)
    {
        await using (var read = await database.ReadAsync())
        {
            if (await MessageStore.FindAsync(read, id) is not { Status: MessageStatus.Waiting } row)
                return false;
            if (await DecideAsync(read, row) is MailDecision.Send)
                return true;
        }

        await using var write = await database.BeginWriteAsync();
        return await SettleAsync(write, id) is not null;
    }

    private async Task<MessageRow?> ClaimAsync(long id)
    {
        await using var write = await database.BeginWriteAsync();
        if (
            await SettleAsync(write, id) is not { } row
            || !await MessageStore.ClaimAsync(write, id, clock.GetCurrentInstant())
        )
            return null;
        await DoneAsync(write);
        return row with { Attempts = row.Attempts + 1 };
    }

    private async Task<MessageRow?> SettleAsync(Write write, long id)
    {
        if (await MessageStore.FindAsync(write, id) is not { Status: MessageStatus.Waiting } row)
            return null;
        var now = clock.GetCurrentInstant();
        switch (await DecideAsync(write, row))
        {
            case MailDecision.Send:
                return row;
            case MailDecision.Wait wait:
                await MessageStore.HoldBackAsync(write, id, wait.Until, wait.Why);
                break;
            case MailDecision.Drop drop:
                await MessageStore.EndAsync(write, id, MessageStatus.Dropped, drop.Why, now);
                break;
            case MailDecision.Refuse refuse:
                await MessageStore.EndAsync(write, id, MessageStatus.Refused, refuse.Why, now);
                break;
        }

        await DoneAsync(write);
        return null;
    }

    private async Task<MailDecision> DecideAsync(Read read, MessageRow row)
    {
        var policies = await PolicyStore.InForceAsync(read, book);
        var now = clock.GetCurrentInstant();
        return MailRules.Decide(
            new()
            {
                Kind = row.Kind,
                Zone = DateTimeZoneProviders.Tzdb[row.Zone],
                Address = row.Address,
                MayBeWrittenTo = !row.Gone,
                Wanted = !row.Unwanted,
                StillTrue = IsStillTrue(row),
                AnswersHer = row.Facts.GetValueOrDefault("by") == "her",
                StartsAt = row.StartsAt,
                SentLately = await MessageStore.SentLatelyAsync(read, row, now),
            },
            new(policies.MailQuietFrom, policies.MailQuietUntil, policies.MailMostADay),
            now
        );
    }

    private static bool IsStillTrue(MessageRow row) =>
        row.Kind switch
        {
            MessageKind.MoveSuggested => row.HasMove,
            MessageKind.CoverAsked => row.SessionId is null || row.IsHeld,
            _ when row.Kind.NeedsHerPlace() && row is { SessionId: not null, ClientId: not null } =>
                row is { HasPlace: true, IsHeld: true },
            _ => true,
        };

    private async Task RecordAsync(MessageRow row, MailResult result)
    {
        var now = clock.GetCurrentInstant();
        await using var write = await database.BeginWriteAsync();
        switch (result.Outcome)
        {
            case MailOutcome.Sent:
                await MessageStore.EndAsync(write, row.Id, MessageStatus.Sent, result.Answer, now);
                break;
            case MailOutcome.Never:
                await MessageStore.EndAsync(
                    write,
                    row.Id,
                    MessageStatus.Refused,
                    result.Answer,
                    now
                );
                break;
            case MailOutcome.Unanswered:
                await AfterNoAnswerAsync(
                    write,
                    row,
                    result.Answer,
                    now,
                    now + MailRules.PauseAfter(row.Attempts)
                );
                break;
            case MailOutcome.Later or MailOutcome.Closed:
                await AfterFailureAsync(write, row, result.Answer, now);
                break;
        }

        await DoneAsync(write);
        if (result.Outcome is not MailOutcome.Sent)
            NotSent(row.Id, result.Outcome);
    }

    private static Task AfterNoAnswerAsync(
        Write write,
        MessageRow row,
        string answer,
        Instant now,
        Instant again
    )
    {
        var unanswered = row.Unanswered + 1;
        return unanswered >= MailRules.MostUnanswered
            ? MessageStore.EndAsync(
                write,
                row.Id,
                MessageStatus.Refused,
                $"{answer} This happened twice, so it may have arrived; it is not sent again by itself.",
                now
            )
            : MessageStore.AgainAsync(write, row.Id, again, unanswered, answer);
    }

    private static Task AfterFailureAsync(
        Write write,
        MessageRow row,
        string answer,
        Instant now
    ) =>
        now - row.MadeAt >= MailRules.GivesUpAfter
            ? MessageStore.EndAsync(
                write,
                row.Id,
                MessageStatus.Refused,
                $"Given up after five days. {answer}",
                now
            )
            : MessageStore.AgainAsync(
                write,
                row.Id,
                now + MailRules.PauseAfter(row.Attempts),
                row.Unanswered,
                answer
            );

    // The server is away: everything that is due waits, each for as long as its own number of tries says.
    private async Task NothingGoesAsync(MailResult closed)
    {
        var now = clock.GetCurrentInstant();
        ServerAway(closed.Answer);
        await using var write = await database.BeginWriteAsync();
        foreach (var id in await MessageStore.DueAsync(write, now, int.MaxValue))
        {
            var row = (await MessageStore.FindAsync(write, id))!;
            await MessageStore.NotReachedAsync(write, id, now);
            await AfterFailureAsync(
                write,
                row with
                {
                    Attempts = row.Attempts + 1,
                },
                closed.Answer,
                now
            );
        }

        await DoneAsync(write);
    }

    private static Task DoneAsync(Write write)
    {
        write.Tell("mail");
        return write.CommitAsync();
    }

    [LoggerMessage(LogLevel.Warning, "Message {Id} did not go out: {Outcome}.")]
    private partial void NotSent(long id, MailOutcome outcome);

    [LoggerMessage(LogLevel.Warning, "No message goes out for now: {Answer}")]
    private partial void ServerAway(string answer);
}
