using CsCheck;
using Studio.Core.Staff;

namespace Studio.Core.Tests.Staff;

public class WhatIsPaid
{
    private static readonly LocalDate Day = new(2027, 3, 1);

    private static readonly PaidSession Fifty = new()
    {
        Id = 1,
        InstructorId = 1,
        ClassId = 1,
        On = Day,
        Minutes = 50,
        CheckedIn = 6,
        SeatsTaken = 8,
    };

    private static readonly PayRate Anybody = new()
    {
        Id = 1,
        Per = PayPer.Session,
        Amount = 2000,
        Currency = "EUR",
        From = Day.PlusDays(-100),
    };

    private static readonly Gen<PaidSession> ASession = Gen.Select(
        Gen.Long[1, 3],
        Gen.Long[1, 3],
        Gen.Int[0, 60],
        Gen.Int[5, 240],
        Gen.Int[0, 12],
        Gen.Int[0, 3],
        (by, of, day, minutes, came, stayedAway) =>
            new PaidSession
            {
                Id = 0,
                InstructorId = by,
                ClassId = of,
                On = Day.PlusDays(day),
                Minutes = minutes,
                CheckedIn = came,
                SeatsTaken = came + stayedAway,
            }
    );

    private static readonly Gen<PayRate> ARate = Gen.Select(
        Gen.Long[0, 3],
        Gen.Long[0, 3],
        Gen.Enum<PayPer>(),
        Gen.Long[0, 9999],
        Gen.Int[-10, 60],
        Gen.Bool,
        (by, of, per, amount, from, euro) =>
            new PayRate
            {
                Id = 0,
                InstructorId = by == 0 ? null : by,
                ClassId = of == 0 ? null : of,
                Per = per,
                Amount = amount,
                Currency = euro ? "EUR" : "JPY",
                From = Day.PlusDays(from),
                Heads = per == PayPer.Head ? HeadCount.CheckedIn : null,
            }
    );

    private static readonly Gen<(PaidSession[] Sessions, PayRate[] Rates)> AMonth = Gen.Select(
        ASession.Array[0, 30],
        ARate.Array[0, 8],
        (sessions, rates) =>
            (
                sessions.Select((s, i) => s with { Id = i + 1 }).OrderBy(s => s.On).ToArray(),
                rates.Select((r, i) => r with { Id = i + 1 }).ToArray()
            )
    );

    // 50 minutes at 1999 an hour are 1665.83…; at 2001, 1667.5, a half exactly.
    [Theory]
    [InlineData(PayPer.Session, 2000, 2000)]
    [InlineData(PayPer.Hour, 2400, 2000)]
    [InlineData(PayPer.Hour, 1999, 1666)]
    [InlineData(PayPer.Hour, 2001, 1668)]
    [InlineData(PayPer.Hour, 2003, 1669)]
    [InlineData(PayPer.Hour, 0, 0)]
    [InlineData(PayPer.Head, 350, 2100)]
    public void A_line_is_rounded_half_away_from_zero(PayPer per, long amount, long paid) =>
        Assert.Equal(
            paid,
            PayRules.Line(Fifty, [Anybody with { Per = per, Amount = amount }]).Amount
        );

    // Against decimal arithmetic of the base library, which knows this rounding by name.
    [Fact]
    public void Hours_are_paid_as_decimal_arithmetic_has_it() =>
        Gen.Select(Gen.Int[1, 240], Gen.Long[0, 100_000_000])
            .Sample(
                (minutes, amount) =>
                    Assert.Equal(
                        (long)
                            Math.Round(
                                amount * (decimal)minutes / 60,
                                MidpointRounding.AwayFromZero
                            ),
                        PayRules
                            .Line(
                                Fifty with
                                {
                                    Minutes = minutes,
                                },
                                [Anybody with { Per = PayPer.Hour, Amount = amount }]
                            )
                            .Amount
                    ),
                iter: 2000
            );

    [Theory]
    [InlineData(HeadCount.CheckedIn, 6)]
    [InlineData(HeadCount.SeatsTaken, 8)]
    public void Heads_are_those_who_came_or_those_who_had_a_seat(HeadCount heads, int counted)
    {
        var line = PayRules.Line(
            Fifty,
            [Anybody with { Per = PayPer.Head, Amount = 300, Heads = heads }]
        );
        Assert.Equal(counted, line.Heads);
        Assert.Equal(300L * counted, line.Amount);
    }

    [Fact]
    public void The_most_particular_rate_counts_and_of_those_the_newest()
    {
        PayRate[] rates =
        [
            Anybody,
            Anybody with
            {
                Id = 2,
                ClassId = 1,
                Amount = 2100,
            },
            Anybody with
            {
                Id = 3,
                InstructorId = 1,
                Amount = 2200,
                From = Day.PlusDays(-300),
            },
            Anybody with
            {
                Id = 4,
                InstructorId = 1,
                ClassId = 1,
                Amount = 2300,
                From = Day.PlusDays(-300),
            },
            Anybody with
            {
                Id = 5,
                InstructorId = 1,
                ClassId = 1,
                Amount = 2400,
                From = Day,
            },
            Anybody with
            {
                Id = 6,
                InstructorId = 1,
                ClassId = 1,
                Amount = 9900,
                From = Day.PlusDays(1),
            },
        ];
        long? Paid(PaidSession session) => PayRules.Line(session, rates).Amount;
        Assert.Equal(2400, Paid(Fifty));
        Assert.Equal(2300, Paid(Fifty with { On = Day.PlusDays(-1) }));
        Assert.Equal(2200, Paid(Fifty with { ClassId = 2 }));
        Assert.Equal(2100, Paid(Fifty with { InstructorId = 2 }));
        Assert.Equal(2000, Paid(Fifty with { InstructorId = 2, ClassId = 2 }));
    }

    [Fact]
    public void Of_two_from_the_same_day_the_later_entered_counts() =>
        Assert.Equal(
            2500,
            PayRules.Line(Fifty, [Anybody with { Id = 9, Amount = 2500 }, Anybody]).Amount
        );

    [Fact]
    public void Without_a_rate_it_is_not_known_what_is_paid_which_is_not_nothing()
    {
        var line = PayRules.Line(Fifty, [Anybody with { From = Day.PlusDays(1) }]);
        Assert.Null(line.Amount);
        Assert.Null(line.Rate);
        Assert.Empty(PayRules.Totals([line]));
    }

    [Fact]
    public void A_total_is_the_sum_of_its_lines_in_each_currency() =>
        AMonth.Sample(
            month =>
            {
                var lines = PayRules.Lines(month.Sessions, month.Rates, Day, Day.PlusDays(60));
                Assert.Equal(month.Sessions.Length, lines.Count);
                var totals = PayRules.Totals(lines);
                foreach (var currency in new[] { "EUR", "JPY" })
                    Assert.Equal(
                        lines.Where(l => l.Rate?.Currency == currency).Sum(l => l.Amount ?? 0),
                        totals.SingleOrDefault(t => t.Currency == currency)?.Amount ?? 0
                    );
                Assert.Equal(
                    lines.Count,
                    totals.Sum(t => t.Sessions) + lines.Count(l => l.Rate is null)
                );
            },
            iter: 400
        );

    [Fact]
    public void Days_parted_anywhere_give_the_same_lines() =>
        Gen.Select(AMonth, Gen.Int[0, 59])
            .Sample(
                (month, at) =>
                {
                    var (first, last) = (Day, Day.PlusDays(60));
                    Assert.Equal(
                        PayRules.Lines(month.Sessions, month.Rates, first, last),
                        PayRules
                            .Lines(month.Sessions, month.Rates, first, Day.PlusDays(at))
                            .Concat(
                                PayRules.Lines(
                                    month.Sessions,
                                    month.Rates,
                                    Day.PlusDays(at + 1),
                                    last
                                )
                            )
                    );
                },
                iter: 400
            );

    // Decimal places of ISO 4217, list one; from memory.
    [Theory]
    [InlineData(1250, "EUR", "12.50")]
    [InlineData(5, "EUR", "0.05")]
    [InlineData(0, "EUR", "0.00")]
    [InlineData(1250, "JPY", "1250")]
    [InlineData(1250, "BHD", "1.250")]
    public void An_amount_is_written_with_the_places_of_its_currency(
        long amount,
        string currency,
        string text
    ) => Assert.Equal(text, Currency.Text(amount, currency));

    [Theory]
    [InlineData("12.50", "EUR", 1250L)]
    [InlineData("12.5", "EUR", 1250L)]
    [InlineData("12", "EUR", 1200L)]
    [InlineData("0", "EUR", 0L)]
    [InlineData("1200", "JPY", 1200L)]
    [InlineData("1.234", "KWD", 1234L)]
    [InlineData("12.505", "EUR", null)]
    [InlineData("12.5", "JPY", null)]
    [InlineData("-1", "EUR", null)]
    [InlineData("1,50", "EUR", null)]
    [InlineData("1000000.01", "EUR", null)]
    [InlineData("", "EUR", null)]
    public void An_amount_is_read_in_the_smallest_unit(
        string text,
        string currency,
        long? amount
    ) => Assert.Equal(amount, Currency.Read(text, currency));

    [Theory]
    [InlineData("EUR", true)]
    [InlineData("eur", false)]
    [InlineData("ERU", false)]
    [InlineData("", false)]
    public void A_currency_is_one_there_is(string code, bool exists) =>
        Assert.Equal(exists, Currency.Exists(code));
}
