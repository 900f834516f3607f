using Studio.Core.Cover;

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

/// <summary>From when on nothing is done flat on the back.</summary>
public enum SupineFrom
{
    /// <summary>14w 0d.</summary>
    Week14,

    /// <summary>16w 0d.</summary>
    Week16,

    /// <summary>20w 0d.</summary>
    Week20,

    /// <summary>28w 0d.</summary>
    Week28,

    /// <summary>No week: only what makes her light-headed.</summary>
    Symptoms,
}

/// <summary>Whether a new stage asks for the health questions again.</summary>
public enum ScreeningAtStage
{
    /// <summary>No.</summary>
    No,

    /// <summary>She is asked; her bookings stand meanwhile.</summary>
    Asked,

    /// <summary>No class past the boundary until she has answered on the other side of it.</summary>
    Needed,
}

/// <summary>How heavy a pregnant client lifts.</summary>
public enum Lifting
{
    /// <summary>No heavy weights.</summary>
    Light,

    /// <summary>The published limits for lifting at work.</summary>
    ByWeight,

    /// <summary>What she can breathe with.</summary>
    BySymptoms,
}

/// <summary>What heaviness or leaking below rules out.</summary>
public enum ProlapseWork
{
    /// <summary>Impact, heavy weights and curling up.</summary>
    Avoid,

    /// <summary>Only what brings symptoms.</summary>
    BySymptoms,
}

/// <summary>Whether a pregnant client may be in a warm room.</summary>
public enum WarmRoom
{
    /// <summary>No.</summary>
    Avoid,

    /// <summary>As far as it was measured.</summary>
    Measured,
}

/// <summary>Which published figure bounds a pregnant client's heart rate.</summary>
public enum HeartRatePolicy
{
    /// <summary>The Canadian moderate band, cut off at ACOG's usual cap.</summary>
    Stricter,

    /// <summary>The Canadian moderate band alone.</summary>
    Canada,

    /// <summary>ACOG's usual cap alone; it has no lower end.</summary>
    AcogCap,
}

/// <summary>Which band the one age counts to that the published table leaves out.</summary>
public enum HeartRate29
{
    /// <summary>The lower band, of those who are older.</summary>
    Older,

    /// <summary>The higher band, of those who are younger.</summary>
    Younger,
}

/// <summary>What a studio may choose; meanings, allowed values and sources are in <c>policies.csv</c>.</summary>
public sealed partial record StudioPolicies
{
    /// <summary>Which list of contraindications counts.</summary>
    public Guideline Guideline { get; init; } = Guideline.Stricter;

    /// <summary>Whether everybody needs a letter, or only those who are flagged.</summary>
    public bool ClearanceForEveryone { get; init; } = true;

    /// <summary>The longest a letter counts, in days from its date; null for its own expiry alone.</summary>
    public int? ClearanceMostDays { get; init; } = 365;

    /// <summary>Whether a letter must be as new as what it answers for.</summary>
    public bool LetterFollowsChange { get; init; } = true;

    /// <summary>Whether a letter ends with the stage it was written in.</summary>
    public bool LetterEndsWithStage { get; init; }

    /// <summary>How many days an answered screening counts.</summary>
    public int ScreeningMostDays { get; init; } = 90;

    /// <summary>Whether a new stage asks for the questions again.</summary>
    public ScreeningAtStage ScreeningAtStage { get; init; } = ScreeningAtStage.Asked;

    /// <summary>Whether she is asked each week if anything has changed.</summary>
    public bool AsksEachWeek { get; init; } = true;

    /// <summary>How "after so many weeks" is read.</summary>
    public WeekReading WeekReading { get; init; } = WeekReading.FirstDay;

    /// <summary>How far ahead bookings that stop suiting are looked for, in days.</summary>
    public int LookAheadDays { get; init; } = 28;

    /// <summary>For how many hours a seat named in a suggested move is kept for her.</summary>
    public int MoveHoldHours { get; init; } = 24;

    /// <summary>Who settles cover.</summary>
    public CoverSettles CoverSettles { get; init; } = CoverSettles.Owner;

    /// <summary>How long before a class its waitlist stops moving up, in minutes.</summary>
    public int WaitlistCutOffMinutes { get; init; } = 120;

    /// <summary>Whether a class can be booked only with a pass that pays for it.</summary>
    public bool PassesNeeded { get; init; }

    /// <summary>Until how many hours before a class cancelling gives the credit back.</summary>
    public int CancelFreeHours { get; init; } = 12;

    /// <summary>How many weeks before the due date a pass stops running.</summary>
    public int PassStopsBeforeDueWeeks { get; init; } = 2;

    /// <summary>How many weeks after the birth a pass begins to run again.</summary>
    public int PassStopsAfterBirthWeeks { get; init; } = 12;

    /// <summary>How many days ahead a class can be booked.</summary>
    public int BookingAheadDays { get; init; } = 28;

    /// <summary>First day after birth on which impact may suit.</summary>
    public int ImpactAfterBirthDays { get; init; } = 91;

    /// <summary>First day after a caesarean on which more than talk and breath may suit.</summary>
    public int AfterCaesareanDays { get; init; } = 56;

    /// <summary>For how many days after a birth nothing is asked of her.</summary>
    public int QuietAfterBirthDays { get; init; } = 42;

    /// <summary>How many days before its last day a letter is said to end soon.</summary>
    public int EndsSoonDays { get; init; } = 14;

    /// <summary>How many days before a letter's last day she is first reminded of it.</summary>
    public int LetterFirstReminderDays { get; init; } = 28;

    /// <summary>How many days before a letter's last day she is reminded for the last time.</summary>
    public int LetterLastReminderDays { get; init; } = 3;

    /// <summary>Which published figure bounds a pregnant client's heart rate.</summary>
    public HeartRatePolicy HeartRate { get; init; } = HeartRatePolicy.Stricter;

    /// <summary>Which band an age of 29 counts to.</summary>
    public HeartRate29 HeartRate29 { get; init; } = HeartRate29.Older;

    /// <summary>From when on nothing is done flat on the back.</summary>
    public SupineFrom SupineFrom { get; init; } = SupineFrom.Week14;

    /// <summary>The most effort, of 10, asked of a pregnant client in any movement.</summary>
    public int EffortMost { get; init; } = 6;

    /// <summary>How heavy a pregnant client lifts.</summary>
    public Lifting Lifting { get; init; } = Lifting.Light;

    /// <summary>What heaviness or leaking below rules out.</summary>
    public ProlapseWork ProlapseWork { get; init; } = ProlapseWork.Avoid;

    /// <summary>Whether a pregnant client may be in a warm room.</summary>
    public WarmRoom WarmRoom { get; init; } = WarmRoom.Avoid;

    /// <summary>The largest share of a plan's minutes, in percent, that may be left out before the class does not suit.</summary>
    public int LeftOutMostPercent { get; init; } = 50;

    /// <summary>How many weeks ahead the sessions of a series are laid out.</summary>
    public int TimetableAheadWeeks { get; init; } = 6;

    /// <summary>Least hours of rest between two days' teaching, for whom no other bound was set.</summary>
    public int RestHoursLeast { get; init; } = 11;

    /// <summary>How many years a health record is kept after an erasure was asked for; 0 for not at all.</summary>
    public int HealthKeptYears { get; init; } = 10;

    /// <summary>How many years contact details and bookings are kept after an erasure was asked for; 0 for not at all.</summary>
    public int ContactKeptYears { get; init; } = 3;

    /// <summary>The hour from which no message goes out, by the clock where she usually comes to.</summary>
    public int MailQuietFrom { get; init; } = 21;

    /// <summary>The hour at which messages go out again; the same as the other for no quiet hours.</summary>
    public int MailQuietUntil { get; init; } = 8;

    /// <summary>How many messages one person is sent within 24 hours.</summary>
    public int MailMostADay { get; init; } = 12;

    /// <summary>The codes a value can be given for.</summary>
    public static IReadOnlyList<string> Codes { get; } =
    [
        "guideline",
        "clearance-for-everyone",
        "clearance-most-days",
        "letter-follows-change",
        "letter-ends-with-stage",
        "screening-most-days",
        "screening-at-stage",
        "anything-changed",
        "week-reading",
        "look-ahead-days",
        "move-hold-hours",
        "cover-settles",
        "waitlist-cut-off-minutes",
        "passes-needed",
        "cancel-free-hours",
        "pass-stops-before-due-weeks",
        "pass-stops-after-birth-weeks",
        "booking-ahead-days",
        "impact-after-birth-days",
        "after-caesarean-days",
        "quiet-after-birth-days",
        "ends-soon-days",
        "letter-first-reminder-days",
        "letter-last-reminder-days",
        "supine-from",
        "effort-most",
        "lifting",
        "prolapse-work",
        "warm-room",
        "left-out-most-percent",
        "heart-rate",
        "heart-rate-29",
        "timetable-ahead-weeks",
        "rest-hours-least",
        "health-kept-years",
        "contact-kept-years",
        "mail-quiet-from",
        "mail-quiet-until",
        "mail-most-a-day",
    ];

    /// <summary>The codes a class rule's day limit may name.</summary>
    public static IReadOnlyList<string> DayLimits { get; } =
    ["impact-after-birth-days", "after-caesarean-days"];

    /// <summary>The codes a movement rule's effort limit may name.</summary>
    public static IReadOnlyList<string> EffortLimits { get; } = ["effort-most"];
}
