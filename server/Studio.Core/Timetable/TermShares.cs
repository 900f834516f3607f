namespace Studio.Core.Timetable;

/// <summary>
/// What an even load is. In each ISO week everybody has a share of the minutes that can be staffed: in the proportion of
/// what was agreed for her week (where nothing was, of the mean of the others), and no more than she could teach at all.
/// Up to a session from her share is even.
/// </summary>
public static class TermShares
{
    // A minute counts once beyond one session from the share, and again beyond two and four: two people who
    // are a little over are better than one who is far over.
    private static readonly int[] Sessions = [1, 2, 4];

    /// <summary>The minutes each would teach if all were even; what cannot be shared out falls to nobody.</summary>
    /// <param name="minutes">Minutes to be shared.</param>
    /// <param name="people">What was agreed for each one's week, and the most she could teach.</param>
    public static IReadOnlyList<int> Of(
        int minutes,
        IReadOnlyList<(int? Agreed, int Possible)> people
    )
    {
        var bounds = people.Where(p => p.Agreed > 0).Select(p => (long)p.Agreed!.Value).ToList();
        var mean = bounds.Count == 0 ? 1 : Math.Max(1, bounds.Sum() / bounds.Count);
        var weights = people.Select(p => p.Agreed ?? mean).ToList();
        var shares = new int[people.Count];
        var open = Enumerable.Range(0, people.Count).Where(p => weights[p] > 0).ToList();
        long left = minutes;
        while (open.Count > 0)
        {
            var all = open.Sum(p => weights[p]);
            var full = open.Where(p => left * weights[p] >= people[p].Possible * all).ToList();
            if (full.Count == 0)
            {
                foreach (var p in open)
                    shares[p] = (int)(left * weights[p] / all);
                break;
            }

            foreach (var p in full)
                left -= shares[p] = people[p].Possible;
            left = Math.Max(0, left);
            open = [.. open.Except(full)];
        }

        return shares;
    }

    /// <summary>How uneven a load is.</summary>
    /// <param name="minutes">What she teaches in the week.</param>
    /// <param name="share">Her share.</param>
    /// <param name="longest">Minutes of the longest session that is free in the week.</param>
    public static int Uneven(int minutes, int share, int longest) =>
        Slack(longest).Sum(slack => Math.Max(0, Math.Abs(minutes - share) - slack));

    /// <summary>The distances from the share beyond which a minute counts once more.</summary>
    internal static IEnumerable<int> Slack(int longest) =>
        Sessions.Select(sessions => sessions * longest);
}
