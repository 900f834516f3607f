using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Catalogue;
using Studio.Core.Cover;
using Studio.Core.Rosters;
using Studio.Core.Staff;
using Studio.Core.Timetable;

namespace Studio.Api.Rosters;

/// <summary>Job 3: makes the flags in the table the flags that should stand.</summary>
public sealed class FlagSweep(RuleBook book, StudioStore studio, IClock clock)
{
    /// <summary>Everybody and every session to come; the number of flags opened, worded anew or closed.</summary>
    public async Task<int> AllAsync(Write write) =>
        await RefreshAsync(write, null) + await SessionsAsync(write);

    /// <summary>The flags of these clients (everybody when null), after something about them changed.</summary>
    public async Task<int> RefreshAsync(Write write, IReadOnlyCollection<long>? clientIds)
    {
        var now = clock.GetCurrentInstant();
        var fits = await Fits.LoadAsync(write, book, clientIds);
        var clients = await write.ListAsync<ClientZone>(
            """
            select c.id, l.zone from clients c join locations l on l.id = c.home_location_id
             where c.erased_at is null and (@all or c.id in @ids)
            """,
            new { all = clientIds is null, ids = clientIds ?? [] }
        );
        var seats = (
            await write.ListAsync<SeatRow>(
                """
                select b.client_id as ClientId, s.id as SessionId, s.class_id as ClassId, k.name as ClassName,
                       s.on_date as OnDate, s.starts_at as StartsAt
                  from bookings b
                  join sessions s on s.id = b.session_id
                  join classes k on k.id = s.class_id
                 where b.status = 'booked' and s.status = 'open' and s.ends_at > @now
                   and (@all or b.client_id in @ids)
                 order by s.starts_at, s.id
                """,
                new
                {
                    now,
                    all = clientIds is null,
                    ids = clientIds ?? [],
                }
            )
        ).ToLookup(s => s.ClientId);

        var should = clients
            .SelectMany(c =>
                Flags.Of(
                    new ClientState(
                        c.Id,
                        studio.Today(c.Zone),
                        fits.Of(c.Id),
                        [
                            .. seats[c.Id]
                                .Select(s => new SeatAhead(
                                    s.SessionId,
                                    s.ClassName,
                                    s.OnDate,
                                    fits.Of(c.Id, s.Dated)
                                )),
                        ]
                    ),
                    book,
                    fits.Policies
                )
            )
            .ToList();
        var touched = await FlagStore.SettleAsync(
            write,
            should,
            clientIds is null ? "client_id is not null" : "client_id in @ids",
            clientIds ?? [],
            now
        );
        if (touched > 0)
            write.Tell("flags");
        return touched;
    }

    /// <summary>
    /// The flags of sessions to come and of those who teach them: nobody to teach one, nobody qualified, a qualification
    /// that runs out.
    /// </summary>
    public async Task<int> SessionsAsync(Write write)
    {
        var now = clock.GetCurrentInstant();
        var rows = await write.ListAsync<StaffingRow>(
            """
            select s.id, k.name as ClassName, s.on_date as OnDate, l.zone, s.instructor_id as InstructorId,
                   i.name as InstructorName, k.needs_qualification as Qualification,
                   exists (select 1 from qualifications q
                            where q.instructor_id = s.instructor_id and q.kind = k.needs_qualification
                              and q.withdrawn_at is null
                              and q.issued_on <= s.on_date and q.expires_on >= s.on_date) as Qualified,
                   case when i.left_on <= s.on_date then 'left'
                        when exists (select 1 from leave v
                                      where v.instructor_id = s.instructor_id and v.withdrawn_at is null
                                        and v.from_on <= s.on_date and v.to_on >= s.on_date) then 'away'
                        else 'none' end as Absence
              from sessions s
              join classes k on k.id = s.class_id
              join rooms r on r.id = s.room_id
              join locations l on l.id = r.location_id
              left join instructors i on i.id = s.instructor_id
             where s.status = 'open' and s.starts_at > @now
             order by s.starts_at, s.id
            """,
            new { now }
        );
        var should = rows.SelectMany(r =>
                Flags.Of(
                    new SessionState(
                        r.Id,
                        r.ClassName,
                        r.OnDate,
                        studio.Today(r.Zone),
                        r.InstructorId,
                        r.InstructorName,
                        r.Qualification,
                        r.Qualified,
                        r.Absence
                    )
                )
            )
            .Concat(await EndingAsync(write, rows))
            .ToList();
        should.AddRange(await UncoveredAsync(write, now));
        var touched = await FlagStore.SettleAsync(write, should, "client_id is null", [], now);
        if (touched > 0)
            write.Tell("flags");
        return touched;
    }

    // She is told by the studio's own today: a qualification belongs to no one location.
    private async Task<IEnumerable<StandingFlag>> EndingAsync(Write write, List<StaffingRow> ahead)
    {
        var zone = await write.FindAsync<string>("select zone from locations order by id limit 1");
        var today = studio.Today(zone ?? "UTC");
        var held = await write.ListAsync<HeldRow>(
            """
            select q.instructor_id as InstructorId, i.name as InstructorName, q.kind, q.issued_on as IssuedOn,
                   q.expires_on as ExpiresOn
              from qualifications q join instructors i on i.id = q.instructor_id
             where q.withdrawn_at is null and (i.left_on is null or i.left_on > @today)
            """,
            new { today }
        );
        var needed = ahead.ToLookup(s => (s.InstructorId, s.Qualification));
        return held.GroupBy(q => (q.InstructorId, q.InstructorName))
            .SelectMany(hers =>
                QualificationRules
                    .RunningOut(
                        hers.Select(q => new HeldQualification(q.Kind, q.IssuedOn, q.ExpiresOn)),
                        today
                    )
                    .Where(q => q.To >= today)
                    .Select(q =>
                        Flags.Of(
                            new EndingQualification(
                                hers.Key.InstructorId,
                                hers.Key.InstructorName,
                                q.Kind,
                                q.To,
                                today,
                                [
                                    .. needed[(hers.Key.InstructorId, q.Kind)]
                                        .Select(s => s.OnDate)
                                        .Where(on => on > q.To),
                                ]
                            )
                        )
                    )
            );
    }

    private sealed record HeldRow
    {
        public long InstructorId { get; init; }
        public string InstructorName { get; init; } = "";
        public string Kind { get; init; } = "";
        public LocalDate IssuedOn { get; init; }
        public LocalDate ExpiresOn { get; init; }
    }

    private sealed record ClientZone
    {
        public long Id { get; init; }
        public string Zone { get; init; } = "";
    }

    private static async Task<IEnumerable<StandingFlag>> UncoveredAsync(Write write, Instant now) =>
        (
            await write.ListAsync<UncoveredRow>(
                """
                select s.id, k.name as ClassName, s.on_date as OnDate, l.zone, i.name as InstructorName,
                       c.asked_at as AskedAt, s.starts_at as StartsAt
                  from cover_requests c
                  join sessions s on s.id = c.session_id
                  join instructors i on i.id = s.instructor_id and i.id = c.instructor_id
                  join classes k on k.id = s.class_id
                  join rooms r on r.id = s.room_id
                  join locations l on l.id = r.location_id
                 where c.status = 'open' and s.status = 'open' and s.starts_at > @now
                 order by s.starts_at, s.id
                """,
                new { now }
            )
        ).Select(r =>
            Flags.Of(
                new UncoveredSession(
                    r.Id,
                    r.ClassName,
                    r.OnDate,
                    r.InstructorName,
                    r.AskedAt.InZone(DateTimeZoneProviders.Tzdb[r.Zone]).Date,
                    CoverRules.IsLoud(r.StartsAt, now)
                )
            )
        );

    private sealed record UncoveredRow
    {
        public long Id { get; init; }
        public string ClassName { get; init; } = "";
        public LocalDate OnDate { get; init; }
        public string Zone { get; init; } = "";
        public string InstructorName { get; init; } = "";
        public Instant AskedAt { get; init; }
        public Instant StartsAt { get; init; }
    }

    private sealed record SeatRow
    {
        public long ClientId { get; init; }
        public long SessionId { get; init; }
        public long ClassId { get; init; }
        public string ClassName { get; init; } = "";
        public LocalDate OnDate { get; init; }
        public Instant StartsAt { get; init; }
        public DatedClass Dated => new(SessionId, ClassId, OnDate, StartsAt);
    }

    private sealed record StaffingRow
    {
        public long Id { get; init; }
        public string ClassName { get; init; } = "";
        public LocalDate OnDate { get; init; }
        public string Zone { get; init; } = "";
        public long? InstructorId { get; init; }
        public string? InstructorName { get; init; }
        public string Qualification { get; init; } = "";
        public bool Qualified { get; init; }
        public Absence Absence { get; init; }
    }
}
