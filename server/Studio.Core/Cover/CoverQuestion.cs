using Studio.Core.Timetable;

namespace Studio.Core.Cover;

/// <summary>What a colleague said when she was asked.</summary>
public enum CoverAnswer
{
    /// <summary>She can take it.</summary>
    Can,

    /// <summary>She cannot.</summary>
    Cannot,
}

/// <summary>A session that needs somebody to teach it, with what makes one colleague suit it better than another.</summary>
public sealed record CoverQuestion
{
    /// <summary>The session.</summary>
    public required PlacedSession Session { get; init; }

    /// <summary>Who cannot teach it; null when nobody was to.</summary>
    public long? InsteadOf { get; init; }

    /// <summary>How many people have a seat in it.</summary>
    public int Booked { get; init; }

    /// <summary>Of them, how many each has taught lately.</summary>
    public IReadOnlyDictionary<long, int> Knows { get; init; } = new Dictionary<long, int>();

    /// <summary>How often each has taught this class lately.</summary>
    public IReadOnlyDictionary<long, int> Taught { get; init; } = new Dictionary<long, int>();

    /// <summary>What those said who were asked.</summary>
    public IReadOnlyDictionary<long, CoverAnswer> Answers { get; init; } =
        new Dictionary<long, CoverAnswer>();

    /// <summary>Those who have asked for cover of something of their own on that day.</summary>
    public IReadOnlySet<long> AskThatDay { get; init; } = new HashSet<long>();
}

/// <summary>Everybody who teaches, and what.</summary>
public sealed record CoverStaff
{
    /// <summary>What is known of people and places.</summary>
    public required TimetableFacts Facts { get; init; }

    /// <summary>Every session that is held in the weeks of those that need somebody, and on the days about them.</summary>
    public required IReadOnlyList<PlacedSession> Sessions { get; init; }

    /// <summary>How many sessions each took over from somebody lately.</summary>
    public IReadOnlyDictionary<long, int> Covers { get; init; } = new Dictionary<long, int>();

    /// <summary>What she teaches as things stand.</summary>
    public IEnumerable<PlacedSession> Of(long instructorId) =>
        Sessions.Where(s => s.InstructorId == instructorId);
}
