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
                ) => TypedResults.ServerSentEvents(EventsAsync(reader, live, lifetime, gone))
            )
            .WithName("Live")
            .WithTags("Live")
            .RequireAuthorization(Policies.SignedIn);

    private static async IAsyncEnumerable<SseItem<object>> EventsAsync(
        Reader reader,
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
        await foreach (var item in live.ListenAsync(reader.AccountId, ends.Token))
        {
            if (item is not Change change)
                yield return new SseItem<object>(item, "import");
            else if (For(reader, change) is { } told)
                yield return new SseItem<object>(told, "changed");
        }
    }

    // A client hears that some session changed, and of herself; whose bookings change when is nobody else's to follow.
    // After a loss the staff hear that there is something to ask again, and not of whom.
    private static Change? For(Reader reader, Change change) =>
        change.Unspoken && !reader.IsOwner && change.Id != reader.ClientId
            ? (
                reader.WorksAtDesk || reader.InstructorId is not null
                    ? change with
                    {
                        Id = null,
                    }
                    : null
            )
        : reader.WorksAtDesk || reader.InstructorId is not null ? change
        : change.Topic != "client" ? change with { Id = null }
        : change.Id == reader.ClientId ? change
        : null;
}
