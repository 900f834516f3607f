using System.Text.Json;
using Microsoft.Extensions.Options;
using NodaTime;
using Studio.Api.Data;
using Studio.Core.Booking;
using HttpJson = Microsoft.AspNetCore.Http.Json.JsonOptions;

namespace Studio.Api.Booking;

/// <summary>Remembers what was answered to a request with an Idempotency-Key, in the transaction that made it true.</summary>
public sealed class AnsweredRequests(IOptions<HttpJson> json, IClock clock)
{
    /// <summary>The earlier answer, a refusal when the key was used for something else, or null when it is new.</summary>
    public async Task<IResult?> EarlierAsync(
        Read read,
        long accountId,
        string key,
        string fingerprint
    )
    {
        var earlier = await read.FindAsync<Row>(
            "select fingerprint, status, body from answered_requests where account_id = @accountId and key = @key",
            new { accountId, key }
        );
        if (earlier is null)
            return null;
        return earlier.Fingerprint == fingerprint
            ? TypedResults.Content(
                earlier.Body,
                earlier.Status < 400 ? "application/json" : "application/problem+json",
                statusCode: earlier.Status
            )
            : Http.Problems.ToProblem(BookingRefusals.KeyReused);
    }

    /// <summary>Keeps an answer.</summary>
    public Task KeepAsync(
        Write write,
        long accountId,
        string key,
        string fingerprint,
        int status,
        object body
    ) =>
        write.ExecuteAsync(
            """
            insert into answered_requests (account_id, key, fingerprint, status, body, at)
            values (@accountId, @key, @fingerprint, @status, @body, @at)
            """,
            new
            {
                accountId,
                key,
                fingerprint,
                status,
                body = JsonSerializer.Serialize(body, body.GetType(), json.Value.SerializerOptions),
                at = clock.GetCurrentInstant(),
            }
        );

    private sealed record Row
    {
        public string Fingerprint { get; init; } = "";
        public int Status { get; init; }
        public string Body { get; init; } = "";
    }
}
