using System.Text.Json.Nodes;
using Studio.Api.Tests.Jobs;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Rosters;

/// <summary>Flags open and close with what is entered, at once; what only time changes, the night settles.</summary>
public class FlagsThroughTheRoutes : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _desk = null!;
    private HttpClient _owner = null!;
    private HttpClient _teacher = null!;
    private long _instructor;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        await _app.HasLocation();
        _desk = await _app.SignedInAs([Role.FrontDesk]);
        _owner = await _app.SignedInAs([Role.Owner]);
        _instructor = await _app.HasInstructor();
        await _app.HasQualification(
            _instructor,
            _app.Today.PlusDays(-300),
            _app.Today.PlusDays(300)
        );
        _teacher = await _app.SignedInAs([Role.Instructor], instructor: _instructor);
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await _app.DisposeAsync();
    }

    [Fact]
    public async Task What_she_enters_herself_reaches_her_instructor_at_once_and_never_names_itself_at_the_desk()
    {
        var her = await Booked(inDays: 3);
        var herself = await _app.SignedInAs([Role.Client], client: her);
        var from = new { code = "wrist-pain", from = "2026-03-01" };
        await (await herself.Post($"/api/clients/{her}/factors", from)).Is(201);
        var told = await Flag(_teacher, "newFactor");
        Assert.Contains("Keep the wrists straight", told.Text("text"), StringComparison.Ordinal);
        Assert.Equal("2026-03-01", told.Text("since"));
        var seen = await Flag(_desk, "newFactor");
        Assert.Equal(told.Number("id"), seen.Number("id"));
        Assert.DoesNotContain("wrist", seen.Text("text"), StringComparison.OrdinalIgnoreCase);

        // Entered once more by mistake it is still one change.
        await (await herself.Post($"/api/clients/{her}/factors", from)).Is(201);
        await Flag(_desk, "newFactor");
        for (var night = 0; night < 13; night++)
            await _app.Sleeps();
        // After her class there is nobody left to tell.
        Assert.Empty(await Flags(_desk, "newFactor"));
    }

    [Fact]
    public async Task Ending_what_she_entered_closes_its_flag()
    {
        var her = await Booked(inDays: 3);
        var factor = (
            await (
                await _owner.Post(
                    $"/api/clients/{her}/factors",
                    new { code = "back-pain", from = "2026-02-25" }
                )
            ).Is(201)
        ).Number("id");
        await Flag(_desk, "newFactor");
        await (
            await _owner.Post($"/api/clients/{her}/factors/{factor}/end", new { on = "2026-03-01" })
        ).Is(204);
        Assert.Empty(await Flags(_desk, "newFactor"));
    }

    [Fact]
    public async Task A_revised_due_date_flags_the_seat_that_no_longer_suits_at_once()
    {
        // In the first trimester by 16 days; the revision makes it the second.
        var her = await _app.HasClient(due: _app.Today.PlusDays(280 - 82));
        var session = await Session(inDays: 4, await _app.HasClass(stages: ["first-trimester"]));
        await _desk.Booked(session, her);
        Assert.Empty(await Flags(_desk));
        var answer = await (
            await _owner.Post(
                $"/api/clients/{her}/datings",
                new { stated = Iso(_app.Today.PlusDays(280 - 100)) }
            )
        ).Is(201);
        Assert.Equal(1, answer.Number("bookingsNowUnsuitable"));
        var flag = await Flag(_desk, "bookingNoLongerSuits");
        Assert.Equal(session, flag.Number("sessionId"));
        Assert.Equal("attention", flag.Text("severity"));
        Assert.Contains("second trimester", flag.Text("text"), StringComparison.Ordinal);
        await Flag(_teacher, "bookingNoLongerSuits");
        var seat = Assert.Single((await _desk.Read($"/api/clients/{her}/bookings")).AsArray())!;
        Assert.Equal("booked", seat.Text("status"));

        await (await _desk.Cancel(seat.Number("bookingId"))).Is(200);
        Assert.Empty(await Flags(_desk, "bookingNoLongerSuits"));
    }

    [Fact]
    public async Task A_letter_that_ends_is_flagged_by_the_night_and_a_new_one_closes_it_at_once()
    {
        var her = await Booked(inDays: 10, papers: false);
        await _app.HasScreening(her, _app.Today.PlusDays(-3));
        await _app.HasLetter(her, _app.Today.PlusDays(-60), _app.Today.PlusDays(29));
        await _app.ByHand("flags");
        Assert.Empty(await Flags(_desk));
        await _app.Sleeps();
        Assert.Contains(
            "ends on 31 March 2026",
            (await Flag(_desk, "letter")).Text("text"),
            StringComparison.Ordinal
        );
        Assert.Equal("info", (await Flag(_teacher, "letter")).Text("severity"));

        await _app.Execute("update letters set withdrawn_at = '2026-03-03T08:00:00.000Z'");
        await _app.Sleeps();
        Assert.Contains(
            "1 booked session needs a letter",
            (await Flag(_desk, "letter")).Text("text"),
            StringComparison.Ordinal
        );
        await Flag(_desk, "bookingNoLongerSuits");
        await Flag(_teacher, "letter");

        await (
            await (await _app.SignedInAs(Role.Owner)).Post(
                $"/api/clients/{her}/clearances",
                new
                {
                    issuedBy = "Dr Wenna Ashdown",
                    issuedOn = Iso(_app.Today),
                    expiresOn = Iso(_app.Today.PlusDays(90)),
                }
            )
        ).Is(201);
        Assert.Empty(await Flags(_desk));
        Assert.Empty(await Flags(_teacher));
    }

    [Fact]
    public async Task A_letter_that_has_run_out_is_flagged_the_morning_after()
    {
        var her = await Booked(inDays: 8, papers: false);
        await _app.HasScreening(her, _app.Today.PlusDays(-3));
        await _app.HasLetter(her, _app.Today.PlusDays(-60), _app.Today.PlusDays(8));
        for (var night = 0; night < 8; night++)
        {
            await _app.Sleeps();
            Assert.DoesNotContain(await Flags(_desk), f => f.Text("severity") == "urgent");
        }

        await _app.HasBooking(await Session(inDays: 2), her);
        await _app.Sleeps();
        Assert.Equal("urgent", (await Flag(_desk, "letter")).Text("severity"));
    }

    [Fact]
    public async Task An_instructor_s_tick_stays_until_the_words_change()
    {
        var her = await Booked(inDays: 12, papers: false);
        await _app.HasLetter(her, _app.Today.PlusDays(-10), _app.Today.PlusDays(60));
        await _app.ByHand("flags");
        var flag = (await Flag(_teacher, "screening")).Number("id");
        Assert.True(await IsNew(_teacher, flag));
        await (await _teacher.Post($"/api/flags/{flag}/read")).Is(204);
        Assert.False(await IsNew(_teacher, flag));
        Assert.True(await IsNew(_desk, flag));
        for (var night = 0; night < 3; night++)
        {
            await _app.Sleeps();
            Assert.False(await IsNew(_teacher, flag));
        }

        // A class sooner than that: the words name another day.
        await _app.HasBooking(await Session(inDays: 5), her);
        await _app.ByHand("flags");
        Assert.True(await IsNew(_teacher, flag));
        await (await _teacher.Post($"/api/flags/{flag}/read")).Is(204);
        Assert.False(await IsNew(_teacher, flag));
        // Two nights on it is urgent, which has not been read yet.
        await _app.Sleeps(days: 2);
        Assert.True(await IsNew(_teacher, flag));
    }

    [Fact]
    public async Task Ticking_a_roster_ticks_every_flag_on_it_for_that_account_alone()
    {
        var session = await Session(inDays: 3);
        foreach (var _ in new[] { 1, 2 })
            await _app.HasBooking(session, await _app.HasClient(papers: false));
        await _app.ByHand("flags");
        Assert.All(await Flags(_teacher), f => Assert.True((bool)f["isNew"]!));
        await (await _teacher.Post($"/api/sessions/{session}/roster/read")).Is(204);
        Assert.All(await Flags(_teacher), f => Assert.False((bool)f["isNew"]!));
        Assert.All(await Flags(_desk), f => Assert.True((bool)f["isNew"]!));
    }

    [Fact]
    public async Task Another_instructor_neither_sees_nor_ticks_it()
    {
        await Booked(inDays: 3, papers: false);
        await _app.ByHand("flags");
        var flag = (await Flag(_teacher, "screening")).Number("id");
        var another = await _app.SignedInAs(
            [Role.Instructor],
            instructor: await _app.HasInstructor("Bodil Fernhaven")
        );
        Assert.Empty(await Flags(another));
        await (await another.Post($"/api/flags/{flag}/read")).IsRefused(404, "no-such-flag");
    }

    [Fact]
    public async Task A_session_without_an_instructor_is_flagged_until_it_has_one()
    {
        var session = await _app.HasSession(_app.Today.PlusDays(5));
        await _app.ByHand("flags");
        Assert.Equal(session, (await Flag(_desk, "noInstructor")).Number("sessionId"));
        Assert.Equal("attention", (await Flag(_desk, "noInstructor")).Text("severity"));
        await _app.Sleeps(days: 4);
        Assert.Equal("urgent", (await Flag(_desk, "noInstructor")).Text("severity"));
        await _app.Execute(
            "update sessions set instructor_id = @_instructor where id = @session",
            new { _instructor, session }
        );
        await _app.ByHand("flags");
        Assert.Empty(await Flags(_desk));
    }

    [Fact]
    public async Task A_qualification_that_does_not_reach_a_session_is_flagged_until_it_is_renewed()
    {
        await Session(inDays: 5, await _app.HasClass(needs: "postnatal"));
        await _app.HasQualification(
            _instructor,
            _app.Today.PlusDays(-300),
            _app.Today.PlusDays(4),
            "postnatal"
        );
        await _app.ByHand("flags");
        await Flag(_desk, "qualification");
        Assert.Contains(
            "Your postnatal qualification",
            (await Flag(_teacher, "qualification")).Text("text"),
            StringComparison.Ordinal
        );
        await (
            await _owner.Post(
                $"/api/instructors/{_instructor}/qualifications",
                new
                {
                    kind = "postnatal",
                    issuedOn = Iso(_app.Today),
                    expiresOn = Iso(_app.Today.PlusDays(365)),
                }
            )
        ).Is(201);
        Assert.Empty(await Flags(_desk));
        Assert.Empty(await Flags(_teacher));
    }

    private async Task<long> Booked(int inDays, bool papers = true)
    {
        var her = await _app.HasClient(papers: papers);
        await _app.HasBooking(await Session(inDays), her);
        return her;
    }

    private Task<long> Session(int inDays, long? of = null) =>
        _app.HasSession(_app.Today.PlusDays(inDays), of: of, instructor: _instructor);

    private static async Task<IReadOnlyList<JsonNode>> Flags(
        HttpClient reader,
        string? kind = null
    ) =>
        [
            .. (await reader.Read("/api/flags"))
                .AsArray()
                .Select(f => f!)
                .Where(f => kind is null || f.Text("kind") == kind),
        ];

    private static async Task<JsonNode> Flag(HttpClient reader, string kind) =>
        Assert.Single(await Flags(reader, kind));

    private static async Task<bool> IsNew(HttpClient reader, long flag) =>
        (bool)(await Flags(reader)).Single(f => f.Number("id") == flag)["isNew"]!;

    private static string Iso(LocalDate day) => NodaTime.Text.LocalDatePattern.Iso.Format(day);
}
