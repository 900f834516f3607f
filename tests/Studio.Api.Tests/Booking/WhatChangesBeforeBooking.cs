using Studio.Api.Tests.Access;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Booking;

/// <summary>
/// The check value is common practice, no published source: front planks in the first trimester only, leg slides at every
/// stage.
/// </summary>
public class WhatChangesBeforeBooking
{
    [Fact]
    public async Task Is_told_to_her_in_her_words_and_to_the_owner()
    {
        await using var app = await StudioApp.Empty();
        var (session, client) = await Furnish(app);
        var herself = await app.SignedInAs(Role.Client, client: client);
        var owner = await app.SignedInAs(Role.Owner);
        foreach (var reader in new[] { herself, owner })
        {
            var read = await reader.Read($"/api/clients/{client}/sessions/{session}");
            Assert.Equal(session, read["choice"]!["session"]!.Number("id"));
            Assert.Equal("seat", read["choice"]!.Text("canBook"));
            var changes = read["changes"]!.AsArray();
            var plank = changes
                .SelectMany(c => c!["movements"]!.AsArray())
                .Single(m => m!.Text("name") == "Front plank")!;
            Assert.Equal("replaced", plank.Text("verdict"));
            Assert.NotEmpty(plank.Text("option"));
            Assert.All(changes, c => Assert.NotEmpty(c!["reasons"]!.AsArray()));
            // What changes is what is not as taught, no more and no less.
            var minutes = changes
                .SelectMany(c => c!["movements"]!.AsArray())
                .Sum(m => (int)m!["minutes"]!);
            var share = read["choice"]!["fit"]!["plan"]!;
            Assert.Equal((int)share["minutes"]! - (int)share["asTaught"]!, minutes);
            Assert.Equal(
                (int)share["changed"]!,
                changes.Sum(c => c!["movements"]!.AsArray().Count)
            );
        }
    }

    [Fact]
    public async Task Is_not_told_to_the_front_desk()
    {
        await using var app = await StudioApp.Empty();
        var (session, client) = await Furnish(app);
        var desk = await app.SignedInAs(Role.FrontDesk);
        var read = await desk.Read($"/api/clients/{client}/sessions/{session}");
        Assert.Empty(read["changes"]!.AsArray());
        Assert.Null(read["choice"]!["fit"]!["plan"]);
        HealthWords.All.AreNotIn(read, "one session");
        Assert.DoesNotContain("plank", read.ToJsonString(), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Is_told_together_where_the_reason_is_the_same()
    {
        await using var app = await StudioApp.Empty();
        var (session, client) = await Furnish(
            app,
            "front-plank",
            "squat",
            "bird-dog",
            "front-plank"
        );
        var herself = await app.SignedInAs(Role.Client, client: client);
        var read = await herself.Read($"/api/clients/{client}/sessions/{session}");
        var planks = read["changes"]!
            .AsArray()
            .Single(c => c!["movements"]!.AsArray().Any(m => m!.Text("name") == "Front plank"))!;
        Assert.Equal([1, 4], planks["movements"]!.AsArray().Select(m => (int)m!["position"]!));
    }

    [Fact]
    public async Task Is_nothing_where_the_class_does_not_suit_at_all()
    {
        await using var app = await StudioApp.Empty();
        var (session, _) = await Furnish(app);
        var born = await app.HasClient(born: app.Today.PlusDays(-10));
        await app.Execute(
            "delete from class_stages where stage like '%postnatal%' or stage = 'early-recovery'"
        );
        var herself = await app.SignedInAs(Role.Client, client: born);
        var read = await herself.Read($"/api/clients/{born}/sessions/{session}");
        Assert.Equal("no", read["choice"]!.Text("canBook"));
        Assert.NotEmpty(read["choice"]!["refusal"]!.Text("message"));
        Assert.Empty(read["changes"]!.AsArray());
    }

    [Fact]
    public async Task Of_a_session_that_is_not_there_is_refused()
    {
        await using var app = await StudioApp.Empty();
        var (_, client) = await Furnish(app);
        var herself = await app.SignedInAs(Role.Client, client: client);
        using var answer = await herself.GetAsync(
            $"/api/clients/{client}/sessions/999999",
            TestContext.Current.CancellationToken
        );
        await answer.IsRefused(404, "no-such-session");
    }

    // A class with a plan; she is 16w 0d on its date.
    private static async Task<(long Session, long Client)> Furnish(
        StudioApp app,
        params string[] movements
    )
    {
        await app.HasLocation();
        var cls = await app.HasClass();
        var on = app.Today.PlusDays(3);
        var session = await app.HasSession(on, of: cls);
        var plan = await app.Insert(
            "insert into class_plans (class_id, version, made_at) values (@cls, 1, @at)",
            new { cls, at = app.Clock.GetCurrentInstant() }
        );
        if (movements.Length == 0)
            movements = ["front-plank", "leg-slides"];
        for (var position = 1; position <= movements.Length; position++)
            await app.Execute(
                "insert into class_plan_items (plan_id, position, movement, minutes) values (@plan, @position, @movement, 5)",
                new
                {
                    plan,
                    position,
                    movement = movements[position - 1],
                }
            );
        var client = await app.HasClient(due: on.PlusDays(280 - 16 * 7));
        return (session, client);
    }
}
