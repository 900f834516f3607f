using Microsoft.AspNetCore.Identity;
using NodaTime;
using Studio.Api.Data;
using Studio.Core;
using Studio.Core.Accounts;

namespace Studio.Api.Accounts;

/// <summary>An account in the owner's list.</summary>
public sealed record AccountRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>E-mail address.</summary>
    public string Email { get; init; } = "";

    /// <summary>Name.</summary>
    public string Name { get; init; } = "";

    /// <summary>Roles, comma between.</summary>
    public string Roles { get; init; } = "";

    /// <summary>The client it belongs to.</summary>
    public long? ClientId { get; init; }

    /// <summary>The instructor it belongs to.</summary>
    public long? InstructorId { get; init; }
}

/// <summary>Makes accounts and ties them to the client or instructor they belong to.</summary>
public sealed class AccountLinks(UserManager<Account> users, Database database, IClock clock)
{
    /// <summary>The demo's accounts, when the demo is loaded.</summary>
    public async Task<List<AccountRow>> ListAsync(bool demoOnly = false)
    {
        await using var read = await database.ReadAsync();
        return await read.ListAsync<AccountRow>(
            """
            select a.id, a.email, a.name, c.id as ClientId, i.id as InstructorId,
                   coalesce((select group_concat(role, ',') from account_roles r where r.account_id = a.id), '') as Roles
              from accounts a
              left join clients c on c.account_id = a.id
              left join instructors i on i.account_id = a.id
             where a.closed_at is null and (a.is_demo = 1 or @all)
             order by a.id
            """,
            new { all = !demoOnly }
        );
    }

    /// <summary>Makes an account. The client or instructor must exist and have none yet.</summary>
    public async Task<Answer<long>> MakeAsync(
        string email,
        string name,
        string password,
        IReadOnlyCollection<Role> roles,
        long? clientId = null,
        long? instructorId = null,
        bool isDemo = false
    )
    {
        if (await UnlinkedAsync("clients", clientId, "clientId") is { } noClient)
            return noClient;
        if (await UnlinkedAsync("instructors", instructorId, "instructorId") is { } noInstructor)
            return noInstructor;

        var account = new Account
        {
            Email = email,
            Name = name,
            IsDemo = isDemo,
            MadeAt = clock.GetCurrentInstant(),
        };
        var made = await users.CreateAsync(account, password);
        if (!made.Succeeded)
            return Refused(made);
        foreach (var role in roles)
            await users.AddToRoleAsync(account, role.OnTheWire());

        await using var write = await database.BeginWriteAsync();
        await write.ExecuteAsync(
            "update clients set account_id = @Id where id = @clientId",
            new { account.Id, clientId }
        );
        await write.ExecuteAsync(
            "update instructors set account_id = @Id where id = @instructorId",
            new { account.Id, instructorId }
        );
        await write.CommitAsync();
        return account.Id;
    }

    /// <summary>
    /// Gives an account these roles and no others; why not, or null when it was done. Open pages follow within a minute,
    /// when their sign-in is next checked.
    /// </summary>
    public async Task<Refusal?> ChangeRolesAsync(long accountId, IReadOnlyCollection<Role> roles)
    {
        await using var write = await database.BeginWriteAsync();
        var account = await write.FindAsync<AccountRow>(
            """
            select a.id, a.email, a.name, c.id as ClientId, i.id as InstructorId
              from accounts a
              left join clients c on c.account_id = a.id
              left join instructors i on i.account_id = a.id
             where a.id = @accountId and a.closed_at is null
            """,
            new { accountId }
        );
        if (account is null)
            return AccountRefusals.NoSuchAccount;
        var owners = await write.ListAsync<long>(
            "select account_id from account_roles where role = @owner",
            new { owner = Role.Owner.OnTheWire() }
        );
        if (
            AccountRefusals.WhyNot(
                roles,
                account.ClientId is not null,
                account.InstructorId is not null,
                isLastOwner: owners.Count == 1 && owners[0] == accountId
            ) is
            { } refusal
        )
            return refusal;
        await write.ExecuteAsync(
            "delete from account_roles where account_id = @accountId",
            new { accountId }
        );
        foreach (var role in roles)
            await write.ExecuteAsync(
                "insert into account_roles (account_id, role) values (@accountId, @role)",
                new { accountId, role = role.OnTheWire() }
            );
        await write.CommitAsync();
        return null;
    }

    /// <summary>Identity's complaints as one refusal, with the field they are about.</summary>
    public static Refusal Refused(IdentityResult result)
    {
        var first = result.Errors.First();
        var about = first.Code.Contains("Password", StringComparison.Ordinal)
            ? "password"
            : "email";
        return new(
            first.Code.StartsWith("Duplicate", StringComparison.Ordinal)
                ? RefusalKind.Conflict
                : RefusalKind.Invalid,
            about == "email" ? "email-not-possible" : "password-not-possible",
            string.Join(" ", result.Errors.Select(e => e.Description)),
            about
        );
    }

    private async Task<Refusal?> UnlinkedAsync(string table, long? id, string field)
    {
        if (id is null)
            return null;
        await using var read = await database.ReadAsync();
        var free = await read.FindAsync<long?>(
            $"select id from {table} where id = @id and account_id is null{(table == "clients" ? " and erased_at is null" : "")}",
            new { id }
        );
        return free is null
            ? new(
                RefusalKind.Invalid,
                "cannot-link",
                "There is no such person, or she has an account already.",
                field
            )
            : null;
    }
}
