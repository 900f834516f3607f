using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Diagnostics;
using Studio.Core;

namespace Studio.Api.Http;

/// <summary>Turns a request that cannot be read into a 4xx that names the field, never a 500.</summary>
public sealed partial class BadRequests : IExceptionHandler
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
            await TypedResults
                .Problem(statusCode: bad.StatusCode, detail: bad.Message)
                .ExecuteAsync(httpContext);
            return true;
        }

        var refusal = bad.InnerException is JsonException json
            ? new Refusal(
                RefusalKind.Invalid,
                "unreadable",
                json is UnusableValue ? json.Message
                    : json.Path is { Length: > 2 }
                        ? $"The value of {json.Path[2..]} cannot be read."
                    : "The body cannot be read as JSON, or a required part of it is missing.",
                json.Path is { Length: > 2 } ? json.Path[2..] : "body"
            )
            : Parameter(bad.Message);
        await refusal.ToProblem().ExecuteAsync(httpContext);
        return true;
    }

    // ASP.NET Core names the parameter only inside its message: Failed to bind parameter "QueryDay from" from "x".
    private static Refusal Parameter(string message)
    {
        var name = ParameterName().Match(message) is { Success: true } match
            ? match.Groups["name"].Value
            : "request";
        return new Refusal(
            RefusalKind.Invalid,
            "unreadable",
            $"The value of {name} is missing or cannot be read.",
            name
        );
    }

    [GeneratedRegex(
        "parameter \"\\S+ (?<name>\\w+)\"",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex ParameterName();
}
