using System.Text;
using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Feeds;

namespace Studio.Api.Feeds;

/// <summary>Writes somebody's calendar, or a single session of it.</summary>
public sealed class Calendars(StudioStore studio, IClock clock)
{
    /// <summary>What is read through an address; null when there is nobody behind it.</summary>
    public async Task<byte[]?> OfAsync(Read read, FeedRow feed)
    {
        var now = clock.GetCurrentInstant();
        var about = await studio.AboutAsync();
        var since = now - FeedRules.Remembered;
        var key = await FeedStore.KeyAsync(read);
        if (feed is { Reads: FeedReads.Instructor, InstructorId: { } instructor })
            return await WriteAsync(
                read,
                about.Name,
                [
                    .. (await FeedStore.TaughtAsync(read, instructor, since)).Select(s =>
                        ForStaff(s, key)
                    ),
                ],
                now
            );
        if (
            feed is not { Reads: FeedReads.Client, ClientId: { } client }
            || await ClientStore.FindAsync(read, client) is not { } her
        )
            return null;
        return await WriteAsync(
            read,
            about.Name,
            [
                .. (await FeedStore.BookedAsync(read, client, since))
                    .Select(s => ForClient(s, key, about.Name, her.Ended, feed.NamesClass, now))
                    .OfType<CalendarEntry>(),
            ],
            now
        );
    }

    /// <summary>One session for those who work in it.</summary>
    public async Task<byte[]> ForStaffAsync(Read read, long sessionId)
    {
        var session = (
            await FeedStore.TaughtAsync(read, null, Instant.MinValue, sessionId)
        ).Single();
        return await WriteAsync(
            read,
            (await studio.AboutAsync()).Name,
            [ForStaff(session, await FeedStore.KeyAsync(read))],
            clock.GetCurrentInstant()
        );
    }

    /// <summary>One session of a client's; null when it is not in her calendar.</summary>
    public async Task<byte[]?> ForClientAsync(
        Read read,
        long clientId,
        long sessionId,
        bool namesClass
    )
    {
        var now = clock.GetCurrentInstant();
        var name = (await studio.AboutAsync()).Name;
        var key = await FeedStore.KeyAsync(read);
        return
            await ClientStore.FindAsync(read, clientId) is { } her
            && (
                await FeedStore.BookedAsync(read, clientId, Instant.MinValue, sessionId)
            ).SingleOrDefault()
                is { } session
            && ForClient(session, key, name, her.Ended, namesClass, now) is { } entry
            ? await WriteAsync(read, name, [entry], now)
            : null;
    }

    private static async Task<byte[]> WriteAsync(
        Read read,
        string studioName,
        IReadOnlyCollection<CalendarEntry> entries,
        Instant now
    )
    {
        var home = await read.FindAsync<string>("select zone from locations order by id limit 1");
        return Encoding.UTF8.GetBytes(
            StudioCalendar.Write(
                FeedWords.CalendarName(studioName),
                entries,
                DateTimeZoneProviders.Tzdb[home ?? "UTC"],
                now
            )
        );
    }

    private static CalendarEntry ForStaff(TaughtSession session, string key)
    {
        var state =
            session.Status == SessionStatus.Open ? EntryState.Confirmed : EntryState.Cancelled;
        return Entry(session, FeedReads.Instructor, key, state) with
        {
            Sequence = session.Changes,
            Summary = FeedWords.ForStaff(state, session.ClassName),
            About = FeedWords.MoreForStaff(state, session.Booked, session.Seats, session.Waiting),
        };
    }

    private static CalendarEntry? ForClient(
        ClientSession session,
        string key,
        string studioName,
        bool ended,
        bool namesClass,
        Instant now
    )
    {
        var held = session.Status == SessionStatus.Open;
        var place = session.Place switch
        {
            BookingStatus.Booked => PlaceInSession.Seat,
            BookingStatus.Waiting => PlaceInSession.Waitlist,
            BookingStatus.Cancelled or BookingStatus.Moved => PlaceInSession.GivenUp,
            BookingStatus.Released => PlaceInSession.Released,
        };
        var asked = new BookedSession(place, session.EndedAt, held, session.StartsAt);
        return FeedRules.StateFor(asked, ended, now) is not { } state
            ? null
            : Entry(session, FeedReads.Client, key, state) with
            {
                // Each place after the first, each seat given from the waitlist and each end is a change to her.
                Sequence = session.Changes + session.Times - 1 + session.Promoted + session.Ended,
                Summary = FeedWords.ForClient(
                    state,
                    studioName,
                    session.ClassName,
                    namesClass && !ended
                ),
                About = FeedWords.MoreForClient(state, calledOff: !held),
            };
    }

    private static CalendarEntry Entry(
        FeedSession session,
        FeedReads reads,
        string key,
        EntryState state
    ) =>
        new()
        {
            Uid = CalendarKeys.Uid(key, reads.OnTheWire(), session.Id),
            Sequence = 0,
            ChangedAt = session.Latest,
            StartsAt = session.StartsAt,
            EndsAt = session.EndsAt,
            Zone = session.Zone,
            Summary = "",
            Place = FeedWords.Place(session.RoomName, session.LocationName),
            State = state,
        };
}
