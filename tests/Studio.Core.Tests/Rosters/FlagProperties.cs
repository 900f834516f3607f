using CsCheck;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Rosters;
using Studio.Core.Screenings;
using Studio.Core.Tests.Booking;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Rosters;

/// <summary>What holds of the flags of every client.</summary>
public class FlagProperties
{
    private static readonly Gen<(
        HerSituation Her,
        ClassProfile Class,
        StudioPolicies Policies,
        int[] Ahead
    )> Case = Gen.Select(
        Any.Case,
        Gen.Int[0, 40].Array[0, 5].Select(days => days.Distinct().Order().ToArray()),
        (one, ahead) => (one.Her, one.Class, one.Policies, ahead)
    );

    [Fact]
    public void A_flag_stands_once() =>
        Case.AlwaysHolds(c =>
        {
            var flags = Of(c);
            return flags.DistinctBy(f => f.Subject).Count() == flags.Count;
        });

    [Fact]
    public void The_same_state_gives_the_same_flags_whatever_order_its_lists_have() =>
        Case.AlwaysHolds(c =>
            Sorted(Of(c))
                .SequenceEqual(
                    Sorted(
                        Of(
                            (
                                c.Her with
                                {
                                    Factors = [.. c.Her.Factors.Reverse()],
                                    Letters = [.. c.Her.Letters.Reverse()],
                                    Holds = [.. c.Her.Holds.Reverse()],
                                },
                                c.Class,
                                c.Policies,
                                c.Ahead
                            )
                        )
                    )
                )
        );

    [Fact]
    public void After_a_loss_there_is_none() =>
        Case.AlwaysHolds(c =>
            Of(
                (
                    c.Her with
                    {
                        Pregnancy = (c.Her.Pregnancy ?? new Pregnancy()) with
                        {
                            EndedOn = Someone.Day,
                        },
                    },
                    c.Class,
                    c.Policies,
                    c.Ahead
                )
            ).Count == 0
        );

    [Fact]
    public void Every_flag_has_words_a_subject_of_hers_and_a_day_that_has_come() =>
        Case.AlwaysHolds(c =>
            Of(c)
                .All(f =>
                    f.ClientId == Standing.ClientId
                    && f.ForDesk.Length > 0
                    && f.ForInstructor != ""
                    && f.Since <= Someone.Day
                )
        );

    [Fact]
    public void The_desk_never_reads_what_she_holds()
    {
        var telling = TheCatalogue
            .Book.Factors.SelectMany(f => new[] { f.Name, f.Code, f.InstructorWords })
            .ToList();
        Case.AlwaysHolds(c =>
            Of(c)
                .All(f =>
                    !telling.Exists(word =>
                        f.ForDesk.Contains(word, StringComparison.OrdinalIgnoreCase)
                    )
                )
        );
    }

    /// <summary>
    /// What cannot be told apart cannot be given away: of everything in the catalogue, whatever comes to the same verdict
    /// for the same administrative reasons reads the same at the desk.
    /// </summary>
    [Theory]
    [InlineData("9w 0d")]
    [InlineData("20w 0d")]
    [InlineData("36w 0d")]
    [InlineData("after birth")]
    public void The_desk_cannot_tell_two_factors_or_conditions_apart(string when)
    {
        var her = when == "after birth" ? Someone.Born(60) : Someone.Pregnant(when);
        var groups = TheCatalogue
            .Book.Factors.SelectMany(factor =>
                new[] { Standing.Gentle, Someone.AClass("moderate-effort", "impact") }.Select(cls =>
                    (Her: her.Holding(factor.Code, 3), Class: cls)
                )
            )
            .GroupBy(
                one =>
                    (
                        one.Class,
                        string.Join('|', one.Her.On(Someone.Day.PlusDays(6), one.Class).ForDesk())
                    ),
                one => string.Join('\n', one.Her.Flags(one.Class, 6).Select(f => f.ForDesk))
            )
            .ToList();
        Assert.Contains(groups, g => g.Count() > 1);
        Assert.All(groups, g => Assert.Single(g.Distinct()));
    }

    [Fact]
    public void The_desk_cannot_tell_her_answers_apart_from_papers_that_are_missing()
    {
        // With a letter for everyone due anyway, an answer that asks for one says no more than an answer that does not.
        string Desk(ScreeningOutcome outcome) =>
            string.Join(
                '\n',
                (
                    Someone.Pregnant("22w 0d").WithoutLetters() with
                    {
                        Screening = new(Someone.Day.PlusDays(-5), outcome),
                    }
                )
                    .Flags(Standing.Gentle, 6)
                    .Where(f => f.Kind != FlagKind.BookingNoLongerSuits)
                    .Select(f => f.ForDesk)
            );
        Assert.Equal(Desk(ScreeningOutcome.NothingFound), Desk(ScreeningOutcome.ClearanceNeeded));
    }

    private static IReadOnlyList<StandingFlag> Of(
        (HerSituation Her, ClassProfile Class, StudioPolicies Policies, int[] Ahead) c
    ) => c.Her.FlagsUnder(c.Policies, c.Class, c.Ahead);

    private static IEnumerable<StandingFlag> Sorted(IEnumerable<StandingFlag> flags) =>
        flags.OrderBy(f => f.Subject, StringComparer.Ordinal);
}
