using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using Studio.Api.Data;
using Studio.Core.Accounts;

namespace Studio.Api.Accounts;

/// <summary>What the cookie says of a person: the account, the roles, and which client or instructor it is.</summary>
public sealed class SignInClaims(
    UserManager<Account> users,
    IOptions<IdentityOptions> options,
    Database database
) : UserClaimsPrincipalFactory<Account>(users, options)
{
    private const string ClientClaim = "studio:client";
    private const string InstructorClaim = "studio:instructor";

    /// <summary>The signed-in person as the core knows her.</summary>
    /// <exception cref="InvalidOperationException">Nobody is signed in; the route lacks a policy.</exception>
    public static Reader Read(ClaimsPrincipal principal) =>
        new()
        {
            AccountId =
                Number(principal, ClaimTypes.NameIdentifier)
                ?? throw new InvalidOperationException("Nobody is signed in."),
            Roles = Roles.Parse(principal.FindAll(ClaimTypes.Role).Select(c => c.Value)),
            ClientId = Number(principal, ClientClaim),
            InstructorId = Number(principal, InstructorClaim),
        };

    /// <inheritdoc/>
    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(Account user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        foreach (var role in await UserManager.GetRolesAsync(user))
            identity.AddClaim(new Claim(identity.RoleClaimType, role));

        await using var read = await database.ReadAsync();
        await AddAsync("select id from clients where account_id = @Id", ClientClaim);
        await AddAsync("select id from instructors where account_id = @Id", InstructorClaim);
        return identity;

        async Task AddAsync(string sql, string claim)
        {
            if (await read.FindAsync<long?>(sql, new { user.Id }) is { } id)
                identity.AddClaim(new Claim(claim, id.ToString()));
        }
    }

    private static long? Number(ClaimsPrincipal principal, string claim) =>
        long.TryParse(principal.FindFirstValue(claim), out var number) ? number : null;
}
