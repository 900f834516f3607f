using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Catalogue;
using Studio.Api.Data;
using Studio.Api.Tests.Booking;
using Studio.Api.Tests.Jobs;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;

namespace Studio.Api.Tests.Catalogue;

/// <summary>An owner changes a rule by importing the file with another row in it.</summary>
public class ARuleImported
{
    [Fact]
    public async Task Is_gone_by_everywhere_at_once()
    {
        await using var app = await StudioApp.Empty();
        var (session, client, instructor) = await app.HasMarch();
        var owner = await app.SignedInAs(Role.Owner);
        var her = await app.SignedInAs(Role.Client, client: client);
        var teacher = await app.SignedInAs(Role.Instructor, instructor: instructor);
        Assert.Equal("suitable", await her.VerdictOf(client, session));

        var report = await owner.PutsInForce(Rules.Of(Rules.With(Rules.NoMarch)));

        Assert.Equal(1, report.Number("version"));
        Assert.Equal("notSuitable", await her.VerdictOf(client, session));
        var roster = await teacher.Read($"/api/sessions/{session}/roster");
        Assert.Equal("leftOut", roster["people"]![0]!["movements"]![0]!.Text("verdict"));
        Assert.True(await Flagged(app, client));
        Assert.Contains(
            (await owner.Read("/api/catalogue/rules")).AsArray(),
            r => r!.Text("id") == "ours-no-march"
        );
        using var file = await owner.GetAsync(
            $"/api/catalogue/files/{Rules.MovementRules}",
            TestContext.Current.CancellationToken
        );
        Assert.EndsWith(
            Rules.NoMarch,
            await file.Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
        using var booking = await her.Book(
            await app.HasSession(
                app.Today.PlusDays(4),
                of: await app.Value<long>("select id from classes where name = 'Marching'")
            ),
            client
        );
        await booking.IsRefused(403, "does-not-suit");

        await app.Sleeps();
        Assert.True(await Flagged(app, client), "the night goes by the new rule");
    }

    [Fact]
    public async Task Is_still_in_force_after_a_restart_and_gone_when_it_is_gone_back_on()
    {
        await using var app = await StudioApp.Empty();
        var (session, client, _) = await app.HasMarch();
        var owner = await app.SignedInAs(Role.Owner);
        await owner.PutsInForce(Rules.Of(Rules.With(Rules.NoMarch)));
        var held = app.Services.GetRequiredService<CatalogueInForce>();

        held.Put(held.Own);
        await app.With<CatalogueStart, bool>(Starts);
        Assert.Equal(
            (1, "notSuitable"),
            (held.Current.Number, await owner.VerdictOf(client, session))
        );

        using var tried = await owner.Post("/api/catalogue/versions/0/return?dryRun=true", new { });
        Assert.Equal(1, (await tried.Is(200))["bookings"]!.Number("milder"));
        using var back = await owner.Post(
            "/api/catalogue/versions/0/return",
            new { why = "Too strict." }
        );
        Assert.Equal(2, (await back.Is(200)).Number("version"));
        Assert.Equal("suitable", await owner.VerdictOf(client, session));
        Assert.False(await Flagged(app, client));

        using var again = await owner.Post("/api/catalogue/versions/1/return", new { });
        Assert.Equal(3, (await again.Is(200)).Number("version"));
        Assert.Equal("notSuitable", await owner.VerdictOf(client, session));
        var list = await owner.Read("/api/catalogue/versions");
        Assert.Equal((3, 1), (list.Number("inForce"), list.Number("rowsNotAsOwn")));
        Assert.Equal(
            [(3, true, 1L), (2, false, null), (1, false, null), (0, false, null)],
            list["versions"]!
                .AsArray()
                .Select(v => ((int)v!.Number("number"), (bool)v!["inForce"]!, (long?)v!["backTo"]))
        );
        Assert.Equal("Too strict.", list["versions"]![1]!.Text("why"));
    }

    [Fact]
    public async Task Is_told_beforehand_with_everybody_it_concerns_and_nothing_is_kept()
    {
        await using var app = await StudioApp.Empty();
        var (session, client, _) = await app.HasMarch();
        await app.HasBooking(session, await app.HasClient("Odile Testwold"), "waiting");
        var owner = await app.SignedInAs(Role.Owner);
        var before = await Everything(app);

        var report = await owner.Tries(Rules.Of(Rules.With(Rules.NoMarch)));

        Assert.True((bool)report["canBeKept"]!);
        Assert.Null(report["version"]);
        Assert.Equal([Rules.MovementRules], report["files"]!.AsArray().Select(f => (string)f!));
        var row = Assert.Single(report["rows"]!.AsArray())!;
        Assert.Equal(("ours-no-march", "added"), (row.Text("key"), row.Text("kind")));
        var bookings = report["bookings"]!;
        Assert.Equal(
            (2, 2, 0, 0),
            (
                bookings.Number("judged"),
                bookings.Number("stricter"),
                bookings.Number("milder"),
                bookings.Number("movementsOnly")
            )
        );
        Assert.Equal(
            [
                ("Perpetua Testwold", "booked", "suitable", "notSuitable"),
                ("Odile Testwold", "waiting", "suitable", "notSuitable"),
            ],
            bookings["bookings"]!
                .AsArray()
                .Select(b => (b!.Text("client"), b!.Text("status"), b!.Text("from"), b!.Text("to")))
        );
        Assert.All(
            bookings["bookings"]!.AsArray(),
            b =>
            {
                Assert.Equal(session, b!.Number("sessionId"));
                Assert.Equal("leftOut", b!["movements"]![0]!.Text("to"));
                Assert.NotEmpty(b.Text("because"));
            }
        );
        Assert.NotEmpty(report["mind"]!.AsArray());
        Assert.Equal(before, await Everything(app));
        Assert.Equal("suitable", await owner.VerdictOf(client, session));
    }

    [Fact]
    public async Task Made_from_rules_that_are_no_longer_in_force_is_refused()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await owner.PutsInForce(Rules.Of(Rules.With(Rules.NoMarch), basedOn: 0));

        using var late = await owner.Post(
            "/api/imports/catalogue",
            Rules.Of(
                Rules.With(Rules.NoMarch.Replace("ours", "mine", StringComparison.Ordinal)),
                basedOn: 0
            )
        );
        await late.IsRefused(409, "catalogue-moved-on");
        using var same = await owner.Post(
            "/api/imports/catalogue",
            Rules.Of(Rules.With(Rules.NoMarch))
        );
        await same.IsRefused(409, "nothing-changes");
        Assert.Equal(1, await app.Value<long>("select count(*) from catalogue_versions"));
    }

    [Fact]
    public async Task While_others_book_leaves_nobody_booked_by_the_old_rules()
    {
        await using var app = await StudioApp.Empty();
        var (session, _, _) = await app.HasMarch();
        var owner = await app.SignedInAs(Role.Owner);
        var people = new List<(HttpClient Browser, long Client)>();
        for (var i = 0; i < 8; i++)
        {
            var client = await app.HasClient();
            people.Add((await app.SignedInAs(Role.Client, client: client), client));
        }

        var booking = people.Select(p => p.Browser.Book(session, p.Client)).ToList();
        var importing = owner.Post("/api/imports/catalogue", Rules.Of(Rules.With(Rules.NoMarch)));
        var late = people.Select(p => p.Browser.Book(session, p.Client)).ToList();
        using var put = await importing;
        await put.Is(200);

        foreach (var asked in booking.Concat(late))
        {
            using var answer = await asked;
            // Booked before the change, seen twice, refused by the new rules, or asked to do it again.
            Assert.Contains((int)answer.StatusCode, new[] { 201, 403, 409 });
        }

        // Whoever got a seat got it before the version was made: afterwards the rules say no, and her flag stands.
        var seated = await app.Rows<long>(
            "select client_id from bookings where session_id = @session and status = 'booked'",
            new { session }
        );
        foreach (var client in seated)
            Assert.True(await Flagged(app, client));
        Assert.Empty(await app.BrokenPromises());
    }

    [Fact]
    public async Task While_a_booking_waits_for_its_turn_has_it_asked_again()
    {
        await using var app = await StudioApp.Empty();
        var (session, _, _) = await app.HasMarch();
        var client = await app.HasClient();
        var her = await app.SignedInAs(Role.Client, client: client);
        var database = app.Services.GetRequiredService<Database>();

        Task<HttpResponseMessage> waiting;
        await using (var write = await database.BeginWriteAsync())
        {
            // She is given the book of this moment, and then waits behind this write.
            waiting = her.Book(session, client);
            await Task.Delay(1500, TestContext.Current.CancellationToken);
            var texts = StudioApp.Own.Texts.With([
                KeyValuePair.Create(Rules.MovementRules, Rules.With(Rules.NoMarch)),
            ]);
            var number = await CatalogueStore.AddAsync(
                write,
                texts,
                null,
                "",
                app.Clock.GetCurrentInstant(),
                null
            );
            write.GoBy(CatalogueVersion.Read(number, texts));
            await write.CommitAsync();
        }

        using var answer = await waiting;
        await answer.IsRefused(409, "rules-changed");
        using var again = await her.Book(session, client);
        await again.IsRefused(403, "does-not-suit");
        Assert.Equal(
            0,
            await app.Value<long>(
                "select count(*) from bookings where client_id = @client",
                new { client }
            )
        );
    }

    [Fact]
    public async Task Moves_a_stage_boundary_for_everybody()
    {
        await using var app = await StudioApp.Empty();
        // 13w 3d today: the first trimester by the program's own boundary, the second once it begins at 13w 0d.
        var client = await app.HasClient(due: app.Today.PlusDays(280 - 94));
        var owner = await app.SignedInAs(Role.Owner);
        await app.Sleeps(0);
        Assert.Equal("first-trimester", await Stage(app, client));

        await owner.PutsInForce(
            Rules.Of(
                StudioApp
                    .Own.Texts["stages.csv"]
                    .Replace("pregnancy,0,97,", "pregnancy,0,90,", StringComparison.Ordinal)
                    .Replace("pregnancy,98,195,", "pregnancy,91,195,", StringComparison.Ordinal),
                "stages.csv"
            )
        );

        Assert.Equal("second-trimester", await Stage(app, client));
        Assert.Equal(
            91,
            await app.Value<long>("select from_day from stages where code = 'second-trimester'")
        );
        Assert.Equal(
            app.Today.PlusDays(-3),
            await app.Value<LocalDate>(
                "select on_date from stage_changes c join pregnancies p on p.id = c.pregnancy_id where p.client_id = @client and c.stage = 'second-trimester'",
                new { client }
            )
        );
        Assert.Equal(6, (await owner.Read("/api/stages")).AsArray().Count);
    }

    [Fact]
    public async Task That_is_damaged_in_the_tables_keeps_the_studio_closed_and_says_how_to_go_back()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await owner.PutsInForce(Rules.Of(Rules.With(Rules.NoMarch)));
        var two = await app.Insert(
            "insert into catalogue_versions (made_at, why) values (@at, '')",
            new { at = app.Clock.GetCurrentInstant() }
        );
        await app.Execute(
            "insert into catalogue_files (version_id, name, text) values (@two, 'movement_rules.csv', @text)",
            new { two, text = Rules.With("one,,\ntwo,,\n") }
        );

        var closed = await Assert.ThrowsAsync<CatalogueException>(() =>
            app.With<CatalogueStart, bool>(Starts)
        );
        var line = StudioApp.Own.Texts[Rules.MovementRules].Split('\n').Length;
        Assert.Equal(3, closed.Errors.Count);
        Assert.StartsWith(
            $"movement_rules.csv line {line}: ",
            closed.Errors[0],
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            $"movement_rules.csv line {line + 1}: ",
            closed.Errors[1],
            StringComparison.Ordinal
        );
        Assert.Contains("Studio__Catalogue=own", closed.Errors[2], StringComparison.Ordinal);

        app.Services.GetRequiredService<Microsoft.Extensions.Configuration.IConfiguration>()[
            "Studio:Catalogue"
        ] = "1";
        await app.With<CatalogueStart, bool>(Starts);
        await app.With<CatalogueStart, bool>(Starts);
        Assert.Equal(3, app.Services.GetRequiredService<CatalogueInForce>().Current.Number);
        Assert.Equal(
            1,
            await app.Value<long>("select back_to from catalogue_versions where id = 3")
        );
        Assert.Equal(3, await app.Value<long>("select count(*) from catalogue_versions"));
    }

    private static async Task<bool> Starts(CatalogueStart start)
    {
        await start.RunAsync();
        return true;
    }

    private static async Task<bool> Flagged(StudioApp app, long client) =>
        await app.Value<long>(
            "select count(*) from flags where client_id = @client and closed_at is null and session_id is not null",
            new { client }
        ) > 0;

    private static Task<string> Stage(StudioApp app, long client) =>
        app.Value<string>(
            "select stage from pregnancies where client_id = @client",
            new { client }
        );

    private static async Task<string> Everything(StudioApp app)
    {
        var tables = await app.Rows<string>(
            "select name from sqlite_master where type = 'table' and name not like 'sqlite%' order by name"
        );
        return await app.RowsOf([.. tables.Select(t => $"select * from \"{t}\"")]);
    }
}
