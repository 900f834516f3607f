using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core;
using Studio.Core.Accounts;

namespace Studio.Api.Timetable;

/// <summary>Days on which a location is to be shut.</summary>
public sealed record ClosureRequest
{
    /// <summary>The location.</summary>
    public required long LocationId { get; init; }

    /// <summary>First day.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Last day.</summary>
    public required LocalDate To { get; init; }

    /// <summary>Why.</summary>
    public required ClosureKind Kind { get; init; }

    /// <summary>Its name, as people read it.</summary>
    [Required, StringLength(120, MinimumLength = 1)]
    public required string Name { get; init; }

    /// <summary>Sessions that stand on these days are called off with it.</summary>
    public bool CallOff { get; init; }
}

/// <summary>What a closure does, or would do.</summary>
public sealed record ClosureOutcome
{
    /// <summary>It was kept; false when it was only looked at.</summary>
    public required bool Kept { get; init; }

    /// <summary>The closure, once it is there.</summary>
    public long? Id { get; init; }

    /// <summary>Sessions that stand on its days.</summary>
    public required IReadOnlyList<SessionSummary> Sessions { get; init; }

    /// <summary>What calling them off brings about.</summary>
    public required ChangesPreview Changes { get; init; }
}

/// <summary>What an opening again brought about.</summary>
/// <param name="LaidOut">Sessions of series that were laid out on days that are open again.</param>
public sealed record OpenedAgain(int LaidOut);

/// <summary>Closures and public holidays of a location.</summary>
public static class ClosureEndpoints
{
    private const int MostDays = 366;
    private const int MostBytes = 1024 * 1024;

    private static readonly Refusal NoSuchClosure = new(
        RefusalKind.NotFound,
        "no-such-closure",
        "There is no such closure."
    );

    private static readonly Refusal NoSuchLocation = new(
        RefusalKind.Invalid,
        "no-such-location",
        "There is no such location. Please choose one of the list.",
        "locationId"
    );

    private static readonly Refusal BadRange = new(
        RefusalKind.Invalid,
        "bad-range",
        "The last day must not lie before the first, nor more than a year after it.",
        "to"
    );

    private static readonly Refusal NoName = new(
        RefusalKind.Invalid,
        "no-name",
        "Please give it a name, so that people read why it is shut.",
        "name"
    );

    private static readonly Refusal StandsAlready = new(
        RefusalKind.Conflict,
        "closed-already",
        "A closure of this name begins on this day there already.",
        "name"
    );

    private static readonly Refusal NoFile = new(
        RefusalKind.Invalid,
        "no-file",
        "Please send exactly one file: CSV, or an iCalendar file (.ics).",
        "file"
    );

    private static readonly Refusal TooLarge = new(
        RefusalKind.Invalid,
        "too-large",
        "The file is larger than 1 MB. Please split it.",
        "file"
    );

    /// <summary>Maps the routes.</summary>
    public static void MapClosures(this IEndpointRouteBuilder app)
    {
        var closures = app.MapGroup("/api/closures")
            .WithTags("Timetable")
            .RequireAuthorization(Policies.Owner);
        closures.MapGet("/", ListAsync).WithName("Closures");
        closures
            .MapPost("/", AddAsync)
            .WithName("AddClosure")
            .ProducesProblem(400)
            .ProducesProblem(409);
        closures
            .MapPost("/import", ImportAsync)
            .WithName("ImportHolidays")
            .Accepts<IFormFile>("multipart/form-data")
            .Produces<HolidayReport>()
            .Produces<HolidayReport>(StatusCodes.Status422UnprocessableEntity)
            .ProducesProblem(400)
            .ProducesProblem(413)
            .DisableAntiforgery();
        closures
            .MapPost("/{closureId}/call-off", CallOffAsync)
            .WithName("CallOffOnClosure")
            .ProducesProblem(404)
            .ProducesProblem(409);
        closures
            .MapDelete("/{closureId}", RemoveAsync)
            .WithName("RemoveClosure")
            .ProducesProblem(404);
    }

    private static async Task<List<ClosureRow>> ListAsync(Database database, IClock clock)
    {
        await using var read = await database.ReadAsync();
        return await ClosureStore.ListAsync(read, clock.GetCurrentInstant());
    }

    private static async Task<Results<Ok<ClosureOutcome>, ProblemHttpResult>> AddAsync(
        ClosureRequest request,
        bool? dryRun,
        Reader reader,
        Database database,
        SessionChanges changes,
        SessionSummaries summaries,
        IClock clock
    )
    {
        var name = request.Name.Trim();
        if (name.Length == 0)
            return NoName.ToProblem();
        if (request.To < request.From || Period.DaysBetween(request.From, request.To) >= MostDays)
            return BadRange.ToProblem();
        await using var write = await database.BeginWriteAsync();
        if (!await HasLocationAsync(write, request.LocationId))
            return NoSuchLocation.ToProblem();
        var standing = await ClosureStore.SessionsOnAsync(
            write,
            request.LocationId,
            request.From,
            request.To,
            clock.GetCurrentInstant()
        );
        var id = await ClosureStore.AddAsync(
            write,
            request.LocationId,
            request.From,
            request.To,
            request.Kind,
            name
        );
        if (id is null)
            return StandsAlready.ToProblem();
        var outcome = await CalledOffAsync(
            write,
            standing,
            changes,
            summaries,
            request.CallOff && dryRun != true,
            reader.AccountId
        );
        if (!outcome.TryGet(out var done, out var refusal))
            return refusal.ToProblem();
        if (dryRun == true)
            return TypedResults.Ok(done with { Kept = false });
        write.Tell("session");
        await write.CommitAsync();
        return TypedResults.Ok(done with { Id = id, Kept = true });
    }

    private static async Task<Results<Ok<ClosureOutcome>, ProblemHttpResult>> CallOffAsync(
        long closureId,
        bool? dryRun,
        Reader reader,
        Database database,
        SessionChanges changes,
        SessionSummaries summaries,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        var now = clock.GetCurrentInstant();
        if (await ClosureStore.FindAsync(write, closureId, now) is not { } closure)
            return NoSuchClosure.ToProblem();
        var outcome = await CalledOffAsync(
            write,
            await ClosureStore.SessionsOnAsync(
                write,
                closure.LocationId,
                closure.From,
                closure.To,
                now
            ),
            changes,
            summaries,
            dryRun != true,
            reader.AccountId
        );
        if (!outcome.TryGet(out var done, out var refusal))
            return refusal.ToProblem();
        if (dryRun != true)
            await write.CommitAsync();
        return TypedResults.Ok(done with { Id = closureId, Kept = dryRun != true });
    }

    private static async Task<Results<Ok<OpenedAgain>, ProblemHttpResult>> RemoveAsync(
        long closureId,
        Database database,
        SeriesPlans plans,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            await ClosureStore.FindAsync(write, closureId, clock.GetCurrentInstant())
            is not { } closure
        )
            return NoSuchClosure.ToProblem();
        await ClosureStore.RemoveAsync(write, closureId);
        var made = await plans.LayOutAsync(
            write,
            [.. (await SeriesStore.ListAsync(write)).Where(s => s.LocationId == closure.LocationId)]
        );
        write.Tell("session");
        await write.CommitAsync();
        return TypedResults.Ok(new OpenedAgain(made));
    }

    private static async Task<IResult> ImportAsync(
        bool? dryRun,
        long? locationId,
        HttpRequest request,
        Database database,
        IClock clock
    )
    {
        if (
            !(await UploadedFile.ReadAsync(request, MostBytes, NoFile)).TryGet(
                out var bytes,
                out var refusal
            )
        )
        {
            // No file is no refusal of the form itself.
            return (refusal ?? NoFile).ToProblem();
        }

        if (bytes.Length > MostBytes)
            return TooLarge.ToProblem(StatusCodes.Status413PayloadTooLarge);
        await using var write = await database.BeginWriteAsync();
        if (locationId is { } at && !await HasLocationAsync(write, at))
            return NoSuchLocation.ToProblem();
        var report = await HolidayImports.RunAsync(
            write,
            bytes,
            locationId,
            dryRun == true,
            clock.GetCurrentInstant()
        );
        if (dryRun != true && report.Refused.Count == 0)
        {
            write.Tell("session");
            await write.CommitAsync();
        }

        return dryRun == true || report.Refused.Count == 0
            ? TypedResults.Ok(report)
            : TypedResults.UnprocessableEntity(report);
    }

    private static async Task<Answer<ClosureOutcome>> CalledOffAsync(
        Write write,
        IReadOnlyList<SessionRow> standing,
        SessionChanges changes,
        SessionSummaries summaries,
        bool callsOff,
        long by
    )
    {
        List<SessionWanted> wanted =
        [
            .. standing.Select(s => SessionWanted.As(s) with { IsHeld = false }),
        ];
        var sessions = await summaries.OfAsync(write, standing);
        if (!(await changes.PreviewAsync(write, wanted)).TryGet(out var preview, out var refusal))
            return refusal;
        if (callsOff)
        {
            var made = await changes.ApplyAsync(write, wanted, new ChangeTerms(by, Anyway: true));
            if (!made.TryGet(out _, out refusal))
                return refusal;
        }

        return new ClosureOutcome
        {
            Kept = false,
            Sessions = sessions,
            Changes = preview,
        };
    }

    private static async Task<bool> HasLocationAsync(Read read, long id) =>
        await read.FindAsync<long?>("select id from locations where id = @id", new { id })
            is not null;
}
