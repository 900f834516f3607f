using NodaTime;
using NodaTime.Text;

namespace Studio.Api.Timetable;

/// <summary>An hour of the wall clock on the wire: <c>18:00</c>.</summary>
public static class ClockText
{
    private static readonly LocalTimePattern Pattern = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    /// <summary>As text.</summary>
    public static string Of(LocalTime time) => Pattern.Format(time);

    /// <summary>From a text whose form was checked with the request.</summary>
    /// <exception cref="UnparsableValueException">It is none.</exception>
    public static LocalTime Parse(string text) => Pattern.Parse(text).Value;
}
