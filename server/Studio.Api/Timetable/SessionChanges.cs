using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Jobs;
using Studio.Api.Passes;
using Studio.Api.Rosters;
using Studio.Core;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Passes;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>
/// The one way in which sessions are made, moved, given to somebody else, resized or called off, alone or many at once.
/// All or nothing inside the caller's transaction; whoever is concerned is told.
/// </summary>
public sealed class SessionChanges(
    RuleBook book,
    IClock clock,
    Bookings bookings,
    FlagSweep flags,
    SessionTelling telling
)
{
    // An ISO week and the days about it: hours of a week, rest and travel reach no further.
    private const int DaysAround = 8;

    /// <summary>What a change would bring about. Conflicts are named in the answer; a refusal is about the request itself.</summary>
    public async Task<Answer<ChangesPreview>> PreviewAsync(
        Read read,
        IReadOnlyList<SessionWanted> wanted
    )
    {
        if (!(await PlanAsync(read, wanted)).TryGet(out var plan, out var refusal))
            return refusal;
        var fits = await Fits.LoadAsync(
            read,
            book,
            [.. plan.Seats.Select(s => s.ClientId).Distinct()]
        );
        return new ChangesPreview(
            plan.Conflicts,
            plan.Steps.Count(s => s.Was is null),
            plan.Steps.Count(s => s is { Was: not null, Now: not null }),
            plan.Steps.Count(s => s.Now is null),
            [
                .. plan
                    .Steps.Where(s => s.Was is not null && plan.TellsClients(s))
                    .Select(s =>
                    {
                        var of = plan
                            .Seats.Where(b =>
                                b.SessionId == s.Was!.Id && !fits.HasEnded(b.ClientId)
                            )
                            .ToList();
                        var kept = of.Where(b =>
                                b.Status == BookingStatus.Booked && !plan.LetGo.ContainsKey(b.Id)
                            )
                            .ToList();
                        return new SessionConsequence(
                            s.Was!.Id,
                            plan.Words(s),
                            of.Count,
                            of.Count(b => plan.LetGo.ContainsKey(b.Id)),
                            s.Now is null
                                ? 0
                                : kept.Count(b =>
                                    fits.Of(b.ClientId, s.Dated).Verdict >= Suits.NeedsClearance
                                )
                        );
                    })
                    .Where(c => c.Told > 0),
            ]
        );
    }

    /// <summary>Makes it so. The caller commits; a refusal leaves nothing behind that is to be committed.</summary>
    public async Task<Answer<ChangesMade>> ApplyAsync(
        Write write,
        IReadOnlyList<SessionWanted> wanted,
        ChangeTerms terms
    )
    {
        if (!(await PlanAsync(write, wanted)).TryGet(out var plan, out var refusal))
            return refusal;
        if (plan.Conflicts.Any(c => c.IsHard))
            return TimetableRefusals.Conflict(plan.Conflicts);
        if (plan.Conflicts.Count > 0 && !terms.Anyway)
            return TimetableRefusals.Warning(plan.Conflicts);
        if (plan.Steps.Count == 0)
            return new ChangesMade([.. wanted.Select(w => w.Id)], 0, 0, 0, 0, 0);

        var now = clock.GetCurrentInstant();
        // Two that change places would meet on the way: all that move are set aside first.
        await SessionStore.SetAsideAsync(
            write,
            [
                .. plan
                    .Steps.Where(s => s.Was is { Status: SessionStatus.Open } && !s.OnlySeats)
                    .Select(s => s.Was!.Id),
            ]
        );
        foreach (var seat in plan.Seats.Where(s => plan.LetGo.ContainsKey(s.Id)))
        {
            await BookingStore.LetGoAsync(write, seat.Id, plan.LetGo[seat.Id], now, terms.By);
            await MoveStore.LapseAsync(write, seat.Id, now);
            await PassLedger.GiveBackAsync(write, seat.Id, CameBack.Studio, now, terms.By);
        }

        var ids = wanted.Select(w => w.Id).ToList();
        foreach (var step in plan.Steps)
            ids[step.Index] = await SessionStore.PutAsync(write, step);

        var told = await telling.TellAsync(write, plan, ids);
        await FollowAsync(write, plan, now);
        foreach (var step in plan.Steps)
            write.Tell("session", ids[step.Index]);
        return new ChangesMade(
            ids,
            plan.Steps.Count(s => s.Was is null),
            plan.Steps.Count(s => s is { Was: not null, Now: not null }),
            plan.Steps.Count(s => s is { Was: not null, Now: null }),
            told,
            plan.LetGo.Count
        );
    }

    // Suggestions that named a session as it was no longer hold; free seats go to those who wait; flags follow.
    private async Task FollowAsync(Write write, ChangePlan plan, Instant now)
    {
        await MoveStore.LapseForAsync(
            write,
            [.. plan.Steps.Where(s => s.IsElsewhere).Select(s => s.Was!.Id)],
            now
        );
        foreach (var step in plan.Steps.Where(s => s.IsElsewhere || s.Was?.Seats < s.Now?.Seats))
            await bookings.FillAsync(write, (await SessionStore.FindAsync(write, step.Was!.Id))!);
        var lost = plan
            .Seats.Where(s => plan.LetGo.ContainsKey(s.Id))
            .Select(s => s.ClientId)
            .Distinct()
            .ToList();
        foreach (var client in lost)
            await bookings.FillWaitedForAsync(write, client);
        // Who teaches it is nothing that a flag of hers speaks of.
        var elsewhere = plan.Steps.Where(s => s.IsElsewhere).Select(s => s.Was!.Id).ToHashSet();
        var concerned = plan
            .Seats.Where(s => elsewhere.Contains(s.SessionId))
            .Select(s => s.ClientId)
            .ToHashSet();
        if (concerned.Count > 0)
            await flags.RefreshAsync(write, concerned);
        var clients = plan.Seats.Select(s => s.ClientId).Distinct().ToList();
        await flags.SessionsAsync(write);
        foreach (var client in clients)
            write.Tell("client", client);
    }

    private async Task<Answer<ChangePlan>> PlanAsync(Read read, IReadOnlyList<SessionWanted> wanted)
    {
        var ids = wanted.Select(w => w.Id).OfType<long>().ToList();
        if (ids.Distinct().Count() != ids.Count)
            return TimetableRefusals.Twice;
        var places = await Places.LoadAsync(read);
        var rows = (await SessionStore.OfAsync(read, ids)).ToDictionary(r => r.Id);
        var facts = await TimetableStore.FactsAsync(read, book);
        var now = clock.GetCurrentInstant();

        var steps = new List<ChangeStep>();
        for (var index = 0; index < wanted.Count; index++)
        {
            var want = wanted[index];
            if (WhyNot(want, places, facts) is { } wrong)
                return wrong;
            var was = want.Id is { } id ? rows.GetValueOrDefault(id) : null;
            if (want.Id is not null && was is null)
                return TimetableRefusals.NoSuchSession;
            if (was is null && !want.IsHeld)
                continue;
            var placed = places.Place(want, want.Id ?? -1 - index, was?.SeatsTaken ?? 0);
            if (was is not null && IsSame(was, want, placed))
                continue;
            if (was is not null && was.StartsAt <= now)
                return TimetableRefusals.HasBegun(SessionWords.Named(Name(was)));
            if (was is not null && was.ClassId != want.ClassId)
                return TimetableRefusals.ClassStays;
            if (want.IsHeld && placed.StartsAt <= now)
                return TimetableRefusals.InThePast(SessionWords.Named(Name(placed, facts)));
            steps.Add(
                new ChangeStep(
                    index,
                    want,
                    was,
                    want.IsHeld ? placed : null,
                    was is null ? null : Name(was),
                    Name(placed, facts)
                )
            );
        }

        return await WithPeopleAsync(read, steps, facts);
    }

    private static async Task<ChangePlan> WithPeopleAsync(
        Read read,
        List<ChangeStep> steps,
        TimetableFacts facts
    )
    {
        if (steps.Count == 0)
            return new ChangePlan([], [], [], new Dictionary<long, LetGo>());
        var dates = steps
            .SelectMany(s => new[] { s.Was?.OnDate, s.Now?.On })
            .OfType<LocalDate>()
            .ToList();
        var before = await TimetableStore.PlacedAsync(
            read,
            dates.Min().PlusDays(-DaysAround),
            dates.Max().PlusDays(DaysAround)
        );
        var touched = steps.Select(s => s.Was?.Id).OfType<long>().ToHashSet();
        var after = before
            .Where(s => !touched.Contains(s.Key))
            .Concat(steps.Select(s => s.Now).OfType<PlacedSession>())
            .ToList();
        var conflicts = ChangedConflicts.Of(
            before,
            after,
            steps.Select(s => s.Now?.Key).OfType<long>().ToHashSet(),
            facts
        );

        var seats = await BookingStore.InAsync(
            read,
            [.. steps.Where(s => s.Was is { Status: SessionStatus.Open }).Select(s => s.Was!.Id)]
        );
        var seatsOfThem = (
            await BookingStore.SeatsOfAsync(read, [.. seats.Select(s => s.ClientId).Distinct()])
        ).ToLookup(s => s.ClientId);
        var at = after.ToDictionary(s => s.Key);
        var letGo = new Dictionary<long, LetGo>();
        foreach (var step in steps.Where(s => s.Was is { Status: SessionStatus.Open }))
        foreach (var seat in seats.Where(s => s.SessionId == step.Was!.Id))
        {
            if (step.Now is null)
                letGo[seat.Id] = LetGo.CalledOff;
            else if (
                seat.Status == BookingStatus.Booked
                && seatsOfThem[seat.ClientId]
                    .Any(other =>
                        other.SessionId != seat.SessionId
                        && !letGo.ContainsKey(other.Id)
                        && at.TryGetValue(other.SessionId, out var elsewhere)
                        && elsewhere.Overlaps(step.Now)
                    )
            )
                letGo[seat.Id] = LetGo.Overlap;
        }

        return new ChangePlan(steps, conflicts, seats, letGo);
    }

    private static Refusal? WhyNot(SessionWanted want, Places places, TimetableFacts facts) =>
        places.RoomOf(want.RoomId) is null ? TimetableRefusals.NoSuchRoom
        : places.ClassOf(want.ClassId) is null ? TimetableRefusals.NoSuchClass
        : want.InstructorId is { } who && !facts.Teachers.ContainsKey(who)
            ? TimetableRefusals.NoSuchInstructor
        : want.Minutes is < 5 or > 240 ? TimetableRefusals.BadLength
        : want.Seats is < 1 or > 200 ? TimetableRefusals.BadSeats
        : null;

    private static bool IsSame(SessionRow was, SessionWanted want, PlacedSession placed) =>
        !want.IsHeld
            ? was.Status != SessionStatus.Open
            : was.Status == SessionStatus.Open
                && was.ClassId == want.ClassId
                && was.RoomId == want.RoomId
                && was.InstructorId == want.InstructorId
                && was.StartsAt == placed.StartsAt
                && was.EndsAt == placed.EndsAt
                && was.Seats == want.Seats;

    private static NamedSession Name(SessionRow row) =>
        new(
            row.ClassName,
            row.OnDate,
            row.StartsLocal,
            (int)(row.EndsAt - row.StartsAt).TotalMinutes,
            row.RoomName,
            row.LocationName,
            row.InstructorName
        );

    private static NamedSession Name(PlacedSession placed, TimetableFacts facts) =>
        new(
            placed.ClassName,
            placed.On,
            placed.StartsLocal,
            placed.Minutes,
            placed.RoomName,
            placed.LocationName,
            placed.InstructorId is { } who ? facts.Teachers[who].Name : null
        );
}
