using System.Text.RegularExpressions;
using NodaTime;

namespace Studio.Core.Pregnancies;

/// <summary>
/// How far along a pregnancy is, in completed days counted from the first day of the last period, or from the
/// day that stands for it by the due date; written <c>24w 3d</c>.
/// </summary>
/// <param name="Days">Completed days; negative before 0w 0d.</param>
public readonly partial record struct GestationalAge(int Days)
{
    /// <summary>Age on the due date, in days: 40w 0d (ACOG, Committee Opinion 700, 2017, Background).</summary>
    public const int AtDueDate = 280;

    /// <summary>37w 0d, in days: the end of preterm (ACOG/SMFM, Committee Opinion 579, 2013, Box 1).</summary>
    public const int AtEarlyTerm = 37 * 7;

    /// <summary>42w 0d, in days: the first day of postterm (ACOG/SMFM, Committee Opinion 579, 2013, Box 1).</summary>
    public const int AtPostterm = 42 * 7;

    /// <summary>44w 0d, in days: the greatest age taken for possible. A limit of our own; no pregnancy is let run so long.</summary>
    public const int Greatest = 44 * 7;

    /// <summary>Completed weeks.</summary>
    public int Weeks => Days / 7;

    /// <summary>Days over the completed weeks, 0 to 6 (negative for a negative age).</summary>
    public int DaysOver => Days % 7;

    /// <summary>Age on a day; for a session, the session's own date where it is held.</summary>
    public static GestationalAge On(LocalDate day, LocalDate dueDate) =>
        new(AtDueDate - Period.DaysBetween(InIso(day), InIso(dueDate)));

    /// <summary>An age of weeks and days. A number too great for any calendar stays too great, and does not wrap.</summary>
    public static GestationalAge Of(int weeks, int days) =>
        new((int)Math.Clamp((weeks * 7L) + days, int.MinValue, int.MaxValue));

    /// <summary>Reads <c>13w6d</c> or <c>13w 6d</c>; weeks 0 to 99, days 0 to 6.</summary>
    public static bool TryParse(string? text, out GestationalAge age)
    {
        var match = Written().Match(text ?? "");
        age = match.Success
            ? Of(int.Parse(match.Groups["weeks"].Value), int.Parse(match.Groups["days"].Value))
            : default;
        return match.Success;
    }

    /// <summary><c>24w 3d</c>; a day before 0w 0d is written with a leading minus.</summary>
    public override string ToString()
    {
        var days = Math.Abs((long)Days);
        return $"{(Days < 0 ? "-" : "")}{days / 7}w {days % 7}d";
    }

    private static LocalDate InIso(LocalDate day) => day.WithCalendar(CalendarSystem.Iso);

    [GeneratedRegex(
        @"\A(?<weeks>[0-9]{1,2})w ?(?<days>[0-6])d\z",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant,
        1000
    )]
    private static partial Regex Written();
}
