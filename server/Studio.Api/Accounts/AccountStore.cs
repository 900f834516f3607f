using Microsoft.AspNetCore.Identity;
using NodaTime;
using Studio.Api.Data;
using Studio.Core.Accounts;

namespace Studio.Api.Accounts;

/// <summary>ASP.NET Core Identity's view of the accounts table.</summary>
public sealed class AccountStore(Database database)
    : IUserPasswordStore<Account>,
        IUserEmailStore<Account>,
        IUserLockoutStore<Account>,
        IUserSecurityStampStore<Account>,
        IUserRoleStore<Account>
{
    private const string Columns = """
        id, email, normalized_email as NormalizedEmail, name, password_hash as PasswordHash,
        security_stamp as SecurityStamp, lockout_until as LockoutUntil, failed_count as FailedCount,
        is_demo as IsDemo, made_at as MadeAt
        """;

    /// <summary>Inserts in a transaction that also writes the roles; see <see cref="AddToRoleAsync"/>.</summary>
    public async Task<IdentityResult> CreateAsync(Account user, CancellationToken cancellationToken)
    {
        await using var write = await database.BeginWriteAsync();
        user.Id = await write.InsertAsync(
            """
            insert into accounts (email, normalized_email, name, password_hash, security_stamp, is_demo, made_at)
            values (@Email, @NormalizedEmail, @Name, @PasswordHash, @SecurityStamp, @IsDemo, @MadeAt)
            """,
            user
        );
        await write.CommitAsync();
        return IdentityResult.Success;
    }

    /// <inheritdoc/>
    public async Task<IdentityResult> UpdateAsync(Account user, CancellationToken cancellationToken)
    {
        await using var write = await database.BeginWriteAsync();
        await write.ExecuteAsync(
            """
            update accounts
               set email = @Email, normalized_email = @NormalizedEmail, name = @Name, password_hash = @PasswordHash,
                   security_stamp = @SecurityStamp, lockout_until = @LockoutUntil, failed_count = @FailedCount
             where id = @Id
            """,
            user
        );
        await write.CommitAsync();
        return IdentityResult.Success;
    }

    /// <inheritdoc/>
    public async Task<IdentityResult> DeleteAsync(Account user, CancellationToken cancellationToken)
    {
        await using var write = await database.BeginWriteAsync();
        await write.ExecuteAsync("delete from accounts where id = @Id", new { user.Id });
        await write.CommitAsync();
        return IdentityResult.Success;
    }

    /// <inheritdoc/>
    public async Task<Account?> FindByIdAsync(string userId, CancellationToken cancellationToken)
    {
        await using var read = await database.ReadAsync();
        return long.TryParse(userId, out var id)
            ? await read.FindAsync<Account>(
                $"select {Columns} from accounts where id = @id",
                new { id }
            )
            : null;
    }

    /// <inheritdoc/>
    public Task<Account?> FindByNameAsync(
        string normalizedUserName,
        CancellationToken cancellationToken
    ) => FindByEmailAsync(normalizedUserName, cancellationToken);

    /// <inheritdoc/>
    public async Task<Account?> FindByEmailAsync(
        string normalizedEmail,
        CancellationToken cancellationToken
    )
    {
        await using var read = await database.ReadAsync();
        return await read.FindAsync<Account>(
            $"select {Columns} from accounts where normalized_email = @normalizedEmail",
            new { normalizedEmail }
        );
    }

    /// <inheritdoc/>
    public async Task AddToRoleAsync(
        Account user,
        string roleName,
        CancellationToken cancellationToken
    )
    {
        await using var write = await database.BeginWriteAsync();
        await write.ExecuteAsync(
            "insert into account_roles (account_id, role) values (@Id, @role) on conflict do nothing",
            new { user.Id, role = Enum.Parse<Role>(roleName, ignoreCase: true).OnTheWire() }
        );
        await write.CommitAsync();
    }

    /// <inheritdoc/>
    public async Task RemoveFromRoleAsync(
        Account user,
        string roleName,
        CancellationToken cancellationToken
    )
    {
        await using var write = await database.BeginWriteAsync();
        await write.ExecuteAsync(
            "delete from account_roles where account_id = @Id and role = @role",
            new { user.Id, role = Enum.Parse<Role>(roleName, ignoreCase: true).OnTheWire() }
        );
        await write.CommitAsync();
    }

    /// <inheritdoc/>
    public async Task<IList<string>> GetRolesAsync(
        Account user,
        CancellationToken cancellationToken
    )
    {
        await using var read = await database.ReadAsync();
        return await read.ListAsync<string>(
            "select role from account_roles where account_id = @Id order by role",
            new { user.Id }
        );
    }

    /// <inheritdoc/>
    public async Task<bool> IsInRoleAsync(
        Account user,
        string roleName,
        CancellationToken cancellationToken
    ) =>
        (await GetRolesAsync(user, cancellationToken)).Contains(
            roleName,
            StringComparer.OrdinalIgnoreCase
        );

    /// <inheritdoc/>
    public async Task<IList<Account>> GetUsersInRoleAsync(
        string roleName,
        CancellationToken cancellationToken
    )
    {
        await using var read = await database.ReadAsync();
        return await read.ListAsync<Account>(
            $"select {Columns} from accounts where id in (select account_id from account_roles where role = @role)",
            new { role = Enum.Parse<Role>(roleName, ignoreCase: true).OnTheWire() }
        );
    }

    /// <inheritdoc/>
    public Task<string> GetUserIdAsync(Account user, CancellationToken cancellationToken) =>
        Task.FromResult(user.Id.ToString());

    /// <inheritdoc/>
    public Task<string?> GetUserNameAsync(Account user, CancellationToken cancellationToken) =>
        Task.FromResult<string?>(user.Email);

    /// <inheritdoc/>
    public Task SetUserNameAsync(
        Account user,
        string? userName,
        CancellationToken cancellationToken
    ) => Done(() => user.Email = userName ?? "");

    /// <inheritdoc/>
    public Task<string?> GetNormalizedUserNameAsync(
        Account user,
        CancellationToken cancellationToken
    ) => Task.FromResult<string?>(user.NormalizedEmail);

    /// <inheritdoc/>
    public Task SetNormalizedUserNameAsync(
        Account user,
        string? normalizedName,
        CancellationToken cancellationToken
    ) => Done(() => user.NormalizedEmail = normalizedName ?? "");

    /// <inheritdoc/>
    public Task SetEmailAsync(Account user, string? email, CancellationToken cancellationToken) =>
        Done(() => user.Email = email ?? "");

    /// <inheritdoc/>
    public Task<string?> GetEmailAsync(Account user, CancellationToken cancellationToken) =>
        Task.FromResult<string?>(user.Email);

    /// <summary>Addresses are typed by the owner and not confirmed by mail.</summary>
    public Task<bool> GetEmailConfirmedAsync(Account user, CancellationToken cancellationToken) =>
        Task.FromResult(true);

    /// <inheritdoc/>
    public Task SetEmailConfirmedAsync(
        Account user,
        bool confirmed,
        CancellationToken cancellationToken
    ) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task<string?> GetNormalizedEmailAsync(
        Account user,
        CancellationToken cancellationToken
    ) => Task.FromResult<string?>(user.NormalizedEmail);

    /// <inheritdoc/>
    public Task SetNormalizedEmailAsync(
        Account user,
        string? normalizedEmail,
        CancellationToken cancellationToken
    ) => Done(() => user.NormalizedEmail = normalizedEmail ?? "");

    /// <inheritdoc/>
    public Task SetPasswordHashAsync(
        Account user,
        string? passwordHash,
        CancellationToken cancellationToken
    ) => Done(() => user.PasswordHash = passwordHash);

    /// <inheritdoc/>
    public Task<string?> GetPasswordHashAsync(Account user, CancellationToken cancellationToken) =>
        Task.FromResult(user.PasswordHash);

    /// <inheritdoc/>
    public Task<bool> HasPasswordAsync(Account user, CancellationToken cancellationToken) =>
        Task.FromResult(user.PasswordHash is not null);

    /// <inheritdoc/>
    public Task SetSecurityStampAsync(
        Account user,
        string stamp,
        CancellationToken cancellationToken
    ) => Done(() => user.SecurityStamp = stamp);

    /// <inheritdoc/>
    public Task<string?> GetSecurityStampAsync(Account user, CancellationToken cancellationToken) =>
        Task.FromResult<string?>(user.SecurityStamp);

    /// <inheritdoc/>
    public Task<DateTimeOffset?> GetLockoutEndDateAsync(
        Account user,
        CancellationToken cancellationToken
    ) => Task.FromResult(user.LockoutUntil?.ToDateTimeOffset());

    /// <inheritdoc/>
    public Task SetLockoutEndDateAsync(
        Account user,
        DateTimeOffset? lockoutEnd,
        CancellationToken cancellationToken
    ) =>
        Done(() =>
            user.LockoutUntil = lockoutEnd is { } end ? Instant.FromDateTimeOffset(end) : null
        );

    /// <inheritdoc/>
    public Task<int> IncrementAccessFailedCountAsync(
        Account user,
        CancellationToken cancellationToken
    ) => Task.FromResult(++user.FailedCount);

    /// <inheritdoc/>
    public Task ResetAccessFailedCountAsync(Account user, CancellationToken cancellationToken) =>
        Done(() => user.FailedCount = 0);

    /// <inheritdoc/>
    public Task<int> GetAccessFailedCountAsync(Account user, CancellationToken cancellationToken) =>
        Task.FromResult(user.FailedCount);

    /// <summary>Everybody can be locked out.</summary>
    public Task<bool> GetLockoutEnabledAsync(Account user, CancellationToken cancellationToken) =>
        Task.FromResult(true);

    /// <inheritdoc/>
    public Task SetLockoutEnabledAsync(
        Account user,
        bool enabled,
        CancellationToken cancellationToken
    ) => Task.CompletedTask;

    /// <inheritdoc/>
    public void Dispose() { }

    private static Task Done(Action set)
    {
        set();
        return Task.CompletedTask;
    }
}
