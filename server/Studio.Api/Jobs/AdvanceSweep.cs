using NodaTime;
using Studio.Api.Data;
using Studio.Api.Studios;
using Studio.Core.Pregnancies;

namespace Studio.Api.Jobs;

/// <summary>
/// Job 1: sets every enrolled client's gestational day and stage, and writes one stage change a crossing, dated on the
/// day it really happened. Set-based; nights that were missed are caught up by the same statements.
/// </summary>
public sealed class AdvanceSweep(StudioStore studio)
{
    private static readonly string ToMove = $"""
        select p.id, p.due_date, p.born_on, @today as today,
               {SqliteDates.DaysBetween("p.due_date", "@today")} + {GestationalAge.AtDueDate} as ga,
               {SqliteDates.DaysBetween("p.born_on", "@today")} as since_birth
          from pregnancies p
          join clients c on c.id = p.client_id
          join locations l on l.id = c.home_location_id
         where p.is_current = 1 and p.ended_on is null
           and (@zone is null or l.zone = @zone) and (@clientId is null or c.id = @clientId)
        """;

    private static readonly string Set = $"""
        with moving as ({ToMove}),
             placed as (
                select m.id,
                       case when m.born_on is null or m.born_on > m.today then m.ga end as gestational_day,
                       s.code as stage
                  from moving m
                  left join stages s
                    on (s.counts_from = 'pregnancy' and (m.born_on is null or m.born_on > m.today)
                        and m.ga >= s.from_day and (s.to_day is null or m.ga <= s.to_day))
                    or (s.counts_from = 'birth' and m.born_on <= m.today
                        and m.since_birth >= s.from_day and (s.to_day is null or m.since_birth <= s.to_day)))
        update pregnancies
           set gestational_day = placed.gestational_day, stage = placed.stage, advanced_on = @today
          from placed
         where pregnancies.id = placed.id
           and (pregnancies.advanced_on is not @today
                or pregnancies.stage is not placed.stage
                or pregnancies.gestational_day is not placed.gestational_day)
        """;

    private static readonly string Crossings = $"""
        with moving as ({ToMove}),
             crossed as (
                select m.id, s.code as stage,
                       case s.counts_from
                            when 'birth' then {SqliteDates.PlusDays("m.born_on", "s.from_day")}
                            else {SqliteDates.PlusDays(
            "m.due_date",
            $"s.from_day - {GestationalAge.AtDueDate}"
        )}
                       end as on_date,
                       m.born_on, m.today, s.counts_from, s.from_day
                  from moving m cross join stages s),
             happened as (
                select id, stage, on_date from crossed
                 where on_date <= today
                   and (counts_from = 'birth' or (from_day > 0 and (born_on is null or on_date < born_on))))
        """;

    // "where true" keeps SQLite's parser from reading the upsert as a join.
    private static readonly string Write = $"""
        {Crossings}
        insert into stage_changes (pregnancy_id, stage, on_date)
        select id, stage, on_date from happened where true
        on conflict (pregnancy_id, stage) do update set on_date = excluded.on_date
         where stage_changes.on_date <> excluded.on_date
        """;

    private static readonly string Unwrite = $"""
        {Crossings}
        delete from stage_changes
         where pregnancy_id in (select id from moving)
           and not exists (select 1 from happened h
                            where h.id = stage_changes.pregnancy_id and h.stage = stage_changes.stage)
        """;

    /// <summary>Everybody at the locations of a zone, as of its local date; the number of stage changes written.</summary>
    public Task<int> ZoneAsync(Write write, string zone, LocalDate today) =>
        RunAsync(write, zone, null, today);

    /// <summary>One client, after her dates changed.</summary>
    public async Task OfAsync(Write write, long clientId)
    {
        var zone = await write.ValueAsync<string>(
            "select l.zone from clients c join locations l on l.id = c.home_location_id where c.id = @clientId",
            new { clientId }
        );
        await RunAsync(write, null, clientId, studio.Today(zone));
    }

    private static async Task<int> RunAsync(
        Write write,
        string? zone,
        long? clientId,
        LocalDate today
    )
    {
        var parameters = new
        {
            zone,
            clientId,
            today,
        };
        await write.ExecuteAsync(Set, parameters);
        var withdrawn = await write.ExecuteAsync(Unwrite, parameters);
        return withdrawn + await write.ExecuteAsync(Write, parameters);
    }
}
