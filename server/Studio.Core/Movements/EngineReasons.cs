using Studio.Core.Booking;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;

namespace Studio.Core.Movements;

/// <summary>What the engine itself has to say.</summary>
internal static class EngineReasons
{
    public const string Rest = "rest";

    /// <summary>The rule code of what a letter asks for.</summary>
    public const string Letter = "her-letter";

    public static readonly MovementReason NoOption = new()
    {
        Rule = "no-option",
        Verdict = MovementVerdict.LeftOut,
        ForHer = "Nothing of this kind suits you that day: rest or breathe for these minutes.",
        Instruction = Rest,
    };

    public static readonly MovementReason UnknownMovement = new()
    {
        Rule = "movement-unclear",
        Verdict = MovementVerdict.LeftOut,
        ForHer = "We do not know enough about this movement to say that it suits you.",
        Instruction = Rest,
    };
}

/// <summary>What a letter asks to leave out.</summary>
internal static class RestrictionReasons
{
    public static IEnumerable<MovementReason> Of(Restriction restriction, Movement movement)
    {
        foreach (var code in restriction.LeaveOut)
            if (movement.Has(code))
                yield return new()
                {
                    Rule = EngineReasons.Letter,
                    Verdict = MovementVerdict.Replaced,
                    ForHer =
                        $"Your letter asks to leave this out: {NameOf(code).ToLowerInvariant()}.",
                    Instruction = $"leave out: {NameOf(code).ToLowerInvariant()}",
                    Lift = LiftOf(restriction),
                };
        if (movement.Effort > restriction.EffortMost)
            yield return new()
            {
                Rule = EngineReasons.Letter,
                Verdict = MovementVerdict.Replaced,
                ForHer = $"Your letter asks for {restriction.EffortMost} of 10 at most.",
                Instruction = $"{restriction.EffortMost} of 10 at most",
                Lift = LiftOf(restriction),
                EffortMost = restriction.EffortMost,
            };
    }

    /// <summary>Whether every code it names is known.</summary>
    public static bool IsClear(Restriction restriction) =>
        restriction.LeaveOut.All(code => MovementTraits.NameOf(code) is not null);

    public static string NameOf(string code) => MovementTraits.NameOf(code) ?? code;

    private static Lift LiftOf(Restriction restriction) =>
        restriction.To is { } last
            ? new($"From {Wording.Date(last.PlusDays(1))} on.", last.PlusDays(1))
            : new("A new letter without this.");
}

/// <summary>Why she does not take part in anything on that date, whatever the movement.</summary>
internal static class WholeReasons
{
    public static IEnumerable<MovementReason> Of(HerDay day) =>
        day.At.Phase switch
        {
            Phase.Ended => [From(StageFit.NotBookable)],
            Phase.Unknown or Phase.BeforeDates => [From(StageFit.DatesNeeded(day))],
            Phase.Pregnant or Phase.Born =>
            [
                .. PaperFit
                    .Bodily(day)
                    .Concat(ConditionFit.Reasons(day))
                    .Concat(RestrictionFit.Unclear(day))
                    .Where(r =>
                        r.Verdict == Suits.NotSuitable || r.Code == ReasonCodes.RecordUnclear
                    )
                    .OrderBy(ReasonCodes.RankOf)
                    .ThenBy(r => r.Rule, StringComparer.Ordinal)
                    .ThenBy(r => r.Factor, StringComparer.Ordinal)
                    .Select(From),
            ],
        };

    private static MovementReason From(Reason reason) =>
        new()
        {
            Rule = reason.Rule ?? reason.Code,
            Verdict = MovementVerdict.LeftOut,
            ForHer = reason.ForHer,
            Instruction = "does not take part",
            Factor = reason.Factor,
            Source = reason.Source,
            Lift = reason.Lift,
            IsWhole = true,
        };
}
