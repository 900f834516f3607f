using System.Text.Json.Nodes;
using Studio.Api.Data;
using Studio.Api.Records;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Records;

/// <summary>All that is held about a client, as a page and as a file.</summary>
public class WhatIsGivenToHer
{
    [Fact]
    public async Task Comes_from_every_table_that_leads_to_a_client_or_the_table_is_named_with_a_reason()
    {
        await using var app = await StudioApp.Empty();
        var tables = await app.Rows<string>(
            "select name from sqlite_master where type = 'table' and name not like 'sqlite_%' and name not like 'Schema%'"
        );
        var keys = new List<(string Table, string To, string Column)>();
        foreach (var table in tables)
        {
            foreach (
                var key in await app.Rows<Key>(
                    $"select \"table\" as \"To\", \"from\" as Column from pragma_foreign_key_list('{table}')"
                )
            )
                keys.Add((table, key.To, key.Column));
            // A number without a foreign key leads to her as well.
            foreach (var column in await HerWithEverything.Columns(app, table))
                if (column.Name is "client_id")
                    keys.Add((table, "clients", column.Name));
                else if (column.Name is "account_id")
                    keys.Add((table, "accounts", column.Name));
        }

        // Who entered a row is no way to a client: her own account leads to her by account_id alone.
        keys.RemoveAll(k => k.To == "accounts" && k.Column != "account_id");
        // A session, an instructor or a place is everybody's.
        var hers = new HashSet<string>(StringComparer.Ordinal) { "clients", "accounts" };
        while (true)
        {
            var more = keys.Where(k => hers.Contains(k.To) && k.To != "instructors")
                .Select(k => k.Table)
                .Where(t => !hers.Contains(t))
                .ToList();
            if (more.Count == 0)
                break;
            hers.UnionWith(more);
        }

        Assert.Equal(
            hers.Order(StringComparer.Ordinal),
            HeldTables
                .All.Select(t => t.Name)
                .Concat(HeldTables.NotGiven.Keys)
                .Order(StringComparer.Ordinal)
        );
        Assert.All(HeldTables.NotGiven.Values, reason => Assert.NotEmpty(reason));
    }

    [Fact]
    public async Task Holds_every_mark_put_into_any_column_and_every_value_that_stands_in_the_tables()
    {
        await using var app = await StudioApp.Empty();
        await app.HasAccount([Role.Owner]);
        var her = await HerWithEverything.In(app);

        var file = await her.Browser.Read($"/api/clients/{her.Client}/record/file");
        var text = file.ToJsonString();
        Assert.All(
            her.Marks.Where(m => !IsLeftOut(m.Value)),
            mark =>
                Assert.True(
                    text.Contains(mark.Key, StringComparison.Ordinal),
                    $"{mark.Value}: {mark.Key}"
                )
        );
        Assert.All(
            her.Marks.Where(m => IsLeftOut(m.Value)),
            mark => Assert.DoesNotContain($"\"{mark.Key}\"", text, StringComparison.Ordinal)
        );
        Assert.DoesNotContain(Seal.Mark, text, StringComparison.Ordinal);

        var empty = new List<string>();
        foreach (var table in HeldTables.All)
        {
            var rows = file[HeldRows.Camel(table.Name)]!.AsArray();
            Assert.True(rows.Count > 0, $"{table.Name} has no row of hers");
            foreach (var column in await HerWithEverything.Columns(app, table.Name))
                if (
                    !HeldTables.ColumnsNotGiven.ContainsKey((table.Name, column.Name))
                    && column.Name != "client_id"
                    && !rows.Any(r => r![HeldRows.Camel(column.Name)] is not null)
                )
                    empty.Add($"{table.Name}.{column.Name}");
        }

        // Only an erasure fills these, and a message to an instructor.
        Assert.Equal(
            [
                "clients.erased_at",
                "accounts.closed_at",
                "messages.instructor_id",
                "unwanted_messages.instructor_id",
                "erasures.done_at",
                "erasures.done_by",
                "erasures.entries",
                "erasures.files",
            ],
            empty
        );
    }

    [Fact]
    public async Task Says_in_words_on_the_page_what_stands_in_the_file()
    {
        await using var app = await StudioApp.Empty();
        await app.HasAccount([Role.Owner]);
        var her = await HerWithEverything.In(app);

        var page = await her.Browser.Read($"/api/clients/{her.Client}/record");
        var text = page.ToJsonString();
        Assert.Equal("client-record/1", (string?)page["format"]);
        Assert.All(
            her.Marks.Where(m =>
                !IsLeftOut(m.Value)
                && m.Key.StartsWith("mark-", StringComparison.Ordinal)
                // What only ties rows together is not told.
                && m.Value
                    is not (
                        "flags.subject"
                        or "flags.kind"
                        or "messages.about"
                        or "messages.claimed_at"
                        or "client_factors.code"
                        or "bookings.promoted_at"
                    )
            ),
            mark =>
                Assert.True(
                    text.Contains(mark.Key, StringComparison.OrdinalIgnoreCase),
                    $"{mark.Value}: {mark.Key}"
                )
        );
        var titles = page["sections"]!.AsArray().Select(s => (string)s!["code"]!).ToList();
        Assert.Equal(HeldLabels.Sections.Select(s => s.Code), titles);
        Assert.Contains("Leave out: ", text, StringComparison.Ordinal);
        Assert.Single(
            page["sections"]!.AsArray().Single(s => (string?)s!["code"] == "letters")![
                "entries"
            ]!.AsArray(),
            e => e!["letterId"] is not null
        );
    }

    [Fact]
    public async Task Is_documented_and_versioned_with_iso_days_and_camel_case_keys()
    {
        await using var app = await StudioApp.Empty();
        await app.HasAccount([Role.Owner]);
        var her = await HerWithEverything.In(app);
        using var answer = await her.Browser.GetAsync(
            $"/api/clients/{her.Client}/record/file",
            TestContext.Current.CancellationToken
        );
        var file = await answer.Is(200);
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Equal("record-2026-03-02.json", answer.Content.Headers.ContentDisposition.FileName);
        Assert.Equal("client-record/1", (string?)file["format"]);
        Assert.Equal("2026-03-02T09:00:00Z", (string?)file["made"]);
        foreach (var (key, value) in file.AsObject().Where(p => p.Value is JsonArray))
        {
            Assert.NotEmpty((string)file["about"]![key]!);
            foreach (var row in value!.AsArray())
                Assert.All(row!.AsObject(), p => Assert.Matches("^[a-z][A-Za-z0-9]*$", p.Key));
        }
    }

    [Fact]
    public async Task Is_read_by_her_and_the_owner_alone_also_after_a_loss_and_that_is_written_down()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var desk = await app.SignedInAs(Role.FrontDesk);
        var reviewer = await app.SignedInAs([Role.FrontDesk, Role.Reviewer]);
        var lost = await app.HasClient(ended: app.Today.PlusDays(-3));
        var she = await app.SignedInAs(Role.Client, client: lost);
        var another = await app.SignedInAs(Role.Client, client: await app.HasClient());
        foreach (var path in (string[])["record", "record/file"])
        {
            await owner.Read($"/api/clients/{lost}/{path}");
            await she.Read($"/api/clients/{lost}/{path}");
            foreach (
                var (browser, status) in new[] { (desk, 403), (reviewer, 403), (another, 404) }
            )
                await (
                    await browser.GetAsync(
                        $"/api/clients/{lost}/{path}",
                        TestContext.Current.CancellationToken
                    )
                ).Is(status);
        }

        var trail = (await owner.Read($"/api/audit?client={lost}")).AsArray();
        Assert.Equal(
            ["herself", "owner", "herself", "owner"],
            trail.Where(e => (string?)e!["kind"] == "export").Select(e => (string)e!["seenAs"]!)
        );
    }

    [Fact]
    public async Task Is_not_broken_by_a_name_that_looks_like_a_seal()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var her = await app.HasClient("sealed:anything Testwold");
        Assert.Equal(
            "sealed:anything Testwold",
            (string?)(await owner.Read($"/api/clients/{her}/record/file"))["clients"]![0]!["name"]
        );
    }

    private static bool IsLeftOut(string place) =>
        place.Split('.') is [var table, var column]
        && HeldTables.ColumnsNotGiven.ContainsKey((table, column));

    private sealed record Key
    {
        public string To { get; init; } = "";
        public string Column { get; init; } = "";
    }
}
