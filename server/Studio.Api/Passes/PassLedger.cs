using NodaTime;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core.Catalogue;
using Studio.Core.Passes;

namespace Studio.Api.Passes;

/// <summary>
/// What bookings do to passes, inside the transaction that changes the booking: a seat spends a credit, a seat given up
/// gives it back or leaves it spent. A place on a waitlist does nothing until it becomes a seat.
/// </summary>
public static class PassLedger
{
    /// <summary>A seat was taken: the pass that ends first pays, if one does.</summary>
    /// <param name="write">The transaction.</param>
    /// <param name="purse">What she has.</param>
    /// <param name="bookingId">Her seat.</param>
    /// <param name="session">Its session.</param>
    /// <param name="at">Now.</param>
    /// <param name="by">Who books; null for the program.</param>
    /// <param name="carried">
    /// The pass that paid for the seat she was moved from: it pays for the new one too, even where it would not by itself.
    /// </param>
    /// <returns>The pass that paid, or null.</returns>
    public static async Task<PassRow?> SpendAsync(
        Write write,
        Purse purse,
        long bookingId,
        SessionRow session,
        Instant at,
        long? by,
        long? carried = null
    )
    {
        var pays =
            purse.Passes.FirstOrDefault(p =>
                p.Id == carried && !p.Pass.IsClosed && (p.Pass.IsUnlimited || p.Pass.Balance > 0)
            ) ?? purse.ThatPays(session);
        if (pays is null)
            return null;
        await PassStore.AddAsync(
            write,
            new PassEntryRow
            {
                PassId = pays.Id,
                Kind = EntryKind.Spent,
                Credits = pays.Pass.IsUnlimited ? 0 : -1,
                BookingId = bookingId,
            },
            null,
            at,
            by
        );
        return pays;
    }

    /// <summary>Gives back what a booking took, if it took anything and has not given it back; the pass it went to.</summary>
    public static async Task<StandingCredit?> GiveBackAsync(
        Write write,
        long bookingId,
        CameBack why,
        Instant at,
        long? by
    )
    {
        if (await PassStore.StandingAsync(write, bookingId) is not { } standing)
            return null;
        await PassStore.AddAsync(
            write,
            new PassEntryRow
            {
                PassId = standing.PassId,
                Kind = EntryKind.Returned,
                Credits = -standing.Credits,
                BookingId = bookingId,
                Why = why,
            },
            null,
            at,
            by
        );
        return standing;
    }

    /// <summary>A seat was given up before its session: what becomes of its credit.</summary>
    public static async Task<CreditOutcome> GivenUpAsync(
        Write write,
        long bookingId,
        GivenUp why,
        SessionRow session,
        StudioPolicies policies,
        Instant at,
        long? by
    )
    {
        var outcome = PassRules.OnGivingUp(
            await PassStore.StandingAsync(write, bookingId) is not null,
            why,
            session.StartsAt,
            60 * policies.CancelFreeHours,
            at
        );
        if (outcome == CreditOutcome.Returned)
            await GiveBackAsync(
                write,
                bookingId,
                why switch
                {
                    GivenUp.Cancelled => CameBack.InTime,
                    GivenUp.ByTheStudio => CameBack.Studio,
                    GivenUp.Medical or GivenUp.Held or GivenUp.Birth or GivenUp.Loss =>
                        CameBack.Excused,
                },
                at,
                by
            );
        return outcome;
    }

    /// <summary>
    /// A birth or a loss was told of: what she missed or gave up late since that day costs her nothing.
    /// </summary>
    public static async Task ExcuseSinceAsync(
        Write write,
        long clientId,
        LocalDate since,
        Instant at,
        long? by
    )
    {
        foreach (var booking in await PassStore.UnusedSinceAsync(write, clientId, since, at))
            await GiveBackAsync(write, booking, CameBack.Excused, at, by);
    }

    /// <summary>What she missed or gave up late on days on which she was held costs her nothing.</summary>
    public static async Task ExcuseHeldAsync(Write write, long clientId, Instant at, long? by)
    {
        foreach (var booking in await PassStore.UnusedWhileHeldAsync(write, clientId, at))
            await GiveBackAsync(write, booking, CameBack.Excused, at, by);
    }
}
