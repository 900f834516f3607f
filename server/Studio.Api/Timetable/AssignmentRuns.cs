using System.Text.Json;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.Extensions.Options;
using NodaTime;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>The search that is at it, if one is: runs it beside the requests, and keeps what it finds.</summary>
public sealed partial class AssignmentRuns(
    Database database,
    Live live,
    IClock clock,
    IOptions<JsonOptions> json,
    ILogger<AssignmentRuns> log
) : IHostedService, IDisposable
{
    private readonly Lock _gate = new();
    private Going? _going;
    private bool _stopping;

    /// <summary>How far it has come; null when it is not this one, or has not said anything yet.</summary>
    public AssignmentProgress? ProgressOf(long run)
    {
        lock (_gate)
            return _going?.Run == run ? _going.Progress : null;
    }

    /// <summary>Begins one; refused while another is at it, and where nothing may change.</summary>
    public async Task<Answer<long>> BeginAsync(AssignmentRequest asked, long by)
    {
        var now = clock.GetCurrentInstant();
        await using var write = await database.BeginWriteAsync();
        if (await AssignmentStore.IsOneRunningAsync(write))
            return AssignmentRefusals.OneIsRunning;
        var plan = await AssignmentQuestion.ReadAsync(write, asked, now);
        if (!plan.TryGet(out var question, out var refusal))
            return refusal;
        var run = await AssignmentStore.BeginAsync(
            write,
            asked,
            json.Value.SerializerOptions,
            by,
            now
        );
        write.Tell("assignments", run);
        var going = new Going(run, _stopping ? TimeSpan.Zero : TimeSpan.FromSeconds(asked.Seconds));
        await write.CommitAsync();
        lock (_gate)
        {
            _going = going;
            going.Work = Task
                .Factory.StartNew(
                    () => WorkAsync(going, question),
                    CancellationToken.None,
                    TaskCreationOptions.LongRunning,
                    TaskScheduler.Default
                )
                .Unwrap();
        }

        return run;
    }

    /// <summary>Ends it early; what it has found by then is kept. False when it is not this one that is at it.</summary>
    public bool Cancel(long run)
    {
        Going going;
        lock (_gate)
        {
            if (_going?.Run != run)
                return false;
            going = _going;
            going.IsCancelled = true;
        }

        // Outside the gate: the search may be waiting at it to tell how far it has come.
        going.Stop.Cancel();
        return true;
    }

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>The program stops: what was found by now is kept.</summary>
    public async Task StopAsync(CancellationToken cancellationToken)
    {
        Going? going;
        lock (_gate)
        {
            _stopping = true;
            going = _going;
        }

        if (going is null)
            return;
        await going.Stop.CancelAsync();
        if (going.Work is { } work)
            await work.WaitAsync(cancellationToken);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_gate)
            _going?.Stop.Dispose();
    }

    private async Task WorkAsync(Going going, AssignmentQuestion question)
    {
        var (status, result) = Solved(going, question);
        try
        {
            await using var write = await database.BeginWriteAsync();
            await AssignmentStore.EndAsync(
                write,
                going.Run,
                status,
                result is null
                    ? null
                    : JsonSerializer.Serialize(result, json.Value.SerializerOptions),
                clock.GetCurrentInstant()
            );
            write.Tell("assignments", going.Run);
            await write.CommitAsync();
        }
        catch (Exception broken)
        {
            // The row says that it is still at it; the next start says that it was cut off.
            NotKept(broken, going.Run);
        }

        // Its source of cancelling is left to be collected: somebody may be cancelling it at this moment.
        lock (_gate)
            _going = null;
    }

    private (AssignmentStatus, AssignmentResult?) Solved(Going going, AssignmentQuestion question)
    {
        try
        {
            var plan = TermAssignment.Solve(
                question.Term,
                progress => Tell(going, progress),
                going.Stop.Token
            );
            var status =
                !plan.Stopped ? AssignmentStatus.Finished
                : going.IsCancelled ? AssignmentStatus.Cancelled
                : _stopping ? AssignmentStatus.CutOff
                : AssignmentStatus.OutOfTime;
            return (status, question.Result(plan));
        }
        // Nobody waits for this thread: what goes wrong here is said on the page of the search.
        catch (Exception broken)
        {
            WentWrong(broken, going.Run);
            return (AssignmentStatus.Failed, null);
        }
    }

    // Open pages hear of it once a second at most, and of every new stage.
    private void Tell(Going going, TermProgress progress)
    {
        var now = Environment.TickCount64;
        bool isNews;
        lock (_gate)
        {
            isNews = going.Progress?.Aim != progress.Aim || now - going.ToldAt >= 1000;
            going.Progress = new()
            {
                Aim = progress.Aim,
                Part = progress.Part,
                Parts = progress.Parts,
                Unstaffed = progress.Unstaffed,
                UnstaffedAtLeast = progress.UnstaffedAtLeast,
            };
            isNews &= now - going.ToldAt >= 250;
            if (isNews)
                going.ToldAt = now;
        }

        if (isNews)
            live.Publish(new Change("assignments", going.Run));
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The assignment {Run} went wrong.")]
    private partial void WentWrong(Exception broken, long run);

    [LoggerMessage(
        Level = LogLevel.Error,
        Message = "What the assignment {Run} found could not be kept."
    )]
    private partial void NotKept(Exception broken, long run);

    private sealed class Going(long run, TimeSpan most)
    {
        public long Run { get; } = run;
        public CancellationTokenSource Stop { get; } = new(most);
        public AssignmentProgress? Progress { get; set; }
        public long ToldAt { get; set; }
        public bool IsCancelled { get; set; }
        public Task? Work { get; set; }
    }
}
