using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Http;

public class TheHost(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    [Fact]
    public async Task Says_that_it_is_healthy_to_anybody()
    {
        var browser = _app.Browser();
        Assert.Equal(
            "healthy",
            await browser.GetStringAsync("/healthz", TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public async Task Describes_itself_as_the_committed_document_does()
    {
        var served = await _app.Browser().Read("/openapi/v1.json");
        var committed = JsonNode.Parse(
            await File.ReadAllTextAsync(
                Path.Combine(AppContext.BaseDirectory, "openapi.json"),
                TestContext.Current.CancellationToken
            )
        );
        Assert.True(
            JsonNode.DeepEquals(served, committed),
            "server/Studio.Api/openapi.json is not what the program serves: build the server and commit the file."
        );
    }

    [Theory]
    [InlineData("GET", "/api/nothing-here")]
    [InlineData("GET", "/api")]
    [InlineData("GET", "/api/")]
    public async Task Answers_an_unknown_address_of_the_api_with_a_problem(
        string method,
        string path
    )
    {
        using var answer = await studio.Desk.Send(new HttpMethod(method), path);
        var problem = await answer.Is(404);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal(404, problem.Number("status"));
    }

    [Fact]
    public async Task Answers_a_wrong_method_with_a_problem()
    {
        using var answer = await studio.Desk.Send(HttpMethod.Delete, "/api/clients");
        await answer.Is(405);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task Sends_headers_that_keep_pages_and_answers_to_themselves()
    {
        using var answer = await studio.Desk.GetAsync(
            "/api/stages",
            TestContext.Current.CancellationToken
        );
        Assert.True(answer.Headers.CacheControl?.NoStore);
        Assert.Contains(
            "frame-ancestors 'none'",
            string.Join(' ', answer.Headers.GetValues("Content-Security-Policy"))
        );
    }

    [Theory]
    [InlineData(Role.FrontDesk, true, "the desk asks again for this session")]
    [InlineData(
        Role.Client,
        false,
        "another client learns that something changed, not whose nor which"
    )]
    public async Task Tells_open_pages_of_a_booking_by_ids_only(
        Role listens,
        bool toldWhich,
        string because
    )
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient("Ysolde Carroway");
        var session = await app.HasSession(app.Today.PlusDays(3));
        var desk = await app.SignedInAs(Role.FrontDesk);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(
            TestContext.Current.CancellationToken
        );
        stop.CancelAfter(TimeSpan.FromSeconds(20));
        using var stream = await (await app.SignedInAs(listens)).GetAsync(
            "/api/live",
            HttpCompletionOption.ResponseHeadersRead,
            stop.Token
        );
        Assert.Equal("text/event-stream", stream.Content.Headers.ContentType?.MediaType);
        using var lines = new StreamReader(await stream.Content.ReadAsStreamAsync(stop.Token));
        Assert.Equal("open", (await Next(lines, stop.Token)).Text("topic"));

        await desk.Booked(session, client);
        var told = new List<JsonNode>();
        while (!told.Exists(t => t.Text("topic") == "session"))
            told.Add(await Next(lines, stop.Token));
        var which = (long?)told.Single(t => t.Text("topic") == "session")["id"];
        Assert.True(which == (toldWhich ? session : null), because);
        Assert.True(toldWhich || !told.Exists(t => t.Text("topic") == "client"), because);
        Assert.All(
            told,
            t => Assert.Equal(["id", "topic"], t.AsObject().Select(p => p.Key).Order())
        );
    }

    private static async Task<JsonNode> Next(StreamReader lines, CancellationToken stop)
    {
        while (await lines.ReadLineAsync(stop) is { } line)
        {
            if (line.StartsWith("data: ", StringComparison.Ordinal))
                return JsonNode.Parse(line["data: ".Length..])!;
        }

        throw new InvalidOperationException("The stream ended.");
    }
}
