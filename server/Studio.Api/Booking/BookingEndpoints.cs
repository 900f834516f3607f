using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Passes;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Passes;

namespace Studio.Api.Booking;

/// <summary>Booking, cancelling, checking in.</summary>
public static class BookingEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapBooking(this IEndpointRouteBuilder app)
    {
        var booking = app.MapGroup("/api")
            .WithTags("Booking")
            .RequireAuthorization(Policies.DeskOrClient)
            .ProducesProblem(403)
            .ProducesProblem(404)
            .ProducesProblem(409);
        booking
            .MapPost("/sessions/{sessionId}/bookings", BookAsync)
            .WithName("Book")
            .Produces<BookingAnswer>(StatusCodes.Status201Created)
            .ProducesProblem(400);
        booking.MapDelete("/bookings/{bookingId}", CancelAsync).WithName("Cancel");
        booking
            .MapGet("/clients/{clientId}/sessions", ChoicesAsync)
            .WithName("SessionsForClient")
            .ProducesProblem(400)
            .Audited(AuditKinds.Fit);
        booking
            .MapGet("/clients/{clientId}/bookings", OfClientAsync)
            .WithName("BookingsOfClient")
            .ProducesProblem(400)
            .Audited(AuditKinds.Fit);

        // For anybody signed in: whose client she is not, she is not there.
        app.MapGet("/api/clients/{clientId}/sessions/{sessionId}", ChoiceAsync)
            .WithName("SessionForClient")
            .WithTags("Booking")
            .RequireAuthorization(Policies.SignedIn)
            .ProducesProblem(404);

        var door = app.MapGroup("/api/bookings/{bookingId}/check-in")
            .WithTags("Booking")
            .RequireAuthorization(Policies.Staff)
            .ProducesProblem(404)
            .ProducesProblem(409);
        door.MapPost("/", CheckInAsync).WithName("CheckIn").ProducesProblem(400);
        door.MapDelete("/", UndoAsync).WithName("UndoCheckIn");
    }

    private static async Task<IResult> BookAsync(
        long sessionId,
        BookingRequest request,
        [FromHeader(Name = "Idempotency-Key")] string? key,
        Reader reader,
        Database database,
        Bookings bookings,
        AnsweredRequests answered
    )
    {
        if (key is { Length: 0 or > 200 })
            return BookingRefusals.BadKey.ToProblem();

        await using var write = await database.BeginWriteAsync();
        var fingerprint = $"book {sessionId} {request.ClientId}";
        if (
            key is not null
            && await answered.EarlierAsync(write, reader.AccountId, key, fingerprint) is { } earlier
        )
            return earlier;

        var answer = await bookings.BookAsync(write, reader, sessionId, request.ClientId);
        IResult result = answer.TryGet(out var booked, out var refusal)
            ? TypedResults.Created($"/api/bookings/{booked.BookingId}", booked)
            : refusal.ToProblem();
        if (key is not null)
        {
            var status = ((IStatusCodeHttpResult)result).StatusCode!.Value;
            var body = result is ProblemHttpResult problem
                ? problem.ProblemDetails
                : (object)booked!;
            await answered.KeepAsync(write, reader.AccountId, key, fingerprint, status, body);
        }

        if (key is not null || booked is not null)
            await write.CommitAsync();
        return result;
    }

    private static async Task<Results<Ok<CancellationAnswer>, ProblemHttpResult>> CancelAsync(
        long bookingId,
        bool? medical,
        Reader reader,
        Database database,
        Bookings bookings
    )
    {
        await using var write = await database.BeginWriteAsync();
        var answer = await bookings.CancelAsync(write, reader, bookingId, medical == true);
        if (!answer.TryGet(out var cancelled, out var refusal))
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.Ok(cancelled);
    }

    private static async Task<Results<Ok<List<Choice>>, ProblemHttpResult>> ChoicesAsync(
        long clientId,
        QueryDay? from,
        QueryDay? to,
        Reader reader,
        Database database,
        Bookings bookings,
        SessionSummaries summaries,
        StudioStore studio
    )
    {
        await using var read = await database.ReadAsync();
        if (await ClientStore.FindAsync(read, reader, clientId) is not { } client)
            return BookingRefusals.NoSuchClient.ToProblem();
        var first = from?.Value ?? studio.Today(client.Row.Zone);
        var last = to?.Value ?? first.PlusDays(27);
        if (Range(first, last) is { } refusal)
            return refusal.ToProblem();
        return TypedResults.Ok(await bookings.ChoicesAsync(read, client, first, last, summaries));
    }

    private static async Task<Results<Ok<ChoiceInFull>, ProblemHttpResult>> ChoiceAsync(
        long clientId,
        long sessionId,
        Reader reader,
        Database database,
        Bookings bookings,
        SessionSummaries summaries
    )
    {
        await using var read = await database.ReadAsync();
        if (await ClientStore.FindAsync(read, reader, clientId) is not { } client)
            return BookingRefusals.NoSuchClient.ToProblem();
        return await SessionStore.FindAsync(read, sessionId) is { } session
            ? TypedResults.Ok(await bookings.ChoiceAsync(read, client, session, summaries))
            : BookingRefusals.NoSuchSession.ToProblem();
    }

    private static async Task<Results<Ok<List<ClientBooking>>, ProblemHttpResult>> OfClientAsync(
        long clientId,
        QueryDay? from,
        QueryDay? to,
        Reader reader,
        Database database,
        SessionSummaries summaries,
        RuleBook book,
        StudioStore studio,
        IClock clock
    )
    {
        await using var read = await database.ReadAsync();
        if (await ClientStore.FindAsync(read, reader, clientId) is not { } client)
            return BookingRefusals.NoSuchClient.ToProblem();
        var first = from?.Value ?? studio.Today(client.Row.Zone);
        var last = to?.Value ?? first.PlusDays(180);
        if (Range(first, last) is { } refusal)
            return refusal.ToProblem();

        var wanted = new SessionsWanted
        {
            ClientId = clientId,
            From = first,
            To = last,
        };
        var sessions = await SessionStore.ListAsync(read, wanted);
        var rows = sessions.ToDictionary(s => s.Id);
        var mine = (await BookingStore.OfAsync(read, clientId)).ToDictionary(b => b.SessionId);
        var fits = await Fits.LoadAsync(read, book, [clientId]);
        var paid = (await PassStore.OfAsync(read, [clientId]))
            .SelectMany(p => p.Entries)
            .Where(e => e.Kind == EntryKind.Spent)
            .Select(e => e.BookingId)
            .ToHashSet();
        var list = new List<ClientBooking>();
        foreach (var session in await summaries.OfAsync(read, sessions))
        {
            var booking = mine[session.Id];
            list.Add(
                new ClientBooking
                {
                    BookingId = booking.Id,
                    Status = booking.Status,
                    Place =
                        booking.Status == BookingStatus.Waiting
                            ? await BookingStore.PlaceAsync(read, booking)
                            : null,
                    CheckedInAt = booking.CheckedInAt,
                    Session = session,
                    Fit = FitMessage.For(fits.Of(clientId, rows[session.Id]), client.Audience),
                    IfCancelled = PassRules.OnGivingUp(
                        paid.Contains(booking.Id),
                        GivenUp.Cancelled,
                        session.StartsAt,
                        60 * fits.Policies.CancelFreeHours,
                        clock.GetCurrentInstant()
                    ),
                }
            );
        }

        return TypedResults.Ok(list);
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> CheckInAsync(
        long bookingId,
        CheckInRequest request,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await AtTheDoorAsync(write, reader, bookingId) is not { } booking)
            return BookingRefusals.NoSuchBooking.ToProblem();
        var her = await SituationStore.OfAsync(write, booking.ClientId);
        var session = (await SessionStore.FindAsync(write, booking.SessionId))!;
        if (her.Holds.Any(h => h.StandsOn(session.OnDate)))
            return BookingRefusals.OnHoldAtTheDoor.ToProblem();
        var well = request.Answer == DoorAnswer.AllWell;
        return await BookingStore.CheckInAsync(write, bookingId, clock.GetCurrentInstant(), well)
            ? await DoneAsync(write, booking)
            : BookingRefusals.NoSeat.ToProblem();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> UndoAsync(
        long bookingId,
        Reader reader,
        Database database
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await AtTheDoorAsync(write, reader, bookingId) is not { } booking)
            return BookingRefusals.NoSuchBooking.ToProblem();
        return await BookingStore.UndoCheckInAsync(write, bookingId)
            ? await DoneAsync(write, booking)
            : BookingRefusals.NoSeat.ToProblem();
    }

    private static async Task<NoContent> DoneAsync(Write write, BookingRow booking)
    {
        write.Tell("session", booking.SessionId);
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    // After a loss she is on no roster below the owner's.
    private static async Task<BookingRow?> AtTheDoorAsync(
        Read read,
        Reader reader,
        long bookingId
    ) =>
        await BookingStore.FindAsync(read, bookingId) is { } booking
        && await SessionStore.FindAsync(read, booking.SessionId) is { } session
        && reader.OnRoster(session.InstructorId) is not null
        && (
            reader.IsOwner
            || await ClientStore.FindAsync(read, booking.ClientId) is not { Ended: true }
        )
            ? booking
            : null;

    private static Refusal? Range(LocalDate from, LocalDate to) =>
        to < from
            ? new Refusal(
                RefusalKind.Invalid,
                "bad-range",
                "The last date lies before the first.",
                "to"
            )
        : Period.DaysBetween(from, to) > 366
            ? new Refusal(
                RefusalKind.Invalid,
                "bad-range",
                "Please ask for a year at the most.",
                "to"
            )
        : null;
}
