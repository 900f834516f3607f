using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Imports;
using Studio.Api.Movements;
using Studio.Api.Staff;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Movements;
using Studio.Core.Timetable;

namespace Studio.Api.Demo;

/// <summary>
/// Sets up a studio's own data from CSV files: name, locations, rooms, instructors, qualifications, classes, and a
/// weekly timetable as series. The demo studio's files are inside the program; a real studio's lie in a folder.
/// </summary>
public static class StudioSetup
{
    private const string Plans = "plans.csv";
    private const string Closures = "closures.csv";

    /// <summary>Files that a studio may do without, each with what stands for it then.</summary>
    public static IReadOnlyDictionary<string, string> Optional { get; } =
        new Dictionary<string, string>(
            StaffSetup.Files.Select(f =>
                KeyValuePair.Create(f.Key, string.Join(',', f.Value) + "\n")
            ),
            StringComparer.Ordinal
        )
        {
            [Plans] = "class,position,movement,minutes\n",
            [Closures] = "location,from,to,kind,name\n",
        };

    /// <summary>Writes everything; the caller commits.</summary>
    /// <param name="write">The transaction.</param>
    /// <param name="file">A file's text by its name.</param>
    /// <param name="book">The catalogue, which must know every stage and trait of the classes.</param>
    /// <param name="now">The moment; the timetable begins on the Monday of its week.</param>
    /// <param name="isDemo">It is the demo.</param>
    /// <exception cref="InvalidOperationException">A file is wrong; every fault with its line.</exception>
    public static async Task RunAsync(
        Write write,
        Func<string, string> file,
        RuleBook book,
        Instant now,
        bool isDemo
    )
    {
        var locations = Rows(file, "locations.csv", "code", "name", "zone", "emergency_number");
        var today = now.InZone(ZoneOf(locations[0]["zone"])).Date;
        await write.ExecuteAsync(
            "insert into studio (id, name, demo_loaded_on) values (1, @name, @loaded)",
            new
            {
                name = Rows(file, "studio.csv", "name")[0]["name"],
                loaded = isDemo ? today : (LocalDate?)null,
            }
        );
        foreach (var row in locations)
            await write.ExecuteAsync(
                """
                insert into locations (code, name, zone, emergency_number)
                values (@code, @name, @zone, @number)
                """,
                new
                {
                    code = row["code"],
                    name = row["name"],
                    zone = ZoneOf(row["zone"]).Id,
                    number = row["emergency_number"],
                }
            );
        foreach (var row in Rows(file, "rooms.csv", "location", "name", "seats"))
            await write.ExecuteAsync(
                """
                insert into rooms (location_id, name, seats)
                select id, @name, @seats from locations where code = @location
                """,
                new
                {
                    location = row["location"],
                    name = row["name"],
                    seats = Number(row, "seats"),
                }
            );
        await StaffAsync(write, file, today);
        await ClassesAsync(write, file, book);
        await PlansAsync(write, file, book, now);
        await ClosuresAsync(write, file, today);
        await StaffSetup.RunAsync(write, file, today, now);
        await TimetableAsync(write, file, book, now);
        await StaffSetup.TravelAsync(write, file, book, today);
    }

    /// <summary>Writes dates for <c>today</c>, <c>today+12</c> and <c>today-98</c> wherever they stand in a text.</summary>
    public static string WithDates(string text, LocalDate today) =>
        System.Text.RegularExpressions.Regex.Replace(
            text,
            @"\btoday(?<days>[+-]\d{1,5})?(?=[,;:\r\n]|$)",
            match =>
                LocalDatePattern.Iso.Format(
                    today.PlusDays(
                        match.Groups["days"].Success
                            ? int.Parse(match.Groups["days"].Value, CultureInfo.InvariantCulture)
                            : 0
                    )
                ),
            System.Text.RegularExpressions.RegexOptions.ExplicitCapture,
            TimeSpan.FromSeconds(10)
        );

    /// <summary>The rows of a file; any fault stops.</summary>
    public static IReadOnlyList<CsvRow> Rows(
        Func<string, string> file,
        string name,
        params string[] columns
    )
    {
        var refused = new List<RefusedRow>();
        var rows = CsvText.Read(file(name), columns, [], refused);
        if (refused.Count > 0)
            throw new SettingException(
                string.Join(
                    Environment.NewLine,
                    refused.Select(r => $"{name} line {r.Line}: {r.Column} {r.Reason}")
                )
            );
        return rows;
    }

    private static async Task StaffAsync(Write write, Func<string, string> file, LocalDate today)
    {
        foreach (var row in Rows(file, "instructors.csv", "name", "called", "email", "phone"))
            await write.ExecuteAsync(
                "insert into instructors (name, called, email, phone) values (@name, @called, @email, @phone)",
                new
                {
                    name = row["name"],
                    called = row["called"],
                    email = row["email"],
                    phone = row["phone"],
                }
            );
        var dated = (string name) => WithDates(file(name), today);
        foreach (
            var row in Rows(
                dated,
                "qualifications.csv",
                "instructor_email",
                "kind",
                "issued_on",
                "expires_on"
            )
        )
            await write.ExecuteAsync(
                """
                insert into qualifications (instructor_id, kind, issued_on, expires_on)
                select id, @kind, @issued, @expires from instructors where email = @email
                """,
                new
                {
                    email = row["instructor_email"],
                    kind = row["kind"],
                    issued = Day(row, "issued_on"),
                    expires = Day(row, "expires_on"),
                }
            );
    }

    private static async Task ClassesAsync(Write write, Func<string, string> file, RuleBook book)
    {
        foreach (
            var row in Rows(
                file,
                "classes.csv",
                "code",
                "name",
                "about",
                "minutes",
                "effort",
                "stages",
                "traits",
                "needs_qualification"
            )
        )
        {
            var stages = Split(row["stages"]);
            var traits = Split(row["traits"]);
            var profile = new ClassProfile
            {
                Code = row["code"],
                Name = row["name"],
                Stages = stages.ToHashSet(StringComparer.Ordinal),
                Traits = traits.ToHashSet(StringComparer.Ordinal),
            };
            if (profile.Faults(book).ToList() is { Count: > 0 } faults)
                throw new SettingException(
                    $"classes.csv line {row.Line}: {string.Join(" ", faults)}"
                );
            var id = await write.InsertAsync(
                """
                insert into classes (code, name, about, minutes, effort, needs_qualification)
                values (@code, @name, @about, @minutes, @effort, @needs)
                """,
                new
                {
                    code = row["code"],
                    name = row["name"],
                    about = row["about"],
                    minutes = Number(row, "minutes"),
                    effort = Number(row, "effort"),
                    needs = row["needs_qualification"],
                }
            );
            foreach (var stage in stages)
                await write.ExecuteAsync(
                    "insert into class_stages (class_id, stage) values (@id, @stage)",
                    new { id, stage }
                );
            foreach (var trait in traits)
                await write.ExecuteAsync(
                    "insert into class_traits (class_id, trait) values (@id, @trait)",
                    new { id, trait }
                );
        }
    }

    private static async Task PlansAsync(
        Write write,
        Func<string, string> file,
        RuleBook book,
        Instant now
    )
    {
        var classes = await StudioStore.ClassesAsync(write);
        var plans = PlanFile.Parse(
            new StringReader(file(Plans)),
            Plans,
            [
                .. classes.Select(c => new PlannedClass(
                    c.Code,
                    c.Minutes,
                    c.Stages.ToHashSet(StringComparer.Ordinal)
                )),
            ],
            book,
            book.Policies
        );
        // They were taught before the studio came here, so the sessions of the weeks behind have them too.
        var since = now.Minus(Duration.FromDays(366));
        foreach (var cls in classes)
        {
            if (plans.TryGetValue(cls.Code, out var plan))
                await PlanStore.AddAsync(write, cls.Id, plan, since, null);
        }
    }

    private static async Task TimetableAsync(
        Write write,
        Func<string, string> file,
        RuleBook book,
        Instant now
    )
    {
        foreach (
            var row in Rows(
                file,
                "timetable.csv",
                "location",
                "room",
                "class",
                "instructor_email",
                "weekday",
                "start"
            )
        )
        {
            var place =
                await write.FindAsync<Place>(
                    """
                    select r.id as RoomId, r.seats, l.id as LocationId, l.zone, c.id as ClassId, c.minutes,
                           (select i.id from instructors i where i.email = @instructor) as InstructorId
                      from rooms r
                      join locations l on l.id = r.location_id
                      join classes c on c.code = @class
                     where l.code = @location and r.name = @room
                    """,
                    new
                    {
                        location = row["location"],
                        room = row["room"],
                        @class = row["class"],
                        instructor = row["instructor_email"],
                    }
                )
                ?? throw new SettingException(
                    $"timetable.csv line {row.Line}: no such room or class."
                );
            if (place.InstructorId is null && row["instructor_email"].Length > 0)
                throw new SettingException($"timetable.csv line {row.Line}: no such instructor.");
            var zone = ZoneOf(place.Zone);
            var monday = now.InZone(zone).Date.PlusDays(1).Previous(IsoDayOfWeek.Monday);
            var start = LocalTimePattern
                .CreateWithInvariantCulture("HH:mm")
                .Parse(row["start"])
                .GetValueOrThrow();
            var first = monday.PlusDays(Number(row, "weekday") - 1);
            var rule = SeriesRule.Kept($"FREQ=WEEKLY;BYDAY={DayCodes[first.DayOfWeek]}");
            var shape = new SeriesShape
            {
                RoomId = place.RoomId,
                InstructorId = place.InstructorId,
                Seats = place.Seats,
                Minutes = place.Minutes,
                StartsOn = first,
                StartsLocal = start,
                Rule = rule,
            };
            var series =
                await SeriesStore.AddAsync(write, place.ClassId, shape, null, now, null)
                ?? throw new SettingException(
                    $"timetable.csv line {row.Line}: the same class, room and hour stand in the file twice."
                );
            var shut = await ClosureStore.ShutAsync(write, place.LocationId);
            var away = place.InstructorId is { } her
                ? await StaffStore.LeaveAsync(write, monday, her)
                : [];
            // This week whole, so that what was taught since Monday is there too; later ones by night, as for any series.
            foreach (
                var on in shape
                    .Dates(monday, SeriesPlans.LaidOutTo(monday, book.Policies.TimetableAheadWeeks))
                    .Where(d => !shut.ContainsKey(d))
            )
            {
                var starts = zone.On(on + start);
                await write.ExecuteAsync(
                    """
                    insert into sessions (class_id, room_id, instructor_id, starts_at, ends_at, on_date, starts_local, seats,
                                          series_id, series_on)
                    values (@ClassId, @RoomId, @instructor, @starts, @ends, @on, @local, @Seats, @series, @seriesOn)
                    """,
                    new
                    {
                        place.ClassId,
                        place.RoomId,
                        // As when a series is laid out by night: while she is away nobody teaches it yet.
                        instructor = away.Exists(l => l.From <= on && on <= l.To)
                            ? null
                            : place.InstructorId,
                        starts = starts.ToInstant(),
                        ends = starts.ToInstant() + Duration.FromMinutes(place.Minutes),
                        on = starts.Date,
                        local = starts.TimeOfDay,
                        place.Seats,
                        series,
                        seriesOn = on,
                    }
                );
            }
        }
    }

    private static readonly Dictionary<IsoDayOfWeek, string> DayCodes = new()
    {
        [IsoDayOfWeek.Monday] = "MO",
        [IsoDayOfWeek.Tuesday] = "TU",
        [IsoDayOfWeek.Wednesday] = "WE",
        [IsoDayOfWeek.Thursday] = "TH",
        [IsoDayOfWeek.Friday] = "FR",
        [IsoDayOfWeek.Saturday] = "SA",
        [IsoDayOfWeek.Sunday] = "SU",
    };

    // A file that a studio may do without: days on which a location is shut.
    private static async Task ClosuresAsync(Write write, Func<string, string> file, LocalDate today)
    {
        var dated = (string name) => WithDates(file(name), today);
        foreach (var row in Rows(dated, Closures, "location", "from", "to", "kind", "name"))
        {
            var location =
                await write.FindAsync<long?>(
                    "select id from locations where code = @code",
                    new { code = row["location"] }
                ) ?? throw new SettingException($"{Closures} line {row.Line}: no such location.");
            if (row["kind"] is not ("closure" or "holiday"))
                throw new SettingException(
                    $"{Closures} line {row.Line}: kind is closure or holiday."
                );
            await ClosureStore.AddAsync(
                write,
                location,
                Day(row, "from"),
                Day(row, "to"),
                row["kind"] == "closure" ? ClosureKind.Closure : ClosureKind.PublicHoliday,
                row["name"]
            );
        }
    }

    private static DateTimeZone ZoneOf(string id) =>
        DateTimeZoneProviders.Tzdb.GetZoneOrNull(id)
        ?? throw new SettingException($"locations.csv: there is no time zone '{id}'.");

    private static int Number(CsvRow row, string column) =>
        int.TryParse(row[column], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw new SettingException(
                $"Line {row.Line}: {column} is '{row[column]}', not a number."
            );

    private static LocalDate Day(CsvRow row, string column) =>
        LocalDatePattern.Iso.Parse(row[column]).GetValueOrThrow();

    private static string[] Split(string list) =>
        list.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private sealed record Place
    {
        public long RoomId { get; init; }
        public int Seats { get; init; }
        public long LocationId { get; init; }
        public string Zone { get; init; } = "";
        public long ClassId { get; init; }
        public int Minutes { get; init; }
        public long? InstructorId { get; init; }
    }
}
