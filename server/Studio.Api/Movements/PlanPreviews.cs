using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Catalogue;
using Studio.Core.Movements;

namespace Studio.Api.Movements;

/// <summary>What a draft would come to for those with a seat in a session, in the words of a roster; keeps nothing.</summary>
public sealed class PlanPreviews(RuleBook book, StudioStore studio)
{
    /// <summary>Who does what, and whom the session would suit differently.</summary>
    public async Task<PlanPreview> OfAsync(Read read, SessionRow session, ClassPlan draft)
    {
        var room = await RoomAsync(read, session);
        var people = room
            .People.Select(p =>
                (
                    p.Id,
                    p.Called,
                    Before: room.Fits.Of(p.Id, session).Verdict,
                    After: room.Fits.Of(p.Id, session.Dated, draft)
                )
            )
            .ToList();
        var stages = (await StudioStore.ClassesAsync(read))
            .Single(c => c.Id == session.ClassId)
            .Stages.ToHashSet(StringComparer.Ordinal);
        return new()
        {
            SessionId = session.Id,
            Items =
            [
                .. draft.Items.Select(
                    (item, at) =>
                    {
                        var each = people.ConvertAll(p =>
                            (p.Id, p.Called, Hers: p.After.Plan!.Items[at])
                        );
                        return new PreviewedItem
                        {
                            Position = at + 1,
                            Movement = item.Movement,
                            AsTaught = Count(MovementVerdict.AsTaught),
                            Adapted = Count(MovementVerdict.Adapted),
                            Replaced = Count(MovementVerdict.Replaced),
                            LeftOut = Count(MovementVerdict.LeftOut),
                            People =
                            [
                                .. each.Where(e => e.Hers.Verdict != MovementVerdict.AsTaught)
                                    .Select(e => new DoesElse(
                                        e.Id,
                                        e.Called,
                                        e.Hers.Verdict,
                                        e.Hers.Option?.Name,
                                        e.Hers.Instruction
                                    )),
                            ],
                        };

                        int Count(MovementVerdict verdict) =>
                            each.Count(e => e.Hers.Verdict == verdict);
                    }
                ),
            ],
            People =
            [
                .. people.Select(p => new PreviewedPerson(
                    p.Id,
                    p.Called,
                    PlanWords.Share(p.After.Plan!),
                    p.Before,
                    p.After.Verdict
                )),
            ],
            Nobody =
            [
                .. PlanChecks
                    .LeftOut(draft, stages, book, room.Fits.Policies)
                    .Select(l => new NobodyDoes(l.Number, l.Stage.Name)),
            ],
        };
    }

    /// <summary>A plan in which more of those with a seat take part.</summary>
    public async Task<ProposedPlan> SuitingAsync(Read read, SessionRow session, ClassPlan draft)
    {
        var room = await RoomAsync(read, session);
        var advised = PlanAdvice.For(
            draft,
            [.. room.People.Select(p => new Attendee(p.Id, room.Fits.Of(p.Id)))],
            session.OnDate,
            book,
            room.Fits.Policies
        );
        var takingPart = room.People.Count - advised.NotTakingPart.Count;
        return new()
        {
            Items = PlanItemMessage.All(advised.Plan, book),
            Changes =
            [
                .. advised.Changes.Select(c => new ProposedChange
                {
                    Position = c.Number,
                    From = c.From.Name,
                    To = c.To.Name,
                    Gains = room.Names(c.Gains),
                    Loses = room.Names(c.Loses),
                    Why =
                        $"{c.After} of {takingPart} can do {c.To.Name}; {c.From.Name} was for {c.Before}.",
                }),
            ],
            Remaining =
            [
                .. advised.Remaining.Select(r =>
                {
                    var code = advised.Plan.Items[r.Number - 1].Movement;
                    return new StillElseMessage(
                        r.Number,
                        book.MovementOf(code)?.Name ?? code,
                        room.Names(r.Who)
                    );
                }),
            ],
            NotTakingPart = room.Names(advised.NotTakingPart),
        };
    }

    private async Task<Room> RoomAsync(Read read, SessionRow session)
    {
        var seats = (await BookingStore.InAsync(read, [session.Id]))
            .Where(b => b.Status == BookingStatus.Booked)
            .ToList();
        var fits = await Fits.LoadAsync(read, book, [.. seats.Select(b => b.ClientId)]);
        var today = studio.Today(session.Zone);
        // After a loss she is in no preview, whoever looks: nothing can be planned for her.
        var there = seats.Where(b => !fits.HasEnded(b.ClientId)).ToList();
        var called = there.CountBy(b => b.Called, StringComparer.Ordinal).ToDictionary();
        return new(
            fits,
            [
                .. there
                    .OrderBy(b => b.Called, StringComparer.Ordinal)
                    .ThenBy(b => b.Name, StringComparer.Ordinal)
                    .ThenBy(b => b.Id)
                    .Select(b => (b.ClientId, called[b.Called] == 1 ? b.Called : b.Name)),
            ]
        );
    }

    private sealed record Room(Fits Fits, IReadOnlyList<(long Id, string Called)> People)
    {
        public IReadOnlyList<string> Names(IReadOnlyList<long> ids) =>
            [.. People.Where(p => ids.Contains(p.Id)).Select(p => p.Called)];
    }
}
