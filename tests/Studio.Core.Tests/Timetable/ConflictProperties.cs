using CsCheck;
using Studio.Core.Timetable;

namespace Studio.Core.Tests.Timetable;

/// <summary>The checker against the slow way: every minute of the week, who and what is where.</summary>
public class ConflictProperties
{
    private static readonly Gen<PlacedSession> ASession = Gen.Select(
        Gen.Int[0, 2],
        Gen.Int[0, 7],
        Gen.Int[0, 3],
        Gen.Int[1, 3],
        Gen.Int[1, 9],
        (day, half, by, room, tens) =>
            Weeks.Session(
                0,
                Weeks.Monday.PlusDays(day),
                $"{9 + (half / 2):00}:{(half % 2 == 0 ? "00" : "30")}",
                by is 1 or 2 ? by : null,
                room,
                tens * 10
            )
    );

    private static readonly Gen<PlacedSession[]> AWeek = ASession
        .Array[0, 9]
        .Select(week => week.Select((s, at) => s with { Key = at + 1 }).ToArray());

    [Fact]
    public void Rooms_and_people_clash_exactly_when_some_minute_has_them_twice() =>
        AWeek.Sample(
            week =>
            {
                var found = TimetableChecks.Of(week, Weeks.Facts);
                Assert.Equal(
                    TwiceInAMinute(week, s => s.RoomId),
                    Pairs(found, ConflictKind.RoomTaken)
                );
                Assert.Equal(
                    TwiceInAMinute(
                        [.. week.Where(s => s.InstructorId is not null)],
                        s => s.InstructorId!.Value
                    ),
                    Pairs(found, ConflictKind.InstructorTaken)
                );
            },
            iter: 400
        );

    [Fact]
    public void The_order_in_which_sessions_are_given_does_not_matter() =>
        Gen.Select(AWeek, Gen.Int[0, 1000])
            .Sample(
                (week, seed) =>
                {
                    var shuffled = week.ToArray();
                    new Random(seed).Shuffle(shuffled);
                    Assert.Equal(
                        TimetableChecks.Of(week, Weeks.Facts).Select(c => c.Words),
                        TimetableChecks.Of(shuffled, Weeks.Facts).Select(c => c.Words)
                    );
                },
                iter: 1000
            );

    [Fact]
    public void Nothing_stands_against_her_exactly_when_the_whole_would_hold_no_more_of_hers() =>
        Gen.Select(AWeek, ASession)
            .Sample(
                (week, extra) =>
                {
                    var wanted = extra with { Key = 99, InstructorId = null, RoomId = 77 };
                    var hers = week.Where(s => s.InstructorId == 2).ToList();
                    Assert.Equal(
                        TimetableChecks
                            .Of([.. week, wanted with { InstructorId = 2 }], Weeks.Facts)
                            .Where(c => c.InstructorId == 2 && c.Sessions.Contains(99))
                            .Select(c => c.Kind)
                            .Order(),
                        TimetableChecks
                            .WhyNot(Weeks.Bo, wanted, hers, Weeks.Facts)
                            .Select(c => c.Kind)
                            .Order()
                    );
                },
                iter: 1000
            );

    private static List<(long, long)> Pairs(IEnumerable<Conflict> found, ConflictKind kind) =>
        [
            .. found
                .Where(c => c.Kind == kind)
                .Select(c => (c.Sessions.Min(), c.Sessions.Max()))
                .Order(),
        ];

    private static List<(long, long)> TwiceInAMinute(
        PlacedSession[] week,
        Func<PlacedSession, long> who
    ) =>
        [
            .. week.SelectMany(s =>
                    Enumerable
                        .Range(0, s.Minutes)
                        .Select(m =>
                            (Minute: s.StartsAt + Duration.FromMinutes(m), Who: who(s), s.Key)
                        )
                )
                .GroupBy(m => (m.Minute, m.Who))
                .SelectMany(m =>
                    m.SelectMany(a => m.Where(b => a.Key < b.Key).Select(b => (a.Key, b.Key)))
                )
                .Distinct()
                .Order(),
        ];
}
