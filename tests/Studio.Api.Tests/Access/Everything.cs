using Studio.Api.Data;
using Studio.Api.Rosters;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;

namespace Studio.Api.Tests.Access;

/// <summary>A studio with somebody of every kind in it, and a client who comes to it with everything there can be.</summary>
internal sealed class Everything(StudioApp app)
{
    public const string Note = "Zephyrine quartz balance note";
    public const string Happened = "Zephyrine fainted beside the ladder";
    public const string LetterWords = "Zephyrine keeps her left knee bent";

    /// <summary>What can stand in a route's place without her.</summary>
    public Dictionary<string, string[]> Places { get; } = [];

    /// <summary>Browsers by who looks.</summary>
    public Dictionary<string, HttpClient> Browsers { get; } = [];

    public HttpClient Owner { get; private set; } = null!;
    public long Her { get; private set; }
    public long Begun { get; private set; }
    public long Ahead { get; private set; }
    private long Past { get; set; }
    private long Full { get; set; }
    private long CalledOff { get; set; }
    private long Instructor { get; set; }
    private long PassKind { get; set; }

    /// <summary>The studio without her.</summary>
    public async Task Furnish()
    {
        Instructor = await app.HasInstructor();
        PassKind = await app.HasPassKind();
        var of = await app.HasClass(traits: [.. ClassTraits.All], minutes: 240);
        await app.HasPlan(of, ("rib-breathing", 120), ("leg-slides", 120));
        Past = await app.HasSession(app.Today.PlusDays(-1), of: of, instructor: Instructor);
        Begun = await app.HasSession(app.Today, "08:00", of, instructor: Instructor);
        Ahead = await app.HasSession(app.Today.PlusDays(1), of: of, instructor: Instructor);
        Full = await app.HasSession(
            app.Today.PlusDays(2),
            of: of,
            seats: 1,
            instructor: Instructor
        );
        CalledOff = await app.HasSession(
            app.Today.PlusDays(3),
            of: of,
            instructor: Instructor,
            status: "cancelled"
        );
        var other = await app.HasClient("Orla Thistlewood");
        foreach (var session in new[] { Past, Begun, Ahead, Full })
            await app.HasBooking(session, other);
        Browsers["desk"] = await app.SignedInAs(Role.FrontDesk);
        Browsers["instructor"] = await app.SignedInAs(Role.Instructor, instructor: Instructor);
        Browsers["reviewer"] = await app.SignedInAs(Role.Reviewer);
        Browsers["another client"] = await app.SignedInAs(Role.Client, client: other);
        Owner = await app.SignedInAs(Role.Owner);
        var proven = await app.HasProvenQualification(Instructor);
        await app.HasLeave(Instructor, app.Today.PlusDays(1), app.Today.PlusDays(2));
        await app.HasRate(300, "head");
        using (
            var hours = await Owner.Put(
                $"/api/instructors/{Instructor}/availability",
                new
                {
                    hours = new[]
                    {
                        new
                        {
                            weekday = 1,
                            from = "09:00",
                            to = "12:00",
                            locationId = await app.Value<long>("select min(id) from locations"),
                        },
                    },
                }
            )
        )
            await hours.Is(200);
        using (
            var wishes = await Owner.Put(
                $"/api/instructors/{Instructor}/wishes",
                new
                {
                    wishes = new[]
                    {
                        new
                        {
                            kind = "weekday",
                            value = "1",
                            weight = 2,
                        },
                    },
                }
            )
        )
            await wishes.Is(204);
        await app.Execute(
            "update instructors set weekly_minutes_most = 600, rest_minutes_least = 660"
        );
        await Nightly();
        Places["instructorId"] = [$"{Instructor}"];
        Places["qualificationId"] = [$"{proven}"];
        Places["clientId"] = [$"{other}"];
        Places["sessionId"] = [$"{Past}", $"{Begun}", $"{Ahead}", $"{Full}"];
        Places["classId"] = [$"{of}"];
        Places["version"] = ["1", "0"];
        Places["file"] = ["stages.csv"];
        Places["named"] = ["true", "false"];
        // Whoever knows these addresses reads by them, signed in or not.
        Places["address"] =
        [
            (await app.HasFeed(Browsers["instructor"], "instructor")).Token,
            (await app.HasFeed(Browsers["another client"])).Token,
        ];
        Places["seriesId"] = ["999999"];
        Places["letterId"] = ["999999"];
        Places["erasureId"] = ["999999"];
        Places["assignmentId"] = [$"{await app.HasAssignment()}", "999999"];
        Places["from"] = [$"{app.Today.PlusDays(-30):uuuu-MM-dd}"];
        Places["to"] = [$"{app.Today.PlusDays(60):uuuu-MM-dd}"];
        Places["client"] = [$"{other}"];
        Places["find"] = ["xylia", "quenby", "990", "mail", "orla"];
        Places["on"] = [$"{app.Today:uuuu-MM-dd}"];
        Places["session"] = Places["sessionId"];
        Places["mine"] = ["true", "false"];
        Places["before"] = ["1", "999999"];
        using var draft = await Owner.Post(
            "/api/drafts",
            new
            {
                name = "Next week",
                from = app.Today,
                to = app.Today.PlusDays(6),
            }
        );
        Places["draftId"] = [$"{(await draft.Is(201)).Number("id")}"];
        Places["messageId"] = ["1", "999999"];
        Places["status"] = ["waiting"];
        Places["kind"] = ["bookingMade"];
        Places["token"] = [app.StopToken(other), "none"];
    }

    /// <summary>She comes, with a booking of every kind and whatever a record can hold; the places with her in them.</summary>
    public async Task<Dictionary<string, string[]>> SheComes()
    {
        Her = await app.HasClient("Xylia Quenby", due: app.Today.PlusDays(100), babies: 2);
        foreach (var factor in StudioApp.Book.Factors)
            await app.HasFactor(Her, factor.Code, app.Today.PlusDays(-5));
        await app.HasBooking(Past, Her);
        await app.HasBooking(Begun, Her);
        var booking = await app.HasBooking(Ahead, Her);
        await app.HasBooking(Full, Her, "waiting");
        await app.HasLetGo(CalledOff, Her);
        using (
            var details = await Owner.Put(
                $"/api/clients/{Her}",
                new { name = "Xylia Quenby", bornOn = "1991-07-23" }
            )
        )
            await details.Is(204);
        using (
            var filed = await Owner.Post(
                $"/api/clients/{Her}/clearances",
                new
                {
                    issuedBy = "Dr Zephyrine Cole",
                    issuedOn = app.Today.PlusDays(-2),
                    expiresOn = app.Today.PlusDays(80),
                    leaveOut = new[] { "supine" },
                    effortMost = 4,
                    heartRateMost = 128,
                    words = LetterWords,
                    replacesEarlier = false,
                }
            )
        )
            await filed.Is(201);
        await app.HasHold(Her);
        await Browsers["desk"].Sold(Her, PassKind);
        await app.HasIncident(Her, Happened);
        await app.HasNote(
            Past,
            Her,
            await app.Value<long>(
                "select account_id from instructors where id = @Instructor",
                new { Instructor }
            ),
            Note
        );
        var letter = await app.HasWaitingLetter(Her, LetterSamples.Png);
        var herself = await app.SignedInAs(Role.Client, client: Her);
        using (
            var draft = await herself.Send(
                HttpMethod.Put,
                $"/api/clients/{Her}/screening/draft",
                new
                {
                    version = StudioApp.Book.Questions.Version,
                    answers = ScreeningSamples.Answers(),
                }
            )
        )
            await draft.Is(204);
        using (
            var answered = await herself.Post(
                $"/api/clients/{Her}/screenings",
                new
                {
                    version = StudioApp.Book.Questions.Version,
                    answers = ScreeningSamples.Answers(but: ("back-pain", "yes")),
                }
            )
        )
            await answered.Is(201);
        Browsers["herself"] = herself;
        var move = await app.Insert(
            """
            insert into moves (client_id, to_stage, crosses_on, status, made_at)
            values (@Her, 'third-trimester', @on, 'open', @at)
            """,
            new
            {
                Her,
                on = app.Today.PlusDays(16),
                at = app.Clock.GetCurrentInstant(),
            }
        );
        await app.Execute(
            "insert into move_steps (move_id, booking_id, to_session_id) values (@move, @booking, @Full)",
            new
            {
                move,
                booking,
                Full,
            }
        );
        await app.With<FlagSweep, int>(async flags =>
        {
            await using var write = await (
                (Database)app.Services.GetService(typeof(Database))!
            ).BeginWriteAsync();
            var touched = await flags.AllAsync(write);
            await write.CommitAsync();
            return touched;
        });
        return new(Places)
        {
            ["clientId"] = [$"{Her}"],
            ["client"] = [$"{Her}"],
            ["letterId"] = [$"{letter}"],
            ["address"] = [(await app.HasFeed(herself)).Token],
        };
    }

    /// <summary>The jobs of the night, by hand.</summary>
    public async Task Nightly()
    {
        foreach (var job in new[] { "advance", "moves", "flags" })
        {
            using var ran = await Owner.Post($"/api/jobs/{job}/run");
            await ran.Is(200);
        }
    }
}
