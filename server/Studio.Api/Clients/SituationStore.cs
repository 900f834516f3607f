using NodaTime;
using Studio.Api.Clearance;
using Studio.Api.Data;
using Studio.Api.Screenings;
using Studio.Core.Clearance;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Api.Clients;

/// <summary>Loads what the rules need to know of clients: everything, so that any date can be asked for.</summary>
public static class SituationStore
{
    /// <summary>The situation of these clients, or of everybody when <paramref name="clientIds"/> is null.</summary>
    public static async Task<IReadOnlyDictionary<long, HerSituation>> OfAsync(
        Read read,
        IReadOnlyCollection<long>? clientIds
    )
    {
        var all = clientIds is null;
        var parameters = new { all, ids = clientIds ?? [] };
        const string hers = "(@all or client_id in @ids)";

        var pregnancies = await read.ListAsync<PregnancyRow>(
            $"""
            select client_id as ClientId, due_date as DueDate, babies, born_on as BornOn, birth_mode as BirthMode,
                   ended_on as EndedOn, papers_from as PapersFrom,
                   (told_at is not null and rung_at is null) as AwaitsCall
              from pregnancies where is_current = 1 and {hers}
            """,
            parameters
        );
        var factors = await LookUpAsync<FactorRow>(
            $"""
            select client_id as ClientId, code, from_on as FromOn, to_on as ToOn
              from client_factors where {hers} order by id
            """
        );
        var letters = await LookUpAsync<LetterRow>(
            $"""
            select client_id as ClientId, issued_on as IssuedOn, expires_on as ExpiresOn, restrictions,
                   replaces_earlier as ReplacesEarlier, withdrawn_at is not null as Withdrawn
              from letters where state = 'counts' and {hers} order by id
            """
        );
        var screenings = await LookUpAsync<ScreeningRow>(
            $"""
            select client_id as ClientId, answered_on as AnsweredOn, outcome
              from screenings where {hers} order by answered_on, id
            """
        );
        var holds = await LookUpAsync<HoldRow>(
            $"""
            select client_id as ClientId, from_on as FromOn, lifted_on as LiftedOn
              from holds where {hers} order by id
            """
        );
        var births = await BirthDates.OfAsync(read, clientIds);
        var ids =
            clientIds
            ?? await read.ListAsync<long>("select id from clients where erased_at is null");
        var pregnancyOf = pregnancies.ToDictionary(p => p.ClientId);

        return ids.Distinct()
            .ToDictionary(
                id => id,
                id => new HerSituation
                {
                    Pregnancy = pregnancyOf.GetValueOrDefault(id)?.ToPregnancy(),
                    BirthDate = births.TryGetValue(id, out var birth) ? birth : null,
                    Factors =
                    [
                        .. factors[id]
                            .Select(f => new HeldFactor(read.Seal.Open(f.Code), f.FromOn, f.ToOn)),
                    ],
                    Letters =
                    [
                        .. letters[id]
                            .Select(l => new ClearanceLetter(l.IssuedOn, l.ExpiresOn, l.Withdrawn)
                            {
                                Terms = LetterTermsText.Open(read.Seal, l.Restrictions),
                                ReplacesEarlier = l.ReplacesEarlier,
                            }),
                    ],
                    Screening = screenings[id]
                        .Select(s => new Screening(
                            s.AnsweredOn,
                            Outcomes.Open(read.Seal, s.Outcome)
                        ))
                        .LastOrDefault(),
                    Holds = [.. holds[id].Select(h => new Hold(h.FromOn, h.LiftedOn))],
                }
            );

        async Task<ILookup<long, T>> LookUpAsync<T>(string sql)
            where T : IOfClient =>
            (await read.ListAsync<T>(sql, parameters)).ToLookup(row => row.ClientId);
    }

    /// <summary>The situation of one client.</summary>
    public static async Task<HerSituation> OfAsync(Read read, long clientId) =>
        (await OfAsync(read, [clientId]))[clientId];

    private interface IOfClient
    {
        long ClientId { get; }
    }

    private sealed record PregnancyRow
    {
        public long ClientId { get; init; }
        public LocalDate? DueDate { get; init; }
        public int Babies { get; init; }
        public LocalDate? BornOn { get; init; }
        public BirthMode? BirthMode { get; init; }
        public LocalDate? EndedOn { get; init; }
        public LocalDate? PapersFrom { get; init; }
        public bool AwaitsCall { get; init; }

        public Pregnancy ToPregnancy() =>
            new()
            {
                DueDate = DueDate,
                Babies = Babies,
                BornOn = BornOn,
                BirthMode = BirthMode,
                EndedOn = EndedOn,
                PapersFrom = PapersFrom,
                AwaitsCall = AwaitsCall,
            };
    }

    private sealed record FactorRow : IOfClient
    {
        public long ClientId { get; init; }
        public string Code { get; init; } = "";
        public LocalDate FromOn { get; init; }
        public LocalDate? ToOn { get; init; }
    }

    private sealed record LetterRow : IOfClient
    {
        public long ClientId { get; init; }
        public LocalDate IssuedOn { get; init; }
        public LocalDate ExpiresOn { get; init; }
        public string? Restrictions { get; init; }
        public bool ReplacesEarlier { get; init; }
        public bool Withdrawn { get; init; }
    }

    private sealed record ScreeningRow : IOfClient
    {
        public long ClientId { get; init; }
        public LocalDate AnsweredOn { get; init; }
        public string Outcome { get; init; } = "";
    }

    private sealed record HoldRow : IOfClient
    {
        public long ClientId { get; init; }
        public LocalDate FromOn { get; init; }
        public LocalDate? LiftedOn { get; init; }
    }
}
