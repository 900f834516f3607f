using Studio.Api.Accounts;

namespace Studio.Api.Audit;

/// <summary>Routes whose answers speak of somebody's health.</summary>
public static class AuditedRoutes
{
    /// <summary>
    /// Every good answer of this route is written to the audit trail before it leaves: for the client in the route, or,
    /// without one, for those the handler named with <see cref="HealthAudit.Saw(long)"/>.
    /// </summary>
    public static TBuilder Audited<TBuilder>(this TBuilder route, string kind)
        where TBuilder : IEndpointConventionBuilder =>
        route
            .WithMetadata(new AuditedAttribute(kind))
            .AddEndpointFilter(
                async (call, next) =>
                {
                    var answer = await next(call);
                    var http = call.HttpContext;
                    if (Status(answer) is not (>= 200 and < 300))
                        return answer;
                    var audit = http.RequestServices.GetRequiredService<HealthAudit>();
                    if (Number(http, "clientId") is { } client)
                        audit.Saw(client);
                    await audit.RecordReadsAsync(
                        SignInClaims.Read(http.User),
                        kind,
                        Number(http, "sessionId")
                    );
                    return answer;
                }
            );

    private static int Status(object? answer) =>
        answer is INestedHttpResult nested ? Status(nested.Result)
        : answer is IStatusCodeHttpResult { StatusCode: { } code } ? code
        : 200;

    private static long? Number(HttpContext http, string name) =>
        long.TryParse(http.Request.RouteValues[name]?.ToString(), out var number) ? number : null;
}

/// <summary>Marks a route whose answers are written to the audit trail.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class AuditedAttribute(string kind) : Attribute
{
    /// <summary>Which part of the record it shows.</summary>
    public string Kind { get; } = kind;
}
