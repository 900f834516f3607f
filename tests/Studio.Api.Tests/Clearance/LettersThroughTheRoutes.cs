using System.Net.Http.Headers;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Clearance;

public sealed class LettersThroughTheRoutes : IAsyncLifetime
{
    private StudioApp _app = null!;
    private HttpClient _reviewer = null!;
    private HttpClient _desk = null!;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        _reviewer = await _app.SignedInAs([Role.FrontDesk, Role.Reviewer]);
        _desk = await _app.SignedInAs(Role.FrontDesk);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task A_letter_counts_once_a_reviewer_has_read_it_and_what_it_asks_for_reaches_the_roster()
    {
        var instructor = await _app.HasInstructor();
        var session = await _app.HasSession(_app.Today.PlusDays(5), instructor: instructor);
        var her = await _app.HasClient(papers: false);
        await _app.HasScreening(her, _app.Today.PlusDays(-1));
        var client = await _app.SignedInAs(Role.Client, client: her);
        var teacher = await _app.SignedInAs(Role.Instructor, instructor: instructor);
        var letter = await Sent(client, her, LetterSamples.Jpeg, "letter.jpg");

        await (await client.Book(session, her)).IsRefused(403, "clearance-needed");
        using var review = await _reviewer.Post(
            $"/api/clients/{her}/letters/{letter}/review",
            Review(leaveOut: ["supine"], heartRateMost: 138, words: "Rests when she asks to.")
        );
        await review.Is(204);

        await (await client.Book(session, her)).Is(201);
        var person = (await teacher.Read($"/api/sessions/{session}/roster"))["people"]![0]!;
        var instructions = person["instructions"]!.ToJsonString();
        Assert.Contains("Rests when she asks to.", instructions, StringComparison.Ordinal);
        Assert.Contains("138 a minute", instructions, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "Rests",
            (await _desk.Read($"/api/sessions/{session}/roster")).ToJsonString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_desk_sees_that_a_letter_is_there_and_nothing_of_what_stands_in_it()
    {
        var her = await _app.HasClient(papers: false);
        var letter = await Sent(_desk, her, LetterSamples.Pdf, "letter.pdf");
        using var review = await _reviewer.Post(
            $"/api/clients/{her}/letters/{letter}/review",
            Review(leaveOut: ["supine"], heartRateMost: 138, words: "Rests when she asks to.")
        );
        await review.Is(204);

        var seen = (await _desk.Read($"/api/clients/{her}/letters"))[0]!;
        Assert.Equal("counts", seen.Text("state"));
        Assert.Equal("2026-02-20", seen.Text("issuedOn"));
        foreach (
            var hidden in (string[])
                ["issuedBy", "expiresOn", "terms", "refusedBecause", "reviewedBy", "mediaType"]
        )
            Assert.True(seen[hidden] is null, $"the desk is told {hidden}");
        var read = (await _reviewer.Read($"/api/clients/{her}/letters"))[0]!;
        Assert.Equal("Dr Wenna Ashdown", read.Text("issuedBy"));
        Assert.Equal(138, read["terms"]!.Number("heartRateMost"));
    }

    [Fact]
    public async Task Its_file_is_there_for_her_and_the_reviewer_and_for_nobody_else()
    {
        var instructor = await _app.HasInstructor();
        var her = await _app.HasClient(papers: false);
        await _app.HasBooking(
            await _app.HasSession(_app.Today.PlusDays(1), instructor: instructor),
            her
        );
        var client = await _app.SignedInAs(Role.Client, client: her);
        var letter = await Sent(client, her, LetterSamples.Png, "letter.png");
        var file = $"/api/clients/{her}/letters/{letter}/file";

        foreach (var one in new[] { client, _reviewer, await _app.SignedInAs(Role.Owner) })
        {
            using var answer = await one.GetAsync(file, TestContext.Current.CancellationToken);
            Assert.Equal(200, (int)answer.StatusCode);
            Assert.Equal("image/png", answer.Content.Headers.ContentType?.MediaType);
            Assert.Contains(
                "sandbox",
                answer.Headers.GetValues("Content-Security-Policy").Single(),
                StringComparison.Ordinal
            );
            Assert.Equal(
                LetterSamples.Png,
                await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)
            );
        }

        var other = await _app.HasClient();
        var stranger = await _app.SignedInAs(Role.Client, client: other);
        foreach (
            var one in new[]
            {
                _desk,
                await _app.SignedInAs(Role.Instructor, instructor: instructor),
                stranger,
            }
        )
        {
            await (await one.GetAsync(file, TestContext.Current.CancellationToken)).IsRefused(
                404,
                "no-such-letter"
            );
        }

        // Not under another client's name either, not even by herself.
        await (
            await stranger.GetAsync(
                $"/api/clients/{other}/letters/{letter}/file",
                TestContext.Current.CancellationToken
            )
        ).IsRefused(404, "no-such-letter");
    }

    public static TheoryData<string, byte[], string, int, string> Refused =>
        new()
        {
            { "a page under a right name", "<html>"u8.ToArray(), "letter.pdf", 400, "file-kind" },
            { "nothing", [], "letter.png", 400, "file-empty" },
            { "30 MB", new byte[30 * 1024 * 1024], "letter.jpg", 413, "file-too-large" },
            {
                "two files in one",
                [.. LetterSamples.Jpeg, .. "PK\u0003\u0004"u8],
                "letter.jpg",
                400,
                "file-unclean"
            },
            {
                "a PDF that does something",
                Encoding.ASCII.GetBytes("%PDF-1.4\n<</S/JavaScript>>\n%%EOF"),
                "letter.pdf",
                400,
                "file-active"
            },
        };

    [Theory]
    [MemberData(nameof(Refused))]
    public async Task What_is_no_letter_is_refused_and_leaves_nothing_behind(
        string what,
        byte[] bytes,
        string name,
        int status,
        string code
    )
    {
        var her = await _app.HasClient(papers: false);
        var client = await _app.SignedInAs(Role.Client, client: her);
        using var form = LetterSamples.Form(bytes, name, "image/png");
        using var answer = await client.PostAsync(
            $"/api/clients/{her}/letters",
            form,
            TestContext.Current.CancellationToken
        );

        await answer.IsRefused(status, code, field: "file");
        Assert.True(
            await _app.Value<long>("select count(*) from letters") == 0 && Files().Length == 0,
            what
        );
    }

    [Fact]
    public async Task A_path_in_the_name_leads_nowhere_and_the_file_lies_sealed_under_a_name_of_its_own()
    {
        var her = await _app.HasClient(papers: false);
        var client = await _app.SignedInAs(Role.Client, client: her);
        await Sent(client, her, LetterSamples.Pdf, "../../../studio.db");

        var file = Assert.Single(Files());
        Assert.Matches("^[0-9a-f]{40}$", Path.GetFileName(file));
        var kept = await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken);
        Assert.Equal(-1, kept.AsSpan().IndexOf("%PDF-"u8));
        Assert.Equal(LetterSamples.Pdf, _app.Services.GetRequiredService<Seal>().Open(kept));
        using var served = await client.GetAsync(
            $"/letters/{Path.GetFileName(file)}",
            TestContext.Current.CancellationToken
        );
        Assert.NotEqual("application/pdf", served.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task A_form_without_a_file_is_told_what_is_missing_and_no_form_that_it_is_none()
    {
        var path = $"/api/clients/{await _app.HasClient(papers: false)}/letters";
        using var none = new MultipartFormDataContent { { new StringContent("x"), "words" } };
        using var two = LetterSamples.Form(LetterSamples.Png, "one.png");
        two.Add(new ByteArrayContent(LetterSamples.Png), "file", "two.png");
        foreach (var form in new[] { none, two })
        {
            using var answer = await _desk.PostAsync(
                path,
                form,
                TestContext.Current.CancellationToken
            );
            await answer.IsRefused(400, "file-missing", field: "file");
        }

        using var text = new StringContent("letter", new MediaTypeHeaderValue("text/plain"));
        using var refused = await _desk.PostAsync(
            path,
            text,
            TestContext.Current.CancellationToken
        );
        await refused.Is(415);
    }

    [Fact]
    public async Task Paper_at_the_desk_needs_no_file_and_waits_to_be_read_all_the_same()
    {
        var her = await _app.HasClient(papers: false);
        using var filed = await _desk.Post($"/api/clients/{her}/letters?onPaper=true");
        var letter = (await filed.Is(201)).Number("id");

        var waiting = (await _reviewer.Read("/api/letters/waiting")).AsArray().Single()!;
        Assert.Equal(letter, waiting.Number("id"));
        Assert.True((bool)waiting["onPaper"]!);
        Assert.Equal(1, (await _reviewer.Read("/api/letters/waiting/count")).Number("letters"));
        await (
            await _reviewer.GetAsync(
                $"/api/clients/{her}/letters/{letter}/file",
                TestContext.Current.CancellationToken
            )
        ).IsRefused(404, "no-file");
        // She cannot say from home that paper lies at the desk.
        var client = await _app.SignedInAs(Role.Client, client: her);
        await (await client.Post($"/api/clients/{her}/letters?onPaper=true")).IsRefused(
            400,
            "file-missing",
            field: "file"
        );
    }

    [Fact]
    public async Task A_letter_is_read_once_and_can_be_taken_back()
    {
        var her = await _app.HasClient(papers: false);
        var letter = await Sent(_desk, her, LetterSamples.Png, "letter.png");
        var path = $"/api/clients/{her}/letters/{letter}";
        await (await _reviewer.Post($"{path}/review", Review())).Is(204);
        await (await _reviewer.Post($"{path}/review", Review())).IsRefused(409, "letter-read");
        await (await _reviewer.Post($"{path}/refuse", new { because = "Not signed." })).IsRefused(
            409,
            "letter-read"
        );

        await (await _reviewer.Post($"{path}/withdraw")).Is(204);
        Assert.Equal(
            "none",
            (await _desk.Read($"/api/clients/{her}"))["clearance"]!.Text("status")
        );
        await (await _reviewer.Post($"{path}/withdraw")).IsRefused(409, "letter-does-not-count");
    }

    [Theory]
    [InlineData("issuedOn", "2026-03-03", "in-future", "tomorrow")]
    [InlineData("issuedOn", "2023-03-01", "too-old", "three years and a day ago")]
    [InlineData("expiresOn", "2026-02-19", "bad-range", "a day before it was written")]
    [InlineData("leaveOut", "headstand", "no-such-trait", "not a trait")]
    public async Task What_cannot_stand_in_a_letter_is_refused_by_field(
        string field,
        string value,
        string code,
        string because
    )
    {
        var her = await _app.HasClient(papers: false);
        var letter = await Sent(_desk, her, LetterSamples.Png, "letter.png");
        var answer = await _reviewer.Post(
            $"/api/clients/{her}/letters/{letter}/review",
            Review(
                issuedOn: field == "issuedOn" ? value : null,
                expiresOn: field == "expiresOn" ? value : null,
                leaveOut: field == "leaveOut" ? [value] : null
            )
        );
        Assert.NotEmpty(because);
        await answer.IsRefused(400, code, field: field);
    }

    [Fact]
    public async Task A_new_letter_lifts_the_hold_once_it_was_read()
    {
        var her = await _app.HasClient();
        await _app.HasHold(her);
        var letter = await Sent(_desk, her, LetterSamples.Png, "letter.png");
        Assert.True((bool)(await _desk.Read($"/api/clients/{her}"))["onHold"]!);
        var today = $"{_app.Today:uuuu-MM-dd}";
        await (
            await _reviewer.Post(
                $"/api/clients/{her}/letters/{letter}/review",
                Review(issuedOn: today, expiresOn: "2026-06-01")
            )
        ).Is(204);
        Assert.False((bool)(await _desk.Read($"/api/clients/{her}"))["onHold"]!);
    }

    [Fact]
    public async Task After_a_loss_her_letters_are_there_for_her_and_the_owner_only()
    {
        var her = await _app.HasClient(ended: _app.Today.PlusDays(-2), papers: false);
        var letter = await _app.HasWaitingLetter(her, LetterSamples.Png);
        Assert.Empty((await _reviewer.Read("/api/letters/waiting")).AsArray());
        Assert.Equal(0, (await _reviewer.Read("/api/letters/waiting/count")).Number("letters"));
        await (
            await _reviewer.Post($"/api/clients/{her}/letters/{letter}/review", Review())
        ).IsRefused(404, "no-such-letter");
        var client = await _app.SignedInAs(Role.Client, client: her);
        Assert.Single((await client.Read($"/api/clients/{her}/letters")).AsArray());
    }

    private string[] Files() =>
        Directory.GetFiles(_app.Services.GetRequiredService<DataFolder>().Letters);

    private static object Review(
        string? issuedOn = null,
        string? expiresOn = null,
        string[]? leaveOut = null,
        int? heartRateMost = null,
        string? words = null
    ) =>
        new
        {
            issuedBy = "Dr Wenna Ashdown",
            issuedOn = issuedOn ?? "2026-02-20",
            expiresOn = expiresOn ?? "2026-06-01",
            leaveOut,
            heartRateMost,
            words,
        };

    private static async Task<long> Sent(HttpClient by, long her, byte[] bytes, string name)
    {
        using var form = LetterSamples.Form(bytes, name);
        using var answer = await by.PostAsync(
            $"/api/clients/{her}/letters",
            form,
            TestContext.Current.CancellationToken
        );
        return (await answer.Is(201)).Number("id");
    }
}
