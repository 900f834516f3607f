using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Demo;
using Studio.Api.Http;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;

namespace Studio.Api.Studios;

/// <summary>
/// Fills the data folder when it is empty: with the demo studio, or, when the setting
/// <c>Studio:Setup</c> names a folder, with the studio described there and an owner's account from
/// <c>Studio:Owner:Email</c> and <c>Studio:Owner:Password</c>.
/// </summary>
public sealed class FirstStart(
    Database database,
    DemoStudio demo,
    AccountLinks accounts,
    RuleBook book,
    IConfiguration configuration,
    IClock clock,
    ILogger<FirstStart> log
)
{
    /// <summary>Runs before the first request, once the tables are up to date and the catalogue is in force.</summary>
    /// <exception cref="SettingException">The setup folder is wrong or the owner's account cannot be made.</exception>
    public async Task RunAsync()
    {
        await using (var write = await database.BeginWriteAsync())
        {
            await Sealing.RunAsync(write);
            await write.CommitAsync();
        }

        var (exists, isDemo) = await StandingAsync();
        if (configuration["Studio:Setup"] is { Length: > 0 } folder)
        {
            if (!exists)
                await SetUpAsync(folder);
            await AddOwnerAsync();
        }
        else if (!exists && configuration.GetValue("Studio:Demo", defaultValue: true))
        {
            await demo.LoadAsync();
            log.LogInformation("The demo studio is loaded.");
        }
        else if (isDemo)
            await demo.AddAccountsAsync();
    }

    private async Task SetUpAsync(string folder)
    {
        await using var write = await database.BeginWriteAsync();
        await StudioSetup.RunAsync(
            write,
            name => Text(folder, name),
            book,
            clock.GetCurrentInstant(),
            isDemo: false
        );
        await write.CommitAsync();
        log.LogInformation("The studio is set up from its folder.");
    }

    private static string Text(string folder, string name)
    {
        var path = Path.Combine(folder, name);
        if (StudioSetup.Optional.TryGetValue(name, out var nothing) && !File.Exists(path))
            return nothing;
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception missing) when (missing is IOException or UnauthorizedAccessException)
        {
            throw new SettingException(
                $"The setting Studio__Setup is '{folder}', but its {name} cannot be read: {missing.Message}"
            );
        }
    }

    private async Task AddOwnerAsync()
    {
        if (
            (await accounts.ListAsync()).Exists(a =>
                a.Roles.Contains("owner", StringComparison.Ordinal)
            )
        )
            return;
        var email = configuration["Studio:Owner:Email"];
        var password = configuration["Studio:Owner:Password"];
        if (email is null || password is null)
            throw new SettingException(
                "There is no owner yet: set Studio__Owner__Email and Studio__Owner__Password for the first start."
            );
        if (
            (await accounts.MakeAsync(email, "Owner", password, [Role.Owner])).Refusal is
            { } refusal
        )
            throw new SettingException($"The owner's account could not be made: {refusal.Message}");
    }

    private async Task<(bool Exists, bool IsDemo)> StandingAsync()
    {
        await using var read = await database.ReadAsync();
        var name = await read.FindAsync<string>("select name from studio");
        var loaded = await read.FindAsync<string>("select demo_loaded_on from studio");
        return (name is not null, loaded is not null);
    }
}
