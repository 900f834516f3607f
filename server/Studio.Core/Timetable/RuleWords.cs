using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Studio.Core.Pregnancies;

namespace Studio.Core.Timetable;

/// <summary>A rule in plain words.</summary>
public static class RuleWords
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    private static readonly string[] Ordinals =
    [
        "zeroth",
        "first",
        "second",
        "third",
        "fourth",
        "fifth",
    ];

    private static readonly IsoDayOfWeek[] AllDays =
    [
        IsoDayOfWeek.Monday,
        IsoDayOfWeek.Tuesday,
        IsoDayOfWeek.Wednesday,
        IsoDayOfWeek.Thursday,
        IsoDayOfWeek.Friday,
        IsoDayOfWeek.Saturday,
        IsoDayOfWeek.Sunday,
    ];

    /// <summary><c>Every second Tuesday and Thursday at 18:00 until 4 March 2027</c>.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="start">Its first date: what a rule leaves open follows from it.</param>
    /// <param name="at">The hour.</param>
    public static string Of(SeriesRule rule, LocalDate start, LocalTime at)
    {
        var when = rule.Repeats switch
        {
            Repeats.Daily => Daily(rule),
            Repeats.Weekly => Weekly(rule, start),
            Repeats.Monthly => Monthly(rule, start),
            Repeats.Yearly => Yearly(rule, start),
        };
        if (rule.Positions.Count > 0)
            when =
                $"The {And(rule.Positions.Select(Nth))} of these in each {Unit(rule.Repeats)}: {Lower(when)}";
        var ends =
            rule.Until is { } until ? $" until {Wording.Date(until)}"
            : rule.Count is { } count
                ? count == 1 ? ", once"
                    : $", {count} times"
            : "";
        return $"{when} at {Clock.Format(at)}{ends}";
    }

    private static string Daily(SeriesRule rule)
    {
        var days = rule.Days.Count > 0 ? Plain(rule.Days) : null;
        var every = rule.Every switch
        {
            1 => days is null ? "Every day" : $"Every {days}",
            2 => "Every second day",
            _ => $"Every {rule.Every} days",
        };
        if (rule.Every > 1 && days is not null)
            every += $" that is a {Plain(rule.Days, "or")}";
        if (rule.MonthDays.Count > 0)
            every += $" that is the {And(rule.MonthDays.Select(Date), "or")} of a month";
        return every + InMonths(rule);
    }

    private static string Weekly(SeriesRule rule, LocalDate start)
    {
        var on = rule.Days.Count > 0 ? rule.Days : [new RuleDay(start.DayOfWeek)];
        var days = Plain(on);
        return rule.Every switch
            {
                1 => $"Every {days}",
                2 when on.Count < 7 => $"Every second {days}",
                _ => $"Every {Count(rule.Every)} weeks on {days}",
            } + InMonths(rule);
    }

    private static string Monthly(SeriesRule rule, LocalDate start)
    {
        var of = rule.Every switch
        {
            1 => "every month",
            2 => "every second month",
            _ => $"every {Count(rule.Every)} months",
        };
        return $"{Capital(WithinMonth(rule, start))} of {of}{InMonths(rule)}";
    }

    private static string Yearly(SeriesRule rule, LocalDate start)
    {
        var every = rule.Every switch
        {
            1 => "every year",
            2 => "every second year",
            _ => $"every {Count(rule.Every)} years",
        };
        if (rule.YearDays.Count > 0)
            return $"On day {And(rule.YearDays.Select(FromEnd))} of {every}{OnDays(rule)}{InMonths(rule)}";
        if (rule.Weeks.Count > 0)
            return $"On {Plain(rule.Days.Count > 0 ? rule.Days : [new RuleDay(start.DayOfWeek)])} of week {And(rule.Weeks.Select(FromEnd))} of {every}{InMonths(rule)}";
        if (rule.Months.Count == 0 && rule.Days.Count > 0 && rule.MonthDays.Count == 0)
            return rule.Days.All(d => d.Nth is null)
                ? $"Every {Plain(rule.Days)}{(rule.Every == 1 ? "" : $" of {every}")}"
                : $"On {Numbered(rule.Days)} of {every}";
        var months =
            rule.Months.Count > 0 ? rule.Months
            : rule.MonthDays.Count > 0 ? []
            : (IReadOnlyList<int>)[start.Month];
        var name = months.Count > 0 ? And(months.Select(Month)) : "every month";
        return $"{Capital(WithinMonth(rule, start))} of {name}, {every}";
    }

    private static string WithinMonth(SeriesRule rule, LocalDate start)
    {
        if (rule.MonthDays.Count > 0)
            return $"on the {And(rule.MonthDays.Select(Date))}{OnDays(rule)}";
        if (rule.Days.Count == 0)
            return $"on the {Date(start.Day)}";
        return rule.Days.All(d => d.Nth is null)
            ? $"on every {Plain(rule.Days)}"
            : $"on {Numbered(rule.Days)}";
    }

    private static string OnDays(SeriesRule rule) =>
        rule.Days.Count == 0 ? "" : $", when it is a {Plain(rule.Days, "or")},";

    private static string InMonths(SeriesRule rule) =>
        rule.Months.Count == 0 ? "" : $" in {And(rule.Months.Order().Select(Month))}";

    private static string Numbered(IReadOnlyList<RuleDay> days) =>
        And(days.Select(d => d.Nth is { } nth ? $"the {Nth(nth)} {d.Day}" : $"every {d.Day}"));

    private static string Plain(IReadOnlyList<RuleDay> days, string joint = "and")
    {
        var set = AllDays.Where(d => days.Any(x => x.Day == d)).ToList();
        return set.Count == 7 ? "day of the week" : And(set.Select(d => d.ToString()), joint);
    }

    private static string Unit(Repeats repeats) =>
        repeats switch
        {
            Repeats.Daily => "day",
            Repeats.Weekly => "week",
            Repeats.Monthly => "month",
            Repeats.Yearly => "year",
        };

    private static string Nth(int nth) =>
        nth switch
        {
            -1 => "last",
            < -1 => $"{Nth(-nth)} last",
            < 6 => Ordinals[nth],
            _ => Date(nth),
        };

    private static string Date(int day) =>
        day switch
        {
            -1 => "last day",
            < -1 => $"{Nth(-day)} last day",
            11 or 12 or 13 => $"{day}th",
            _ => (day % 10) switch
            {
                1 => $"{day}st",
                2 => $"{day}nd",
                3 => $"{day}rd",
                _ => $"{day}th",
            },
        };

    private static string FromEnd(int number) =>
        number > 0
            ? number.ToString(CultureInfo.InvariantCulture)
            : $"{Math.Abs(number)} from the end";

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Month(int month) =>
        CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month);

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Lower(string words) => char.ToLowerInvariant(words[0]) + words[1..];

    private static string And(IEnumerable<string> words, string joint = "and")
    {
        var list = words.ToList();
        return list.Count < 2
            ? string.Concat(list)
            : $"{string.Join(", ", list.Take(list.Count - 1))} {joint} {list[^1]}";
    }
}
