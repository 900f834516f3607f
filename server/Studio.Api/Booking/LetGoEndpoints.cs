using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Booking;

namespace Studio.Api.Booking;

/// <summary>Somebody whose seat a change of the timetable let go, and where she may go instead.</summary>
public sealed record LetGoMessage
{
    /// <summary>The booking that was let go.</summary>
    public required long BookingId { get; init; }

    /// <summary>Whose.</summary>
    public required long ClientId { get; init; }

    /// <summary>Her name.</summary>
    public required string Name { get; init; }

    /// <summary>What she likes to be called.</summary>
    public required string Called { get; init; }

    /// <summary>Her phone number.</summary>
    public required string Phone { get; init; }

    /// <summary>Why it was let go.</summary>
    public required LetGo Why { get; init; }

    /// <summary>When.</summary>
    public required Instant At { get; init; }

    /// <summary>The session as it stands now.</summary>
    public required SessionSummary Session { get; init; }

    /// <summary>Sessions about that day that suit her on their date and have a seat, the best first.</summary>
    public required IReadOnlyList<Choice> Choices { get; init; }
}

/// <summary>People a change of the timetable let go, for the front desk.</summary>
public static class LetGoEndpoints
{
    private const int DaysAround = 10;
    private const int DaysKept = 14;
    private const int MostChoices = 3;

    /// <summary>Maps the routes.</summary>
    public static void MapLetGo(this IEndpointRouteBuilder app)
    {
        var letGo = app.MapGroup("/api/let-go")
            .WithTags("Booking")
            .RequireAuthorization(Policies.Desk);
        letGo.MapGet("/", ListAsync).WithName("LetGo").Audited(AuditKinds.Fit);
        letGo.MapPost("/{bookingId}/seen-to", SeenToAsync).WithName("SeenTo").ProducesProblem(404);
    }

    private static async Task<List<LetGoMessage>> ListAsync(
        Reader reader,
        Database database,
        Bookings bookings,
        SessionSummaries summaries,
        HealthAudit audit,
        IClock clock
    )
    {
        await using var read = await database.ReadAsync();
        var now = clock.GetCurrentInstant();
        var open = await LetGoStore.OpenAsync(read, now - Duration.FromDays(DaysKept));
        var rows = (
            await SessionStore.OfAsync(read, [.. open.Select(o => o.SessionId).Distinct()])
        ).ToDictionary(s => s.Id);
        var summaryOf = (await summaries.OfAsync(read, rows.Values)).ToDictionary(s => s.Id);
        var list = new List<LetGoMessage>();
        foreach (var one in open)
        {
            if (await ClientStore.FindAsync(read, reader, one.ClientId) is not { } client)
                continue;
            var on = rows[one.SessionId].OnDate;
            var choices = await bookings.ChoicesAsync(
                read,
                client,
                on.PlusDays(-DaysAround),
                on.PlusDays(DaysAround),
                summaries
            );
            audit.Saw(one.ClientId);
            list.Add(
                new LetGoMessage
                {
                    BookingId = one.BookingId,
                    ClientId = one.ClientId,
                    Name = one.Name,
                    Called = one.Called,
                    Phone = one.Phone,
                    Why = one.Why,
                    At = one.At,
                    Session = summaryOf[one.SessionId],
                    Choices =
                    [
                        .. choices
                            .Where(c => c.CanBook == CanBook.Seat)
                            .OrderBy(c => c.Fit.Verdict)
                            .ThenBy(c => Math.Abs(Period.DaysBetween(on, c.Session.On)))
                            .Take(MostChoices),
                    ],
                }
            );
        }

        return list;
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> SeenToAsync(
        long bookingId,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            await BookingStore.FindAsync(write, bookingId) is not { } booking
            || await ClientStore.AudienceAsync(write, reader, booking.ClientId) is null
            || !await LetGoStore.SeenToAsync(write, bookingId, clock.GetCurrentInstant())
        )
            return BookingRefusals.NoSuchBooking.ToProblem();
        write.Tell("session");
        await write.CommitAsync();
        return TypedResults.NoContent();
    }
}
