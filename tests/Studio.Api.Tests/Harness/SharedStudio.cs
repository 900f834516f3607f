[assembly: AssemblyFixture(typeof(SharedStudio))]

namespace Studio.Api.Tests.Harness;

/// <summary>
/// One studio for all tests that need neither another time nor an empty list: starting a host costs more than most tests.
/// Each test still makes its own data, and nobody moves this clock.
/// </summary>
public sealed class SharedStudio : IAsyncLifetime
{
    /// <summary>The studio.</summary>
    public StudioApp App { get; private set; } = null!;

    /// <summary>Its owner, signed in.</summary>
    public HttpClient Owner { get; private set; } = null!;

    /// <summary>Its front desk, signed in.</summary>
    public HttpClient Desk { get; private set; } = null!;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        App = await StudioApp.Empty();
        await App.HasLocation();
        Owner = await App.SignedInAs(Core.Accounts.Role.Owner);
        Desk = await App.SignedInAs(Core.Accounts.Role.FrontDesk);
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => App.DisposeAsync();
}
