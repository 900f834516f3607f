using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;

namespace Studio.Core.Screenings;

/// <summary>How a screening stands on a day.</summary>
public enum ScreeningStatus
{
    /// <summary>It counts on that day.</summary>
    Current,

    /// <summary>There was one, and it is to be answered again.</summary>
    Due,

    /// <summary>She has never answered.</summary>
    None,
}

/// <summary>Why the questions are asked, most pressing first.</summary>
public enum AskedBecause
{
    /// <summary>She has never answered them.</summary>
    Never,

    /// <summary>They were answered in an earlier pregnancy.</summary>
    NewPregnancy,

    /// <summary>A warning sign came up since.</summary>
    WarningSign,

    /// <summary>The baby was born since.</summary>
    Birth,

    /// <summary>The policy's interval has passed.</summary>
    Interval,

    /// <summary>She has come into a new stage since.</summary>
    NewStage,
}

/// <summary>How long a screening counts, and when it is asked again.</summary>
public static class ScreeningRules
{
    /// <summary>
    /// How her latest screening stands on a day; fail closed: one answered later does not count yet. It counts for the
    /// policy's interval, never past the birth or a warning sign it was answered before, and, where the policy says so,
    /// not past the stage. No published source gives an interval in pregnancy (CL14), so it is the studio's.
    /// </summary>
    public static ScreeningStatus On(
        HerSituation her,
        LocalDate day,
        StageScheme stages,
        StudioPolicies policies
    ) =>
        her.Screening is not { } screening || screening.AnsweredOn > day ? ScreeningStatus.None
        : Asked(her, day, stages, policies)
            .Any(why =>
                why != AskedBecause.NewStage || policies.ScreeningAtStage == ScreeningAtStage.Needed
            )
            ? ScreeningStatus.Due
        : ScreeningStatus.Current;

    /// <summary>Why she is asked to answer on a day; empty when she is not.</summary>
    public static IReadOnlyList<AskedBecause> Asked(
        HerSituation her,
        LocalDate day,
        StageScheme stages,
        StudioPolicies policies
    )
    {
        if (her.Screening is not { } screening || screening.AnsweredOn > day)
            return [AskedBecause.Never];
        var on = screening.AnsweredOn;
        var why = new List<AskedBecause>();
        if (on < her.Pregnancy?.PapersFrom)
            why.Add(AskedBecause.NewPregnancy);
        if (her.Holds.Any(h => h.From > on && h.From <= day))
            why.Add(AskedBecause.WarningSign);
        if (her.Pregnancy?.BornOn is { } born && born > on && born <= day)
            why.Add(AskedBecause.Birth);
        if (on.PlusDays(policies.ScreeningMostDays) < day)
            why.Add(AskedBecause.Interval);
        if (
            policies.ScreeningAtStage != ScreeningAtStage.No
            && her.Pregnancy is { } pregnancy
            && stages.Bands(pregnancy).Any(b => b.From > on && b.From <= day)
        )
            why.Add(AskedBecause.NewStage);
        return why;
    }
}
