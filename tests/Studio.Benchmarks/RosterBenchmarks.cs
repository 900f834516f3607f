using BenchmarkDotNet.Attributes;
using NodaTime;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Benchmarks;

/// <summary>
/// A full room: 20 people of every stage and many factors, 30 movements. The aim is well under a millisecond per person
/// on one core.
/// </summary>
[MemoryDiagnoser]
public class RosterBenchmarks
{
    private const int People = 20;
    private const int Movements = 30;
    private static readonly LocalDate Day = new(2026, 12, 14);

    private RuleBook book = null!;
    private ClassPlan plan = null!;
    private ClassProfile cls = null!;
    private HerSituation[] people = null!;

    /// <summary>Reads the catalogue that ships and fills the room.</summary>
    [GlobalSetup]
    public void Fill()
    {
        book = RuleBook.Parse(file =>
            File.OpenText(Path.Combine(AppContext.BaseDirectory, "catalogue", file))
        );
        var step = book.Movements.Count / Movements;
        plan = new([
            .. Enumerable
                .Range(0, Movements)
                .Select(at => new PlanItem(book.Movements[at * step].Code, 2)),
        ]);
        cls = new()
        {
            Code = "bench",
            Name = "Bench",
            Stages = book.Stages.Stages.Select(s => s.Code).ToHashSet(StringComparer.Ordinal),
            Traits = new HashSet<string>(StringComparer.Ordinal) { ClassTraits.Supine },
        };
        people = [.. Enumerable.Range(0, People).Select(Person)];
    }

    /// <summary>What becomes of every movement, for everybody in the room.</summary>
    [Benchmark(OperationsPerInvoke = People)]
    public int Plan() =>
        people.Sum(her => PlanRules.Of(plan, her, Day, book, book.Policies).Items.Count);

    /// <summary>The whole fit of the session, for everybody in the room.</summary>
    [Benchmark(OperationsPerInvoke = People)]
    public int Fit() =>
        people.Sum(her => FitRules.Of(her, cls, Day, book, book.Policies, plan).Reasons.Count);

    private HerSituation Person(int number)
    {
        var born = number % 4 == 3;
        return new()
        {
            Pregnancy = born
                ? new() { BornOn = Day.PlusDays(-10 * number), BirthMode = (BirthMode)(number % 3) }
                : new() { DueDate = Day.PlusDays(GestationalAge.AtDueDate - 30 - 12 * number) },
            Factors =
            [
                .. book
                    .Factors.Where(f => !f.IsCondition)
                    .Skip(number % 10)
                    .Take(number % 4)
                    .Select(f => new HeldFactor(f.Code, Day.PlusDays(-30), null)),
            ],
            Letters = [new(Day.PlusDays(-20), Day.PlusDays(100))],
            Screening = new(Day.PlusDays(-20), ScreeningOutcome.NothingFound),
        };
    }
}
