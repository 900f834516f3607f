namespace Studio.Core.Catalogue;

/// <summary>When something can be true of a client.</summary>
public enum HeldWhen
{
    /// <summary>Only until the birth.</summary>
    Pregnancy,

    /// <summary>Before and after the birth.</summary>
    Any,
}

/// <summary>Something about a client that changes what suits her; she may hold its code for a time.</summary>
/// <param name="Code">Stable, kebab-case.</param>
/// <param name="Name">In plain words, for herself and whoever may read it.</param>
/// <param name="IsCondition">One of the listed conditions, rather than how she feels or moves.</param>
/// <param name="InstructorWords">What to do about it in class, without naming it.</param>
public sealed record Factor(string Code, string Name, bool IsCondition, string InstructorWords)
{
    /// <summary>When it can be true; outside that it is not considered.</summary>
    public HeldWhen When { get; init; } = HeldWhen.Any;

    /// <summary>The condition this factor counts as, when it does.</summary>
    public string? SameAs { get; init; }
}
