using System.Globalization;

namespace Studio.Core.Catalogue;

/// <summary>Which list of contraindications counts.</summary>
public enum Guideline
{
    /// <summary>The more cautious of both, condition by condition.</summary>
    Stricter,

    /// <summary>ACOG's list alone.</summary>
    Acog,

    /// <summary>The Canadian list of 2019 alone.</summary>
    Canada,
}

/// <summary>How "after so many weeks" is read.</summary>
public enum WeekReading
{
    /// <summary>From the first day on which the weeks are complete: 26w 0d.</summary>
    FirstDay,

    /// <summary>Once the following week is over: 27w 0d.</summary>
    WeekLater,
}

/// <summary>What a studio may choose; meanings, allowed values and sources are in <c>policies.csv</c>.</summary>
public sealed record StudioPolicies
{
    /// <summary>Which list of contraindications counts.</summary>
    public Guideline Guideline { get; init; } = Guideline.Stricter;

    /// <summary>Whether everybody needs a letter, or only those who are flagged.</summary>
    public bool ClearanceForEveryone { get; init; } = true;

    /// <summary>The longest a letter counts, in days from its date; null for its own expiry alone.</summary>
    public int? ClearanceMostDays { get; init; } = 365;

    /// <summary>Whether a letter must be as new as what it answers for.</summary>
    public bool LetterFollowsChange { get; init; } = true;

    /// <summary>How many days an answered screening counts.</summary>
    public int ScreeningMostDays { get; init; } = 90;

    /// <summary>How "after so many weeks" is read.</summary>
    public WeekReading WeekReading { get; init; } = WeekReading.FirstDay;

    /// <summary>How far ahead bookings that stop suiting are looked for, in days.</summary>
    public int LookAheadDays { get; init; } = 28;

    /// <summary>How long before a class its waitlist stops moving up, in minutes.</summary>
    public int WaitlistCutOffMinutes { get; init; } = 120;

    /// <summary>How many days ahead a class can be booked.</summary>
    public int BookingAheadDays { get; init; } = 28;

    /// <summary>First day after birth on which impact may suit.</summary>
    public int ImpactAfterBirthDays { get; init; } = 91;

    /// <summary>First day after a caesarean on which more than talk and breath may suit.</summary>
    public int AfterCaesareanDays { get; init; } = 56;

    /// <summary>How many days before its last day a letter is said to end soon.</summary>
    public int EndsSoonDays { get; init; } = 14;

    /// <summary>The codes a value can be given for.</summary>
    public static IReadOnlyList<string> Codes { get; } =
    [
        "guideline",
        "clearance-for-everyone",
        "clearance-most-days",
        "letter-follows-change",
        "screening-most-days",
        "week-reading",
        "look-ahead-days",
        "waitlist-cut-off-minutes",
        "booking-ahead-days",
        "impact-after-birth-days",
        "after-caesarean-days",
        "ends-soon-days",
    ];

    /// <summary>The codes a class rule's day limit may name.</summary>
    public static IReadOnlyList<string> DayLimits { get; } =
    ["impact-after-birth-days", "after-caesarean-days"];

    /// <summary>These policies with one value changed, or why it cannot be; allowed ranges are the rule book's to check.</summary>
    public Answer<StudioPolicies> With(string code, string value)
    {
        var days = int.TryParse(
            value,
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var number
        )
            ? number
            : (int?)null;
        var changed = (code, value, days) switch
        {
            ("guideline", "stricter", _) => this with { Guideline = Guideline.Stricter },
            ("guideline", "acog", _) => this with { Guideline = Guideline.Acog },
            ("guideline", "canada", _) => this with { Guideline = Guideline.Canada },
            ("clearance-for-everyone", "yes" or "no", _) => this with
            {
                ClearanceForEveryone = value == "yes",
            },
            ("clearance-most-days", "none", _) => this with { ClearanceMostDays = null },
            ("clearance-most-days", _, { } n) => this with { ClearanceMostDays = n },
            ("letter-follows-change", "yes" or "no", _) => this with
            {
                LetterFollowsChange = value == "yes",
            },
            ("screening-most-days", _, { } n) => this with { ScreeningMostDays = n },
            ("week-reading", "first-day", _) => this with { WeekReading = WeekReading.FirstDay },
            ("week-reading", "week-later", _) => this with { WeekReading = WeekReading.WeekLater },
            ("look-ahead-days", _, { } n) => this with { LookAheadDays = n },
            ("waitlist-cut-off-minutes", _, { } n) => this with { WaitlistCutOffMinutes = n },
            ("booking-ahead-days", _, { } n) => this with { BookingAheadDays = n },
            ("impact-after-birth-days", _, { } n) => this with { ImpactAfterBirthDays = n },
            ("after-caesarean-days", _, { } n) => this with { AfterCaesareanDays = n },
            ("ends-soon-days", _, { } n) => this with { EndsSoonDays = n },
            _ => null,
        };
        if (changed is not null)
            return changed;
        return Codes.Contains(code, StringComparer.Ordinal)
            ? new Refusal(
                RefusalKind.Invalid,
                "policy-value",
                $"\"{value}\" is not a value of {code}.",
                "value"
            )
            : new Refusal(
                RefusalKind.Invalid,
                "policy-unknown",
                $"There is no policy \"{code}\".",
                "code"
            );
    }

    /// <summary>The number of days a day-limit policy stands at.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The code is none of <see cref="DayLimits"/>.</exception>
    public int DaysOf(string code) =>
        code switch
        {
            "impact-after-birth-days" => ImpactAfterBirthDays,
            "after-caesarean-days" => AfterCaesareanDays,
            _ => throw new ArgumentOutOfRangeException(
                nameof(code),
                code,
                "Not a number of days since birth."
            ),
        };
}
