using System.Text;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Access;

/// <summary>Somebody who reads letters and is nothing else at the studio.</summary>
public class WhatAReviewerMayDo(SharedStudio studio)
{
    public static TheoryData<string> Names => [.. Routes.All.Select(r => r.Name)];

    // What anybody signed in may ask, and then the work on letters; everything else is closed.
    private static readonly HashSet<string> Hers = new(StringComparer.Ordinal)
    {
        // A letter answers what she answered, and may come to whoever reads it by hand.
        "GET /api/clients/{clientId}/screenings",
        "POST /api/clients/{clientId}/letters",
        "GET /api/clients/{clientId}/letters",
        "GET /api/clients/{clientId}/letters/{letterId}/file",
        "GET /api/clients/{clientId}/letters/request",
        "POST /api/clients/{clientId}/letters/{letterId}/review",
        "POST /api/clients/{clientId}/letters/{letterId}/refuse",
        "POST /api/clients/{clientId}/letters/{letterId}/withdraw",
        "POST /api/clients/{clientId}/clearances",
        "GET /api/letters/people",
        "GET /api/letters/read",
        "GET /api/letters/waiting",
        "GET /api/letters/waiting/count",
    };

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Is_the_letters_and_what_is_open_to_everybody_signed_in(string name)
    {
        var route = Routes.All.Single(r => r.Name == name);
        var cast = await Cast.Of(studio.App);
        var reviewer = await studio.App.SignedInAs([Role.Reviewer]);
        using var request = new HttpRequestMessage(route.Method, await cast.Fill(route.Path));
        if (route.Body.StartsWith("file:"))
            request.Content = LetterSamples.Form(LetterSamples.Png, route.Body[5..]);
        else if (route.Body.Length > 0)
            request.Content = new StringContent(
                await cast.Fill(route.Body),
                Encoding.UTF8,
                route.Body.StartsWith('{') ? "application/json" : "text/csv"
            );
        using var answer = await reviewer.SendAsync(
            request,
            HttpCompletionOption.ResponseHeadersRead,
            TestContext.Current.CancellationToken
        );
        var status = (int)answer.StatusCode;
        // Another client, and an instructor whose roster she is not on, have no business with her either.
        var open = route.Statuses[1] is >= 200 and < 300 && route.Statuses[2] == route.Statuses[1];
        if (Hers.Contains(name) || open)
            Assert.Equal(route.Statuses[^1], status);
        else
            Assert.True(status is 403 or 404, $"{name}: {status}");
    }

    [Fact]
    public async Task Is_finding_a_letter_by_a_name_and_nothing_else_of_hers()
    {
        await using var app = await StudioApp.Empty();
        var reviewer = await app.SignedInAs([Role.Reviewer]);
        var her = await app.HasClient("Zóra Brackwater");
        var other = await app.HasClient("Zora Withoutaletter");
        await app.Execute("delete from letters where client_id = @other", new { other });
        await app.HasWaitingLetter(her, LetterSamples.Png);
        await app.Execute(
            "update clients set phone = '+351 600 123 987', email = 'z@reed.example', search = search || ' 600123987 z@reed.example' where id = @her",
            new { her }
        );

        var found = Assert.Single((await reviewer.Read("/api/letters/people?find=zora")).AsArray());
        Assert.NotNull(found);
        Assert.Equal(her, found.Number("id"));
        Assert.Equal(
            ["called", "id", "lastFiledAt", "name"],
            found.AsObject().Select(p => p.Key).Order()
        );
        foreach (var nothing in new[] { "", "600123987", "z@reed", "%25", "_", "withouta" })
            Assert.Empty((await reviewer.Read($"/api/letters/people?find={nothing}")).AsArray());

        // After a loss the owner alone finds her.
        await app.Execute(
            "update pregnancies set ended_on = '2026-03-01' where client_id = @her",
            new { her }
        );
        Assert.Empty((await reviewer.Read("/api/letters/people?find=zora")).AsArray());
        var owner = await app.SignedInAs(Role.Owner);
        Assert.Single((await owner.Read("/api/letters/people?find=zora")).AsArray());
    }

    [Fact]
    public async Task Is_knowing_since_when_a_letter_must_be_and_not_why()
    {
        await using var app = await StudioApp.Empty();
        var reviewer = await app.SignedInAs([Role.Reviewer]);
        var desk = await app.SignedInAs(Role.FrontDesk);
        var her = await app.HasClient();
        await app.HasWaitingLetter(her, LetterSamples.Png);
        var owner = await app.SignedInAs(Role.Owner);
        using (
            var raised = await owner.Post(
                $"/api/clients/{her}/holds",
                new { signs = new[] { "sign-bleeding" }, happened = "Told at the telephone." }
            )
        )
            await raised.Is(200);
        var waiting = await reviewer.Read("/api/letters/waiting");
        Assert.Equal("2026-03-02", waiting[0]!.Text("heldSince"));
        Assert.DoesNotContain("leeding", waiting.ToJsonString());
        Assert.DoesNotContain("telephone", waiting.ToJsonString());
        Assert.Null((await desk.Read($"/api/clients/{her}/letters"))[0]!["heldSince"]);
    }
}
