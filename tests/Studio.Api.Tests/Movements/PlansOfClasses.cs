using System.Text.Json.Nodes;
using Studio.Api.Data;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;

namespace Studio.Api.Tests.Movements;

/// <summary>Who changes the plan of a class, and what is kept of every change.</summary>
public class PlansOfClasses(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    [Fact]
    public async Task Every_change_is_a_version_and_the_same_again_is_none()
    {
        var cls = await _app.HasClass();
        var none = await studio.Owner.Read($"/api/classes/{cls}/plan");
        Assert.Equal(0, none.Number("version"));
        Assert.Empty(none["items"]!.AsArray());

        var first = await Saved(cls, 0, ("squat", 10), ("leg-slides", 20));
        Assert.Equal(1, first.Number("version"));
        Assert.Equal(1, (await Saved(cls, 1, ("squat", 10), ("leg-slides", 20))).Number("version"));
        var second = await Saved(cls, 1, ("leg-slides", 20), ("squat", 10));
        Assert.Equal(2, second.Number("version"));
        Assert.Equal([2, 1], second["versions"]!.AsArray().Select(v => v!.Number("version")));
        Assert.All(
            second["versions"]!.AsArray(),
            v => Assert.Equal("Somebody Testwold", v!.Text("madeBy"))
        );

        var old = await studio.Owner.Read($"/api/classes/{cls}/plan/versions/1");
        Assert.Equal(
            ["squat", "leg-slides"],
            old["items"]!.AsArray().Select(i => i!.Text("movement"))
        );
        using var missing = await studio.Owner.GetAsync(
            $"/api/classes/{cls}/plan/versions/3",
            TestContext.Current.CancellationToken
        );
        await missing.IsRefused(404, "no-such-version");
    }

    [Fact]
    public async Task What_somebody_else_changed_meanwhile_is_not_written_over()
    {
        var cls = await _app.HasClass();
        await Saved(cls, 0, ("squat", 10));
        await Saved(cls, 1, ("squat", 11));
        foreach (var based in new[] { 0, 1, 3 })
        {
            using var answer = await Save(studio.Owner, cls, based, ("squat", 12));
            var problem = await answer.IsRefused(409, "plan-changed");
            Assert.Contains("version 2", problem.Text("detail"), StringComparison.Ordinal);
        }
        var kept = await studio.Owner.Read($"/api/classes/{cls}/plan");
        Assert.Equal(2, kept.Number("version"));
        Assert.Equal(11, kept["items"]![0]!.Number("minutes"));
    }

    [Theory]
    [InlineData("prenatal", -300, 0, true, "the last day of her qualification")]
    [InlineData("prenatal", 0, 300, true, "its first day")]
    [InlineData("prenatal", -300, -1, false, "it ended yesterday")]
    [InlineData("prenatal", 1, 300, false, "it begins tomorrow")]
    [InlineData("postnatal", -300, 300, false, "another than the class asks for")]
    public async Task Instructors_with_the_qualification_today_change_it(
        string kind,
        int issued,
        int expires,
        bool may,
        string because
    )
    {
        var cls = await _app.HasClass(needs: "prenatal");
        var instructor = await _app.HasInstructor();
        await _app.HasQualification(
            instructor,
            _app.Today.PlusDays(issued),
            _app.Today.PlusDays(expires),
            kind
        );
        var her = await _app.SignedInAs(Role.Instructor, instructor: instructor);
        var seen = await her.Read($"/api/classes/{cls}/plan");
        Assert.True((bool)seen["mayChange"]! == may, because);
        Assert.Equal(may, seen.Text("whyNot").Length == 0);
        using var answer = await Save(her, cls, 0, ("squat", 10));
        if (may)
            await answer.Is(200);
        else
            await answer.IsRefused(403, "not-qualified");
        Assert.Equal(
            may ? 1 : 0,
            (await studio.Owner.Read($"/api/classes/{cls}/plan")).Number("version")
        );
    }

    [Theory]
    [InlineData("squat:10 squat:0", "items[1].minutes")]
    [InlineData("squat:241", "items[0].minutes")]
    [InlineData("squat:10 tea-and-cake:5", "items[1].movement")]
    [InlineData("", "items")]
    [InlineData("squat:30 squat:21", "items")]
    public async Task What_is_wrong_is_named_by_its_field_and_nothing_is_kept(
        string plan,
        string field
    )
    {
        var cls = await _app.HasClass(minutes: 50);
        var items = plan.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(i => i.Split(':'))
            .Select(i => (i[0], int.Parse(i[1])))
            .ToArray();
        using var answer = await Save(studio.Owner, cls, 0, items);
        var problem = await answer.Is(400);
        Assert.Equal([field], problem["errors"]!.AsObject().Select(e => e.Key));
        Assert.Equal(0, (await studio.Owner.Read($"/api/classes/{cls}/plan")).Number("version"));
    }

    [Fact]
    public async Task A_movement_that_nobody_does_in_a_stage_of_the_class_is_refused_and_for_one_session_only_shown()
    {
        await using var app = await StudioApp.Empty(book: TheStrictBook());
        var cls = await app.HasClass(stages: ["early-recovery"]);
        var owner = await app.SignedInAs(Role.Owner);
        using (var answer = await Save(owner, cls, 0, ("squat", 5), ("side-rest", 5)))
        {
            var problem = await answer.IsRefused(400, "left-out-for-everybody");
            Assert.NotNull(problem["errors"]!["items[1].movement"]);
            Assert.Contains("Rest on the side", problem.Text("detail"), StringComparison.Ordinal);
        }

        var session = await app.HasSession(app.Today.PlusDays(2), of: cls);
        var items = new[] { new { movement = "side-rest", minutes = 5 } };
        using var looked = await owner.Post($"/api/sessions/{session}/plan/preview", new { items });
        var nobody = Assert.Single((await looked.Is(200))["nobody"]!.AsArray())!;
        Assert.Equal(1, nobody.Number("position"));
        using var kept = await owner.Put(
            $"/api/sessions/{session}/plan",
            new { basedOn = 0, items }
        );
        await kept.Is(200);
    }

    internal static Task<HttpResponseMessage> Save(
        HttpClient browser,
        long cls,
        int basedOn,
        params (string Movement, int Minutes)[] items
    ) =>
        browser.Put(
            $"/api/classes/{cls}/plan",
            new { basedOn, items = items.Select(i => new { i.Movement, i.Minutes }) }
        );

    private async Task<JsonNode> Saved(
        long cls,
        int basedOn,
        params (string Movement, int Minutes)[] items
    )
    {
        using var answer = await Save(studio.Owner, cls, basedOn, items);
        return await answer.Is(200);
    }

    // A studio whose rules leave out rests for the first 60 days after any birth.
    private static RuleBook TheStrictBook() =>
        RuleBook.Parse(name => new StringReader(TextOf(name)));

    private static string TextOf(string name)
    {
        using var reader = new StreamReader(
            typeof(EmbeddedCatalogue).Assembly.GetManifestResourceStream($"catalogue.{name}")!
        );
        var text = reader.ReadToEnd();
        return name == "movement_rules.csv"
            ? text.TrimEnd('\n')
                + "\nno-rest,,,,,,,0,60,,,,side-rest,,,left-out,No rest.,no rest,common-practice,\n"
            : text;
    }
}
