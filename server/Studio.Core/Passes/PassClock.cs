using NodaTime;

namespace Studio.Core.Passes;

/// <summary>When a pass runs out.</summary>
public static class PassClock
{
    /// <summary>
    /// The last day on which a pass can be used; null while its clock stands still and nobody knows until when.
    /// </summary>
    /// <param name="pass">The pass.</param>
    /// <param name="stills">When no pass of hers runs; they may overlap and come in any order.</param>
    public static LocalDate? LastDay(Pass pass, IEnumerable<StandStill> stills)
    {
        var last = pass.StartsOn.PlusDays(pass.RunsDays - 1);
        foreach (var still in Merged(stills))
        {
            var from = LocalDate.Max(still.From, pass.StartsOn);
            if (from > last)
                break;
            if (still.To is not { } to)
                return null;
            if (to >= from)
                last = last.PlusDays(Period.DaysBetween(from, to) + 1);
        }

        return last;
    }

    /// <summary>Days by which its last day was put off so far; null while nobody knows.</summary>
    public static int? PutOffDays(Pass pass, IEnumerable<StandStill> stills) =>
        LastDay(pass, stills) is { } last
            ? Period.DaysBetween(pass.StartsOn.PlusDays(pass.RunsDays - 1), last)
            : null;

    /// <summary>Whether it can be used on a day.</summary>
    public static bool IsGoodOn(Pass pass, LocalDate day, IEnumerable<StandStill> stills) =>
        day >= pass.StartsOn && (LastDay(pass, stills) is not { } last || day <= last);

    /// <summary>
    /// When no pass of hers runs: each hold from its first day to the day before it was lifted; from a number of weeks
    /// before the due date or the birth itself, whichever came first, to a number of weeks after the birth; from a loss
    /// until she is back.
    /// </summary>
    public static IReadOnlyList<StandStill> StandStills(StandStillFacts facts) =>
        Merged(Causes(facts).Select(c => c.Still));

    /// <summary>The same days before they are put together, each with what stops the clock.</summary>
    public static IReadOnlyList<(StillCause Cause, StandStill Still)> Causes(StandStillFacts facts)
    {
        var found = new List<(StillCause Cause, StandStill Still)>();
        foreach (var (from, lifted) in facts.Holds)
            if (lifted is null || lifted > from)
                found.Add((StillCause.Hold, new StandStill(from, lifted?.PlusDays(-1))));
        foreach (var pregnancy in facts.Pregnancies)
        {
            if (pregnancy.EndedOn is { } ended)
                found.Add((StillCause.Loss, new StandStill(ended, pregnancy.BackOn?.PlusDays(-1))));
            else if (pregnancy.BornOn is { } born)
                found.Add(
                    (
                        StillCause.Birth,
                        new StandStill(
                            BeforeBirth(pregnancy.DueDate, facts.WeeksBeforeDue) is { } before
                            && before < born
                                ? before
                                : born,
                            born.PlusDays((7 * facts.WeeksAfterBirth) - 1)
                        )
                    )
                );
            else if (BeforeBirth(pregnancy.DueDate, facts.WeeksBeforeDue) is { } before)
                // Nobody knows the day yet: what is counted is a birth on the due date, and it is put right afterwards.
                found.Add(
                    (
                        StillCause.Birth,
                        new StandStill(
                            before,
                            pregnancy.DueDate!.Value.PlusDays((7 * facts.WeeksAfterBirth) - 1)
                        )
                    )
                );
        }

        return found;
    }

    private static LocalDate? BeforeBirth(LocalDate? due, int weeks) => due?.PlusDays(-7 * weeks);

    /// <summary>The same days without overlap, in order; what ends before it begins is no day.</summary>
    private static List<StandStill> Merged(IEnumerable<StandStill> stills)
    {
        var merged = new List<StandStill>();
        foreach (
            var still in stills.Where(s => s.To is null || s.To >= s.From).OrderBy(s => s.From)
        )
            if (merged.Count > 0 && (merged[^1].To is not { } to || still.From <= to.PlusDays(1)))
                merged[^1] = merged[^1] with
                {
                    To =
                        merged[^1].To is { } first && still.To is { } second
                            ? LocalDate.Max(first, second)
                            : null,
                };
            else
                merged.Add(still);
        return merged;
    }
}

/// <summary>What stops the clock of a pass.</summary>
public enum StillCause
{
    /// <summary>A hold.</summary>
    Hold,

    /// <summary>The weeks around a birth.</summary>
    Birth,

    /// <summary>A loss, until she is back.</summary>
    Loss,
}

/// <summary>What the standing still of her passes follows from.</summary>
/// <param name="Holds">Every hold, with the day it was lifted.</param>
/// <param name="Pregnancies">Every pregnancy.</param>
/// <param name="WeeksBeforeDue">Weeks before the due date (policy); 0: from the birth only, and from the due date while there is no word.</param>
/// <param name="WeeksAfterBirth">Weeks after the birth (policy).</param>
public sealed record StandStillFacts(
    IReadOnlyList<(LocalDate From, LocalDate? LiftedOn)> Holds,
    IReadOnlyList<PassPregnancy> Pregnancies,
    int WeeksBeforeDue,
    int WeeksAfterBirth
);

/// <summary>A pregnancy as far as passes depend on it.</summary>
/// <param name="DueDate">The due date in force.</param>
/// <param name="BornOn">The birth.</param>
/// <param name="EndedOn">A loss.</param>
/// <param name="BackOn">The day she was back after it.</param>
public sealed record PassPregnancy(
    LocalDate? DueDate,
    LocalDate? BornOn,
    LocalDate? EndedOn,
    LocalDate? BackOn
);
