using System.Text.Json.Nodes;
using Studio.Core.Accounts;
using Studio.Core.Pregnancies;

namespace Studio.Api.Tests.Screenings;

public sealed class TheHealthQuestions : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _owner = null!;
    private HttpClient _desk = null!;
    private HttpClient _client = null!;
    private long _her;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        _owner = await _app.SignedInAs(Role.Owner);
        _desk = await _app.SignedInAs(Role.FrontDesk);
        _her = await _app.HasClient(papers: false);
        _client = await _app.SignedInAs(Role.Client, client: _her);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task Are_saved_as_she_goes_and_resumed_later_by_her_alone()
    {
        var form = await _client.Read(Path("screening"));
        Assert.Equal(["never"], form["askedBecause"]!.AsArray().Select(w => (string?)w));
        Assert.Null(form["draft"]);
        using var saved = await _client.Put(
            Path("screening/draft"),
            new
            {
                version = (int)form["version"]!,
                answers = new Dictionary<string, object>
                {
                    ["back-pain"] = new { value = "unsure" },
                },
            }
        );
        await saved.Is(204);

        var again = await _client.Read(Path("screening"));
        Assert.Equal("unsure", again["draft"]!["back-pain"]!.Text("value"));
        Assert.Null((await _desk.Read(Path("screening")))["draft"]);
        // A draft is no answer: nothing of it counts yet.
        Assert.Equal(0, await _app.Value<long>("select count(*) from client_factors"));
        Assert.Equal(0, await _app.Value<long>("select count(*) from screenings"));
    }

    [Fact]
    public async Task Put_what_she_tells_on_her_page_and_a_later_no_ends_it()
    {
        await Answer(_client, ("pelvic-girdle-pain", "yes"));
        Assert.Equal(["pelvic-girdle-pain"], await Standing());
        Assert.Null((await _client.Read(Path("screening")))["draft"]);

        _app.Clock.Advance(Duration.FromDays(3));
        await Answer(_client);
        Assert.Empty(await Standing());
    }

    [Fact]
    public async Task Leave_what_staff_entered_and_tell_the_owner_that_she_says_otherwise()
    {
        await _app.HasFactor(_her, "back-pain");
        await Answer(_client);
        Assert.Equal(["back-pain"], await Standing());
        var answered = (await _owner.Read(Path("screenings"))).AsArray().Single()!;
        Assert.Equal(["back-pain"], answered["differs"]!.AsArray().Select(c => (string?)c));
        Assert.Equal("no", answered["answers"]!["back-pain"]!.Text("value"));
    }

    [Theory]
    [InlineData("severe-anaemia", "yes", "noExercise", "notSuitable")]
    [InlineData("anaemia", "yes", "clearanceNeeded", "needsClearance")]
    [InlineData("severe-anaemia", "unsure", "clearanceNeeded", "notSuitable")]
    [InlineData("back-pain", "yes", "nothingFound", null)]
    public async Task Come_to_an_outcome_that_decides_what_suits_her(
        string code,
        string value,
        string outcome,
        string? verdict
    )
    {
        await _app.HasSession(_app.Today.PlusDays(3));
        var answer = await Answer(_client, (code, value));
        Assert.Equal(outcome, answer.Text("outcome"));
        if (verdict is not null)
        {
            Assert.NotEmpty(answer["reasons"]![0]!["source"]!.Text("cite"));
            var fit = (await _client.Read(Path("sessions?from=2026-03-02&to=2026-03-09")))[0]!;
            Assert.Equal(verdict, fit["fit"]!.Text("verdict"));
        }
    }

    [Fact]
    public async Task Put_everything_on_hold_at_once_when_a_warning_sign_is_there()
    {
        var booking = await _app.HasBooking(await _app.HasSession(_app.Today.PlusDays(1)), _her);
        var answer = await Answer(_client, ("now-sign-calf", "yes"));

        Assert.True((bool)answer["onHold"]!);
        Assert.NotEmpty(answer.Text("emergencyNumber"));
        Assert.True((bool)(await _desk.Read(Path("")))["onHold"]!);
        Assert.Equal(
            "booked",
            await _app.Value<string>(
                "select status from bookings where id = @booking",
                new { booking }
            )
        );
        Assert.Equal(1, await _app.Value<long>("select count(*) from incidents"));
    }

    [Fact]
    public async Task Answered_on_a_tablet_at_the_desk_give_the_desk_no_answer_back()
    {
        var answer = await Answer(_desk, ("severe-anaemia", "yes"), ("back-pain", "yes"));
        Assert.Null(answer["reasons"]);
        var seen =
            answer.ToJsonString()
            + (await _desk.Read(Path(""))).ToJsonString()
            + (await _desk.Read(Path("screening"))).ToJsonString().Split("\"questions\"")[0];
        Assert.DoesNotContain("naemia", seen, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("back", seen, StringComparison.OrdinalIgnoreCase);
        await (
            await _desk.GetAsync(Path("screenings"), TestContext.Current.CancellationToken)
        ).IsRefused(404, "no-such-client");
    }

    [Fact]
    public async Task Are_refused_whole_while_one_is_open_and_when_they_have_changed()
    {
        var answers = ScreeningSamples.Answers();
        answers.Remove("wrist-pain");
        using (var open = await _client.Post(Path("screenings"), new { version = 1, answers }))
            await open.IsRefused(400, "answers-missing", field: "answers.wrist-pain");
        using (
            var old = await _client.Post(
                Path("screenings"),
                new { version = 0, answers = ScreeningSamples.Answers() }
            )
        )
            await old.IsRefused(409, "questions-changed");
        Assert.Equal(0, await _app.Value<long>("select count(*) from screenings"));
    }

    [Fact]
    public async Task Ask_before_the_first_class_of_a_week_whether_anything_has_changed()
    {
        await Answer(_client);
        _app.Clock.Advance(Duration.FromDays(7));
        await _app.HasBooking(await _app.HasSession(_app.Today.PlusDays(1)), _her);
        Assert.True((bool)(await _client.Read(Path("screening")))["asksWhetherChanged"]!);
        await (await _client.Post(Path("screening/nothing-changed"))).Is(204);
        await (await _client.Post(Path("screening/nothing-changed"))).Is(204);
        Assert.False((bool)(await _client.Read(Path("screening")))["asksWhetherChanged"]!);
    }

    [Fact]
    public async Task After_the_birth_are_those_of_that_time()
    {
        var her = await _app.HasClient(born: _app.Today.PlusDays(-50), papers: false);
        var form = await (await _app.SignedInAs(Role.Client, client: her)).Read(
            $"/api/clients/{her}/screening"
        );
        var codes = form["questions"]!.AsArray().Select(q => q!.Text("code")).ToList();
        Assert.Contains("now-sign-heavier-bleeding", codes);
        Assert.Contains("separation-now", codes);
        Assert.Contains("prolapse-or-leaking", codes);
        Assert.DoesNotContain("showing", codes);
        Assert.Equal(StudioApp.Book.Questions.For(Phase.Born).Select(q => q.Code), codes);
    }

    private string Path(string rest) => $"/api/clients/{_her}{(rest.Length > 0 ? "/" : "")}{rest}";

    private async Task<JsonNode> Answer(HttpClient by, params (string Question, string Value)[] but)
    {
        using var answer = await by.Post(
            Path("screenings"),
            new { version = 1, answers = ScreeningSamples.Answers(Phase.Pregnant, but) }
        );
        return await answer.Is(201);
    }

    private async Task<List<string>> Standing()
    {
        var card = await _owner.Read(Path(""));
        return
        [
            .. card["factors"]!
                .AsArray()
                .Where(f =>
                    f!["to"] is not { } to
                    || string.CompareOrdinal((string?)to, $"{_app.Today:uuuu-MM-dd}") >= 0
                )
                .Select(f => f!.Text("code")),
        ];
    }
}
