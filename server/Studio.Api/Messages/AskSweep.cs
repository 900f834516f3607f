using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Core.Catalogue;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>
/// Each night: tells those who come to the studio that their page needs them, once for each thing. What it is stands on
/// the page and never in the message.
/// </summary>
public sealed class AskSweep(RuleBook book, Outbox outbox, IClock clock)
{
    // Somebody who has not been here for so long, and has booked nothing, is not written to about papers.
    private static readonly Duration ComesStill = Duration.FromDays(28);

    /// <summary>Everybody who usually comes to a zone's locations; how many were told.</summary>
    public async Task<int> ZoneAsync(Write write, string zone, LocalDate today)
    {
        var now = clock.GetCurrentInstant();
        var coming = await write.ListAsync<ComingRow>(
            """
            select c.id, max(b.status = 'booked' and s.status = 'open' and s.ends_at > @now) as HasSeatAhead
              from clients c
              join locations l on l.id = c.home_location_id
              join bookings b on b.client_id = c.id and b.status in ('booked', 'waiting')
              join sessions s on s.id = b.session_id
             where l.zone = @zone and c.erased_at is null and c.email <> '' and s.ends_at > @since
             group by c.id order by c.id
            """,
            new
            {
                zone,
                now,
                since = now - ComesStill,
            }
        );
        if (coming.Count == 0)
            return 0;
        var fits = await Fits.LoadAsync(write, book, [.. coming.Select(c => c.Id)]);
        var told = 0;
        foreach (var client in coming)
            if (await AskAsync(write, client, fits, today, now))
                told++;
        return told;
    }

    private async Task<bool> AskAsync(
        Write write,
        ComingRow client,
        Fits fits,
        LocalDate today,
        Instant now
    )
    {
        var told = false;
        foreach (
            var ask in PageAsks.Of(
                fits.Of(client.Id),
                today,
                client.HasSeatAhead,
                book.Stages,
                fits.Policies
            )
        )
        {
            var about = $"needs:{client.Id}:{ask}";
            var put = await outbox.PutAsync(
                write,
                new()
                {
                    Kind = MessageKind.NeedsHer,
                    About = about,
                    ClientId = client.Id,
                    Facts = new Dictionary<string, string>(),
                }
            );
            // Two things in one night are one message: her page tells both.
            if (put && told)
                await write.ExecuteAsync(
                    """
                    update messages set status = 'dropped', ended_at = @now, last_answer = 'Told together with another.'
                     where about = @about
                    """,
                    new { about, now }
                );
            told |= put;
        }

        return told;
    }

    private sealed record ComingRow
    {
        public long Id { get; init; }
        public bool HasSeatAhead { get; init; }
    }
}
