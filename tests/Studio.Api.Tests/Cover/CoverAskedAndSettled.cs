using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Cover;
using Studio.Api.Data;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Cover;

/// <summary>Ilka cannot teach; Bea and Cleo could, Dora has no qualification.</summary>
public sealed class CoverAskedAndSettled : IAsyncLifetime
{
    private StudioApp _app = null!;
    private long _ilka;
    private long _bea;
    private long _cleo;
    private long _dora;
    private long _class;
    private HttpClient _asker = null!;
    private HttpClient _beas = null!;
    private HttpClient _cleos = null!;
    private HttpClient _desk = null!;
    private HttpClient _owner = null!;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        _class = await _app.HasClass("Early core");
        _ilka = await Qualified("Ilka Thornmere");
        _bea = await Qualified("Bea Lathe");
        _cleo = await Qualified("Cleo Marsh");
        _dora = await _app.HasInstructor("Dora Wynd");
        _asker = await _app.SignedInAs(Role.Instructor, instructor: _ilka);
        _beas = await _app.SignedInAs(Role.Instructor, instructor: _bea);
        _cleos = await _app.SignedInAs(Role.Instructor, instructor: _cleo);
        _desk = await _app.SignedInAs(Role.FrontDesk);
        _owner = await _app.SignedInAs(Role.Owner);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task Those_who_could_take_it_are_asked_and_nobody_else()
    {
        var session = await Session(3);
        Assert.Equal(2, (await Asked(session)).Number("asked"));
        Assert.Equal([_bea, _cleo], await Told("coverAsked"));

        Assert.Equal([session], Ids((await _beas.Read("/api/cover/mine"))["asked"]!));
        Assert.Equal([session], Ids((await _asker.Read("/api/cover/mine"))["mine"]!));
        var doras = await _app.SignedInAs(Role.Instructor, instructor: _dora);
        Assert.Empty((await doras.Read("/api/cover/mine"))["asked"]!.AsArray());
        // Asked twice is asked once.
        using var again = await _asker.Post($"/api/sessions/{session}/cover");
        await again.IsRefused(409, "cover-asked");
    }

    [Fact]
    public async Task The_owner_gives_it_to_one_who_can_and_bookings_and_roster_go_with_it()
    {
        var session = await Session(3);
        var client = await _app.HasClient();
        var booking = await _app.HasBooking(session, client);
        await Asked(session);
        await Answers(_cleos, session, "can");

        var open = (await _owner.Read("/api/cover"))["open"]!.AsArray().Single()!;
        Assert.Equal("asked", open.Text("state"));
        Assert.Equal("Cleo Marsh", open["candidates"]![0]!.Text("name"));
        Assert.Contains("Can take it.", Texts(open["candidates"]![0]!["reasons"]!));

        using var settled = await Settle(false, (session, _cleo));
        await settled.Is(200);

        Assert.Equal(
            _cleo,
            await _app.Value<long>(
                "select instructor_id from sessions where id = @session",
                new { session }
            )
        );
        Assert.Equal(
            "booked",
            await _app.Value<string>(
                "select status from bookings where id = @booking",
                new { booking }
            )
        );
        // Who comes, who taught, who teaches and who was asked all know.
        Assert.Equal(
            [client],
            await _app.Rows<long>("select client_id from messages where kind = 'sessionChanged'")
        );
        Assert.Equal([_ilka, _cleo], await Told("timetableChanged"));
        Assert.Equal([_ilka, _bea], await Told("coverSettled"));
        // The roster goes with it.
        foreach (var path in new[] { "", "/roster", "/plan", "/cover" })
        {
            using var former = await _asker.GetAsync(
                $"/api/sessions/{session}{path}",
                TestContext.Current.CancellationToken
            );
            await former.Is(404);
        }
        await _cleos.Read($"/api/sessions/{session}/roster");
        Assert.Empty((await _owner.Read("/api/cover"))["open"]!.AsArray());
    }

    [Fact]
    public async Task Where_instructors_settle_the_first_has_it_and_the_other_is_told_so()
    {
        await _app.HasPolicy("cover-settles", "instructors");
        var session = await Session(3);
        await Asked(session);

        var answers = await Task.WhenAll(
            _beas.Post($"/api/sessions/{session}/cover/take", new { anyway = false }),
            _cleos.Post($"/api/sessions/{session}/cover/take", new { anyway = false })
        );

        var won = answers.Single(a => (int)a.StatusCode == 204);
        var lost = answers.Single(a => (int)a.StatusCode != 204);
        await lost.IsRefused(409, "cover-settled");
        Assert.Equal(
            won == answers[0] ? _bea : _cleo,
            await _app.Value<long>("select covered_by from cover_requests")
        );
        // Pressed twice it is still hers.
        using var twice = await (won == answers[0] ? _beas : _cleos).Post(
            $"/api/sessions/{session}/cover/take",
            new { anyway = false }
        );
        await twice.Is(204);
    }

    [Fact]
    public async Task Where_the_owner_settles_nobody_takes_it_by_herself()
    {
        var session = await Session(3);
        await Asked(session);
        using var taken = await _beas.Post(
            $"/api/sessions/{session}/cover/take",
            new { anyway = false }
        );
        await taken.IsRefused(403, "cover-owner-settles");
    }

    [Fact]
    public async Task Her_own_hours_she_gives_herself_and_what_was_agreed_she_does_not()
    {
        await _app.HasPolicy("cover-settles", "instructors");
        var session = await Session(3);
        await Asked(session);
        await _app.Execute(
            """
            insert into availability (instructor_id, weekday, from_local, to_local) values (@_bea, 1, '08:00', '09:00')
            """,
            new { _bea }
        );
        await _app.Execute(
            "update instructors set weekly_minutes_most = 30 where id = @_cleo",
            new { _cleo }
        );
        using var warned = await _beas.Post(
            $"/api/sessions/{session}/cover/take",
            new { anyway = false }
        );
        await warned.IsRefused(409, "timetable-warning");
        using var tooMuch = await _cleos.Post(
            $"/api/sessions/{session}/cover/take",
            new { anyway = true }
        );
        await tooMuch.IsRefused(403, "cover-for-owner");
        using var taken = await _beas.Post(
            $"/api/sessions/{session}/cover/take",
            new { anyway = true }
        );
        await taken.Is(204);
    }

    [Fact]
    public async Task A_list_is_settled_whole_or_not_at_all()
    {
        var (one, other) = (await Session(3), await Session(4));
        await Asked(one);
        await Asked(other);
        // Since the page was read Cleo has been given something else at that hour.
        await _app.HasSession(_app.Today.PlusDays(4), of: await _app.HasClass(), instructor: _cleo);
        using var refused = await Settle(true, (one, _bea), (other, _cleo));
        await refused.IsRefused(409, "timetable-conflict");
        Assert.Equal(
            2,
            await _app.Value<long>(
                "select count(*) from sessions where instructor_id = @_ilka",
                new { _ilka }
            )
        );
        Assert.Empty(await Told("coverSettled"));
    }

    [Fact]
    public async Task What_the_owner_has_to_accept_is_asked_first()
    {
        var session = await Session(3);
        await Asked(session);
        await Answers(_beas, session, "cannot");
        await _app.Execute(
            "update instructors set weekly_minutes_most = 30 where id = @_cleo",
            new { _cleo }
        );
        using var hours = await Settle(false, (session, _cleo));
        await hours.IsRefused(409, "timetable-warning");
        using var said = await Settle(false, (session, _bea));
        await said.IsRefused(409, "cover-declined", "anyway");
        using var settled = await Settle(true, (session, _cleo));
        await settled.Is(200);
    }

    [Fact]
    public async Task An_answer_may_change_until_it_is_settled()
    {
        var session = await Session(3);
        await Asked(session);
        await Answers(_beas, session, "cannot");
        await Answers(_beas, session, "can");
        Assert.Equal("can", await _app.Value<string>("select answer from cover_answers"));
        using (var settled = await Settle(false, (session, _bea)))
            await settled.Is(200);
        using var late = await _cleos.Send(
            HttpMethod.Put,
            $"/api/sessions/{session}/cover/answer",
            new { answer = "can" }
        );
        await late.IsRefused(409, "cover-settled");
    }

    [Fact]
    public async Task A_colleague_and_the_desk_read_nobodys_leave_or_hours()
    {
        var session = await Session(3);
        await _app.Execute(
            "insert into leave (instructor_id, from_on, to_on, entered_at) values (@_cleo, @on, @on, '2026-01-01T00:00:00Z')",
            new { _cleo, on = _app.Today.PlusDays(3) }
        );
        foreach (var reader in new[] { _asker, _desk })
        {
            var cleo = (await reader.Read($"/api/sessions/{session}/cover"))["candidates"]!
                .AsArray()
                .Single(c => c!.Number("instructorId") == _cleo)!;
            Assert.Equal("notFree", cleo.Text("standing"));
            Assert.Empty(cleo["against"]!.AsArray());
            Assert.DoesNotContain("away", cleo.ToJsonString());
            Assert.DoesNotContain("Would teach", cleo.ToJsonString());
            Assert.Null(cleo["phone"]);
        }
        Assert.Contains(
            "away",
            (await _owner.Read($"/api/sessions/{session}/cover")).ToJsonString()
        );
    }

    [Fact]
    public async Task Ill_for_some_days_asks_for_all_of_them_and_notes_her_as_away()
    {
        var sessions = new[] { await Session(1), await Session(2), await Session(4) };
        await Session(9);
        using (
            var asked = await _asker.Post(
                "/api/cover/away",
                new { from = _app.Today, to = _app.Today.PlusDays(4) }
            )
        )
            Assert.Equal(
                sessions,
                (await asked.Is(200))["sessions"]!.AsArray().Select(s => (long)s!)
            );
        Assert.Equal(1, await _app.Value<long>("select count(*) from leave"));
        using (
            var again = await _asker.Post(
                "/api/cover/away",
                new { from = _app.Today, to = _app.Today.PlusDays(4) }
            )
        )
            await again.IsRefused(409, "nothing-to-cover", "from");
        using (
            var backwards = await _asker.Post(
                "/api/cover/away",
                new { from = _app.Today, to = _app.Today.PlusDays(-1) }
            )
        )
            await backwards.IsRefused(400, "bad-range", "to");

        using var planned = await _owner.Post("/api/cover/plan", new { });
        var steps = (await planned.Is(200))["steps"]!.AsArray();
        Assert.Equal(sessions, steps.Select(s => s!["session"]!.Number("id")));
        using var settled = await Settle(
            false,
            [.. steps.Select(s => (s!["session"]!.Number("id"), s["by"]!.Number("instructorId")))]
        );
        Assert.Equal(3, (await settled.Is(200)).Number("settled"));
    }

    [Fact]
    public async Task What_nobody_can_take_says_why_of_everybody()
    {
        var session = await Session(3, await _app.HasClass("Landing", needs: "postnatal"));
        await Asked(session);
        using var planned = await _owner.Post(
            "/api/cover/plan",
            new { sessionIds = new[] { session } }
        );
        var step = (await planned.Is(200))["steps"]!.AsArray().Single()!;
        Assert.Null(step["by"]);
        Assert.Equal(3, step["whyNobody"]!.AsArray().Count);
        Assert.All(
            step["whyNobody"]!.AsArray(),
            c =>
                Assert.Contains(
                    "has no valid postnatal qualification",
                    c!["against"]!.ToJsonString()
                )
        );
    }

    [Fact]
    public async Task She_teaches_it_after_all()
    {
        var session = await Session(3);
        await Asked(session);
        using (
            var withdrawn = await _asker.Send(HttpMethod.Delete, $"/api/sessions/{session}/cover")
        )
            await withdrawn.Is(204);
        Assert.Equal([_bea, _cleo], await Told("coverSettled"));
        Assert.Empty((await _beas.Read("/api/cover/mine"))["asked"]!.AsArray());
        using var late = await _beas.Send(
            HttpMethod.Put,
            $"/api/sessions/{session}/cover/answer",
            new { answer = "can" }
        );
        await late.IsRefused(404, "no-such-request");
        // And may ask again.
        await Asked(session);
    }

    [Fact]
    public async Task At_24_hours_the_bell_makes_it_the_loudest_and_once_begun_it_lapses()
    {
        var session = await Session(2);
        await Asked(session);
        Assert.Equal(["attention"], await Severities());
        Assert.False((bool)(await Loudest())["isLoud"]!);
        Assert.Null((await Loudest())["candidates"]![0]!["phone"]);

        // 18:00 in two days; a minute too early, then the hour itself.
        _app.Clock.AdvanceHours(33 - 1);
        _app.Clock.AdvanceMinutes(59);
        await Bell();
        Assert.Equal(["attention"], await Severities());
        _app.Clock.AdvanceMinutes(1);
        await Bell();
        Assert.Equal(["urgent"], await Severities());
        Assert.True((bool)(await Loudest())["isLoud"]!);
        Assert.Equal("+351 990 000 001", (await Loudest())["candidates"]![0]!.Text("phone"));
        Assert.Equal(0, await Bell());

        _app.Clock.AdvanceHours(24);
        await Bell();
        Assert.Equal("lapsed", await _app.Value<string>("select status from cover_requests"));
        Assert.Empty(await Severities());
        Assert.Equal(0, await Bell());
        using var late = await Settle(true, (session, _bea));
        await late.IsRefused(409, "session-begun");
    }

    [Fact]
    public async Task A_session_that_nobody_was_to_teach_can_be_asked_for_and_taken()
    {
        await _app.HasPolicy("cover-settles", "instructors");
        var session = await _app.HasSession(_app.Today.PlusDays(3), of: _class);
        using (var own = await _beas.Post($"/api/sessions/{session}/cover"))
            await own.Is(404);
        using (var asked = await _owner.Post($"/api/sessions/{session}/cover"))
            Assert.Equal(3, (await asked.Is(201)).Number("asked"));
        using var taken = await _beas.Post(
            $"/api/sessions/{session}/cover/take",
            new { anyway = false }
        );
        await taken.Is(204);
        Assert.Equal(
            _bea,
            await _app.Value<long>(
                "select instructor_id from sessions where id = @session",
                new { session }
            )
        );
    }

    [Fact]
    public async Task Somebody_given_another_way_ends_the_request_too()
    {
        var session = await Session(3);
        await Asked(session);
        await _app.Execute(
            "update sessions set instructor_id = @_bea where id = @session",
            new { _bea, session }
        );
        Assert.Empty((await _owner.Read("/api/cover"))["open"]!.AsArray());
        await Bell();
        Assert.Equal(_bea, await _app.Value<long>("select covered_by from cover_requests"));
    }

    [Fact]
    public async Task Somebody_who_teaches_and_has_not_asked_keeps_her_session()
    {
        var session = await Session(3);
        using var settled = await Settle(true, (session, _bea));
        await settled.IsRefused(409, "cover-not-needed");
    }

    private async Task<long> Qualified(string name)
    {
        var her = await _app.HasInstructor(name);
        await _app.HasQualification(her, _app.Today.PlusDays(-300), _app.Today.PlusDays(300));
        return her;
    }

    private Task<long> Session(int inDays, long? of = null) =>
        _app.HasSession(_app.Today.PlusDays(inDays), of: of ?? _class, instructor: _ilka);

    private async Task<JsonNode> Asked(long session)
    {
        using var asked = await _asker.Post($"/api/sessions/{session}/cover");
        return await asked.Is(201);
    }

    private static async Task Answers(HttpClient her, long session, string answer)
    {
        using var said = await her.Send(
            HttpMethod.Put,
            $"/api/sessions/{session}/cover/answer",
            new { answer }
        );
        await said.Is(204);
    }

    private Task<HttpResponseMessage> Settle(
        bool anyway,
        params (long Session, long By)[] covers
    ) =>
        _owner.Post(
            "/api/cover/settle",
            new
            {
                covers = covers.Select(c => new { sessionId = c.Session, instructorId = c.By }),
                anyway,
            }
        );

    private Task<List<long>> Told(string kind) =>
        _app.Rows<long>(
            "select instructor_id from messages where kind = @kind order by instructor_id",
            new { kind }
        );

    private Task<List<string>> Severities() =>
        _app.Rows<string>(
            "select severity from flags where closed_at is null and kind = 'noInstructor'"
        );

    private async Task<JsonNode> Loudest() =>
        (await _desk.Read("/api/cover"))["open"]!.AsArray().Single()!;

    private Task<int> Bell() =>
        _app.With<Covers, int>(async covers =>
        {
            await using var write = await _app
                .Services.GetRequiredService<Database>()
                .BeginWriteAsync();
            var touched = await covers.SweepAsync(write);
            await write.CommitAsync();
            return touched;
        });

    private static IEnumerable<long> Ids(JsonNode list) =>
        list.AsArray().Select(c => c!["session"]!.Number("id"));

    private static IEnumerable<string> Texts(JsonNode list) =>
        list.AsArray().Select(t => (string)t!);
}
