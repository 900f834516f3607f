using NodaTime;

namespace Studio.Core.Staff;

/// <summary>
/// What is paid. A session has one rate: the most particular there is on its date (for her and the class, for her, for
/// the class, for anybody), and of those the newest. It is rounded on the line, to the smallest unit, half away from
/// zero; a total is the sum of its lines and is never rounded again.
/// </summary>
public static class PayRules
{
    private const int MinutesOfAnHour = 60;

    /// <summary>A line a session, those of the span alone, in the order given.</summary>
    public static IReadOnlyList<PayLine> Lines(
        IEnumerable<PaidSession> sessions,
        IReadOnlyCollection<PayRate> rates,
        LocalDate from,
        LocalDate to
    ) => [.. sessions.Where(s => from <= s.On && s.On <= to).Select(s => Line(s, rates))];

    /// <summary>What is paid for one session.</summary>
    public static PayLine Line(PaidSession session, IReadOnlyCollection<PayRate> rates)
    {
        if (RateOf(session, rates) is not { } rate)
            return new PayLine(session, null, null, null);
        int? heads = rate.Per == PayPer.Head ? HeadsOf(session, rate) : null;
        return new PayLine(session, rate, heads, AmountOf(session, rate, heads ?? 0));
    }

    /// <summary>The rate that applies to a session; null when there is none.</summary>
    public static PayRate? RateOf(PaidSession session, IEnumerable<PayRate> rates) =>
        rates
            .Where(r =>
                r.From <= session.On
                && (r.InstructorId is null || r.InstructorId == session.InstructorId)
                && (r.ClassId is null || r.ClassId == session.ClassId)
            )
            .OrderByDescending(r => r.InstructorId is not null)
            .ThenByDescending(r => r.ClassId is not null)
            .ThenByDescending(r => r.From)
            .ThenByDescending(r => r.Id)
            .FirstOrDefault();

    /// <summary>What the lines come to, by currency: amounts of two currencies are never added.</summary>
    public static IReadOnlyList<PayTotal> Totals(IEnumerable<PayLine> lines) =>
        [
            .. lines
                .Where(l => l.Rate is not null)
                .GroupBy(l => l.Rate!.Currency, StringComparer.Ordinal)
                .OrderBy(c => c.Key, StringComparer.Ordinal)
                .Select(c => new PayTotal(c.Key, c.Sum(l => l.Amount!.Value), c.Count())),
        ];

    private static int HeadsOf(PaidSession session, PayRate rate) =>
        rate.Heads == HeadCount.SeatsTaken ? session.SeatsTaken : session.CheckedIn;

    private static long AmountOf(PaidSession session, PayRate rate, int heads) =>
        rate.Per switch
        {
            PayPer.Session => rate.Amount,
            PayPer.Head => rate.Amount * heads,
            PayPer.Hour => Divided(rate.Amount * session.Minutes, MinutesOfAnHour),
        };

    // Half away from zero; nothing here is below it.
    private static long Divided(long amount, int by) => (2 * amount + by) / (2 * by);
}
