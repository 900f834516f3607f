using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Messages;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Messages;
using Studio.Core.Movements;

namespace Studio.Api.Jobs;

/// <summary>Job 2: suggests where the bookings of clients who cross a stage may go.</summary>
public sealed class MovesSweep(
    RuleBook book,
    StudioStore studio,
    Bookings seats,
    Outbox outbox,
    IClock clock
)
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
            .Select(s => new OpenSeats
            {
                SessionId = s.Id,
                ClassId = s.ClassId,
                On = s.OnDate,
                StartsLocal = s.StartsLocal,
                StartsAt = s.StartsAt,
                EndsAt = s.EndsAt,
                LocationId = s.LocationId,
                InstructorId = s.InstructorId,
                SeatsLeft = s.SeatsLeft,
            })
            .ToDictionary(s => s.SessionId);
        var before = (
            await MoveStore.StepsAsync(
                write,
                [.. (await MoveStore.OpenAsync(write)).Select(m => m.Id)]
            )
        ).ToDictionary(s => s.BookingId, s => s.ToSessionId);

        var asked = new Dictionary<(long, long, LocalDate, ClassPlan?), Fit>();
        var steps = MoveAssignment.Solve(
            outgrown.Select(o => new MoveQuestion(
                o,
                [
                    .. open
                        .Values.Where(s => MoveRules.IsNear(o, s) && IsFree(o, s))
                        .Select(s => (s.SessionId, Fit: FitFor(o.ClientId, s)))
                        .Where(s => s.Fit is { Verdict: < Suits.NeedsClearance })
                        .Select(s => new MoveOption(
                            s.SessionId,
                            MoveRules.Cost(o, open[s.SessionId], AsTaught(s.Fit!))
                        )),
                ],
                before.GetValueOrDefault(o.BookingId)
            )),
            open
        );
        var touched = await SettleAsync(write, steps, fits, now);
        // Seats whose time of being kept is over, or that no suggestion names any more, go to those who wait.
        foreach (
            var session in bookings
                .SelectMany(hers => hers)
                .Where(b => b.Status == BookingStatus.Waiting)
                .Select(b => sessions[b.SessionId])
                .Where(s => s.SeatsLeft > 0)
                .DistinctBy(s => s.Id)
        )
            await seats.FillAsync(write, session);
        return touched;

        Fit? FitFor(long client, OpenSeats session)
        {
            if (refused[client].Contains(session.SessionId))
                return null;
            var row = sessions[session.SessionId];
            var question = (client, session.ClassId, session.On, fits.PlanOf(row));
            if (!asked.TryGetValue(question, out var fit))
                asked[question] = fit = fits.Of(client, row);
            return fit;
        }

        static double AsTaught(Fit fit) =>
            fit.Plan is { Minutes: > 0 } plan ? plan.ShareOf(MovementVerdict.AsTaught) : 1;

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
                ? new OutgrownBooking
                {
                    BookingId = booking.Id,
                    ClientId = booking.ClientId,
                    SessionId = session.Id,
                    On = session.OnDate,
                    StartsLocal = session.StartsLocal,
                    StartsAt = session.StartsAt,
                    EndsAt = session.EndsAt,
                    LocationId = session.LocationId,
                    InstructorId = session.InstructorId,
                    CrossesOn = crosses,
                }
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
            var made = await MoveStore.SuggestAsync(
                write,
                hers.Key,
                stage.Code,
                first.CrossesOn,
                wanted,
                now
            );
            // Which classes, and why, stands on her page only.
            await outbox.PutAsync(
                write,
                new()
                {
                    Kind = MessageKind.MoveSuggested,
                    About = $"move:{made}",
                    ClientId = hers.Key,
                    Facts = new Dictionary<string, string>(),
                }
            );
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
