using NodaTime;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Incidents;
using Studio.Core.Catalogue;
using Studio.Core.Screenings;

namespace Studio.Api.Screenings;

/// <summary>
/// Puts what she answered on her record: the screening, what she holds from now on, and, when a warning sign is there, the
/// hold on all her bookings.
/// </summary>
public static class ScreeningIntake
{
    /// <summary>Writes it in this transaction; the screening's key.</summary>
    public static async Task<long> AddAsync(
        Write write,
        long clientId,
        IReadOnlyDictionary<string, GivenAnswer> answers,
        QuestionSet questions,
        ScreeningResult result,
        LocalDate today,
        Instant at,
        long by
    )
    {
        var id = await ScreeningStore.AddAnswersAsync(
            write,
            clientId,
            today,
            result.Outcome,
            answers,
            questions.Version,
            at,
            by
        );
        await SettleFactorsAsync(write, clientId, id, result, today, at, by);
        var stops = result.Signs.Where(s => s.Stops).ToList();
        if (stops.Count > 0)
        {
            var incident = await IncidentStore.AddAsync(
                write,
                new NewIncident
                {
                    ClientId = clientId,
                    Signs = [.. stops.Select(s => s.Code)],
                    Happened = "She answered so when she was asked the health questions.",
                    Done =
                        "Her bookings were put on hold, and she was told to speak to her clinician.",
                },
                at,
                by
            );
            await HealthStore.HoldAsync(write, clientId, today, at, by, incident);
        }

        return id;
    }

    // What she told once she can untell; what staff entered stays until they end it.
    private static async Task SettleFactorsAsync(
        Write write,
        long clientId,
        long screening,
        ScreeningResult result,
        LocalDate today,
        Instant at,
        long by
    )
    {
        var open = (await HealthStore.FactorsAsync(write, clientId))
            .Where(f => f.ToOn is null || f.ToOn >= today)
            .ToList();
        foreach (var (code, since) in result.Holds)
            if (!open.Exists(f => f.Code == code && f.FromOn <= today))
                await HealthStore.AddFactorAsync(
                    write,
                    clientId,
                    code,
                    since,
                    null,
                    at,
                    by,
                    screening
                );
        foreach (var factor in open.Where(f => f.ScreeningId is not null))
            if (result.Ended.Contains(factor.Code, StringComparer.Ordinal))
                await HealthStore.EndFactorAsync(
                    write,
                    factor.Id,
                    LocalDate.Max(factor.FromOn, today.PlusDays(-1))
                );
    }
}
