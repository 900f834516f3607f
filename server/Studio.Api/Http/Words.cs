using NodaTime;
using NodaTime.Text;

namespace Studio.Api.Http;

/// <summary>How the server writes a day in a sentence.</summary>
public static class Words
{
    private static readonly LocalDatePattern DayPattern = LocalDatePattern.CreateWithInvariantCulture("d MMMM uuuu");

    /// <summary>"4 March 2027".</summary>
    public static string Day(LocalDate day) => DayPattern.Format(day);
}
