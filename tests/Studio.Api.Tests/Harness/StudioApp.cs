using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Logging;
using NodaTime.Testing;
using Studio.Api.Catalogue;
using Studio.Api.Data;
using Studio.Core.Catalogue;

namespace Studio.Api.Tests.Harness;

/// <summary>
/// The real host on a data folder of its own, with a clock that the test sets and without Hangfire. An empty studio has
/// a name and nothing else; the <c>Has…</c> methods furnish it.
/// </summary>
public sealed partial class StudioApp : IAsyncDisposable
{
    /// <summary>When a test's clock begins unless it says otherwise: a Monday, 09:00 in Lisbon (UTC in winter).</summary>
    public static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 9, 0);

    /// <summary>The catalogue that is built into the program, read once for all apps: it never changes.</summary>
    public static readonly CatalogueVersion Own = EmbeddedCatalogue.Load();

    /// <summary>Its rules.</summary>
    public static readonly RuleBook Book = Own.Book;

    private readonly string _folder;
    private readonly WebApplicationFactory<Program> _host;

    private StudioApp(
        string folder,
        Instant now,
        bool demo,
        bool everythingLogged,
        RuleBook? book = null,
        IReadOnlyDictionary<string, string>? settings = null
    )
    {
        _folder = folder;
        Clock = new FakeClock(now);
        _host = new WebApplicationFactory<Program>().WithWebHostBuilder(host =>
        {
            host.UseSetting("Studio:Data", folder);
            host.UseSetting("Studio:Demo", demo ? "true" : "false");
            host.UseSetting("Studio:Jobs", "false");
            foreach (var (name, value) in settings ?? new Dictionary<string, string>())
                host.UseSetting(name, value);
            host.ConfigureLogging(logging =>
                logging
                    .ClearProviders()
                    // A rule for the provider wins over the levels of appsettings.json.
                    .AddFilter<LogKeeper>(
                        null,
                        everythingLogged ? LogLevel.Trace : LogLevel.Information
                    )
                    .AddProvider(Log)
            );
            host.ConfigureTestServices(services =>
            {
                services.Replace(ServiceDescriptor.Singleton<IClock>(Clock));
                services.Replace(
                    ServiceDescriptor.Singleton(
                        new CatalogueInForce(book is null ? Own : Own with { Book = book })
                    )
                );
                // A real hash takes a tenth of a second each time; that it is slow is not what is tested here.
                services.Configure<PasswordHasherOptions>(o => o.IterationCount = 1);
            });
        });
        _ = _host.Server;
    }

    /// <summary>The studio's clock; it stands still until the test moves it.</summary>
    public FakeClock Clock { get; }

    /// <summary>Everything that was logged so far.</summary>
    public LogKeeper Log { get; } = new();

    /// <summary>The host's services.</summary>
    public IServiceProvider Services => _host.Services;

    /// <summary>The studio's data folder.</summary>
    public string Folder => _folder;

    /// <summary>Today in Lisbon by the studio's clock.</summary>
    public LocalDate Today =>
        Clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb["Europe/Lisbon"]).Date;

    /// <summary>A studio with a name and nothing else; with another catalogue where one is given.</summary>
    public static async Task<StudioApp> Empty(
        Instant? now = null,
        bool everythingLogged = false,
        RuleBook? book = null,
        IReadOnlyDictionary<string, string>? settings = null
    )
    {
        var app = new StudioApp(
            await Templates.CopyOfEmptyAsync(),
            now ?? Start,
            demo: false,
            everythingLogged,
            book,
            settings
        );
        await app.Execute("insert into studio (id, name) values (1, 'Saltmarsh studio')");
        return app;
    }

    /// <summary>The demo studio as it is on first start; loaded once per moment and copied from then on.</summary>
    public static async Task<StudioApp> Demo(Instant? now = null, bool everythingLogged = false)
    {
        var folder = await Templates.CopyOfDemoAsync(now ?? Start);
        return new StudioApp(folder, now ?? Start, demo: true, everythingLogged);
    }

    /// <summary>A first start in this folder, which stays when the app has stopped.</summary>
    internal static StudioApp In(string folder, Instant now, bool demo) =>
        new(folder, now, demo, everythingLogged: false) { KeepsItsFolder = true };

    private bool KeepsItsFolder { get; init; }

    /// <summary>A browser of its own: its own cookies, nobody signed in.</summary>
    public HttpClient Browser() =>
        _host.CreateClient(
            new WebApplicationFactoryClientOptions
            {
                AllowAutoRedirect = false,
                HandleCookies = true,
            }
        );

    /// <summary>Runs a service of the host in a scope of its own, as a request would.</summary>
    public async Task<T> With<TService, T>(Func<TService, Task<T>> use)
        where TService : notnull
    {
        await using var scope = Services.CreateAsyncScope();
        return await use(scope.ServiceProvider.GetRequiredService<TService>());
    }

    /// <summary>Writes by SQL what no route writes.</summary>
    public async Task Execute(string sql, object? parameters = null)
    {
        await using var write = await Services.GetRequiredService<Database>().BeginWriteAsync();
        await write.ExecuteAsync(sql, parameters);
        await write.CommitAsync();
    }

    /// <summary>Inserts by SQL; the new row's id.</summary>
    public async Task<long> Insert(string sql, object parameters)
    {
        await using var write = await Services.GetRequiredService<Database>().BeginWriteAsync();
        var id = await write.InsertAsync(sql, parameters);
        await write.CommitAsync();
        return id;
    }

    /// <summary>One value as it stands in the database.</summary>
    public async Task<T> Value<T>(string sql, object? parameters = null)
    {
        await using var read = await Services.GetRequiredService<Database>().ReadAsync();
        return await read.ValueAsync<T>(sql, parameters);
    }

    /// <summary>Rows as they stand in the database.</summary>
    public async Task<List<T>> Rows<T>(string sql, object? parameters = null)
    {
        await using var read = await Services.GetRequiredService<Database>().ReadAsync();
        return await read.ListAsync<T>(sql, parameters);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        var connections = Services.GetRequiredService<Database>().ConnectionString;
        await _host.DisposeAsync();
        using (var pool = new SqliteConnection(connections))
            SqliteConnection.ClearPool(pool);
        if (!KeepsItsFolder)
            Directory.Delete(_folder, recursive: true);
    }
}
