using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core;

namespace Studio.Api.Jobs;

/// <summary>A job and its latest runs.</summary>
public sealed record JobMessage(string Name, string Title, string Does, IReadOnlyList<JobRun> Runs);

/// <summary>The owner's view of the nightly jobs.</summary>
public static class JobEndpoints
{
    private static readonly Refusal NoSuchJob = new(
        RefusalKind.NotFound,
        "no-such-job",
        "There is no such job."
    );

    /// <summary>Maps the routes.</summary>
    public static void MapJobs(this IEndpointRouteBuilder app)
    {
        var jobs = app.MapGroup("/api/jobs").WithTags("Jobs").RequireAuthorization(Policies.Owner);
        jobs.MapGet("/", ListAsync).WithName("Jobs");
        jobs.MapPost("/{name}/run", RunAsync).WithName("RunJob").ProducesProblem(404);
    }

    private static async Task<List<JobMessage>> ListAsync(Database database)
    {
        await using var read = await database.ReadAsync();
        var list = new List<JobMessage>();
        foreach (var job in JobList.All)
            list.Add(
                new JobMessage(
                    job.Name,
                    job.Title,
                    job.Does,
                    await JobRunStore.LatestAsync(read, job.Name, 10)
                )
            );
        return list;
    }

    private static async Task<Results<Ok<JobRun>, ProblemHttpResult>> RunAsync(
        string name,
        NightSweep nights
    ) =>
        await nights.RunByHandAsync(name) is { } run ? TypedResults.Ok(run) : NoSuchJob.ToProblem();
}
