using CsCheck;
using Studio.Core.Passes;

namespace Studio.Core.Tests.Passes;

/// <summary>Ten classes within eight weeks, sold on a Monday; what holds, a birth and a loss do to its last day.</summary>
public class WhenAPassRunsOut
{
    private static readonly LocalDate Monday = new(2027, 3, 1);

    private static readonly Pass Ten = new()
    {
        Id = 1,
        Form = PassForm.Classes,
        StartsOn = Monday,
        RunsDays = 56,
    };

    private static LocalDate? Last(params StandStill[] stills) => PassClock.LastDay(Ten, stills);

    [Fact]
    public void Its_first_day_counts() => Assert.Equal(new LocalDate(2027, 4, 25), Last());

    [Theory]
    [InlineData(0, 0, 1, "a single day")]
    [InlineData(3, 9, 7, "a week in the middle")]
    [InlineData(55, 60, 6, "from its last day on")]
    [InlineData(56, 60, 0, "when it was over")]
    [InlineData(-9, 2, 3, "begun before it was sold: only its own days")]
    [InlineData(-9, -1, 0, "over before it was sold")]
    [InlineData(5, 4, 0, "no day at all")]
    public void Each_day_it_stood_still_is_a_day_more(int from, int to, int more, string because) =>
        Assert.True(
            more
                == PassClock.PutOffDays(
                    Ten,
                    [new StandStill(Monday.PlusDays(from), Monday.PlusDays(to))]
                ),
            because
        );

    [Fact]
    public void A_standstill_within_the_days_added_by_another_counts_too() =>
        Assert.Equal(
            10 + 5,
            PassClock.PutOffDays(
                Ten,
                [
                    new StandStill(Monday.PlusDays(60), Monday.PlusDays(64)),
                    new StandStill(Monday.PlusDays(50), Monday.PlusDays(59)),
                ]
            )
        );

    [Fact]
    public void While_nobody_knows_until_when_it_does_not_run_out()
    {
        Assert.Null(Last(new StandStill(Monday.PlusDays(55), null)));
        Assert.NotNull(Last(new StandStill(Monday.PlusDays(56), null)));
    }

    [Fact]
    public void It_can_be_used_on_as_many_days_outside_standstills_as_it_runs() =>
        Gen.Select(Gen.Int[-20, 120], Gen.Int[0, 40])
            .Array[0, 4]
            .Sample(
                stills =>
                {
                    StandStill[] all =
                    [
                        .. stills.Select(s => new StandStill(
                            Monday.PlusDays(s.Item1),
                            Monday.PlusDays(s.Item1 + s.Item2)
                        )),
                    ];
                    var last = PassClock.LastDay(Ten, all)!.Value;
                    var ran = Enumerable
                        .Range(0, Period.DaysBetween(Monday, last) + 1)
                        .Select(Monday.PlusDays)
                        .Count(day => !all.Any(s => s.From <= day && day <= s.To));
                    Assert.Equal(Ten.RunsDays, ran);
                },
                iter: 2000
            );

    [Fact]
    public void A_hold_stands_until_the_day_before_it_was_lifted()
    {
        var stills = PassClock.StandStills(
            new StandStillFacts(
                [(Monday, Monday.PlusDays(7)), (Monday.PlusDays(20), Monday.PlusDays(20))],
                [],
                0,
                0
            )
        );
        Assert.Equal([new StandStill(Monday, Monday.PlusDays(6))], stills);
    }

    [Theory]
    [InlineData(0, 0, "a birth on the due date")]
    [InlineData(-21, -21, "three weeks before it")]
    [InlineData(7, 0, "a week after it: from the due date, when there was no word yet")]
    public void Around_a_birth_it_stands_still(int bornDay, int fromDay, string because)
    {
        var due = new LocalDate(2027, 6, 1);
        var born = due.PlusDays(bornDay);
        var still = Assert.Single(
            PassClock.StandStills(
                new StandStillFacts([], [new PassPregnancy(due, born, null, null)], 0, 6)
            )
        );
        Assert.True(still.From == due.PlusDays(fromDay), because);
        Assert.Equal(born.PlusDays(41), still.To);
    }

    [Fact]
    public void A_loss_stops_it_until_she_is_back()
    {
        static IReadOnlyList<StandStill> After(LocalDate? back) =>
            PassClock.StandStills(
                new StandStillFacts(
                    [],
                    [new PassPregnancy(Monday.PlusDays(200), null, Monday, back)],
                    0,
                    6
                )
            );
        Assert.Null(Last([.. After(null)]));
        Assert.Equal(
            new LocalDate(2027, 4, 25).PlusDays(30),
            Last([.. After(Monday.PlusDays(30))])
        );
    }
}
