using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Catalogue;
using Studio.Core.Timetable;

namespace Studio.Api.Staff;

/// <summary>Minutes from door to door, one way.</summary>
public sealed record TravelTime
{
    /// <summary>From this location.</summary>
    public required long FromLocationId { get; init; }

    /// <summary>To that one.</summary>
    public required long ToLocationId { get; init; }

    /// <summary>Minutes; null: not known, and then nothing is checked.</summary>
    [Range(1, 600)]
    public int? Minutes { get; init; }
}

/// <summary>Travel times to keep; those not named stay as they are.</summary>
public sealed record TravelRequest
{
    /// <summary>One way each.</summary>
    [Required, MinLength(1), MaxLength(400)]
    [NoGaps]
    public required IReadOnlyList<TravelTime> Times { get; init; }
}

/// <summary>What became of them.</summary>
/// <param name="TooClose">Sessions to come that now lie too close together for somebody; they stay as they are.</param>
public sealed record TravelAnswer(IReadOnlyList<string> TooClose);

/// <summary>How long it takes from one location to another.</summary>
public static class TravelEndpoints
{
    private const int WeeksLookedAt = 26;

    /// <summary>Maps the routes.</summary>
    public static void MapTravel(this IEndpointRouteBuilder app)
    {
        var travel = app.MapGroup("/api/travel")
            .WithTags("Staff")
            .RequireAuthorization(Policies.Owner);
        travel.MapGet("/", ListAsync).WithName("TravelTimes");
        travel.MapPut("/", SetAsync).WithName("SetTravelTimes").ProducesProblem(400);
    }

    private static async Task<List<TravelTime>> ListAsync(Database database)
    {
        await using var read = await database.ReadAsync();
        var known = (await TravelStore.ListAsync(read)).ToDictionary(
            t => (t.FromLocationId, t.ToLocationId),
            t => t.Minutes
        );
        var places = (await StudioStore.LocationsAsync(read)).Select(l => l.Id).ToList();
        return
        [
            .. from one in places
            from other in places
            where one != other
            select new TravelTime
            {
                FromLocationId = one,
                ToLocationId = other,
                Minutes = known.GetValueOrDefault((one, other)),
            },
        ];
    }

    private static async Task<Results<Ok<TravelAnswer>, ProblemHttpResult>> SetAsync(
        TravelRequest request,
        Database database,
        StudioStore studio,
        RuleBook book,
        IClock clock
    )
    {
        var today = (await studio.AboutAsync()).Today;
        await using var write = await database.BeginWriteAsync();
        var places = (await StudioStore.LocationsAsync(write)).Select(l => l.Id).ToHashSet();
        for (var i = 0; i < request.Times.Count; i++)
        {
            var time = request.Times[i];
            if (
                time.FromLocationId == time.ToLocationId
                || !places.Contains(time.FromLocationId)
                || !places.Contains(time.ToLocationId)
            )
                return new Refusal(
                    RefusalKind.Invalid,
                    "no-such-location",
                    "A way leads from one location of the studio to another.",
                    $"times[{i}]"
                ).ToProblem();
            await TravelStore.SetAsync(write, time);
        }

        var now = clock.GetCurrentInstant();
        var ahead = (
            await TimetableStore.PlacedAsync(write, today, today.PlusDays(7 * WeeksLookedAt))
        ).Where(s => s.StartsAt > now);
        var tooClose = TimetableChecks
            .Of(ahead, await TimetableStore.FactsAsync(write, book))
            .Where(c => c.Kind == ConflictKind.NoTimeToTravel)
            .Select(c => c.Words)
            .ToList();
        write.Tell("staff");
        await write.CommitAsync();
        return TypedResults.Ok(new TravelAnswer(tooClose));
    }
}
