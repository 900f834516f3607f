using NodaTime;

namespace Studio.Core.Cover;

/// <summary>How a request for cover stands.</summary>
public enum CoverStatus
{
    /// <summary>Nobody has taken it yet.</summary>
    Open,

    /// <summary>Somebody teaches it instead.</summary>
    Covered,

    /// <summary>She teaches it after all, or the owner took the question back.</summary>
    Withdrawn,

    /// <summary>The session began, or is not held.</summary>
    Lapsed,
}

/// <summary>Who settles cover.</summary>
public enum CoverSettles
{
    /// <summary>The owner, of those who said that they can.</summary>
    Owner,

    /// <summary>A colleague who can takes it herself, at once.</summary>
    Instructors,
}

/// <summary>When a session without anybody is loud, and what may be asked of it.</summary>
public static class CoverRules
{
    /// <summary>From how long before it begins a session that nobody teaches comes before anything else.</summary>
    public static readonly Duration LoudBefore = Duration.FromHours(24);

    /// <summary>The most days she can be away at once.</summary>
    public const int MostDays = 93;

    /// <summary>Whether a session that nobody teaches comes before anything else at the desk.</summary>
    public static bool IsLoud(Instant startsAt, Instant now) =>
        now < startsAt && startsAt <= now + LoudBefore;

    /// <summary>Why days away make no sense, or null when they do.</summary>
    public static Refusal? WhyNotAway(LocalDate from, LocalDate to, LocalDate today) =>
        to < from ? CoverRefusals.LastBeforeFirst
        : to < today ? CoverRefusals.DaysArePast
        : Period.DaysBetween(from, to) >= MostDays ? CoverRefusals.TooManyDays
        : null;
}

/// <summary>The ways in which cover is refused.</summary>
public static class CoverRefusals
{
    /// <summary>There is no such session for this reader.</summary>
    public static readonly Refusal NoSuchSession = new(
        RefusalKind.NotFound,
        "no-such-session",
        "There is no such session."
    );

    /// <summary>Nobody is asked to take it, as far as she knows.</summary>
    public static readonly Refusal NotAsked = new(
        RefusalKind.NotFound,
        "no-such-request",
        "You are not asked to take this session."
    );

    /// <summary>There is no such instructor.</summary>
    public static readonly Refusal NoSuchInstructor = new(
        RefusalKind.Invalid,
        "no-such-instructor",
        "There is no such instructor.",
        "instructorId"
    );

    /// <summary>It has begun.</summary>
    public static readonly Refusal HasBegun = new(
        RefusalKind.Conflict,
        "session-begun",
        "This session has already begun: cover can no longer be asked or settled."
    );

    /// <summary>It is not held.</summary>
    public static readonly Refusal NotHeld = new(
        RefusalKind.Conflict,
        "session-cancelled",
        "This session is not held, so nobody is needed for it."
    );

    /// <summary>Cover was asked already.</summary>
    public static readonly Refusal AskedAlready = new(
        RefusalKind.Conflict,
        "cover-asked",
        "Cover has been asked for this session already. You find it among the open requests."
    );

    /// <summary>Nobody asked, or it is settled.</summary>
    public static readonly Refusal NotOpen = new(
        RefusalKind.Conflict,
        "cover-not-open",
        "No request for cover is open for this session."
    );

    /// <summary>Somebody was quicker.</summary>
    /// <param name="by">Who teaches it now.</param>
    public static Refusal Settled(string by) =>
        new(
            RefusalKind.Conflict,
            "cover-settled",
            $"{by} teaches this session by now. Nothing was changed."
        );

    /// <summary>It has somebody, and nobody asked for cover.</summary>
    public static Refusal HasSomebody(string by) =>
        new(
            RefusalKind.Conflict,
            "cover-not-needed",
            $"{by} teaches this session and has not asked for cover. Ask for cover first, or change the session itself."
        );

    /// <summary>The owner settles here.</summary>
    public static readonly Refusal OwnerSettles = new(
        RefusalKind.NotAllowed,
        "cover-owner-settles",
        "In this studio the owner settles cover. Say that you can, and she is told."
    );

    /// <summary>Something only the owner may accept stands against it.</summary>
    public static Refusal ForTheOwner(string words) =>
        new(
            RefusalKind.NotAllowed,
            "cover-for-owner",
            $"{words} That is for the owner to accept: say that you can, and she is told."
        );

    /// <summary>She said no.</summary>
    public static Refusal Declines(string name, string words) =>
        new(
            RefusalKind.Conflict,
            "cover-declined",
            $"{name}: {words} If you have spoken to her since, settle it all the same.",
            "anyway"
        );

    /// <summary>She cannot take her own.</summary>
    public static readonly Refusal HerOwn = new(
        RefusalKind.Conflict,
        "cover-her-own",
        "She is the one who asked for cover of this session. If she teaches it after all, withdraw the request.",
        "instructorId"
    );

    /// <summary>The same session twice in a list.</summary>
    public static readonly Refusal Twice = new(
        RefusalKind.Invalid,
        "cover-twice",
        "A session stands in the list twice. Name each once.",
        "covers"
    );

    /// <summary>The last day lies before the first.</summary>
    public static readonly Refusal LastBeforeFirst = new(
        RefusalKind.Invalid,
        "bad-range",
        "The last day lies before the first.",
        "to"
    );

    /// <summary>All of it lies behind us.</summary>
    public static readonly Refusal DaysArePast = new(
        RefusalKind.Invalid,
        "bad-range",
        "These days are past. Cover can be asked from today on.",
        "to"
    );

    /// <summary>Too long.</summary>
    public static readonly Refusal TooManyDays = new(
        RefusalKind.Invalid,
        "bad-range",
        $"At most {CoverRules.MostDays} days can be asked for at once.",
        "to"
    );

    /// <summary>She teaches nothing then.</summary>
    public static readonly Refusal NothingToCover = new(
        RefusalKind.Conflict,
        "nothing-to-cover",
        "No session to come is taught on these days that cover has not been asked for already.",
        "from"
    );
}
