using NodaTime;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Jobs;
using Studio.Api.Messages;
using Studio.Api.Passes;
using Studio.Api.Rosters;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Messages;
using Studio.Core.Passes;

namespace Studio.Api.Booking;

/// <summary>Books, cancels and fills the seats that become free; everything inside the caller's transaction.</summary>
public sealed class Bookings(
    RuleBook book,
    IClock clock,
    StudioStore studio,
    FlagSweep flags,
    BookingNews news
)
{
    /// <summary>Books a seat, or a place on the waitlist where only the seat is missing.</summary>
    public async Task<Answer<BookingAnswer>> BookAsync(
        Write write,
        Reader reader,
        long sessionId,
        long clientId
    )
    {
        if (await ClientStore.AudienceAsync(write, reader, clientId) is not { } audience)
            return BookingRefusals.NoSuchClient;
        if (await SessionStore.FindAsync(write, sessionId) is not { } session)
            return BookingRefusals.NoSuchSession;

        var now = clock.GetCurrentInstant();
        var fits = await Fits.LoadAsync(write, book, [clientId]);
        var fit = fits.Of(clientId, session);
        if (await WhyNotAsync(write, session, clientId, audience, fits) is { } refusal)
            return refusal;
        await PassLedger.ExcuseHeldAsync(write, clientId, now, null);
        var purse = await Purse.LoadAsync(write, clientId, fits.Policies);
        if (purse.WhyNot(session, audience == Audience.Herself) is { } unpaid)
            return unpaid;

        var taken = await BookingStore.TakeAsync(
            write,
            sessionId,
            clientId,
            now,
            reader.AccountId,
            HeldSince(fits, now)
        );
        var paid =
            taken.Status == BookingStatus.Booked
                ? await PassLedger.SpendAsync(
                    write,
                    purse,
                    taken.Id,
                    session,
                    now,
                    reader.AccountId
                )
                : null;
        await ChangedAsync(write, clientId, sessionId);
        int? place =
            taken.Status == BookingStatus.Waiting
                ? await BookingStore.PlaceAsync(write, taken)
                : null;
        await news.TellAsync(
            write,
            place is null ? MessageKind.BookingMade : MessageKind.WaitlistPlace,
            taken.Id,
            clientId,
            session,
            reader,
            place
        );
        return new BookingAnswer
        {
            BookingId = taken.Id,
            Status = taken.Status,
            Place = place,
            Fit = FitMessage.For(fit, audience),
            PaidWith = paid?.Name,
            CreditsLeft = paid is { Pass.IsUnlimited: false } ? paid.Pass.Balance - 1 : null,
        };
    }

    /// <summary>Why she may not have a seat in a session as things stand in this transaction, or null when she may.</summary>
    public async Task<Refusal?> WhyNotAsync(
        Read read,
        SessionRow session,
        long clientId,
        Audience audience,
        Fits fits
    ) =>
        WhyNot(
            session,
            fits.Of(clientId, session),
            audience,
            await BookingStore.OfAsync(read, clientId),
            await OverlapsAsync(read, clientId, session),
            fits,
            clock.GetCurrentInstant()
        );

    /// <summary>
    /// Cancels a seat or a place; a seat that becomes free goes to the waitlist, and its credit back to the pass unless it
    /// is late.
    /// </summary>
    /// <param name="write">The transaction.</param>
    /// <param name="reader">Who cancels.</param>
    /// <param name="bookingId">The booking.</param>
    /// <param name="medical">For a medical reason, which is asked for nowhere and kept nowhere: the credit comes back.</param>
    public async Task<Answer<CancellationAnswer>> CancelAsync(
        Write write,
        Reader reader,
        long bookingId,
        bool medical = false
    )
    {
        if (
            await BookingStore.FindAsync(write, bookingId) is not { } booking
            || await ClientStore.AudienceAsync(write, reader, booking.ClientId) is null
        )
            return BookingRefusals.NoSuchBooking;
        var session = (await SessionStore.FindAsync(write, booking.SessionId))!;
        var now = clock.GetCurrentInstant();
        if (session.StartsAt <= now)
            return BookingRefusals.SessionHasBegun;
        if (
            !await BookingStore.EndAsync(
                write,
                bookingId,
                BookingStatus.Cancelled,
                now,
                reader.AccountId
            )
        )
            return BookingRefusals.NoSuchBooking;

        await MoveStore.LapseAsync(write, bookingId, now);
        var credit = await PassLedger.GivenUpAsync(
            write,
            bookingId,
            medical ? GivenUp.Medical
                : await IsHeldAsync(write, booking.ClientId, session) ? GivenUp.Held
                : GivenUp.Cancelled,
            session,
            await PolicyStore.InForceAsync(write, book),
            now,
            reader.AccountId
        );
        var promoted = 0;
        if (booking.Status == BookingStatus.Booked)
        {
            promoted = await FillAsync(write, session);
            await FillWaitedForAsync(write, booking.ClientId);
        }

        await ChangedAsync(write, booking.ClientId, session.Id);
        await news.TellAsync(
            write,
            MessageKind.BookingCancelled,
            bookingId,
            booking.ClientId,
            session,
            reader
        );
        return new CancellationAnswer(bookingId, session.Id, promoted, credit);
    }

    /// <summary>
    /// Lets go, without charge, of everything a client has booked from now on; the seats go to the waitlists.
    /// </summary>
    /// <param name="write">The transaction.</param>
    /// <param name="clientId">Whose.</param>
    /// <param name="by">Who tells of it.</param>
    /// <param name="since">The day of the birth or the loss: what she missed since costs her nothing either.</param>
    /// <returns>How many bookings were let go.</returns>
    public async Task<int> ReleaseAsync(
        Write write,
        long clientId,
        long? by,
        LocalDate? since = null
    )
    {
        var now = clock.GetCurrentInstant();
        var released = 0;
        foreach (var booking in await BookingStore.OfAsync(write, clientId))
        {
            var session = (await SessionStore.FindAsync(write, booking.SessionId))!;
            if (session.StartsAt <= now)
                continue;
            await BookingStore.EndAsync(write, booking.Id, BookingStatus.Released, now, by);
            await MoveStore.LapseAsync(write, booking.Id, now);
            await PassLedger.GiveBackAsync(write, booking.Id, CameBack.Excused, now, by);
            released++;
            if (booking.Status == BookingStatus.Booked)
                await FillAsync(write, session);
            write.Tell("session", session.Id);
        }

        if (since is { } day)
            await PassLedger.ExcuseSinceAsync(write, clientId, day, now, by);
        return released;
    }

    /// <summary>
    /// Books again what was let go of since a moment and lies ahead, by the rules for any booking: a seat where one is
    /// free, else the waitlist.
    /// </summary>
    public async Task<BroughtBack> BringBackAsync(
        Write write,
        Reader reader,
        long clientId,
        Instant since
    )
    {
        var sessions = await BookingStore.ReleasedAsync(
            write,
            clientId,
            since,
            clock.GetCurrentInstant()
        );
        var (booked, waiting) = (0, 0);
        foreach (var session in sessions)
        {
            if (!(await BookAsync(write, reader, session, clientId)).TryGet(out var answer, out _))
                continue;
            if (answer.Status == BookingStatus.Booked)
                booked++;
            else
                waiting++;
        }

        return new BroughtBack(booked, waiting, sessions.Count - booked - waiting);
    }

    /// <summary>
    /// Gives free seats to those who wait, first come first served among those whom the session still suits and who are
    /// free then; up to the cut-off.
    /// </summary>
    /// <returns>How many got a seat.</returns>
    public async Task<int> FillAsync(Write write, SessionRow session)
    {
        var now = clock.GetCurrentInstant();
        var waiting = (await BookingStore.InAsync(write, [session.Id]))
            .Where(b => b.Status == BookingStatus.Waiting)
            .ToList();
        if (waiting.Count == 0 || session.Status != SessionStatus.Open)
            return 0;
        var fits = await Fits.LoadAsync(write, book, [.. waiting.Select(w => w.ClientId)]);
        if (!BookingRules.PromotesAt(session.StartsAt, fits.Policies.WaitlistCutOffMinutes, now))
            return 0;

        var promoted = 0;
        foreach (var next in waiting)
        {
            if (fits.Of(next.ClientId, session).Verdict >= Suits.NeedsClearance)
                continue;
            if (await OverlapsAsync(write, next.ClientId, session))
                continue;
            var purse = await Purse.LoadAsync(write, next.ClientId, fits.Policies);
            if (purse.WhyNot(session, herself: true) is not null)
                continue;
            // A seat kept for somebody's move is not for whoever waits, unless she waits herself.
            if (!await BookingStore.PromoteAsync(write, next.Id, now, HeldSince(fits, now)))
                continue;
            promoted++;
            await PassLedger.SpendAsync(write, purse, next.Id, session, now, null);
            await ChangedAsync(write, next.ClientId, session.Id);
            await news.TellAsync(
                write,
                MessageKind.SeatFromWaitlist,
                next.Id,
                next.ClientId,
                session
            );
        }

        return promoted;
    }

    /// <summary>
    /// Looks again at the sessions a client waits for, after something that kept her from a free seat may be gone: a seat
    /// elsewhere at that time, a hold, a letter that was missing.
    /// </summary>
    public async Task FillWaitedForAsync(Write write, long clientId)
    {
        foreach (
            var booking in (await BookingStore.OfAsync(write, clientId)).Where(b =>
                b.Status == BookingStatus.Waiting
            )
        )
        {
            var session = (await SessionStore.FindAsync(write, booking.SessionId))!;
            if (session.SeatsLeft > 0)
                await FillAsync(write, session);
        }
    }

    /// <summary>Sessions for a client in a range of dates, each with its fit on its own date, best first.</summary>
    public async Task<List<Choice>> ChoicesAsync(
        Read read,
        ClientSeen client,
        LocalDate from,
        LocalDate to,
        SessionSummaries summaries
    )
    {
        var now = clock.GetCurrentInstant();
        var sessions = (
            await SessionStore.ListAsync(read, new SessionsWanted { From = from, To = to })
        )
            .Where(s => s.Status == SessionStatus.Open && s.StartsAt > now)
            .ToList();
        var her = await HersAsync(read, client);
        var summaryOf = (await summaries.OfAsync(read, sessions)).ToDictionary(s => s.Id);

        var choices = new List<(Choice Choice, Fit Fit)>();
        foreach (var session in sessions)
            choices.Add(await ChoiceAsync(read, her, session, summaryOf[session.Id]));

        // Best first: what can be had, then what suits best with the fewest changes, then the soonest day, at her own location
        // before another.
        return
        [
            .. choices
                .OrderBy(c =>
                    c.Fit.Verdict >= Suits.NeedsClearance ? c.Fit.Verdict : Suits.Suitable
                )
                .ThenBy(c => c.Choice.CanBook)
                .ThenBy(c => c.Fit.Verdict)
                .ThenBy(c => c.Fit.Reasons.Count(r => r.Verdict == Suits.WithModifications))
                .ThenBy(c => c.Choice.Session.On)
                .ThenBy(c => c.Choice.Session.LocationId == client.Row.HomeLocationId ? 0 : 1)
                .ThenBy(c => c.Choice.Session.StartsAt)
                .ThenBy(c => c.Choice.Session.Id)
                .Select(c => c.Choice),
        ];
    }

    /// <summary>One session for a client, with what changes for her in it.</summary>
    public async Task<ChoiceInFull> ChoiceAsync(
        Read read,
        ClientSeen client,
        SessionRow session,
        SessionSummaries summaries
    )
    {
        var her = await HersAsync(read, client);
        var summary = (await summaries.OfAsync(read, [session])).Single();
        var (choice, fit) = await ChoiceAsync(read, her, session, summary);
        return new ChoiceInFull
        {
            Choice = choice,
            Changes = client.Audience is Audience.Owner or Audience.Herself
                ? ChangeMessage.For(fit)
                : [],
        };
    }

    private async Task<Hers> HersAsync(Read read, ClientSeen client)
    {
        var id = client.Row.Id;
        var mine = await BookingStore.OfAsync(read, id);
        var seats = (await SessionStore.ListAsync(read, new SessionsWanted { ClientId = id }))
            .Where(s => mine.Any(b => b.SessionId == s.Id && b.Status == BookingStatus.Booked))
            .ToList();
        var fits = await Fits.LoadAsync(read, book, [id]);
        var held = await BookingStore.HeldAsync(
            read,
            id,
            HeldSince(fits, clock.GetCurrentInstant())
        );
        return new Hers(
            client,
            fits,
            mine,
            seats,
            held,
            await Purse.LoadAsync(read, id, fits.Policies)
        );
    }

    private async Task<(Choice Choice, Fit Fit)> ChoiceAsync(
        Read read,
        Hers her,
        SessionRow session,
        SessionSummary summary
    )
    {
        var audience = her.Client.Audience;
        var fit = her.Fits.Of(her.Client.Row.Id, session);
        var booking = her.Bookings.Find(b => b.SessionId == session.Id);
        var overlaps = her.Seats.Exists(s =>
            s.Id != session.Id && s.StartsAt < session.EndsAt && s.EndsAt > session.StartsAt
        );
        var refusal = WhyNot(
            session,
            fit,
            audience,
            her.Bookings,
            overlaps,
            her.Fits,
            clock.GetCurrentInstant()
        );
        if (refusal is null)
            refusal = her.Purse.WhyNot(session, audience == Audience.Herself);
        var choice = new Choice
        {
            Session = summary,
            Fit = FitMessage.For(fit, audience),
            BookingId = booking?.Id,
            BookingStatus = booking?.Status,
            Place = booking is { Status: BookingStatus.Waiting }
                ? await BookingStore.PlaceAsync(read, booking)
                : null,
            CanBook =
                refusal is not null ? CanBook.No
                : session.SeatsLeft > her.Held.GetValueOrDefault(session.Id) ? CanBook.Seat
                : CanBook.Waitlist,
            Refusal = refusal is null ? null : new RefusalMessage(refusal.Code, refusal.Message),
        };
        return (choice, fit);
    }

    private sealed record Hers(
        ClientSeen Client,
        Fits Fits,
        List<BookingRow> Bookings,
        List<SessionRow> Seats,
        Dictionary<long, int> Held,
        Purse Purse
    );

    private Refusal? WhyNot(
        SessionRow session,
        Fit fit,
        Audience audience,
        List<BookingRow> mine,
        bool overlaps,
        Fits fits,
        Instant now
    ) =>
        BookingRules.WhyNot(
            new BookableSession(
                session.Status == SessionStatus.Open,
                session.StartsAt,
                session.OnDate
            ),
            fit,
            audience,
            mine.Exists(b => b.SessionId == session.Id),
            overlaps,
            studio.Today(session.Zone),
            fits.Policies.BookingAheadDays,
            now
        );

    private static async Task<bool> IsHeldAsync(Read read, long clientId, SessionRow session) =>
        (await SituationStore.OfAsync(read, clientId)).Holds.Any(h => h.StandsOn(session.OnDate));

    private static Instant HeldSince(Fits fits, Instant now) =>
        now - Duration.FromHours(fits.Policies.MoveHoldHours);

    private static async Task<bool> OverlapsAsync(Read read, long clientId, SessionRow session) =>
        (
            await BookingStore.OverlappingAsync(
                read,
                clientId,
                session.StartsAt,
                session.EndsAt,
                session.Id
            )
        ).Count > 0;

    private async Task ChangedAsync(Write write, long clientId, long sessionId)
    {
        await flags.RefreshAsync(write, [clientId]);
        write.Tell("session", sessionId);
        write.Tell("client", clientId);
    }
}
