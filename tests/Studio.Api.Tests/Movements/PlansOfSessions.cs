using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Movements;

/// <summary>
/// A session has its class's plan or one of its own, and keeps the one it was taught with. Check values of movements are
/// common practice, no published source: front planks in the first trimester only.
/// </summary>
public class PlansOfSessions : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _owner = null!;
    private HttpClient _teacher = null!;
    private long _instructor;
    private long _class;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        await _app.HasLocation();
        _instructor = await _app.HasInstructor();
        _class = await _app.HasClass(minutes: 50);
        _owner = await _app.SignedInAs(Role.Owner);
        _teacher = await _app.SignedInAs(Role.Instructor, instructor: _instructor);
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await _app.DisposeAsync();
    }

    [Theory]
    [InlineData(-1, true, "a moment before it begins")]
    [InlineData(0, true, "at the moment it begins")]
    [InlineData(1, false, "a moment after")]
    public async Task Keeps_the_class_plan_it_began_with(
        int milliseconds,
        bool reaches,
        string because
    )
    {
        await _app.HasPlan(_class, ("squat", 40));
        // 10:00, an hour from now.
        var session = await Session("10:00");
        var later = await Session("12:00");
        _app.Clock.AdvanceMilliseconds(60 * 60 * 1000 + milliseconds);
        using (var saved = await PlansOfClasses.Save(_owner, _class, 1, ("leg-slides", 40)))
            await saved.Is(200);

        Assert.True(await Taught(session) == (reaches ? "leg-slides" : "squat"), because);
        Assert.Equal("leg-slides", await Taught(later));
        _app.Clock.AdvanceHours(30);
        Assert.Equal(reaches ? "leg-slides" : "squat", await Taught(session));
    }

    [Fact]
    public async Task That_began_before_its_class_had_a_plan_never_gets_one()
    {
        var session = await Session("10:00");
        _app.Clock.AdvanceHours(2);
        await _app.HasPlan(_class, ("squat", 40));
        Assert.Null(await Taught(session));
    }

    [Fact]
    public async Task Has_a_plan_of_its_own_until_it_follows_its_class_again()
    {
        await _app.HasPlan(_class, ("squat", 40));
        var session = await Session("10:00");
        var other = await Session("12:00");
        var own = await Is200(Save(_teacher, session, 0, ("leg-slides", 40)));
        Assert.Equal(1, own.Number("version"));
        Assert.False((bool)own["followsClass"]!);
        Assert.Equal("squat", await Taught(other));

        using (var saved = await PlansOfClasses.Save(_owner, _class, 1, ("side-rest", 40)))
            await saved.Is(200);
        Assert.Equal("leg-slides", await Taught(session));

        var again = await Is200(_teacher.Send(HttpMethod.Delete, $"/api/sessions/{session}/plan"));
        Assert.True((bool)again["followsClass"]!);
        Assert.Equal("side-rest", await Taught(session));
        Assert.Equal(
            [true, false],
            again["versions"]!.AsArray().Select(v => (bool)v!["followsClass"]!)
        );
        // A second time there is nothing to take back.
        var twice = await Is200(_teacher.Send(HttpMethod.Delete, $"/api/sessions/{session}/plan"));
        Assert.Equal(2, twice.Number("version"));
    }

    [Fact]
    public async Task Is_changed_while_it_runs_and_not_when_it_is_over()
    {
        await _app.HasPlan(_class, ("squat", 40));
        var session = await Session("10:00");
        _app.Clock.AdvanceMinutes(109);
        await Is200(Save(_teacher, session, 0, ("leg-slides", 40)));
        _app.Clock.AdvanceMinutes(1);
        using (var late = await Save(_teacher, session, 1, ("side-rest", 40)))
            await late.IsRefused(409, "session-over");
        using (var late = await _teacher.Send(HttpMethod.Delete, $"/api/sessions/{session}/plan"))
            await late.IsRefused(409, "session-over");
        Assert.Equal("leg-slides", await Taught(session));
        Assert.False((bool)(await _teacher.Read($"/api/sessions/{session}/plan"))["mayChange"]!);
    }

    [Fact]
    public async Task Saved_from_an_older_version_is_refused_and_the_same_again_is_no_version()
    {
        var session = await Session("10:00");
        await Is200(Save(_teacher, session, 0, ("squat", 40)));
        Assert.Equal(1, (await Is200(Save(_owner, session, 1, ("squat", 40)))).Number("version"));
        using (var old = await Save(_owner, session, 0, ("squat", 30)))
            await old.IsRefused(409, "plan-changed");
        using var over = await Save(_owner, session, 1, ("squat", 51));
        await over.IsRefused(400, "plan-over-time");
    }

    [Fact]
    public async Task Changes_how_it_suits_and_what_is_flagged_at_once()
    {
        // The first two days after a birth are for rest: common practice, and "a few days" in what is published.
        var breathing = await _app.HasClass(traits: ["breath-only"]);
        await _app.HasPlan(breathing, ("rib-breathing", 40));
        var session = await _app.HasSession(
            _app.Today,
            "10:00",
            breathing,
            instructor: _instructor
        );
        var her = await _app.HasClient("Orla Testwold", born: _app.Today.PlusDays(-1));
        await _app.HasBooking(session, her);
        Assert.False(await IsFlagged());

        var squats = await Is200(Ask(_teacher, session, "preview", ("squat", 40)));
        var orla = Assert.Single(squats["people"]!.AsArray())!;
        Assert.Equal("notSuitable", orla.Text("after"));
        Assert.NotEqual("notSuitable", orla.Text("before"));
        await Is200(Save(_teacher, session, 0, ("squat", 40)));
        Assert.True(await IsFlagged());
        await Is200(_teacher.Send(HttpMethod.Delete, $"/api/sessions/{session}/plan"));
        Assert.False(await IsFlagged());

        using (var saved = await PlansOfClasses.Save(_owner, breathing, 1, ("squat", 40)))
            await saved.Is(200);
        Assert.True(await IsFlagged());

        async Task<bool> IsFlagged() =>
            (await _teacher.Read("/api/flags"))
                .AsArray()
                .Any(f => f!.Text("kind") == "bookingNoLongerSuits");
    }

    [Fact]
    public async Task Says_in_a_preview_who_does_what_and_keeps_nothing()
    {
        await _app.HasPlan(_class, ("squat", 40));
        var session = await Session("10:00");
        var early = await _app.HasClient("Ada Testwold", due: _app.Today.PlusDays(280 - 70));
        var late = await _app.HasClient("Bea Testwold", due: _app.Today.PlusDays(280 - 140));
        var waiting = await _app.HasClient("Cleo Testwold", due: _app.Today.PlusDays(280 - 140));
        await _app.HasBooking(session, early);
        await _app.HasBooking(session, late);
        await _app.HasBooking(session, waiting, "waiting");
        var rows = await Rows();

        var preview = await Is200(Ask(_teacher, session, "preview", ("front-plank", 30)));
        var plank = preview["items"]![0]!;
        Assert.Equal(1, plank.Number("asTaught") + plank.Number("adapted"));
        Assert.Equal(1, plank.Number("replaced"));
        var bea = Assert.Single(plank["people"]!.AsArray(), p => p!.Text("verdict") == "replaced")!;
        Assert.Equal("Bea", bea.Text("called"));
        Assert.EndsWith("instead", bea.Text("instruction").Split(':')[0], StringComparison.Ordinal);
        Assert.Equal(["Ada", "Bea"], preview["people"]!.AsArray().Select(p => p!.Text("called")));
        Assert.Equal(30, preview["people"]![1]!["share"]!.Number("replaced"));

        var advised = await Is200(Ask(_teacher, session, "suit", ("front-plank", 30)));
        var change = Assert.Single(advised["changes"]!.AsArray())!;
        Assert.Equal("Front plank", change.Text("from"));
        Assert.Equal(["Bea"], change["gains"]!.AsArray().Select(g => (string?)g));
        Assert.Equal(30, advised["items"]![0]!.Number("minutes"));
        var code = advised["items"]![0]!.Text("movement");
        var mended = await Is200(Ask(_teacher, session, "preview", (code, 30)));
        Assert.Equal(0, mended["items"]![0]!.Number("replaced"));
        Assert.Empty(
            (await Is200(Ask(_teacher, session, "suit", (code, 30))))["changes"]!.AsArray()
        );

        Assert.Equal(rows, await Rows());
        Assert.Equal("squat", await Taught(session));
    }

    [Fact]
    public async Task Is_nobody_elses_and_names_nobody_to_them()
    {
        var session = await Session("10:00");
        await _app.HasBooking(session, await _app.HasClient("Xylia Testwold"));
        var other = await _app.SignedInAs(Role.Instructor, instructor: await _app.HasInstructor());
        var deskToo = await _app.SignedInAs(
            [Role.Instructor, Role.FrontDesk],
            instructor: await _app.HasInstructor()
        );
        var desk = await _app.SignedInAs(Role.FrontDesk);
        foreach (var path in new[] { "preview", "suit" })
        {
            foreach (var (browser, status) in new[] { (other, 404), (deskToo, 404), (desk, 403) })
            {
                using var answer = await Ask(browser, session, path, ("squat", 5));
                Assert.DoesNotContain(
                    "Xylia",
                    (await answer.Is(status)).ToJsonString(),
                    StringComparison.Ordinal
                );
            }
        }
    }

    [Fact]
    public async Task After_a_loss_she_is_in_no_preview()
    {
        var session = await Session("09:00");
        _app.Clock.AdvanceMinutes(1);
        var her = await _app.HasClient("Xylia Testwold");
        await _app.HasBooking(session, her);
        await _app.HasBooking(session, await _app.HasClient("Wren Testwold"));
        foreach (var browser in new[] { _owner, _teacher })
            Assert.Contains(
                "Xylia",
                (await Is200(Ask(browser, session, "preview", ("squat", 5)))).ToJsonString(),
                StringComparison.Ordinal
            );
        using (var loss = await _owner.Post($"/api/clients/{her}/loss", new { }))
            await loss.Is(200);
        foreach (var browser in new[] { _owner, _teacher })
        foreach (var path in new[] { "preview", "suit" })
        {
            var said = (
                await Is200(Ask(browser, session, path, ("front-plank", 5)))
            ).ToJsonString();
            Assert.DoesNotContain("Xylia", said, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Two_who_are_called_the_same_are_told_apart()
    {
        var session = await Session("10:00");
        await _app.HasBooking(session, await _app.HasClient("Ada Northolm"));
        await _app.HasBooking(session, await _app.HasClient("Ada Southolm"));
        var preview = await Is200(Ask(_teacher, session, "preview", ("squat", 5)));
        Assert.Equal(
            ["Ada Northolm", "Ada Southolm"],
            preview["people"]!.AsArray().Select(p => p!.Text("called"))
        );
    }

    private Task<long> Session(string at) =>
        _app.HasSession(_app.Today, at, _class, instructor: _instructor);

    private async Task<string?> Taught(long session)
    {
        var plan = await _teacher.Read($"/api/sessions/{session}/plan");
        var roster = await _teacher.Read($"/api/sessions/{session}/roster");
        var taught = plan["items"]!.AsArray().Select(i => i!.Text("movement")).FirstOrDefault();
        Assert.Equal(
            taught,
            roster["plan"]!.AsArray().Select(i => i!.Text("code")).FirstOrDefault()
        );
        return taught;
    }

    private static Task<HttpResponseMessage> Save(
        HttpClient browser,
        long session,
        int basedOn,
        params (string Movement, int Minutes)[] items
    ) =>
        browser.Put(
            $"/api/sessions/{session}/plan",
            new { basedOn, items = items.Select(i => new { i.Movement, i.Minutes }) }
        );

    private static Task<HttpResponseMessage> Ask(
        HttpClient browser,
        long session,
        string what,
        params (string Movement, int Minutes)[] items
    ) =>
        browser.Post(
            $"/api/sessions/{session}/plan/{what}",
            new { items = items.Select(i => new { i.Movement, i.Minutes }) }
        );

    private static async Task<JsonNode> Is200(Task<HttpResponseMessage> asked)
    {
        using var answer = await asked;
        return await answer.Is(200);
    }

    private async Task<string> Rows() =>
        string.Join(
            ' ',
            await _app.Value<long>("select count(*) from class_plan_items"),
            await _app.Value<long>("select count(*) from session_plans"),
            await _app.Value<long>("select count(*) from flags")
        );
}
