using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Api.Jobs;

namespace Studio.Api.Tests.Jobs;

/// <summary>Nights of a studio, run as the scheduler's bell would.</summary>
internal static class Nights
{
    /// <summary>Rings the bell; how many zones had a night.</summary>
    public static Task<int> Bell(this StudioApp app) =>
        app.With((NightSweep nights) => nights.RunDueAsync());

    /// <summary>Sleeps for so many days and rings once in the morning after.</summary>
    public static async Task Sleeps(this StudioApp app, int days = 1)
    {
        app.Clock.Advance(Duration.FromDays(days));
        await app.Bell();
    }

    /// <summary>Runs a job by hand.</summary>
    public static async Task<JobRun> ByHand(this StudioApp app, string job) =>
        (await app.With((NightSweep nights) => nights.RunByHandAsync(job)))!;

    /// <summary>Every row of these tables, as text, for comparing two studios or two moments.</summary>
    public static async Task<string> RowsOf(this StudioApp app, params string[] queries)
    {
        var connections = app.Services.GetRequiredService<Database>().ConnectionString;
        await using var connection = new SqliteConnection(connections);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        var text = new StringBuilder();
        foreach (var query in queries)
        {
            await using var reader = await connection.ExecuteReaderAsync(query);
            while (await reader.ReadAsync(TestContext.Current.CancellationToken))
            {
                for (var at = 0; at < reader.FieldCount; at++)
                    text.Append(Opened(reader.GetValue(at))).Append('|');
                text.AppendLine();
            }

            text.AppendLine();
        }

        return text.ToString();

        // The same words are never sealed alike twice.
        object Opened(object value) =>
            value is string word ? app.Services.GetRequiredService<Seal>().Open(word) : value;
    }

    /// <summary>What a night writes about people, as it stands: everything but when it was done.</summary>
    public static Task<string> WhatNightsWrite(this StudioApp app) =>
        app.RowsOf(
            "select id, gestational_day, stage, advanced_on from pregnancies order by id",
            "select pregnancy_id, stage, on_date from stage_changes order by 1, 2",
            """
            select m.client_id, m.to_stage, m.crosses_on, t.booking_id, t.to_session_id
              from moves m join move_steps t on t.move_id = m.id where m.status = 'open' order by 1, 4
            """,
            """
            select subject, kind, severity, client_id, session_id, instructor_id, for_desk, for_instructor
              from flags where closed_at is null order by subject
            """
        );

    /// <summary>Every row of every table that a night writes, keys and moments included.</summary>
    public static Task<string> EveryRow(this StudioApp app) =>
        app.RowsOf(
            "select * from pregnancies order by id",
            "select * from stage_changes order by 1, 2",
            "select * from moves order by id",
            "select * from move_steps order by 1, 2",
            "select * from flags order by id",
            "select * from flag_reads order by 1, 2",
            "select * from bookings order by id",
            "select * from sessions order by id"
        );
}
