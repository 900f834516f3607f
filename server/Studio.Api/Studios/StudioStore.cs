using NodaTime;
using Studio.Api.Data;

namespace Studio.Api.Studios;

/// <summary>The studio itself.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Today">Today on the wall of its first location.</param>
/// <param name="DemoLoaded">It is the invented demo studio.</param>
public sealed record About(string Name, LocalDate Today, bool DemoLoaded);

/// <summary>A place where classes are held.</summary>
public sealed record Location
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Short code used in imports.</summary>
    public string Code { get; init; } = "";

    /// <summary>Name.</summary>
    public string Name { get; init; } = "";

    /// <summary>IANA time zone of its wall clock.</summary>
    public string Zone { get; init; } = "";

    /// <summary>Number to call there in an emergency.</summary>
    public string EmergencyNumber { get; init; } = "";

    /// <summary>Its rooms.</summary>
    public IReadOnlyList<Room> Rooms { get; init; } = [];
}

/// <summary>A room with seats (mats).</summary>
public sealed record Room
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Where it is.</summary>
    public long LocationId { get; init; }

    /// <summary>Name.</summary>
    public string Name { get; init; } = "";

    /// <summary>How many can take part at once.</summary>
    public int Seats { get; init; }
}

/// <summary>A class the studio offers; a session is one dated occurrence of it.</summary>
public sealed record StudioClass
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Short code.</summary>
    public string Code { get; init; } = "";

    /// <summary>Name.</summary>
    public string Name { get; init; } = "";

    /// <summary>One sentence on what it is.</summary>
    public string About { get; init; } = "";

    /// <summary>Length in minutes.</summary>
    public int Minutes { get; init; }

    /// <summary>Usual effort, 0 to 10.</summary>
    public int Effort { get; init; }

    /// <summary>The qualification its instructor needs on the day.</summary>
    public string NeedsQualification { get; init; } = "";

    /// <summary>Codes of the stages it admits.</summary>
    public IReadOnlyList<string> Stages { get; init; } = [];

    /// <summary>What is in it that rules speak about.</summary>
    public IReadOnlyList<string> Traits { get; init; } = [];
}

/// <summary>Reads what stands still: the studio, its places and classes.</summary>
public sealed class StudioStore(Database database, IClock clock)
{
    /// <summary>Name and today.</summary>
    public async Task<About> AboutAsync()
    {
        await using var read = await database.ReadAsync();
        var row = await read.FindAsync<StudioRow>(
            "select name, demo_loaded_on as DemoLoadedOn from studio"
        );
        var zone = await read.FindAsync<string>("select zone from locations order by id limit 1");
        return new About(
            row?.Name ?? "Studio",
            Today(zone ?? "UTC"),
            row?.DemoLoadedOn is not null
        );
    }

    /// <summary>Today on the wall of a zone.</summary>
    public LocalDate Today(string zone) =>
        clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[zone]).Date;

    /// <summary>Locations with their rooms.</summary>
    public static async Task<List<Location>> LocationsAsync(Read read)
    {
        var rooms = await read.ListAsync<Room>(
            "select id, location_id as LocationId, name, seats from rooms order by location_id, id"
        );
        var locations = await read.ListAsync<Location>(
            "select id, code, name, zone, emergency_number as EmergencyNumber from locations order by id"
        );
        return
        [
            .. locations.Select(l =>
                l with
                {
                    Rooms = [.. rooms.Where(r => r.LocationId == l.Id)],
                }
            ),
        ];
    }

    /// <summary>Classes with the stages they admit and their traits.</summary>
    public static async Task<List<StudioClass>> ClassesAsync(Read read)
    {
        var stages = await TagsAsync(
            """
            select c.class_id as ClassId, c.stage as Tag
              from class_stages c join stages s on s.code = c.stage order by s.position
            """
        );
        var traits = await TagsAsync(
            "select class_id as ClassId, trait as Tag from class_traits order by trait"
        );
        var classes = await read.ListAsync<StudioClass>(
            """
            select id, code, name, about, minutes, effort, needs_qualification as NeedsQualification
              from classes order by id
            """
        );
        return
        [
            .. classes.Select(c =>
                c with
                {
                    Stages = [.. stages[c.Id]],
                    Traits = [.. traits[c.Id]],
                }
            ),
        ];

        async Task<ILookup<long, string>> TagsAsync(string sql) =>
            (await read.ListAsync<ClassTag>(sql)).ToLookup(t => t.ClassId, t => t.Tag);
    }

    private sealed record StudioRow
    {
        public string Name { get; init; } = "";
        public LocalDate? DemoLoadedOn { get; init; }
    }

    private sealed record ClassTag
    {
        public long ClassId { get; init; }
        public string Tag { get; init; } = "";
    }
}
