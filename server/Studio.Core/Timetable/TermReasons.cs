using NodaTime;
using NodaTime.Text;
using Studio.Core.Pregnancies;

namespace Studio.Core.Timetable;

/// <summary>Says of each session that has nobody why that is so: as a whole, and person by person.</summary>
internal static class TermReasons
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    /// <summary>The sessions that were free to be given to somebody and have nobody, in the order of time.</summary>
    public static IReadOnlyList<TermGap> Of(TermQuestion question, TermChoices choices, int?[] who)
    {
        var hers = TermAssignment.After(choices, who).ToLookup(s => s.InstructorId);
        return
        [
            .. Enumerable
                .Range(0, who.Length)
                .Where(s => who[s] is null)
                .Select(s => new TermGap(
                    choices.Free[s],
                    Whole(s, choices),
                    [
                        .. People(s, choices)
                            .OrderBy(p => choices.People[p].Name, StringComparer.Ordinal)
                            .Select(p => Cannot(s, p, choices, question, hers)),
                    ]
                )),
        ];
    }

    private static IEnumerable<int> People(int session, TermChoices choices) =>
        Enumerable
            .Range(0, choices.People.Count)
            .Where(p =>
                choices.People[p].LeftOn is not { } left || choices.Free[session].On < left
            );

    private static TermCannot Cannot(
        int session,
        int person,
        TermChoices choices,
        TermQuestion question,
        ILookup<long?, PlacedSession> hers
    )
    {
        var (teacher, wanted) = (choices.People[person], choices.Free[session]);
        var window = Duration.FromDays(9);
        return new(
            teacher.Id,
            teacher.Name,
            choices.Can[session, person],
            [
                .. TimetableChecks
                    .WhyNot(
                        teacher,
                        wanted,
                        hers[teacher.Id]
                            .Where(s =>
                                wanted.StartsAt - window < s.StartsAt
                                && s.StartsAt < wanted.StartsAt + window
                            ),
                        question.Facts
                    )
                    .Where(c => !question.Bends.Allow(c.Kind))
                    .Select(c => c.Words),
            ]
        );
    }

    private static string Whole(int session, TermChoices choices)
    {
        var wanted = choices.Free[session];
        var kind = wanted.NeedsQualification;
        var when = $"on {wanted.On.DayOfWeek} {Wording.Date(wanted.On)}";
        var qualified = People(session, choices)
            .Where(p => choices.People[p].Holds(kind, wanted.On))
            .ToList();
        var could = choices.Who(session).ToList();
        if (qualified.Count == 0)
            return $"Nobody has a valid {kind} qualification {when}.";
        if (could.Count == 0)
            return $"Nobody with the {kind} qualification is free {when} at {Clock.Format(wanted.StartsLocal)}.";

        var names = Named([
            .. could.Select(p => choices.People[p].Name).Order(StringComparer.Ordinal),
        ]);
        var alone =
            could.Count == 1
                ? $"{names} could teach it, were it her only session"
                : $"{names} could each teach it, were it the only session";
        return TooMany(session, choices) is { } held
            ? $"{alone}: {held.Count} sessions are held {when} at {Clock.Format(choices.Free[held[^1]].StartsLocal)} that only {(could.Count == 1 ? "she" : "they")} could teach ({Named([.. held.Select(s => $"{choices.Free[s].ClassName} in {choices.Free[s].RoomName}")])})."
            : $"{alone}, but not together with everything else that only a few can teach in that week.";
    }

    // Sessions held at one moment, this one among them, that are more than all who could teach any of them (Hall 1935).
    private static List<int>? TooMany(int session, TermChoices choices)
    {
        var wanted = choices.Free[session];
        var could = choices.Who(session).ToHashSet();
        var around = Enumerable
            .Range(0, choices.Free.Count)
            .Where(s =>
                choices.Free[s].Overlaps(wanted)
                && choices.Who(s).Any()
                && could.IsSupersetOf(choices.Who(s))
            )
            .ToList();
        return around
            .Select(s => choices.Free[s].StartsAt)
            .Distinct()
            .Where(start => wanted.StartsAt <= start)
            .Select(start =>
                around.FindAll(s =>
                    choices.Free[s].StartsAt <= start && start < choices.Free[s].EndsAt
                )
            )
            .FirstOrDefault(held => held.Count > could.Count);
    }

    private static string Named(IReadOnlyList<string> names) =>
        names.Count == 1
            ? names[0]
            : $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}";
}
