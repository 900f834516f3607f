using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Rosters;

/// <summary>
/// The check values are common practice, no published source: front planks in the first trimester only and never with a
/// known abdominal separation; leg slides suit every stage, with separation most of all.
/// </summary>
public class APlannedSession
{
    private const string Plank = "front-plank";
    private const string Slides = "leg-slides";

    [Theory]
    [InlineData(
        97,
        false,
        true,
        "13w 6d on the session's date, the last day of the first trimester"
    )]
    [InlineData(98, false, false, "14w 0d on the session's date, the first day of the second")]
    [InlineData(70, true, false, "first trimester, and a known separation")]
    public async Task Says_what_each_person_does_on_its_own_date(
        int daysOld,
        bool separated,
        bool planks,
        string because
    )
    {
        await using var app = await StudioApp.Empty();
        var (session, _, client, instructor) = await Furnish(
            app,
            daysOld,
            separated,
            shares: false
        );
        var teacher = await app.SignedInAs(Role.Instructor, instructor: instructor);
        var roster = await teacher.Read($"/api/sessions/{session}/roster");

        Assert.Equal([Plank, Slides], roster["plan"]!.AsArray().Select(p => p!.Text("code")));
        var person = roster["people"]!.AsArray().Single(p => p!.Number("clientId") == client)!;
        var verdicts = person["movements"]!.AsArray().Select(m => m!.Text("verdict")).ToList();
        Assert.True(
            planks == (verdicts[0] is "asTaught" or "adapted"),
            $"{verdicts[0]}: {because}"
        );
        Assert.NotEqual("leftOut", verdicts[1]);
        if (!planks)
            Assert.NotEmpty(person["movements"]![0]!.Text("instruction"));
    }

    [Fact]
    public async Task Names_no_condition_to_an_instructor_without_her_leave_and_nothing_to_the_desk()
    {
        await using var app = await StudioApp.Empty();
        var (session, _, _, instructor) = await Furnish(app, 70, separated: true, shares: false);
        var teacher = await app.SignedInAs(Role.Instructor, instructor: instructor);
        var desk = await app.SignedInAs(Role.FrontDesk);

        var seen = (await teacher.Read($"/api/sessions/{session}/roster")).ToJsonString();
        var factor = StudioApp.Book.FactorOf("separation-now")!;
        Assert.DoesNotContain(factor.Code, seen, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(factor.Name, seen, StringComparison.OrdinalIgnoreCase);

        var atDesk = await desk.Read($"/api/sessions/{session}/roster");
        Assert.Empty(atDesk["plan"]!.AsArray());
        Assert.All(atDesk["people"]!.AsArray(), p => Assert.Empty(p!["movements"]!.AsArray()));
    }

    [Fact]
    public async Task Tells_her_how_much_is_as_taught()
    {
        await using var app = await StudioApp.Empty();
        var (session, _, client, _) = await Furnish(app, 98, separated: false, shares: false);
        var her = await app.SignedInAs(Role.Client, client: client);
        var choice = (await her.Read($"/api/clients/{client}/sessions"))
            .AsArray()
            .Single(c => c!["session"]!.Number("id") == session)!;
        var plan = choice["fit"]!["plan"]!;
        Assert.Equal(50, (int)plan["minutes"]!);
        Assert.Equal(
            50,
            new[] { "asTaught", "adapted", "replaced", "leftOut" }.Sum(part => (int)plan[part]!)
        );
        Assert.True((int)plan["asTaught"]! < 50);
    }

    [Fact]
    public async Task What_if_answers_for_nobody_in_particular()
    {
        await using var app = await StudioApp.Empty();
        var (_, cls, _, instructor) = await Furnish(app, 70, separated: false, shares: false);
        var teacher = await app.SignedInAs(Role.Instructor, instructor: instructor);
        var before = await Ask(new { stage = "first-trimester", planId = cls });
        var after = await Ask(
            new
            {
                stage = "first-trimester",
                factors = new[] { "separation-now" },
                planId = cls,
            }
        );
        string[] planks = ["asTaught", "adapted"];
        Assert.Contains(before["movements"]![0]!.Text("verdict"), planks);
        Assert.DoesNotContain(after["movements"]![0]!.Text("verdict"), planks);
        Assert.NotEmpty(after["movements"]![0]!["reasons"]!.AsArray());

        async Task<JsonNode> Ask(object question)
        {
            using var answer = await teacher.Post("/api/what-if", question);
            return await answer.Is(200);
        }
    }

    private static async Task<(long Session, long Class, long Client, long Instructor)> Furnish(
        StudioApp app,
        int daysOld,
        bool separated,
        bool shares
    )
    {
        await app.HasLocation();
        var instructor = await app.HasInstructor();
        var cls = await app.HasClass();
        var on = app.Today.PlusDays(3);
        var session = await app.HasSession(on, of: cls, instructor: instructor);
        await app.HasPlan(cls, (Plank, 25), (Slides, 25));
        var client = await app.HasClient(due: on.PlusDays(280 - daysOld), shares: shares);
        if (separated)
            await app.HasFactor(client, "separation-now");
        await app.HasBooking(session, client);
        return (session, cls, client, instructor);
    }
}
