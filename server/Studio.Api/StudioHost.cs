using System.Text.Json;
using System.Text.Json.Serialization;
using Hangfire;
using Microsoft.AspNetCore.DataProtection;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Booking;
using Studio.Api.Catalogue;
using Studio.Api.Clearance;
using Studio.Api.Clients;
using Studio.Api.Cover;
using Studio.Api.Data;
using Studio.Api.Demo;
using Studio.Api.Erasures;
using Studio.Api.Feeds;
using Studio.Api.Http;
using Studio.Api.Imports;
using Studio.Api.Incidents;
using Studio.Api.Jobs;
using Studio.Api.Messages;
using Studio.Api.Movements;
using Studio.Api.Passes;
using Studio.Api.Pregnancies;
using Studio.Api.Records;
using Studio.Api.Rosters;
using Studio.Api.Screenings;
using Studio.Api.Staff;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Api.Timetable.Drafts;

namespace Studio.Api;

/// <summary>Wires the program together.</summary>
public static class StudioHost
{
    /// <summary>The services.</summary>
    public static void AddStudio(this WebApplicationBuilder builder)
    {
        var services = builder.Services;
        if (
            builder.Configuration["urls"] is null
            && builder.Configuration["ASPNETCORE_URLS"] is null
        )
            builder.WebHost.UseUrls("http://127.0.0.1:5080");

        var folder = DataFolder.From(builder.Configuration);
        services.AddSingleton(folder);
        services
            .AddDataProtection()
            .SetApplicationName("studio")
            .PersistKeysToFileSystem(new DirectoryInfo(folder.Keys));
        services.AddSingleton<Live>();
        services.AddSingleton<Seal>();
        services.AddSingleton<LetterFiles>();
        services.AddSingleton<ProofFiles>();
        services.AddSingleton<Database>();
        services.AddSingleton(_ => new CatalogueInForce(EmbeddedCatalogue.Load()));
        // One book for a whole request, whatever is put in force meanwhile; nothing that outlives a request may hold one.
        services.AddScoped(provider =>
            provider.GetRequiredService<CatalogueInForce>().Current.Book
        );
        services.AddSingleton(StudioClock.From(builder.Configuration["Studio:Clock"]));

        services.AddAccounts();
        services.AddScoped<StudioStore>();
        services.AddScoped<SessionSummaries>();
        services.AddScoped<Covers>();
        services.AddSingleton(MailSettings.Read(builder.Configuration));
        services.AddSingleton<MailLinks>();
        services.AddSingleton<MailFolder>();
        services.AddSingleton<MailGate>();
        services.AddScoped<IMailTransport>(provider =>
            provider.GetRequiredService<MailSettings>().Server is { } server
                ? new SmtpTransport(server)
                : new FolderTransport(provider.GetRequiredService<MailFolder>())
        );
        services.AddScoped<MailSweep>();
        services.AddScoped<AskSweep>();
        services.AddSingleton<AssignmentRuns>();
        services.AddHostedService(provider => provider.GetRequiredService<AssignmentRuns>());
        services.AddScoped<Outbox>();
        services.AddScoped<Calendars>();
        services.AddSingleton<IHttpContextFactory, FeedAddresses>();
        services.AddScoped<BookingNews>();
        services.AddScoped<Bookings>();
        services.AddScoped<AnsweredRequests>();
        services.AddScoped<ClientCards>();
        services.AddScoped<RequestLetters>();
        services.AddScoped<ClientIntake>();
        services.AddScoped<HealthChanges>();
        services.AddScoped<HealthAudit>();
        services.AddScoped<ClientImports>();
        services.AddScoped<RosterSheets>();
        services.AddScoped<FlagSweep>();
        services.AddScoped<AdvanceSweep>();
        services.AddScoped<MovesSweep>();
        services.AddScoped<SeriesPlans>();
        services.AddScoped<SeriesSweep>();
        services.AddScoped<ErasureSweep>();
        services.AddSingleton<ErasedFiles>();
        services.AddScoped<NightSweep>();
        services.AddScoped<HeldRows>();
        services.AddScoped<ErasureOfClient>();
        services.AddScoped<Moves>();
        services.AddScoped<SessionTelling>();
        services.AddScoped<SessionChanges>();
        services.AddScoped<DraftChanges>();
        services.AddScoped<PlanPreviews>();
        services.AddScoped<PlanChanges>();
        services.AddScoped<DemoStudio>();
        services.AddScoped<NewRules>();
        services.AddScoped<CatalogueImports>();
        services.AddScoped<PolicyChanges>();
        services.AddScoped<CatalogueStart>();
        services.AddScoped<FirstStart>();

        services.ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);
            json.SerializerOptions.RefuseUnusable();
            json.SerializerOptions.NumberHandling = JsonNumberHandling.Strict;
            json.SerializerOptions.Converters.Add(
                new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false)
            );
        });
        services.AddValidation();
        services.AddProblemDetails(problems =>
            problems.CustomizeProblemDetails = BadRequests.NameParameter
        );
        services.AddExceptionHandler<BadRequests>();
        services.AddExceptionHandler<RulesChangedAnswer>();
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        services.AddOpenApi(options => options.Describe());
        services.AddResponseCompression(options => options.EnableForHttps = false);

        services.AddHangfire(hangfire => hangfire.UseInMemoryStorage());
        if (builder.Configuration.GetValue("Studio:Jobs", defaultValue: true))
            services.AddHangfireServer(options =>
            {
                // One for the nights, one for messages: a slow mail server keeps no night waiting.
                options.WorkerCount = 2;
                options.ServerName = "studio";
            });
    }

    /// <summary>The pipeline and the routes.</summary>
    public static void UseStudio(this WebApplication app)
    {
        app.UseExceptionHandler();
        app.UseStatusCodePages();
        app.UseResponseCompression();
        app.UseSecurityHeaders();
        app.UseDefaultFiles();
        app.UseStaticFiles(Pages.Kept);
        app.UseAuthentication();
        app.UseAuthorization();

        app.MapOpenApi().AllowAnonymous();
        app.MapAlive();
        app.MapAccounts();
        app.MapStudio();
        app.MapPolicies();
        app.MapCatalogue();
        app.MapStaff();
        app.MapPay();
        app.MapTravel();
        app.MapDating();
        app.MapClients();
        app.MapHealth();
        app.MapBirths();
        app.MapEndings();
        app.MapScreenings();
        app.MapIncidents();
        app.MapLetters();
        app.MapLetterReviews();
        app.MapAudit();
        app.MapRecords();
        app.MapErasures();
        app.MapSessions();
        app.MapAssignments();
        app.MapFeeds();
        app.MapCover();
        app.MapDrafts();
        app.MapSessionChanges();
        app.MapSeries();
        app.MapClosures();
        app.MapBooking();
        app.MapPassKinds();
        app.MapPasses();
        app.MapTakings();
        app.MapLetGo();
        app.MapRosters();
        app.MapMovements();
        app.MapClassPlans();
        app.MapSessionPlans();
        app.MapNotes();
        app.MapWhatIf();
        app.MapMoves();
        app.MapJobs();
        app.MapMessages();
        app.MapMessageChoices();
        app.MapImports();
        app.MapCatalogueImports();
        app.MapLive();
        app.MapPages();
    }

    /// <summary>Brings the data up to date, fills an empty folder, sets the jobs going.</summary>
    public static async Task OpenStudioAsync(this WebApplication app)
    {
        Migrations.Run(app.Services.GetRequiredService<Database>().ConnectionString);
        await using (var scope = app.Services.CreateAsyncScope())
            await scope.ServiceProvider.GetRequiredService<CatalogueStart>().RunAsync();
        await using (
            var write = await app.Services.GetRequiredService<Database>().BeginWriteAsync()
        )
        {
            await AssignmentStore.CutOffAsync(
                write,
                app.Services.GetRequiredService<IClock>().GetCurrentInstant()
            );
            await write.CommitAsync();
        }

        // In a scope of its own: what it asks for is given the catalogue that is in force by now.
        await using (var scope = app.Services.CreateAsyncScope())
            await scope.ServiceProvider.GetRequiredService<FirstStart>().RunAsync();
        if (app.Configuration.GetValue("Studio:Jobs", defaultValue: true))
            Schedule.Register(
                app.Services.GetRequiredService<IRecurringJobManager>(),
                app.Services.GetRequiredService<IBackgroundJobClient>(),
                app.Services.GetRequiredService<Live>()
            );
    }
}
