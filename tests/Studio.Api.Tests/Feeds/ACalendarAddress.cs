using System.Net.Http.Headers;
using Studio.Api.Tests.Erasures;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Feeds;

public class ACalendarAddress
{
    [Fact]
    public async Task Is_told_once_and_kept_as_a_digest_alone()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        var browser = await app.SignedInAs(Role.Client, client: client);
        var (id, token) = await app.HasFeed(browser);
        var listed = Assert.Single((await browser.Read("/api/feeds")).AsArray())!;
        Assert.Equal(id, listed.Number("id"));
        Assert.Equal("client", listed.Text("reads"));
        Assert.False((bool)listed["namesClass"]!);
        Assert.DoesNotContain(token, listed.ToJsonString());
        var kept = await app.Value<string>("select token_digest from feeds");
        Assert.Equal(Core.Feeds.CalendarKeys.Digest(token), kept);
        Assert.Equal(404, await Status(app, kept));
    }

    [Fact]
    public async Task Answers_nobody_once_it_is_taken_back_or_made_anew()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        var browser = await app.SignedInAs(Role.Client, client: client);
        var (_, first) = await app.HasFeed(browser);
        var (id, second) = await app.HasFeed(browser);
        Assert.Equal(404, await Status(app, first));
        Assert.Equal(200, await Status(app, second));
        using (var back = await browser.Send(HttpMethod.Delete, $"/api/feeds/{id}"))
            await back.Is(204);
        using (var again = await browser.Send(HttpMethod.Delete, $"/api/feeds/{id}"))
            await again.IsRefused(404, "no-such-feed");
        Assert.Empty((await browser.Read("/api/feeds")).AsArray());

        // Taken back or never there: the very same answer.
        var revoked = await Words(app, second);
        Assert.Equal(revoked, await Words(app, "A" + second[1..^1] + "_"));
        Assert.Equal(revoked, await Words(app, "nothing"));
    }

    [Fact]
    public async Task Answers_nobody_once_she_is_no_longer_what_it_was_made_for()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var instructor = await app.HasInstructor();
        var browser = await app.SignedInAs(Role.Instructor, instructor: instructor);
        var (_, token) = await app.HasFeed(browser, "instructor");
        Assert.Equal(200, await Status(app, token));
        await app.Execute("delete from account_roles where role = 'instructor'");
        Assert.Equal(404, await Status(app, token));

        var client = await app.HasClient();
        var (_, hers) = await app.HasFeed(await app.SignedInAs(Role.Client, client: client));
        Assert.Equal(200, await Status(app, hers));
        await owner.Erase(client);
        Assert.Equal(404, await Status(app, hers));
    }

    [Fact]
    public async Task Is_only_for_those_who_teach_or_are_clients()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.SignedInAs(Role.Client, client: await app.HasClient());
        var desk = await app.SignedInAs(Role.FrontDesk);
        foreach (
            var (browser, reads) in new[]
            {
                (client, "instructor"),
                (desk, "client"),
                (desk, "instructor"),
            }
        )
        {
            using var refused = await browser.Post("/api/feeds", new { reads });
            await refused.IsRefused(403, "feed-not-yours", "reads");
        }
        using (var unknown = await client.Post("/api/feeds", new { reads = "everybody" }))
            await unknown.Is(400);
        using (var none = await client.Post("/api/feeds", new { }))
            await none.Is(400);

        var teaching = await app.SignedInAs(Role.Instructor, instructor: await app.HasInstructor());
        var (id, _) = await app.HasFeed(teaching, "instructor");
        using (var naming = await teaching.Put($"/api/feeds/{id}", new { namesClass = false }))
            await naming.IsRefused(400, "always-named", "namesClass");
    }

    [Fact]
    public async Task Is_cheap_to_ask_again_and_kept_by_nobody_on_the_way()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        var session = await app.HasSession(app.Today.PlusDays(3));
        await app.HasBooking(session, client);
        var (_, token) = await app.HasFeed(await app.SignedInAs(Role.Client, client: client));
        using var first = await Ask(app, token);
        Assert.Equal("text/calendar; charset=utf-8", $"{first.Content.Headers.ContentType}");
        Assert.Equal("no-cache, private", $"{first.Headers.CacheControl}");
        var tag = first.Headers.ETag!;
        Assert.False(tag.IsWeak);

        app.Clock.Advance(Duration.FromMinutes(90));
        using (var again = await Ask(app, token, tag: tag))
        {
            Assert.Equal(304, (int)again.StatusCode);
            Assert.Empty(await again.Content.ReadAsByteArrayAsync(Cancelled));
            Assert.Equal(tag, again.Headers.ETag);
        }
        using (var head = await Ask(app, token, HttpMethod.Head))
        {
            Assert.Equal(200, (int)head.StatusCode);
            Assert.Equal(tag, head.Headers.ETag);
            Assert.Equal(
                (await first.Content.ReadAsByteArrayAsync(Cancelled)).Length,
                head.Content.Headers.ContentLength
            );
            Assert.Empty(await head.Content.ReadAsByteArrayAsync(Cancelled));
        }

        await app.Execute(
            "update sessions set status = 'cancelled' where id = @session",
            new { session }
        );
        using var changed = await Ask(app, token, tag: tag);
        Assert.Equal(200, (int)changed.StatusCode);
        Assert.NotEqual(tag, changed.Headers.ETag);
    }

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    private static async Task<HttpResponseMessage> Ask(
        StudioApp app,
        string token,
        HttpMethod? method = null,
        EntityTagHeaderValue? tag = null
    )
    {
        using var request = new HttpRequestMessage(method ?? HttpMethod.Get, $"/feeds/{token}.ics");
        if (tag is not null)
            request.Headers.IfNoneMatch.Add(tag);
        return await app.Browser().SendAsync(request, Cancelled);
    }

    private static async Task<int> Status(StudioApp app, string token)
    {
        using var answer = await Ask(app, token);
        return (int)answer.StatusCode;
    }

    private static async Task<string> Words(StudioApp app, string token)
    {
        using var answer = await Ask(app, token);
        Assert.Equal("no-store", $"{answer.Headers.CacheControl}");
        var problem = await answer.IsRefused(404, "no-such-calendar");
        problem.AsObject().Remove("traceId");
        return problem.ToJsonString();
    }
}
