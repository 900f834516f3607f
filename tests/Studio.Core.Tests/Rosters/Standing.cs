using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Rosters;
using Studio.Core.Tests.Booking;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Rosters;

/// <summary>The flags that stand for an invented client on <see cref="Someone.Day"/>.</summary>
internal static class Standing
{
    public const long ClientId = 7;

    /// <summary>A class for every stage that asks nothing of a body.</summary>
    public static readonly ClassProfile Gentle = Someone.AClass("breath-only");

    /// <summary>Her flags, with seats so many days ahead in a class.</summary>
    public static IReadOnlyList<StandingFlag> Flags(
        this HerSituation her,
        ClassProfile cls,
        params int[] daysAhead
    ) => her.FlagsUnder(Someone.Policies, cls, daysAhead);

    public static IReadOnlyList<StandingFlag> FlagsUnder(
        this HerSituation her,
        StudioPolicies policies,
        ClassProfile cls,
        params int[] daysAhead
    ) =>
        Core.Rosters.Flags.Of(
            new ClientState(
                ClientId,
                Someone.Day,
                her,
                [
                    .. daysAhead.Select(days => new SeatAhead(
                        100 + days,
                        cls.Name,
                        Someone.Day.PlusDays(days),
                        her.On(Someone.Day.PlusDays(days), cls, policies)
                    )),
                ]
            ),
            TheCatalogue.Book,
            policies
        );

    public static IEnumerable<StandingFlag> Of(
        this IEnumerable<StandingFlag> flags,
        FlagKind kind
    ) => flags.Where(f => f.Kind == kind);

    /// <summary>The same client, except that her due date lies so many days after the day.</summary>
    public static HerSituation DueIn(this HerSituation her, int days) =>
        her with
        {
            Pregnancy = (her.Pregnancy ?? new Pregnancy()) with
            {
                DueDate = Someone.Day.PlusDays(days),
            },
        };
}
