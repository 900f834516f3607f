using NodaTime;

namespace Studio.Core.Timetable;

/// <summary>
/// Who could teach what, by <see cref="TimetableChecks"/> and nothing else: each session alone, beside what is fixed, and
/// each two of the free ones. Sessions and people are named by their place in <see cref="Free"/> and <see cref="People"/>.
/// </summary>
internal sealed class TermChoices
{
    // A date can lie after another and begin before it, where zones differ; never by more than this.
    private static readonly Duration ZonesApart = Duration.FromHours(26);

    private readonly TimetableFacts facts;
    private readonly TermBends bends;
    private readonly List<int> rests;
    private readonly Teacher probe;
    private readonly int reach;

    // Free sessions that lie too near to a fixed one of hers, once for each.
    private readonly List<(int Session, int Person)> restBent = [];

    public TermChoices(TermQuestion question)
    {
        (facts, bends) = (question.Facts, question.Bends);
        var inOrder = question.Sessions.OrderBy(s => s.StartsAt).ThenBy(s => s.Key).ToList();
        bool IsFree(PlacedSession s) =>
            question.MayChange.Contains(s.Key)
            && !question.Pins.ContainsKey(s.Key)
            && question.From <= s.On
            && s.On <= question.To;
        Free = inOrder.FindAll(IsFree);
        Fixed =
        [
            .. inOrder
                .Where(s => !IsFree(s))
                .Select(s =>
                    question.Pins.TryGetValue(s.Key, out var who)
                        ? s with
                        {
                            InstructorId = who,
                        }
                        : s
                ),
        ];
        People = [.. facts.Teachers.Values.OrderBy(t => t.Id)];
        PersonOf = People.Select((t, at) => (t.Id, at)).ToDictionary(t => t.Id, t => t.at);
        rests = [.. People.Select(RestOf).Distinct().Order()];
        reach = Math.Max(rests.Append(0).Max(), facts.Travel.Values.Append(0).Max());
        probe = new Teacher
        {
            Id = 0,
            Name = "",
            Qualifications =
            [
                .. inOrder
                    .Select(s => s.NeedsQualification)
                    .Distinct(StringComparer.Ordinal)
                    .Select(kind => new HeldQualification(
                        kind,
                        LocalDate.MinIsoValue,
                        LocalDate.MaxIsoValue
                    )),
            ],
        };
        WeekOf = [.. Free.Select(s => TimetableChecks.WeekOf(s.On))];
        FixedMinutes = Fixed
            .Where(s => s.InstructorId is { } id && PersonOf.ContainsKey(id))
            .GroupBy(s => (PersonOf[s.InstructorId!.Value], TimetableChecks.WeekOf(s.On)))
            .ToDictionary(g => g.Key, g => g.Sum(s => s.Minutes));

        Near = [.. Free.Select(_ => new List<TermNear>())];
        var cannot = Look(inOrder);
        Can = new bool[Free.Count, People.Count];
        Bent = new int[Free.Count, People.Count];
        for (var s = 0; s < Free.Count; s++)
        for (var p = 0; p < People.Count; p++)
        {
            var alone = TimetableChecks.WhyNot(People[p], Free[s], [], facts);
            Can[s, p] =
                alone.All(c => bends.Allow(c.Kind))
                && !cannot.Contains((s, p))
                && (bends.WeeklyMinutes || Free[s].Minutes <= MinutesLeft(p, WeekOf[s]));
            if (alone.Any(c => c.Kind == ConflictKind.OutsideHours))
                Bent[s, p] += TermMeasure.OneBend;
        }

        foreach (var (s, p) in restBent)
            Bent[s, p] += TermMeasure.OneBend;
    }

    /// <summary>Sessions that may be given to somebody else, in the order of time; by whom they are taught today.</summary>
    public List<PlacedSession> Free { get; }

    /// <summary>All others, as they will be.</summary>
    public List<PlacedSession> Fixed { get; }

    /// <summary>Everybody who teaches.</summary>
    public List<Teacher> People { get; }

    /// <summary>Place of each in <see cref="People"/>, by key.</summary>
    public IReadOnlyDictionary<long, int> PersonOf { get; }

    /// <summary>The Monday of each free session's week.</summary>
    public List<LocalDate> WeekOf { get; }

    /// <summary>Minutes that are fixed, by person and week.</summary>
    public IReadOnlyDictionary<(int Person, LocalDate Week), int> FixedMinutes { get; }

    /// <summary>Whether a person could teach a session, if she taught nothing else of what is free.</summary>
    public bool[,] Can { get; }

    /// <summary>What it would bend if she did, with what is fixed.</summary>
    public int[,] Bent { get; }

    /// <summary>For each free session, the later free ones that not everybody can teach besides it.</summary>
    public List<List<TermNear>> Near { get; }

    /// <summary>Whoever teaches it today, if she is known.</summary>
    public int? Today(int session) =>
        Free[session].InstructorId is { } id && PersonOf.TryGetValue(id, out var at) ? at : null;

    /// <summary>Those who could teach it.</summary>
    public IEnumerable<int> Who(int session) =>
        Enumerable.Range(0, People.Count).Where(p => Can[session, p]);

    /// <summary>What was agreed for her week, less what is fixed; no bound: as much as there is.</summary>
    public int MinutesLeft(int person, LocalDate week) =>
        People[person].WeeklyMinutesMost is { } most
            ? Math.Max(0, most - FixedMinutes.GetValueOrDefault((person, week)))
            : int.MaxValue;

    /// <summary>She can never teach both.</summary>
    public bool Forbids(TermNear near, int person) =>
        near.AtOnce || (!bends.Rest && ShortRest(near, person));

    /// <summary>She could teach both, and would rest too little between them.</summary>
    public bool ShortRest(TermNear near, int person) =>
        near.ShortFor.Contains(RestOf(People[person]));

    private int RestOf(Teacher teacher) => teacher.RestMinutesLeast ?? facts.RestMinutesLeast;

    // Fills Near, adds what fixed sessions bend, and gives who cannot teach what because of them.
    private HashSet<(int Session, int Person)> Look(List<PlacedSession> inOrder)
    {
        var cannot = new HashSet<(int, int)>();
        var freeAt = Free.Select((s, at) => (s.Key, at)).ToDictionary(s => s.Key, s => s.at);
        var fixedAt = Fixed.ToDictionary(s => s.Key);
        var window = Duration.Max(Duration.FromMinutes(reach), ZonesApart);
        for (var i = 0; i < inOrder.Count; i++)
        for (
            var j = i + 1;
            j < inOrder.Count && inOrder[j].StartsAt < inOrder[i].EndsAt + window;
            j++
        )
        {
            var (a, b) = (inOrder[i], inOrder[j]);
            var firstIsFree = freeAt.TryGetValue(a.Key, out var first);
            var secondIsFree = freeAt.TryGetValue(b.Key, out var second);
            if (
                (!firstIsFree && !secondIsFree)
                || (a.On <= b.On && (b.StartsAt - a.EndsAt).TotalMinutes >= reach)
            )
                continue;
            var near = Between(a, b, second);
            if (!near.AtOnce && near.ShortFor.Count == 0)
                continue;
            if (firstIsFree && secondIsFree)
                Near[first].Add(near);
            else if (
                (firstIsFree ? fixedAt[b.Key] : fixedAt[a.Key]).InstructorId is { } id
                && PersonOf.TryGetValue(id, out var person)
            )
            {
                var free = firstIsFree ? first : second;
                if (Forbids(near, person))
                    cannot.Add((free, person));
                else if (ShortRest(near, person))
                    restBent.Add((free, person));
            }
        }

        return cannot;
    }

    private TermNear Between(PlacedSession a, PlacedSession b, int second)
    {
        var atOnce = false;
        var shortFor = new List<int>();
        foreach (var rest in rests)
        foreach (
            var kind in TimetableChecks
                .WhyNot(probe with { RestMinutesLeast = rest }, b, [a], facts)
                .Select(c => c.Kind)
        )
            if (kind is ConflictKind.InstructorTaken or ConflictKind.NoTimeToTravel)
                atOnce = true;
            else if (kind is ConflictKind.TooLittleRest)
                shortFor.Add(rest);
        return new(second, atOnce, shortFor);
    }
}

/// <summary>A later session that not everybody can teach besides the one in question.</summary>
/// <param name="Session">Its place among the free ones.</param>
/// <param name="AtOnce">Nobody can teach both.</param>
/// <param name="ShortFor">Lengths of rest that would not be kept between the two.</param>
internal sealed record TermNear(int Session, bool AtOnce, IReadOnlyList<int> ShortFor);
