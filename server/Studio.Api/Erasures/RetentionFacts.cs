using NodaTime;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Core.Clients;

namespace Studio.Api.Erasures;

/// <summary>Loads the days from which retention counts.</summary>
public static class RetentionFacts
{
    /// <summary>Hers, as dates at her location.</summary>
    public static async Task<RetentionDays> OfAsync(Read read, ClientRow client, Instant now)
    {
        var row = (
            await read.FindAsync<Row>(
                """
                select c.joined_at as JoinedAt,
                       (select max(s.on_date) from bookings b join sessions s on s.id = b.session_id
                         where b.client_id = c.id and b.status = 'booked' and s.status = 'open'
                           and s.starts_at <= @now) as LastClass,
                       (select max(p.born_on) from pregnancies p where p.client_id = c.id) as LastBirth,
                       (select max(max(h.from_on), coalesce(max(h.lifted_on), '')) from holds h
                         where h.client_id = c.id) as LastHold,
                       (select max(i.raised_at) from incidents i where i.client_id = c.id) as LastRaised,
                       exists (select 1 from pregnancies t where t.client_id = c.id)
                       or exists (select 1 from client_factors t where t.client_id = c.id)
                       or exists (select 1 from screenings t where t.client_id = c.id)
                       or exists (select 1 from nothing_changed t where t.client_id = c.id)
                       or exists (select 1 from letters t where t.client_id = c.id)
                       or exists (select 1 from class_notes t where t.client_id = c.id) as HasHealth
                  from clients c where c.id = @Id
                """,
                new { client.Id, now }
            )
        )!;
        var zone = DateTimeZoneProviders.Tzdb[client.Zone];
        var raised = row.LastRaised?.InZone(zone).Date;
        return new RetentionDays
        {
            Joined = row.JoinedAt.InZone(zone).Date,
            LastClass = row.LastClass,
            LastBirth = row.LastBirth,
            LastIncident =
                row.LastHold is { } hold && raised is { } day
                    ? LocalDate.Max(hold, day)
                    : row.LastHold ?? raised,
            HasHealth = row.HasHealth,
        };
    }

    private sealed record Row
    {
        public Instant JoinedAt { get; init; }
        public LocalDate? LastClass { get; init; }
        public LocalDate? LastBirth { get; init; }
        public LocalDate? LastHold { get; init; }
        public Instant? LastRaised { get; init; }
        public bool HasHealth { get; init; }
    }
}
