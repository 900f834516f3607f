using NodaTime;
using NodaTime.Text;

namespace Studio.Core.Pregnancies;

/// <summary>How sentences write days and dates.</summary>
public static class Wording
{
    private static readonly LocalDatePattern Long = LocalDatePattern.CreateWithInvariantCulture(
        "d MMMM uuuu"
    );

    /// <summary><c>3 March 2025</c>.</summary>
    public static string Date(LocalDate day) => Long.Format(day);

    /// <summary><c>1 day</c>, <c>4 days</c>.</summary>
    public static string Days(int count) => count == 1 ? "1 day" : $"{count} days";

    /// <summary>How far a date is from the one in force: <c>4 days later</c>.</summary>
    public static string Apart(LocalDate other, LocalDate inForce)
    {
        var days = Period.DaysBetween(inForce, other);
        return $"{Days(Math.Abs(days))} {(days < 0 ? "earlier" : "later")}";
    }
}
