using Studio.Core.Accounts;

namespace Studio.Api.Tests.Accounts;

public class Passwords(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    [Fact]
    public async Task Are_changed_by_who_knows_the_one_so_far()
    {
        var email = await _app.HasAccount([Role.Client]);
        var browser = await _app.SignedInWith(email, StudioApp.Password);
        using (var changed = await Change(browser, StudioApp.Password, "a-newer-tide-4"))
            await changed.Is(204);
        await browser.Read("/api/session");
        using (var old = await SigningIn.SignIn(_app.Browser(), email, StudioApp.Password))
            await old.IsRefused(401, "wrong-sign-in");
        await _app.SignedInWith(email, "a-newer-tide-4");
    }

    [Theory]
    [InlineData("not-the-one-so-far", "a-newer-tide-4", "current")]
    [InlineData(StudioApp.Password, "short", "next")]
    [InlineData(StudioApp.Password, "aaaaaaaaaaaa", "next")]
    public async Task Are_refused_with_the_field_at_fault(string current, string next, string field)
    {
        var browser = await _app.SignedInAs(Role.Client);
        using var answer = await Change(browser, current, next);
        var problem = await answer.IsRefused(400, "password-not-possible");
        Assert.NotNull(problem["errors"]![field]);
    }

    [Fact]
    public async Task Of_new_accounts_are_given_by_the_owner()
    {
        var client = await _app.HasClient();
        var email = $"{Guid.NewGuid():n}@saltmarsh.example";
        var account = new
        {
            email,
            name = "Ottilie Marlin",
            password = "first-words-11",
            roles = new[] { "client" },
            clientId = client,
        };
        using (var made = await studio.Owner.Post("/api/accounts", account))
            await made.Is(201);
        var herself = await _app.SignedInWith(email, "first-words-11");
        await herself.Read($"/api/clients/{client}");
        using (
            var again = await studio.Owner.Post(
                "/api/accounts",
                account with
                {
                    email = "other" + email,
                }
            )
        )
            Assert.NotNull((await again.IsRefused(400, "cannot-link"))["errors"]!["clientId"]);
        using (
            var taken = await studio.Owner.Post(
                "/api/accounts",
                new
                {
                    email,
                    name = "Another",
                    password = "first-words-11",
                    roles = new[] { "frontDesk" },
                }
            )
        )
            await taken.IsRefused(409, "email-not-possible");
    }

    private static Task<HttpResponseMessage> Change(
        HttpClient browser,
        string current,
        string next
    ) => browser.Put("/api/session/password", new { current, next });
}
