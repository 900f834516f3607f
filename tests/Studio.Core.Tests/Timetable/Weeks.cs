using Studio.Core.Timetable;

namespace Studio.Core.Tests.Timetable;

/// <summary>An invented studio's week: two locations an hour apart, three rooms, two people who teach.</summary>
internal static class Weeks
{
    public static readonly LocalDate Monday = new(2027, 3, 1);

    public static readonly Teacher Ada = new()
    {
        Id = 1,
        Name = "Ada Winterle",
        Qualifications = [new("prenatal", new(2026, 1, 1), new(2027, 3, 10))],
    };

    public static readonly Teacher Bo = Ada with
    {
        Id = 2,
        Name = "Bo Larkfield",
        Qualifications = [new("prenatal", new(2026, 1, 1), new(2028, 1, 1))],
    };

    public static TimetableFacts Facts { get; } =
        new()
        {
            Teachers = new Dictionary<long, Teacher> { [1] = Ada, [2] = Bo },
            Travel = new Dictionary<(long From, long To), int> { [(1, 2)] = 60, [(2, 1)] = 45 },
            RestMinutesLeast = 11 * 60,
        };

    public static TimetableFacts With(Teacher teacher) =>
        Facts with
        {
            Teachers = new Dictionary<long, Teacher>(Facts.Teachers) { [teacher.Id] = teacher },
        };

    /// <summary>A session of 50 minutes in room 1 or 2 of location 1, or room 3 of location 2, an hour east of it.</summary>
    public static PlacedSession Session(
        long key,
        LocalDate on,
        string starts,
        long? by = 1,
        long room = 1,
        int minutes = 50
    )
    {
        var location = room == 3 ? 2 : 1;
        var zone = DateTimeZoneProviders.Tzdb[location == 1 ? "Europe/Lisbon" : "Europe/Madrid"];
        var local = NodaTime.Text.LocalTimePattern.ExtendedIso.Parse(starts + ":00").Value;
        var at = on.At(local).InZoneLeniently(zone).ToInstant();
        return new PlacedSession
        {
            Key = key,
            ClassId = 1,
            ClassCode = "core",
            ClassName = $"Class {key}",
            NeedsQualification = "prenatal",
            RoomId = room,
            RoomName = $"Room {room}",
            RoomSeats = 10,
            LocationId = location,
            LocationCode = location == 1 ? "quay" : "hill",
            LocationName = location == 1 ? "Quay" : "Hill",
            InstructorId = by,
            On = on,
            StartsLocal = local,
            StartsAt = at,
            EndsAt = at + Duration.FromMinutes(minutes),
            Seats = 10,
        };
    }
}
