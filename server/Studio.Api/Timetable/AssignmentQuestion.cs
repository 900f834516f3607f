using NodaTime;
using Studio.Api.Data;
using Studio.Core;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>What is asked of a search, read from the tables at one moment, and its answer in words.</summary>
public sealed class AssignmentQuestion
{
    private const int MostDays = 190;

    private readonly IReadOnlyDictionary<long, long> _changes;

    private AssignmentQuestion(TermQuestion term, IReadOnlyDictionary<long, long> changes) =>
        (Term, _changes) = (term, changes);

    /// <summary>The question.</summary>
    public TermQuestion Term { get; }

    /// <summary>Reads it; refused where it asks for what is not there, or leaves nothing to change.</summary>
    public static async Task<Answer<AssignmentQuestion>> ReadAsync(
        Write write,
        AssignmentRequest asked,
        Instant now
    )
    {
        if (asked.To < asked.From || Period.DaysBetween(asked.From, asked.To) >= MostDays)
            return AssignmentRefusals.BadRange;

        var facts = await TimetableStore.FactsAsync(write, write.Book);
        // Weeks whole, and the days about them, for the rest between two.
        var sessions = await TimetableStore.PlacedAsync(
            write,
            TimetableChecks.WeekOf(asked.From).PlusDays(-3),
            TimetableChecks.WeekOf(asked.To).PlusDays(9)
        );
        var within = sessions.FindAll(s =>
            asked.From <= s.On && s.On <= asked.To && s.StartsAt > now
        );
        var keys = within.Select(s => s.Key).ToHashSet();
        foreach (var pin in asked.Pins)
            if (!keys.Contains(pin.SessionId))
                return AssignmentRefusals.NoSuchPin;
            else if (pin.InstructorId is { } who && !facts.Teachers.ContainsKey(who))
                return AssignmentRefusals.NoSuchInstructor("pins");
        if (asked.Pins.DistinctBy(p => p.SessionId).Count() < asked.Pins.Count)
            return AssignmentRefusals.PinnedTwice;
        if (asked.KeepOf.Any(who => !facts.Teachers.ContainsKey(who)))
            return AssignmentRefusals.NoSuchInstructor("keepOf");

        var pins = within
            .Where(s => !MayChange(s, asked))
            .ToDictionary(s => s.Key, s => s.InstructorId);
        foreach (var pin in asked.Pins)
            pins[pin.SessionId] = pin.InstructorId;
        var term = new TermQuestion
        {
            From = asked.From,
            To = asked.To,
            Sessions = sessions,
            Facts = facts,
            MayChange = keys,
            Pins = pins,
            Bends = asked.Bend,
        };
        return keys.All(pins.ContainsKey)
            ? AssignmentRefusals.NothingMayChange
            : new AssignmentQuestion(
                term,
                await AssignmentStore.ChangesAsync(write, asked.From, asked.To)
            );
    }

    /// <summary>The answer, with the names of today.</summary>
    public AssignmentResult Result(TermPlan plan)
    {
        string? Name(long? who) =>
            who is { } id ? Term.Facts.Teachers.GetValueOrDefault(id)?.Name : null;
        return new()
        {
            Sessions = plan.Steps.Count,
            Free = plan.Steps.Count(s => s.MayChange),
            UnstaffedBefore = plan.Steps.Count(s => s.Session.InstructorId is null),
            UnstaffedAfter = plan.Steps.Count(s => s.After is null),
            Changes =
            [
                .. plan
                    .Steps.Where(s => s.Changes)
                    .Select(s => new AssignmentChange(
                        Words(s.Session),
                        Name(s.Session.InstructorId),
                        s.After,
                        Name(s.After),
                        _changes[s.Session.Key]
                    )),
            ],
            Loads = plan.Loads,
            Unstaffed =
            [
                .. plan.Unstaffed.Select(g => new AssignmentGap(
                    Words(g.Session),
                    g.Words,
                    g.People
                )),
            ],
            Contradictions = [.. plan.Contradictions.Select(c => c.Words)],
            Aims = plan.Aims,
        };
    }

    private static bool MayChange(PlacedSession session, AssignmentRequest asked) =>
        session.InstructorId is not { } who
        || (
            !asked.KeepOf.Contains(who)
            && asked.Change switch
            {
                AssignmentScope.Unstaffed => false,
                AssignmentScope.NobodyBooked => session.SeatsTaken == 0,
                AssignmentScope.All => true,
            }
        );

    private static AssignedSession Words(PlacedSession session) =>
        new()
        {
            Id = session.Key,
            ClassName = session.ClassName,
            On = session.On,
            StartsLocal = session.StartsLocal.ToString("HH:mm", null),
            Minutes = session.Minutes,
            LocationName = session.LocationName,
            RoomName = session.RoomName,
            SeatsTaken = session.SeatsTaken,
        };
}

/// <summary>Refusals about searches for the best way to staff a term.</summary>
public static class AssignmentRefusals
{
    /// <summary>No such search.</summary>
    public static readonly Refusal NoSuchRun = new(
        RefusalKind.NotFound,
        "no-such-assignment",
        "There is no such assignment."
    );

    /// <summary>One at a time.</summary>
    public static readonly Refusal OneIsRunning = new(
        RefusalKind.Conflict,
        "assignment-running",
        "An assignment is being worked out already. Wait for it, or cancel it."
    );

    /// <summary>The days are not in order, or too many.</summary>
    public static readonly Refusal BadRange = new(
        RefusalKind.Invalid,
        "bad-range",
        "The last day must not lie before the first, nor more than 27 weeks after it.",
        "to"
    );

    /// <summary>A pin on a session that is not there, or has begun.</summary>
    public static readonly Refusal NoSuchPin = new(
        RefusalKind.Invalid,
        "no-such-session",
        "A session that is to be kept is not among those of these days that are still to begin.",
        "pins"
    );

    /// <summary>Two decisions about one session.</summary>
    public static readonly Refusal PinnedTwice = new(
        RefusalKind.Invalid,
        "pinned-twice",
        "A session is decided twice. Name each once.",
        "pins"
    );

    /// <summary>Nothing is left to be decided.</summary>
    public static readonly Refusal NothingMayChange = new(
        RefusalKind.Conflict,
        "nothing-may-change",
        "No session of these days may change: they have begun, are kept, or are not of the kind chosen. Choose other days, or let more of them change."
    );

    /// <summary>It runs, or found nothing, or was settled before.</summary>
    public static readonly Refusal NothingToTake = new(
        RefusalKind.Conflict,
        "assignment-settled",
        "This assignment has nothing that could be opened as a draft: it is still at it, found nothing, or was settled already."
    );

    /// <summary>An instructor who does not exist.</summary>
    public static Refusal NoSuchInstructor(string field) =>
        new(
            RefusalKind.Invalid,
            "no-such-instructor",
            "One of the instructors named does not work here.",
            field
        );
}
