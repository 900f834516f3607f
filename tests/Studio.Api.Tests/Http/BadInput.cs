using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Studio.Api.Tests.Access;

namespace Studio.Api.Tests.Http;

public class BadInput(SharedStudio studio)
{
    public static TheoryData<string> Names => [.. Routes.WithJson.Select(r => r.Name)];

    private static readonly string[] Values =
    [
        "null",
        "true",
        "-1",
        "0",
        "1.5",
        "1e308",
        "9223372036854775807",
        "99999999999999999999999999",
        "\"\"",
        "\" \"",
        "\"\\u0000\"",
        "\"\\u0000after nothing\"",
        "\"\\ud800\"",
        "\"'; drop table clients; --\"",
        "\"-9998-01-01\"",
        "\"0001-01-01\"",
        "\"1899-12-31\"",
        "\"2200-01-01\"",
        "\"9999-12-31\"",
        "\"2026-02-30\"",
        "\"2026-03-02T10:00:00Z\"",
        "[]",
        "[null]",
        "{}",
        "[[]]",
        JsonSerializer.Serialize(new string('x', 100_000)),
    ];

    private static readonly string[] Bodies =
    [
        "",
        "null",
        "[]",
        "{}",
        "\"text\"",
        "42",
        "{",
        "{\"a\":",
        "}{",
        "\uFEFF{}",
        new string('[', 200),
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Is_answered_with_a_problem_that_names_the_field_and_writes_nothing(
        string name
    )
    {
        var route = Routes.WithJson.Single(r => r.Name == name);
        await using var app = await StudioApp.Empty();
        var cast = await Cast.Of(app);
        var owner = cast.Browsers[^1];
        var wrong = new List<string>();
        foreach (var broken in Broken(await cast.Fill(route.Body)))
        {
            var path = await cast.Fill(route.Path);
            var before = await Rows(app);
            using var content = new StringContent(broken, Encoding.UTF8, "application/json");
            using var answer = await Send(owner, route.Method, path, content);
            if (await Fault(answer) is { } fault)
                wrong.Add($"{Short(broken)}: {fault}");
            // Signing in counts wrong passwords; that is no row.
            if ((int)answer.StatusCode >= 400 && before != await Rows(app))
                wrong.Add($"{Short(broken)}: {(int)answer.StatusCode}, and yet rows were written");
        }

        foreach (
            var type in new[]
            {
                "text/plain",
                "application/xml",
                "multipart/form-data",
                "application/x-www-form-urlencoded",
            }
        )
        {
            using var content = new StringContent(await cast.Fill(route.Body), Encoding.UTF8, type);
            using var answer = await Send(
                owner,
                route.Method,
                await cast.Fill(route.Path),
                content
            );
            if ((int)answer.StatusCode is not (400 or 415))
                wrong.Add($"{type}: {(int)answer.StatusCode}");
        }

        // What was taken must not break a page afterwards.
        foreach (var path in new[] { "", "/sessions", "/bookings", "/datings" })
        {
            using var page = await Send(
                owner,
                HttpMethod.Get,
                $"/api/clients/{cast.Client}{path}",
                null
            );
            if ((int)page.StatusCode != 200)
                wrong.Add($"afterwards her page{path}: {(int)page.StatusCode}");
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
        Assert.Empty(app.Log.Errors);
    }

    [Theory]
    [InlineData("from", "9999-12-31")]
    [InlineData("from", "-9998-01-01")]
    [InlineData("to", "9999-12-31")]
    [InlineData("to", "yesterday")]
    [InlineData("from", "2026-02-30")]
    [InlineData("from", "")]
    public async Task In_an_address_is_answered_with_a_problem_that_names_it(
        string part,
        string value
    )
    {
        var client = await studio.App.HasClient();
        foreach (
            var path in new[]
            {
                $"/api/clients/{client}/sessions",
                $"/api/clients/{client}/bookings",
                "/api/sessions",
            }
        )
        {
            using var answer = await Send(
                studio.Owner,
                HttpMethod.Get,
                $"{path}?{part}={value}",
                null
            );
            var fault = await Fault(answer);
            Assert.True(fault is null, $"{path}: {fault}");
            Assert.True((int)answer.StatusCode == 400 || value.Length == 0, $"{path} took it");
        }
    }

    [Theory]
    [InlineData("/api/clients/abc")]
    [InlineData("/api/clients/99999999999999999999999")]
    [InlineData("/api/clients/-1")]
    [InlineData("/api/clients/1.5/sessions")]
    [InlineData("/api/sessions?mine=perhaps")]
    [InlineData("/api/clients?find=%25_%27%22%5C")]
    [InlineData("/api/clients?find=%00")]
    public async Task In_a_path_is_never_a_server_error(string path)
    {
        using var answer = await Send(studio.Owner, HttpMethod.Get, path, null);
        Assert.InRange((int)answer.StatusCode, 200, 499);
    }

    // Each field of the body in order missing, then with each of the values; then bodies that are none.
    private static IEnumerable<string> Broken(string good)
    {
        foreach (var field in Fields(JsonNode.Parse(good)!.AsObject(), []))
        {
            yield return With(good, field, null);
            foreach (var value in Values)
                yield return With(good, field, value);
        }

        foreach (var body in Bodies)
            yield return body;
    }

    private static IEnumerable<string[]> Fields(JsonObject o, string[] above) =>
        o.SelectMany(p =>
            p.Value is JsonObject inner
                ? Fields(inner, [.. above, p.Key]).Prepend([.. above, p.Key])
                :
                [
                    [.. above, p.Key],
                ]
        );

    private static string With(string good, string[] field, string? value)
    {
        const string mark = "\"the value goes here\"";
        var body = JsonNode.Parse(good)!;
        var at = body;
        foreach (var name in field[..^1])
            at = at[name]!;
        if (value is null)
            at.AsObject().Remove(field[^1]);
        else
            at[field[^1]] = JsonNode.Parse(mark);
        return body.ToJsonString().Replace(mark, value);
    }

    private static async Task<string?> Fault(HttpResponseMessage answer)
    {
        var status = (int)answer.StatusCode;
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        return status is >= 500 or < 200 ? $"{status}"
            : status < 400 ? null
            : answer.Content.Headers.ContentType?.MediaType != "application/problem+json"
                ? $"{status} without a problem: {Short(text)}"
            : status == 400 && JsonNode.Parse(text)!["errors"] is not JsonObject { Count: > 0 }
                ? $"400 that names no field: {Short(text)}"
            : null;
    }

    private static async Task<HttpResponseMessage> Send(
        HttpClient browser,
        HttpMethod method,
        string path,
        HttpContent? content
    )
    {
        using var request = new HttpRequestMessage(method, path) { Content = content };
        return await browser.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private static async Task<string> Rows(StudioApp app) =>
        string.Join(
            ' ',
            await app.Rows<long>(
                string.Join(
                    " union all ",
                    new[]
                    {
                        "accounts",
                        "account_roles",
                        "clients",
                        "pregnancies",
                        "dating_evidence",
                        "due_dates",
                        "client_factors",
                        "letters",
                        "screenings",
                        "holds",
                        "bookings",
                        "flags",
                        "qualifications",
                        "instructors",
                        "leave",
                        "availability",
                        "pay_rates",
                        "travel_times",
                        "stage_changes",
                        "class_notes",
                        "class_note_versions",
                    }.Select(t => $"select count(*) from {t}")
                )
            )
        );

    private static string Short(string text) => text.Length > 160 ? text[..160] + "…" : text;
}
