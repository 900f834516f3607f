using NodaTime;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;

namespace Studio.Core.Movements;

/// <summary>Somebody with a seat in the session a plan is meant for.</summary>
/// <param name="Id">Who; answers name her by it.</param>
/// <param name="Her">All that is known of her.</param>
public sealed record Attendee(long Id, HerSituation Her);

/// <summary>One movement of a plan that gave way to a gentler one.</summary>
public sealed record PlanChange
{
    /// <summary>Its place in the plan, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The movement that stood there.</summary>
    public required Movement From { get; init; }

    /// <summary>The one that takes its place for everybody.</summary>
    public required Movement To { get; init; }

    /// <summary>How many of those who take part did it as taught or adapted.</summary>
    public required int Before { get; init; }

    /// <summary>How many do now.</summary>
    public required int After { get; init; }

    /// <summary>Who takes part now and did something else before, by id in ascending order.</summary>
    public required IReadOnlyList<long> Gains { get; init; }

    /// <summary>Who took part before and does something else now; never more than gain.</summary>
    public required IReadOnlyList<long> Loses { get; init; }
}

/// <summary>A movement of the advised plan that somebody still does not do.</summary>
/// <param name="Number">Its place in the plan, from 1.</param>
/// <param name="Who">For whom it is replaced or left out, by id in ascending order.</param>
public sealed record StillElse(int Number, IReadOnlyList<long> Who);

/// <summary>A plan that suits more of the people it is meant for.</summary>
public sealed record AdvisedPlan
{
    /// <summary>The plan, with the minutes of the one it came from.</summary>
    public required ClassPlan Plan { get; init; }

    /// <summary>What changed, in the plan's order; empty when there was nothing to mend or nothing that mends it.</summary>
    public required IReadOnlyList<PlanChange> Changes { get; init; }

    /// <summary>What somebody still does differently than by an adaptation.</summary>
    public required IReadOnlyList<StillElse> Remaining { get; init; }

    /// <summary>Who takes part in nothing that day, whatever is planned; by id in ascending order.</summary>
    public required IReadOnlyList<long> NotTakingPart { get; init; }
}

/// <summary>
/// Looks for a plan in which as few as possible do something else. A movement gives way only where somebody cannot do it,
/// and only to one of its own gentler options that more people can do, as taught or adapted; so no place of the plan ever
/// suits fewer than before, and asking again about the answer changes nothing. Work never gives way to a rest: that would
/// put everybody to rest for the sake of the one who already does.
/// </summary>
public static class PlanAdvice
{
    /// <summary>The plan that suits the most of those booked.</summary>
    /// <param name="plan">What is planned.</param>
    /// <param name="people">Those with a seat; their order does not matter.</param>
    /// <param name="on">The session's date; never today's.</param>
    /// <param name="book">The catalogue.</param>
    /// <param name="policies">The studio's choices.</param>
    public static AdvisedPlan For(
        ClassPlan plan,
        IReadOnlyCollection<Attendee> people,
        LocalDate on,
        RuleBook book,
        StudioPolicies policies
    )
    {
        var all = people
            .OrderBy(p => p.Id)
            .Select(p => (p.Id, Hers: new HerMovements(new HerDay(p.Her, on, book, policies))))
            .ToList();
        var room = new Room([.. all.Where(p => p.Hers.Whole.Count == 0)], book.Index);
        var items = new List<PlanItem>();
        var changes = new List<PlanChange>();
        var remaining = new List<StillElse>();
        foreach (var item in plan.Items)
        {
            var from = book.Index.NumberOf(item.Movement);
            var to = from is { } known ? room.Best(known) : null;
            items.Add(to is { } other ? item with { Movement = other.Movement.Code } : item);
            if (to is { } better && room.Of(from!.Value) is var before)
                changes.Add(
                    new()
                    {
                        Number = items.Count,
                        From = before.Movement,
                        To = better.Movement,
                        Before = before.Takes.Count,
                        After = better.Takes.Count,
                        Gains = [.. better.Takes.Except(before.Takes)],
                        Loses = [.. before.Takes.Except(better.Takes)],
                    }
                );
            var takes = to?.Takes ?? (from is { } number ? room.Of(number).Takes : []);
            List<long> others = [.. room.People.Except(takes)];
            if (others.Count > 0)
                remaining.Add(new(items.Count, others));
        }
        return new()
        {
            Plan = new(items),
            Changes = changes,
            Remaining = remaining,
            NotTakingPart = [.. all.Where(p => p.Hers.Whole.Count > 0).Select(p => p.Id)],
        };
    }

    /// <summary>How a movement would go with these people.</summary>
    private sealed record Going(
        Movement Movement,
        IReadOnlyList<long> Takes,
        int AsTaught,
        int LeftOut
    );

    private sealed class Room(
        IReadOnlyList<(long Id, HerMovements Hers)> people,
        MovementIndex index
    )
    {
        private readonly Dictionary<int, Going> goings = [];

        public IEnumerable<long> People => people.Select(p => p.Id);

        /// <summary>
        /// The gentler movement that more can do than this one: the most people, then the most as taught, then the fewest
        /// at rest, then the nearest; null when it stays.
        /// </summary>
        public Going? Best(int movement)
        {
            var here = Of(movement);
            Going? best = null;
            foreach (var option in index.GentlerThan(movement))
                if (
                    Of(option) is var there
                    && (there.Movement.Effort > 0 || here.Movement.Effort == 0)
                    && there.Takes.Count > here.Takes.Count
                    && (best is null || IsBetter(there, best))
                )
                    best = there;
            return best;
        }

        public Going Of(int movement)
        {
            if (goings.TryGetValue(movement, out var known))
                return known;
            var takes = new List<long>();
            var (asTaught, leftOut) = (0, 0);
            foreach (var (id, hers) in people)
                switch (hers.Read(movement).Verdict)
                {
                    case MovementVerdict.AsTaught:
                        asTaught++;
                        takes.Add(id);
                        break;
                    case MovementVerdict.Adapted:
                        takes.Add(id);
                        break;
                    case MovementVerdict.Replaced:
                        leftOut += hers.OptionFor(movement) is null ? 1 : 0;
                        break;
                    case MovementVerdict.LeftOut:
                        leftOut++;
                        break;
                }
            return goings[movement] = new(index.Movements[movement], takes, asTaught, leftOut);
        }

        private static bool IsBetter(Going one, Going other) =>
            (one.Takes.Count, one.AsTaught, -one.LeftOut).CompareTo(
                (other.Takes.Count, other.AsTaught, -other.LeftOut)
            ) > 0;
    }
}
