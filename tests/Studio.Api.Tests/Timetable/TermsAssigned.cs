using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Timetable;

public class TermsAssigned
{
    [Fact]
    public async Task A_session_that_nobody_teaches_is_given_to_somebody_and_a_draft_says_so()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var ada = await app.Qualified("Ada Winterbourne");
        var bea = await app.Qualified("Bea Lathe");
        var hers = await app.HasSession(app.Today.PlusDays(2), instructor: ada);
        var open = await app.HasSession(app.Today.PlusDays(2));

        var run = await app.Assigned(owner);

        Assert.Equal("finished", (string)run["run"]!["status"]!);
        var change = Assert.Single(run["result"]!["changes"]!.AsArray())!;
        Assert.Equal(open, (long)change["session"]!["id"]!);
        Assert.Equal(bea, (long)change["afterId"]!);
        Assert.Null(change["before"]);
        Assert.Equal(1, (int)run["result"]!["unstaffedBefore"]!);
        Assert.Equal(0, (int)run["result"]!["unstaffedAfter"]!);
        // Nothing is published by it.
        Assert.Null((await app.Wanted(open)).InstructorId);

        using var taken = await owner.Post($"/api/assignments/{run["run"]!["id"]}/draft");
        var draft = (long)(await taken.Is(200))["draftId"]!;
        Assert.Equal(
            [ada, bea],
            await app.Rows<long>(
                "select instructor_id from draft_sessions where draft_id = @draft order by session_id",
                new { draft }
            )
        );
        Assert.Equal(
            "assignment",
            await app.Value<string>("select origin from drafts where id = @draft", new { draft })
        );
        Assert.Null((await app.Wanted(open)).InstructorId);
        Assert.Equal(ada, (await app.Wanted(hers)).InstructorId);
        using var again = await owner.Post($"/api/assignments/{run["run"]!["id"]}/draft");
        Assert.Equal("assignment-settled", (string)(await again.Is(409))["code"]!);
    }

    [Fact]
    public async Task What_changed_since_it_was_read_is_left_as_it_is_in_the_draft_and_counted()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.Qualified("Ada Winterbourne");
        var bea = await app.Qualified("Bea Lathe");
        var open = await app.HasSession(app.Today.PlusDays(2));
        var run = await app.Assigned(owner);
        await app.Execute("update sessions set instructor_id = @bea", new { bea });

        using var taken = await owner.Post($"/api/assignments/{run["run"]!["id"]}/draft");

        Assert.Equal(1, (int)(await taken.Is(200))["leftAsTheyAre"]!);
        Assert.Equal(
            [bea],
            await app.Rows<long>(
                "select instructor_id from draft_sessions where session_id = @open",
                new { open }
            )
        );
    }

    [Theory]
    [InlineData("unstaffed", 0)]
    [InlineData("nobodyBooked", 1)]
    [InlineData("all", 2)]
    public async Task The_owner_says_what_may_change(string change, int changed)
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.Qualified("Ada Winterbourne");
        // Not qualified: whatever may change is taken from her.
        var other = await app.HasInstructor("Cara Undine");
        var booked = await app.HasSession(app.Today.PlusDays(2), instructor: other);
        await app.HasSession(app.Today.PlusDays(3), instructor: other);
        await app.HasSession(app.Today, "08:00", instructor: other);
        await app.HasBooking(booked, await app.HasClient());
        // So that there is something to do in each case.
        await app.HasSession(app.Today.PlusDays(4));

        var result = (await app.Assigned(owner, new { change }))["result"]!;

        Assert.Equal(changed + 1, result["changes"]!.AsArray().Count);
        // Those that may not change contradict her papers, and are said to.
        Assert.Equal(2 - changed, result["contradictions"]!.AsArray().Count);
    }

    [Fact]
    public async Task What_is_pinned_or_somebody_keeps_stays_and_the_reasons_are_told()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var ada = await app.Qualified("Ada Winterbourne");
        var first = await app.HasSession(app.Today.PlusDays(2));
        await app.HasSession(app.Today.PlusDays(2));

        var result = (
            await app.Assigned(
                owner,
                new { pins = new[] { new { sessionId = first, instructorId = ada } } }
            )
        )["result"]!;

        var gap = Assert.Single(result["unstaffed"]!.AsArray())!;
        Assert.Equal(
            "Nobody with the prenatal qualification is free on Wednesday 4 March 2026 at 18:00.",
            (string)gap["words"]!
        );
        var person = Assert.Single(gap["people"]!.AsArray())!;
        Assert.Equal("Ada Winterbourne", (string)person["name"]!);
        Assert.Contains("at once", (string)person["words"]![0]!, StringComparison.Ordinal);
        Assert.Equal(ada, (long)Assert.Single(result["changes"]!.AsArray())!["afterId"]!);
    }

    [Theory]
    [InlineData("""{"to":"2026-03-01"}""", 400, "bad-range")]
    [InlineData("""{"to":"2027-03-01"}""", 400, "bad-range")]
    [InlineData("""{"pins":[{"sessionId":999,"instructorId":null}]}""", 400, "no-such-session")]
    [InlineData("""{"keepOf":[999]}""", 400, "no-such-instructor")]
    [InlineData("""{"from":"2026-03-08"}""", 409, "nothing-may-change")]
    [InlineData("""{"seconds":0}""", 400, null)]
    public async Task What_cannot_be_asked_is_refused_by_name(
        string asked,
        int status,
        string? code
    )
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.HasSession(app.Today.PlusDays(2));

        using var answer = await owner.Post("/api/assignments", app.Asked(JsonNode.Parse(asked)!));

        Assert.Equal(code, (string?)(await answer.Is(status))["code"]);
        Assert.Equal(0, await app.Value<long>("select count(*) from assignment_runs"));
    }

    [Fact]
    public async Task One_is_at_it_at_a_time_and_after_a_stop_of_the_program_it_is_said_to_have_been_cut_off()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.HasSession(app.Today.PlusDays(2));
        var left = await app.HasAssignment("running");

        using var second = await owner.Post("/api/assignments", app.Asked(new JsonObject()));
        Assert.Equal("assignment-running", (string)(await second.Is(409))["code"]!);

        // The next start in the same folder.
        await using (StudioApp.In(app.Folder, app.Clock.GetCurrentInstant(), demo: false)) { }

        var run = await owner.Read($"/api/assignments/{left}");
        Assert.Equal("cutOff", (string)run["run"]!["status"]!);
        Assert.Null(run["result"]);
        Assert.Equal("finished", (string)(await app.Assigned(owner))["run"]!["status"]!);
    }

    [Fact]
    public async Task It_is_cancelled_or_runs_out_of_time_with_what_it_has_found_and_can_be_put_aside()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        foreach (var number in Enumerable.Range(1, 12))
            await app.Qualified($"Person {number}");
        var of = await app.HasClass();
        var rooms = new List<long>();
        for (var room = 0; room < 8; room++)
            rooms.Add(await app.HasRoom());
        for (var at = 0; at < 8 * 14 * 4; at++)
            await app.HasSession(
                app.Today.PlusDays(1 + (at % 14)),
                $"{8 + (at / 14 % 4 * 3):00}:{15 * (at % 3):00}",
                of,
                room: rooms[at / 56]
            );
        await app.Execute(
            "insert into teaching_wishes (instructor_id, kind, value, weight) select id, 'weekday', 1 + id % 7, 1 + id % 2 from instructors"
        );

        using var begun = await owner.Post(
            "/api/assignments",
            app.Asked(JsonNode.Parse("""{"to":"2026-03-20","seconds":300}""")!)
        );
        var id = (long)(await begun.Is(202))["run"]!["id"]!;
        using var cancelled = await owner.Send(HttpMethod.Delete, $"/api/assignments/{id}");
        await cancelled.Is(204);
        var run = await TermsOfATest.Ended(owner, id);

        Assert.Contains((string)run["run"]!["status"]!, new[] { "cancelled", "finished" });
        Assert.Equal(448, (int)run["result"]!["sessions"]!);
        using var aside = await owner.Send(HttpMethod.Delete, $"/api/assignments/{id}");
        await aside.Is(204);
        Assert.True((bool)(await owner.Read($"/api/assignments/{id}"))["run"]!["discarded"]!);
        using var taken = await owner.Post($"/api/assignments/{id}/draft");
        await taken.Is(409);
    }
}

internal static class TermsOfATest
{
    /// <summary>The week from today on, all of it free to change, with what else was asked.</summary>
    public static JsonObject Asked(this StudioApp app, JsonNode more)
    {
        var asked = new JsonObject
        {
            ["from"] = $"{app.Today:uuuu-MM-dd}",
            ["to"] = $"{app.Today.PlusDays(6):uuuu-MM-dd}",
            ["change"] = "all",
        };
        foreach (var (name, value) in more.AsObject())
            asked[name] = value?.DeepClone();
        return asked;
    }

    /// <summary>Asks, and waits for the end.</summary>
    public static async Task<JsonNode> Assigned(
        this StudioApp app,
        HttpClient owner,
        object? more = null
    )
    {
        using var begun = await owner.Post(
            "/api/assignments",
            app.Asked(System.Text.Json.JsonSerializer.SerializeToNode(more ?? new { })!)
        );
        return await Ended(owner, (long)(await begun.Is(202))["run"]!["id"]!);
    }

    /// <summary>Waits for the end; a minute is far too long.</summary>
    public static async Task<JsonNode> Ended(HttpClient owner, long run)
    {
        var waited = System.Diagnostics.Stopwatch.StartNew();
        while (waited.Elapsed.TotalSeconds < 60)
        {
            var now = await owner.Read($"/api/assignments/{run}");
            if ((string)now["run"]!["status"]! != "running")
                return now;
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        throw new TimeoutException("It is still at it after a minute.");
    }
}
