using System.Net;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Http;

public class TheHost
{
    [Fact]
    public async Task Says_that_it_is_healthy_to_anybody()
    {
        await using var app = await StudioApp.Empty();
        var browser = app.Browser();
        Assert.Equal(
            "healthy",
            await browser.GetStringAsync("/healthz", TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public async Task Books_a_client_whom_the_session_suits()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        var session = await app.HasSession(app.Today.PlusDays(3));
        var desk = await app.SignedInAs(Role.FrontDesk);
        var booking = await desk.Booked(session, client);
        Assert.Equal("booked", booking.Text("status"));
    }

    [Fact]
    public async Task Opens_the_demo_studio()
    {
        await using var app = await StudioApp.Demo();
        using var answer = await app.Browser()
            .Post("/api/session", new { email = "desk@demo.example", password = "demo-studio" });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }
}
