using Studio.Core.Accounts;

namespace Studio.Api.Tests.Catalogue;

/// <summary>Every rule, movement and source can be read, with where it comes from.</summary>
public class TheRulesAsTheyAreRead(SharedStudio studio)
{
    [Fact]
    public async Task Say_where_each_comes_from_and_what_is_from_memory()
    {
        var rules = (await studio.Owner.Read("/api/catalogue/rules")).AsArray();

        Assert.All(rules, r => Assert.NotEmpty(r!["source"]!.Text("cite")));
        Assert.Contains(rules, r => (bool)r!["source"]!["fromMemory"]!);
        var supine = rules.Single(r =>
            r!.Text("id") == "supine-from-14-weeks" && r!.Text("about") == "movements"
        )!;
        Assert.Equal("replaced", supine.Text("outcome"));
        Assert.Equal("From 14w 0d on", (string?)supine["when"]![0]);
    }

    [Fact]
    public async Task Name_the_sources_with_the_rules_that_rest_on_them()
    {
        var sources = (await studio.Owner.Read("/api/catalogue/sources")).AsArray();

        Assert.Equal(StudioApp.Book.Sources.Count, sources.Count);
        Assert.Contains(
            "supine-from-14-weeks",
            sources.Single(s => s!.Text("id") == "M01")!["rules"]!.AsArray().Select(r => (string)r!)
        );
    }

    [Fact]
    public async Task Say_of_every_published_row_which_rule_covers_it_or_why_none_does()
    {
        var rows = (await studio.Owner.Read("/api/catalogue/coverage")).AsArray();

        // 62, 40, 55 and 47 rows: tests/reference.
        Assert.Equal(204, rows.Count);
        Assert.All(
            rows,
            r => Assert.NotEqual(r!["rules"]!.AsArray().Count == 0, r.Text("whyNot").Length == 0)
        );
        Assert.All(rows, r => Assert.Empty(r!["gone"]!.AsArray()));
    }

    [Fact]
    public async Task Let_an_instructor_read_the_movements_with_what_touches_them()
    {
        var teacher = await studio.App.SignedInAs(
            Role.Instructor,
            instructor: await studio.App.HasInstructor()
        );
        var all = await teacher.Read("/api/catalogue/movements");
        var plank = all["movements"]!.AsArray().Single(m => m!.Text("code") == "front-plank")!;

        Assert.NotEmpty(plank["options"]!.AsArray());
        Assert.NotEmpty(plank["rules"]!.AsArray());
        var ids = all["rules"]!.AsArray().Select(r => r!.Text("id")).ToHashSet();
        Assert.All(plank["rules"]!.AsArray(), r => Assert.Contains((string)r!, ids));
    }

    [Fact]
    public async Task Are_downloaded_as_they_are()
    {
        using var file = await studio.Owner.GetAsync(
            "/api/catalogue/versions/0/files/stages.csv",
            TestContext.Current.CancellationToken
        );
        Assert.Equal(
            StudioApp.Own.Texts["stages.csv"],
            await file.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)
        );
        foreach (
            var path in new[]
            {
                "/api/catalogue/files/..%2Fstages.csv",
                "/api/catalogue/files/notes.csv",
                "/api/catalogue/versions/99/files/stages.csv",
            }
        )
        {
            using var missing = await studio.Owner.GetAsync(
                path,
                TestContext.Current.CancellationToken
            );
            await missing.Is(404);
        }
    }
}
