using Studio.Core.Timetable;

namespace Studio.Core.Cover;

/// <summary>Whether somebody can take a session, best first.</summary>
public enum CoverStanding
{
    /// <summary>Nothing stands against it.</summary>
    Free,

    /// <summary>She can, with something the owner has to accept.</summary>
    WithCare,

    /// <summary>She said that she cannot, or has asked for cover herself on that day.</summary>
    Declines,

    /// <summary>She cannot teach it, whatever anybody accepts.</summary>
    NotFree,
}

/// <summary>What a reason is about.</summary>
public enum CoverReasonKind
{
    /// <summary>Something keeps her from it.</summary>
    Hard,

    /// <summary>Something the owner would have to accept.</summary>
    Soft,

    /// <summary>What she said.</summary>
    Answer,

    /// <summary>How many of the people booked she has taught.</summary>
    Knows,

    /// <summary>How often she has taught this class.</summary>
    Taught,

    /// <summary>What she likes, or does not.</summary>
    Wish,

    /// <summary>How many sessions she took over from others.</summary>
    Covers,

    /// <summary>How much she would teach in that week.</summary>
    Load,
}

/// <summary>A reason in plain words, for the owner and for herself.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Words">For the owner, who reads her name beside it.</param>
/// <param name="ToHer">The same, said to her.</param>
public sealed record CoverReason(CoverReasonKind Kind, string Words, string ToHer)
{
    /// <summary>Whether a colleague or the front desk may read it: nobody's leave, hours, wishes or load.</summary>
    public bool IsForOthers =>
        Kind is CoverReasonKind.Answer or CoverReasonKind.Knows or CoverReasonKind.Taught;
}

/// <summary>Somebody who teaches, as far as one session is concerned.</summary>
public sealed record CoverCandidate
{
    /// <summary>Key of the instructor.</summary>
    public required long InstructorId { get; init; }

    /// <summary>Her name.</summary>
    public required string Name { get; init; }

    /// <summary>Whether she can take it.</summary>
    public required CoverStanding Standing { get; init; }

    /// <summary>What stands against it, as the timetable's checks named it.</summary>
    public required IReadOnlyList<Conflict> Against { get; init; }

    /// <summary>Every reason, what stands against it first.</summary>
    public required IReadOnlyList<CoverReason> Reasons { get; init; }

    /// <summary>What she said, when she was asked and answered.</summary>
    public CoverAnswer? Answer { get; init; }

    /// <summary>What speaks for her, in one number; more is better. Compares those of one session only.</summary>
    public required int Score { get; init; }

    /// <summary>She may be proposed for it.</summary>
    public bool CanBeProposed => Standing <= CoverStanding.WithCare;

    /// <summary>How many conflicts the owner would have to accept.</summary>
    public int Softs => Against.Count(c => !c.IsHard);
}
