using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Studio.Api.Tests.Access;

public class EveryRouteAndRole(SharedStudio studio)
{
    public static TheoryData<string> Names => [.. Routes.All.Select(r => r.Name)];

    [Fact]
    public async Task Is_in_the_table_and_the_table_has_no_other()
    {
        var document = await studio.App.Browser().Read("/openapi/v1.json");
        var routes = document["paths"]!
            .AsObject()
            .SelectMany(path =>
                path.Value!.AsObject().Select(o => $"{o.Key.ToUpperInvariant()} {path.Key}")
            );
        Assert.Equal(routes.Order(), Routes.All.Select(r => r.Name).Order());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Answers_each_as_the_table_says(string name)
    {
        var route = Routes.All.Single(r => r.Name == name);
        var cast = await Cast.Of(studio.App);
        var wrong = new List<string>();
        for (var i = 0; i < Cast.Kinds.Count; i++)
        {
            using var request = new HttpRequestMessage(route.Method, await cast.Fill(route.Path));
            if (route.Body.StartsWith("file:"))
                request.Content = LetterSamples.Form(LetterSamples.Png, route.Body[5..]);
            else if (route.Body.Length > 0)
                request.Content = new StringContent(
                    await cast.Fill(route.Body),
                    Encoding.UTF8,
                    route.Body.StartsWith('{') ? "application/json" : "text/csv"
                );
            // Headers are enough: the live stream never ends.
            using var answer = await cast.Browsers[i]
                .SendAsync(
                    request,
                    HttpCompletionOption.ResponseHeadersRead,
                    TestContext.Current.CancellationToken
                );
            if ((int)answer.StatusCode != route.Statuses[i])
                wrong.Add($"{Cast.Kinds[i]}: {(int)answer.StatusCode}, not {route.Statuses[i]}");
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    [Fact]
    public void Has_a_name_a_tag_and_a_policy_or_says_that_it_is_open()
    {
        var endpoints = studio
            .App.Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(e =>
                e.RoutePattern.RawText!.StartsWith("/api/")
                || e.RoutePattern.RawText!.StartsWith("/feeds/")
                || e.RoutePattern.RawText == "/healthz"
            )
            .Where(e => !e.RoutePattern.RawText!.Contains("{**"))
            .ToList();
        Assert.Equal(Routes.All.Count, endpoints.Count);
        Assert.All(
            endpoints,
            e =>
            {
                Assert.NotNull(e.Metadata.GetMetadata<IEndpointNameMetadata>());
                Assert.NotEmpty(e.Metadata.GetMetadata<ITagsMetadata>()?.Tags ?? []);
                Assert.True(
                    e.Metadata.GetMetadata<IAllowAnonymous>() is not null
                        || e.Metadata.GetOrderedMetadata<IAuthorizeData>()
                            .Any(a => a.Policy is not null),
                    $"{e.DisplayName} has neither a policy nor AllowAnonymous."
                );
            }
        );
    }

    [Theory]
    [InlineData("/api/clients/{0}")]
    [InlineData("/api/clients/{0}/sessions")]
    [InlineData("/api/clients/{0}/bookings")]
    [InlineData("/api/clients/{0}/datings")]
    public async Task Answers_a_stranger_as_if_the_client_were_not_there(string path)
    {
        var client = await studio.App.HasClient();
        var stranger = await studio.App.SignedInAs(
            Core.Accounts.Role.Client,
            client: await studio.App.HasClient()
        );
        var hers = await Problem(stranger, string.Format(path, client));
        var nobodys = await Problem(stranger, string.Format(path, 999_999_999));
        Assert.Equal(nobodys.ToJsonString(), hers.ToJsonString());
    }

    private static async Task<JsonNode> Problem(HttpClient browser, string path)
    {
        using var answer = await browser.GetAsync(path, TestContext.Current.CancellationToken);
        var problem = await answer.Is(404);
        problem.AsObject().Remove("traceId");
        return problem;
    }
}
