using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime.Serialization.SystemTextJson;

namespace Studio.Api.Tests.Harness;

/// <summary>Requests as a page sends them, and answers as it reads them.</summary>
public static class Web
{
    private static readonly JsonSerializerOptions Json = new JsonSerializerOptions(
        JsonSerializerDefaults.Web
    ).ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    /// <summary>POST with a JSON body, or with none.</summary>
    public static Task<HttpResponseMessage> Post(
        this HttpClient browser,
        string path,
        object? body = null,
        string? key = null
    ) => browser.Send(HttpMethod.Post, path, body, key);

    /// <summary>PUT with a JSON body.</summary>
    public static Task<HttpResponseMessage> Put(
        this HttpClient browser,
        string path,
        object body
    ) => browser.Send(HttpMethod.Put, path, body);

    /// <summary>Sends a request; the body as JSON, the key as Idempotency-Key.</summary>
    public static async Task<HttpResponseMessage> Send(
        this HttpClient browser,
        HttpMethod method,
        string path,
        object? body = null,
        string? key = null
    )
    {
        using var request = new HttpRequestMessage(method, path);
        if (body is not null)
            request.Content = JsonContent.Create(body, body.GetType(), options: Json);
        if (key is not null)
            request.Headers.Add("Idempotency-Key", key);
        return await browser.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>Books; the answer as it comes.</summary>
    public static Task<HttpResponseMessage> Book(
        this HttpClient browser,
        long session,
        long client,
        string? key = null
    ) => browser.Post($"/api/sessions/{session}/bookings", new { clientId = client }, key);

    /// <summary>Books what is expected to go well; the answer's JSON.</summary>
    public static async Task<JsonNode> Booked(this HttpClient browser, long session, long client)
    {
        using var answer = await browser.Book(session, client);
        return await answer.Is(201);
    }

    /// <summary>Cancels; the answer as it comes.</summary>
    public static Task<HttpResponseMessage> Cancel(this HttpClient browser, long booking) =>
        browser.Send(HttpMethod.Delete, $"/api/bookings/{booking}");

    /// <summary>What a GET gives, which must be well.</summary>
    public static async Task<JsonNode> Read(this HttpClient browser, string path)
    {
        using var answer = await browser.GetAsync(path, TestContext.Current.CancellationToken);
        return await answer.Is(200);
    }

    /// <summary>Fails unless the answer has this status; its JSON, or an empty object where there is none.</summary>
    public static async Task<JsonNode> Is(this HttpResponseMessage answer, int status)
    {
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(
            (int)answer.StatusCode == status,
            $"{answer.RequestMessage?.Method} {answer.RequestMessage?.RequestUri}: {(int)answer.StatusCode}, not {status}. {text}"
        );
        return text.StartsWith('{') || text.StartsWith('[')
            ? JsonNode.Parse(text)!
            : new JsonObject();
    }

    /// <summary>Fails unless the answer is a refusal with this status and code, naming this field where one is given.</summary>
    public static async Task<JsonNode> IsRefused(
        this HttpResponseMessage answer,
        int status,
        string code,
        string? field = null
    )
    {
        var problem = await answer.Is(status);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal(code, problem.Text("code"));
        if (field is not null)
            Assert.NotNull(problem["errors"]?[field]);
        return problem;
    }

    /// <summary>A text in a JSON object.</summary>
    public static string Text(this JsonNode node, string name) => (string?)node[name] ?? "";

    /// <summary>A number in a JSON object.</summary>
    public static long Number(this JsonNode node, string name) => (long)node[name]!;
}
