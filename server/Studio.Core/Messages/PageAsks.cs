using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Core.Messages;

/// <summary>
/// What her own page asks of her on a day that is worth a message: her letter's end at each of the days she is reminded,
/// and the health questions when they are due.
/// </summary>
public static class PageAsks
{
    /// <summary>
    /// One key for each thing; the same thing has the same key every day, so that she is written to once. Empty when she
    /// is to be left in peace.
    /// </summary>
    /// <param name="her">All that is known of her.</param>
    /// <param name="today">Today where she usually comes to.</param>
    /// <param name="hasSeatAhead">She has a seat in a session to come.</param>
    /// <param name="stages">The scheme.</param>
    /// <param name="policies">The policies in force.</param>
    public static IReadOnlyList<string> Of(
        HerSituation her,
        LocalDate today,
        bool hasSeatAhead,
        StageScheme stages,
        StudioPolicies policies
    )
    {
        if (
            stages.On(her.Pregnancy, today).Phase is not (Phase.Pregnant or Phase.Born)
            || AfterBirth.IsQuiet(her.Pregnancy, today, hasSeatAhead, policies)
        )
            return [];
        var asks = new List<string>();
        var letter = ClearanceRules.On(her.Letters, her.Pregnancy, today, stages, policies);
        if (letter is { Reminder: not LetterReminder.None, ValidUntil: { } until })
            asks.Add($"letter:{until:uuuu-MM-dd}:{letter.Reminder}");
        var questions = ScreeningRules.On(her, today, stages, policies);
        if (questions == ScreeningStatus.Due)
            asks.Add($"questions:{her.Screening!.AnsweredOn:uuuu-MM-dd}");
        else if (questions == ScreeningStatus.None)
            asks.Add("questions");
        return asks;
    }
}
