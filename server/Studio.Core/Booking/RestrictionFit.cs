using Studio.Core.Catalogue;
using Studio.Core.Movements;

namespace Studio.Core.Booking;

/// <summary>What the restrictions of her letters say about a class; movement by movement where there is a plan.</summary>
internal static class RestrictionFit
{
    // Moderate effort is 5 of 10 and more on the scale of the catalogue.
    private const int ModerateEffort = 5;

    public static IEnumerable<Reason> Reasons(FitQuestion question)
    {
        foreach (var reason in Unclear(question))
            yield return reason;
        var standing = question.Restrictions;
        foreach (var words in standing.Select(r => r.Words).OfType<string>().Distinct())
            yield return Letters.Follow(
                "Your letter has a word for your instructor; she keeps to it.",
                $"By her letter: {words}"
            );
        if (standing.Min(r => r.HeartRateMost) is { } rate)
            yield return Follow($"heart rate at most {rate} a minute");
        var most = standing.Min(r => r.EffortMost);
        // Told for the class as a whole too: whoever teaches knows the ceiling before the movement that goes past it.
        if (most is not null && question.Plan is not null)
            yield return Follow($"effort at most {most} of 10");
        if (question.Plan is not null)
            yield break;
        foreach (var code in standing.SelectMany(r => r.LeaveOut).Distinct(StringComparer.Ordinal))
            if (question.Class.Traits.Contains(code) && MovementTraits.NameOf(code) is { } name)
                yield return Follow($"leave out: {name.ToLowerInvariant()}");
        if (most < ModerateEffort && question.Class.Traits.Contains(ClassTraits.ModerateEffort))
            yield return Follow($"effort at most {most} of 10");
    }

    /// <summary>A restriction that names something the catalogue does not know clears nothing.</summary>
    public static IEnumerable<Reason> Unclear(HerDay day) =>
        day.Restrictions.Any(r => !RestrictionReasons.IsClear(r))
            ?
            [
                new()
                {
                    Code = ReasonCodes.RecordUnclear,
                    Verdict = Suits.NeedsClearance,
                    ForHer =
                        "Your letter asks for something our rules do not know. Ask the studio to look at it.",
                    ForDesk = "Her record needs a look by the owner before this class.",
                    ForInstructor = "She takes part only once the studio has looked at her record.",
                    Lift = new("The studio corrects the entry."),
                    DeskLift = new("The owner corrects her record."),
                },
            ]
            : [];

    private static Reason Follow(string what) =>
        Letters.Follow($"Your letter asks: {what}.", $"By her letter: {what}.");
}
