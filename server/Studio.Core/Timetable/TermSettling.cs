namespace Studio.Core.Timetable;

/// <summary>A way to staff a term that breaks no rule, found at once: where a search begins, and what is left when it ends early.</summary>
internal static class TermSettling
{
    /// <summary>Keeps of what is wished whatever fits, in the order of time, and gives the rest to whoever has least.</summary>
    public static int?[] Settle(TermChoices choices, TermBends bends, int?[] wished)
    {
        var who = new int?[choices.Free.Count];
        var before = choices
            .Near.SelectMany((near, s) => near.Select(n => (Later: n.Session, Near: n, Session: s)))
            .ToLookup(n => n.Later);
        var minutes = new Dictionary<(int, NodaTime.LocalDate), int>();
        int Load(int session, int person) =>
            minutes.GetValueOrDefault((person, choices.WeekOf[session]));

        bool Fits(int s, int p) =>
            choices.Can[s, p]
            && choices.Near[s].TrueForAll(n => who[n.Session] != p || !choices.Forbids(n, p))
            && before[s].All(n => who[n.Session] != p || !choices.Forbids(n.Near, p))
            && (
                bends.WeeklyMinutes
                || Load(s, p) + choices.Free[s].Minutes <= choices.MinutesLeft(p, choices.WeekOf[s])
            );

        void Give(int s, int p)
        {
            who[s] = p;
            minutes[(p, choices.WeekOf[s])] = Load(s, p) + choices.Free[s].Minutes;
        }

        for (var s = 0; s < wished.Length; s++)
            if (wished[s] is { } p && Fits(s, p))
                Give(s, p);
        foreach (
            var s in Enumerable
                .Range(0, wished.Length)
                .Where(s => who[s] is null)
                .OrderBy(s => choices.Who(s).Count())
        )
            if (
                choices.Who(s).Where(p => Fits(s, p)).OrderBy(p => Load(s, p)).ToList()
                is [var p, ..]
            )
                Give(s, p);
        return who;
    }
}
