namespace Studio.Core.Clients;

/// <summary>Every way of saying no to a wish to be erased.</summary>
public static class ErasureRefusals
{
    /// <summary>There is nothing to take back.</summary>
    public static readonly Refusal NotAsked = new(
        RefusalKind.NotFound,
        "not-asked",
        "No erasure has been asked for, so there is nothing to take back."
    );

    /// <summary>The name is typed so that nobody is erased by a slip.</summary>
    public static readonly Refusal OtherName = new(
        RefusalKind.Invalid,
        "other-name",
        "This is not her name as it stands on her page. Nothing was erased: type her full name.",
        "name"
    );

    /// <summary>What would be kept is no longer what was shown.</summary>
    public static readonly Refusal OtherThanShown = new(
        RefusalKind.Conflict,
        "other-than-shown",
        "What has to be kept, or until when, has changed since it was shown. Nothing was erased: read it again and confirm.",
        "seen"
    );

    /// <summary>There is no such erasure, or nothing of it is set apart.</summary>
    public static readonly Refusal NothingSetApart = new(
        RefusalKind.NotFound,
        "nothing-set-apart",
        "Nothing is set apart here. What was kept for a time is erased once its last day has passed."
    );
}
