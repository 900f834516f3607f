using NodaTime;

namespace Studio.Core.Timetable;

/// <summary>What a timetable is checked against.</summary>
public sealed record TimetableFacts
{
    /// <summary>Everybody who teaches, by key.</summary>
    public required IReadOnlyDictionary<long, Teacher> Teachers { get; init; }

    /// <summary>Minutes from one location to another; a pair that is missing takes none.</summary>
    public IReadOnlyDictionary<(long From, long To), int> Travel { get; init; } =
        new Dictionary<(long From, long To), int>();

    /// <summary>Days on which a location is shut.</summary>
    public IReadOnlyList<ShutDays> Shut { get; init; } = [];

    /// <summary>Least minutes of rest between two days' teaching, for whom no other bound was set.</summary>
    public int RestMinutesLeast { get; init; }
}

/// <summary>Days on which a location is shut, first and last included.</summary>
public sealed record ShutDays(long LocationId, LocalDate From, LocalDate To, string Name);
