namespace Studio.Core;

/// <summary>What sort of "no" this is; the host turns it into an HTTP status.</summary>
public enum RefusalKind
{
    /// <summary>There is no such thing, or this reader may not know of it.</summary>
    NotFound,

    /// <summary>The request does not make sense as it stands.</summary>
    Invalid,

    /// <summary>It makes sense, and the studio's rules or this reader's rights forbid it.</summary>
    NotAllowed,

    /// <summary>It would have been possible in another state.</summary>
    Conflict,
}

/// <summary>An expected "no": a value, not an exception.</summary>
/// <param name="Kind">Decides the HTTP status.</param>
/// <param name="Code">Stable, for programs.</param>
/// <param name="Message">For the person: what is wrong and what to do.</param>
/// <param name="Field">The request's field at fault, camelCase, when one is.</param>
public sealed record Refusal(RefusalKind Kind, string Code, string Message, string? Field = null);
