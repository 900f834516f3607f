using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Messages;
using Studio.Core.Messages;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>Puts into the outbox what a change of the timetable means for each person: one message, a line for each session.</summary>
public sealed class SessionTelling(Outbox outbox)
{
    /// <summary>Tells everybody concerned, inside the transaction of the change.</summary>
    /// <param name="write">The transaction, in which the sessions stand as they are wanted by now.</param>
    /// <param name="plan">The change.</param>
    /// <param name="ids">Ids of the sessions, in the order of what was wanted.</param>
    /// <returns>How many people are told.</returns>
    public async Task<int> TellAsync(Write write, ChangePlan plan, IReadOnlyList<long?> ids)
    {
        var lines = new List<Line>();
        foreach (var step in plan.Steps)
        {
            var session = ids[step.Index]!.Value;
            lines.AddRange(ForClients(plan, step, session));
            lines.AddRange(ForInstructors(step, session));
        }

        var counts = await SessionStore.ChangeCountsAsync(write, [.. ids.OfType<long>()]);
        var told = new HashSet<(bool, long)>();
        foreach (var message in lines.GroupBy(l => (l.Kind, l.IsClient, l.Person)))
        {
            var about = string.Join(
                ' ',
                message
                    .Select(l => $"{l.Session}.{counts.GetValueOrDefault(l.Session)}")
                    .Order(StringComparer.Ordinal)
            );
            var put = await outbox.PutAsync(
                write,
                new OutboxMessage
                {
                    Kind = message.Key.Kind,
                    About =
                        $"{message.Key.Kind} {(message.Key.IsClient ? "c" : "i")}{message.Key.Person}: {about}",
                    ClientId = message.Key.IsClient ? message.Key.Person : null,
                    InstructorId = message.Key.IsClient ? null : message.Key.Person,
                    SessionId = message.First().Session,
                    Facts = new Dictionary<string, string>(StringComparer.Ordinal)
                    {
                        ["lines"] = string.Join('\n', message.Select(l => l.Words)),
                    },
                }
            );
            if (put)
                told.Add((message.Key.IsClient, message.Key.Person));
        }

        return told.Count;
    }

    private static IEnumerable<Line> ForClients(ChangePlan plan, ChangeStep step, long session)
    {
        if (!plan.TellsClients(step))
            yield break;
        foreach (var seat in plan.Seats.Where(s => s.SessionId == session))
        {
            var overlaps = plan.LetGo.GetValueOrDefault(seat.Id) == LetGo.Overlap;
            yield return new Line(
                step.Now is null || overlaps
                    ? MessageKind.SessionCancelled
                    : MessageKind.SessionChanged,
                IsClient: true,
                seat.ClientId,
                session,
                overlaps ? SessionWords.LetGo(step.NamedWas!, step.NamedNow) : plan.Words(step)
            );
        }
    }

    private static IEnumerable<Line> ForInstructors(ChangeStep step, long session)
    {
        var before = step.Was is { Status: SessionStatus.Open } was ? was.InstructorId : null;
        var after = step.Now?.InstructorId;
        if (before is { } former && former != after)
            yield return Hers(
                former,
                step.Now is null
                    ? SessionWords.CalledOff(step.NamedWas!)
                    : SessionWords.TakenAway(step.NamedWas!)
            );
        if (after is { } next && next != before)
            yield return Hers(next, SessionWords.Given(step.NamedNow));
        else if (
            after is { } same
            && step.NamedWas is { } named
            && SessionWords.Changed(named, step.NamedNow, tellsWho: false) is { } words
        )
            yield return Hers(same, words);

        Line Hers(long instructor, string words) =>
            new(MessageKind.TimetableChanged, IsClient: false, instructor, session, words);
    }

    private sealed record Line(
        MessageKind Kind,
        bool IsClient,
        long Person,
        long Session,
        string Words
    );
}
