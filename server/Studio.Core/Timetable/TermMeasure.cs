using NodaTime;

namespace Studio.Core.Timetable;

/// <summary>How good a way of staffing is, by each aim: less is better, save for wishes.</summary>
internal sealed class TermMeasure
{
    /// <summary>What an hour not given, or a rest too short, counts for among minutes over the week.</summary>
    public const int OneBend = 60;

    private readonly TermChoices choices;
    private readonly TermBends bends;

    public TermMeasure(TermChoices choices, TermBends bends)
    {
        (this.choices, this.bends) = (choices, bends);
        Weeks =
        [
            .. Enumerable
                .Range(0, choices.Free.Count)
                .GroupBy(s => choices.WeekOf[s])
                .OrderBy(w => w.Key)
                .Select(w => Week(w.Key, [.. w])),
        ];
        Wish = new int[choices.Free.Count, choices.People.Count];
        for (var s = 0; s < choices.Free.Count; s++)
        for (var p = 0; p < choices.People.Count; p++)
            Wish[s, p] = choices
                .People[p]
                .Wishes.Where(w => w.Speaks(choices.Free[s]))
                .Sum(w => w.Weight);
    }

    /// <summary>The weeks with free sessions, in order.</summary>
    public List<TermWeek> Weeks { get; }

    /// <summary>The weight of a person's wishes about a session.</summary>
    public int[,] Wish { get; }

    /// <summary>What was reached for these free sessions, when they are staffed so.</summary>
    public long Of(TermAim aim, IReadOnlyCollection<int> sessions, int?[] who) =>
        aim switch
        {
            TermAim.Unstaffed => sessions.Count(s => who[s] is null),
            TermAim.Bent => Bent(sessions, who),
            TermAim.Changes => sessions.Count(s =>
                choices.Free[s].InstructorId is not null
                && (who[s] is null || who[s] != choices.Today(s))
            ),
            TermAim.Wishes => sessions.Sum(s => who[s] is { } p ? Wish[s, p] : 0),
            TermAim.Load => Weeks
                .Where(w => sessions.Contains(w.Sessions[0]))
                .Sum(w => Uneven(w, who)),
        };

    private long Uneven(TermWeek week, int?[] who)
    {
        var loads = week.Fixed.ToArray();
        foreach (var s in week.Sessions)
            if (who[s] is { } p)
                loads[p] += choices.Free[s].Minutes;
        return loads
            .Select((l, p) => (long)TermShares.Uneven(l, week.Shares[p], week.Longest))
            .Sum();
    }

    private long Bent(IReadOnlyCollection<int> sessions, int?[] who)
    {
        var bent = 0L;
        foreach (var s in sessions)
            if (who[s] is { } p)
                bent +=
                    choices.Bent[s, p]
                    + choices.Near[s].Count(n => who[n.Session] == p && choices.ShortRest(n, p))
                        * OneBend;
        return bent
            + sessions
                .Where(s => who[s] is not null)
                .GroupBy(s => (Person: who[s]!.Value, Week: choices.WeekOf[s]))
                .Sum(hers =>
                    Math.Max(
                        0L,
                        hers.Sum(s => (long)choices.Free[s].Minutes)
                            - choices.MinutesLeft(hers.Key.Person, hers.Key.Week)
                    )
                );
    }

    private TermWeek Week(LocalDate monday, List<int> sessions)
    {
        var people = Enumerable.Range(0, choices.People.Count).ToList();
        int Minutes(IEnumerable<int> some) => some.Sum(s => choices.Free[s].Minutes);
        var stands = people.ConvertAll(p => choices.FixedMinutes.GetValueOrDefault((p, monday)));
        var possible = people.ConvertAll(p =>
            stands[p]
            + Math.Min(
                bends.WeeklyMinutes ? int.MaxValue : choices.MinutesLeft(p, monday),
                Minutes(sessions.Where(s => choices.Can[s, p]))
            )
        );
        return new(
            monday,
            sessions,
            stands,
            TermShares.Of(
                stands.Sum() + Minutes(sessions.Where(s => choices.Who(s).Any())),
                people.ConvertAll(p => (choices.People[p].WeeklyMinutesMost, possible[p]))
            ),
            sessions.Max(s => choices.Free[s].Minutes)
        );
    }
}

/// <summary>A week with free sessions.</summary>
/// <param name="Monday">Its first day.</param>
/// <param name="Sessions">Its free sessions.</param>
/// <param name="Fixed">Minutes of each person that are fixed.</param>
/// <param name="Shares">Minutes each would teach if all were even.</param>
/// <param name="Longest">Minutes of the longest free session.</param>
internal sealed record TermWeek(
    LocalDate Monday,
    List<int> Sessions,
    IReadOnlyList<int> Fixed,
    IReadOnlyList<int> Shares,
    int Longest
);
