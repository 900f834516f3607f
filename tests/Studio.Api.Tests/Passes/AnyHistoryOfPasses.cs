using CsCheck;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Passes;

/// <summary>Whatever happens, and in whatever order, to the passes of a client.</summary>
public class AnyHistoryOfPasses
{
    private sealed record Ledger
    {
        public long Id { get; init; }
        public long Given { get; init; }
        public long Refunded { get; init; }
        public long Standing { get; init; }
        public long Balance { get; init; }
        public long Least { get; init; }
    }

    [Fact]
    public async Task No_credit_is_lost_doubled_or_negative_and_the_ledger_explains_every_balance()
    {
        await using var app = await StudioApp.Empty();
        var desk = await app.SignedInAs(Role.FrontDesk);
        var cls = await app.HasClass();
        var kinds = new[]
        {
            await app.HasPassKind(1, 20),
            await app.HasPassKind(2, 60),
            await app.HasPassKind(3, 40),
        };
        var other = await app.HasClient(due: app.Today.PlusDays(150));
        // Some seats are scarce, so that somebody waits; today's are too late to be cancelled free.
        var sessions = new List<long>();
        for (var day = 0; day < 6; day++)
            sessions.Add(
                await app.HasSession(
                    app.Today.PlusDays(day),
                    "18:00",
                    cls,
                    seats: day % 2 == 0 ? 1 : 4
                )
            );
        await Gen.Select(Gen.Int[0, 9], Gen.Int[0, 5], Gen.Int[0, 2])
            .Array[1, 25]
            .SampleAsync(
                async history =>
                {
                    var her = await app.HasClient(due: app.Today.PlusDays(150));
                    foreach (var (what, which, pick) in history)
                    {
                        var mine = await app.Rows<long>(
                            "select id from bookings where client_id = @her and status in ('booked', 'waiting')",
                            new { her }
                        );
                        var passes = await app.Rows<long>(
                            "select id from passes where client_id = @her",
                            new { her }
                        );
                        using var done = what switch
                        {
                            0 or 1 => await desk.Post(
                                $"/api/clients/{her}/passes",
                                new { kindId = kinds[pick], paidHow = "cash" }
                            ),
                            2 or 3 or 4 => await desk.Book(sessions[which], her),
                            5 when mine.Count > 0 => await desk.Cancel(mine[which % mine.Count]),
                            6 when mine.Count > 0 => await desk.Send(
                                HttpMethod.Delete,
                                $"/api/bookings/{mine[which % mine.Count]}?medical=true"
                            ),
                            7 when passes.Count > 0 => await desk.Post(
                                $"/api/passes/{passes[which % passes.Count]}/goodwill",
                                new { credits = pick + 1, reason = "Kindly." }
                            ),
                            8 when passes.Count > 0 => await desk.Post(
                                $"/api/passes/{passes[which % passes.Count]}/refund",
                                new
                                {
                                    amount = 100 * pick,
                                    paidHow = "cash",
                                    reason = "She moves away.",
                                }
                            ),
                            _ => await desk.Book(sessions[which], other),
                        };
                        Assert.True((int)done.StatusCode < 500);
                        await Holds(app, her);
                    }

                    // Nobody stands in the way of the next history.
                    foreach (
                        var booking in await app.Rows<long>(
                            "select id from bookings where status in ('booked', 'waiting')"
                        )
                    )
                        using (await desk.Cancel(booking)) { }
                    await Holds(app, her);
                },
                iter: 25,
                threads: 1
            );
    }

    private static async Task Holds(StudioApp app, long her)
    {
        foreach (
            var pass in await app.Rows<Ledger>(
                """
                select p.id,
                       coalesce(sum(e.credits) filter (where e.kind in ('sold', 'goodwill')), 0) as Given,
                       coalesce(-sum(e.credits) filter (where e.kind = 'refunded'), 0) as Refunded,
                       coalesce(-sum(e.credits) filter (where e.kind in ('spent', 'returned')), 0) as Standing,
                       sum(e.credits) as Balance,
                       (select min(r.so_far) from (select sum(x.credits) over (order by x.id) as so_far
                                                     from pass_entries x where x.pass_id = p.id) r) as Least
                  from passes p join pass_entries e on e.pass_id = p.id
                 where p.client_id = @her group by p.id
                """,
                new { her }
            )
        )
        {
            Assert.Equal(pass.Given - pass.Refunded - pass.Standing, pass.Balance);
            Assert.True(pass.Least >= 0);
        }

        // A seat has at most one credit against it, and whatever stands against a booking is a seat, or was given up late.
        Assert.Equal(
            0,
            await app.Value<long>(
                """
                select count(*) from bookings b
                 where b.client_id = @her
                   and (select coalesce(-sum(e.credits), 0) from pass_entries e where e.booking_id = b.id) not in (0, 1)
                """,
                new { her }
            )
        );
        Assert.Equal(
            0,
            await app.Value<long>(
                """
                select count(*) from pass_entries e join bookings b on b.id = e.booking_id
                  join sessions s on s.id = b.session_id
                 where b.client_id = @her and e.kind = 'spent'
                   and not exists (select 1 from pass_entries r where r.booking_id = b.id and r.kind = 'returned')
                   and not (b.status = 'booked' or (b.status = 'cancelled' and s.on_date = @Today))
                """,
                new { her, app.Today }
            )
        );
    }
}
