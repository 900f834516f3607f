using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Core;

namespace Studio.Api.Http;

/// <summary>The one place where a refusal becomes RFC 9457 problem details.</summary>
public static class Problems
{
    /// <summary>The refusal as an answer on the wire.</summary>
    /// <param name="refusal">The refusal.</param>
    /// <param name="status">Another status than its kind's, where HTTP has a more exact one.</param>
    public static ProblemHttpResult ToProblem(this Refusal refusal, int? status = null)
    {
        var extensions = new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            ["code"] = refusal.Code,
        };
        if (refusal.Field is { } field)
            extensions["errors"] = new Dictionary<string, string[]>(StringComparer.Ordinal)
            {
                [field] = [refusal.Message],
            };
        return TypedResults.Problem(
            detail: refusal.Message,
            statusCode: status ?? Status(refusal.Kind),
            title: Title(refusal.Kind),
            extensions: extensions
        );
    }

    /// <summary>The HTTP status of a kind of refusal.</summary>
    public static int Status(RefusalKind kind) =>
        kind switch
        {
            RefusalKind.NotFound => StatusCodes.Status404NotFound,
            RefusalKind.Invalid => StatusCodes.Status400BadRequest,
            RefusalKind.NotAllowed => StatusCodes.Status403Forbidden,
            RefusalKind.Conflict => StatusCodes.Status409Conflict,
        };

    private static string Title(RefusalKind kind) =>
        kind switch
        {
            RefusalKind.NotFound => "Not found",
            RefusalKind.Invalid => "Please check what was entered",
            RefusalKind.NotAllowed => "Not possible",
            RefusalKind.Conflict => "Not possible now",
        };
}
