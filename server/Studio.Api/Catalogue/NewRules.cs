using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Jobs;
using Studio.Api.Rosters;
using Studio.Api.Studios;
using Studio.Api.Timetable;

namespace Studio.Api.Catalogue;

/// <summary>What follows when rules or policies change: everything that was set by the old ones is set again, in the same write.</summary>
public sealed class NewRules(IServiceProvider services, StudioStore studio, IClock clock)
{
    /// <summary>Stages, everybody's day and stage, free seats for those who wait, suggested moves, flags; the caller commits.</summary>
    public async Task SettleAsync(Write write)
    {
        // The request's own services hold the book it began with.
        var flags = ActivatorUtilities.CreateInstance<FlagSweep>(services, write.Book);
        var bookings = ActivatorUtilities.CreateInstance<Bookings>(services, write.Book, flags);
        var moves = ActivatorUtilities.CreateInstance<MovesSweep>(services, write.Book);
        var advance = ActivatorUtilities.CreateInstance<AdvanceSweep>(services);

        await EmbeddedCatalogue.CopyStagesAsync(write, write.Book);
        foreach (var zone in await write.ListAsync<string>("select distinct zone from locations"))
            await advance.ZoneAsync(write, zone, studio.Today(zone));
        var now = clock.GetCurrentInstant();
        foreach (
            var session in (await SessionStore.ListAsync(write, new SessionsWanted())).Where(s =>
                s is { Waiting: > 0, SeatsLeft: > 0 } && s.StartsAt > now
            )
        )
            await bookings.FillAsync(write, session);
        await moves.AllAsync(write);
        await flags.AllAsync(write);
        write.Tell("rules");
    }
}
