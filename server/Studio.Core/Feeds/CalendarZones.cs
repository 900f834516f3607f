using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using NodaTime;
using Duration = NodaTime.Duration;

namespace Studio.Core.Feeds;

/// <summary>
/// A zone as a VTIMEZONE (RFC 5545, 3.6.5): one observance for each stretch of one offset in a span of time, as the IANA
/// data has it. No rule is written that would have to be guessed from them.
/// </summary>
public static class CalendarZones
{
    private static readonly Instant Epoch = NodaConstants.UnixEpoch;

    /// <summary>The zone, right for every moment from one to another.</summary>
    public static VTimeZone Of(DateTimeZone zone, Instant from, Instant to)
    {
        var component = new VTimeZone(zone.Id);
        // Another program's own name for the same.
        component.Properties.Remove("X-LIC-LOCATION");
        foreach (var stretch in zone.GetZoneIntervals(from, to.Plus(Duration.FromSeconds(1))))
        {
            // What has held for longer than anybody's calendar reaches back is said from 1970 on.
            var since = stretch.HasStart && stretch.Start > Epoch ? stretch.Start : Epoch;
            var before =
                since == Epoch
                    ? stretch.WallOffset
                    : zone.GetUtcOffset(since.Minus(Duration.Epsilon));
            component.AddChild(
                new VTimeZoneInfo(stretch.Savings == Offset.Zero ? "STANDARD" : "DAYLIGHT")
                {
                    // The onset is told by the clock as it went until then (3.6.5).
                    Start = new CalDateTime(
                        since
                            .InUtc()
                            .LocalDateTime.PlusSeconds(before.Seconds)
                            .ToDateTimeUnspecified()
                    ),
                    OffsetFrom = new UtcOffset(before.ToTimeSpan()),
                    OffsetTo = new UtcOffset(stretch.WallOffset.ToTimeSpan()),
                    TimeZoneName = stretch.Name,
                }
            );
        }
        return component;
    }
}
