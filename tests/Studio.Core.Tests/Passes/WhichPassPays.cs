using CsCheck;
using Studio.Core.Passes;

namespace Studio.Core.Tests.Passes;

/// <summary>Which pass a booking is paid with, and what its ledger says after any history.</summary>
public class WhichPassPays
{
    private static readonly LocalDate Monday = new(2027, 3, 1);

    private static Pass Of(long id, int runs, int credits = 1, PassForm form = PassForm.Classes) =>
        new()
        {
            Id = id,
            Form = form,
            StartsOn = Monday,
            RunsDays = runs,
            Ledger = [new LedgerEntry(EntryKind.Sold, credits)],
        };

    private static long? Pays(LocalDate on, params Pass[] passes) =>
        PassRules.ThatPays(passes, 7, 3, on, [])?.Id;

    [Fact]
    public void What_runs_out_first_pays_first() =>
        Assert.Equal(2, Pays(Monday, Of(1, 56), Of(2, 28), Of(3, 28)));

    [Fact]
    public void On_its_last_day_it_pays_and_on_the_next_it_does_not()
    {
        Assert.Equal(2, Pays(Monday.PlusDays(27), Of(1, 56), Of(2, 28)));
        Assert.Equal(1, Pays(Monday.PlusDays(28), Of(1, 56), Of(2, 28)));
        Assert.Null(Pays(Monday.PlusDays(56), Of(1, 56)));
        Assert.Null(Pays(Monday.PlusDays(-1), Of(1, 56)));
    }

    [Fact]
    public void An_empty_one_does_not_pay_and_a_monthly_one_never_is() =>
        Assert.Equal(2, Pays(Monday, Of(1, 28, 0), Of(2, 30, 0, PassForm.Monthly)));

    [Fact]
    public void One_for_other_classes_does_not_pay()
    {
        var other = Of(1, 28) with { Classes = new HashSet<long> { 4 } };
        Assert.Null(Pays(Monday, other));
        Assert.Equal(
            1,
            Pays(
                Monday,
                other with
                {
                    Classes = new HashSet<long> { 4, 3 },
                }
            )
        );
    }

    [Fact]
    public void A_course_pays_for_its_sessions_and_for_no_others()
    {
        var course = Of(1, 1, 8, PassForm.Course) with { Sessions = new HashSet<long> { 7 } };
        Assert.Equal(1, Pays(Monday.PlusDays(40), Of(2, 56), course));
        Assert.Equal(
            2,
            Pays(Monday, Of(2, 56), course with { Sessions = new HashSet<long> { 8 } })
        );
    }

    [Theory]
    [InlineData(GivenUp.Cancelled, 721, CreditOutcome.Returned)]
    [InlineData(GivenUp.Cancelled, 720, CreditOutcome.Returned)]
    [InlineData(GivenUp.Cancelled, 719, CreditOutcome.Spent)]
    [InlineData(GivenUp.Medical, 1, CreditOutcome.Returned)]
    [InlineData(GivenUp.Held, 1, CreditOutcome.Returned)]
    [InlineData(GivenUp.Birth, 1, CreditOutcome.Returned)]
    [InlineData(GivenUp.Loss, 1, CreditOutcome.Returned)]
    [InlineData(GivenUp.ByTheStudio, 1, CreditOutcome.Returned)]
    public void Cancelling_late_costs_the_credit_unless_it_was_not_her_choice(
        GivenUp why,
        int minutesBefore,
        CreditOutcome outcome
    )
    {
        var starts = Instant.FromUtc(2027, 3, 1, 18, 0);
        var now = starts - Duration.FromMinutes(minutesBefore);
        Assert.Equal(outcome, PassRules.OnGivingUp(true, why, starts, 720, now));
        Assert.Equal(CreditOutcome.None, PassRules.OnGivingUp(false, why, starts, 720, now));
    }

    [Theory]
    // 23 percent of 100.00 is 23.00, so 123.00 holds 23.00: a check by hand, no published source.
    [InlineData(12300, 230, 2300)]
    [InlineData(10000, 0, 0)]
    [InlineData(0, 230, 0)]
    // 210/1210 of 5 is 0.867…, of 3 it is 0.52…, of 2 it is 0.347…
    [InlineData(5, 210, 1)]
    [InlineData(3, 210, 1)]
    [InlineData(2, 210, 0)]
    // Exactly a half goes up: 1 with 1000 thousandths of tax.
    [InlineData(1, 1000, 1)]
    public void Tax_is_inside_the_price(long gross, int perMille, long tax) =>
        Assert.Equal(tax, PassRules.TaxIn(gross, perMille));

    [Fact]
    public void Whatever_happens_no_credit_is_lost_doubled_or_negative() =>
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 3], Gen.Int[-2, 3])
            .Array[0, 40]
            .Sample(
                history =>
                {
                    var pass = Of(1, 56, 5);
                    foreach (var (what, booking, credits) in history)
                    {
                        LedgerEntry entry = what switch
                        {
                            0 or 1 => new(EntryKind.Spent, -1, booking),
                            2 => new(EntryKind.Returned, 1, booking),
                            3 => new(EntryKind.Goodwill, credits),
                            _ => new(EntryKind.Refunded, -pass.Balance),
                        };
                        if (PassRules.WhyNotAdd(pass, entry) is null)
                            pass = pass with { Ledger = [.. pass.Ledger, entry] };

                        Assert.True(pass.Balance >= 0);
                        for (var b = 0; b < 4; b++)
                            Assert.InRange(PassRules.Standing(pass, b), 0, 1);
                        // Every balance is explained: what came in, less what stands against bookings, less what was paid back.
                        var given = pass
                            .Ledger.Where(e => e.Kind is EntryKind.Sold or EntryKind.Goodwill)
                            .Sum(e => e.Credits);
                        var refunded = pass
                            .Ledger.Where(e => e.Kind == EntryKind.Refunded)
                            .Sum(e => -e.Credits);
                        Assert.Equal(
                            given
                                - refunded
                                - Enumerable.Range(0, 4).Sum(b => PassRules.Standing(pass, b)),
                            pass.Balance
                        );
                        if (entry.Kind == EntryKind.Refunded && pass.Ledger[^1] == entry)
                            Assert.Equal(0, pass.Balance);
                    }
                },
                iter: 2000
            );
}
