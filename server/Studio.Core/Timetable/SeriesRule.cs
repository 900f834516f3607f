using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Studio.Core.Timetable;

/// <summary>What a rule counts in.</summary>
public enum Repeats
{
    /// <summary>Days.</summary>
    Daily,

    /// <summary>Weeks.</summary>
    Weekly,

    /// <summary>Months.</summary>
    Monthly,

    /// <summary>Years.</summary>
    Yearly,
}

/// <summary>A weekday of a rule; with a number, that one of the month or the year, from its end when it is negative.</summary>
public sealed record RuleDay(IsoDayOfWeek Day, int? Nth = null);

/// <summary>
/// The rule of a series: whatever RFC 5545 allows for dates. The hour is the series's own, so the rule has none, and its
/// end is a date.
/// </summary>
public sealed record SeriesRule
{
    /// <summary>Most dates a rule may count to.</summary>
    public const int MostCounted = 1000;

    private const int MostBetween = 366;
    private const int MostLetters = 500;

    private static readonly LocalDatePattern Basic = LocalDatePattern.CreateWithInvariantCulture(
        "uuuuMMdd"
    );

    private static readonly LocalDateTimePattern BasicTime =
        LocalDateTimePattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmss");

    private static readonly Dictionary<string, IsoDayOfWeek> Weekdays = new(StringComparer.Ordinal)
    {
        ["MO"] = IsoDayOfWeek.Monday,
        ["TU"] = IsoDayOfWeek.Tuesday,
        ["WE"] = IsoDayOfWeek.Wednesday,
        ["TH"] = IsoDayOfWeek.Thursday,
        ["FR"] = IsoDayOfWeek.Friday,
        ["SA"] = IsoDayOfWeek.Saturday,
        ["SU"] = IsoDayOfWeek.Sunday,
    };

    private SeriesRule() { }

    /// <summary>What it counts in.</summary>
    public required Repeats Repeats { get; init; }

    /// <summary>Every so many of them.</summary>
    public int Every { get; init; } = 1;

    /// <summary>Its last day, when it ends on one.</summary>
    public LocalDate? Until { get; init; }

    /// <summary>How many dates it gives, when it counts them.</summary>
    public int? Count { get; init; }

    /// <summary>BYDAY.</summary>
    public IReadOnlyList<RuleDay> Days { get; init; } = [];

    /// <summary>BYMONTHDAY; negative ones from the month's end.</summary>
    public IReadOnlyList<int> MonthDays { get; init; } = [];

    /// <summary>BYYEARDAY.</summary>
    public IReadOnlyList<int> YearDays { get; init; } = [];

    /// <summary>BYWEEKNO.</summary>
    public IReadOnlyList<int> Weeks { get; init; } = [];

    /// <summary>BYMONTH.</summary>
    public IReadOnlyList<int> Months { get; init; } = [];

    /// <summary>BYSETPOS.</summary>
    public IReadOnlyList<int> Positions { get; init; } = [];

    /// <summary>WKST: which day a week begins on.</summary>
    public IsoDayOfWeek WeekStart { get; init; } = IsoDayOfWeek.Monday;

    /// <summary>The rule as it is kept: RFC 5545, an end as a date.</summary>
    public string Text
    {
        get
        {
            var parts = new List<string> { $"FREQ={Repeats.ToString().ToUpperInvariant()}" };
            if (Every > 1)
                parts.Add($"INTERVAL={Every}");
            if (Until is { } until)
                parts.Add($"UNTIL={Basic.Format(until)}");
            if (Count is { } count)
                parts.Add($"COUNT={count}");
            Listed("BYMONTH", Months);
            Listed("BYWEEKNO", Weeks);
            Listed("BYYEARDAY", YearDays);
            Listed("BYMONTHDAY", MonthDays);
            if (Days.Count > 0)
                parts.Add($"BYDAY={string.Join(',', Days.Select(d => $"{d.Nth}{CodeOf(d.Day)}"))}");
            Listed("BYSETPOS", Positions);
            if (WeekStart != IsoDayOfWeek.Monday)
                parts.Add($"WKST={CodeOf(WeekStart)}");
            return string.Join(';', parts);

            void Listed(string name, IReadOnlyList<int> values)
            {
                if (values.Count > 0)
                    parts.Add($"{name}={string.Join(',', values)}");
            }
        }
    }

    /// <summary>A rule that was kept.</summary>
    /// <exception cref="InvalidOperationException">It was not written by <see cref="Text"/>.</exception>
    public static SeriesRule Kept(string text) =>
        Read(text, LocalTime.Midnight, DateTimeZone.Utc).TryGet(out var rule, out var refusal)
            ? rule
            : throw new InvalidOperationException($"A kept rule cannot be read: {refusal.Message}");

    /// <summary>Reads a rule; whatever is wrong with it is said.</summary>
    /// <param name="text">RFC 5545, with or without RRULE: before it.</param>
    /// <param name="at">The hour of the series: an UNTIL with a time is the last date whose class begins by then.</param>
    /// <param name="zone">The zone of that hour.</param>
    public static Answer<SeriesRule> Read(string text, LocalTime at, DateTimeZone zone)
    {
        if (text.Length > MostLetters)
            return SeriesRefusals.BadRule($"A rule has {MostLetters} letters at most.");
        text = text.Trim().ToUpperInvariant();
        if (text.StartsWith("RRULE:", StringComparison.Ordinal))
            text = text[6..];
        var parts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var part in text.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            if (part.Split('=') is not [var name, { Length: > 0 } value])
                return SeriesRefusals.BadRule(
                    $"\"{part}\" is not a part of a rule; one is written NAME=value."
                );
            if (!parts.TryAdd(name, value))
                return SeriesRefusals.BadRule($"{name} stands in the rule twice.");
        }

        if (!parts.Remove("FREQ", out var frequency))
            return SeriesRefusals.BadRule(
                "The rule does not say how often: FREQ is missing (DAILY, WEEKLY, MONTHLY or YEARLY)."
            );
        if (frequency is "SECONDLY" or "MINUTELY" or "HOURLY")
            return SeriesRefusals.WithinADay($"FREQ={frequency}");
        if (
            new[] { "BYHOUR", "BYMINUTE", "BYSECOND" }.FirstOrDefault(parts.ContainsKey) is
            { } within
        )
            return SeriesRefusals.WithinADay(within);
        if (
            !Enum.TryParse<Repeats>(frequency, ignoreCase: true, out var repeats)
            || char.IsDigit(frequency[0])
        )
            return SeriesRefusals.BadRule(
                $"FREQ={frequency} is not known; it is DAILY, WEEKLY, MONTHLY or YEARLY."
            );

        var rule = new SeriesRule { Repeats = repeats };
        foreach (var (name, value) in parts)
        {
            if (!Part(rule, name, value, at, zone).TryGet(out var next, out var refusal))
                return refusal;
            rule = next;
        }

        return Whole(rule) is { } wrong ? SeriesRefusals.BadRule(wrong) : rule;
    }

    /// <summary>The dates it gives from its start to a last day, in order.</summary>
    /// <param name="start">The day it counts from.</param>
    /// <param name="from">The first day that is of interest.</param>
    /// <param name="to">The last.</param>
    public IEnumerable<LocalDate> Dates(LocalDate start, LocalDate from, LocalDate to) =>
        Recurrence
            .Instances(Text, start.AtMidnight(), DateTimeZone.Utc, to.AtMidnight())
            .Select(i => i.Date)
            .Where(d => d >= from);

    /// <summary>The first date it gives from a day on, its weeks, months and years counted from that day; null: none in ten years.</summary>
    public LocalDate? First(LocalDate start)
    {
        foreach (var date in Dates(start, start, start.PlusYears(10)))
            return date;
        return null;
    }

    private static Answer<SeriesRule> Part(
        SeriesRule rule,
        string name,
        string value,
        LocalTime at,
        DateTimeZone zone
    ) =>
        name switch
        {
            "INTERVAL" => Number(name, value, 1, MostBetween, n => rule with { Every = n }),
            "COUNT" => Number(name, value, 1, MostCounted, n => rule with { Count = n }),
            "UNTIL" => LastDay(value, at, zone) is { } until
                ? rule with
                {
                    Until = until,
                }
                : SeriesRefusals.BadRule(
                    $"UNTIL={value} is no date; it is written 20270304, or 20270304T180000Z for a moment in UTC."
                ),
            "BYMONTH" => Numbers(name, value, 12, false, l => rule with { Months = l }),
            "BYWEEKNO" => Numbers(name, value, 53, true, l => rule with { Weeks = l }),
            "BYYEARDAY" => Numbers(name, value, 366, true, l => rule with { YearDays = l }),
            "BYMONTHDAY" => Numbers(name, value, 31, true, l => rule with { MonthDays = l }),
            "BYSETPOS" => Numbers(name, value, 366, true, l => rule with { Positions = l }),
            "BYDAY" => ByDay(rule, value),
            "WKST" when Weekdays.TryGetValue(value, out var day) => rule with { WeekStart = day },
            "WKST" => SeriesRefusals.BadRule($"WKST={value} is no weekday; it is MO to SU."),
            _ => SeriesRefusals.BadRule($"{name} is no part of a rule of RFC 5545."),
        };

    private static Answer<SeriesRule> Number(
        string name,
        string value,
        int least,
        int most,
        Func<int, SeriesRule> with
    ) =>
        int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number >= least
        && number <= most
            ? with(number)
            : SeriesRefusals.BadRule($"{name}={value}: a number from {least} to {most} goes here.");

    private static Answer<SeriesRule> Numbers(
        string name,
        string value,
        int most,
        bool fromTheEnd,
        Func<IReadOnlyList<int>, SeriesRule> with
    )
    {
        var numbers = new List<int>();
        foreach (var one in value.Split(','))
        {
            if (
                !int.TryParse(
                    one,
                    NumberStyles.AllowLeadingSign,
                    CultureInfo.InvariantCulture,
                    out var number
                )
                || number == 0
                || Math.Abs(number) > most
                || (number < 0 && !fromTheEnd)
            )
                return SeriesRefusals.BadRule(
                    fromTheEnd
                        ? $"{name}={one}: a number from 1 to {most}, or from -{most} to -1, goes here."
                        : $"{name}={one}: a number from 1 to {most} goes here."
                );
            numbers.Add(number);
        }

        return with([.. numbers.Distinct()]);
    }

    private static Answer<SeriesRule> ByDay(SeriesRule rule, string value)
    {
        var days = new List<RuleDay>();
        foreach (var one in value.Split(','))
        {
            if (one.Length < 2 || !Weekdays.TryGetValue(one[^2..], out var day))
                return SeriesRefusals.BadRule($"BYDAY={one} is no weekday; it is MO to SU.");
            if (one.Length == 2)
            {
                days.Add(new RuleDay(day));
                continue;
            }

            if (
                !int.TryParse(
                    one[..^2],
                    NumberStyles.AllowLeadingSign,
                    CultureInfo.InvariantCulture,
                    out var nth
                )
                || nth == 0
                || Math.Abs(nth) > 53
            )
                return SeriesRefusals.BadRule(
                    $"BYDAY={one}: a number from 1 to 53, or from -53 to -1, goes before the weekday."
                );
            days.Add(new RuleDay(day, nth));
        }

        return rule with
        {
            Days = [.. days.Distinct()],
        };
    }

    // What RFC 5545, 3.3.10, says must not stand together.
    private static string? Whole(SeriesRule rule)
    {
        if (rule.Until is not null && rule.Count is not null)
            return "A rule ends on a date or after a number of dates: UNTIL and COUNT do not stand together.";
        if (rule.Weeks.Count > 0 && rule.Repeats != Repeats.Yearly)
            return "BYWEEKNO stands only in a yearly rule.";
        if (rule.YearDays.Count > 0 && rule.Repeats != Repeats.Yearly)
            return "BYYEARDAY stands only in a yearly rule.";
        if (rule.MonthDays.Count > 0 && rule.Repeats == Repeats.Weekly)
            return "BYMONTHDAY does not stand in a weekly rule.";
        if (
            rule.Days.Any(d => d.Nth is not null)
            && (
                rule.Repeats is Repeats.Daily or Repeats.Weekly
                || (rule.Repeats == Repeats.Yearly && rule.Weeks.Count > 0)
            )
        )
            return "A numbered weekday, such as 2TU, stands only in a monthly rule, or in a yearly one without BYWEEKNO.";
        if (
            rule.Positions.Count > 0
            && rule.Days.Count
                + rule.MonthDays.Count
                + rule.YearDays.Count
                + rule.Weeks.Count
                + rule.Months.Count
                == 0
        )
            return "BYSETPOS chooses among dates that another part gives, such as BYDAY; there is none.";
        return null;
    }

    private static LocalDate? LastDay(string value, LocalTime at, DateTimeZone zone)
    {
        if (Basic.Parse(value) is { Success: true } day)
            return day.Value;
        var utc = value.EndsWith('Z');
        if (BasicTime.Parse(utc ? value[..^1] : value) is not { Success: true } moment)
            return null;
        if (!utc)
            return moment.Value.TimeOfDay >= at
                ? moment.Value.Date
                : moment.Value.Date.PlusDays(-1);
        var last = moment.Value.InUtc().ToInstant();
        var on = last.InZone(zone).Date;
        return zone.On(on + at).ToInstant() <= last ? on : on.PlusDays(-1);
    }

    private static string CodeOf(IsoDayOfWeek day) => Weekdays.Single(d => d.Value == day).Key;
}
