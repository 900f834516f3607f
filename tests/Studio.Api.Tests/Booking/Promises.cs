namespace Studio.Api.Tests.Booking;

/// <summary>What must hold of seats and waitlists at every moment.</summary>
public static class Promises
{
    private static readonly (string Name, string Sql)[] All =
    [
        (
            "more booked than seats",
            """
            select s.id from sessions s
             where (select count(*) from bookings b where b.session_id = s.id and b.status = 'booked') > s.seats
            """
        ),
        (
            "seats_taken is not the number booked",
            """
            select s.id from sessions s
             where (select count(*) from bookings b where b.session_id = s.id and b.status = 'booked') <> s.seats_taken
            """
        ),
        (
            "somebody is in a session twice",
            """
            select min(id) from bookings where status in ('booked', 'waiting')
             group by session_id, client_id having count(*) > 1
            """
        ),
        (
            "somebody sits in two rooms at once",
            """
            select a.id from bookings a join sessions x on x.id = a.session_id
              join bookings b on b.client_id = a.client_id and b.id > a.id and b.status = 'booked'
              join sessions y on y.id = b.session_id
             where a.status = 'booked' and x.starts_at < y.ends_at and x.ends_at > y.starts_at
            """
        ),
        (
            "somebody waits who is free then, while a seat is free",
            """
            select w.id from bookings w join sessions s on s.id = w.session_id
             where w.status = 'waiting' and s.seats_taken < s.seats
               and not exists (select 1 from bookings b join sessions t on t.id = b.session_id
                                where b.client_id = w.client_id and b.status = 'booked'
                                  and t.starts_at < s.ends_at and t.ends_at > s.starts_at)
            """
        ),
        (
            "somebody was promoted past one who was there first and free then",
            """
            select w.id from bookings w join sessions s on s.id = w.session_id
             where w.status = 'waiting'
               and exists (select 1 from bookings p
                            where p.session_id = w.session_id and p.status = 'booked' and p.id > w.id)
               and not exists (select 1 from bookings b join sessions t on t.id = b.session_id
                                where b.client_id = w.client_id and b.id <> w.id
                                  and b.status in ('booked', 'cancelled')
                                  and t.starts_at < s.ends_at and t.ends_at > s.starts_at)
            """
        ),
    ];

    /// <summary>The promises that do not hold, with the rows at fault. Everybody is taken to suit every session.</summary>
    public static async Task<IReadOnlyList<string>> BrokenPromises(this StudioApp app)
    {
        var broken = new List<string>();
        foreach (var (name, sql) in All)
        {
            if (await app.Rows<long>(sql) is { Count: > 0 } rows)
                broken.Add($"{name}: {string.Join(", ", rows)}");
        }

        return broken;
    }
}
