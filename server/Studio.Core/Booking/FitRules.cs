using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;

namespace Studio.Core.Booking;

/// <summary>
/// How a class suits a client on the date of a session. The strictest reason wins and every reason is kept; what is not
/// known is never taken for cleared. It supports judgement and does not diagnose: her clinician's word comes first.
/// </summary>
public static class FitRules
{
    /// <summary>How the class suits her on the session's own date, where it is held.</summary>
    /// <param name="her">All that is known of her, past and present.</param>
    /// <param name="cls">The class.</param>
    /// <param name="on">The session's date; never today's.</param>
    /// <param name="book">The catalogue.</param>
    /// <param name="policies">The studio's choices.</param>
    /// <param name="plan">What the session is made of, where that is planned; each movement then speaks for itself.</param>
    public static Fit Of(
        HerSituation her,
        ClassProfile cls,
        LocalDate on,
        RuleBook book,
        StudioPolicies policies,
        ClassPlan? plan = null
    )
    {
        var question = new FitQuestion(her, cls, on, book, policies, plan);
        List<Reason> reasons =
        [
            .. Reasons(question)
                .Distinct()
                .OrderByDescending(r => r.Verdict)
                .ThenBy(ReasonCodes.RankOf)
                .ThenBy(r => r.Rule, StringComparer.Ordinal)
                .ThenBy(r => r.Factor, StringComparer.Ordinal)
                .ThenBy(r => r.ForHer, StringComparer.Ordinal),
        ];
        return new Fit(
            reasons.Count == 0 ? Suits.Suitable : reasons[0].Verdict,
            reasons,
            question.At
        )
        {
            Plan = question.Plan,
        };
    }

    /// <summary>
    /// Whether she needs a clearance letter on a day at all: because everybody does, or because her screening, a condition
    /// or a factor asks for one whatever the class. What a single class asks for is in its fit.
    /// </summary>
    public static bool AsksForLetter(
        HerSituation her,
        LocalDate day,
        RuleBook book,
        StudioPolicies policies
    )
    {
        var anyClass = new ClassProfile
        {
            Code = "any",
            Name = "any",
            Stages = book.Stages.Stages.Select(s => s.Code).ToHashSet(StringComparer.Ordinal),
            Traits = new HashSet<string>(StringComparer.Ordinal),
        };
        return Of(her with { Letters = [] }, anyClass, day, book, policies)
            .Reasons.Any(r => r.Code == ReasonCodes.ClearanceNeeded);
    }

    private static IEnumerable<Reason> Reasons(FitQuestion question) =>
        question.At.Phase switch
        {
            // Alone and without a word of why: nothing else may be read from the list.
            Phase.Ended => [StageFit.NotBookable],
            Phase.Unknown or Phase.BeforeDates =>
            [
                StageFit.DatesNeeded(question),
                .. PaperFit.Reasons(question),
                .. ClassFaults(question),
            ],
            Phase.Pregnant or Phase.Born =>
            [
                .. StageFit.Reasons(question),
                .. PaperFit.Reasons(question),
                .. ConditionFit.Reasons(question),
                .. ClassRuleFit.Reasons(question),
                .. RestrictionFit.Reasons(question),
                .. PlanReasons.Of(question),
                .. ClassFaults(question),
            ],
        };

    private static IEnumerable<Reason> ClassFaults(FitQuestion question) =>
        question.Class.Faults(question.Book).Any()
            ?
            [
                new Reason
                {
                    Code = ReasonCodes.ClassUnclear,
                    Verdict = Suits.NotSuitable,
                    ForHer =
                        "This class is not described well enough yet for us to say whether it suits you.",
                    ForDesk =
                        "The class's description is incomplete: the owner has to complete it.",
                },
            ]
            : [];
}
