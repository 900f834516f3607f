using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Api.Http;
using Studio.Api.Timetable;
using Studio.Core.Cover;

namespace Studio.Api.Cover;

/// <summary>How a session stands as to who teaches it.</summary>
public enum CoverState
{
    /// <summary>Somebody does.</summary>
    Taught,

    /// <summary>She cannot, and nobody has taken it yet.</summary>
    Asked,

    /// <summary>Nobody is to teach it.</summary>
    Nobody,
}

/// <summary>Somebody who could take a session, or could not.</summary>
public sealed record CandidateMessage
{
    /// <summary>The instructor.</summary>
    public required long InstructorId { get; init; }

    /// <summary>Her name.</summary>
    public required string Name { get; init; }

    /// <summary>Her phone, for those who ring: the owner always, the front desk when it is urgent.</summary>
    public string? Phone { get; init; }

    /// <summary>Whether she can take it.</summary>
    public required CoverStanding Standing { get; init; }

    /// <summary>What she said.</summary>
    public CoverAnswer? Answer { get; init; }

    /// <summary>What stands against it; for colleagues and the front desk it stays between her and the owner.</summary>
    public required IReadOnlyList<string> Against { get; init; }

    /// <summary>What else there is to know, as far as the reader may.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }
}

/// <summary>A session with who could take it.</summary>
public sealed record CoverMessage
{
    /// <summary>The session.</summary>
    public required SessionSummary Session { get; init; }

    /// <summary>How it stands.</summary>
    public required CoverState State { get; init; }

    /// <summary>It begins within a day and nobody teaches it.</summary>
    public required bool IsLoud { get; init; }

    /// <summary>A request is open, and colleagues are asked.</summary>
    public required bool IsAsked { get; init; }

    /// <summary>Name of whoever cannot teach it.</summary>
    public string? InsteadOf { get; init; }

    /// <summary>When cover was asked.</summary>
    public Instant? AskedAt { get; init; }

    /// <summary>Everybody, ranked.</summary>
    public required IReadOnlyList<CandidateMessage> Candidates { get; init; }
}

/// <summary>What nobody teaches, the soonest first.</summary>
/// <param name="Settles">Who settles cover here.</param>
/// <param name="Open">The sessions.</param>
public sealed record CoverListMessage(CoverSettles Settles, IReadOnlyList<CoverMessage> Open);

/// <summary>A session that she is asked to take.</summary>
public sealed record CoverAskedMessage
{
    /// <summary>The session.</summary>
    public required SessionSummary Session { get; init; }

    /// <summary>Name of whoever cannot teach it.</summary>
    public string? InsteadOf { get; init; }

    /// <summary>What she said.</summary>
    public CoverAnswer? Answer { get; init; }

    /// <summary>Nothing stands in the way of her taking it at once.</summary>
    public required bool MayTake { get; init; }

    /// <summary>What stands against it.</summary>
    public required IReadOnlyList<string> Against { get; init; }

    /// <summary>Why it suits her, and what there is to know.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }
}

/// <summary>Cover, as far as one instructor is concerned.</summary>
/// <param name="Settles">Who settles cover here.</param>
/// <param name="Mine">Sessions of hers for which cover is asked.</param>
/// <param name="Asked">Sessions she is asked to take.</param>
public sealed record MyCoverMessage(
    CoverSettles Settles,
    IReadOnlyList<CoverMessage> Mine,
    IReadOnlyList<CoverAskedMessage> Asked
);

/// <summary>What asking brought about.</summary>
/// <param name="Sessions">The sessions for which cover is asked now.</param>
/// <param name="Asked">How many colleagues are asked.</param>
public sealed record CoverRequested(IReadOnlyList<long> Sessions, int Asked);

/// <summary>Days on which somebody cannot teach.</summary>
public sealed record AwayRequest
{
    /// <summary>The first day.</summary>
    public required LocalDate From { get; init; }

    /// <summary>The last day.</summary>
    public required LocalDate To { get; init; }

    /// <summary>Who; an instructor may leave it out.</summary>
    public long? InstructorId { get; init; }
}

/// <summary>What a colleague answers.</summary>
public sealed record CoverAnswerRequest
{
    /// <summary>Whether she can.</summary>
    public required CoverAnswer Answer { get; init; }
}

/// <summary>Taking a session.</summary>
public sealed record TakeRequest
{
    /// <summary>She accepts that it lies outside the hours she gave.</summary>
    public bool Anyway { get; init; }
}

/// <summary>Which sessions to work out together.</summary>
public sealed record CoverPlanRequest
{
    /// <summary>The sessions; left out or empty: everything that nobody teaches.</summary>
    [MaxLength(100)]
    public IReadOnlyList<long>? SessionIds { get; init; }
}

/// <summary>One session of a proposal.</summary>
public sealed record CoverStepMessage
{
    /// <summary>The session.</summary>
    public required SessionSummary Session { get; init; }

    /// <summary>Who would take it; null when nobody can.</summary>
    public CandidateMessage? By { get; init; }

    /// <summary>Where nobody can: everybody, with what keeps her from it.</summary>
    public required IReadOnlyList<CandidateMessage> WhyNobody { get; init; }
}

/// <summary>A proposal for several sessions. Nothing of it is kept.</summary>
/// <param name="Steps">One a session, in the order of time.</param>
/// <param name="IsBest">Nothing better exists.</param>
public sealed record CoverPlanMessage(IReadOnlyList<CoverStepMessage> Steps, bool IsBest);

/// <summary>One session and who is to teach it.</summary>
public sealed record CoverChoice
{
    /// <summary>The session.</summary>
    public required long SessionId { get; init; }

    /// <summary>Who.</summary>
    public required long InstructorId { get; init; }
}

/// <summary>What is to be settled, all or nothing.</summary>
public sealed record SettleRequest
{
    /// <summary>The sessions.</summary>
    [Required, MinLength(1), MaxLength(100)]
    [NoGaps]
    public required IReadOnlyList<CoverChoice> Covers { get; init; }

    /// <summary>What the owner may accept (hours, rest, an answer that she cannot) is accepted.</summary>
    public bool Anyway { get; init; }
}
