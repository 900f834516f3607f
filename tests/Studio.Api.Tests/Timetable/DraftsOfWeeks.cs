using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Timetable;

public class DraftsOfWeeks
{
    private static readonly LocalDate Monday = new(2026, 3, 9);

    [Fact]
    public async Task A_draft_is_a_copy_and_changes_nothing_until_it_is_published()
    {
        await using var app = await StudioApp.Empty();
        var session = await app.HasSession(Monday, "09:00");
        var owner = await app.SignedInAs(Role.Owner);
        var draft = await Draft(owner);

        var row = draft["sessions"]![0]!;
        Assert.Equal(session, row.Number("sessionId"));
        draft = await Change(owner, draft, put: [Row(row, at: "11:00")]);

        Assert.True((bool)draft["sessions"]![0]!["isChanged"]!);
        Assert.Equal(
            "09:00",
            await app.Value<string>(
                "select starts_local from sessions where id = @session",
                new { session }
            )
        );
    }

    [Fact]
    public async Task Publishing_moves_adds_and_calls_off_at_once_and_twice_is_the_same_as_once()
    {
        await using var app = await StudioApp.Empty();
        var (moved, gone) = (
            await app.HasSession(Monday, "09:00"),
            await app.HasSession(Monday, "18:00")
        );
        var her = await app.HasClient();
        await app.HasBooking(moved, her);
        await app.HasBooking(gone, her);
        var owner = await app.SignedInAs(Role.Owner);
        var draft = await Draft(owner);
        var rows = draft["sessions"]!.AsArray();
        draft = await Change(
            owner,
            draft,
            put: [Row(rows[0]!, at: "10:30"), Row(rows[0]!, at: "14:00", isNew: true)],
            remove: [rows[1]!.Number("id")]
        );
        var id = draft["draft"]!.Number("id");

        var seen = await owner.Read($"/api/drafts/{id}/consequences");
        Assert.Equal((1, 1, 1), Counts(seen));
        Assert.Equal(2, seen["consequences"]!.AsArray().Count);

        var made = await Publish(owner, draft).Then(200);
        var again = await Publish(owner, draft).Then(200);

        Assert.Equal((1, 1, 1), Counts(made));
        Assert.Equal((0, 0, 0), Counts(again));
        Assert.Equal(
            [(moved, "10:30", "open"), (gone, "18:00", "cancelled"), (gone + 1, "14:00", "open")],
            (
                await app.Rows<Standing>(
                    "select id, starts_local as Starts, status from sessions order by id"
                )
            ).Select(s => (s.Id, s.Starts, s.Status))
        );
        Assert.Equal(
            ["sessionCancelled", "sessionChanged"],
            await app.Rows<string>("select kind from messages order by kind")
        );
    }

    [Fact]
    public async Task A_change_to_an_older_version_is_refused_and_the_draft_stays_as_it_is()
    {
        await using var app = await StudioApp.Empty();
        await app.HasSession(Monday, "09:00");
        var owner = await app.SignedInAs(Role.Owner);
        var draft = await Draft(owner);
        var row = draft["sessions"]![0]!;
        await Change(owner, draft, put: [Row(row, at: "11:00")]);

        using var late = await Put(owner, draft, [Row(row, at: "12:00")], []);
        await late.IsRefused(409, "draft-changed", "version");
        var now = await owner.Read($"/api/drafts/{draft["draft"]!.Number("id")}");
        Assert.Equal("11:00", now["sessions"]![0]!.Text("startsLocal"));
    }

    [Fact]
    public async Task What_somebody_changed_meanwhile_has_to_be_decided_before_publishing()
    {
        await using var app = await StudioApp.Empty();
        var session = await app.HasSession(Monday, "09:00");
        var owner = await app.SignedInAs(Role.Owner);
        var draft = await Draft(owner);
        draft = await Change(owner, draft, put: [Row(draft["sessions"]![0]!, at: "11:00")]);
        await app.Changed((await app.Wanted(session)) with { StartsLocal = new LocalTime(15, 0) });

        await Publish(owner, draft).Refused(409, "draft-outdated");
        var id = draft["draft"]!.Number("id");
        var shown = (await owner.Read($"/api/drafts/{id}"))["sessions"]![0]!;
        Assert.Equal("15:00", shown["meanwhile"]!.Text("startsLocal"));

        using var decided = await owner.Post(
            $"/api/drafts/{id}/meanwhile",
            new
            {
                version = draft["draft"]!.Number("version"),
                row = shown.Number("id"),
                keep = "theirs",
            }
        );
        draft = await decided.Is(200);
        var made = await Publish(owner, draft).Then(200);
        Assert.Equal((0, 0, 0), Counts(made));
        Assert.Equal(new LocalTime(15, 0), (await app.Wanted(session)).StartsLocal);
    }

    [Fact]
    public async Task What_changed_meanwhile_where_the_draft_changes_nothing_stays_as_they_made_it()
    {
        await using var app = await StudioApp.Empty();
        var (hers, mine) = (
            await app.HasSession(Monday, "09:00"),
            await app.HasSession(Monday, "18:00")
        );
        var owner = await app.SignedInAs(Role.Owner);
        var draft = await Draft(owner);
        await app.Changed((await app.Wanted(hers)) with { Seats = 3 });
        draft = await Change(owner, draft, put: [Row(draft["sessions"]![1]!, at: "19:00")]);

        // Seen, and not to be overwritten in silence: the owner says that theirs holds.
        await Publish(owner, draft).Refused(409, "draft-outdated");
        using var decided = await owner.Post(
            $"/api/drafts/{draft["draft"]!.Number("id")}/meanwhile",
            new
            {
                version = draft["draft"]!.Number("version"),
                row = draft["sessions"]![0]!.Number("id"),
                keep = "theirs",
            }
        );
        await Publish(owner, await decided.Is(200)).Then(200);
        Assert.Equal(3, (await app.Wanted(hers)).Seats);
        Assert.Equal(new LocalTime(19, 0), (await app.Wanted(mine)).StartsLocal);
    }

    [Fact]
    public async Task A_week_is_laid_onto_another_without_what_stands_there()
    {
        await using var app = await StudioApp.Empty();
        var (of, room) = (await app.HasClass(), await app.HasRoom());
        await app.HasSession(Monday, "09:00", of, room: room);
        await app.HasSession(Monday.PlusDays(2), "18:00", of, room: room);
        await app.HasSession(Monday.PlusDays(7), "09:00", of, room: room);
        var owner = await app.SignedInAs(Role.Owner);
        var draft = await Draft(owner);

        using var copied = await owner.Post(
            $"/api/drafts/{draft["draft"]!.Number("id")}/copy-week",
            new
            {
                version = 1,
                from = Monday.PlusDays(3),
                to = Monday.PlusDays(7),
            }
        );
        var rows = (await copied.Is(200))["sessions"]!.AsArray();
        Assert.Equal(
            ["2026-03-09", "2026-03-11", "2026-03-16", "2026-03-18"],
            rows.Select(r => r!.Text("on"))
        );
    }

    [Fact]
    public async Task A_conflict_is_named_while_a_session_is_held_and_refused_when_it_is_published()
    {
        await using var app = await StudioApp.Empty();
        var (of, room) = (await app.HasClass(), await app.HasRoom(name: "Cork room"));
        await app.HasSession(Monday, "09:00", of, room: room);
        await app.HasSession(Monday, "12:00", of, room: room);
        var owner = await app.SignedInAs(Role.Owner);
        var draft = await Draft(owner);
        var id = draft["draft"]!.Number("id");
        var held = Row(draft["sessions"]![1]!, at: "09:20");

        using var asked = await owner.Post($"/api/drafts/{id}/check", new { session = held });
        var conflict = (await asked.Is(200))[0]!;
        Assert.Equal("roomTaken", conflict.Text("kind"));
        Assert.True((bool)conflict["isHard"]!);
        Assert.True((bool)conflict["isNew"]!);

        draft = await Change(owner, draft, put: [held]);
        Assert.Single(draft["conflicts"]!.AsArray());
        var refused = await Publish(owner, draft).Refused(409, "timetable-conflict");
        Assert.Contains("Cork room would hold", refused.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_draft_thrown_away_is_gone_and_the_timetable_is_as_it_was()
    {
        await using var app = await StudioApp.Empty();
        await app.HasSession(Monday, "09:00");
        var owner = await app.SignedInAs(Role.Owner);
        var draft = await Draft(owner);
        var id = draft["draft"]!.Number("id");

        using var gone = await owner.Send(HttpMethod.Delete, $"/api/drafts/{id}");
        await gone.Is(204);
        Assert.Empty((await owner.Read("/api/drafts")).AsArray());
        await Publish(owner, draft).Refused(409, "draft-ended");
    }

    [Fact]
    public async Task The_live_week_names_its_conflicts()
    {
        await using var app = await StudioApp.Empty();
        var session = await app.HasSession(
            Monday,
            "09:00",
            instructor: await app.HasInstructor("Ilka Thornmere")
        );
        var owner = await app.SignedInAs(Role.Owner);

        var week = await owner.Read($"/api/timetable?from=2026-03-09&to=2026-03-15");
        Assert.Equal(session, week["sessions"]![0]!.Number("id"));
        Assert.Equal("notQualified", week["conflicts"]![0]!.Text("kind"));
        Assert.Contains(
            "Ilka Thornmere has no valid prenatal qualification",
            week["conflicts"]![0]!.Text("words"),
            StringComparison.Ordinal
        );
    }

    private static async Task<JsonNode> Draft(HttpClient owner)
    {
        using var made = await owner.Post(
            "/api/drafts",
            new
            {
                name = "Two weeks",
                from = Monday,
                to = Monday.PlusDays(13),
            }
        );
        return await owner.Read($"/api/drafts/{(await made.Is(201)).Number("id")}");
    }

    private static object Row(JsonNode row, string at, bool isNew = false) =>
        new
        {
            id = isNew ? (long?)null : row.Number("id"),
            classId = row.Number("classId"),
            roomId = row.Number("roomId"),
            instructorId = (long?)row["instructorId"],
            on = row.Text("on"),
            startsLocal = at,
            minutes = row.Number("minutes"),
            seats = row.Number("seats"),
            isHeld = true,
        };

    private static async Task<JsonNode> Change(
        HttpClient owner,
        JsonNode draft,
        object[] put,
        long[]? remove = null
    )
    {
        using var answer = await Put(owner, draft, put, remove ?? []);
        return await answer.Is(200);
    }

    private static Task<HttpResponseMessage> Put(
        HttpClient owner,
        JsonNode draft,
        object[] put,
        long[] remove
    ) =>
        owner.Put(
            $"/api/drafts/{draft["draft"]!.Number("id")}/sessions",
            new
            {
                version = draft["draft"]!.Number("version"),
                put,
                remove,
            }
        );

    private static Task<HttpResponseMessage> Publish(HttpClient owner, JsonNode draft) =>
        owner.Post(
            $"/api/drafts/{draft["draft"]!.Number("id")}/publish",
            new { version = draft["draft"]!.Number("version"), anyway = true }
        );

    private static (long Added, long Changed, long CalledOff) Counts(JsonNode made) =>
        (made.Number("added"), made.Number("changed"), made.Number("calledOff"));

    private sealed record Standing
    {
        public long Id { get; init; }
        public string Starts { get; init; } = "";
        public string Status { get; init; } = "";
    }
}

internal static class Answers
{
    public static async Task<JsonNode> Then(this Task<HttpResponseMessage> asked, int status)
    {
        using var answer = await asked;
        return await answer.Is(status);
    }

    public static async Task<JsonNode> Refused(
        this Task<HttpResponseMessage> asked,
        int status,
        string code
    )
    {
        using var answer = await asked;
        return await answer.IsRefused(status, code);
    }
}
