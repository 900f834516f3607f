using Studio.Core.Pregnancies;

namespace Studio.Core.Catalogue;

/// <summary>What a list of contraindications says about a condition, milder first.</summary>
public enum Severity
{
    /// <summary>Not on the list.</summary>
    None,

    /// <summary>Her clinician decides.</summary>
    Relative,

    /// <summary>No moderate or harder effort; everyday activity goes on.</summary>
    Absolute,
}

/// <summary>One list's word on a condition.</summary>
/// <param name="Severity">What it says.</param>
/// <param name="From">The gestational age from which it counts; null when it always does.</param>
/// <param name="Source">The list.</param>
public sealed record Listing(Severity Severity, GestationalAge? From, Source Source);

/// <summary>A condition of the published lists of contraindications.</summary>
public sealed record Condition
{
    /// <summary>The fact row it restates, C01 to C40.</summary>
    public required string Reference { get; init; }

    /// <summary>Code, name and words, as for any other factor.</summary>
    public required Factor Factor { get; init; }

    /// <summary>ACOG's list.</summary>
    public required Listing Acog { get; init; }

    /// <summary>The Canadian list of 2019.</summary>
    public required Listing Canada { get; init; }

    /// <summary>A review's word where neither list has one; counts under the stricter reading only.</summary>
    public Listing? Review { get; init; }

    /// <summary>What it asks for once the baby is born; null when the birth ends it.</summary>
    public Listing? AfterBirth { get; init; }

    /// <summary>The fewest babies at which a pregnancy has this condition by itself; null when it never does.</summary>
    public int? BabiesFrom { get; init; }

    /// <summary>The most babies at which it does; null for no upper end.</summary>
    public int? BabiesTo { get; init; }

    /// <summary>Whether so many babies are this condition.</summary>
    public bool ComesWith(int babies) =>
        babies >= BabiesFrom && babies <= (BabiesTo ?? int.MaxValue);

    /// <summary>The strictest word that counts at a gestational age; null when nothing does yet.</summary>
    public Listing? At(GestationalAge age, StudioPolicies policies) =>
        Listings(policies.Guideline)
            .Where(l =>
                l.Severity > Severity.None
                && Begins(l, policies) is var from
                && (from is null || age.Days >= from.Value.Days)
            )
            .OrderByDescending(l => l.Severity)
            .ThenBy(l => l.Source.Verification)
            .ThenBy(l => l.Source.Id, StringComparer.Ordinal)
            .FirstOrDefault();

    /// <summary>The age from which a listing counts, as the policy reads "after so many weeks".</summary>
    public static GestationalAge? Begins(Listing listing, StudioPolicies policies) =>
        listing.From is not { } from ? null
        : policies.WeekReading == WeekReading.WeekLater ? new GestationalAge(from.Days + 7)
        : from;

    private IEnumerable<Listing> Listings(Guideline guideline) =>
        guideline switch
        {
            Guideline.Acog => [Acog],
            Guideline.Canada => [Canada],
            Guideline.Stricter => Review is null ? [Acog, Canada] : [Acog, Canada, Review],
        };
}
