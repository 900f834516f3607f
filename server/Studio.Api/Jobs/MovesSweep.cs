using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Movements;

namespace Studio.Api.Jobs;

/// <summary>Job 2: suggests where the bookings of clients who cross a stage may go.</summary>
public sealed class MovesSweep(RuleBook book, StudioStore studio, IClock clock)
{
    /// <summary>Makes the open moves those that should be suggested now; the number opened or lapsed.</summary>
    public async Task<int> AllAsync(Write write)
    {
        var now = clock.GetCurrentInstant();
        var fits = await Fits.LoadAsync(write, book, null);
        var sessions = (await SessionStore.ListAsync(write, new SessionsWanted()))
            .Where(s => s.StartsAt > now && s.Status == SessionStatus.Open)
            .ToDictionary(s => s.Id);
        var bookings = (await BookingStore.InAsync(write, [.. sessions.Keys])).ToLookup(b =>
            b.ClientId
        );
        var declined = (await MoveStore.DeclinedAsync(write))
            .Select(d => (d.BookingId, d.ToSessionId!.Value))
            .ToHashSet();

        var outgrown = bookings
            .SelectMany(hers => hers)
            .Where(b => b.Status == BookingStatus.Booked)
            .Select(Outgrown)
            .OfType<OutgrownBooking>()
            .ToList();
        var leaving = outgrown.Select(o => o.BookingId).ToHashSet();
        var refused = declined.ToLookup(
            d => outgrown.Find(o => o.BookingId == d.BookingId)?.ClientId,
            d => d.Value
        );
        var open = sessions
            .Values.Where(s =>
                s.SeatsLeft > 0
                && s.OnDate <= studio.Today(s.Zone).PlusDays(fits.Policies.BookingAheadDays)
            )
            .Select(s => new OpenSeats(
                s.Id,
                s.ClassId,
                s.OnDate,
                s.StartsAt,
                s.EndsAt,
                s.LocationId,
                s.SeatsLeft
            ))
            .ToList();

        var asked = new Dictionary<(long, long, LocalDate, ClassPlan?), bool>();
        IReadOnlyList<MoveStep> steps;
        // She keeps what nothing was found for, so nothing else may be suggested across it: asked again until all agree.
        do steps = MoveRules.Suggest(outgrown, open, Suits, IsFree);
        while (leaving.RemoveWhere(Stays) > 0);
        return await SettleAsync(write, steps, fits, now);

        bool Stays(long booking) =>
            steps.Any(s => s.ToSessionId is null && s.From.BookingId == booking);

        bool Suits(long client, OpenSeats session)
        {
            if (refused[client].Contains(session.SessionId))
                return false;
            var row = sessions[session.SessionId];
            var question = (client, session.ClassId, session.On, fits.PlanOf(row));
            if (!asked.TryGetValue(question, out var suits))
                asked[question] = suits =
                    fits.Of(client, row).Verdict < Core.Booking.Suits.NeedsClearance;
            return suits;
        }

        OutgrownBooking? Outgrown(BookingRow booking)
        {
            var session = sessions[booking.SessionId];
            var today = studio.Today(session.Zone);
            var fit = fits.Of(booking.ClientId, session);
            if (
                fit.Reasons.All(r => r.Code != ReasonCodes.Stage)
                || fit.Situation.Stage is not { } stage
            )
                return null;
            var crosses = book
                .Stages.Bands(fits.Of(booking.ClientId).Pregnancy!)
                .First(b => b.Stage.Code == stage.Code)
                .From;
            return crosses <= today.PlusDays(fits.Policies.LookAheadDays)
                ? new OutgrownBooking(
                    booking.Id,
                    booking.ClientId,
                    session.Id,
                    session.OnDate,
                    session.StartsAt,
                    session.LocationId,
                    crosses
                )
                : null;
        }

        bool IsFree(OutgrownBooking booking, OpenSeats wanted) =>
            bookings[booking.ClientId]
                .All(b =>
                    b.SessionId != wanted.SessionId
                    && (
                        b.Id == booking.BookingId
                        || leaving.Contains(b.Id)
                        || b.Status == BookingStatus.Waiting
                        || sessions[b.SessionId].StartsAt >= wanted.EndsAt
                        || sessions[b.SessionId].EndsAt <= wanted.StartsAt
                    )
                );
    }

    private async Task<int> SettleAsync(
        Write write,
        IReadOnlyList<MoveStep> steps,
        Fits fits,
        Instant now
    )
    {
        var openMoves = (await MoveStore.OpenAsync(write)).ToDictionary(m => m.ClientId);
        var openSteps = (
            await MoveStore.StepsAsync(write, [.. openMoves.Values.Select(m => m.Id)])
        ).ToLookup(s => s.MoveId);
        var touched = 0;
        foreach (var hers in steps.GroupBy(s => s.From.ClientId))
        {
            var wanted = hers.Select(s => (s.From.BookingId, s.ToSessionId)).ToList();
            // With nothing to offer there is nothing to accept: the flag on the booking says it instead.
            if (wanted.TrueForAll(w => w.ToSessionId is null))
                continue;
            var first = hers.First().From;
            if (openMoves.Remove(hers.Key, out var move))
            {
                if (
                    move.CrossesOn == first.CrossesOn
                    && openSteps[move.Id]
                        .Select(s => (s.BookingId, s.ToSessionId))
                        .ToHashSet()
                        .SetEquals(wanted)
                )
                    continue;
                await MoveStore.CloseAsync(write, move.Id, "lapsed", now, null);
                touched++;
            }

            var stage = book.Stages.On(fits.Of(hers.Key).Pregnancy, first.CrossesOn).Stage!;
            await MoveStore.SuggestAsync(write, hers.Key, stage.Code, first.CrossesOn, wanted, now);
            touched++;
        }

        foreach (var gone in openMoves.Values)
        {
            await MoveStore.CloseAsync(write, gone.Id, "lapsed", now, null);
            touched++;
        }

        if (touched > 0)
            write.Tell("moves");
        return touched;
    }
}
