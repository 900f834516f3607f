using CsCheck;
using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>Statements about stages that hold in every pregnancy and with every set of boundaries.</summary>
public class ArbitraryPregnancies
{
    // The default hundred would seldom meet the rare combinations.
    private const int Many = 5000;

    private static readonly LocalDate Start = new(2024, 1, 1);

    private static readonly Gen<LocalDate> AnyDay = Gen.Frequency(
        (20, Gen.Int[0, 900].Select(days => Start.PlusDays(days))),
        (
            1,
            Gen.OneOf(
                LocalDate.MinIsoValue,
                LocalDate.MinIsoValue.PlusDays(100),
                LocalDate.MaxIsoValue.PlusDays(-30),
                LocalDate.MaxIsoValue
            )
        )
    );

    private static readonly Gen<LocalDate?> MaybeDay = Gen.Frequency(
        (1, Gen.Const((LocalDate?)null)),
        (1, AnyDay.Select(day => (LocalDate?)day))
    );

    private static readonly Gen<Pregnancy> AnyPregnancy = Gen.Select(
        Gen.Frequency((1, Gen.Const((LocalDate?)null)), (5, AnyDay.Select(day => (LocalDate?)day))),
        MaybeDay,
        Gen.Frequency((4, Gen.Const((LocalDate?)null)), (1, AnyDay.Select(day => (LocalDate?)day))),
        Gen.Int[1, 3],
        (due, born, ended, babies) =>
            new Pregnancy
            {
                DueDate = due,
                BornOn = born,
                EndedOn = ended,
                Babies = babies,
            }
    );

    private static readonly Gen<StageScheme> AnyScheme = Gen.Select(
            Gen.Int[1, 150],
            Gen.Int[151, 308],
            Gen.Int[1, 60],
            Gen.Int[61, 365]
        )
        .Select(days =>
            ((string Code, int Day)[])
                [
                    ("second-trimester", days.Item1),
                    ("third-trimester", days.Item2),
                    ("postnatal", days.Item3),
                    ("later-postnatal", days.Item4),
                ]
        )
        .Select(moves =>
            moves.Aggregate(
                Given.Stages,
                (scheme, move) => scheme.WithBoundary(move.Code, move.Day).Expected()
            )
        );

    [Fact]
    public void Have_exactly_one_stage_on_every_day_that_has_one() =>
        Gen.Select(AnyScheme, AnyPregnancy, AnyDay)
            .Sample(
                (scheme, pregnancy, day) =>
                {
                    var situation = scheme.On(pregnancy, day);
                    var count =
                        situation.Phase == Phase.Born ? StageCount.Birth : StageCount.Pregnancy;
                    var counted = situation.DaysSinceBirth ?? situation.Age?.Days;
                    var covering = scheme.Stages.Where(stage =>
                        counted is { } days
                        && stage.CountsFrom == count
                        && stage.FromDay <= days
                        && (stage.ToDay ?? int.MaxValue) >= days
                    );
                    return situation.Phase is Phase.Pregnant or Phase.Born
                        ? covering.Single() == situation.Stage
                        : (situation.Stage, situation.Age, situation.DaysSinceBirth)
                            == (null, null, null);
                },
                iter: Many
            );

    [Fact]
    public void Have_bands_that_say_the_same_as_each_single_day() =>
        Gen.Select(AnyScheme, AnyPregnancy, AnyDay)
            .Sample(
                (scheme, pregnancy, day) =>
                    scheme
                        .Bands(pregnancy)
                        .SingleOrDefault(band =>
                            band.From <= day && (band.To is null || day <= band.To)
                        )
                        ?.Stage == scheme.On(pregnancy, day).Stage,
                iter: Many
            );

    [Fact]
    public void Have_bands_in_order_that_do_not_overlap() =>
        Gen.Select(AnyScheme, AnyPregnancy)
            .Sample(
                (scheme, pregnancy) =>
                {
                    var bands = scheme.Bands(pregnancy);
                    return bands.All(band => band.To is null || band.From <= band.To)
                        && bands.Zip(bands.Skip(1)).All(pair => pair.First.To < pair.Second.From);
                },
                iter: Many
            );

    [Fact]
    public void Have_a_next_stage_that_begins_on_its_day() =>
        Gen.Select(AnyScheme, AnyPregnancy, AnyDay)
            .Sample(
                (scheme, pregnancy, day) =>
                    scheme.Next(pregnancy, day) is not { } next
                    || (next.From > day && scheme.On(pregnancy, next.From).Stage == next.Stage),
                iter: Many
            );

    [Fact]
    public void May_have_ended_in_a_birth_only_while_none_is_known() =>
        Gen.Select(AnyPregnancy, AnyDay)
            .Sample(
                (pregnancy, day) =>
                {
                    var situation = Given.Stages.On(pregnancy, day);
                    return situation.MayHaveGivenBirth
                        == (
                            situation.Age?.Days >= 37 * 7
                            && pregnancy.BornOn is null
                            && pregnancy.EndedOn is null
                        );
                },
                iter: Many
            );

    [Fact]
    public void Show_nothing_from_a_loss_on() =>
        Gen.Select(AnyPregnancy, AnyDay)
            .Sample(
                (pregnancy, day) =>
                    !(pregnancy.EndedOn <= day)
                    || Given.Stages.On(pregnancy, day)
                        == new Situation { On = day, Phase = Phase.Ended },
                iter: Many
            );
}
