namespace Studio.Api.Data;

/// <summary>Arithmetic on ISO dates as SQLite writes it. The one place to change for another database.</summary>
public static class SqliteDates
{
    /// <summary>Whole days from one date expression to another.</summary>
    public static string DaysBetween(string from, string to) =>
        $"cast(julianday({to}) - julianday({from}) as integer)";

    /// <summary>A date expression moved by a number of days.</summary>
    public static string PlusDays(string date, string days) => $"date({date}, ({days}) || ' days')";
}
