using Studio.Core.Booking;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;

namespace Studio.Core.Movements;

/// <summary>What the rules say of one movement for her, before an option is looked for.</summary>
internal sealed record MovementReading(
    Movement Movement,
    MovementVerdict Verdict,
    IReadOnlyList<MovementReason> Reasons
);

/// <summary>A client's date with the rules and restrictions that hold on it; each movement is read once.</summary>
internal sealed class HerMovements
{
    private readonly HerDay day;
    private readonly MovementIndex index;
    private readonly bool[] holds;
    private readonly MovementReason?[] told;
    private readonly MovementReading?[] readings;
    private readonly Restriction[] restrictions;

    public HerMovements(HerDay day)
    {
        this.day = day;
        index = day.Book.Index;
        holds = new bool[index.Rules.Count];
        told = new MovementReason?[index.Rules.Count];
        readings = new MovementReading?[index.Movements.Count];
        Whole = [.. WholeReasons.Of(day)];
        var counts = day.At.Phase is Phase.Pregnant or Phase.Born;
        for (var rule = 0; counts && rule < holds.Length; rule++)
            holds[rule] = day.Meets(index.Rules[rule]);
        restrictions = counts ? [.. day.Restrictions] : [];
    }

    /// <summary>Why she does not take part in anything; mostly empty.</summary>
    public IReadOnlyList<MovementReason> Whole { get; }

    /// <summary>What the rules say of a movement; the same answer however often it is asked.</summary>
    public MovementReading Read(int movement) => readings[movement] ??= ReadOnce(movement);

    /// <summary>The nearest gentler option, breadth-first in the order listed, that is as taught or adapted for her.</summary>
    public MovementReading? OptionFor(int movement)
    {
        foreach (var option in index.GentlerThan(movement))
            if (Read(option) is { Verdict: <= MovementVerdict.Adapted } reading)
                return reading;
        return null;
    }

    private MovementReading ReadOnce(int number)
    {
        var movement = index.Movements[number];
        var reasons = new List<MovementReason>();
        foreach (var rule in index.RulesOf(number))
            if (holds[rule] && index.Rules[rule].Target.ReachesEffort(movement, day.Policies))
                reasons.Add(told[rule] ??= Tell(index.Rules[rule]));
        foreach (var restriction in restrictions)
            reasons.AddRange(RestrictionReasons.Of(restriction, movement));
        reasons.Sort(ReasonOrder.Comparison);
        return new(
            movement,
            reasons.Count == 0 ? MovementVerdict.AsTaught : reasons[0].Verdict,
            reasons
        );
    }

    private MovementReason Tell(MovementRule rule)
    {
        var limit = rule.Target.EffortOver?.In(day.Policies);
        return new()
        {
            Rule = rule.Id,
            Verdict = rule.Verdict,
            ForHer = WithLimit(rule.ForHer, limit),
            Instruction = WithLimit(rule.Instruction, limit),
            Factor = rule.Factor,
            Source = rule.Source,
            Lift = LiftOf(rule),
            EffortMost = limit,
        };
    }

    private static string WithLimit(string words, int? limit) =>
        limit is { } most && words.Contains('{', StringComparison.Ordinal)
            ? words.Replace("{limit}", $"{most}", StringComparison.Ordinal)
            : words;

    private Lift? LiftOf(MovementRule rule)
    {
        if (rule.Verdict == MovementVerdict.AsTaught)
            return null;
        if (day.EndOf(rule) is { } end)
            return new($"From {Wording.Date(end)} this no longer holds.", end);
        return rule.Factor is { } code && day.HoldingOf(code) is { } holding
            ? Words.WhenOver(holding, "When this no longer holds, end it on your page.")
            : null;
    }
}

/// <summary>Strictest first; among equals the lowest effort, then by rule and words alone.</summary>
internal static class ReasonOrder
{
    public static int Comparison(MovementReason one, MovementReason other)
    {
        var order = other.Verdict.CompareTo(one.Verdict);
        if (order == 0)
            order = (one.EffortMost ?? -1).CompareTo(other.EffortMost ?? -1);
        if (order == 0)
            order = string.CompareOrdinal(one.Rule, other.Rule);
        return order == 0 ? string.CompareOrdinal(one.ForHer, other.ForHer) : order;
    }
}
