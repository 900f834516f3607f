namespace Studio.Core.Timetable;

/// <summary>Tells the conflicts a change brings about from those that stood before it.</summary>
public static class ChangedConflicts
{
    /// <summary>
    /// Conflicts that hold after a change, did not hold before it, and have a changed session among theirs. What stood
    /// already does not keep anybody from changing something else.
    /// </summary>
    /// <param name="before">Every session as it was.</param>
    /// <param name="after">The same with the change made.</param>
    /// <param name="changed">Keys of the sessions that were changed or added.</param>
    /// <param name="facts">What is known of people and places.</param>
    public static IReadOnlyList<Conflict> Of(
        IReadOnlyCollection<PlacedSession> before,
        IReadOnlyCollection<PlacedSession> after,
        IReadOnlySet<long> changed,
        TimetableFacts facts
    )
    {
        var stood = Keys(before, TimetableChecks.Of(before, facts))
            .Select(c => c.Key)
            .ToHashSet(StringComparer.Ordinal);
        return
        [
            .. Keys(after, TimetableChecks.Of(after, facts))
                .Where(c => c.Conflict.Sessions.Any(changed.Contains) && !stood.Contains(c.Key))
                .Select(c => c.Conflict),
        ];
    }

    // Whether she may teach that day is a question of the day; everything else also of hour and room.
    private static IEnumerable<(Conflict Conflict, string Key)> Keys(
        IReadOnlyCollection<PlacedSession> sessions,
        IReadOnlyList<Conflict> conflicts
    )
    {
        var at = sessions.ToDictionary(s => s.Key);
        return conflicts.Select(c =>
            (
                c,
                $"{c.Kind} {c.InstructorId} {string.Join(' ', c.Sessions.Order().Select(s => Key(c.Kind, at[s])))}"
            )
        );
    }

    private static string Key(ConflictKind kind, PlacedSession session) =>
        kind switch
        {
            ConflictKind.NotQualified or ConflictKind.OnLeave or ConflictKind.HasLeft =>
                $"{session.Key}/{session.On}",
            ConflictKind.RoomTooSmall or ConflictKind.SeatsTaken =>
                $"{session.Key}/{session.RoomId}/{session.Seats}",
            ConflictKind.RoomTaken
            or ConflictKind.LocationShut
            or ConflictKind.InstructorTaken
            or ConflictKind.NoTimeToTravel
            or ConflictKind.OutsideHours
            or ConflictKind.TooManyHours
            or ConflictKind.TooLittleRest
            or ConflictKind.ShorterThanPlan =>
                $"{session.Key}/{session.StartsAt}/{session.EndsAt}/{session.RoomId}",
        };
}
