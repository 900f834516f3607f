using Studio.Api.Data;

namespace Studio.Api.Http;

/// <summary>What is not the API: the health check, the client's pages, and headers for all of it.</summary>
public static class Pages
{
    /// <summary>Answers when the database does.</summary>
    public static void MapAlive(this IEndpointRouteBuilder app) =>
        app.MapGet(
                "/healthz",
                async (Database database) =>
                {
                    await using var read = await database.ReadAsync();
                    await read.ValueAsync<long>("select count(*) from studio");
                    return TypedResults.Text("healthy");
                }
            )
            .WithName("Alive")
            .WithTags("Health check")
            .AllowAnonymous();

    /// <summary>
    /// Every address that is neither a file nor the API is the client's to answer. The API's own unknown addresses stay
    /// without a route, so that a wrong method is told as 405 and a wrong kind of body as 415.
    /// </summary>
    public static void MapPages(this IEndpointRouteBuilder app) =>
        app.MapFallbackToFile("{*path:regex(^(?!api(/|$)).*$):nonfile}", "index.html", Kept)
            .AllowAnonymous();

    /// <summary>Built files carry a hash in their names and are kept for a year; the page itself is asked for again.</summary>
    public static StaticFileOptions Kept { get; } =
        new()
        {
            OnPrepareResponse = file =>
                file.Context.Response.Headers.CacheControl =
                    file.Context.Request.Path.StartsWithSegments("/assets")
                        ? "public, max-age=31536000, immutable"
                        : "no-cache",
        };

    /// <summary>Only our own scripts and pictures, in no other site's frame; answers of the API are kept by nobody.</summary>
    public static void UseSecurityHeaders(this IApplicationBuilder app) =>
        app.Use(
            (context, next) =>
            {
                var headers = context.Response.Headers;
                headers.ContentSecurityPolicy =
                    "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; frame-ancestors 'none'; base-uri 'self'; form-action 'self'";
                headers.XContentTypeOptions = "nosniff";
                headers["Referrer-Policy"] = "same-origin";
                if (context.Request.Path.StartsWithSegments("/api"))
                    headers.CacheControl = "no-store";
                return next(context);
            }
        );
}
