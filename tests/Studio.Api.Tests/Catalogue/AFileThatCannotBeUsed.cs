using Studio.Core.Accounts;

namespace Studio.Api.Tests.Catalogue;

/// <summary>What is wrong is said with file and line, all of it at once; what is in use is not taken away; nothing is kept.</summary>
public class AFileThatCannotBeUsed
{
    [Fact]
    public async Task Names_every_error_of_every_file_with_its_line()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var own = StudioApp.Own.Texts;
        var end = own[Rules.MovementRules].Split('\n').Length;
        var files = new
        {
            files = new[]
            {
                new
                {
                    name = Rules.MovementRules,
                    text = Rules.With(
                        Rules.NoMarch.Replace(
                            ",common-practice,",
                            ",nobody-said-so,",
                            StringComparison.Ordinal
                        )
                            + Rules.NoMarch.Replace(
                                "easy-march",
                                "no-such-move",
                                StringComparison.Ordinal
                            )
                    ),
                },
                new
                {
                    name = "factors.csv",
                    text = own["factors.csv"]
                        .Replace(
                            "showing,Belly shows,pregnancy,",
                            "showing,,sometimes,",
                            StringComparison.Ordinal
                        ),
                },
                new { name = "coverage.csv", text = own["coverage.csv"] + "a.csv,A1,,\n" },
            },
        };

        foreach (var dryRun in new[] { true, false })
        {
            using var answer = await owner.Post($"/api/imports/catalogue?dryRun={dryRun}", files);
            var report = await answer.Is(dryRun ? 200 : 422);
            var faults = report["faults"]!
                .AsArray()
                .Select(f => (f!.Text("file"), (int?)f!["line"]))
                .ToList();
            Assert.Contains(("factors.csv", 2), faults);
            Assert.Equal(2, faults.Count(f => f == ("factors.csv", 2)));
            Assert.Contains((Rules.MovementRules, end), faults);
            Assert.Contains((Rules.MovementRules, end + 1), faults);
            Assert.Contains(("coverage.csv", own["coverage.csv"].Split('\n').Length), faults);
            Assert.False((bool)report["canBeKept"]!);
            Assert.Null(report["version"]);
        }

        Assert.Equal(0, await app.Value<long>("select count(*) from catalogue_versions"));
        Assert.Equal(0, await app.Value<long>("select count(*) from catalogue_files"));
    }

    [Theory]
    [InlineData("factors.csv", "code;name;held_when\n", "semicolons")]
    [InlineData("factors.csv", "", "empty")]
    [InlineData("stages.csv", "", "empty")]
    [InlineData("factors.csv", "code,name\nsch\uFFFDn,x\n", "UTF-8")]
    [InlineData("movements.csv", "\"", "column")]
    public async Task Says_what_is_unusual_about_it(string file, string text, string word)
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);

        var report = await owner.Tries(Rules.Of(text, file));

        Assert.Contains(
            report["faults"]!.AsArray(),
            f => f!.Text("text").Contains(word, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task With_another_name_or_sent_twice_is_refused()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);

        using var unknown = await owner.Post("/api/imports/catalogue", Rules.Of("a", "rules.csv"));
        await unknown.IsRefused(400, "no-such-file");
        var file = new { name = "stages.csv", text = "code" };
        using var twice = await owner.Post(
            "/api/imports/catalogue",
            new { files = new[] { file, file } }
        );
        await twice.IsRefused(400, "file-twice");
    }

    [Fact]
    public async Task Does_not_take_away_what_is_in_use()
    {
        await using var app = await StudioApp.Empty();
        var (_, client, _) = await app.HasMarch();
        await app.HasFactor(client, "wrist-pain");
        await app.HasPolicy("effort-most", "7");
        var owner = await app.SignedInAs(Role.Owner);
        await app.Execute("update pregnancies set stage = 'second-trimester'");

        Assert.Equal(
            ["wrist-pain"],
            await Missing(
                "wrist-pain",
                "wrist-ache",
                "factors.csv",
                "questions.csv",
                "class_rules.csv",
                Rules.MovementRules
            )
        );
        Assert.Equal(
            ["easy-march"],
            await Missing("easy-march", "our-march", "movements.csv", Rules.MovementRules)
        );
        Assert.Equal(
            ["effort-most"],
            await Missing("effort-most,6,4..7", "effort-most,6,4..6", "policies.csv")
        );
        Assert.Equal(
            ["second-trimester"],
            await Missing(
                "second-trimester",
                "middle-months",
                "stages.csv",
                "class_rules.csv",
                Rules.MovementRules
            )
        );
        Assert.Equal(0, await app.Value<long>("select count(*) from catalogue_versions"));

        async Task<IEnumerable<string>> Missing(string from, string to, params string[] files)
        {
            var request = new
            {
                files = files.Select(name => new
                {
                    name,
                    text = StudioApp.Own.Texts[name].Replace(from, to, StringComparison.Ordinal),
                }),
            };
            using var answer = await owner.Post("/api/imports/catalogue", request);
            var report = await answer.Is(422);
            Assert.Empty(report["faults"]!.AsArray());
            return report["inUse"]!.AsArray().Select(u => u!.Text("code")).ToList();
        }
    }

    [Fact]
    public async Task May_drop_a_factor_nobody_holds_any_more()
    {
        await using var app = await StudioApp.Empty();
        await app.HasLocation();
        var client = await app.HasClient();
        await app.Execute(
            "insert into client_factors (client_id, code, from_on, to_on, entered_at) values (@client, 'wrist-pain', '2026-01-01', '2026-02-01', '2026-01-01T00:00:00.000Z')",
            new { client }
        );
        var owner = await app.SignedInAs(Role.Owner);
        var own = StudioApp.Own.Texts;

        var report = await owner.PutsInForce(
            new
            {
                files = new[]
                {
                    "factors.csv",
                    "questions.csv",
                    "class_rules.csv",
                    Rules.MovementRules,
                }.Select(name => new
                {
                    name,
                    text = own[name].Replace("wrist-pain", "wrist-ache", StringComparison.Ordinal),
                }),
            }
        );

        Assert.Equal(1, report.Number("version"));
        var card = await owner.Read($"/api/clients/{client}");
        Assert.Contains("wrist-pain", card.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_only_the_owners_to_send_and_its_preview_only_hers_to_read()
    {
        await using var app = await StudioApp.Empty();
        var (_, _, instructor) = await app.HasMarch();
        var files = Rules.Of(Rules.With(Rules.NoMarch));
        foreach (
            var browser in new[]
            {
                await app.SignedInAs(Role.Instructor, instructor: instructor),
                await app.SignedInAs(Role.FrontDesk),
            }
        )
        foreach (
            var (path, body) in new (string, object)[]
            {
                ("/api/imports/catalogue?dryRun=true", files),
                ("/api/catalogue/versions/0/return?dryRun=true", new { }),
                ("/api/policies/effort-most/preview", new { value = "5" }),
            }
        )
        {
            using var answer = await browser.Post(path, body);
            var told = await answer.Is(403);
            Assert.DoesNotContain("Perpetua", told.ToJsonString(), StringComparison.Ordinal);
        }
    }
}
