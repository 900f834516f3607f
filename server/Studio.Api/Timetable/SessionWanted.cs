using NodaTime;
using Studio.Api.Data;
using Studio.Api.Movements;
using Studio.Api.Studios;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>How a session should stand.</summary>
public sealed record SessionWanted
{
    /// <summary>The session; null: a new one.</summary>
    public long? Id { get; init; }

    /// <summary>Its class, which a session keeps for life.</summary>
    public required long ClassId { get; init; }

    /// <summary>The room.</summary>
    public required long RoomId { get; init; }

    /// <summary>Who teaches it; null when nobody does yet.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Its date, where it is held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Start by the clock of the room's location; where the clocks skip that hour, as much later as they skip.</summary>
    public required LocalTime StartsLocal { get; init; }

    /// <summary>Length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>Seats.</summary>
    public required int Seats { get; init; }

    /// <summary>Whether it is held; false calls it off.</summary>
    public bool IsHeld { get; init; } = true;

    /// <summary>The series it comes from.</summary>
    public long? SeriesId { get; init; }

    /// <summary>The date the series' rule gave, wherever it was moved to since.</summary>
    public LocalDate? SeriesOn { get; init; }

    /// <summary>As it stands now.</summary>
    public static SessionWanted As(SessionRow row) =>
        new()
        {
            Id = row.Id,
            ClassId = row.ClassId,
            RoomId = row.RoomId,
            InstructorId = row.InstructorId,
            On = row.OnDate,
            StartsLocal = row.StartsLocal,
            Minutes = (int)(row.EndsAt - row.StartsAt).TotalMinutes,
            Seats = row.Seats,
            IsHeld = row.Status == SessionStatus.Open,
            SeriesId = row.SeriesId,
            SeriesOn = row.SeriesOn,
        };
}

/// <summary>The rooms, classes and plans of the studio, to place sessions that are not in the tables yet.</summary>
public sealed class Places
{
    private readonly IReadOnlyDictionary<long, (Room Room, Location Location)> _rooms;
    private readonly IReadOnlyDictionary<long, StudioClass> _classes;
    private readonly Plans _plans;

    private Places(
        IReadOnlyDictionary<long, (Room, Location)> rooms,
        IReadOnlyDictionary<long, StudioClass> classes,
        Plans plans
    ) => (_rooms, _classes, _plans) = (rooms, classes, plans);

    /// <summary>Reads them.</summary>
    public static async Task<Places> LoadAsync(Read read) =>
        new(
            (await StudioStore.LocationsAsync(read))
                .SelectMany(l => l.Rooms.Select(r => (Room: r, Location: l)))
                .ToDictionary(p => p.Room.Id, p => (p.Room, p.Location)),
            (await StudioStore.ClassesAsync(read)).ToDictionary(c => c.Id),
            await PlanStore.AllAsync(read)
        );

    /// <summary>A room with its location; null when there is none.</summary>
    public (Room Room, Location Location)? RoomOf(long roomId) =>
        _rooms.TryGetValue(roomId, out var found) ? found : null;

    /// <summary>A class; null when there is none.</summary>
    public StudioClass? ClassOf(long classId) => _classes.GetValueOrDefault(classId);

    /// <summary>
    /// The session where it is wanted, on the date and at the hour that the wall shows then.
    /// </summary>
    /// <param name="wanted">The session; its room and class are there.</param>
    /// <param name="key">Its key in the check.</param>
    /// <param name="seatsTaken">Seats that people have in it.</param>
    public PlacedSession Place(SessionWanted wanted, long key, int seatsTaken)
    {
        var (room, location) = _rooms[wanted.RoomId];
        var of = _classes[wanted.ClassId];
        var starts = DateTimeZoneProviders
            .Tzdb[location.Zone]
            .AtLeniently(wanted.On + wanted.StartsLocal);
        var startsAt = starts.ToInstant();
        return new PlacedSession
        {
            Key = key,
            ClassId = of.Id,
            ClassCode = of.Code,
            ClassName = of.Name,
            NeedsQualification = of.NeedsQualification,
            PlanMinutes =
                _plans.Of(new DatedClass(wanted.Id ?? key, of.Id, starts.Date, startsAt))?.Minutes
                ?? 0,
            RoomId = room.Id,
            RoomName = room.Name,
            RoomSeats = room.Seats,
            LocationId = location.Id,
            LocationCode = location.Code,
            LocationName = location.Name,
            InstructorId = wanted.InstructorId,
            On = starts.Date,
            StartsLocal = starts.TimeOfDay,
            StartsAt = startsAt,
            EndsAt = startsAt + Duration.FromMinutes(wanted.Minutes),
            Seats = wanted.Seats,
            SeatsTaken = seatsTaken,
        };
    }
}
