using NodaTime;
using Studio.Core.Timetable;

namespace Studio.Core.Staff;

/// <summary>How a qualification stands on a day.</summary>
public enum QualificationStatus
{
    /// <summary>Valid.</summary>
    Valid,

    /// <summary>Valid, and ends within 60 days.</summary>
    EndsSoon,

    /// <summary>Ended.</summary>
    Expired,

    /// <summary>Filed wrongly; it counts nowhere.</summary>
    Withdrawn,
}

/// <summary>What runs out, and what it leaves without anybody qualified.</summary>
public static class QualificationRules
{
    /// <summary>How many days ahead it is said that one ends; common practice, no published source.</summary>
    public const int SoonDays = 60;

    /// <summary>How one stands.</summary>
    public static QualificationStatus On(LocalDate expiresOn, bool isWithdrawn, LocalDate today) =>
        isWithdrawn ? QualificationStatus.Withdrawn
        : expiresOn < today ? QualificationStatus.Expired
        : expiresOn <= today.PlusDays(SoonDays) ? QualificationStatus.EndsSoon
        : QualificationStatus.Valid;

    /// <summary>
    /// Those that have run out or will within 60 days, the first to end first. Of each kind only the one that lasts
    /// longest: what has been renewed does not run out.
    /// </summary>
    public static IReadOnlyList<HeldQualification> RunningOut(
        IEnumerable<HeldQualification> held,
        LocalDate today
    ) =>
        [
            .. held.GroupBy(q => q.Kind, StringComparer.Ordinal)
                .Select(kind => kind.MaxBy(q => q.To)!)
                .Where(q => q.To <= today.PlusDays(SoonDays))
                .OrderBy(q => q.To)
                .ThenBy(q => q.Kind, StringComparer.Ordinal),
        ];
}
