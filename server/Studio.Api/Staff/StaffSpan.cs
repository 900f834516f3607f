using NodaTime;
using Studio.Api.Http;
using Studio.Core;
using Studio.Core.Staff;

namespace Studio.Api.Staff;

/// <summary>Days asked for, first and last included.</summary>
/// <param name="From">First.</param>
/// <param name="To">Last.</param>
public sealed record StaffSpan(LocalDate From, LocalDate To)
{
    private const int MostDays = 400;

    /// <summary>The days asked for; what is left open is filled in about the day given.</summary>
    /// <param name="from">First.</param>
    /// <param name="to">Last.</param>
    /// <param name="about">The day about which an open end is filled in.</param>
    /// <param name="back">From a last day, or from that day, back to a first that was left open.</param>
    /// <param name="ahead">Days ahead of that day to a last that was left open.</param>
    public static Answer<StaffSpan> Of(
        QueryDay? from,
        QueryDay? to,
        LocalDate about,
        Func<LocalDate, LocalDate> back,
        int ahead = 0
    )
    {
        var last = to?.Value ?? LocalDate.Max(about.PlusDays(ahead), from?.Value ?? about);
        var first = from?.Value ?? back(to?.Value ?? about);
        return last < first || Period.DaysBetween(first, last) > MostDays
            ? StaffRefusals.BadSpan
            : new StaffSpan(first, last);
    }
}
