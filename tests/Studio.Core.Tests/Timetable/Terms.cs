using CsCheck;
using Studio.Core.Timetable;
using static Studio.Core.Tests.Timetable.Weeks;

namespace Studio.Core.Tests.Timetable;

/// <summary>Terms of the invented studio, small enough to try every way of staffing them.</summary>
internal static class Terms
{
    public static readonly Teacher Cleo = Ada with
    {
        Id = 3,
        Name = "Cleo Ambrose",
        Qualifications =
        [
            new("prenatal", new(2026, 1, 1), new(2028, 1, 1)),
            new("postnatal", new(2026, 1, 1), new(2028, 1, 1)),
        ],
    };

    public static TermQuestion Question(
        IReadOnlyList<Teacher> people,
        params IReadOnlyList<PlacedSession> sessions
    ) =>
        new()
        {
            From = Monday,
            To = Monday.PlusDays(27),
            Sessions = sessions,
            Facts = Facts with { Teachers = people.ToDictionary(t => t.Id) },
            MayChange = sessions.Select(s => s.Key).ToHashSet(),
        };

    public static long? Who(this TermPlan plan, long session) =>
        plan.Steps.Single(s => s.Session.Key == session).After;

    public static long Value(this TermPlan plan, TermAim aim) =>
        plan.Aims.Single(a => a.Aim == aim).Value;

    /// <summary>The sessions as the plan would have them, with those outside its span as they stand or are pinned.</summary>
    public static List<PlacedSession> After(this TermPlan plan, TermQuestion question)
    {
        var after = plan.Steps.ToDictionary(s => s.Session.Key, s => s.After);
        return
        [
            .. question.Sessions.Select(s =>
                s with
                {
                    InstructorId =
                        after.TryGetValue(s.Key, out var who) ? who
                        : question.Pins.TryGetValue(s.Key, out var pinned) ? pinned
                        : s.InstructorId,
                }
            ),
        ];
    }

    /// <summary>What stands against a way of staffing: rules about people that may not be bent, among sessions that are free.</summary>
    public static IEnumerable<Conflict> Broken(
        this TermQuestion question,
        IEnumerable<PlacedSession> sessions
    ) =>
        TimetableChecks
            .Of(sessions, question.Facts)
            .Where(c =>
                c.InstructorId is not null
                && !question.Bends.Allow(c.Kind)
                && c.Sessions.Any(question.IsFree)
            );

    public static bool IsFree(this TermQuestion question, long session) =>
        question.MayChange.Contains(session) && !question.Pins.ContainsKey(session);

    /// <summary>Any small term: three people at most, days about the turn of a week, late and early hours among them.</summary>
    public static Gen<TermQuestion> Any { get; } =
        Gen.Select(
            APerson.Array[1, 3],
            ASession.Array[0, 6],
            Gen.Int[0, 7],
            Gen.Int[0, 999],
            (people, sessions, bends, seed) =>
            {
                var random = new Random(seed);
                var placed = sessions.Select((s, at) => s with { Key = at + 1 }).ToList();
                var question = Question(
                    [.. people.Select((p, at) => p with { Id = at + 1 })],
                    placed
                );
                // Half of them bend nothing; most sessions are free, some pinned, some as they stand.
                var kinds = placed.ToDictionary(s => s.Key, _ => random.Next(8));
                return question with
                {
                    Bends =
                        seed % 2 == 0
                            ? new()
                            : new((bends & 1) > 0, (bends & 2) > 0, (bends & 4) > 0),
                    MayChange = kinds.Where(k => k.Value != 7).Select(k => k.Key).ToHashSet(),
                    Pins = kinds
                        .Where(k => k.Value == 6)
                        .ToDictionary(
                            k => k.Key,
                            _ =>
                                random.Next(4) is > 0 and var who
                                    ? (long?)Math.Min(who, people.Length)
                                    : null
                        ),
                };
            }
        );

    private static Gen<Teacher> APerson =>
        Gen.Select(
            Gen.Int[0, 9],
            Gen.Int[0, 5],
            Gen.Int[0, 4],
            Gen.Int[0, 5],
            Gen.Int[0, 7],
            (holds, week, rest, hours, wish) =>
                new Teacher
                {
                    Id = 0,
                    Name = $"Person {holds}{week}{rest}{hours}{wish}",
                    Qualifications =
                    [
                        .. new HeldQualification[]
                        {
                            new("prenatal", new(2026, 1, 1), Monday.PlusDays(holds > 7 ? 6 : 900)),
                            new("postnatal", new(2026, 1, 1), Monday.PlusDays(900)),
                        }.Where((_, at) => at == 0 ? holds != 0 : holds > 5),
                    ],
                    WeeklyMinutesMost = week switch
                    {
                        0 => 60,
                        1 => 120,
                        2 => 180,
                        _ => null,
                    },
                    RestMinutesLeast = rest == 0 ? 12 * 60 : null,
                    Leave = rest == 1 ? [new DaysAway(Monday.PlusDays(7), Monday.PlusDays(7))] : [],
                    Availability =
                        hours == 0
                            ?
                            [
                                .. Enum.GetValues<IsoDayOfWeek>()
                                    .Skip(1)
                                    .Select(d => new WeeklyHours(d, new(6, 0), new(20, 0))),
                            ]
                            : [],
                    LeftOn = hours == 1 ? Monday.PlusDays(7) : null,
                    Wishes = wish switch
                    {
                        0 => [new(WishKind.PartOfDay, "evening", -2)],
                        1 => [new(WishKind.Location, "hill", 1), new(WishKind.Weekday, "7", 2)],
                        2 =>
                        [
                            new(WishKind.Class, "core", 1),
                            new(WishKind.PartOfDay, "morning", 1),
                        ],
                        _ => [],
                    },
                }
        );

    private static Gen<PlacedSession> ASession =>
        Gen.Select(
            Gen.Int[5, 8],
            Gen.Int[0, 9],
            Gen.Int[0, 4],
            Gen.Int[1, 3],
            Gen.Int[0, 5],
            (day, hour, by, room, kind) =>
                Session(
                    0,
                    Monday.PlusDays(day),
                    hour < 5
                        ? $"{7 + (hour / 2):00}:{(hour % 2 == 0 ? "00" : "30")}"
                        : $"{19 + ((hour - 5) / 2):00}:{(hour % 2 == 1 ? "00" : "30")}",
                    by is > 0 and < 4 ? by : null,
                    room,
                    kind == 0 ? 90 : 50
                ) with
                {
                    NeedsQualification = kind == 1 ? "postnatal" : "prenatal",
                    ClassCode = kind % 2 == 0 ? "core" : "calm",
                }
        );
}
