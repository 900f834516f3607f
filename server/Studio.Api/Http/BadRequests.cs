using System.Text.Json;
using Microsoft.AspNetCore.Diagnostics;
using Studio.Core;

namespace Studio.Api.Http;

/// <summary>Turns a request that cannot be read into a 4xx that names the field, never a 500.</summary>
public sealed class BadRequests : IExceptionHandler
{
    /// <inheritdoc/>
    public async ValueTask<bool> TryHandleAsync(
        HttpContext httpContext,
        Exception exception,
        CancellationToken cancellationToken
    )
    {
        if (exception is not BadHttpRequestException bad)
            return false;
        if (bad.StatusCode != StatusCodes.Status400BadRequest)
        {
            await TypedResults.Problem(statusCode: bad.StatusCode, detail: bad.Message).ExecuteAsync(httpContext);
            return true;
        }

        var refusal = bad.InnerException is JsonException json
            ? new Refusal(
                RefusalKind.Invalid,
                "unreadable",
                json.Path is { Length: > 2 }
                    ? $"The value of {json.Path[2..]} cannot be read."
                    : "The body cannot be read as JSON, or a required part of it is missing.",
                json.Path is { Length: > 2 } ? json.Path[2..] : "body"
            )
            : new Refusal(RefusalKind.Invalid, "unreadable", bad.Message, "request");
        await refusal.ToProblem().ExecuteAsync(httpContext);
        return true;
    }
}
