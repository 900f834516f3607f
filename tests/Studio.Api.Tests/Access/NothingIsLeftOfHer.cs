using System.Text.RegularExpressions;
using Studio.Api.Audit;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Access;

/// <summary>
/// After a loss: every GET route there is, asked as everybody below the owner, answers as it did before she ever came.
/// </summary>
public class NothingIsLeftOfHer
{
    [Fact]
    public async Task On_any_route_for_anybody_below_the_owner()
    {
        await using var app = await StudioApp.Empty();
        var studio = new Everything(app);
        await studio.Furnish();
        var walk = await Walk.Of(app);
        var looking = studio.Browsers.Keys.ToList();
        // Whoever walks leaves a trail, which grows with every walk.
        var addresses = walk.Addresses(studio.Places)
            .Where(a => a.Route != "/api/audit" && !a.Route.Contains("/record"))
            .Select(a => a.Address)
            .ToList();
        var before = await AskAll(studio, looking, addresses);
        var previews = await Previews(studio);

        var places = await studio.SheComes();
        var hers = walk.Addresses(places).Select(a => a.Address).Except(addresses).ToList();
        var marks = await Marks(app, studio.Her);
        foreach (var (who, least) in new[] { ("desk", 8), ("instructor", 3), ("reviewer", 4) })
        {
            var found = 0;
            foreach (var address in addresses.Concat(hers))
                found += marks.IsMatch(await Walk.Ask(studio.Browsers[who], address)) ? 1 : 0;
            Assert.True(found >= least, $"{who} sees her on {found} pages before it");
        }

        var herself = studio.Browsers["herself"];
        using (var loss = await herself.Post($"/api/clients/{studio.Her}/loss", new { }))
            await loss.Is(200);
        await studio.Nightly();

        var wrong = new List<string>();
        foreach (var ((who, address), was) in before)
        {
            var now = await Walk.Ask(studio.Browsers[who], address);
            if (now != was)
                wrong.Add($"{who} {address}\n  was {was}\n  is  {now}");
        }
        foreach (var who in looking)
        foreach (var address in hers)
            if (
                marks.Match(await Walk.Ask(studio.Browsers[who], address)) is { Success: true } mark
            )
                wrong.Add($"{who} {address} tells {mark.Value}");
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        Assert.Equal(previews, await Previews(studio));

        // To them she is nobody, in the very words.
        foreach (var who in looking)
        foreach (
            var path in new[] { "", "/sessions", "/bookings", "/datings", "/letters", "/screening" }
        )
            Assert.Equal(
                await Walk.Ask(studio.Browsers[who], $"/api/clients/999999{path}"),
                await Walk.Ask(studio.Browsers[who], $"/api/clients/{studio.Her}{path}")
            );
        // All of her own is still hers.
        foreach (
            var path in new[] { "", "/letters", "/screenings", "/notes", "/bookings", "/datings" }
        )
            Assert.StartsWith("200", await Walk.Ask(herself, $"/api/clients/{studio.Her}{path}"));
        Assert.StartsWith("200", await Walk.Ask(herself, $"/api/audit?client={studio.Her}"));
    }

    [Theory]
    [InlineData(Role.FrontDesk)]
    [InlineData(Role.Reviewer)]
    [InlineData(Role.Instructor)]
    [InlineData(Role.Client)]
    public async Task In_what_an_open_page_is_told(Role role)
    {
        await using var app = await StudioApp.Empty();
        var her = await app.HasClient();
        var other = await app.HasClient();
        var owner = await app.SignedInAs(Role.Owner);
        var browser = await app.SignedInAs(
            role,
            client: role == Role.Client ? other : null,
            instructor: role == Role.Instructor ? await app.HasInstructor() : null
        );
        using var stream = await browser.GetAsync(
            "/api/live",
            HttpCompletionOption.ResponseHeadersRead,
            TestContext.Current.CancellationToken
        );
        using var lines = new StreamReader(
            await stream.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken)
        );
        Assert.Contains("open", await Until(lines, "\"open\""));

        using (var loss = await owner.Post($"/api/clients/{her}/loss", new { }))
            await loss.Is(200);
        using (
            var change = await owner.Put(
                $"/api/clients/{her}",
                new { name = "Changed Since", phone = "1234567" }
            )
        )
            await change.Is(204);
        using (
            var change = await owner.Put(
                $"/api/clients/{other}",
                new { name = "Somebody Else", phone = "1234567" }
            )
        )
            await change.Is(204);
        // A last word that everybody hears.
        await app.HasSession(app.Today.PlusDays(1));
        using (var ran = await owner.Post("/api/jobs/flags/run"))
            await ran.Is(200);
        var told = await Until(lines, "\"flags\"");
        Assert.DoesNotMatch($"\"id\":{her}\\b", told.Replace(" ", ""));
    }

    [Fact]
    public async Task Though_the_owner_may_open_the_way_back()
    {
        await using var app = await StudioApp.Empty();
        var studio = new Everything(app);
        await studio.Furnish();
        await studio.SheComes();
        using (var loss = await studio.Owner.Post($"/api/clients/{studio.Her}/loss", new { }))
            await loss.Is(200);
        using (
            var desk = await studio
                .Browsers["desk"]
                .Post($"/api/clients/{studio.Her}/return", new { bornOn = app.Today })
        )
            await desk.Is(403);
        using (var nothing = await studio.Owner.Post($"/api/clients/{studio.Her}/return", new { }))
            await nothing.IsRefused(400, "dates-missing", "bornOn");

        app.Clock.Advance(Duration.FromDays(200));
        var due = app.Today.PlusDays(180);
        using (
            var back = await studio.Owner.Post(
                $"/api/clients/{studio.Her}/return",
                new { dating = new { stated = due } }
            )
        )
            await back.Is(200);
        using (
            var again = await studio.Owner.Post(
                $"/api/clients/{studio.Her}/return",
                new { bornOn = app.Today }
            )
        )
            await again.IsRefused(409, "not-ended");
        var card = await studio.Owner.Read($"/api/clients/{studio.Her}");
        Assert.Equal("pregnant", card.Text("phase"));
        Assert.Equal(due, Day(card["pregnancy"]!.Text("dueDate")));
        // Her papers are of another time: nothing can be booked before she has answered afresh and brought a letter.
        Assert.NotEqual("current", card["screening"]!.Text("status"));
        Assert.Equal("none", card["clearance"]!.Text("status"));
        // What was true only of that pregnancy has ended with it.
        var standing = card["factors"]!
            .AsArray()
            .Where(f => f!["to"] is null)
            .Select(f => f!.Text("code"))
            .ToList();
        Assert.DoesNotContain("showing", standing);
        Assert.DoesNotContain("placenta-praevia", standing);
        Assert.Contains("back-pain", standing);
        var form = await studio.Owner.Read($"/api/clients/{studio.Her}/screening");
        Assert.Null(form["draft"]);
        Assert.Contains("newPregnancy", form["askedBecause"]!.AsArray().Select(w => (string)w!));
        Assert.Equal(
            0,
            (await studio.Browsers["reviewer"].Read("/api/letters/waiting/count")).Number("letters")
        );
        var desks = await studio.Browsers["desk"].Read("/api/clients?find=xylia");
        Assert.Single(desks.AsArray());
        Assert.Equal(
            1,
            await app.Value<long>(
                "select count(*) from audit where client_id = @Her and kind = @kind",
                new { studio.Her, kind = AuditKinds.Return }
            )
        );
    }

    private static LocalDate Day(string text) =>
        NodaTime.Text.LocalDatePattern.Iso.Parse(text).Value;

    private static async Task<Dictionary<(string Who, string Address), string>> AskAll(
        Everything studio,
        IReadOnlyList<string> looking,
        IReadOnlyList<string> addresses
    )
    {
        var answers = new Dictionary<(string, string), string>();
        foreach (var who in looking)
        foreach (var address in addresses)
            answers[(who, address)] = await Walk.Ask(studio.Browsers[who], address);
        return answers;
    }

    // What her instructor is told of a plan before it is kept, and the owner of a policy: people are counted there.
    private static async Task<string> Previews(Everything studio)
    {
        var plan = new { items = new[] { new { movement = "leg-slides", minutes = 240 } } };
        var told = "";
        foreach (var session in new[] { studio.Begun, studio.Ahead })
        foreach (var what in new[] { "preview", "suit" })
        {
            using var answer = await studio
                .Browsers["instructor"]
                .Post($"/api/sessions/{session}/plan/{what}", plan);
            told += (await answer.Is(200)).ToJsonString();
        }
        using var policy = await studio.Owner.Post(
            "/api/policies/after-caesarean-days/preview",
            new { value = "70" }
        );
        return told + (await policy.Is(200)).ToJsonString();
    }

    private static async Task<Regex> Marks(StudioApp app, long her)
    {
        var (phone, email, called, whom, number) = (
            await app.Value<string>("select phone from clients where id = @her", new { her }),
            await app.Value<string>("select email from clients where id = @her", new { her }),
            await app.Value<string>("select called from clients where id = @her", new { her }),
            await app.Value<string>(
                "select emergency_name from clients where id = @her",
                new { her }
            ),
            await app.Value<string>(
                "select emergency_phone from clients where id = @her",
                new { her }
            )
        );
        return new Regex(
            string.Join(
                '|',
                new[] { "Quenby", called, phone, email, whom, number, "Zephyrine" }.Select(
                    Regex.Escape
                )
            ) + $"|\"clientId\":{her}\\b|/clients/{her}\\b",
            RegexOptions.IgnoreCase,
            TimeSpan.FromSeconds(5)
        );
    }

    private static async Task<string> Until(StreamReader lines, string word)
    {
        var told = "";
        while (!told.Contains(word, StringComparison.Ordinal))
            told +=
                await lines.ReadLineAsync(TestContext.Current.CancellationToken)
                ?? throw new EndOfStreamException(told);
        return told;
    }
}
