using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Staff;

public class ThePeopleWhoTeach : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _owner = null!;
    private HttpClient _herself = null!;
    private long _her;
    private long _class;

    private string Hers => $"/api/instructors/{_her}";

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        await _app.HasLocation();
        _owner = await _app.SignedInAs(Role.Owner);
        _her = await _app.HasInstructor();
        _herself = await _app.SignedInAs(Role.Instructor, instructor: _her);
        _class = await _app.HasClass("Early core");
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task Are_added_and_changed_by_the_owner_each_with_an_address_of_her_own()
    {
        var made = await (
            await _owner.Post(
                "/api/instructors",
                Details("Lioba Marrenfeld", "lioba@saltmarsh.example")
            )
        ).Is(201);
        var page = await _owner.Read($"/api/instructors/{made.Number("id")}");
        Assert.Equal("Lioba", page.Text("called"));
        Assert.Equal(600, page.Number("weeklyMinutesMost"));
        await (
            await _owner.Post("/api/instructors", Details("Another", "LIOBA@saltmarsh.example"))
        ).IsRefused(409, "email-taken", "email");
        await (
            await _owner.Put(Hers, Details("Ilka Thornmere", "lioba@saltmarsh.example"))
        ).IsRefused(409, "email-taken", "email");
        await (await _owner.Put(Hers, Details("  ", "ilka@saltmarsh.example"))).Is(400);
        await (
            await _owner.Put("/api/instructors/999999", Details("X", "x@saltmarsh.example"))
        ).IsRefused(404, "no-such-instructor");
    }

    [Fact]
    public async Task Leave_only_when_what_they_leave_behind_was_looked_at()
    {
        var session = await Session(10);
        var left = _app.Today.PlusDays(10);
        var refused = await (
            await _owner.Put(Hers, Details("Ilka Thornmere", "ilka@saltmarsh.example", left))
        ).IsRefused(409, "still-teaches", "leftOn");
        Assert.Contains("1 session", refused.Text("detail"), StringComparison.Ordinal);
        var behind = await _owner.Read($"{Hers}/sessions?from={left:uuuu-MM-dd}");
        Assert.Equal(session, Assert.Single(behind.AsArray())!.Number("sessionId"));
        await (
            await _owner.Put(Hers, Details("Ilka Thornmere", "ilka@saltmarsh.example", left, true))
        ).Is(204);
        Assert.Equal(session, Assert.Single(await Flags("noInstructor")).Number("sessionId"));
        Assert.Equal(1, (await InList()).Number("sessionsAbsent"));
    }

    [Fact]
    public async Task A_qualification_that_was_filed_wrongly_counts_nowhere_and_can_be_filed_again()
    {
        await Session(10);
        var held = await Filed(_app.Today.PlusDays(-10), _app.Today.PlusDays(400));
        Assert.Empty(await Flags("qualification"));
        await (await _owner.Post($"{Hers}/qualifications/{held}/withdraw")).Is(204);
        await (await _owner.Post($"{Hers}/qualifications/{held}/withdraw")).IsRefused(
            409,
            "withdrawn"
        );
        Assert.Single(await Flags("qualification"));
        Assert.Equal(1, (await InList()).Number("sessionsUnqualified"));
        Assert.Empty((await InList())["qualifications"]!.AsArray());
        Assert.False(
            (bool)
                (await _owner.Read("/api/sessions?to=2026-03-20")).AsArray()[0]![
                    "instructorQualified"
                ]!
        );
        Assert.False((bool)(await _herself.Read($"/api/classes/{_class}/plan"))["mayChange"]!);
        // The same kind and day of issue, with the right last day.
        await Filed(_app.Today.PlusDays(-10), _app.Today.PlusDays(300));
        Assert.Empty(await Flags("qualification"));
        Assert.Equal(
            ["valid", "withdrawn"],
            (await _herself.Read(Hers))["qualifications"]!.AsArray().Select(q => q!.Text("status"))
        );
    }

    [Fact]
    public async Task What_runs_out_names_the_sessions_after_it()
    {
        await Session(10);
        var after = await Session(20);
        await Filed(_app.Today.PlusDays(-300), _app.Today.PlusDays(15));
        var held = Assert.Single((await InList())["qualifications"]!.AsArray())!;
        Assert.Equal("endsSoon", held.Text("status"));
        Assert.Equal(after, Assert.Single(held["sessionsAfter"]!.AsArray())!.Number("sessionId"));
        Assert.Single(await Flags("qualificationEnds"));
        var told = Assert.Single(
            (await _herself.Read("/api/flags")).AsArray(),
            f => f!.Text("kind") == "qualificationEnds"
        )!;
        Assert.StartsWith(
            "Your prenatal qualification ends",
            told.Text("text"),
            StringComparison.Ordinal
        );
        await Filed(_app.Today, _app.Today.PlusDays(365));
        Assert.Empty(await Flags("qualificationEnds"));
    }

    [Fact]
    public async Task A_proof_is_kept_sealed_and_read_by_the_owner_and_by_her_alone()
    {
        var held = await Filed(_app.Today.PlusDays(-10), _app.Today.PlusDays(400));
        var place = $"{Hers}/qualifications/{held}/proof";
        await (await _owner.GetAsync(place, TestContext.Current.CancellationToken)).IsRefused(
            404,
            "no-proof"
        );
        await (await Send(place, LetterSamples.Png)).Is(204);
        await (await Send(place, LetterSamples.Pdf)).Is(204);
        foreach (var reader in new[] { _owner, _herself })
        {
            using var answer = await reader.GetAsync(place, TestContext.Current.CancellationToken);
            Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.MediaType);
            Assert.Equal(
                LetterSamples.Pdf,
                await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)
            );
        }

        var another = await _app.SignedInAs(
            Role.Instructor,
            instructor: await _app.HasInstructor("Bodil Fernhaven")
        );
        await (await another.GetAsync(place, TestContext.Current.CancellationToken)).IsRefused(
            404,
            "no-such-qualification"
        );
        // The picture whose place the paper took is gone, and what is there cannot be read as it lies.
        var folder = _app.Services.GetService(typeof(Api.Data.DataFolder)) as Api.Data.DataFolder;
        var file = Assert.Single(Directory.GetFiles(folder!.Proofs));
        var bytes = await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken);
        Assert.Equal(-1, bytes.AsSpan().IndexOf("%PDF"u8));
    }

    [Theory]
    [InlineData("", 400, "file-empty")]
    [InlineData("<html>", 400, "file-kind")]
    public async Task A_proof_that_is_no_paper_is_refused_and_leaves_nothing(
        string content,
        int status,
        string code
    )
    {
        var held = await Filed(_app.Today.PlusDays(-10), _app.Today.PlusDays(400));
        await (
            await Send(
                $"{Hers}/qualifications/{held}/proof",
                System.Text.Encoding.UTF8.GetBytes(content)
            )
        ).IsRefused(status, code, "file");
        var folder = _app.Services.GetService(typeof(Api.Data.DataFolder)) as Api.Data.DataFolder;
        Assert.Empty(Directory.GetFiles(folder!.Proofs));
    }

    [Fact]
    public async Task Hours_to_be_asked_for_are_kept_by_her_and_name_what_lies_outside()
    {
        var session = await Session(7);
        var answer = await (
            await _herself.Put(
                $"{Hers}/availability",
                Hours((1, "09:00", "12:00"), (1, "13:00", "17:00"))
            )
        ).Is(200);
        Assert.Equal(session, Assert.Single(answer["outside"]!.AsArray())!.Number("sessionId"));
        await (
            await _herself.Put(
                $"{Hers}/availability",
                Hours((1, "09:00", "12:00"), (1, "11:00", "17:00"))
            )
        ).IsRefused(400, "hours-overlap", "hours[1]");
        await (await _herself.Put($"{Hers}/availability", Hours((8, "09:00", "12:00")))).Is(400);
        await (await _herself.Put($"{Hers}/availability", Hours((1, "9", "12:00")))).Is(400);
        Assert.Equal(2, (await _owner.Read(Hers))["availability"]!.AsArray().Count);
    }

    [Fact]
    public async Task Leave_names_the_sessions_in_it_until_it_is_withdrawn()
    {
        await Filed(_app.Today.PlusDays(-10), _app.Today.PlusDays(400));
        var session = await Session(10);
        await Session(12);
        var leave = await (await _herself.Post($"{Hers}/leave", Days(9, 11))).Is(201);
        Assert.Equal(session, Assert.Single(leave["sessions"]!.AsArray())!.Number("sessionId"));
        Assert.Equal(session, Assert.Single(await Flags("noInstructor")).Number("sessionId"));
        await (await _owner.Post($"{Hers}/leave", Days(11, 14))).IsRefused(
            409,
            "away-already",
            "from"
        );
        await (await _owner.Post($"{Hers}/leave", Days(14, 13))).IsRefused(400, "bad-range", "to");
        await (await _herself.Send(HttpMethod.Delete, $"{Hers}/leave/{leave.Number("id")}")).Is(
            204
        );
        await (
            await _herself.Send(HttpMethod.Delete, $"{Hers}/leave/{leave.Number("id")}")
        ).IsRefused(404, "no-such-leave");
        Assert.Empty(await Flags("noInstructor"));
        Assert.Empty((await _herself.Read(Hers))["leave"]!.AsArray());
    }

    [Fact]
    public async Task Wishes_are_kept_and_what_weighs_nothing_is_none()
    {
        await (
            await _herself.Put(
                $"{Hers}/wishes",
                Wishes(("weekday", "1", 2), ("partOfDay", "evening", 0))
            )
        ).Is(204);
        Assert.Equal(
            "1",
            Assert.Single((await _owner.Read(Hers))["wishes"]!.AsArray())!.Text("value")
        );
        await (await _herself.Put($"{Hers}/wishes", Wishes(("class", "no-such", 2)))).IsRefused(
            400,
            "no-such-wish",
            "wishes[0].value"
        );
        await (await _herself.Put($"{Hers}/wishes", Wishes(("weekday", "1", 3)))).Is(400);
    }

    [Fact]
    public async Task Hours_count_across_locations_and_zones_by_the_sessions_own_date()
    {
        var far = await _app.HasRoom(await _app.HasLocation("Far house", "Pacific/Auckland"));
        // Both on Sunday 1 March where they are held; in Auckland that day began on Saturday by Lisbon's clock.
        await _app.HasSession(
            new LocalDate(2026, 3, 1),
            "08:00",
            _class,
            room: far,
            instructor: _her
        );
        await _app.HasSession(new LocalDate(2026, 3, 1), "18:00", _class, instructor: _her);
        await Session(3);
        await _app.HasSession(
            _app.Today.PlusDays(-1),
            "20:00",
            _class,
            instructor: _her,
            status: "cancelled"
        );
        var hours = await _herself.Read($"{Hers}/hours?from=2026-02-23&to=2026-03-08");
        var weeks = hours["weeks"]!.AsArray();
        Assert.Equal(["2026-W09", "2026-W10"], weeks.Select(w => w!.Text("name")));
        Assert.Equal(100, weeks[0]!.Number("heldMinutes"));
        Assert.Equal((0, 50), (weeks[1]!.Number("heldMinutes"), weeks[1]!.Number("aheadMinutes")));
        Assert.Equal([0, 100], hours["months"]!.AsArray().Select(m => m!.Number("heldMinutes")));
        await (
            await _herself.GetAsync(
                $"{Hers}/hours?from=2026-03-08&to=2026-02-23",
                TestContext.Current.CancellationToken
            )
        ).IsRefused(400, "bad-range", "to");
    }

    [Fact]
    public async Task Travel_times_name_what_now_lies_too_close()
    {
        var here = await _app.Value<long>("select min(id) from locations");
        var there = await _app.HasLocation("Far house");
        var room = await _app.HasRoom(there);
        var on = _app.Today.PlusDays(3);
        await _app.HasSession(on, "10:00", _class, instructor: _her);
        await _app.HasSession(on, "11:00", _class, room: room, instructor: _her);
        object Times(int? minutes) =>
            new
            {
                times = new[]
                {
                    new
                    {
                        fromLocationId = here,
                        toLocationId = there,
                        minutes,
                    },
                },
            };
        Assert.Empty(
            (await (await _owner.Put("/api/travel", Times(10))).Is(200))["tooClose"]!.AsArray()
        );
        Assert.Single(
            (await (await _owner.Put("/api/travel", Times(30))).Is(200))["tooClose"]!.AsArray()
        );
        Assert.Equal(
            30,
            (await _owner.Read("/api/travel"))
                .AsArray()
                .Single(t => t!.Number("fromLocationId") == here)!
                .Number("minutes")
        );
        await (await _owner.Put("/api/travel", Times(null))).Is(200);
        Assert.Equal(0, await _app.Value<long>("select count(*) from travel_times"));
        await (
            await _owner.Put(
                "/api/travel",
                new
                {
                    times = new[]
                    {
                        new
                        {
                            fromLocationId = here,
                            toLocationId = here,
                            minutes = 5,
                        },
                    },
                }
            )
        ).IsRefused(400, "no-such-location");
    }

    private async Task<long> Session(int inDays) =>
        await _app.HasSession(_app.Today.PlusDays(inDays), of: _class, instructor: _her);

    private async Task<long> Filed(LocalDate issuedOn, LocalDate expiresOn) =>
        (
            await (
                await _owner.Post(
                    $"{Hers}/qualifications",
                    new
                    {
                        kind = "prenatal",
                        issuedOn,
                        expiresOn,
                    }
                )
            ).Is(201)
        ).Number("id");

    private async Task<HttpResponseMessage> Send(string place, byte[] bytes)
    {
        using var form = LetterSamples.Form(bytes, "proof.png");
        return await _owner.PutAsync(place, form, TestContext.Current.CancellationToken);
    }

    private async Task<JsonNode> InList() =>
        (await _owner.Read("/api/instructors")).AsArray().Single(i => i!.Number("id") == _her)!;

    private async Task<List<JsonNode>> Flags(string kind) =>
        [
            .. (await _owner.Read("/api/flags"))
                .AsArray()
                .Select(f => f!)
                .Where(f => f.Text("kind") == kind),
        ];

    private object Days(int from, int to) =>
        new { from = _app.Today.PlusDays(from), to = _app.Today.PlusDays(to) };

    private static object Hours(params (int Weekday, string From, string To)[] hours) =>
        new
        {
            hours = hours.Select(h => new
            {
                weekday = h.Weekday,
                from = h.From,
                to = h.To,
                locationId = (long?)null,
            }),
        };

    private static object Wishes(params (string Kind, string Value, int Weight)[] wishes) =>
        new
        {
            wishes = wishes.Select(w => new
            {
                kind = w.Kind,
                value = w.Value,
                weight = w.Weight,
            }),
        };

    private static object Details(
        string name,
        string email,
        LocalDate? leftOn = null,
        bool confirmed = false
    ) =>
        new
        {
            name,
            called = "",
            email,
            phone = "1234567",
            weeklyMinutesMost = 600,
            restMinutesLeast = (int?)null,
            leftOn,
            confirmed,
        };
}
