using Studio.Core.Accounts;

namespace Studio.Api.Tests.Screenings;

public sealed class WarningSignsInClass : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _owner = null!;
    private HttpClient _teacher = null!;
    private long _her;
    private long _session;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        _owner = await _app.SignedInAs(Role.Owner);
        var instructor = await _app.HasInstructor();
        _teacher = await _app.SignedInAs(Role.Instructor, instructor: instructor);
        _her = await _app.HasClient();
        _session = await _app.HasSession(_app.Today, "18:00", instructor: instructor);
        await _app.HasBooking(_session, _her);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task Hold_everything_and_tell_what_to_do_and_whom_to_call()
    {
        using var raised = await _teacher.Post(
            $"/api/clients/{_her}/holds",
            new
            {
                sessionId = _session,
                signs = new[] { "sign-chest-pain", "sign-dizzy" },
                happened = "Halfway through.",
                done = "Sat down, water, her sister was called.",
            }
        );
        var card = await raised.Is(200);
        Assert.StartsWith("Stop", card.Text("says"), StringComparison.Ordinal);
        Assert.Equal(
            await _app.Value<string>("select min(emergency_number) from locations"),
            card.Text("emergencyNumber")
        );

        var desk = await _app.SignedInAs(Role.FrontDesk);
        Assert.True((bool)(await desk.Read($"/api/clients/{_her}"))["onHold"]!);
        var entry = (await _owner.Read($"/api/incidents?client={_her}"))[0]!;
        Assert.Equal(
            ["Chest pain", "Dizzy or faint"],
            entry["signs"]!.AsArray().Select(s => (string?)s)
        );
        Assert.Equal("Sat down, water, her sister was called.", entry.Text("done"));
        Assert.Equal(_session, entry.Number("sessionId"));
    }

    [Fact]
    public async Task Are_never_rewritten()
    {
        await _app.HasIncident(_her);
        await Assert.ThrowsAsync<Microsoft.Data.Sqlite.SqliteException>(() =>
            _app.Execute("update incidents set session_id = null, raised_by = null")
        );
    }

    [Fact]
    public async Task Need_no_words_to_hold()
    {
        await (await _teacher.Post($"/api/clients/{_her}/holds")).Is(200);
        Assert.Equal(1, await _app.Value<long>("select count(*) from holds"));
        // Raised twice, held once, and both are on record.
        await (await _teacher.Post($"/api/clients/{_her}/holds")).Is(200);
        Assert.Equal(1, await _app.Value<long>("select count(*) from holds"));
        Assert.Equal(2, await _app.Value<long>("select count(*) from incidents"));
    }

    [Theory]
    [InlineData("""{"signs":["sign-of-the-times"]}""", "no-such-sign", "signs")]
    [InlineData("""{"signs":[null]}""", "no-such-sign", "signs")]
    [InlineData("""{"sessionId":99999}""", "not-in-session", "sessionId")]
    public async Task That_cannot_be_are_refused_by_field_and_hold_nothing(
        string body,
        string code,
        string field
    )
    {
        using var content = new StringContent(body, null, "application/json");
        using var answer = await _teacher.PostAsync(
            $"/api/clients/{_her}/holds",
            content,
            TestContext.Current.CancellationToken
        );
        await answer.IsRefused(400, code, field);
        Assert.Equal(0, await _app.Value<long>("select count(*) from holds"));
        Assert.Equal(0, await _app.Value<long>("select count(*) from incidents"));
    }

    [Fact]
    public async Task Are_lifted_by_a_new_letter_once_it_is_read_and_by_nothing_else()
    {
        await (await _teacher.Post($"/api/clients/{_her}/holds")).Is(200);
        var letter = await _app.HasWaitingLetter(_her, LetterSamples.Png);
        var old = Review("2026-03-01");
        await (await _owner.Post($"/api/clients/{_her}/clearances", old)).Is(201);
        Assert.True((bool)(await _owner.Read($"/api/clients/{_her}"))["onHold"]!);
        await (
            await _owner.Post($"/api/clients/{_her}/letters/{letter}/review", Review("2026-03-02"))
        ).Is(204);
        Assert.False((bool)(await _owner.Read($"/api/clients/{_her}"))["onHold"]!);
    }

    private static object Review(string issuedOn) =>
        new
        {
            issuedBy = "Dr Wenna Ashdown",
            issuedOn,
            expiresOn = "2026-06-01",
        };
}
