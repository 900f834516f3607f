using NodaTime;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core.Catalogue;
using Studio.Core.Cover;

namespace Studio.Api.Cover;

/// <summary>Some sessions with what is asked of them and everybody who could take them, read at one moment.</summary>
public sealed class CoverBoard
{
    // An ISO week and the days about it: hours of a week, rest and travel reach no further.
    private const int DaysAround = 8;

    /// <summary>Requests that are open.</summary>
    public required IReadOnlyList<CoverRow> Open { get; init; }

    /// <summary>The sessions, in the order of time.</summary>
    public required IReadOnlyList<SessionRow> Sessions { get; init; }

    /// <summary>Everybody who teaches, and what.</summary>
    public required CoverStaff Staff { get; init; }

    /// <summary>What ranks people, by session.</summary>
    public required IReadOnlyDictionary<long, CoverQuestion> Questions { get; init; }

    /// <summary>The request open for a session.</summary>
    public CoverRow? Request(long sessionId) => Open.FirstOrDefault(o => o.SessionId == sessionId);

    /// <summary>Everybody, ranked, for a session that is held.</summary>
    public IReadOnlyList<CoverCandidate> Ranked(long sessionId) =>
        Questions.TryGetValue(sessionId, out var question)
            ? CoverRanking.Rank(question, Staff)
            : [];

    /// <summary>Reads what is needed for these sessions.</summary>
    public static async Task<CoverBoard> OfAsync(
        Read read,
        RuleBook book,
        Instant now,
        IReadOnlyCollection<long> sessionIds
    )
    {
        var open = await CoverStore.OpenAsync(read, now);
        var rows = await SessionStore.OfAsync(read, sessionIds);
        var placed =
            rows.Count == 0
                ? []
                : await TimetableStore.PlacedAsync(
                    read,
                    rows.Min(r => r.OnDate).PlusDays(-DaysAround),
                    rows.Max(r => r.OnDate).PlusDays(DaysAround)
                );
        var ids = rows.Select(r => r.Id).ToHashSet();
        return new CoverBoard
        {
            Open = open,
            Sessions = rows,
            Staff = new CoverStaff
            {
                Facts = await TimetableStore.FactsAsync(read, book),
                Sessions = placed,
                Covers = await CoverStore.CoversAsync(read, now),
            },
            Questions = await CoverStore.QuestionsAsync(
                read,
                [.. placed.Where(p => ids.Contains(p.Key))],
                open,
                now
            ),
        };
    }
}
