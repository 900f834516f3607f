using System.Globalization;
using NodaTime.Text;
using Studio.Api.Timetable;

namespace Studio.Api.Messages;

/// <summary>A session as a message names it.</summary>
public static class MessageLines
{
    private static readonly LocalDatePattern Day = LocalDatePattern.Create(
        "dddd d MMMM uuuu",
        CultureInfo.InvariantCulture
    );

    private static readonly LocalTimePattern Hour = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    /// <summary><c>Slow strength, Tuesday 9 March 2027 at 18:00, Quay house (Loft)</c>.</summary>
    public static string Of(SessionRow session) =>
        $"{session.ClassName}, {Day.Format(session.OnDate)} at {Hour.Format(session.StartsLocal)}, {session.LocationName} ({session.RoomName})";
}
