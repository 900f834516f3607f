using System.Globalization;
using NodaTime;
using NodaTime.Calendars;

namespace Studio.Core.Staff;

/// <summary>A session of hers as far as her hours go.</summary>
/// <param name="On">Its own date, where it is held.</param>
/// <param name="Minutes">Its length.</param>
/// <param name="IsHeld">It is over; otherwise it is still to come.</param>
public sealed record TaughtSession(LocalDate On, int Minutes, bool IsHeld);

/// <summary>What was taught in a week or a month, and what is still to come in it.</summary>
/// <param name="Name"><c>2026-W10</c> (ISO 8601) or <c>2026-03</c>.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="HeldMinutes">Taught.</param>
/// <param name="HeldSessions">Sessions taught.</param>
/// <param name="AheadMinutes">Still to come.</param>
/// <param name="AheadSessions">Sessions still to come.</param>
public sealed record HoursOf(
    string Name,
    LocalDate From,
    LocalDate To,
    int HeldMinutes,
    int HeldSessions,
    int AheadMinutes,
    int AheadSessions
);

/// <summary>
/// Hours by ISO week and by month, across all locations: each session counts on its own date, where it is held, so that
/// one at 23:30 in one zone never slips into another's day.
/// </summary>
public static class TaughtHours
{
    /// <summary>Every week that has a day in the span, whole, the earliest first.</summary>
    public static IReadOnlyList<HoursOf> Weeks(
        IReadOnlyCollection<TaughtSession> sessions,
        LocalDate from,
        LocalDate to
    )
    {
        var weeks = new List<HoursOf>();
        for (var monday = MondayOf(from); monday <= to; monday = monday.PlusDays(7))
            weeks.Add(Of(NameOfWeek(monday), monday, monday.PlusDays(6), sessions));
        return weeks;
    }

    /// <summary>Every month that has a day in the span, whole, the earliest first.</summary>
    public static IReadOnlyList<HoursOf> Months(
        IReadOnlyCollection<TaughtSession> sessions,
        LocalDate from,
        LocalDate to
    )
    {
        var months = new List<HoursOf>();
        for (
            var first = from.With(DateAdjusters.StartOfMonth);
            first <= to;
            first = first.PlusMonths(1)
        )
            months.Add(
                Of(
                    first.ToString("uuuu-MM", CultureInfo.InvariantCulture),
                    first,
                    first.With(DateAdjusters.EndOfMonth),
                    sessions
                )
            );
        return months;
    }

    /// <summary>The days that all those weeks and months together cover.</summary>
    public static (LocalDate From, LocalDate To) Covered(LocalDate from, LocalDate to) =>
        (
            LocalDate.Min(MondayOf(from), from.With(DateAdjusters.StartOfMonth)),
            LocalDate.Max(MondayOf(to).PlusDays(6), to.With(DateAdjusters.EndOfMonth))
        );

    /// <summary>The Monday of a date's ISO week.</summary>
    public static LocalDate MondayOf(LocalDate day) =>
        day.With(DateAdjusters.PreviousOrSame(IsoDayOfWeek.Monday));

    private static string NameOfWeek(LocalDate day) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{WeekYearRules.Iso.GetWeekYear(day):0000}-W{WeekYearRules.Iso.GetWeekOfWeekYear(day):00}"
        );

    private static HoursOf Of(
        string name,
        LocalDate from,
        LocalDate to,
        IEnumerable<TaughtSession> sessions
    )
    {
        var within = sessions.Where(s => from <= s.On && s.On <= to).ToLookup(s => s.IsHeld);
        return new HoursOf(
            name,
            from,
            to,
            within[true].Sum(s => s.Minutes),
            within[true].Count(),
            within[false].Sum(s => s.Minutes),
            within[false].Count()
        );
    }
}
