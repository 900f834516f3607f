using Microsoft.AspNetCore.Http.Features;
using Studio.Core.Feeds;

namespace Studio.Api.Feeds;

/// <summary>
/// Takes the secret part out of a calendar's address before anybody can write the address down: what the program, its
/// logs and its traces see in its place is the digest, by which nobody can read the calendar.
/// </summary>
public sealed class FeedAddresses(IServiceProvider services) : IHttpContextFactory
{
    private const string Folder = "/feeds/";
    private const string Ending = ".ics";

    private readonly DefaultHttpContextFactory _inner = new(services);

    /// <summary>The address somebody copies, without the host.</summary>
    public static string Of(string token) => $"{Folder}{token}{Ending}";

    /// <inheritdoc/>
    public HttpContext Create(IFeatureCollection featureCollection)
    {
        var request = featureCollection.GetRequiredFeature<IHttpRequestFeature>();
        if (request.Path.StartsWith(Folder, StringComparison.OrdinalIgnoreCase))
        {
            var secret = request.Path[Folder.Length..];
            var ends = secret.EndsWith(Ending, StringComparison.OrdinalIgnoreCase);
            if (ends)
                secret = secret[..^Ending.Length];
            request.Path = Folder + CalendarKeys.Digest(secret) + (ends ? Ending : "");
            request.RawTarget = request.Path;
            // Nothing is asked in the query, and somebody may have put the secret there.
            request.QueryString = "";
        }
        return _inner.Create(featureCollection);
    }

    /// <inheritdoc/>
    public void Dispose(HttpContext httpContext) => _inner.Dispose(httpContext);
}
