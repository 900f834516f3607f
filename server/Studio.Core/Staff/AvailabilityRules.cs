using NodaTime.Text;
using Studio.Core.Timetable;

namespace Studio.Core.Staff;

/// <summary>What the hours that somebody gives have to be like.</summary>
public static class AvailabilityRules
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    /// <summary>
    /// Why these hours cannot stand side by side, or null. Hours of one weekday may not overlap, unless they are for two
    /// different locations: then she can be asked for at either.
    /// </summary>
    public static Refusal? WhyNot(IReadOnlyList<WeeklyHours> hours)
    {
        for (var i = 0; i < hours.Count; i++)
        {
            var one = hours[i];
            if (one.To <= one.From)
                return Refuse(
                    i,
                    "bad-range",
                    $"On {one.Weekday} the hours end at {Clock.Format(one.To)}, which is not after {Clock.Format(one.From)}."
                );
            for (var j = 0; j < i; j++)
                if (Overlap(hours[j], one))
                    return Refuse(
                        i,
                        "hours-overlap",
                        $"On {one.Weekday}, {Words(one)} overlaps {Words(hours[j])}. Make one of them shorter, or join them."
                    );
        }

        return null;
    }

    private static bool Overlap(WeeklyHours one, WeeklyHours other) =>
        one.Weekday == other.Weekday
        && one.From < other.To
        && other.From < one.To
        && (
            one.LocationId is null || other.LocationId is null || one.LocationId == other.LocationId
        );

    private static string Words(WeeklyHours hours) =>
        $"{Clock.Format(hours.From)} to {Clock.Format(hours.To)}";

    private static Refusal Refuse(int at, string code, string message) =>
        new(RefusalKind.Invalid, code, message, $"hours[{at}]");
}
