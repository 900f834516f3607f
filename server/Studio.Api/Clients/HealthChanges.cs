using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Rosters;

namespace Studio.Api.Clients;

/// <summary>
/// What follows every change of a client's health record: the seats she waits for and her flags are looked at again,
/// then it is committed.
/// </summary>
public sealed class HealthChanges(FlagSweep flags, Bookings bookings, IClock clock)
{
    /// <summary>The moment of the change.</summary>
    public Instant Now => clock.GetCurrentInstant();

    /// <summary>Today at her location.</summary>
    public LocalDate Today(ClientRow client) =>
        Now.InZone(DateTimeZoneProviders.Tzdb[client.Zone]).Date;

    /// <summary>Looks again at the seats she waits for and at her flags, tells the open pages, commits.</summary>
    public async Task DoneAsync(Write write, long clientId)
    {
        await bookings.FillWaitedForAsync(write, clientId);
        await flags.RefreshAsync(write, [clientId]);
        write.Tell("client", clientId);
        write.Tell("session");
        await write.CommitAsync();
    }
}
