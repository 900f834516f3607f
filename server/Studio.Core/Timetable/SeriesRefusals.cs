namespace Studio.Core.Timetable;

/// <summary>Why a series cannot be as it was asked for.</summary>
public static class SeriesRefusals
{
    /// <summary>There is no such series.</summary>
    public static readonly Refusal NoSuchSeries = new(
        RefusalKind.NotFound,
        "no-such-series",
        "There is no such series."
    );

    /// <summary>The rule cannot be read.</summary>
    public static Refusal BadRule(string why) => new(RefusalKind.Invalid, "bad-rule", why, "rule");

    /// <summary>It would give more than one class a day.</summary>
    public static Refusal WithinADay(string part) =>
        new(
            RefusalKind.Invalid,
            "rule-within-a-day",
            $"{part} repeats within a day, and a series is held once on each of its dates. Make one series for each hour.",
            "rule"
        );

    /// <summary>No date is left.</summary>
    public static readonly Refusal NoDates = new(
        RefusalKind.Invalid,
        "no-dates",
        "This rule gives no date from its start on. Look at its end, its days and the dates left out.",
        "rule"
    );

    /// <summary>A date that the rule does not give.</summary>
    public static Refusal NotADateOfIt(string field) =>
        new(
            RefusalKind.Invalid,
            "not-a-date-of-it",
            "The series gives no class on this date. Choose one of its dates.",
            field
        );

    /// <summary>Everything that could be changed has been held.</summary>
    public static readonly Refusal NothingAhead = new(
        RefusalKind.Conflict,
        "nothing-ahead",
        "Nothing of this series lies ahead from that date on; what was held stays as it was."
    );

    /// <summary>A session that has begun stays as it was.</summary>
    public static readonly Refusal HasBegun = new(
        RefusalKind.Conflict,
        "session-begun",
        "This session has already begun; what was held stays as it was."
    );

    /// <summary>The same series is there.</summary>
    public static readonly Refusal StandsAlready = new(
        RefusalKind.Conflict,
        "series-stands-already",
        "The same class is a series with this rule, room and hour already. Change that one, or choose another room or hour."
    );

    /// <summary>It would end before today.</summary>
    public static readonly Refusal EndsInThePast = new(
        RefusalKind.Invalid,
        "in-the-past",
        "Its last day lies in the past; what was held stays as it was. Choose yesterday at the earliest.",
        "lastOn"
    );

    /// <summary>Neither a room nor a zone.</summary>
    public static readonly Refusal NoZone = new(
        RefusalKind.Invalid,
        "no-zone",
        "Choose a room, or name a time zone such as Europe/Lisbon: an hour needs a clock.",
        "zone"
    );

    /// <summary>No such zone.</summary>
    public static Refusal NoSuchZone(string zone) =>
        new(
            RefusalKind.Invalid,
            "no-such-zone",
            $"There is no time zone \"{zone}\". Name one of the IANA database, such as Europe/Lisbon.",
            "zone"
        );

    /// <summary>The room is elsewhere.</summary>
    public static Refusal AnotherZone(string zone) =>
        new(
            RefusalKind.Invalid,
            "another-zone",
            $"The clock of this room's location is that of {zone}. Leave the zone out, or choose another room.",
            "zone"
        );
}
