using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Rosters;

/// <summary>Who may write what was seen in a class, until when, and who reads it afterwards.</summary>
public class NotesAfterClass
{
    private const string Seen = "Held the wall for balance; lighter ropes went well.";

    [Fact]
    public async Task Reach_the_next_instructor_the_owner_and_herself_and_nobody_else()
    {
        await using var app = await StudioApp.Empty();
        var room = await Room.Of(app);
        await room.Written(Seen);

        var next = await app.HasInstructor("Marit Sandwell");
        var later = await app.HasSession(app.Today.PlusDays(3), instructor: next);
        var hers = await app.SignedInAs(Role.Instructor, instructor: next);
        Assert.Empty((await hers.Read($"/api/sessions/{later}/roster"))["people"]!.AsArray());
        await app.HasBooking(later, room.Client);

        var note = Notes(await hers.Read($"/api/sessions/{later}/roster")).Single()!;
        Assert.Equal(Seen, note.Text("text"));
        Assert.Equal("Ilka", note.Text("by"));
        Assert.Equal($"{app.Today:uuuu-MM-dd}", note.Text("on"));
        Assert.False((bool)note["isMine"]!);

        // The note is about another's class: its route is not hers.
        using (var answer = await hers.GetAsync($"/api/sessions/{room.Session}/notes", Stop))
            await answer.IsRefused(404, "no-such-session");
        using (
            var answer = await hers.Put(
                $"/api/notes/{note.Number("id")}",
                new { text = "x", version = 1 }
            )
        )
            await answer.IsRefused(404, "no-such-note");

        var owner = await app.SignedInAs(Role.Owner);
        var herself = await app.SignedInAs(Role.Client, client: room.Client);
        foreach (var reader in new[] { owner, herself })
        {
            var read = (await reader.Read($"/api/clients/{room.Client}/notes")).AsArray();
            Assert.Equal(Seen, read.Single()!.Text("text"));
        }

        var elsewhere = await app.HasInstructor("Odile Reedham");
        var third = await app.SignedInAs(Role.Instructor, instructor: elsewhere);
        var another = await app.SignedInAs(Role.Client, client: await app.HasClient());
        var desk = await app.SignedInAs(Role.FrontDesk);
        foreach (var reader in new[] { third, another, desk, room.Teacher })
        {
            using var answer = await reader.GetAsync($"/api/clients/{room.Client}/notes", Stop);
            await answer.IsRefused(404, "no-such-client");
        }

        using (var answer = await third.GetAsync($"/api/sessions/{later}/roster", Stop))
            await answer.IsRefused(404, "no-such-session");
        foreach (var session in new[] { room.Session, later })
        {
            var atDesk = await desk.Read($"/api/sessions/{session}/roster");
            Assert.Empty(Notes(atDesk));
            Assert.DoesNotContain("balance", atDesk.ToJsonString());
        }
    }

    [Fact]
    public async Task Are_read_by_somebody_of_two_roles_only_where_she_teaches()
    {
        await using var app = await StudioApp.Empty();
        var room = await Room.Of(app);
        await room.Written(Seen);
        var later = await app.HasSession(app.Today.PlusDays(3));
        await app.HasBooking(later, room.Client);
        var both = await app.SignedInAs(
            [Role.FrontDesk, Role.Instructor],
            instructor: await app.HasInstructor()
        );
        Assert.Empty(Notes(await both.Read($"/api/sessions/{later}/roster")));
        using var answer = await both.GetAsync($"/api/sessions/{room.Session}/notes", Stop);
        await answer.IsRefused(404, "no-such-session");
    }

    [Fact]
    public async Task Are_not_shown_about_people_who_only_wait_nor_on_a_roster_before_them()
    {
        await using var app = await StudioApp.Empty();
        var room = await Room.Of(app);
        await room.Written(Seen);
        var before = await app.HasSession(app.Today.PlusDays(-2), instructor: room.Instructor);
        var after = await app.HasSession(app.Today.PlusDays(2), instructor: room.Instructor);
        await app.HasBooking(before, room.Client);
        await app.HasBooking(after, room.Client, "waiting");
        Assert.Empty(Notes(await room.Teacher.Read($"/api/sessions/{before}/roster")));
        var roster = await room.Teacher.Read($"/api/sessions/{after}/roster");
        Assert.Empty(roster["waiting"]![0]!["notes"]!.AsArray());
    }

    [Theory]
    [InlineData(-1, "not-begun", "a minute before the start")]
    [InlineData(0, null, "the start")]
    [InlineData(7 * 24 * 60, null, "the same hour seven days later")]
    [InlineData(8 * 24 * 60 - 18 * 60 - 1, null, "the last minute of the seventh day")]
    [InlineData(8 * 24 * 60 - 18 * 60, "note-closed", "midnight after the seventh day")]
    public async Task Are_written_from_the_start_until_the_seventh_day(
        int minutes,
        string? code,
        string because
    )
    {
        await using var app = await StudioApp.Empty();
        var room = await Room.Of(app);
        // 18:00 in Lisbon in winter is 18:00 UTC.
        app.Clock.Reset(Instant.FromUtc(2026, 3, 2, 18, 0) + Duration.FromMinutes(minutes));
        using var answer = await room.Teacher.Post(
            $"/api/sessions/{room.Session}/notes",
            new { clientId = room.Client, text = Seen }
        );
        if (code is null)
            await answer.Is(201);
        else
            await answer.IsRefused(409, code);
        var told = await room.Teacher.Read($"/api/sessions/{room.Session}/notes");
        Assert.True((string?)told["whyNot"]?["code"] == code, because);
        Assert.Equal(
            code is null ? 1 : 0,
            await app.Value<long>("select count(*) from class_note_versions")
        );
    }

    [Fact]
    public async Task Are_changed_by_a_new_version_and_every_version_stays()
    {
        await using var app = await StudioApp.Empty();
        var room = await Room.Of(app);
        var note = await room.Written(Seen);
        var path = $"/api/notes/{note.Number("id")}";
        using (var answer = await room.Teacher.Put(path, new { text = "Steadier.", version = 1 }))
            Assert.Equal(2, (await answer.Is(200)).Number("version"));
        // Sent again, as after an answer that was lost.
        using (var answer = await room.Teacher.Put(path, new { text = "Steadier.", version = 1 }))
            Assert.Equal(2, (await answer.Is(200)).Number("version"));
        using (var answer = await room.Teacher.Put(path, new { text = "Older.", version = 1 }))
            await answer.IsRefused(409, "note-changed");
        Assert.Equal(
            [Seen, "Steadier."],
            (
                await app.Rows<string>("select text from class_note_versions order by version")
            ).Select(app.Services.GetRequiredService<Seal>().Open)
        );

        var owner = await app.SignedInAs(Role.Owner);
        using (var answer = await owner.Put(path, new { text = "Mine.", version = 2 }))
            await answer.IsRefused(403, "not-the-writer");
        app.Clock.Advance(Duration.FromDays(9));
        using (var answer = await room.Teacher.Put(path, new { text = "Late.", version = 2 }))
            await answer.IsRefused(409, "note-closed");
    }

    [Fact]
    public async Task Are_one_of_each_writer_about_a_person_in_a_class()
    {
        await using var app = await StudioApp.Empty();
        var room = await Room.Of(app);
        var first = await room.Written(Seen);
        Assert.Equal(first.Number("id"), (await room.Written(Seen)).Number("id"));
        using (
            var answer = await room.Teacher.Post(
                $"/api/sessions/{room.Session}/notes",
                new { clientId = room.Client, text = "Another." }
            )
        )
            await answer.IsRefused(409, "note-exists");
        var owner = await app.SignedInAs(Role.Owner);
        using (
            var answer = await owner.Post(
                $"/api/sessions/{room.Session}/notes",
                new { clientId = room.Client, text = "The owner's." }
            )
        )
            await answer.Is(201);
        var notes = await room.Teacher.Read($"/api/sessions/{room.Session}/notes");
        Assert.Equal(2, notes["notes"]!.AsArray().Count);
        Assert.Single(notes["notes"]!.AsArray(), n => (bool)n!["isMine"]!);
    }

    [Fact]
    public async Task Are_about_people_with_a_seat()
    {
        await using var app = await StudioApp.Empty();
        var room = await Room.Of(app);
        var waiting = await app.HasClient();
        await app.HasBooking(room.Session, waiting, "waiting");
        foreach (var client in new[] { waiting, await app.HasClient(), 999_999 })
        {
            using var answer = await room.Teacher.Post(
                $"/api/sessions/{room.Session}/notes",
                new { clientId = client, text = Seen }
            );
            await answer.IsRefused(404, "not-on-roster");
        }
    }

    [Theory]
    [InlineData(2000, 201)]
    [InlineData(2001, 400)]
    public async Task Have_two_thousand_characters_at_most(int length, int status)
    {
        await using var app = await StudioApp.Empty();
        var room = await Room.Of(app);
        using var answer = await room.Teacher.Post(
            $"/api/sessions/{room.Session}/notes",
            new { clientId = room.Client, text = new string('a', length) }
        );
        await answer.Is(status);
    }

    [Fact]
    public async Task Withdrawn_are_read_by_nobody_and_may_be_written_anew()
    {
        await using var app = await StudioApp.Empty();
        var room = await Room.Of(app);
        var note = await room.Written(Seen);
        using (
            var answer = await room.Teacher.Send(
                HttpMethod.Delete,
                $"/api/notes/{note.Number("id")}"
            )
        )
            await answer.Is(204);
        var owner = await app.SignedInAs(Role.Owner);
        Assert.Empty((await owner.Read($"/api/clients/{room.Client}/notes")).AsArray());
        using (var again = await owner.Send(HttpMethod.Delete, $"/api/notes/{note.Number("id")}"))
            await again.IsRefused(404, "no-such-note");
        Assert.NotEqual(note.Number("id"), (await room.Written("Anew.")).Number("id"));
    }

    [Fact]
    public async Task After_a_loss_are_there_for_the_owner_and_herself_only_also_in_her_next_pregnancy()
    {
        await using var app = await StudioApp.Empty();
        var room = await Room.Of(app);
        var note = await room.Written(Seen);
        var owner = await app.SignedInAs(Role.Owner);
        using (var loss = await owner.Post($"/api/clients/{room.Client}/loss", new { }))
            await loss.Is(200);

        Assert.Empty(
            (await room.Teacher.Read($"/api/sessions/{room.Session}/notes"))["notes"]!.AsArray()
        );
        using (
            var answer = await room.Teacher.Put(
                $"/api/notes/{note.Number("id")}",
                new { text = "x", version = 1 }
            )
        )
            await answer.IsRefused(404, "no-such-note");
        using (
            var answer = await room.Teacher.Post(
                $"/api/sessions/{room.Session}/notes",
                new { clientId = room.Client, text = "x" }
            )
        )
            await answer.IsRefused(404, "not-on-roster");
        var herself = await app.SignedInAs(Role.Client, client: room.Client);
        Assert.Single((await herself.Read($"/api/clients/{room.Client}/notes")).AsArray());
        Assert.Single((await owner.Read($"/api/clients/{room.Client}/notes")).AsArray());

        // A new pregnancy: she is on rosters again, and the old notes are not.
        await app.Execute(
            "update pregnancies set is_current = 0 where client_id = @Client",
            new { room.Client }
        );
        await app.Execute(
            "insert into pregnancies (client_id, due_date) values (@Client, @due)",
            new { room.Client, due = app.Today.PlusDays(200) }
        );
        var later = await app.HasSession(app.Today.PlusDays(3), instructor: room.Instructor);
        await app.HasBooking(later, room.Client);
        Assert.Empty(Notes(await room.Teacher.Read($"/api/sessions/{later}/roster")));
        Assert.Single(Notes(await owner.Read($"/api/sessions/{later}/roster")));
    }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static IEnumerable<JsonNode?> Notes(JsonNode roster) =>
        roster["people"]!.AsArray().SelectMany(p => p!["notes"]!.AsArray());

    /// <summary>A session this evening that has begun, with one client in it.</summary>
    private sealed record Room(
        StudioApp App,
        long Session,
        long Client,
        long Instructor,
        HttpClient Teacher
    )
    {
        public static async Task<Room> Of(StudioApp app)
        {
            await app.HasLocation();
            var instructor = await app.HasInstructor();
            var session = await app.HasSession(app.Today, "18:00", instructor: instructor);
            var client = await app.HasClient();
            await app.HasBooking(session, client);
            app.Clock.Reset(Instant.FromUtc(2026, 3, 2, 18, 30));
            return new Room(
                app,
                session,
                client,
                instructor,
                await app.SignedInAs(Role.Instructor, instructor: instructor)
            );
        }

        public async Task<JsonNode> Written(string text)
        {
            using var answer = await Teacher.Post(
                $"/api/sessions/{Session}/notes",
                new { clientId = Client, text }
            );
            return await answer.Is(201);
        }
    }
}
