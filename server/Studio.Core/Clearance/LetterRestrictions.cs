using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;

namespace Studio.Core.Clearance;

/// <summary>From when to when what a letter asks for holds.</summary>
public static class LetterRestrictions
{
    /// <summary>
    /// What her letters ask for. It holds from the day the letter was written until a later letter takes its place. Once
    /// the letter has run out, a later one that still counts speaks alone; without one, what it asked for stands. A birth
    /// ends it, as it ends the letter.
    /// </summary>
    public static IReadOnlyList<Restriction> Of(
        IReadOnlyList<ClearanceLetter> letters,
        Pregnancy? pregnancy,
        StageScheme stages,
        StudioPolicies policies
    )
    {
        var counting = letters
            .Select(l =>
                (Letter: l, Until: ClearanceRules.ValidUntil(l, pregnancy, stages, policies))
            )
            .Where(l => l.Until is not null)
            .Select(l => (l.Letter, Until: l.Until!.Value))
            .ToList();
        return
        [
            .. from one in counting
            where !one.Letter.Terms.IsEmpty
            let last = Last(one.Letter, one.Until, counting, pregnancy)
            where last is null || last >= one.Letter.IssuedOn
            select new Restriction
            {
                From = one.Letter.IssuedOn,
                To = last,
                LeaveOut = one.Letter.Terms.LeaveOut,
                EffortMost = one.Letter.Terms.EffortMost,
                HeartRateMost = one.Letter.Terms.HeartRateMost,
                Words = one.Letter.Terms.Words,
            },
        ];
    }

    private static LocalDate? Last(
        ClearanceLetter letter,
        LocalDate until,
        IReadOnlyList<(ClearanceLetter Letter, LocalDate Until)> counting,
        Pregnancy? pregnancy
    )
    {
        var later = counting.Where(l => l.Letter.IssuedOn > letter.IssuedOn).ToList();
        LocalDate?[] ends =
        [
            later
                .Where(l => l.Letter.ReplacesEarlier)
                .Select(l => (LocalDate?)l.Letter.IssuedOn.PlusDays(-1))
                .Min(),
            later.Exists(l => l.Until > until && l.Letter.IssuedOn <= until.PlusDays(1))
                ? until
                : null,
            later
                .Where(l => l.Letter.IssuedOn > until)
                .Select(l => (LocalDate?)l.Letter.IssuedOn.PlusDays(-1))
                .Min(),
            pregnancy?.BornOn is { } born && letter.IssuedOn < born ? born.PlusDays(-1) : null,
        ];
        return ends.Min();
    }
}
