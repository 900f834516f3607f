using System.Text.Json.Nodes;

namespace Studio.Api.Tests.Access;

/// <summary>
/// Every GET route of the OpenAPI document with everything that can stand in it, so that a route is walked as soon as there
/// is one. A place nobody has thought of fails the walk.
/// </summary>
internal sealed class Walk
{
    private static readonly string[] Endless = ["/api/live"];

    private readonly JsonNode _document;

    private Walk(JsonNode document) => _document = document;

    /// <summary>The walk through the routes of an app.</summary>
    public static async Task<Walk> Of(StudioApp app) =>
        new(await app.Browser().Read("/openapi/v1.json"));

    /// <summary>The schemas of the document.</summary>
    public JsonObject Schemas => _document["components"]!["schemas"]!.AsObject();

    /// <summary>Every address: each value in each place, and each query with each of its values.</summary>
    public IEnumerable<(string Route, string Address)> Addresses(
        IReadOnlyDictionary<string, string[]> places
    )
    {
        foreach (var (route, path) in _document["paths"]!.AsObject())
        {
            if (path!["get"] is not { } get || Endless.Contains(route))
                continue;
            List<string> addresses = [route];
            var queries = new List<string>();
            foreach (var part in (get["parameters"]?.AsArray() ?? []).OfType<JsonNode>())
            {
                var name = part.Text("name");
                var given =
                    places.GetValueOrDefault(name)
                    ?? throw new InvalidOperationException($"What is {name} in {route}?");
                if (part.Text("in") == "path")
                    addresses =
                    [
                        .. addresses.SelectMany(a =>
                            given.Select(v => a.Replace($"{{{name}}}", v))
                        ),
                    ];
                else
                    queries.AddRange(given.Select(v => $"{name}={Uri.EscapeDataString(v)}"));
            }

            foreach (var address in addresses)
            {
                yield return (route, address);
                foreach (var query in queries)
                    yield return (route, $"{address}?{query}");
            }
        }
    }

    /// <summary>The schema of a route's good answer; null when it is no JSON.</summary>
    public JsonNode? SchemaOf(string route) =>
        _document["paths"]![route]!["get"]!["responses"]!["200"]
            ?["content"]
            ?["application/json"]
            ?["schema"];

    /// <summary>What is answered, as it comes, with its status before it; what differs from call to call is left out.</summary>
    public static async Task<string> Ask(HttpClient browser, string address)
    {
        using var answer = await browser.GetAsync(address, TestContext.Current.CancellationToken);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        if (
            text.StartsWith('{')
            && JsonNode.Parse(text) is JsonObject body
            && body.Remove("traceId")
        )
            text = body.ToJsonString();
        return $"{(int)answer.StatusCode} {text}";
    }
}
