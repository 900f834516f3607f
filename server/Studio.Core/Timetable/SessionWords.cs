using NodaTime;
using NodaTime.Text;
using Studio.Core.Pregnancies;

namespace Studio.Core.Timetable;

/// <summary>A session as sentences name it, by the clock of the place where it is held.</summary>
/// <param name="ClassName">Name of the class.</param>
/// <param name="On">Its date.</param>
/// <param name="Starts">Its hour.</param>
/// <param name="Minutes">Its length.</param>
/// <param name="Room">Name of the room.</param>
/// <param name="Location">Name of the location.</param>
/// <param name="Instructor">Who teaches it; null when nobody does yet.</param>
public sealed record NamedSession(
    string ClassName,
    LocalDate On,
    LocalTime Starts,
    int Minutes,
    string Room,
    string Location,
    string? Instructor
);

/// <summary>What is told of a session that changes. Nothing in it is about anybody's health.</summary>
public static class SessionWords
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    /// <summary><c>Early core on Tuesday 2 March 2027 at 18:00, Vilarmeira</c>.</summary>
    public static string Named(NamedSession session) =>
        $"{session.ClassName} on {When(session)}, {session.Location}";

    /// <summary>It is not held.</summary>
    public static string CalledOff(NamedSession session) => $"{Named(session)}: not held.";

    /// <summary>It is held, and she teaches it.</summary>
    public static string Given(NamedSession session) =>
        $"{Named(session)}, {session.Room}, {session.Minutes} minutes: yours to teach.";

    /// <summary>Somebody else teaches it, or nobody yet.</summary>
    public static string TakenAway(NamedSession session) =>
        $"{Named(session)}: no longer yours to teach.";

    /// <summary>What is different from before, for those who come or teach; null when nothing they would notice is.</summary>
    /// <param name="was">As it was.</param>
    /// <param name="now">As it is.</param>
    /// <param name="tellsWho">Whether it matters who teaches it.</param>
    public static string? Changed(NamedSession was, NamedSession now, bool tellsWho)
    {
        var parts = new List<string>();
        if ((was.On, was.Starts) != (now.On, now.Starts))
            parts.Add($"now on {When(now)}");
        if (was.Minutes != now.Minutes)
            parts.Add($"{now.Minutes} minutes long");
        if (was.Location != now.Location)
            parts.Add($"in {now.Room}, {now.Location}");
        else if (was.Room != now.Room)
            parts.Add($"in {now.Room}");
        if (tellsWho && was.Instructor != now.Instructor)
            parts.Add(
                now.Instructor is { } who ? $"with {who}" : "who teaches it is not settled yet"
            );
        return parts.Count == 0 ? null : $"{Named(was)}: {string.Join(", ", parts)}.";
    }

    /// <summary>Her seat was let go, since it lies across another one of hers.</summary>
    public static string LetGo(NamedSession was, NamedSession now) =>
        $"{Named(was)}: now on {When(now)}, when you have a seat in another class. Your seat in this one was let go without charge.";

    private static string When(NamedSession session) =>
        $"{session.On.DayOfWeek} {Wording.Date(session.On)} at {Clock.Format(session.Starts)}";
}
