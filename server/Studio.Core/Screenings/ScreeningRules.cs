using NodaTime;
using Studio.Core.Catalogue;
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

/// <summary>How long a screening counts.</summary>
public static class ScreeningRules
{
    /// <summary>
    /// The last day a screening counts: the policy's interval after it, and never past the birth it was answered before.
    /// No published source gives an interval in pregnancy, so it is the studio's.
    /// </summary>
    public static LocalDate CountsUntil(
        Screening screening,
        Pregnancy? pregnancy,
        StudioPolicies policies
    )
    {
        var byPolicy = screening.AnsweredOn.PlusDays(policies.ScreeningMostDays);
        return pregnancy?.BornOn is { } born && screening.AnsweredOn < born && born <= byPolicy
            ? born.PlusDays(-1)
            : byPolicy;
    }

    /// <summary>How her latest screening stands on a day; fail closed: one answered later does not count yet.</summary>
    public static ScreeningStatus On(
        Screening? screening,
        Pregnancy? pregnancy,
        LocalDate day,
        StudioPolicies policies
    ) =>
        screening is null || screening.AnsweredOn > day ? ScreeningStatus.None
        : day > CountsUntil(screening, pregnancy, policies) ? ScreeningStatus.Due
        : ScreeningStatus.Current;
}
