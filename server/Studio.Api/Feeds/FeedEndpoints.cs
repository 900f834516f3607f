using System.ComponentModel.DataAnnotations;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Feeds;

namespace Studio.Api.Feeds;

/// <summary>A calendar address of one's own. The address itself is never told again.</summary>
public sealed record FeedMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>The sessions she teaches, or those she has booked.</summary>
    public required FeedReads Reads { get; init; }

    /// <summary>A client's calendar names the class; otherwise it says that she has a class, and where.</summary>
    public required bool NamesClass { get; init; }

    /// <summary>When it was made.</summary>
    public required Instant MadeAt { get; init; }
}

/// <summary>A new address.</summary>
public sealed record FeedMade
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>The address, from the host on. It is told here and nowhere else.</summary>
    public required string Path { get; init; }
}

/// <summary>What an address is wanted for.</summary>
public sealed record FeedWanted
{
    /// <summary>The sessions she teaches, or those she has booked.</summary>
    [Required]
    public required FeedReads Reads { get; init; }

    /// <summary>A client's calendar names the class; it does not unless she says so.</summary>
    public bool? NamesClass { get; init; }
}

/// <summary>What a client's calendar says.</summary>
public sealed record FeedNaming
{
    /// <summary>It names the class.</summary>
    [Required]
    public required bool NamesClass { get; init; }
}

/// <summary>Private calendar addresses, what is read through them, and single sessions as a file.</summary>
public static class FeedEndpoints
{
    private const string Calendar = "text/calendar";
    private const string Address = "/feeds/{address}.ics";

    /// <summary>Maps the routes.</summary>
    public static void MapFeeds(this IEndpointRouteBuilder app)
    {
        var feeds = app.MapGroup("/api/feeds")
            .WithTags("Calendars")
            .RequireAuthorization(Policies.SignedIn);
        feeds.MapGet("/", ListAsync).WithName("Feeds");
        feeds
            .MapPost("/", MakeAsync)
            .WithName("MakeFeed")
            .ProducesProblem(400)
            .ProducesProblem(403);
        feeds
            .MapPut("/{feedId}", NameAsync)
            .WithName("NameInFeed")
            .ProducesProblem(400)
            .ProducesProblem(404);
        feeds.MapDelete("/{feedId}", RevokeAsync).WithName("RevokeFeed").ProducesProblem(404);

        app.MapGet("/api/sessions/{sessionId}/calendar", OneAsync)
            .WithName("SessionCalendar")
            .WithTags("Calendars")
            .RequireAuthorization(Policies.SignedIn)
            .Produces(StatusCodes.Status200OK, contentType: Calendar)
            .ProducesProblem(404);

        Open(app.MapGet(Address, ReadAsync)).WithName("Feed");
        Open(app.MapMethods(Address, [HttpMethods.Head], ReadAsync)).WithName("FeedHead");

        static RouteHandlerBuilder Open(RouteHandlerBuilder route) =>
            route
                .WithTags("Calendars")
                .AllowAnonymous()
                .Produces(StatusCodes.Status200OK, contentType: Calendar)
                .Produces(StatusCodes.Status304NotModified)
                .ProducesProblem(404);
    }

    private static async Task<Ok<List<FeedMessage>>> ListAsync(Reader reader, Database database)
    {
        await using var read = await database.ReadAsync();
        return TypedResults.Ok(
            (await FeedStore.OfAsync(read, reader.AccountId))
                .Select(f => new FeedMessage
                {
                    Id = f.Id,
                    Reads = f.Reads,
                    NamesClass = f.NamesClass,
                    MadeAt = f.MadeAt,
                })
                .ToList()
        );
    }

    private static async Task<Results<Created<FeedMade>, ProblemHttpResult>> MakeAsync(
        FeedWanted request,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        if (!reader.CanHave(request.Reads))
            return FeedRefusals.NotYours(request.Reads).ToProblem();
        var isHers = request.Reads == FeedReads.Client;
        if (!isHers && request.NamesClass == false)
            return FeedRefusals.AlwaysNamed.ToProblem();
        var token = CalendarKeys.NewToken();
        await using var write = await database.BeginWriteAsync();
        var id = await FeedStore.MakeAsync(
            write,
            reader.AccountId,
            request.Reads,
            !isHers || request.NamesClass == true,
            CalendarKeys.Digest(token),
            clock.GetCurrentInstant()
        );
        await write.CommitAsync();
        return TypedResults.Created(
            $"/api/feeds/{id}",
            new FeedMade { Id = id, Path = FeedAddresses.Of(token) }
        );
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> NameAsync(
        long feedId,
        FeedNaming request,
        Reader reader,
        Database database
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            (await FeedStore.OfAsync(write, reader.AccountId)).Find(f => f.Id == feedId)
            is not { } feed
        )
            return FeedRefusals.NoSuchFeed.ToProblem();
        if (feed.Reads != FeedReads.Client)
            return FeedRefusals.AlwaysNamed.ToProblem();
        await FeedStore.NameAsync(write, feedId, request.NamesClass);
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> RevokeAsync(
        long feedId,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            !await FeedStore.RevokeAsync(write, reader.AccountId, feedId, clock.GetCurrentInstant())
        )
            return FeedRefusals.NoSuchFeed.ToProblem();
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> OneAsync(
        long sessionId,
        bool? named,
        Reader reader,
        Database database,
        Calendars calendars
    )
    {
        await using var read = await database.ReadAsync();
        if (await SessionStore.FindAsync(read, sessionId) is not { } session)
            return BookingRefusals.NoSuchSession.ToProblem();
        var bytes =
            reader.OnRoster(session.InstructorId) is not null
                ? await calendars.ForStaffAsync(read, sessionId)
            : reader.ClientId is { } client
                ? await calendars.ForClientAsync(read, client, sessionId, named == true)
            : null;
        return bytes is null
            ? BookingRefusals.NoSuchSession.ToProblem()
            : TypedResults.File(
                bytes,
                $"{Calendar}; charset=utf-8",
                $"class-{session.OnDate:uuuu-MM-dd}.ics"
            );
    }

    // The address is a digest by now: see FeedAddresses. It is looked up whole in an index, so that how long that takes says
    // nothing of how much of it was right.
    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> ReadAsync(
        string address,
        HttpResponse response,
        Database database,
        Calendars calendars
    )
    {
        await using var read = await database.ReadAsync();
        if (
            await FeedStore.FindAsync(read, address) is not { } feed
            || await calendars.OfAsync(read, feed) is not { } bytes
        )
        {
            response.Headers.CacheControl = "no-store";
            return FeedRefusals.NoSuchCalendar.ToProblem();
        }

        // Her own program may keep it and asks each time whether it changed; nobody on the way may.
        response.Headers.CacheControl = "private, no-cache";
        return TypedResults.File(
            bytes,
            $"{Calendar}; charset=utf-8",
            entityTag: new EntityTagHeaderValue(
                $"\"{Convert.ToHexStringLower(SHA256.HashData(bytes))}\""
            )
        );
    }
}
