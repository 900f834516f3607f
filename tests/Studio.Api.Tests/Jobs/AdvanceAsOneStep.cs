using CsCheck;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Catalogue;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Jobs;
using Studio.Core.Pregnancies;

namespace Studio.Api.Tests.Jobs;

/// <summary>The advance moves everybody in a few statements, and says what the rules say.</summary>
public class AdvanceAsOneStep : IAsyncLifetime
{
    private static readonly LocalDate Start = new(2026, 3, 2);
    private StudioApp _app = null!;
    private long _home;
    private long _abroad;

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        _home = await _app.HasLocation();
        _abroad = await _app.HasLocation("Far house", "Pacific/Auckland");
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await _app.DisposeAsync();
    }

    [Fact]
    public async Task The_number_of_statements_does_not_grow_with_clients()
    {
        var few = await StatementsFor(clients: 3);
        var many = await StatementsFor(clients: 3000);
        Assert.Equal(few, many);
        Assert.InRange(many.Count, 1, 5);
    }

    /// <summary>
    /// A few hundred pregnancies of every sort in one table, over nights that are missed, births reported late and due
    /// dates revised: after each night each row says what the rules say of that date.
    /// </summary>
    [Fact]
    public async Task Rows_say_what_the_rules_say_whatever_happens_between_the_nights()
    {
        var stages = StudioApp.Book.Stages;
        await Gen.Select(AWoman.Array[300], ANight.Array[4])
            .SampleAsync(
                async (women, nights) =>
                {
                    await using var scope = _app.Services.CreateAsyncScope();
                    var advance = scope.ServiceProvider.GetRequiredService<AdvanceSweep>();
                    // Never committed: the next case begins with an empty table.
                    await using var write = await _app
                        .Services.GetRequiredService<Database>()
                        .BeginWriteAsync();
                    var hers = new Dictionary<long, Pregnancy>();
                    foreach (var woman in women)
                        hers.Add(await Insert(write, woman, hers.Count), woman);
                    var today = Start;
                    foreach (var (sleeps, what, days) in nights)
                    {
                        today = today.PlusDays(sleeps);
                        await Change(write, hers, what, days, today);
                        await advance.ZoneAsync(write, "Europe/Lisbon", today);
                        await Compare(write, stages, hers, today);
                        Assert.Equal(0, await advance.ZoneAsync(write, "Europe/Lisbon", today));
                    }

                    Assert.Equal(
                        0,
                        await write.ValueAsync<long>(
                            """
                            select count(*) from pregnancies p join clients c on c.id = p.client_id
                             where c.home_location_id = @_abroad and p.advanced_on is not null
                            """,
                            new { _abroad }
                        )
                    );
                },
                iter: 6,
                threads: 1
            );
    }

    private static readonly Gen<Pregnancy> AWoman = Gen.Select(
        Gen.Int[-20, 330],
        Gen.Int[0, 400],
        Gen.Int[0, 5],
        (age, ago, kind) =>
            kind switch
            {
                0 => new Pregnancy { BornOn = Start.PlusDays(-ago) },
                1 => new Pregnancy
                {
                    DueDate = Start.PlusDays((ago % 60) - ago),
                    BornOn = Start.PlusDays(-ago),
                },
                2 => new Pregnancy { DueDate = Start.PlusDays(280 - age), EndedOn = Start },
                _ => new Pregnancy { DueDate = Start.PlusDays(280 - age) },
            }
    );

    private static readonly Gen<(int Sleeps, int What, int Days)> ANight = Gen.Select(
        Gen.Int[1, 60],
        Gen.Int[0, 2],
        Gen.Int[-30, 30]
    );

    private async Task<long> Insert(Write write, Pregnancy hers, int number)
    {
        // Every tenth client is at home in another zone and stays as she is.
        var client = await write.InsertAsync(
            """
            insert into clients (name, called, phone, email, emergency_name, emergency_phone, home_location_id, joined_at,
                                 search)
            values ('Somebody', 'Somebody', '', '', '', '', @location, '2026-01-01T00:00:00.000Z', '')
            """,
            new { location = number % 10 == 9 ? _abroad : _home }
        );
        return await write.InsertAsync(
            """
            insert into pregnancies (client_id, due_date, born_on, birth_mode, ended_on)
            values (@client, @DueDate, @BornOn, @mode, @EndedOn)
            """,
            new
            {
                client,
                hers.DueDate,
                hers.BornOn,
                mode = hers.BornOn is null ? null : "unknown",
                hers.EndedOn,
            }
        );
    }

    private static async Task Change(
        Write write,
        Dictionary<long, Pregnancy> hers,
        int what,
        int days,
        LocalDate today
    )
    {
        foreach (var (id, before) in hers.Where(h => h.Key % 7 == 0).ToList())
        {
            var after =
                what == 1 && before is { DueDate: { } due, EndedOn: null }
                    ? before with
                    {
                        DueDate = due.PlusDays(days),
                    }
                : what == 2 && before is { BornOn: null, EndedOn: null }
                    ? before with
                    {
                        BornOn = today.PlusDays(-Math.Abs(days)),
                    }
                : before;
            hers[id] = after;
            await write.ExecuteAsync(
                "update pregnancies set due_date = @DueDate, born_on = @BornOn, birth_mode = @mode where id = @id",
                new
                {
                    id,
                    after.DueDate,
                    after.BornOn,
                    mode = after.BornOn is null ? null : "unknown",
                }
            );
        }
    }

    private static async Task Compare(
        Write write,
        StageScheme stages,
        Dictionary<long, Pregnancy> hers,
        LocalDate today
    )
    {
        var rows = await write.ListAsync<Row>(
            """
            select p.id, p.gestational_day as GestationalDay, p.stage
              from pregnancies p join clients c on c.id = p.client_id
              join locations l on l.id = c.home_location_id
             where l.zone = 'Europe/Lisbon'
            """
        );
        foreach (var row in rows)
        {
            var her = hers[row.Id];
            var at = stages.On(her, today);
            // Before 0w 0d there is no stage yet, and the days still count up to it.
            var day = at.Phase is Phase.Pregnant or Phase.BeforeDates
                ? GestationalAge.On(today, her.DueDate!.Value).Days
                : (int?)null;
            Assert.True(
                (day, at.Stage?.Code) == (row.GestationalDay, row.Stage),
                $"{her} on {today}: {row.GestationalDay} {row.Stage}, not {at}"
            );
        }

        var written = await write.ListAsync<Crossing>(
            "select pregnancy_id as Id, stage, on_date as OnDate from stage_changes"
        );
        var should =
            from row in rows
            let her = hers[row.Id]
            where her.EndedOn is null
            from band in stages.Bands(her)
            where band.From <= today
            where band.Stage is not { CountsFrom: StageCount.Pregnancy, FromDay: 0 }
            select (row.Id, band.Stage.Code, band.From);
        Assert.Equal(should.Order(), written.Select(c => (c.Id, c.Stage, c.OnDate)).Order());
    }

    private async Task<IReadOnlyList<string>> StatementsFor(int clients)
    {
        await using var connection = new SqliteConnection(
            _app.Services.GetRequiredService<Database>().ConnectionString
        );
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        var statements = new List<string>();
        await using var scope = _app.Services.CreateAsyncScope();
        await using var write = new Write(
            connection,
            connection.BeginTransaction(deferred: false),
            scope.ServiceProvider.GetRequiredService<Seal>(),
            new Live(),
            new CatalogueInForce(StudioApp.Own),
            () => { }
        );
        await write.ExecuteAsync(
            """
            with recursive numbers (n) as (select 1 union all select n + 1 from numbers where n < @clients)
            insert into clients (name, called, phone, email, emergency_name, emergency_phone, home_location_id, joined_at,
                                 search)
            select 'Somebody', 'Somebody', '', '', '', '', @_home, '2026-01-01T00:00:00.000Z', '' from numbers
            """,
            new { clients, _home }
        );
        await write.ExecuteAsync(
            """
            insert into pregnancies (client_id, due_date)
            select id, date('2026-03-02', (id % 280) || ' days') from clients
            """
        );
        SQLitePCL.raw.sqlite3_trace(
            connection.Handle,
            (_, statement) => statements.Add(statement.Length > 60 ? statement[..60] : statement),
            null
        );
        await scope
            .ServiceProvider.GetRequiredService<AdvanceSweep>()
            .ZoneAsync(write, "Europe/Lisbon", Start);
        SQLitePCL.raw.sqlite3_trace(connection.Handle, (SQLitePCL.strdelegate_trace?)null, null);
        Assert.Equal(
            clients,
            await write.ValueAsync<int>("select count(*) from pregnancies where stage is not null")
        );
        return statements;
    }

    private sealed record Row
    {
        public long Id { get; init; }
        public int? GestationalDay { get; init; }
        public string? Stage { get; init; }
    }

    private sealed record Crossing
    {
        public long Id { get; init; }
        public string Stage { get; init; } = "";
        public LocalDate OnDate { get; init; }
    }
}
