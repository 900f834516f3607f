using Studio.Core.Timetable;

namespace Studio.Core.Cover;

/// <summary>
/// Ranks everybody who teaches for one session. What stands against somebody is for <see cref="TimetableChecks"/> to say;
/// here it is only put in order, with what speaks for her.
/// </summary>
public static class CoverRanking
{
    /// <summary>How many weeks back "lately" goes.</summary>
    public const int WeeksBack = 8;

    // What speaks for her, in points. Our own weighing, no published source: people who know her weigh most, then that she
    // knows the class, then what she likes; what she took lately and what she teaches that week count against her.
    private const int ForKnowing = 40;
    private const int ForHavingTaught = 20;
    private const int ForAWish = 5;
    private const int ForACover = -8;
    private const int MostForCovers = -40;
    private const int MostForLoad = -20;

    /// <summary>
    /// Everybody but the one it is taken from. First those whom nothing keeps from it, those with fewest things to accept
    /// before the others; then those who said that they can; then by what speaks for them. A total order: two people never
    /// share a place, and the same question always has the same answer.
    /// </summary>
    public static IReadOnlyList<CoverCandidate> Rank(CoverQuestion question, CoverStaff staff) =>
        [
            .. staff
                .Facts.Teachers.Values.Where(t => t.Id != question.InsteadOf)
                .Select(t => Of(t, question, staff))
                .OrderBy(c => c.Standing)
                .ThenBy(c => c.Against.Count(a => a.IsHard))
                .ThenBy(c => c.Softs)
                .ThenBy(c => c.Answer == CoverAnswer.Can ? 0 : 1)
                .ThenByDescending(c => c.Score)
                .ThenBy(c => c.Name, StringComparer.Ordinal)
                .ThenBy(c => c.InstructorId),
        ];

    private static CoverCandidate Of(Teacher teacher, CoverQuestion question, CoverStaff staff)
    {
        var session = question.Session;
        var hers = staff.Of(teacher.Id).Where(s => s.Key != session.Key).ToList();
        var against = TimetableChecks.WhyNot(teacher, session, hers, staff.Facts);
        CoverAnswer? answer = question.Answers.TryGetValue(teacher.Id, out var said) ? said : null;
        var asks = question.AskThatDay.Contains(teacher.Id);

        var week = TimetableChecks.WeekOf(session.On);
        var minutes =
            session.Minutes
            + hers.Where(s => TimetableChecks.WeekOf(s.On) == week).Sum(s => s.Minutes);
        var knows = Math.Min(question.Knows.GetValueOrDefault(teacher.Id), question.Booked);
        var taught = question.Taught.GetValueOrDefault(teacher.Id);
        var covers = staff.Covers.GetValueOrDefault(teacher.Id);
        var wishes = teacher.Wishes.Where(w => w.Speaks(session)).ToList();

        return new CoverCandidate
        {
            InstructorId = teacher.Id,
            Name = teacher.Name,
            Standing =
                against.Any(c => c.IsHard) ? CoverStanding.NotFree
                : asks || answer == CoverAnswer.Cannot ? CoverStanding.Declines
                : against.Count > 0 ? CoverStanding.WithCare
                : CoverStanding.Free,
            Against = against,
            Answer = answer,
            Reasons =
            [
                .. against.Select(CoverWords.Of),
                .. asks ? [CoverWords.Asks] : Array.Empty<CoverReason>(),
                .. answer is { } word ? [CoverWords.Of(word)] : Array.Empty<CoverReason>(),
                .. CoverWords.Knows(knows, question.Booked),
                CoverWords.Taught(taught),
                .. wishes.Select(w => CoverWords.Of(w, session)),
                CoverWords.Covers(covers),
                CoverWords.Load(minutes, teacher.WeeklyMinutesMost),
            ],
            Score =
                (question.Booked == 0 ? 0 : ForKnowing * knows / question.Booked)
                + (taught > 0 ? ForHavingTaught : 0)
                + (ForAWish * wishes.Sum(w => w.Weight))
                + Math.Max(MostForCovers, ForACover * covers)
                + Math.Max(MostForLoad, LoadCosts(minutes, teacher.WeeklyMinutesMost)),
        };
    }

    // As much of what was agreed as she would teach; a point an hour where nothing was agreed.
    private static int LoadCosts(int minutes, int? most) =>
        most is > 0 and { } bound ? MostForLoad * minutes / bound : -minutes / 60;
}
