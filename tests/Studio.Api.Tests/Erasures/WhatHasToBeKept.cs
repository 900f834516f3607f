using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Api.Tests.Jobs;
using Studio.Api.Tests.Records;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Erasures;

/// <summary>What the studio's policies keep for a time is set apart, and goes once its last day has passed.</summary>
public class WhatHasToBeKept
{
    [Fact]
    public async Task Is_shown_first_with_its_last_day_and_why()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var client = await app.HasClient();
        await app.HasBooking(await app.HasSession(app.Today.PlusDays(-2)), client);
        await app.HasBooking(await app.HasSession(app.Today.PlusDays(2)), client);
        var plan = await owner.Read($"/api/clients/{client}/erasure");
        Assert.Equal(
            [("health", "2036-02-28"), ("contact", "2029-02-28")],
            plan["stays"]!.AsArray().Select(s => ((string)s!["part"]!, (string)s["lastDay"]!))
        );
        Assert.Contains("10 years", (string)plan["stays"]![0]!["why"]!);
        Assert.Equal(1, (int)plan["released"]!);
        Assert.Contains(plan["goes"]!.AsArray(), g => (string?)g!["title"] == "Emergency contact");
        // A warning sign counts from its own day.
        await app.HasHold(client);
        plan = await owner.Read($"/api/clients/{client}/erasure");
        Assert.Equal(
            [("health", "2036-02-28"), ("incidents", "2036-03-02"), ("contact", "2029-02-28")],
            plan["stays"]!.AsArray().Select(s => ((string)s!["part"]!, (string)s["lastDay"]!))
        );
    }

    [Fact]
    public async Task Is_read_by_the_owner_alone_and_nobody_finds_it_elsewhere()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var desk = await app.SignedInAs(Role.FrontDesk);
        var her = await HerWithEverything.In(app);
        var erasure = await owner.Erase(her.Client);

        var kept = (await owner.Read($"/api/erasures/{erasure}/kept")).ToJsonString();
        foreach (
            var place in (string[])
                [
                    "due_dates.explanation",
                    "class_note_versions.text",
                    "clients.name",
                    "clients.phone",
                    "letters.issued_by",
                ]
        )
            Assert.Contains(her.MarkIn(place), kept, StringComparison.Ordinal);
        foreach (
            var place in (string[])
                [
                    // Longer ago than the studio keeps it.
                    "incidents.happened",
                    "clients.emergency_name",
                    "accounts.name",
                    "screening_drafts.answers",
                    "flags.for_desk",
                    "moves.reason",
                ]
        )
            Assert.DoesNotContain(her.MarkIn(place), kept, StringComparison.Ordinal);
        var letter = await app.Value<long>("select letter_id from set_apart_files");
        Assert.Equal(
            LetterSamples.Png,
            await owner.GetByteArrayAsync(
                $"/api/erasures/{erasure}/letters/{letter}/file",
                TestContext.Current.CancellationToken
            )
        );
        foreach (
            var path in (string[])
                [
                    "/api/erasures",
                    $"/api/erasures/{erasure}/kept",
                    $"/api/erasures/{erasure}/letters/{letter}/file",
                ]
        )
            await (await desk.GetAsync(path, TestContext.Current.CancellationToken)).Is(403);
        await (
            await owner.GetAsync(
                $"/api/clients/{her.Client}",
                TestContext.Current.CancellationToken
            )
        ).Is(404);
        Assert.DoesNotContain(
            "mark-",
            (await owner.Read("/api/audit")).ToJsonString(),
            StringComparison.Ordinal
        );
        // In the tables it stands nowhere but sealed in what is set apart.
        Assert.All(
            (await app.EveryText()).Where(t => t.Text.Contains("mark-", StringComparison.Ordinal)),
            t => Assert.Equal("set_apart", t.Table)
        );
        Assert.DoesNotContain("mark-", app.OnDisk(), StringComparison.Ordinal);
        Assert.True((bool)(await owner.Read("/api/audit/check"))["whole"]!);
        var read = await app.Rows<string>(
            "select kind from audit where client_id = @Client and act = 'read' order by id desc limit 2",
            new { her.Client }
        );
        Assert.Equal(["letter file", "export"], read);
    }

    [Fact]
    public async Task Goes_in_the_night_after_its_last_day_with_its_files()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.HasPolicy("health-kept-years", "2");
        await app.HasPolicy("contact-kept-years", "1");
        var client = await app.HasClient();
        await app.HasBooking(await app.HasSession(app.Today.PlusDays(-2)), client);
        await app.HasWaitingLetter(client, LetterSamples.Png);
        var erasure = await owner.Erase(client);
        Assert.Single(app.LetterFiles());

        // Last class on 28 February 2026.
        await Morning(app, 2027, 2, 28);
        Assert.Equal(["health", "contact"], await Kept(app));
        await Morning(app, 2027, 3, 1);
        Assert.Equal(["health"], await Kept(app));
        await Morning(app, 2028, 2, 28);
        Assert.Equal(["health"], await Kept(app));
        Assert.Single(app.LetterFiles());
        await Morning(app, 2028, 2, 29);
        Assert.Empty(await Kept(app));
        Assert.Empty(app.LetterFiles());
        Assert.Equal(0, await app.Value<long>("select count(*) from files_to_remove"));

        owner = await app.SignedInAs(Role.Owner);
        await (
            await owner.GetAsync(
                $"/api/erasures/{erasure}/kept",
                TestContext.Current.CancellationToken
            )
        ).Is(404);
        var done = (await owner.Read("/api/erasures"))["done"]!.AsArray().Single()!;
        Assert.All(done["kept"]!.AsArray(), k => Assert.NotNull(k!["erasedAt"]));
        Assert.True((bool)(await owner.Read("/api/audit/check"))["whole"]!);

        var before = await app.EveryText();
        Assert.Equal(0, (await app.ByHand("erase")).Changed);
        Assert.Equal(
            before.Where(t => t.Table != "job_runs"),
            (await app.EveryText()).Where(t => t.Table != "job_runs")
        );
    }

    [Fact]
    public async Task Is_caught_up_with_after_years_in_which_the_program_did_not_run()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var her = await HerWithEverything.In(app);
        await owner.Erase(her.Client);
        await Morning(app, 2060, 6, 1);
        Assert.Empty(await Kept(app));
        Assert.Empty(app.LetterFiles());
        Assert.DoesNotContain(
            await app.EveryText(),
            t => t.Text.Contains("mark-", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Is_fixed_on_the_day_of_the_erasure_whatever_is_chosen_later()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var client = await app.HasClient();
        await owner.Erase(client);
        await app.HasPolicy("health-kept-years", "30");
        await app.HasPolicy("contact-kept-years", "30");
        await Morning(app, 2036, 3, 3);
        Assert.Empty(await Kept(app));
    }

    [Fact]
    public async Task A_file_that_cannot_be_deleted_is_tried_again_at_the_next_bell()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.KeepsNothing();
        var client = await app.HasClient();
        await app.HasWaitingLetter(client, LetterSamples.Png);
        var file = app.LetterFiles().Single();
        // A folder in its place cannot be deleted as a file.
        File.Delete(file);
        Directory.CreateDirectory(Path.Combine(file, "in-the-way"));

        var plan = await owner.Read($"/api/clients/{client}/erasure");
        using var answer = await owner.Post(
            $"/api/clients/{client}/erasure",
            new { name = (string)plan["name"]!, seen = (string)plan["seen"]! }
        );
        Assert.Equal(1, (int)(await answer.Is(200))["filesLeft"]!);
        Assert.Equal(1, (int)(await owner.Read("/api/erasures"))["filesLeft"]!);

        Directory.Delete(file, recursive: true);
        await File.WriteAllBytesAsync(file, [1], TestContext.Current.CancellationToken);
        await app.Bell();
        Assert.False(File.Exists(file));
        Assert.Equal(0, (int)(await owner.Read("/api/erasures"))["filesLeft"]!);
    }

    [Fact]
    public async Task A_stop_between_the_erasure_and_the_files_is_caught_up_at_the_next_start()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        await app.KeepsNothing();
        var client = await app.HasClient();
        await app.HasWaitingLetter(client, LetterSamples.Png);
        // The transaction alone, as far as a process came that was stopped right after it.
        await app.With<Api.Erasures.ErasureOfClient, long>(async erasure =>
        {
            await using var write = await app
                .Services.GetRequiredService<Database>()
                .BeginWriteAsync();
            var row = (await Api.Clients.ClientStore.FindAsync(write, client))!;
            var plan = await erasure.PlanAsync(write, row);
            var answer = await erasure.CarryOutAsync(
                write,
                new Reader
                {
                    AccountId = 1,
                    Roles = new HashSet<Role> { Role.Owner },
                },
                row,
                new() { Name = plan.Name, Seen = plan.Seen }
            );
            Assert.Null(answer.Refusal);
            await write.CommitAsync();
            return answer.Value;
        });
        Assert.Single(app.LetterFiles());
        await app.Bell();
        Assert.Empty(app.LetterFiles());
    }

    private static async Task Morning(StudioApp app, int year, int month, int day)
    {
        app.Clock.Reset(Instant.FromUtc(year, month, day, 6, 0));
        await app.Bell();
    }

    private static Task<List<string>> Kept(StudioApp app) =>
        app.Rows<string>("select part from set_apart where record is not null order by id");
}
