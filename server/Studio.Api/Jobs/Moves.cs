using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Messages;
using Studio.Api.Passes;
using Studio.Api.Rosters;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Passes;

namespace Studio.Api.Jobs;

/// <summary>Accepts and declines suggested moves.</summary>
public sealed class Moves(
    RuleBook book,
    Bookings bookings,
    BookingNews news,
    FlagSweep flags,
    IClock clock
)
{
    /// <summary>No such move for this reader.</summary>
    public static readonly Refusal NoSuchMove = new(
        RefusalKind.NotFound,
        "no-such-move",
        "There is no such suggestion any more. Please look at the list again."
    );

    /// <summary>Moves all her bookings of a suggestion, or none; how many were moved.</summary>
    public async Task<Answer<int>> AcceptAsync(Write write, Reader reader, long id)
    {
        if ((await MoveStore.OpenAsync(write, id: id)).SingleOrDefault() is not { } move)
            return NoSuchMove;
        if (await ClientStore.AudienceAsync(write, reader, move.ClientId) is not { } audience)
            return NoSuchMove;

        var now = clock.GetCurrentInstant();
        var steps = (await MoveStore.StepsAsync(write, [id]))
            .Where(s => s.ToSessionId is not null)
            .ToList();
        var left = new List<SessionRow>();
        // Which pass paid for the seat that is given up: it pays for the new one.
        var paidBy = new Dictionary<long, long>();
        // All seats are given up first: one of hers may lie across the time of another one's new place.
        foreach (var step in steps)
        {
            var from = (await SessionStore.FindAsync(write, step.FromSessionId))!;
            if (from.StartsAt <= now)
                return Outdated("one of the sessions to move from has begun");
            if (
                !await BookingStore.EndAsync(
                    write,
                    step.BookingId,
                    BookingStatus.Moved,
                    now,
                    reader.AccountId
                )
            )
                return Outdated("one of the bookings has been cancelled");
            if (
                await PassLedger.GiveBackAsync(
                    write,
                    step.BookingId,
                    CameBack.Studio,
                    now,
                    reader.AccountId
                ) is
                { } credit
            )
                paidBy[step.BookingId] = credit.PassId;
            left.Add(from);
        }

        var fits = await Fits.LoadAsync(write, book, [move.ClientId]);
        var taken = new List<SessionRow>();
        foreach (var step in steps)
        {
            var session = (await SessionStore.FindAsync(write, step.ToSessionId!.Value))!;
            var refusal = await bookings.WhyNotAsync(write, session, move.ClientId, audience, fits);
            if (refusal is not null)
                return Outdated(
                    $"{session.ClassName} can no longer be booked for her: {refusal.Message.TrimEnd('.')}"
                );
            if (
                await BookingStore.TakeSeatAsync(
                    write,
                    session.Id,
                    move.ClientId,
                    now,
                    reader.AccountId
                )
                is not { } seat
            )
                return Outdated($"{session.ClassName} is full by now");
            await PassLedger.SpendAsync(
                write,
                await Purse.LoadAsync(write, move.ClientId, fits.Policies),
                seat,
                session,
                now,
                reader.AccountId,
                paidBy.TryGetValue(step.BookingId, out var pass) ? pass : null
            );
            taken.Add(session);
            write.Tell("session", session.Id);
        }

        await MoveStore.CloseAsync(write, id, "accepted", now, reader.AccountId);
        foreach (var session in left.DistinctBy(s => s.Id))
        {
            await bookings.FillAsync(write, session);
            write.Tell("session", session.Id);
        }

        await bookings.FillWaitedForAsync(write, move.ClientId);
        await news.MovedAsync(write, id, move.ClientId, taken, reader);
        await flags.RefreshAsync(write, [move.ClientId]);
        write.Tell("moves", id);
        write.Tell("client", move.ClientId);
        return steps.Count;
    }

    /// <summary>Declines a suggestion; the next night does not make it again.</summary>
    public async Task<Refusal?> DeclineAsync(Write write, Reader reader, long id, string? reason)
    {
        if (
            (await MoveStore.OpenAsync(write, id: id)).SingleOrDefault() is not { } move
            || await ClientStore.AudienceAsync(write, reader, move.ClientId) is null
        )
            return NoSuchMove;
        await MoveStore.CloseAsync(
            write,
            id,
            "declined",
            clock.GetCurrentInstant(),
            reader.AccountId,
            reason
        );
        // What was kept for her is free for whoever waits.
        foreach (
            var session in (await MoveStore.StepsAsync(write, [id]))
                .Select(s => s.ToSessionId)
                .OfType<long>()
        )
            await bookings.FillAsync(write, (await SessionStore.FindAsync(write, session))!);
        write.Tell("moves", id);
        return null;
    }

    private static Refusal Outdated(string why) =>
        new(
            RefusalKind.Conflict,
            "move-outdated",
            $"Nothing was moved, because {why}. Run the suggestions again, or book by hand."
        );
}
