using CsCheck;
using Studio.Core.Timetable;

namespace Studio.Core.Tests.Timetable;

/// <summary>
/// The search against the slow way: every way of staffing a small term is written out, judged by the checker of
/// timetables, and measured anew.
/// </summary>
public class TermsAgainstEveryWay
{
    [Fact]
    public void No_way_of_staffing_that_breaks_no_rule_is_better() =>
        Terms.Any.Sample(
            question =>
            {
                var plan = TermAssignment.Solve(question);
                var best = Ways(question)
                    .Select(way =>
                        question.Sessions.Zip(way, (s, who) => s with { InstructorId = who })
                    )
                    .Where(way => !question.Broken(way).Any())
                    .Select(way => Measured(question, [.. way]))
                    .Min(Comparer<long[]>.Create((a, b) => Compare(a, b)));
                Assert.Equal(best, Measured(question, plan.After(question)));
                Assert.Equal(
                    best,
                    Enum.GetValues<TermAim>()
                        .Select(aim =>
                            aim == TermAim.Bent && question.Bends == new TermBends()
                                ? 0
                                : plan.Value(aim) * (aim == TermAim.Wishes ? -1 : 1)
                        )
                );
                Assert.All(plan.Aims, aim => Assert.True(aim.Proven));
            },
            iter: 300
        );

    private static int Compare(long[] a, long[] b) =>
        a.Zip(b, (x, y) => x.CompareTo(y)).FirstOrDefault(c => c != 0);

    private static List<List<long?>> Ways(TermQuestion question)
    {
        List<List<long?>> ways =
        [
            [],
        ];
        foreach (var session in question.Sessions)
        {
            List<long?> who =
                question.Pins.TryGetValue(session.Key, out var pinned) ? [pinned]
                : !question.IsFree(session.Key) ? [session.InstructorId]
                : [null, .. question.Facts.Teachers.Keys.Select(k => (long?)k)];
            ways = [.. ways.SelectMany(way => who.Select(w => (List<long?>)[.. way, w]))];
        }

        return ways;
    }

    private static long[] Measured(TermQuestion question, List<PlacedSession> way)
    {
        var today = question.Sessions.ToDictionary(s => s.Key, s => s.InstructorId);
        var free = way.FindAll(s => question.IsFree(s.Key));
        var taught = free.FindAll(s => s.InstructorId is not null);
        return
        [
            free.Count - taught.Count,
            question.Facts.Teachers.Values.Sum(t =>
                Bent(question, t, way.FindAll(s => s.InstructorId == t.Id))
            ),
            free.Count(s => today[s.Key] is { } was && was != s.InstructorId),
            -taught.Sum(s => Wish(question.Facts.Teachers[s.InstructorId!.Value], s)),
            way.GroupBy(s => TimetableChecks.WeekOf(s.On))
                .Where(w => w.Any(s => question.IsFree(s.Key)))
                .Sum(w => Uneven(question, [.. w])),
        ];
    }

    // An hour not given and each two sessions without the rest between count 60, a minute over the week 1; what is fixed
    // among itself does not count.
    private static long Bent(TermQuestion question, Teacher her, List<PlacedSession> hers)
    {
        bool Is(ConflictKind kind, PlacedSession session, params PlacedSession[] beside) =>
            TimetableChecks.WhyNot(her, session, beside, question.Facts).Any(c => c.Kind == kind);
        var pairs =
            from a in hers
            from b in hers
            where a.Key < b.Key && (question.IsFree(a.Key) || question.IsFree(b.Key))
            where Is(ConflictKind.TooLittleRest, a, b)
            select (a, b);
        var over = hers.GroupBy(s => TimetableChecks.WeekOf(s.On))
            .Sum(w =>
            {
                var stands = w.Where(s => !question.IsFree(s.Key)).Sum(s => s.Minutes);
                var most = Math.Max(her.WeeklyMinutesMost ?? int.MaxValue, stands);
                return Math.Max(0L, w.Sum(s => s.Minutes) - most);
            });
        return over
            + 60
                * (
                    pairs.Count()
                    + hers.Count(s => question.IsFree(s.Key) && Is(ConflictKind.OutsideHours, s))
                );
    }

    private static int Wish(Teacher her, PlacedSession session) =>
        her.Wishes.Sum(w =>
            (w.Kind, w.Value) switch
            {
                (WishKind.Class, var code) => code == session.ClassCode,
                (WishKind.Location, var code) => code == session.LocationCode,
                (WishKind.Weekday, var day) => day == $"{(int)session.On.DayOfWeek}",
                (_, "morning") => session.StartsLocal < new LocalTime(12, 0),
                (_, "evening") => session.StartsLocal >= new LocalTime(17, 0),
                _ => session.StartsLocal >= new LocalTime(12, 0)
                    && session.StartsLocal < new LocalTime(17, 0),
            }
                ? w.Weight
                : 0
        );

    private static long Uneven(TermQuestion question, List<PlacedSession> week)
    {
        var free = week.FindAll(s => question.IsFree(s.Key));
        var stands = week.FindAll(s =>
            !question.IsFree(s.Key)
            && s.InstructorId is not null
            && question.Facts.Teachers.ContainsKey(s.InstructorId.Value)
        );
        var people = question.Facts.Teachers.Values.OrderBy(t => t.Id).ToList();
        bool Could(Teacher her, PlacedSession session) =>
            !question
                .Broken([
                    .. question
                        .Sessions.Where(s => !question.IsFree(s.Key))
                        .Select(s =>
                            question.Pins.TryGetValue(s.Key, out var who)
                                ? s with
                                {
                                    InstructorId = who,
                                }
                                : s
                        ),
                    session with
                    {
                        InstructorId = her.Id,
                    },
                ])
                .Any();
        var shares = TermShares.Of(
            stands.Sum(s => s.Minutes)
                + free.Where(s => people.Exists(p => Could(p, s))).Sum(s => s.Minutes),
            people.ConvertAll(p =>
            {
                var fixedMinutes = stands.Where(s => s.InstructorId == p.Id).Sum(s => s.Minutes);
                var most =
                    question.Bends.WeeklyMinutes || p.WeeklyMinutesMost is null
                        ? int.MaxValue
                        : Math.Max(0, p.WeeklyMinutesMost.Value - fixedMinutes);
                return (
                    p.WeeklyMinutesMost,
                    fixedMinutes + Math.Min(most, free.Where(s => Could(p, s)).Sum(s => s.Minutes))
                );
            })
        );
        return people
            .Select(
                (p, at) =>
                    (long)
                        TermShares.Uneven(
                            week.Where(s => s.InstructorId == p.Id).Sum(s => s.Minutes),
                            shares[at],
                            free.Max(s => s.Minutes)
                        )
            )
            .Sum();
    }
}
