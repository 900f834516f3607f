using NodaTime;
using Studio.Api.Data;
using Studio.Api.Pregnancies;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;

namespace Studio.Api.Clients;

/// <summary>
/// A new record beside an earlier one. What speaks of the earlier pregnancy rests: letters and answers from before count no
/// more, a letter nobody has read and answers not sent are laid aside, and what was true only of that pregnancy ends with it.
/// </summary>
public static class Returns
{
    /// <summary>Begins the record of the pregnancy or of the time after birth; its key.</summary>
    public static async Task<long> BeginAsync(
        Write write,
        RuleBook book,
        long clientId,
        Pregnancy pregnancy,
        LocalDate today,
        Instant at
    )
    {
        var before = (await SituationStore.OfAsync(write, clientId)).Pregnancy;
        if (before is null)
            return await PregnancyStore.BeginAsync(write, clientId, pregnancy);
        var until = before.EndedOn ?? before.BornOn ?? today;
        foreach (var factor in await HealthStore.FactorsAsync(write, clientId))
            if (
                factor.ToOn is null
                && book.FactorOf(factor.Code) is { When: HeldWhen.Pregnancy }
                && factor.FromOn <= until
            )
                await HealthStore.EndFactorAsync(write, factor.Id, until);
        await write.ExecuteAsync(
            "update letters set withdrawn_at = @at where client_id = @clientId and state = 'waiting' and withdrawn_at is null",
            new { clientId, at }
        );
        await write.ExecuteAsync(
            "delete from screening_drafts where client_id = @clientId",
            new { clientId }
        );
        return await PregnancyStore.BeginAsync(
            write,
            clientId,
            pregnancy with
            {
                PapersFrom = today,
            }
        );
    }
}
