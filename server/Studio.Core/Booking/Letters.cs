using NodaTime;
using Studio.Core.Pregnancies;

namespace Studio.Core.Booking;

/// <summary>Sentences that more than one rule says.</summary>
internal static class Words
{
    public const string DeskDoesNotSuit = "Does not suit her on that date; her own page says why.";
    public const string DeskAdapted = "Suits her with changes; her instructor has them.";
    public const string DeskNote = "Suits her on that date.";
    public const string DoesNotTakePart =
        "She does not take part in this class for now; should she be unwell, stop and refer her.";

    /// <summary>What would end something of hers: the day after its last, where that is known.</summary>
    public static Lift WhenOver(Holding holding, string otherwise) =>
        holding.Until is { } last
            ? new($"From {Wording.Date(last.PlusDays(1))}, when this is over.", last.PlusDays(1))
            : new(otherwise);
}

/// <summary>Reasons that ask for a letter, or for following the one there is.</summary>
internal static class Letters
{
    /// <summary>Asks for a letter valid on the date; with <paramref name="since"/>, one written on that day or later.</summary>
    public static Reason Needed(
        HerDay question,
        string forHer,
        string? desk = null,
        LocalDate? since = null
    )
    {
        var on = Wording.Date(question.On);
        var newer =
            since is { } day && question.Policies.LetterFollowsChange && question.HasLetter()
                ? Wording.Date(day)
                : null;
        var which = newer is null
            ? $"valid on {on}"
            : $"written on or after {newer} and valid on {on}";
        return new()
        {
            Code = ReasonCodes.ClearanceNeeded,
            Verdict = Suits.NeedsClearance,
            ForHer = newer is null
                ? forHer
                : $"{forHer} Your letter is older than this, so it does not speak of it.",
            ForDesk = desk is null
                ? $"A clearance letter {which} is needed."
                : $"{desk}: one {which} is needed.",
            ForInstructor = "She takes part only once a letter that counts on this date is here.",
            Lift = new($"A letter {which}.", question.On),
            DeskLift = new($"A clearance letter {which}.", question.On),
        };
    }

    /// <summary>Her letter covers it: it is to be followed.</summary>
    public static Reason Follow(string forHer, string forInstructor) =>
        new()
        {
            Code = ReasonCodes.FollowLetter,
            Verdict = Suits.WithModifications,
            ForHer = forHer,
            ForDesk = Words.DeskAdapted,
            ForInstructor = forInstructor,
        };
}
