using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using NodaTime;
using Studio.Core.Timetable;

namespace Studio.Benchmarks;

/// <summary>
/// Twelve people, two locations, four rooms. A week of 120 sessions beside one of 60, and twelve weeks of 117: the aim is
/// seconds for the week, and for the term little more than its weeks together.
/// </summary>
[SimpleJob(RunStrategy.Monitoring, warmupCount: 1, iterationCount: 3)]
public class TermBenchmarks
{
    private static readonly LocalDate Monday = new(2027, 3, 1);
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];

    /// <summary>How the plan stands today.</summary>
    [Params("nobody yet", "one has left")]
    public string Today { get; set; } = "nobody yet";

    /// <summary>Half a week.</summary>
    [Benchmark(Baseline = true)]
    public int Week60() => Staffed(Term(1, 60));

    /// <summary>A full week.</summary>
    [Benchmark]
    public int Week120() => Staffed(Term(1, 120));

    /// <summary>A term: 1,404 sessions.</summary>
    [Benchmark]
    public int Term12x117() => Staffed(Term(12, 117));

    private static int Staffed(TermQuestion question)
    {
        var plan = TermAssignment.Solve(question);
        Console.WriteLine(
            string.Join(
                ", ",
                plan.Aims.Select(a => $"{a.Aim} {a.Value}{(a.Proven ? "" : " (not proven)")}")
            )
        );
        return plan.Steps.Count(s => s.After is not null);
    }

    private TermQuestion Term(int weeks, int aWeek)
    {
        var random = new Random(5);
        var people = Enumerable.Range(1, 12).Select(p => Person(p, random)).ToList();
        var sessions = Enumerable
            .Range(0, weeks * aWeek)
            .Select(at => Session(at + 1, at / aWeek, at % aWeek, aWeek, random))
            .ToList();
        var question = new TermQuestion
        {
            From = Monday,
            To = Monday.PlusDays((7 * weeks) - 1),
            Sessions = sessions,
            MayChange = sessions.Select(s => s.Key).ToHashSet(),
            Facts = new()
            {
                Teachers = people.ToDictionary(p => p.Id),
                Travel = new Dictionary<(long From, long To), int> { [(1, 2)] = 35, [(2, 1)] = 35 },
                RestMinutesLeast = 660,
            },
        };
        if (Today == "nobody yet")
            return question;
        var staffed = TermAssignment.Solve(question).Steps;
        return question with
        {
            Sessions = [.. staffed.Select(s => s.Session with { InstructorId = s.After })],
            Facts = question.Facts with
            {
                Teachers = people.ToDictionary(
                    p => p.Id,
                    p => p.Id == 3 ? p with { LeftOn = Monday.PlusDays(2) } : p
                ),
            },
        };
    }

    private static Teacher Person(int number, Random random) =>
        new()
        {
            Id = number,
            Name = $"Person {number}",
            Qualifications =
            [
                .. new[] { "prenatal", "postnatal", "relaxation" }
                    .Where((_, at) => at == number % 3 || random.Next(3) > 0)
                    .Select(kind => new HeldQualification(
                        kind,
                        Monday.PlusDays(-300),
                        Monday.PlusDays(number == 5 ? 40 : 400)
                    )),
            ],
            WeeklyMinutesMost = number % 4 == 0 ? null : 540 + (60 * random.Next(4)),
            Availability =
                number % 3 == 0
                    ?
                    [
                        .. Enumerable
                            .Range(1, 7)
                            .Where(day => day != number % 7)
                            .Select(day => new WeeklyHours(
                                (IsoDayOfWeek)day,
                                new(number % 2 == 0 ? 7 : 11, 0),
                                new(number % 2 == 0 ? 18 : 22, 0)
                            )),
                    ]
                    : [],
            Leave = number % 5 == 0 ? [new(Monday.PlusDays(16), Monday.PlusDays(25))] : [],
            Wishes =
            [
                new(WishKind.PartOfDay, number % 2 == 0 ? "morning" : "evening", 1 + (number % 2)),
                new(WishKind.Location, "hill", number % 3 == 0 ? -1 : 1),
            ],
        };

    private static PlacedSession Session(int key, int week, int at, int aWeek, Random random)
    {
        var room = at % 4;
        var day = at / 4 % 7;
        var slots = (aWeek + 27) / 28;
        var slot = at / 28;
        var local = new LocalTime(7, 30).PlusMinutes(
            (slot * 13 * 60 / slots) + (15 * random.Next(4))
        );
        var on = Monday.PlusDays((7 * week) + day);
        var starts = on.At(local).InZoneLeniently(Zone).ToInstant();
        var kind = random.Next(3);
        return new()
        {
            Key = key,
            ClassId = kind,
            ClassCode = $"class-{kind}",
            ClassName = $"Class {kind}",
            NeedsQualification = kind switch
            {
                0 => "prenatal",
                1 => "postnatal",
                _ => "relaxation",
            },
            RoomId = room,
            RoomName = $"Room {room}",
            RoomSeats = 12,
            LocationId = room < 2 ? 1 : 2,
            LocationCode = room < 2 ? "quay" : "hill",
            LocationName = room < 2 ? "Quay" : "Hill",
            On = on,
            StartsLocal = local,
            StartsAt = starts,
            EndsAt =
                starts
                + Duration.FromMinutes(
                    random.Next(3) switch
                    {
                        0 => 45,
                        1 => 60,
                        _ => 75,
                    }
                ),
            Seats = 12,
        };
    }
}
