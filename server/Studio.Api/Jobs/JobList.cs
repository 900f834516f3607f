namespace Studio.Api.Jobs;

/// <summary>A nightly job as the owner sees it.</summary>
/// <param name="Name">Its name in routes.</param>
/// <param name="Title">Its title.</param>
/// <param name="Does">What it does.</param>
public sealed record Job(string Name, string Title, string Does);

/// <summary>The nightly jobs, in the order in which they run.</summary>
public static class JobList
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Job> All { get; } =
    [
        new(
            "advance",
            "Move everybody on",
            "Sets every client's gestational day and stage for today and notes each change of stage on the day it happened."
        ),
        new(
            "timetable",
            "Lay out series",
            "Adds the sessions of series that have come within reach, except on days when the location is shut."
        ),
        new(
            "moves",
            "Suggest moves",
            "Looks for bookings that fall behind a change of stage and suggests where they may go."
        ),
        new(
            "flags",
            "Settle flags",
            "Opens the flags that should stand and closes those that should not."
        ),
        new(
            "erase",
            "Erase what was kept for a time",
            "Erases for good what was set apart of former clients, once its last day has passed."
        ),
    ];

    /// <summary>A job by name.</summary>
    public static Job? Find(string name) => All.FirstOrDefault(j => j.Name == name);

    /// <summary>What a run did, in words.</summary>
    public static string Result(string job, int changed) =>
        (job, changed) switch
        {
            (_, 0) => "Nothing had changed.",
            ("advance", 1) => "1 change of stage noted.",
            ("advance", _) => $"{changed} changes of stage noted.",
            ("moves", 1) => "1 suggestion opened or closed.",
            ("moves", _) => $"{changed} suggestions opened or closed.",
            ("timetable", 1) => "1 session laid out.",
            ("timetable", _) => $"{changed} sessions laid out.",
            ("erase", 1) => "1 part erased for good.",
            ("erase", _) => $"{changed} parts erased for good.",
            (_, 1) => "1 flag opened, reworded or closed.",
            (_, _) => $"{changed} flags opened, reworded or closed.",
        };
}
