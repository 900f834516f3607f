using Studio.Core.Accounts;
using Studio.Core.Messages;

namespace Studio.Api.Tests.Messages;

/// <summary>What the owner sees of what is told.</summary>
public class TheOwnersLog
{
    [Fact]
    public async Task Is_looked_through_by_state_kind_and_person_page_by_page()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var (ilka, other) = (await app.HasClient("Ilka Thornmere"), await app.HasClient());
        await app.HasMessage(ilka, MessageKind.SessionCancelled, lines: "Not held.");
        await app.Rings();
        for (var i = 0; i < 60; i++)
            await app.HasMessage(other);

        var first = await owner.Read("/api/messages");
        Assert.Equal(50, first["messages"]!.AsArray().Count);
        Assert.True((bool)first["more"]!);
        Assert.Equal(60, first["counts"]!.Number("waiting"));
        var rest = await owner.Read($"/api/messages?before={first["messages"]![49]!.Number("id")}");
        Assert.Equal(11, rest["messages"]!.AsArray().Count);
        Assert.False((bool)rest["more"]!);

        foreach (
            var query in new[] { "status=sent", "kind=sessionCancelled", "find=THORN", "find=ilka" }
        )
            Assert.Equal(
                "Ilka Thornmere",
                Assert
                    .Single((await owner.Read($"/api/messages?{query}"))["messages"]!.AsArray())!
                    .Text("to")
            );
        foreach (
            var (query, code) in new[]
            {
                ("status=gone", "unknown-status"),
                ("kind=x", "unknown-kind"),
            }
        )
        {
            using var refused = await owner.GetAsync(
                $"/api/messages?{query}",
                TestContext.Current.CancellationToken
            );
            await refused.IsRefused(400, code);
        }
    }

    [Fact]
    public async Task Shows_every_kind_with_an_example_and_sends_one_to_the_owner()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(post.Port);
        var email = await app.HasAccount([Role.Owner]);
        var owner = await app.SignedInWith(email, StudioApp.Password);
        var kinds = (await owner.Read("/api/messages/kinds")).AsArray();
        Assert.Equal(
            MessageKinds.All.Select(k => k.OnTheWire()),
            kinds.Select(k => k!.Text("kind"))
        );
        Assert.All(
            kinds,
            k => Assert.Contains("Saltmarsh studio", k!.Text("text"), StringComparison.Ordinal)
        );

        // At night too: she waits for it.
        app.Clock.Reset(Instant.FromUtc(2026, 3, 2, 23, 0));
        using (var test = await owner.Post("/api/messages/test"))
            await test.Is(204);
        await app.Rings();
        Assert.Equal(
            (email, "A test message"),
            (post.Got.Single().To, post.Got.Single().Message.Subject)
        );
        Assert.Equal(
            "127.0.0.1:" + post.Port,
            (await owner.Read("/api/messages"))["sending"]!.Text("server")
        );
    }

    [Fact]
    public async Task Tries_again_at_once_what_did_not_get_through()
    {
        var port = Postbox.FreePort();
        await using var app = await Mailing.StudioWith(port);
        var owner = await app.SignedInAs(Role.Owner);
        await app.HasMessage(await app.HasClient());
        await app.HasMessage(await app.HasClient());
        await app.Rings();
        Assert.Equal(2, (await owner.Read("/api/messages/counts")).Number("stuck"));
        await using var post = await Postbox.Open(port);
        using (var again = await owner.Post("/api/messages/retry"))
            Assert.Equal(2, (await again.Is(200)).Number("messages"));
        await app.Rings();
        Assert.Equal(2, post.Got.Count);
        Assert.Equal(0, (await owner.Read("/api/messages/counts")).Number("waiting"));
    }
}
