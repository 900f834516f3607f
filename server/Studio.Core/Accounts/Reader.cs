namespace Studio.Core.Accounts;

/// <summary>What a person may be at the studio; one person may be several.</summary>
public enum Role
{
    /// <summary>Keeps timetable, staff, policies; may see health records.</summary>
    Owner,

    /// <summary>Reads clearance letters and answers, and records what they ask for; the owner gives this to somebody.</summary>
    Reviewer,

    /// <summary>Books, cancels, checks in; sees verdicts, never conditions.</summary>
    FrontDesk,

    /// <summary>Teaches; sees what the people on her own rosters need from her.</summary>
    Instructor,

    /// <summary>Comes to class; sees all of her own.</summary>
    Client,
}

/// <summary>For whom words are chosen, most knowing first.</summary>
public enum Audience
{
    /// <summary>The owner.</summary>
    Owner,

    /// <summary>The client herself.</summary>
    Herself,

    /// <summary>The instructor of the session.</summary>
    Instructor,

    /// <summary>The front desk.</summary>
    FrontDesk,
}

/// <summary>Who is asking. Decides, per object, what may be seen; the page never decides.</summary>
public sealed record Reader
{
    /// <summary>Her account.</summary>
    public required long AccountId { get; init; }

    /// <summary>Her roles.</summary>
    public required IReadOnlySet<Role> Roles { get; init; }

    /// <summary>The client she is, when she is one.</summary>
    public long? ClientId { get; init; }

    /// <summary>The instructor she is, when she is one.</summary>
    public long? InstructorId { get; init; }

    /// <summary>The owner.</summary>
    public bool IsOwner => Roles.Contains(Role.Owner);

    /// <summary>May read letters: the owner, or whom she gave it to.</summary>
    public bool Reviews => IsOwner || Roles.Contains(Role.Reviewer);

    /// <summary>Front desk, or the owner, who may do all that the desk does.</summary>
    public bool WorksAtDesk => IsOwner || Roles.Contains(Role.FrontDesk);

    /// <summary>Whether she may read what stands in a client's letters; after a loss only the owner and the client herself.</summary>
    public bool ReadsLetters(long clientId, bool ended) =>
        IsOwner || ClientId == clientId || (Reviews && !ended);

    /// <summary>As what she looks at a client's record, for the audit: owner, herself, reviewer, instructor or frontDesk.</summary>
    public string SeenAs(long clientId) =>
        IsOwner ? "owner"
        : ClientId == clientId ? "herself"
        : Roles.Contains(Role.Reviewer) ? "reviewer"
        : Roles.Contains(Role.FrontDesk) ? "frontDesk"
        : "instructor";

    /// <summary>
    /// As whom she may look at a client's page, or null when for her there is no such client. After a loss the client
    /// is there for the owner and for herself only.
    /// </summary>
    public Audience? On(long clientId, bool ended) =>
        IsOwner ? Audience.Owner
        : ClientId == clientId ? Audience.Herself
        : Roles.Contains(Role.FrontDesk) && !ended ? Audience.FrontDesk
        : null;

    /// <summary>Whether she may look at an instructor's own page and change what is hers to change: the owner, and she herself.</summary>
    public bool MayKeep(long instructorId) => IsOwner || InstructorId == instructorId;

    /// <summary>As whom she may look at a session's roster, or null when for her there is none.</summary>
    /// <param name="instructorId">Who teaches it; null when nobody does yet.</param>
    public Audience? OnRoster(long? instructorId) =>
        IsOwner ? Audience.Owner
        : InstructorId is { } her && her == instructorId ? Audience.Instructor
        : Roles.Contains(Role.FrontDesk) ? Audience.FrontDesk
        : null;
}
