using Studio.Core.Catalogue;

namespace Studio.Core.Intensity;

/// <summary>For whom a band of intensity was published.</summary>
public enum IntensityPopulation
{
    /// <summary>Pregnant, medically screened, at low risk: the Canadian table of 2019, by age.</summary>
    Canada,

    /// <summary>Pregnant: ACOG, at any age.</summary>
    Acog,

    /// <summary>Adults in general, not only in pregnancy.</summary>
    Adults,
}

/// <summary>How hard it is.</summary>
public enum IntensityLevel
{
    /// <summary>Light.</summary>
    Light,

    /// <summary>Moderate: what classes aim at.</summary>
    Moderate,

    /// <summary>Vigorous.</summary>
    Vigorous,
}

/// <summary>In what a band is measured.</summary>
public enum IntensityUnit
{
    /// <summary>Beats of the heart a minute.</summary>
    Beats,

    /// <summary>Percent of the highest heart rate expected at her age.</summary>
    Percent,

    /// <summary>Borg's scale from 6 to 20.</summary>
    Borg,

    /// <summary>Borg's scale from 0 to 10.</summary>
    Cr10,

    /// <summary>What she can still say: words, no numbers.</summary>
    Talk,
}

/// <summary>One published band, a row of <c>heart_rates.csv</c>.</summary>
public sealed record IntensityBand
{
    /// <summary>For whom.</summary>
    public required IntensityPopulation Population { get; init; }

    /// <summary>The youngest age it was published for, in completed years; null for no lower end.</summary>
    public int? AgeFrom { get; init; }

    /// <summary>The oldest age it was published for; null for no upper end.</summary>
    public int? AgeTo { get; init; }

    /// <summary>How hard.</summary>
    public required IntensityLevel Level { get; init; }

    /// <summary>Its lower end; null where none is published.</summary>
    public int? Low { get; init; }

    /// <summary>Its upper end; null for words.</summary>
    public int? High { get; init; }

    /// <summary>In what.</summary>
    public required IntensityUnit Unit { get; init; }

    /// <summary>Where it stands.</summary>
    public required Source Source { get; init; }

    /// <summary>The talk test, said to her.</summary>
    public string? Words { get; init; }
}
