using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.Metadata;
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
        return Unreadable(name);
    }

    /// <summary>
    /// Names the parameter in a bare 400: an optional one that cannot be read ends the request without an exception.
    /// </summary>
    public static void NameParameter(ProblemDetailsContext context)
    {
        var problem = context.ProblemDetails;
        if (
            problem.Status != StatusCodes.Status400BadRequest
            || problem.Extensions.ContainsKey("code")
            || problem.Extensions.ContainsKey("errors")
        )
            return;
        var query = context.HttpContext.Request.Query;
        var unread = context
            .HttpContext.GetEndpoint()
            ?.Metadata.GetOrderedMetadata<IParameterBindingMetadata>()
            .FirstOrDefault(p =>
                p.HasTryParse
                && query[p.Name].ToString() is { Length: > 0 } text
                && !CanBeRead(p.ParameterInfo.ParameterType, text)
            );
        if (unread is null)
            return;
        var named = Unreadable(unread.Name).ToProblem().ProblemDetails;
        (problem.Title, problem.Detail) = (named.Title, named.Detail);
        foreach (var (key, value) in named.Extensions)
            problem.Extensions[key] = value;
    }

    // As the framework reads it: by the type's own TryParse.
    private static bool CanBeRead(Type type, string text)
    {
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        if (bare.IsEnum)
            return Enum.TryParse(bare, text, ignoreCase: true, out _);
        if (
            bare.GetMethod(
                "TryParse",
                [typeof(string), typeof(IFormatProvider), bare.MakeByRefType()]
            ) is
            { } withCulture
        )
            return withCulture.Invoke(null, [text, CultureInfo.InvariantCulture, null]) is true;
        return bare.GetMethod("TryParse", [typeof(string), bare.MakeByRefType()]) is not { } plain
            || plain.Invoke(null, [text, null]) is true;
    }

    private static Refusal Unreadable(string name) =>
        new(
            RefusalKind.Invalid,
            "unreadable",
            $"The value of {name} is missing or cannot be read.",
            name
        );

    [GeneratedRegex(
        "parameter \"\\S+ (?<name>\\w+)\"",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex ParameterName();
}
