using Microsoft.Extensions.DependencyInjection;
using NodaTime.Text;
using Studio.Api.Data;
using Studio.Api.Movements;
using Studio.Api.Staff;
using Studio.Core.Movements;

namespace Studio.Api.Tests.Harness;

/// <summary>Places, classes, staff and sessions.</summary>
public sealed partial class StudioApp
{
    /// <summary>Every stage of the scheme.</summary>
    public static readonly IReadOnlyList<string> EveryStage =
    [
        "first-trimester",
        "second-trimester",
        "third-trimester",
        "early-recovery",
        "postnatal",
        "later-postnatal",
    ];

    private int _made;

    /// <summary>A location. Its code is its name in lower case.</summary>
    public Task<long> HasLocation(string name = "Quay house", string zone = "Europe/Lisbon") =>
        Insert(
            "insert into locations (code, name, zone, emergency_number) values (@code, @name, @zone, '112')",
            new
            {
                code = name.ToLowerInvariant().Replace(' ', '-'),
                name,
                zone,
            }
        );

    /// <summary>A room, at the first location unless one is given.</summary>
    public async Task<long> HasRoom(long? location = null, int seats = 200, string? name = null) =>
        await Insert(
            "insert into rooms (location_id, name, seats) values (@location, @name, @seats)",
            new
            {
                location = location ?? await AnyLocation(),
                name = name ?? $"Room {Next()}",
                seats,
            }
        );

    /// <summary>A class; without stages and traits it admits everybody and asks nothing that a rule speaks about.</summary>
    public async Task<long> HasClass(
        string? name = null,
        IReadOnlyList<string>? stages = null,
        IReadOnlyList<string>? traits = null,
        int minutes = 50,
        string needs = "prenatal"
    )
    {
        var number = Next();
        var id = await Insert(
            """
            insert into classes (code, name, about, minutes, effort, needs_qualification)
            values (@code, @name, 'A class made for a test.', @minutes, 3, @needs)
            """,
            new
            {
                code = $"class-{number}",
                name = name ?? $"Class {number}",
                minutes,
                needs,
            }
        );
        foreach (var stage in stages ?? EveryStage)
            await Execute(
                "insert into class_stages (class_id, stage) values (@id, @stage)",
                new { id, stage }
            );
        foreach (var trait in traits ?? [])
            await Execute(
                "insert into class_traits (class_id, trait) values (@id, @trait)",
                new { id, trait }
            );
        return id;
    }

    /// <summary>Another version of a class's plan, made now.</summary>
    public async Task HasPlan(long @class, params (string Movement, int Minutes)[] items)
    {
        await using var write = await Services.GetRequiredService<Database>().BeginWriteAsync();
        await PlanStore.AddAsync(
            write,
            @class,
            new ClassPlan([.. items.Select(i => new PlanItem(i.Movement, i.Minutes))]),
            Clock.GetCurrentInstant(),
            null
        );
        await write.CommitAsync();
    }

    /// <summary>An instructor.</summary>
    public Task<long> HasInstructor(string name = "Ilka Thornmere") =>
        Insert(
            """
            insert into instructors (name, called, email, phone)
            values (@name, @called, @email, '+351 990 000 001')
            """,
            new
            {
                name,
                called = name.Split(' ')[0],
                email = $"instructor{Next()}@saltmarsh.example",
            }
        );

    /// <summary>A qualification of hers.</summary>
    public Task<long> HasQualification(
        long instructor,
        LocalDate issued,
        LocalDate expires,
        string kind = "prenatal"
    ) =>
        Insert(
            """
            insert into qualifications (instructor_id, kind, issued_on, expires_on)
            values (@instructor, @kind, @issued, @expires)
            """,
            new
            {
                instructor,
                kind,
                issued,
                expires,
            }
        );

    /// <summary>A qualification of hers that counts for a year either side of today, with its proof.</summary>
    public async Task<long> HasProvenQualification(long instructor, string kind = "prenatal")
    {
        var id = await HasQualification(
            instructor,
            Today.PlusDays(-365),
            Today.PlusDays(365),
            kind
        );
        var name = await With<ProofFiles, string>(files => files.KeepAsync(LetterSamples.Png));
        await Execute(
            "update qualifications set proof_name = @name, proof_media_type = 'image/png' where id = @id",
            new { id, name }
        );
        return id;
    }

    /// <summary>She is away on these days.</summary>
    public Task<long> HasLeave(long instructor, LocalDate from, LocalDate to) =>
        Insert(
            "insert into leave (instructor_id, from_on, to_on, entered_at) values (@instructor, @from, @to, @at)",
            new
            {
                instructor,
                from,
                to,
                at = Clock.GetCurrentInstant(),
            }
        );

    /// <summary>A rate in euro from 2026 on, per session unless said otherwise.</summary>
    public Task<long> HasRate(
        long amount,
        string per = "session",
        long? instructor = null,
        long? @class = null,
        LocalDate? from = null
    ) =>
        Insert(
            """
            insert into pay_rates (instructor_id, class_id, per, heads, amount, currency, from_on, made_at)
            values (@instructor, @class, @per, @heads, @amount, 'EUR', @from, @at)
            """,
            new
            {
                instructor,
                @class,
                per,
                heads = per == "head" ? "checkedIn" : null,
                amount,
                from = from ?? new LocalDate(2026, 1, 1),
                at = Clock.GetCurrentInstant(),
            }
        );

    /// <summary>
    /// A session on a date at a time by the wall clock of its room's location; in a room of its own and of a class of
    /// its own unless they are given.
    /// </summary>
    public async Task<long> HasSession(
        LocalDate on,
        string at = "18:00",
        long? of = null,
        int seats = 10,
        long? room = null,
        long? instructor = null,
        string status = "open"
    )
    {
        var @class = of ?? await HasClass();
        room ??= await HasRoom();
        var zone = await Value<string>(
            "select l.zone from rooms r join locations l on l.id = r.location_id where r.id = @room",
            new { room }
        );
        var minutes = await Value<long>(
            "select minutes from classes where id = @class",
            new { @class }
        );
        var time = LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(at).Value;
        var starts = DateTimeZoneProviders.Tzdb[zone].AtLeniently(on + time).ToInstant();
        return await Insert(
            """
            insert into sessions (class_id, room_id, instructor_id, starts_at, ends_at, on_date, starts_local, seats, status)
            values (@class, @room, @instructor, @starts, @ends, @on, @at, @seats, @status)
            """,
            new
            {
                @class,
                room,
                instructor,
                starts,
                ends = starts + Duration.FromMinutes(minutes),
                on,
                at,
                seats,
                status,
            }
        );
    }

    /// <summary>A series that is not laid out yet; at 18:00, in a room and of a class of its own unless they are given.</summary>
    public async Task<long> HasSeries(
        string rule,
        LocalDate starts,
        string at = "18:00",
        long? of = null,
        long? room = null,
        long? instructor = null,
        int seats = 10,
        int minutes = 50
    ) =>
        await Insert(
            """
            insert into series (class_id, room_id, instructor_id, seats, minutes, starts_on, starts_local, rule, made_at)
            values (@class, @room, @instructor, @seats, @minutes, @starts, @at, @rule, '2026-01-01T00:00:00.000Z')
            """,
            new
            {
                @class = of ?? await HasClass(),
                room = room ?? await HasRoom(),
                instructor,
                seats,
                minutes,
                starts,
                at,
                rule,
            }
        );

    /// <summary>A day on which a location is shut.</summary>
    public async Task<long> HasClosure(LocalDate on, long? location = null, string? name = null) =>
        await Insert(
            """
            insert into closures (location_id, from_on, to_on, kind, name)
            values (@location, @on, @on, 'closure', @name)
            """,
            new
            {
                location = location ?? await AnyLocation(),
                on,
                name = name ?? $"Shut {Next()}",
            }
        );

    /// <summary>A seat of hers that was let go because its session was called off.</summary>
    public Task<long> HasLetGo(long session, long client) =>
        Insert(
            """
            insert into bookings (session_id, client_id, status, made_at, ended_at, let_go)
            values (@session, @client, 'released', @at, @at, 'calledOff')
            """,
            new
            {
                session,
                client,
                at = Clock.GetCurrentInstant(),
            }
        );

    /// <summary>The studio has chosen this value for a policy.</summary>
    public Task HasPolicy(string code, string value) =>
        Execute(
            "insert into policies (code, value, changed_at) values (@code, @value, '2026-01-01T00:00:00.000Z')",
            new { code, value }
        );

    private int Next() => Interlocked.Increment(ref _made);

    private async Task<long> AnyLocation() =>
        await Value<long?>("select min(id) from locations") ?? await HasLocation();
}
