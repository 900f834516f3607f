using Studio.Api.Jobs;
using Studio.Api.Tests.Access;
using Studio.Api.Tests.Jobs;
using Studio.Api.Tests.Records;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Erasures;

/// <summary>A client with everything is erased where no retention holds anything.</summary>
public class NothingHasToBeKept
{
    // Entries of the audit and of erasures keep the moments at which something was done, and nothing else of hers.
    private static readonly string[] KeepMoments = ["audit", "erasures"];

    [Fact]
    public async Task Nothing_of_hers_stands_in_any_table_or_on_the_disk()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.KeepsNothing();
        var her = await HerWithEverything.In(app);
        Assert.Single(app.LetterFiles());
        Assert.All(
            her.Marks.Where(m => m.Value is "clients.name" or "due_dates.explanation"),
            m => Assert.Contains(m.Key, app.OnDisk(), StringComparison.Ordinal)
        );

        await owner.Erase(her.Client);

        var left = await app.EveryText();
        foreach (var (mark, place) in her.Marks)
            Assert.DoesNotContain(
                left,
                l =>
                    l.Text.Contains(mark, StringComparison.Ordinal)
                    && !(KeepMoments.Contains(l.Table) && place.StartsWith(l.Table))
            );
        var disk = app.OnDisk();
        Assert.All(
            her.Marks.Keys.Where(m => m.StartsWith("mark-")),
            m => Assert.DoesNotContain(m, disk, StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            left,
            l => l.Text.Contains(her.Email, StringComparison.OrdinalIgnoreCase)
        );
        Assert.Empty(app.LetterFiles());
        var check = await owner.Read("/api/audit/check");
        Assert.True((bool)check["whole"]!);
        Assert.Equal(
            "change erasure owner",
            await app.Value<string>(
                "select act || ' ' || kind || ' ' || seen_as from audit order by id desc limit 1"
            )
        );
    }

    [Fact]
    public async Task Her_seat_in_a_past_class_still_counts_and_points_to_nobody()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.KeepsNothing();
        var her = await HerWithEverything.In(app);
        var before = await owner.Read($"/api/sessions/{her.Session}");

        await owner.Erase(her.Client);

        var after = await owner.Read($"/api/sessions/{her.Session}");
        foreach (var count in (string[])["seats", "seatsTaken", "checkedIn", "waiting"])
            Assert.Equal((long?)before[count], (long?)after[count]);
        Assert.Equal((1, 1), ((int)after["seatsTaken"]!, (int)after["checkedIn"]!));
        Assert.Equal(
            1,
            await app.Value<long>(
                "select seats_taken from sessions where id = @Session",
                new { her.Session }
            )
        );
        Assert.DoesNotContain(
            "Erased client",
            (await owner.Read($"/api/sessions/{her.Session}/roster")).ToJsonString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Nobody_finds_her_on_any_page_and_no_night_brings_her_back()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var desk = await app.SignedInAs(Role.FrontDesk);
        await app.KeepsNothing();
        var her = await HerWithEverything.In(app);
        var name = her.Marks.Single(m => m.Value == "clients.search").Key;
        Assert.Single((await desk.Read($"/api/clients?find={name}")).AsArray());

        await owner.Erase(her.Client);
        foreach (var job in JobList.All)
            await app.ByHand(job.Name);

        var looked = 0;
        foreach (
            var route in Routes.All.Where(r =>
                r.Method == HttpMethod.Get && r.Path is not ("/api/live" or "/healthz")
            )
        )
        foreach (var browser in (HttpClient[])[owner, desk])
        {
            var path = route
                .Path.Replace("{clientId}", $"{her.Client}", StringComparison.Ordinal)
                .Replace("{sessionId}", $"{her.Session}", StringComparison.Ordinal)
                .Replace("{letterId}", "1", StringComparison.Ordinal);
            if (path.Contains('{', StringComparison.Ordinal))
                continue;
            using var answer = await browser.GetAsync(path, TestContext.Current.CancellationToken);
            var text = await answer.Content.ReadAsStringAsync(
                TestContext.Current.CancellationToken
            );
            Assert.All(
                her.Marks.Keys.Where(m => m.StartsWith("mark-")),
                m => Assert.DoesNotContain(m, text, StringComparison.Ordinal)
            );
            Assert.DoesNotContain("Erased client", text, StringComparison.Ordinal);
            if (route.Path.Contains("/clients/{clientId}", StringComparison.Ordinal))
                Assert.False(answer.IsSuccessStatusCode, path);
            looked++;
        }

        Assert.True(looked > 40, $"only {looked} routes were looked at");
        Assert.Equal(
            0,
            await app.Value<long>("select count(*) from flags where client_id is not null")
        );
    }

    [Fact]
    public async Task Her_account_is_closed_and_signed_out()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.KeepsNothing();
        var her = await HerWithEverything.In(app);
        await app.Execute(
            "update accounts set lockout_until = null where id = @Account",
            new { her.Account }
        );
        await (
            await app.Browser()
                .Post("/api/session", new { email = her.Email, password = StudioApp.Password })
        ).Is(200);

        await owner.Erase(her.Client);

        await (
            await app.Browser()
                .Post("/api/session", new { email = her.Email, password = StudioApp.Password })
        ).Is(401);
        using var page = await her.Browser.GetAsync(
            $"/api/clients/{her.Client}",
            TestContext.Current.CancellationToken
        );
        Assert.False(page.IsSuccessStatusCode);
        Assert.DoesNotContain(
            "erased",
            (await owner.Read("/api/accounts")).ToJsonString(),
            StringComparison.OrdinalIgnoreCase
        );
    }

    [Fact]
    public async Task Once_more_changes_nothing()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.KeepsNothing();
        var her = await HerWithEverything.In(app);
        var erasure = await owner.Erase(her.Client);
        var before = await app.EveryText();
        using var again = await owner.Post(
            $"/api/clients/{her.Client}/erasure",
            new { name = "Erased client", seen = "" }
        );
        Assert.Equal(erasure, (long)(await again.Is(200))["erasureId"]!);
        Assert.Equal(before, await app.EveryText());
    }

    [Fact]
    public async Task Somebody_who_teaches_as_well_keeps_the_account_for_that()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.KeepsNothing();
        var client = await app.HasClient();
        var teaches = await app.HasInstructor();
        var both = await app.HasAccount([Role.Client, Role.Instructor], client, teaches);
        await owner.Erase(client);
        var browser = await app.SignedInWith(both, StudioApp.Password);
        var session = await browser.Read("/api/session");
        Assert.DoesNotContain("client", session["roles"]!.ToJsonString(), StringComparison.Ordinal);
        Assert.Contains("instructor", session["roles"]!.ToJsonString(), StringComparison.Ordinal);
    }
}
