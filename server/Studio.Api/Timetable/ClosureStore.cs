using NodaTime;
using Studio.Api.Data;

namespace Studio.Api.Timetable;

/// <summary>Why a location is shut.</summary>
public enum ClosureKind
{
    /// <summary>It is, for a reason of its own.</summary>
    Closure,

    /// <summary>A public holiday there.</summary>
    PublicHoliday,
}

/// <summary>Days on which a location is shut.</summary>
public sealed record ClosureRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>The location.</summary>
    public long LocationId { get; init; }

    /// <summary>Its name.</summary>
    public string LocationName { get; init; } = "";

    /// <summary>First day.</summary>
    public LocalDate From { get; init; }

    /// <summary>Last day.</summary>
    public LocalDate To { get; init; }

    /// <summary>Why.</summary>
    public ClosureKind Kind { get; init; }

    /// <summary>Its name.</summary>
    public string Name { get; init; } = "";

    /// <summary>Sessions that stand on these days all the same and have not begun.</summary>
    public int SessionsStanding { get; init; }
}

/// <summary>Closures and public holidays.</summary>
public static class ClosureStore
{
    private const string Select = """
        select c.id, c.location_id as LocationId, l.name as LocationName, c.from_on as "From", c.to_on as "To",
               c.kind, c.name,
               (select count(*) from sessions s join rooms r on r.id = s.room_id
                 where r.location_id = c.location_id and s.status = 'open' and s.starts_at > @now
                   and s.on_date between c.from_on and c.to_on) as SessionsStanding
          from closures c join locations l on l.id = c.location_id
        """;

    /// <summary>All of them in the order of the calendar.</summary>
    public static Task<List<ClosureRow>> ListAsync(Read read, Instant now) =>
        read.ListAsync<ClosureRow>(
            $"{Select} order by c.from_on, c.location_id, c.id",
            new { now }
        );

    /// <summary>One.</summary>
    public static Task<ClosureRow?> FindAsync(Read read, long id, Instant now) =>
        read.FindAsync<ClosureRow>($"{Select} where c.id = @id", new { id, now });

    /// <summary>Adds one; its id, or null when it stands there already.</summary>
    public static Task<long?> AddAsync(
        Write write,
        long locationId,
        LocalDate from,
        LocalDate to,
        ClosureKind kind,
        string name
    ) =>
        write.FindAsync<long?>(
            """
            insert into closures (location_id, from_on, to_on, kind, name)
            values (@locationId, @from, @to, @kind, @name)
            on conflict do nothing
            returning id
            """,
            new
            {
                locationId,
                from,
                to,
                kind = kind == ClosureKind.Closure ? "closure" : "publicHoliday",
                name,
            }
        );

    /// <summary>Takes one away.</summary>
    public static Task RemoveAsync(Write write, long id) =>
        write.ExecuteAsync("delete from closures where id = @id", new { id });

    /// <summary>Open sessions ahead at a location on these days.</summary>
    public static async Task<List<SessionRow>> SessionsOnAsync(
        Read read,
        long locationId,
        LocalDate from,
        LocalDate to,
        Instant now
    ) =>
        [
            .. (
                await SessionStore.ListAsync(read, new SessionsWanted { From = from, To = to })
            ).Where(s =>
                s.LocationId == locationId && s.Status == SessionStatus.Open && s.StartsAt > now
            ),
        ];

    /// <summary>Every day on which a location is shut, with the name of what shuts it.</summary>
    public static async Task<Dictionary<LocalDate, string>> ShutAsync(Read read, long locationId)
    {
        var days = new Dictionary<LocalDate, string>();
        foreach (
            var shut in await read.ListAsync<ClosureRow>(
                """
                select id, from_on as "From", to_on as "To", name from closures
                 where location_id = @locationId order by from_on, id
                """,
                new { locationId }
            )
        )
            for (var day = shut.From; day <= shut.To; day = day.PlusDays(1))
                days.TryAdd(day, shut.Name);
        return days;
    }
}
