using Microsoft.AspNetCore.Mvc;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Booking;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;

namespace Studio.Api.Incidents;

/// <summary>A warning sign is raised: everything of hers is held at once, and what happened is written down.</summary>
public static class WarningEndpoints
{
    private static readonly Refusal NoSuchSign = new(
        RefusalKind.Invalid,
        "no-such-sign",
        "That is none of the warning signs. Choose from the list, or say in words what happened.",
        "signs"
    );

    private static readonly Refusal NotInSession = new(
        RefusalKind.Invalid,
        "not-in-session",
        "She has no seat in that session. Leave the session out, or choose the one she is in.",
        "sessionId"
    );

    /// <summary>Maps the routes.</summary>
    public static void MapWarnings(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/warning-signs", Signs)
            .WithName("WarningSigns")
            .WithTags("Incidents")
            .RequireAuthorization(Policies.SignedIn);
        app.MapPost("/api/clients/{clientId}/holds", HoldAsync)
            .WithName("Hold")
            .WithTags("Incidents")
            .RequireAuthorization(Policies.SignedIn)
            .Produces<StopAndRefer>()
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
    }

    private static IEnumerable<WarningSignMessage> Signs(RuleBook book) =>
        book.WarningSigns.Select(s => new WarningSignMessage(
            s.Code,
            s.Name,
            s.Asks,
            s.When,
            s.Stops,
            FitMessage.Cite(s.Source)
        ));

    private static async Task<IResult> HoldAsync(
        long clientId,
        WarningRequest? request,
        [FromHeader(Name = "Idempotency-Key")] string? key,
        Reader reader,
        Database database,
        RuleBook book,
        AnsweredRequests answered,
        HealthAudit audit,
        HealthChanges changes
    )
    {
        if (key is { Length: 0 or > 200 })
            return BookingRefusals.BadKey.ToProblem();
        await using var write = await database.BeginWriteAsync();
        if (
            await ClientStore.FindAsync(write, clientId) is not { } row
            || !await MayHoldAsync(write, reader, row, changes)
        )
            return BookingRefusals.NoSuchClient.ToProblem();
        var fingerprint = $"hold {clientId}";
        if (
            key is not null
            && await answered.EarlierAsync(write, reader.AccountId, key, fingerprint) is { } earlier
        )
            return earlier;
        List<string> signs = [.. (request?.Signs ?? []).Select(s => s ?? "").Distinct()];
        if (signs.Exists(code => !book.WarningSigns.Any(s => s.Code == code)))
            return NoSuchSign.ToProblem();
        var session = request?.SessionId;
        // The entry and the hold that follows it are of one moment.
        var now = changes.Now;
        if (session is not null && !await IsInAsync(write, clientId, session.Value))
            return NotInSession.ToProblem();

        var incident = await IncidentStore.AddAsync(
            write,
            new NewIncident
            {
                ClientId = clientId,
                SessionId = session,
                Signs = signs,
                Happened = Words(
                    request?.Happened,
                    reader.ClientId == clientId
                        ? "She raised it herself."
                        : "A warning sign was raised."
                ),
                Done = Words(request?.Done, "Her bookings were put on hold."),
            },
            now,
            reader.AccountId
        );
        await HealthStore.HoldAsync(
            write,
            clientId,
            changes.Today(row),
            now,
            reader.AccountId,
            incident
        );
        var number = await write.ValueAsync<string>(
            """
            select l.emergency_number from locations l
             where l.id = coalesce(
                   (select r.location_id from sessions s join rooms r on r.id = s.room_id where s.id = @session),
                   @HomeLocationId)
            """,
            new { session, row.HomeLocationId }
        );
        // Whoever was well at the door is no longer.
        await BookingStore.NoLongerWellAsync(write, clientId, changes.Today(row));
        var card = new StopAndRefer(
            incident,
            reader.ClientId == clientId
                ? "Please stop, and speak to your midwife or doctor today. Your bookings rest, at no charge, until there is a new letter. If it is bad or sudden, call the emergency number."
                : "Stop the class for her. Let her rest, stay with her, and refer her to her midwife or doctor today. If it is bad or sudden, call the emergency number. Everything of hers is on hold, at no charge, until a new letter has been read.",
            number
        );
        if (key is not null)
            await answered.KeepAsync(
                write,
                reader.AccountId,
                key,
                fingerprint,
                StatusCodes.Status200OK,
                card
            );
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Incident);
        await changes.DoneAsync(write, clientId);
        return TypedResults.Ok(card);
    }

    private static string Words(string? said, string otherwise) =>
        string.IsNullOrWhiteSpace(said) ? otherwise : said.Trim();

    private static async Task<bool> IsInAsync(Read read, long clientId, long sessionId) =>
        await read.ValueAsync<long>(
            """
            select count(*) from bookings
             where client_id = @clientId and session_id = @sessionId and status = 'booked'
            """,
            new { clientId, sessionId }
        ) > 0;

    // The desk, the owner and she herself; and an instructor for somebody on a roster of hers, today or the day around.
    private static async Task<bool> MayHoldAsync(
        Read read,
        Reader reader,
        ClientRow row,
        HealthChanges changes
    ) =>
        reader.On(row.Id, row.Ended) is not null
        || (
            !row.Ended
            && reader.InstructorId is { } instructor
            && await read.ValueAsync<long>(
                """
                select count(*) from bookings b join sessions s on s.id = b.session_id
                 where b.client_id = @Id and b.status = 'booked' and s.instructor_id = @instructor
                   and s.on_date between @from and @to
                """,
                new
                {
                    row.Id,
                    instructor,
                    from = changes.Today(row).PlusDays(-1),
                    to = changes.Today(row).PlusDays(1),
                }
            ) > 0
        );
}
