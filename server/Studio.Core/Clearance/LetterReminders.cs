using NodaTime;
using Studio.Core.Catalogue;

namespace Studio.Core.Clearance;

/// <summary>How pressing it is that a letter which counts will end.</summary>
public enum LetterReminder
{
    /// <summary>Not yet worth a word.</summary>
    None,

    /// <summary>Four weeks ahead: time to ask her clinician.</summary>
    First,

    /// <summary>Two weeks ahead: soon.</summary>
    Soon,

    /// <summary>Three days ahead: now.</summary>
    Last,
}

/// <summary>When she is reminded that her letter ends.</summary>
public static class LetterReminders
{
    /// <summary>The reminder that holds on a day; the loudest whose day has come, whatever order a studio puts them in.</summary>
    /// <param name="until">The last day her letter counts.</param>
    /// <param name="today">Today at her location.</param>
    /// <param name="policies">The policies in force.</param>
    public static LetterReminder On(LocalDate until, LocalDate today, StudioPolicies policies)
    {
        var days = Period.DaysBetween(today, until);
        return days < 0 ? LetterReminder.None
            : days <= policies.LetterLastReminderDays ? LetterReminder.Last
            : days <= policies.EndsSoonDays ? LetterReminder.Soon
            : days <= policies.LetterFirstReminderDays ? LetterReminder.First
            : LetterReminder.None;
    }
}
