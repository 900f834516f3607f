using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core.Booking;
using Studio.Core.Catalogue;

namespace Studio.Api.Catalogue;

/// <summary>A booking ahead, or a place on a waitlist, that other rules would see otherwise. For the owner alone.</summary>
public sealed record ChangedBooking
{
    /// <summary>Who.</summary>
    public required long ClientId { get; init; }

    /// <summary>Her name.</summary>
    public required string Client { get; init; }

    /// <summary>Which session.</summary>
    public required long SessionId { get; init; }

    /// <summary>Of which class.</summary>
    public required string ClassName { get; init; }

    /// <summary>Its date, where it is held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Its start by the clock there.</summary>
    public required LocalTime StartsLocal { get; init; }

    /// <summary>Booked or waiting.</summary>
    public required BookingStatus Status { get; init; }

    /// <summary>How it suits her now.</summary>
    public required Suits From { get; init; }

    /// <summary>How it would suit her.</summary>
    public required Suits To { get; init; }

    /// <summary>The strictest reason that comes, or else goes.</summary>
    public required string? Because { get; init; }

    /// <summary>Movements of the plan that become something else for her.</summary>
    public required IReadOnlyList<MovementChange> Movements { get; init; }
}

/// <summary>What a change of rules or policies makes of the bookings ahead.</summary>
public sealed record Consequences
{
    /// <summary>Bookings and places that were judged under both.</summary>
    public required int Judged { get; init; }

    /// <summary>Of those, with a stricter verdict.</summary>
    public required int Stricter { get; init; }

    /// <summary>With a milder one.</summary>
    public required int Milder { get; init; }

    /// <summary>With the same verdict and other movements.</summary>
    public required int MovementsOnly { get; init; }

    /// <summary>Those that change, the stricter first, then in the order of time.</summary>
    public required IReadOnlyList<ChangedBooking> Bookings { get; init; }

    /// <summary>Judges every booking ahead under the rules in force and under others; writes nothing.</summary>
    /// <param name="read">One view of the data for both.</param>
    /// <param name="now">The fits under the rules in force, loaded for everybody.</param>
    /// <param name="book">The other rules.</param>
    /// <param name="policies">The other policies.</param>
    /// <param name="at">The moment; what is over by then is not judged.</param>
    public static async Task<Consequences> OfAsync(
        Read read,
        Fits now,
        RuleBook book,
        StudioPolicies policies,
        Instant at
    )
    {
        var then = now.Under(book, policies);
        var sessions = (await SessionStore.ListAsync(read, new SessionsWanted()))
            .Where(s => s.EndsAt > at && s.Status == SessionStatus.Open)
            .ToDictionary(s => s.Id);
        var names = (
            await read.ListAsync<NameRow>("select id, name from clients where erased_at is null")
        ).ToDictionary(c => c.Id, c => c.Name);
        // After a loss she stands on no list and in no count, not even in that of a class that has begun.
        var bookings = (await BookingStore.InAsync(read, [.. sessions.Keys])).FindAll(b =>
            !now.HasEnded(b.ClientId)
        );
        List<ChangedBooking> changed =
        [
            .. bookings
                .AsParallel()
                .Select(b =>
                    (
                        Booking: b,
                        Session: sessions[b.SessionId],
                        Change: FitChanges.Between(
                            now.Of(b.ClientId, sessions[b.SessionId]),
                            then.Of(b.ClientId, sessions[b.SessionId])
                        )
                    )
                )
                .Where(c => c.Change is not null)
                .AsSequential()
                .OrderByDescending(c => c.Change!.To - c.Change.From)
                .ThenByDescending(c => c.Change!.OfVerdict)
                .ThenBy(c => c.Change!.OfVerdict ? -(int)c.Change.To : (int)c.Change.To)
                .ThenBy(c => c.Session.StartsAt)
                .ThenBy(c => c.Booking.Id)
                .Select(c => new ChangedBooking
                {
                    ClientId = c.Booking.ClientId,
                    Client = names[c.Booking.ClientId],
                    SessionId = c.Session.Id,
                    ClassName = c.Session.ClassName,
                    On = c.Session.OnDate,
                    StartsLocal = c.Session.StartsLocal,
                    Status = c.Booking.Status,
                    From = c.Change!.From,
                    To = c.Change.To,
                    Because = c.Change.Because,
                    Movements = c.Change.Movements,
                }),
        ];
        return new()
        {
            Judged = bookings.Count,
            Stricter = changed.Count(c => c.To > c.From),
            Milder = changed.Count(c => c.To < c.From),
            MovementsOnly = changed.Count(c => c.To == c.From),
            Bookings = changed,
        };
    }

    private sealed record NameRow
    {
        public long Id { get; init; }
        public string Name { get; init; } = "";
    }
}
