using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Booking;

public sealed class AskedAtTheDoor : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _desk = null!;
    private HttpClient _teacher = null!;
    private long _her;
    private long _session;
    private long _booking;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        var instructor = await _app.HasInstructor();
        _desk = await _app.SignedInAs(Role.FrontDesk);
        _teacher = await _app.SignedInAs(Role.Instructor, instructor: instructor);
        _her = await _app.HasClient();
        _session = await _app.HasSession(_app.Today, "18:00", instructor: instructor);
        _booking = await _app.HasBooking(_session, _her);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task All_is_well_is_written_down_and_both_rosters_say_so()
    {
        await CheckIn(_desk, "allWell");
        foreach (var browser in new[] { _desk, _teacher })
        {
            var person = await Person(browser);
            Assert.NotNull(person["checkedInAt"]);
            Assert.NotNull(person["wellAt"]);
        }
    }

    [Fact]
    public async Task Whoever_was_not_asked_is_here_and_shows_as_not_asked_until_she_is()
    {
        await CheckIn(_desk, "notAsked");
        var unasked = await Person(_teacher);
        Assert.NotNull(unasked["checkedInAt"]);
        Assert.Null(unasked["wellAt"]);
        _app.Clock.AdvanceMinutes(5);
        await CheckIn(_teacher, "allWell");
        var asked = await Person(_desk);
        Assert.NotNull(asked["wellAt"]);
        // She came when she came.
        Assert.Equal(unasked.Text("checkedInAt"), asked.Text("checkedInAt"));
    }

    [Fact]
    public async Task Taken_back_is_neither_here_nor_asked()
    {
        await CheckIn(_desk, "allWell");
        using (var undone = await _desk.Send(HttpMethod.Delete, Door))
            await undone.Is(204);
        var person = await Person(_desk);
        Assert.Null(person["checkedInAt"]);
        Assert.Null(person["wellAt"]);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{"answer":null}""")]
    [InlineData("""{"answer":"notWell"}""")]
    [InlineData("""{"answer":1}""")]
    public async Task Nobody_is_let_in_without_an_answer(string body)
    {
        using var content = new StringContent(body, null, "application/json");
        using var answer = await _desk.PostAsync(
            Door,
            content,
            TestContext.Current.CancellationToken
        );
        await answer.Is(400);
        Assert.Null((await Person(_desk))["checkedInAt"]);
    }

    [Fact]
    public async Task Something_holds_everything_and_she_is_not_let_in_until_a_letter_was_read()
    {
        using (
            var raised = await _desk.Post(
                $"/api/clients/{_her}/holds",
                new { sessionId = _session, signs = new[] { "sign-dizzy" } }
            )
        )
            await raised.Is(200);
        using (var refused = await _desk.Post(Door, new { answer = "allWell" }))
            await refused.IsRefused(409, "on-hold");
        Assert.Null((await Person(_desk))["checkedInAt"]);

        var owner = await _app.SignedInAs(Role.Owner);
        using (
            var read = await owner.Post(
                $"/api/clients/{_her}/clearances",
                new
                {
                    issuedBy = "Dr Wenna Ashdown",
                    issuedOn = "2026-03-02",
                    expiresOn = "2026-06-01",
                }
            )
        )
            await read.Is(201);
        await CheckIn(_desk, "allWell");
    }

    [Fact]
    public async Task A_sign_in_class_ends_what_she_said_at_the_door_and_leaves_that_she_came()
    {
        await CheckIn(_desk, "allWell");
        await (await _teacher.Post($"/api/clients/{_her}/holds")).Is(200);
        var person = await Person(_teacher);
        Assert.NotNull(person["checkedInAt"]);
        Assert.Null(person["wellAt"]);
    }

    [Fact]
    public async Task Giving_up_the_seat_takes_both_along()
    {
        await CheckIn(_desk, "allWell");
        using (var cancelled = await _desk.Cancel(_booking))
            await cancelled.Is(200);
        Assert.Equal(
            1,
            await _app.Value<long>(
                "select count(*) from bookings where checked_in_at is null and well_at is null"
            )
        );
    }

    private string Door => $"/api/bookings/{_booking}/check-in";

    private async Task CheckIn(HttpClient browser, string answer)
    {
        using var done = await browser.Post(Door, new { answer });
        await done.Is(204);
    }

    private async Task<JsonNode> Person(HttpClient browser) =>
        (await browser.Read($"/api/sessions/{_session}/roster"))["people"]![0]!;
}
