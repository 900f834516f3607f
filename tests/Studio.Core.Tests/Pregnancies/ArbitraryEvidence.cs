using CsCheck;
using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>Statements about dating that hold whatever is entered.</summary>
public class ArbitraryEvidence
{
    // The default hundred would seldom meet the rare combinations.
    private const int Many = 5000;

    // Mostly dates that can meet in one pregnancy, sometimes the ends of the calendar.
    private static readonly Gen<LocalDate> AnyDay = Gen.Frequency(
        (20, Gen.Int[0, 500].Select(days => new LocalDate(2023, 11, 1).PlusDays(days))),
        (
            2,
            Gen.Int[-3_000_000, 2_900_000].Select(days => new LocalDate(2000, 1, 1).PlusDays(days))
        ),
        (1, Gen.OneOf(LocalDate.MinIsoValue, LocalDate.MaxIsoValue))
    );

    private static readonly Gen<int> AnyNumber = Gen.Frequency(
        (8, Gen.Int[-2, 320]),
        (1, Gen.Int),
        (1, Gen.OneOf(int.MinValue, int.MaxValue))
    );

    private static readonly Gen<Scan> AnyScan = Gen.Select(
        AnyDay,
        AnyNumber,
        (on, days) => new Scan(on, new(days))
    );

    private static readonly Gen<DatingEvidence> Anything = Gen.Select(
        Maybe(
            Gen.Select(
                AnyDay,
                Gen.Frequency(
                    (1, Gen.Const((int?)null)),
                    (1, Gen.Int[18, 47].Select(days => (int?)days))
                ),
                (day, cycle) => new LastPeriod(day, cycle)
            )
        ),
        AnyScan.List[0, 3],
        Maybe(
            Gen.Select(
                AnyDay,
                Gen.Frequency((6, Gen.Int[0, 8]), (1, AnyNumber)),
                (day, age) => new EmbryoTransfer(day, age)
            )
        ),
        Gen.Frequency((3, Gen.Const((LocalDate?)null)), (1, AnyDay.Select(day => (LocalDate?)day))),
        (period, scans, transfer, stated) =>
            new DatingEvidence
            {
                LastPeriod = period,
                Scans = scans,
                Transfer = transfer,
                Stated = stated,
            }
    );

    // A period and two possible scans of it, so that most samples are reckoned and not refused.
    private static readonly Gen<DatingEvidence> PeriodAndScans = Gen.Select(
        Gen.Int[0, 3000].Select(days => new LocalDate(2020, 1, 1).PlusDays(days)),
        Gen.Int[40, 290],
        Gen.Int[40, 290],
        Gen.Int[28, 294],
        Gen.Int[28, 294],
        (period, one, other, oneAge, otherAge) =>
            new DatingEvidence
            {
                LastPeriod = new(period),
                Scans =
                [
                    new(period.PlusDays(one), new(oneAge)),
                    new(period.PlusDays(other), new(otherAge)),
                ],
            }
    );

    [Fact]
    public void Is_answered_or_refused_by_field_and_never_throws() =>
        Anything.Sample(
            evidence =>
                Dating.Reckon(evidence).TryGet(out var due, out var refusal)
                    ? due.Explanation.Length > 0
                    : refusal
                        is { Kind: RefusalKind.Invalid, Field.Length: > 0, Message.Length: > 0 },
            iter: Many
        );

    [Fact]
    public void Is_reckoned_often_enough_for_these_statements_to_mean_something()
    {
        var (reckoned, moved) = (0, 0);
        PeriodAndScans.Sample(
            evidence =>
            {
                if (!Dating.Reckon(evidence).TryGet(out var due, out _))
                    return;
                Interlocked.Increment(ref reckoned);
                if (due.Basis == DatingBasis.Scan)
                    Interlocked.Increment(ref moved);
            },
            iter: 1000
        );
        Assert.InRange(reckoned, 500, 1000);
        Assert.InRange(moved, 1, reckoned - 1);
    }

    [Fact]
    public void Counts_the_same_in_whatever_order_the_scans_were_entered()
    {
        PeriodAndScans.Sample(Same, iter: Many);
        Anything.Sample(Same, iter: Many);

        static bool Same(DatingEvidence evidence) =>
            Dating.Reckon(evidence)
            == Dating.Reckon(evidence with { Scans = [.. evidence.Scans.Reverse()] });
    }

    [Fact]
    public void Is_never_moved_by_a_later_scan() =>
        PeriodAndScans.Sample(
            evidence =>
            {
                var first = evidence.Scans.MinBy(scan => scan.On)!;
                if (
                    evidence.Scans.Count(scan => scan.On == first.On) > 1
                    || !Dating.Reckon(evidence).TryGet(out var due, out _)
                )
                    return true;
                var alone = (evidence with { Scans = [first] }).Reckoned();
                return (due.On, due.Basis) == (alone.On, alone.Basis);
            },
            iter: Many
        );

    [Fact]
    public void Is_not_moved_by_a_difference_equal_to_the_threshold_and_is_by_one_day_more() =>
        Gen.Select(Gen.Int[50, 270], Gen.Bool, Gen.Int[0, 20000])
            .Sample(
                (byPeriod, older, offset) =>
                {
                    var period = new LocalDate(1990, 1, 1).PlusDays(offset);
                    var threshold = RedatingTable.At(new(byPeriod)).MostDays;
                    return Basis(threshold) == DatingBasis.LastPeriod
                        && Basis(threshold + 1) == DatingBasis.Scan;

                    DatingBasis Basis(int apart) =>
                        new DatingEvidence
                        {
                            LastPeriod = new(period),
                            Scans =
                            [
                                new(
                                    period.PlusDays(byPeriod),
                                    new(byPeriod + (older ? apart : -apart))
                                ),
                            ],
                        }
                            .Reckoned()
                            .Basis;
                },
                iter: Many
            );

    [Fact]
    public void Does_not_move_a_date_from_a_transfer() =>
        Gen.Select(Gen.Int[1, 7], Gen.Int[20, 250], Gen.Int[28, 294])
            .Sample(
                (embryo, after, measured) =>
                {
                    var transfer = new EmbryoTransfer(new(2025, 2, 10), embryo);
                    var evidence = new DatingEvidence
                    {
                        Transfer = transfer,
                        Scans = [new(transfer.On.PlusDays(after), new(measured))],
                    };
                    return !Dating.Reckon(evidence).TryGet(out var due, out _)
                        || (
                            due.On == transfer.On.PlusDays(266 - embryo)
                            && due.Basis == DatingBasis.Transfer
                        );
                },
                iter: Many
            );

    [Fact]
    public void Gives_one_day_more_on_the_next_day() =>
        Gen.Select(AnyDay, AnyDay)
            .Where((day, _) => day < LocalDate.MaxIsoValue)
            .Sample(
                (day, due) =>
                    GestationalAge.On(day.PlusDays(1), due).Days
                    == GestationalAge.On(day, due).Days + 1,
                iter: Many
            );

    [Fact]
    public void Gives_a_due_date_and_an_age_that_are_each_others_inverse() =>
        Gen.Select(
                Gen.Int[0, 70000].Select(days => new LocalDate(1990, 1, 1).PlusDays(days)),
                Gen.Int[28, 294]
            )
            .Sample(
                (day, age) =>
                    Dating
                        .AgeOn(
                            day,
                            new DatingEvidence { Scans = [new(day, new(age))] }
                                .Reckoned()
                                .On
                        )
                        .Expected()
                        .Days == age,
                iter: Many
            );

    [Fact]
    public void Gives_an_age_or_a_refusal_on_any_day_whatever_the_due_date() =>
        Gen.Select(AnyDay, AnyDay)
            .Sample(
                (day, due) =>
                    Dating.AgeOn(day, due).TryGet(out var age, out _)
                    == GestationalAge.On(day, due).Days is >= 0 and <= 308,
                iter: Many
            );

    [Fact]
    public void Has_ages_that_are_read_as_they_are_written() =>
        Gen.Int[0, 699]
            .Sample(
                days =>
                    GestationalAge.TryParse(new GestationalAge(days).ToString(), out var age)
                    && age.Days == days,
                iter: Many
            );

    private static Gen<T?> Maybe<T>(Gen<T> gen)
        where T : class =>
        Gen.Frequency((1, Gen.Const((T?)null)), (2, gen.Select(value => (T?)value)));
}
