using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;

namespace Studio.Core.Clearance;

/// <summary>The time after a birth in which nothing is asked of her.</summary>
public static class AfterBirth
{
    /// <summary>
    /// Whether she is left in peace on a day: no request, reminder or flag about letters and questions. It ends on the
    /// policy's day, or as soon as she has a seat again, since then she has come back by herself. What a class needs stays
    /// as it is: a booking is refused without letter and answers all the same.
    /// </summary>
    /// <param name="pregnancy">Hers.</param>
    /// <param name="day">The day.</param>
    /// <param name="hasSeatAhead">She has a seat in a session to come.</param>
    /// <param name="policies">The policies in force.</param>
    public static bool IsQuiet(
        Pregnancy? pregnancy,
        LocalDate day,
        bool hasSeatAhead,
        StudioPolicies policies
    ) =>
        !hasSeatAhead
        && pregnancy is { BornOn: { } born }
        && born <= day
        && !(pregnancy.PapersFrom > born)
        && (BirthRules.IsToBeRung(pregnancy) || day < born.PlusDays(policies.QuietAfterBirthDays));

    /// <summary>Whether a hold says anything on a quiet day: one set since the birth does, an earlier one can wait.</summary>
    public static bool Speaks(Hold hold, Pregnancy? pregnancy, bool quiet) =>
        !quiet || hold.From >= pregnancy?.BornOn;
}
