using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using Studio.Api.Accounts;
using Studio.Core.Accounts;

namespace Studio.Api.Http;

/// <summary>The stream that tells an open page to ask again.</summary>
public static class LiveEndpoints
{
    /// <summary>Maps the route.</summary>
    public static void MapLive(this IEndpointRouteBuilder app) =>
        app.MapGet(
                "/api/live",
                (
                    Reader reader,
                    Live live,
                    IHostApplicationLifetime lifetime,
                    CancellationToken gone
                ) =>
                    TypedResults.ServerSentEvents(
                        EventsAsync(reader.AccountId, live, lifetime, gone)
                    )
            )
            .WithName("Live")
            .WithTags("Live")
            .RequireAuthorization(Policies.SignedIn);

    private static async IAsyncEnumerable<SseItem<object>> EventsAsync(
        long account,
        Live live,
        IHostApplicationLifetime lifetime,
        [EnumeratorCancellation] CancellationToken gone
    )
    {
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(
            gone,
            lifetime.ApplicationStopping
        );
        // Says at once that it is open, so that a page knows.
        yield return new SseItem<object>(new Change("open", null), "changed");
        await foreach (var item in live.ListenAsync(account, ends.Token))
            yield return new SseItem<object>(item, item is ImportProgress ? "import" : "changed");
    }
}
