using Studio.Core.Accounts;

namespace Studio.Api.Tests.Accounts;

public class SigningIn(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    [Fact]
    public async Task Tells_who_she_is_and_keeps_her_signed_in_until_she_signs_out()
    {
        var client = await _app.HasClient();
        var browser = await _app.SignedInAs([Role.Client, Role.FrontDesk], client: client);
        var me = await browser.Read("/api/session");
        Assert.Equal(["frontDesk", "client"], me["roles"]!.AsArray().Select(r => (string)r!));
        Assert.Equal(client, me.Number("clientId"));
        Assert.Equal("Saltmarsh studio", me.Text("studioName"));
        Assert.Equal("2026-03-02", me.Text("today"));
        using (var signedOut = await browser.Send(HttpMethod.Delete, "/api/session"))
            await signedOut.Is(204);
        using var answer = await browser.GetAsync(
            "/api/session",
            TestContext.Current.CancellationToken
        );
        await answer.Is(401);
    }

    [Fact]
    public async Task Sets_a_cookie_that_no_script_and_no_other_site_can_use()
    {
        var email = await _app.HasAccount([Role.Client]);
        using var answer = await SignIn(_app.Browser(), email, StudioApp.Password);
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData(null, "not-her-password")]
    [InlineData("nobody@saltmarsh.example", StudioApp.Password)]
    [InlineData(null, "QUIET-HARBOUR-9")]
    public async Task Says_the_same_for_a_wrong_password_and_a_wrong_address(
        string? email,
        string password
    )
    {
        email ??= await _app.HasAccount([Role.FrontDesk]);
        using var answer = await SignIn(_app.Browser(), email, password);
        var problem = await answer.IsRefused(401, "wrong-sign-in");
        Assert.Equal(
            "The e-mail address or the password is not right. Please try again.",
            problem.Text("detail")
        );
    }

    [Fact]
    public async Task Takes_the_address_in_any_case()
    {
        var email = await _app.HasAccount([Role.FrontDesk]);
        using var answer = await SignIn(
            _app.Browser(),
            email.ToUpperInvariant(),
            StudioApp.Password
        );
        await answer.Is(200);
    }

    [Fact]
    public async Task Is_closed_after_five_wrong_passwords_even_to_the_right_one()
    {
        var email = await _app.HasAccount([Role.FrontDesk]);
        for (var i = 1; i <= 5; i++)
        {
            using var wrong = await SignIn(_app.Browser(), email, "not-her-password");
            await wrong.IsRefused(i < 5 ? 401 : 403, i < 5 ? "wrong-sign-in" : "locked-out");
        }

        using (var right = await SignIn(_app.Browser(), email, StudioApp.Password))
            await right.IsRefused(403, "locked-out");
        // Lock-out runs by the machine's clock, not the studio's, which may stand still: so its end is moved here.
        var until = await _app.Value<string>(
            "select lockout_until from accounts where email = @email",
            new { email }
        );
        var minutes = DateTimeOffset.Parse(until) - DateTimeOffset.UtcNow;
        Assert.InRange(minutes.TotalMinutes, 9, 10.1);
        await _app.Execute(
            "update accounts set lockout_until = @past where email = @email",
            new { past = SystemClock.Instance.GetCurrentInstant() - Duration.FromSeconds(1), email }
        );
        using var later = await SignIn(_app.Browser(), email, StudioApp.Password);
        await later.Is(200);
    }

    [Fact]
    public async Task Forgets_wrong_passwords_after_a_right_one()
    {
        var email = await _app.HasAccount([Role.FrontDesk]);
        for (var round = 0; round < 2; round++)
        {
            for (var i = 0; i < 4; i++)
            {
                using var wrong = await SignIn(_app.Browser(), email, "not-her-password");
                await wrong.IsRefused(401, "wrong-sign-in");
            }

            using var right = await SignIn(_app.Browser(), email, StudioApp.Password);
            await right.Is(200);
        }
    }

    internal static Task<HttpResponseMessage> SignIn(
        HttpClient browser,
        string email,
        string password
    ) => browser.Post("/api/session", new { email, password });
}
