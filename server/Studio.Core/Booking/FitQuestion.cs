using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;

namespace Studio.Core.Booking;

/// <summary>All that one fit is asked about.</summary>
internal sealed class FitQuestion : HerDay
{
    public FitQuestion(
        HerSituation her,
        ClassProfile cls,
        LocalDate on,
        RuleBook book,
        StudioPolicies policies,
        ClassPlan? plan = null
    )
        : base(her, on, book, policies)
    {
        Class = cls;
        Plan = plan is null ? null : PlanRules.Of(plan, this);
    }

    public ClassProfile Class { get; }

    /// <summary>What becomes of each movement, where the class has a plan.</summary>
    public PlanFit? Plan { get; }
}
