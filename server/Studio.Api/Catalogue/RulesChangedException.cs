using Microsoft.AspNetCore.Diagnostics;
using Studio.Api.Http;
using Studio.Core;

namespace Studio.Api.Catalogue;

/// <summary>
/// The rules changed while a write waited for its turn. It was begun under the old ones, so nothing of it is kept; asked
/// again, it goes by the new ones.
/// </summary>
public sealed class RulesChangedException()
    : Exception("The rules changed while this was waiting for its turn.");

/// <summary>Turns <see cref="RulesChangedException"/> into an answer.</summary>
public sealed class RulesChangedAnswer : IExceptionHandler
{
    private static readonly Refusal AskAgain = new(
        RefusalKind.Conflict,
        "rules-changed",
        "The studio's rules changed at this very moment, so nothing was done. Please do it again: the new rules hold now."
    );

    /// <inheritdoc/>
    public async ValueTask<bool> TryHandleAsync(
        HttpContext httpContext,
        Exception exception,
        CancellationToken cancellationToken
    )
    {
        if (exception is not RulesChangedException)
            return false;
        await AskAgain.ToProblem().ExecuteAsync(httpContext);
        return true;
    }
}
