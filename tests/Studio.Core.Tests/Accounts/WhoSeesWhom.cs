using Studio.Core.Accounts;

namespace Studio.Core.Tests.Accounts;

/// <summary>
/// The studio's access table, row by row: the front desk never as one who knows, an instructor by her own rosters only,
/// a client herself only, the owner everybody; after a loss the owner and she herself alone. Common practice, no published
/// source.
/// </summary>
public class WhoSeesWhom
{
    private const long Her = 5;
    private const long SomebodyElse = 6;

    [Theory]
    [InlineData("owner", Her, false, Audience.Owner)]
    [InlineData("owner", Her, true, Audience.Owner)]
    [InlineData("frontDesk", Her, false, Audience.FrontDesk)]
    [InlineData("frontDesk", Her, true, null)]
    [InlineData("instructor", Her, false, null)]
    [InlineData("instructor", Her, true, null)]
    [InlineData("client", Her, false, Audience.Herself)]
    [InlineData("client", Her, true, Audience.Herself)]
    [InlineData("client", SomebodyElse, false, null)]
    [InlineData("client", SomebodyElse, true, null)]
    [InlineData("none", Her, false, null)]
    [InlineData("owner+client", Her, false, Audience.Owner)]
    [InlineData("frontDesk+client", Her, false, Audience.Herself)]
    [InlineData("frontDesk+client", Her, true, Audience.Herself)]
    [InlineData("frontDesk+client", SomebodyElse, false, Audience.FrontDesk)]
    [InlineData("frontDesk+client", SomebodyElse, true, null)]
    [InlineData("frontDesk+instructor", Her, false, Audience.FrontDesk)]
    [InlineData("instructor+client", SomebodyElse, false, null)]
    public void A_client_s_page(string roles, long client, bool ended, Audience? audience) =>
        Assert.Equal(audience, With(roles).On(client, ended));

    [Theory]
    [InlineData("owner", 3L, Audience.Owner)]
    [InlineData("owner", null, Audience.Owner)]
    [InlineData("frontDesk", 3L, Audience.FrontDesk)]
    [InlineData("frontDesk", null, Audience.FrontDesk)]
    [InlineData("instructor", 3L, Audience.Instructor)]
    [InlineData("instructor", 4L, null)]
    [InlineData("instructor", null, null)]
    [InlineData("client", 3L, null)]
    [InlineData("client", null, null)]
    [InlineData("none", 3L, null)]
    [InlineData("frontDesk+instructor", 3L, Audience.Instructor)]
    [InlineData("frontDesk+instructor", 4L, Audience.FrontDesk)]
    [InlineData("owner+instructor", 3L, Audience.Owner)]
    public void A_roster(string roles, long? taughtBy, Audience? audience) =>
        Assert.Equal(audience, With(roles).OnRoster(taughtBy));

    [Theory]
    [InlineData("owner", true, true)]
    [InlineData("frontDesk", false, true)]
    [InlineData("instructor", false, false)]
    [InlineData("client", false, false)]
    [InlineData("none", false, false)]
    public void The_desk_s_work(string roles, bool isOwner, bool worksAtDesk)
    {
        Assert.Equal(isOwner, With(roles).IsOwner);
        Assert.Equal(worksAtDesk, With(roles).WorksAtDesk);
    }

    [Fact]
    public void Nobody_learns_more_by_holding_fewer_roles()
    {
        Role[] all = Enum.GetValues<Role>();
        var every = Enumerable
            .Range(0, 1 << all.Length)
            .Select(bits => all.Where((_, at) => (bits >> at & 1) == 1).ToHashSet())
            .ToList();
        foreach (var more in every)
        foreach (var fewer in every.Where(e => e.IsSubsetOf(more)))
        foreach (var ended in new[] { false, true })
        foreach (var client in new[] { Her, SomebodyElse })
        {
            Assert.True(
                Knows(Holding(more).On(client, ended)) >= Knows(Holding(fewer).On(client, ended))
            );
            Assert.True(Knows(Holding(more).OnRoster(3)) >= Knows(Holding(fewer).OnRoster(3)));
        }
    }

    private static int Knows(Audience? audience) => audience is { } a ? 4 - (int)a : 0;

    private static Reader With(string roles) =>
        Holding(
            roles == "none"
                ? []
                : roles.Split('+').Select(r => Enum.Parse<Role>(r, ignoreCase: true)).ToHashSet()
        );

    // As the accounts are: a client's link comes with the role, and so does an instructor's.
    private static Reader Holding(HashSet<Role> roles) =>
        new()
        {
            AccountId = 1,
            Roles = roles,
            ClientId = roles.Contains(Role.Client) ? Her : null,
            InstructorId = roles.Contains(Role.Instructor) ? 3 : null,
        };
}
