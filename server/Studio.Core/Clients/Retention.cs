using NodaTime;
using Studio.Core.Catalogue;

namespace Studio.Core.Clients;

/// <summary>The parts of what is held about a client that may have to be kept for a time.</summary>
public enum KeptPart
{
    /// <summary>The health record: pregnancies, factors, answers, letters, notes.</summary>
    Health,

    /// <summary>Warning signs, what happened, and holds.</summary>
    Incidents,

    /// <summary>Phone number, e-mail address and what she booked.</summary>
    Contact,
}

/// <summary>The days from which retention counts, as dates at her location.</summary>
public sealed record RetentionDays
{
    /// <summary>The day she became a client.</summary>
    public required LocalDate Joined { get; init; }

    /// <summary>The day of the last class she had a seat in; null when she never had one.</summary>
    public LocalDate? LastClass { get; init; }

    /// <summary>The newest day a baby of hers was born; null when none is recorded.</summary>
    public LocalDate? LastBirth { get; init; }

    /// <summary>The newest day of a warning sign, an incident, or a hold set or lifted; null when there was none.</summary>
    public LocalDate? LastIncident { get; init; }

    /// <summary>Something stands in her health record.</summary>
    public bool HasHealth { get; init; } = true;
}

/// <summary>How long what is held about a client has to be kept after she asked for its erasure.</summary>
public static class Retention
{
    /// <summary>All parts, in the order in which they are told.</summary>
    public static IReadOnlyList<KeptPart> Parts { get; } =
    [KeptPart.Health, KeptPart.Incidents, KeptPart.Contact];

    /// <summary>
    /// The last day on which a part has to be kept, or null when nothing of it does. The health record counts from her
    /// last class or a birth after it, what happened from its own newest day, contact details from her last class; for
    /// somebody who never came, from the day she became a client.
    /// </summary>
    public static LocalDate? LastDay(KeptPart part, RetentionDays days, StudioPolicies policies)
    {
        var seen = days.LastClass ?? days.Joined;
        return part switch
        {
            KeptPart.Health => days.HasHealth
                ? After(
                    days.LastBirth is { } birth ? LocalDate.Max(seen, birth) : seen,
                    policies.HealthKeptYears
                )
                : null,
            KeptPart.Incidents => days.LastIncident is { } incident
                ? After(incident, policies.HealthKeptYears)
                : null,
            KeptPart.Contact => After(seen, policies.ContactKeptYears),
        };
    }

    /// <summary>The parts that have to be kept on a day, each with its last day.</summary>
    public static IReadOnlyList<(KeptPart Part, LocalDate LastDay)> On(
        LocalDate today,
        RetentionDays days,
        StudioPolicies policies
    ) =>
        [
            .. from part in Parts
            let last = LastDay(part, days, policies)
            where last is not null && !IsOver(last.Value, today)
            select (part, last.Value),
        ];

    /// <summary>Whether the last day of keeping has passed.</summary>
    public static bool IsOver(LocalDate lastDay, LocalDate today) => today > lastDay;

    // The same day so many years on. A 29 February in a year without one is 1 March: a day too long rather than too short.
    private static LocalDate? After(LocalDate day, int years)
    {
        if (years == 0)
            return null;
        var then = day.PlusYears(years);
        return then.Day == day.Day ? then : then.PlusDays(1);
    }
}
