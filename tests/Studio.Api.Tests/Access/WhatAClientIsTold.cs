using Studio.Core.Accounts;

namespace Studio.Api.Tests.Access;

public class WhatAClientIsTold(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    [Fact]
    public async Task Is_all_of_her_own()
    {
        var client = await _app.HasClient();
        await _app.HasFactor(client, "placenta-praevia");
        await _app.HasSession(_app.Today.PlusDays(9));
        var herself = await _app.SignedInAs(Role.Client, client: client);
        var card = await herself.Read($"/api/clients/{client}");
        Assert.Equal("placenta-praevia", card["factors"]![0]!.Text("code"));
        var choices = (await herself.Read($"/api/clients/{client}/sessions")).AsArray();
        Assert.NotEmpty(choices);
    }

    [Fact]
    public async Task Is_nothing_of_others_who_share_her_session()
    {
        var session = await _app.HasSession(_app.Today.PlusDays(9), seats: 1);
        var other = await _app.HasClient("Zenobia Farthing");
        await _app.HasBooking(session, other);
        var client = await _app.HasClient();
        var herself = await _app.SignedInAs(Role.Client, client: client);
        var waiting = await herself.Booked(session, client);
        Assert.Equal("waiting", waiting.Text("status"));
        foreach (var path in new[] { "", "/sessions", "/bookings" })
            new[] { "Zenobia" }.AreNotIn(await herself.Read($"/api/clients/{client}{path}"), path);
    }

    [Fact]
    public async Task Changes_with_her_own_decision_to_share_which_the_desk_cannot_make()
    {
        var client = await _app.HasClient();
        var contact = new
        {
            name = "Same Person",
            phone = "123456",
            sharesConditions = true,
        };
        using (var desk = await studio.Desk.Put($"/api/clients/{client}", contact))
            await desk.IsRefused(403, "sharing-is-hers");
        var herself = await _app.SignedInAs(Role.Client, client: client);
        using (var hers = await herself.Put($"/api/clients/{client}", contact))
            await hers.Is(204);
        Assert.True((bool)(await herself.Read($"/api/clients/{client}"))["sharesConditions"]!);
    }
}
