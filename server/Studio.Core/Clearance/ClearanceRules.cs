using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;

namespace Studio.Core.Clearance;

/// <summary>How a client's letters stand on a day.</summary>
public enum ClearanceStatus
{
    /// <summary>One counts, and goes on counting for a while.</summary>
    Valid,

    /// <summary>One counts, and its last day is near.</summary>
    EndsSoon,

    /// <summary>One counted once, and none does now.</summary>
    Expired,

    /// <summary>None ever counted.</summary>
    None,
}

/// <summary>How a client's letters stand on a day.</summary>
/// <param name="Status">The status.</param>
/// <param name="ValidUntil">The last day a letter counts or counted; null when none ever did.</param>
/// <param name="EndedByBirth">The birth, not an expiry, ended the latest.</param>
/// <param name="Reminder">How pressing it is that the one which counts will end.</param>
public sealed record ClearanceStanding(
    ClearanceStatus Status,
    LocalDate? ValidUntil,
    bool EndedByBirth,
    LetterReminder Reminder = LetterReminder.None
);

/// <summary>How long a clearance letter counts.</summary>
public static class ClearanceRules
{
    /// <summary>
    /// The last day a letter counts: the earliest of its own expiry, the policy's length, the end of the stage it was
    /// written in where the policy says so, and the day before a birth that came after it was written. A letter written on
    /// the day of birth or later is a postnatal one; one from before <see cref="Pregnancy.PapersFrom"/> speaks of an earlier
    /// pregnancy. Null when it never counts.
    /// </summary>
    public static LocalDate? ValidUntil(
        ClearanceLetter letter,
        Pregnancy? pregnancy,
        StageScheme stages,
        StudioPolicies policies
    )
    {
        if (letter.Withdrawn || letter.IssuedOn < pregnancy?.PapersFrom)
            return null;
        var last = WithoutBirth(letter, pregnancy, stages, policies);
        if (pregnancy?.BornOn is { } born && letter.IssuedOn < born)
            last = LocalDate.Min(last, born.PlusDays(-1));
        return last < letter.IssuedOn ? null : last;
    }

    /// <summary>Whether a letter counts on a day: written by then, and not past its last day.</summary>
    public static bool ValidOn(
        ClearanceLetter letter,
        Pregnancy? pregnancy,
        LocalDate day,
        StageScheme stages,
        StudioPolicies policies
    ) => letter.IssuedOn <= day && ValidUntil(letter, pregnancy, stages, policies) >= day;

    /// <summary>Whether any letter counts on a day; with <paramref name="notBefore"/>, only those written since then.</summary>
    public static bool AnyValidOn(
        IEnumerable<ClearanceLetter> letters,
        Pregnancy? pregnancy,
        LocalDate day,
        StageScheme stages,
        StudioPolicies policies,
        LocalDate? notBefore = null
    ) =>
        letters.Any(l =>
            ValidOn(l, pregnancy, day, stages, policies)
            && (notBefore is null || l.IssuedOn >= notBefore)
        );

    /// <summary>How her letters stand on a day, for a card or a flag.</summary>
    public static ClearanceStanding On(
        IEnumerable<ClearanceLetter> letters,
        Pregnancy? pregnancy,
        LocalDate day,
        StageScheme stages,
        StudioPolicies policies
    )
    {
        var last = letters
            .Where(l => l.IssuedOn <= day)
            .Select(l => (Letter: l, Until: ValidUntil(l, pregnancy, stages, policies)))
            .Where(l => l.Until is not null)
            .OrderByDescending(l => l.Until)
            .ThenByDescending(l => l.Letter.IssuedOn)
            .ThenByDescending(l => l.Letter.ExpiresOn)
            .FirstOrDefault();
        if (last.Until is not { } until)
            return new ClearanceStanding(ClearanceStatus.None, null, EndedByBirth: false);
        if (until < day)
            return new ClearanceStanding(
                ClearanceStatus.Expired,
                until,
                until < WithoutBirth(last.Letter, pregnancy, stages, policies)
            );
        var soon = Period.DaysBetween(day, until) <= policies.EndsSoonDays;
        return new ClearanceStanding(
            soon ? ClearanceStatus.EndsSoon : ClearanceStatus.Valid,
            until,
            EndedByBirth: false,
            LetterReminders.On(until, day, policies)
        );
    }

    private static LocalDate WithoutBirth(
        ClearanceLetter letter,
        Pregnancy? pregnancy,
        StageScheme stages,
        StudioPolicies policies
    )
    {
        var last = policies.ClearanceMostDays is { } most
            ? LocalDate.Min(letter.ExpiresOn, letter.IssuedOn.PlusDays(most))
            : letter.ExpiresOn;
        return policies.LetterEndsWithStage && StageEnd(letter, pregnancy, stages) is { } end
            ? LocalDate.Min(last, end)
            : last;
    }

    private static LocalDate? StageEnd(
        ClearanceLetter letter,
        Pregnancy? pregnancy,
        StageScheme stages
    ) =>
        pregnancy is null
            ? null
            : stages
                .Bands(pregnancy)
                .FirstOrDefault(b => b.From <= letter.IssuedOn && !(b.To < letter.IssuedOn))
                ?.To;
}
