using Studio.Core.Accounts;

namespace Studio.Core.Booking;

/// <summary>The words of a fit for one reader. What the front desk reads never comes from the words for her.</summary>
public static class FitWords
{
    /// <summary>What a verdict is called.</summary>
    public static string Name(Suits verdict) =>
        verdict switch
        {
            Suits.Suitable => "Suits",
            Suits.WithModifications => "Suits with changes",
            Suits.NeedsClearance => "Letter needed",
            Suits.NotSuitable => "Does not suit",
        };

    /// <summary>A reason for this reader; null when it is not for her eyes.</summary>
    public static string? Text(Reason reason, Audience audience) =>
        audience switch
        {
            Audience.Owner or Audience.Herself => reason.ForHer,
            Audience.Instructor => reason.ForInstructor,
            Audience.FrontDesk => reason.ForDesk,
        };

    /// <summary>What would change it, for this reader.</summary>
    public static Lift? Lift(Reason reason, Audience audience) =>
        audience switch
        {
            Audience.Owner or Audience.Herself => reason.Lift,
            Audience.Instructor => null,
            Audience.FrontDesk => reason.DeskLift,
        };

    /// <summary>One line that says why, for a list.</summary>
    public static string Summary(Fit fit, Audience audience)
    {
        var all = fit
            .Reasons.Where(r => r.Verdict == fit.Verdict)
            .Select(r => Text(r, audience))
            .OfType<string>();
        var words = all.Distinct(StringComparer.Ordinal).ToList();
        return fit.Verdict switch
        {
            Suits.Suitable => "As taught.",
            Suits.WithModifications when audience == Audience.FrontDesk => "Suits with changes.",
            Suits.WithModifications => words.Count == 1
                ? $"With 1 change: {words[0]}"
                : $"With {words.Count} changes: {string.Join(" ", words)}",
            Suits.NeedsClearance or Suits.NotSuitable => string.Join(" ", words),
        };
    }
}
