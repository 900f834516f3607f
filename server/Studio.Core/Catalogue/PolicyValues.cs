using System.Globalization;
using Studio.Core.Cover;

namespace Studio.Core.Catalogue;

/// <summary>Policies by code and value, as a rule, a table or a person writes them.</summary>
public sealed partial record StudioPolicies
{
    private static readonly Dictionary<Guideline, string> Guidelines = new()
    {
        [Guideline.Stricter] = "stricter",
        [Guideline.Acog] = "acog",
        [Guideline.Canada] = "canada",
    };

    private static readonly Dictionary<WeekReading, string> WeekReadings = new()
    {
        [WeekReading.FirstDay] = "first-day",
        [WeekReading.WeekLater] = "week-later",
    };

    private static readonly Dictionary<SupineFrom, string> Weeks = new()
    {
        [SupineFrom.Week14] = "14w0d",
        [SupineFrom.Week16] = "16w0d",
        [SupineFrom.Week20] = "20w0d",
        [SupineFrom.Week28] = "28w0d",
        [SupineFrom.Symptoms] = "symptoms",
    };

    private static readonly Dictionary<Lifting, string> Liftings = new()
    {
        [Lifting.Light] = "light",
        [Lifting.ByWeight] = "by-weight",
        [Lifting.BySymptoms] = "by-symptoms",
    };

    private static readonly Dictionary<ProlapseWork, string> ProlapseWorks = new()
    {
        [ProlapseWork.Avoid] = "avoid",
        [ProlapseWork.BySymptoms] = "by-symptoms",
    };

    private static readonly Dictionary<ScreeningAtStage, string> AtStages = new()
    {
        [ScreeningAtStage.No] = "no",
        [ScreeningAtStage.Asked] = "asked",
        [ScreeningAtStage.Needed] = "needed",
    };

    private static readonly Dictionary<WarmRoom, string> WarmRooms = new()
    {
        [WarmRoom.Avoid] = "avoid",
        [WarmRoom.Measured] = "measured",
    };

    private static readonly Dictionary<HeartRatePolicy, string> HeartRates = new()
    {
        [HeartRatePolicy.Stricter] = "stricter",
        [HeartRatePolicy.Canada] = "canada",
        [HeartRatePolicy.AcogCap] = "acog-cap",
    };

    private static readonly Dictionary<HeartRate29, string> HeartRates29 = new()
    {
        [HeartRate29.Older] = "older",
        [HeartRate29.Younger] = "younger",
    };

    private static readonly Dictionary<CoverSettles, string> Settling = new()
    {
        [CoverSettles.Owner] = "owner",
        [CoverSettles.Instructors] = "instructors",
    };

    /// <summary>These policies with one value changed, or why it cannot be; allowed ranges are the rule book's to check.</summary>
    public Answer<StudioPolicies> With(string code, string value)
    {
        if (!Codes.Contains(code, StringComparer.Ordinal))
            return new Refusal(
                RefusalKind.Invalid,
                "policy-unknown",
                $"There is no policy \"{code}\".",
                "code"
            );
        var days = int.TryParse(
            value,
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var number
        )
            ? number
            : (int?)null;
        var changed = (days is { } n ? WithNumber(code, n) : null) ?? WithWord(code, value);
        return changed is not null
            ? changed
            : new Refusal(
                RefusalKind.Invalid,
                "policy-value",
                $"\"{value}\" is not a value of {code}.",
                "value"
            );
    }

    /// <summary>The value a policy stands at, as <see cref="With"/> would be given it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such policy.</exception>
    public string ValueOf(string code) =>
        code switch
        {
            "guideline" => Guidelines[Guideline],
            "clearance-for-everyone" => ClearanceForEveryone ? "yes" : "no",
            "clearance-most-days" => ClearanceMostDays is { } most ? Text(most) : "none",
            "letter-follows-change" => LetterFollowsChange ? "yes" : "no",
            "letter-ends-with-stage" => LetterEndsWithStage ? "yes" : "no",
            "screening-most-days" => Text(ScreeningMostDays),
            "screening-at-stage" => AtStages[ScreeningAtStage],
            "anything-changed" => AsksEachWeek ? "weekly" : "no",
            "week-reading" => WeekReadings[WeekReading],
            "look-ahead-days" => Text(LookAheadDays),
            "move-hold-hours" => Text(MoveHoldHours),
            "cover-settles" => Settling[CoverSettles],
            "waitlist-cut-off-minutes" => Text(WaitlistCutOffMinutes),
            "passes-needed" => PassesNeeded ? "yes" : "no",
            "cancel-free-hours" => Text(CancelFreeHours),
            "pass-stops-before-due-weeks" => Text(PassStopsBeforeDueWeeks),
            "pass-stops-after-birth-weeks" => Text(PassStopsAfterBirthWeeks),
            "booking-ahead-days" => Text(BookingAheadDays),
            "impact-after-birth-days" => Text(ImpactAfterBirthDays),
            "after-caesarean-days" => Text(AfterCaesareanDays),
            "quiet-after-birth-days" => Text(QuietAfterBirthDays),
            "ends-soon-days" => Text(EndsSoonDays),
            "letter-first-reminder-days" => Text(LetterFirstReminderDays),
            "letter-last-reminder-days" => Text(LetterLastReminderDays),
            "supine-from" => Weeks[SupineFrom],
            "effort-most" => Text(EffortMost),
            "lifting" => Liftings[Lifting],
            "prolapse-work" => ProlapseWorks[ProlapseWork],
            "warm-room" => WarmRooms[WarmRoom],
            "left-out-most-percent" => Text(LeftOutMostPercent),
            "heart-rate" => HeartRates[HeartRate],
            "heart-rate-29" => HeartRates29[HeartRate29],
            "timetable-ahead-weeks" => Text(TimetableAheadWeeks),
            "rest-hours-least" => Text(RestHoursLeast),
            "health-kept-years" => Text(HealthKeptYears),
            "contact-kept-years" => Text(ContactKeptYears),
            "mail-quiet-from" => Text(MailQuietFrom),
            "mail-quiet-until" => Text(MailQuietUntil),
            "mail-most-a-day" => Text(MailMostADay),
            _ => throw new ArgumentOutOfRangeException(nameof(code), code, "No such policy."),
        };

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

    /// <summary>The effort, of 10, an effort-limit policy stands at.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The code is none of <see cref="EffortLimits"/>.</exception>
    public int EffortOf(string code) =>
        code == "effort-most"
            ? EffortMost
            : throw new ArgumentOutOfRangeException(nameof(code), code, "Not an effort.");

    private StudioPolicies? WithNumber(string code, int n) =>
        code switch
        {
            "clearance-most-days" => this with { ClearanceMostDays = n },
            "screening-most-days" => this with { ScreeningMostDays = n },
            "look-ahead-days" => this with { LookAheadDays = n },
            "move-hold-hours" => this with { MoveHoldHours = n },
            "waitlist-cut-off-minutes" => this with { WaitlistCutOffMinutes = n },
            "cancel-free-hours" => this with { CancelFreeHours = n },
            "pass-stops-before-due-weeks" => this with { PassStopsBeforeDueWeeks = n },
            "pass-stops-after-birth-weeks" => this with { PassStopsAfterBirthWeeks = n },
            "booking-ahead-days" => this with { BookingAheadDays = n },
            "impact-after-birth-days" => this with { ImpactAfterBirthDays = n },
            "after-caesarean-days" => this with { AfterCaesareanDays = n },
            "quiet-after-birth-days" => this with { QuietAfterBirthDays = n },
            "ends-soon-days" => this with { EndsSoonDays = n },
            "letter-first-reminder-days" => this with { LetterFirstReminderDays = n },
            "letter-last-reminder-days" => this with { LetterLastReminderDays = n },
            "effort-most" => this with { EffortMost = n },
            "left-out-most-percent" => this with { LeftOutMostPercent = n },
            "timetable-ahead-weeks" => this with { TimetableAheadWeeks = n },
            "rest-hours-least" => this with { RestHoursLeast = n },
            "health-kept-years" => this with { HealthKeptYears = n },
            "contact-kept-years" => this with { ContactKeptYears = n },
            "mail-quiet-from" => this with { MailQuietFrom = n },
            "mail-quiet-until" => this with { MailQuietUntil = n },
            "mail-most-a-day" => this with { MailMostADay = n },
            _ => null,
        };

    private StudioPolicies? WithWord(string code, string value) =>
        (code, value) switch
        {
            ("guideline", _) when KeyOf(Guidelines, value) is { } one => this with
            {
                Guideline = one,
            },
            ("week-reading", _) when KeyOf(WeekReadings, value) is { } one => this with
            {
                WeekReading = one,
            },
            ("screening-at-stage", _) when KeyOf(AtStages, value) is { } one => this with
            {
                ScreeningAtStage = one,
            },
            ("anything-changed", "weekly" or "no") => this with
            {
                AsksEachWeek = value == "weekly",
            },
            ("supine-from", _) when KeyOf(Weeks, value) is { } one => this with
            {
                SupineFrom = one,
            },
            ("lifting", _) when KeyOf(Liftings, value) is { } one => this with { Lifting = one },
            ("prolapse-work", _) when KeyOf(ProlapseWorks, value) is { } one => this with
            {
                ProlapseWork = one,
            },
            ("warm-room", _) when KeyOf(WarmRooms, value) is { } one => this with
            {
                WarmRoom = one,
            },
            ("cover-settles", _) when KeyOf(Settling, value) is { } one => this with
            {
                CoverSettles = one,
            },
            ("heart-rate", _) when KeyOf(HeartRates, value) is { } one => this with
            {
                HeartRate = one,
            },
            ("heart-rate-29", _) when KeyOf(HeartRates29, value) is { } one => this with
            {
                HeartRate29 = one,
            },
            ("clearance-for-everyone", "yes" or "no") => this with
            {
                ClearanceForEveryone = value == "yes",
            },
            ("passes-needed", "yes" or "no") => this with { PassesNeeded = value == "yes" },
            ("clearance-most-days", "none") => this with { ClearanceMostDays = null },
            ("letter-follows-change", "yes" or "no") => this with
            {
                LetterFollowsChange = value == "yes",
            },
            ("letter-ends-with-stage", "yes" or "no") => this with
            {
                LetterEndsWithStage = value == "yes",
            },
            _ => null,
        };

    private static T? KeyOf<T>(Dictionary<T, string> words, string word)
        where T : struct
    {
        foreach (var (key, value) in words)
            if (value == word)
                return key;
        return null;
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
