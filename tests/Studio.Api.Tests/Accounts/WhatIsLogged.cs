using System.Text;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Accounts;

public class WhatIsLogged
{
    [Fact]
    public async Task Is_never_a_password_nor_anything_of_her_health()
    {
        await using var app = await StudioApp.Empty(everythingLogged: true);
        await app.HasLocation();
        var email = await app.HasAccount([Role.Owner]);
        using (var wrong = await SigningIn.SignIn(app.Browser(), email, "wrong-words-77"))
            await wrong.Is(401);
        var owner = await app.SignedInWith(email, StudioApp.Password);
        using (
            var changed = await owner.Put(
                "/api/session/password",
                new { current = StudioApp.Password, next = "newer-words-88" }
            )
        )
            await changed.Is(204);

        const string file = """
            name,phone,home_location,last_period,factors,letter_issued_by,letter_issued_on,letter_expires_on
            Velda Ambersley,123456,quay-house,2025-11-01,placenta-praevia:2026-01-01,Dr Wenna Ashdown,2026-02-01,2026-05-01
            """;
        using (
            var imported = await owner.PostAsync(
                "/api/imports/clients",
                new StringContent(file, Encoding.UTF8, "text/csv"),
                TestContext.Current.CancellationToken
            )
        )
            await imported.Is(200);
        const string damaged =
            "name,phone,home_location,factors\nVelda Ambersley,1,quay-house,persistent-bleeding";
        using (
            var refused = await owner.PostAsync(
                "/api/imports/clients",
                new StringContent(damaged, Encoding.UTF8, "text/csv"),
                TestContext.Current.CancellationToken
            )
        )
            await refused.Is(422);

        var client = await app.Value<long>("select id from clients");
        var session = await app.HasSession(app.Today.PlusDays(3));
        using (var booking = await owner.Book(session, client))
            await booking.Is(403);
        using (
            var factor = await owner.Post(
                $"/api/clients/{client}/factors",
                new { code = "back-pain", from = app.Today }
            )
        )
            await factor.Is(201);
        using (
            var unreadable = await owner.PostAsync(
                $"/api/clients/{client}/factors",
                new StringContent(
                    """{"code":"wrist-pain","from":"the-day-of-bleeding"}""",
                    Encoding.UTF8,
                    "application/json"
                ),
                TestContext.Current.CancellationToken
            )
        )
            await unreadable.Is(400);
        await owner.Read($"/api/clients/{client}");
        await owner.Read($"/api/sessions/{session}/roster");

        var teaching = await app.SignedInAs(
            Role.Instructor,
            instructor: await app.HasInstructor("Ilka Thornmere")
        );
        var (_, token) = await app.HasFeed(teaching, "instructor");
        foreach (var address in new[] { $"/feeds/{token}.ics", $"/feeds/{token}.ICS?of={token}" })
        {
            using var calendar = await app.Browser()
                .GetAsync(address, TestContext.Current.CancellationToken);
            Assert.Equal("text/calendar", calendar.Content.Headers.ContentType?.MediaType);
        }
        using (
            var mistyped = await app.Browser()
                .GetAsync($"/feeds/{token}x.ics", TestContext.Current.CancellationToken)
        )
            await mistyped.Is(404);
        using (
            await app.Browser().GetAsync($"/feeds/{token}", TestContext.Current.CancellationToken)
        ) { }

        Assert.NotEmpty(app.Log.Lines);
        string[] secrets =
        [
            StudioApp.Password,
            "wrong-words-77",
            "newer-words-88",
            "Ambersley",
            "Ashdown",
            "the-day-of-bleeding",
            token,
            .. StudioApp.Book.Factors.SelectMany(f => new[] { f.Code, f.Name }),
        ];
        var told = app
            .Log.Lines.Where(line =>
                secrets.Any(s => line.Contains(s, StringComparison.OrdinalIgnoreCase))
            )
            .ToList();
        Assert.True(told.Count == 0, string.Join(Environment.NewLine, told));
    }
}
