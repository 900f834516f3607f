using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Erasures;

/// <summary>She asks, the owner carries it out.</summary>
public class HerWish
{
    [Fact]
    public async Task Is_seen_by_the_owner_and_can_be_taken_back_until_it_is_carried_out()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var client = await app.HasClient("Perla Testwold");
        var she = await app.SignedInAs(Role.Client, client: client);
        await (await she.Post($"/api/clients/{client}/erasure/wish")).Is(204);
        await (await she.Post($"/api/clients/{client}/erasure/wish")).Is(204);
        var wish = (await owner.Read("/api/erasures"))["wishes"]!.AsArray().Single()!;
        Assert.Equal(("Perla Testwold", true), ((string)wish["name"]!, (bool)wish["byHerself"]!));
        Assert.NotNull((await she.Read($"/api/clients/{client}/erasure"))["askedAt"]);

        await (await she.Send(HttpMethod.Delete, $"/api/clients/{client}/erasure/wish")).Is(204);
        await (await she.Send(HttpMethod.Delete, $"/api/clients/{client}/erasure/wish")).Is(404);
        Assert.Empty((await owner.Read("/api/erasures"))["wishes"]!.AsArray());

        await (await owner.Post($"/api/clients/{client}/erasure/wish")).Is(204);
        await owner.Erase(client);
        var list = await owner.Read("/api/erasures");
        Assert.Empty(list["wishes"]!.AsArray());
        Assert.DoesNotContain("Perla", list.ToJsonString(), StringComparison.Ordinal);
        Assert.Single(list["done"]!.AsArray());
    }

    [Fact]
    public async Task Is_refused_by_another_name_or_when_something_else_was_shown_and_nothing_is_changed()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var client = await app.HasClient("Perla Testwold");
        var seen = (string)(await owner.Read($"/api/clients/{client}/erasure"))["seen"]!;
        var before = await app.EveryText();
        var other = await (
            await owner.Post($"/api/clients/{client}/erasure", new { name = "Perla", seen })
        ).Is(400);
        Assert.NotNull(other["errors"]!["name"]);
        var changed = await (
            await owner.Post(
                $"/api/clients/{client}/erasure",
                new { name = "Perla Testwold", seen = "" }
            )
        ).Is(409);
        Assert.Equal("other-than-shown", (string?)changed["code"]);
        Assert.Equal(before, await app.EveryText());
        await (await owner.Post("/api/clients/999999/erasure", new { name = "Perla", seen })).Is(
            404
        );
    }

    [Fact]
    public async Task Lets_go_of_her_seats_to_those_who_wait_and_of_her_own_places()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var (client, next) = (await app.HasClient(), await app.HasClient());
        var full = await app.HasSession(app.Today.PlusDays(2), seats: 1);
        var other = await app.HasSession(app.Today.PlusDays(3), seats: 1);
        await app.HasBooking(full, client);
        await app.HasBooking(full, next, "waiting");
        await app.HasBooking(other, next);
        await app.HasBooking(other, client, "waiting");

        await owner.Erase(client);

        Assert.Equal(
            [(full, "booked"), (other, "booked")],
            (
                await app.Rows<Seat>(
                    "select session_id as Session, status as Status from bookings where client_id = @next order by session_id",
                    new { next }
                )
            ).Select(s => (s.Session, s.Status))
        );
        Assert.Equal(
            0,
            await app.Value<long>(
                "select count(*) from bookings where client_id = @client",
                new { client }
            )
        );
        Assert.Equal(
            1,
            await app.Value<long>("select seats_taken from sessions where id = @full", new { full })
        );
    }

    [Fact]
    public async Task Is_carried_out_whole_or_not_at_all()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var client = await app.HasClient("Perla Testwold");
        var she = await app.SignedInAs(Role.Client, client: client);
        await app.HasBooking(await app.HasSession(app.Today.PlusDays(2)), client);
        // Something goes wrong in the middle of it.
        await app.Execute(
            "create trigger broken before delete on due_dates begin select raise(abort, 'broken'); end"
        );
        var before = await app.EveryText();
        var seen = (string)(await owner.Read($"/api/clients/{client}/erasure"))["seen"]!;
        await Assert.ThrowsAnyAsync<Exception>(async () =>
            await (
                await owner.Post(
                    $"/api/clients/{client}/erasure",
                    new { name = "Perla Testwold", seen }
                )
            ).Is(200)
        );
        Assert.Equal(before, await app.EveryText());
        await she.Read($"/api/clients/{client}");
    }

    [Fact]
    public async Task Cannot_leave_the_door_open_behind_it()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        await using var write = await app.Services.GetRequiredService<Database>().BeginWriteAsync();
        await write.ExecuteAsync(
            "insert into erasing (id, client_id) values (1, @client)",
            new { client }
        );
        await write.ExecuteAsync(
            "delete from due_dates where pregnancy_id in (select id from pregnancies where client_id = @client)",
            new { client }
        );
        var refused = await Assert.ThrowsAsync<SqliteException>(write.CommitAsync);
        Assert.Contains("FOREIGN KEY", refused.Message, StringComparison.Ordinal);
    }

    private sealed record Seat
    {
        public long Session { get; init; }
        public string Status { get; init; } = "";
    }
}
