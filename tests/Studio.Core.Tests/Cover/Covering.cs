using Studio.Core.Cover;
using Studio.Core.Tests.Timetable;
using Studio.Core.Timetable;

namespace Studio.Core.Tests.Cover;

/// <summary>Ada cannot teach; Bo, Cy and Dee might.</summary>
internal static class Covering
{
    public const long Ada = 1;
    public const long Bo = 2;
    public const long Cy = 3;
    public const long Dee = 4;

    public static readonly Teacher CyHerself = Weeks.Bo with { Id = Cy, Name = "Cy Harrowgate" };

    public static readonly Teacher DeeHerself = Weeks.Bo with { Id = Dee, Name = "Dee Marlowick" };

    /// <summary>What is known of all four, unless somebody else is given in place of one of them.</summary>
    public static TimetableFacts FactsWith(params Teacher[] others) =>
        Weeks.Facts with
        {
            Teachers = new[] { Weeks.Ada, Weeks.Bo, CyHerself, DeeHerself }
                .Where(t => others.All(o => o.Id != t.Id))
                .Concat(others)
                .ToDictionary(t => t.Id),
        };

    /// <summary>A session that Ada cannot teach.</summary>
    public static PlacedSession Hers(long key, string starts, int day = 0, long room = 1) =>
        Weeks.Session(key, Weeks.Monday.PlusDays(day), starts, Ada, room);

    public static CoverQuestion For(PlacedSession session) =>
        new() { Session = session, InsteadOf = session.InstructorId };

    public static CoverStaff Everybody(TimetableFacts facts, params PlacedSession[] sessions) =>
        new() { Facts = facts, Sessions = sessions };

    public static CoverCandidate On(this IReadOnlyList<CoverCandidate> ranked, long instructor) =>
        ranked.Single(c => c.InstructorId == instructor);

    public static IEnumerable<long> Ids(this IEnumerable<CoverCandidate> ranked) =>
        ranked.Select(c => c.InstructorId);
}
