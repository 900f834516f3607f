using Google.OrTools.Sat;

namespace Studio.Core.Booking;

/// <summary>
/// Suggests where all outgrown bookings of everybody may go, solved together over the seats that are left, so that the
/// last seat is suggested once and goes where it helps most.
/// </summary>
public static class MoveAssignment
{
    // One worker, one seed, and a bound on work done instead of on time: the same question has the same answer anywhere.
    private const string Settings =
        "num_workers:1 random_seed:7 max_deterministic_time:30 log_search_progress:false";

    /// <summary>
    /// The assignment that first moves as many bookings as can be, then costs least in total, then changes least of what was
    /// suggested before, then prefers those who cross first and the earlier session. No session is suggested more often than
    /// it has seats, and nothing suggested to her crosses anything else suggested to her or that she keeps.
    /// </summary>
    /// <param name="questions">Every outgrown booking with the sessions that would do for it.</param>
    /// <param name="open">The sessions named in options, by key.</param>
    /// <returns>One step a booking, in the order of crossing, client and time.</returns>
    public static IReadOnlyList<MoveStep> Solve(
        IEnumerable<MoveQuestion> questions,
        IReadOnlyDictionary<long, OpenSeats> open
    )
    {
        var ordered = questions
            .OrderBy(q => q.From.CrossesOn)
            .ThenBy(q => q.From.ClientId)
            .ThenBy(q => q.From.StartsAt)
            .ThenBy(q => q.From.BookingId)
            .Select(q =>
                q with
                {
                    Options =
                    [
                        .. q
                            .Options.Where(o => open[o.SessionId].SeatsLeft > 0)
                            .OrderBy(o => o.Cost)
                            .ThenBy(o => open[o.SessionId].StartsAt)
                            .ThenBy(o => o.SessionId),
                    ],
                }
            )
            .ToList();
        var found = new Dictionary<long, long?>();
        foreach (var part in Parts(ordered, open))
        foreach (var (booking, session) in SolvePart(part, open))
            found[booking] = session;
        return [.. ordered.Select(q => new MoveStep(q.From, found[q.From.BookingId]))];
    }

    private static IEnumerable<(long Booking, long? Session)> SolvePart(
        List<MoveQuestion> part,
        IReadOnlyDictionary<long, OpenSeats> open
    )
    {
        if (part.TrueForAll(q => q.Options.Count == 0))
            return part.Select(q => (q.From.BookingId, (long?)null));

        var model = new CpModel();
        var stays = part.ConvertAll(q => model.NewBoolVar($"stay {q.From.BookingId}"));
        var goes = part.ConvertAll(q =>
            q.Options.Select(o => model.NewBoolVar($"{q.From.BookingId} to {o.SessionId}")).ToList()
        );
        for (var b = 0; b < part.Count; b++)
            model.AddExactlyOne(goes[b].Append(stays[b]));
        foreach (var seat in Choices(part).GroupBy(c => c.Session))
            if (seat.Count() > open[seat.Key].SeatsLeft)
                model.Add(
                    LinearExpr.Sum(seat.Select(c => goes[c.Booking][c.Option]))
                        <= open[seat.Key].SeatsLeft
                );
        OneRoomAtATime(model, part, open, stays, goes);

        var weigh = new Weights(part);
        model.Minimize(
            LinearExpr.WeightedSum(
                stays.Concat(goes.SelectMany(g => g)),
                part.Select((_, b) => weigh.Staying(b))
                    .Concat(
                        part.SelectMany((q, b) => q.Options.Select((_, o) => weigh.Going(b, o)))
                    )
            )
        );
        for (var b = 0; b < part.Count; b++)
        {
            var before = part[b].Options.ToList().FindIndex(o => o.SessionId == part[b].Before);
            model.AddHint(stays[b], before < 0 ? 1 : 0);
            for (var o = 0; o < goes[b].Count; o++)
                model.AddHint(goes[b][o], o == before ? 1 : 0);
        }

        var solver = new CpSolver { StringParameters = Settings };
        if (solver.Solve(model) is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
            throw new InvalidOperationException(
                "Everybody staying where she is is always a solution, and none was found."
            );
        return part.Select(
                (q, b) =>
                    (
                        q.From.BookingId,
                        (long?)
                            q
                                .Options.Where((_, o) => solver.BooleanValue(goes[b][o]))
                                .Select(o => (long?)o.SessionId)
                                .SingleOrDefault()
                    )
            )
            .ToList();
    }

    // Nothing she goes to crosses anything else she goes to, nor what she stays in because nothing was found for it.
    private static void OneRoomAtATime(
        CpModel model,
        List<MoveQuestion> part,
        IReadOnlyDictionary<long, OpenSeats> open,
        List<BoolVar> stays,
        List<List<BoolVar>> goes
    )
    {
        var choices = Choices(part).ToLookup(c => part[c.Booking].From.ClientId);
        foreach (var hers in choices)
        foreach (var one in hers)
        {
            var session = open[one.Session];
            foreach (
                var other in hers.Where(c =>
                    c.Booking > one.Booking
                    && (c.Session == one.Session || Overlap(session, open[c.Session]))
                )
            )
                model.AddAtMostOne([
                    goes[one.Booking][one.Option],
                    goes[other.Booking][other.Option],
                ]);
            for (var b = 0; b < part.Count; b++)
                if (
                    b != one.Booking
                    && part[b].From.ClientId == hers.Key
                    && part[b].From.StartsAt < session.EndsAt
                    && session.StartsAt < part[b].From.EndsAt
                )
                    model.AddAtMostOne([goes[one.Booking][one.Option], stays[b]]);
        }
    }

    // Bookings that share neither a client nor a seat that is scarce are questions of their own.
    private static IEnumerable<List<MoveQuestion>> Parts(
        List<MoveQuestion> questions,
        IReadOnlyDictionary<long, OpenSeats> open
    )
    {
        var partOf = Enumerable.Range(0, questions.Count).ToArray();
        int Root(int of) => partOf[of] == of ? of : partOf[of] = Root(partOf[of]);
        void Join(IEnumerable<int> together)
        {
            var all = together.ToList();
            foreach (var other in all.Skip(1))
                partOf[Root(other)] = Root(all[0]);
        }

        foreach (
            var hers in Enumerable
                .Range(0, questions.Count)
                .GroupBy(b => questions[b].From.ClientId)
        )
            Join(hers);
        foreach (var seat in Choices(questions).GroupBy(c => c.Session, c => c.Booking))
            if (seat.Count() > open[seat.Key].SeatsLeft)
                Join(seat);
        return Enumerable
            .Range(0, questions.Count)
            .GroupBy(Root)
            .Select(part => part.Select(b => questions[b]).ToList());
    }

    private static IEnumerable<(int Booking, int Option, long Session)> Choices(
        List<MoveQuestion> part
    ) => part.SelectMany((q, b) => q.Options.Select((o, at) => (b, at, o.SessionId)));

    private static bool Overlap(OpenSeats a, OpenSeats b) =>
        a.StartsAt < b.EndsAt && b.StartsAt < a.EndsAt;

    // The aims one after another in one number: each weighs more than everything after it together.
    private sealed class Weights
    {
        private readonly List<MoveQuestion> part;
        private readonly long change;
        private readonly long cost;
        private readonly long stay;

        public Weights(List<MoveQuestion> part)
        {
            this.part = part;
            var count = part.Count;
            change = (count * (count + (long)part.Max(q => q.Options.Count))) + 1;
            cost = (count + 1) * change;
            stay = (1 + (count * (long)part.SelectMany(q => q.Options).Max(o => o.Cost))) * cost;
        }

        public long Staying(int booking) =>
            checked(stay + (part[booking].Before is null ? 0 : change) + (part.Count - booking));

        public long Going(int booking, int option) =>
            checked(
                (part[booking].Options[option].Cost * cost)
                + (part[booking].Options[option].SessionId == part[booking].Before ? 0 : change)
                + option
            );
    }
}
