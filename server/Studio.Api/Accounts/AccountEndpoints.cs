using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;
using NodaTime;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Clients;

namespace Studio.Api.Accounts;

/// <summary>An e-mail address and a password.</summary>
public sealed record SignIn
{
    /// <summary>E-mail address of the account.</summary>
    [Required, StringLength(254)]
    public required string Email { get; init; }

    /// <summary>Its password.</summary>
    [Required, StringLength(200)]
    public required string Password { get; init; }
}

/// <summary>A change of one's own password.</summary>
public sealed record PasswordChange
{
    /// <summary>The password so far.</summary>
    [Required, StringLength(200)]
    public required string Current { get; init; }

    /// <summary>The new one: at least 10 characters.</summary>
    [Required, StringLength(200)]
    public required string Next { get; init; }
}

/// <summary>Who is signed in.</summary>
public sealed record Me
{
    /// <summary>Her account.</summary>
    public required long AccountId { get; init; }

    /// <summary>Her e-mail address.</summary>
    public required string Email { get; init; }

    /// <summary>Her name.</summary>
    public required string Name { get; init; }

    /// <summary>What she is at the studio.</summary>
    public required IReadOnlyList<Role> Roles { get; init; }

    /// <summary>The client she is.</summary>
    public long? ClientId { get; init; }

    /// <summary>The instructor she is.</summary>
    public long? InstructorId { get; init; }

    /// <summary>The studio's name.</summary>
    public required string StudioName { get; init; }

    /// <summary>Today at the studio's first location.</summary>
    public required LocalDate Today { get; init; }
}

/// <summary>A new account.</summary>
public sealed record NewAccount
{
    /// <summary>E-mail address; nobody else may have it.</summary>
    [Required, EmailAddress, StringLength(254)]
    public required string Email { get; init; }

    /// <summary>Name shown in the program.</summary>
    [Required, StringLength(200, MinimumLength = 1)]
    public required string Name { get; init; }

    /// <summary>First password, at least 10 characters; she changes it after signing in.</summary>
    [Required, StringLength(200)]
    public required string Password { get; init; }

    /// <summary>At least one.</summary>
    [Required, MinLength(1)]
    public required IReadOnlyList<Role> Roles { get; init; }

    /// <summary>The client it is for.</summary>
    public long? ClientId { get; init; }

    /// <summary>The instructor it is for.</summary>
    public long? InstructorId { get; init; }
}

/// <summary>What an account may be.</summary>
public sealed record RolesChange
{
    /// <summary>All of its roles from now on; at least one.</summary>
    [Required, MinLength(1), MaxLength(5)]
    public required IReadOnlyList<Role> Roles { get; init; }
}

/// <summary>A first password for a client's account.</summary>
public sealed record FirstPassword
{
    /// <summary>At least 10 characters; she changes it after signing in.</summary>
    [Required, StringLength(200)]
    public required string Password { get; init; }
}

/// <summary>The id of what was made.</summary>
public sealed record Made(long Id);

/// <summary>Signing in and out, and the accounts the owner makes.</summary>
public static class AccountEndpoints
{
    private static readonly Refusal WrongSignIn = new(
        RefusalKind.Invalid,
        "wrong-sign-in",
        "The e-mail address or the password is not right. Please try again."
    );

    private static readonly Refusal LockedOut = new(
        RefusalKind.NotAllowed,
        "locked-out",
        "Too many wrong passwords. Please wait ten minutes and try again, or ask the owner."
    );

    /// <summary>Maps the routes.</summary>
    public static void MapAccounts(this IEndpointRouteBuilder app)
    {
        var session = app.MapGroup("/api/session").WithTags("Accounts");
        session
            .MapPost("/", SignInAsync)
            .WithName("SignIn")
            .AllowAnonymous()
            .ProducesProblem(401)
            .ProducesProblem(403);
        session
            .MapGet("/", MeAsync)
            .WithName("Me")
            .RequireAuthorization(Policies.SignedIn)
            .ProducesProblem(401);
        session.MapDelete("/", SignOutAsync).WithName("SignOut").AllowAnonymous();
        session
            .MapPut("/password", ChangePasswordAsync)
            .WithName("ChangePassword")
            .RequireAuthorization(Policies.SignedIn)
            .ProducesProblem(400);

        var accounts = app.MapGroup("/api/accounts")
            .WithTags("Accounts")
            .RequireAuthorization(Policies.Owner);
        accounts.MapGet("/", (AccountLinks links) => links.ListAsync()).WithName("Accounts");
        app.MapPost("/api/clients/{clientId}/account", MakeForClientAsync)
            .WithName("MakeClientAccount")
            .WithTags("Accounts")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        accounts
            .MapPut("/{accountId}/roles", ChangeRolesAsync)
            .WithName("ChangeRoles")
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        accounts
            .MapPost("/", MakeAsync)
            .WithName("MakeAccount")
            .ProducesProblem(400)
            .ProducesProblem(409);
    }

    private static async Task<Results<Ok<Me>, ProblemHttpResult>> SignInAsync(
        SignIn request,
        SignInManager<Account> signIn,
        UserManager<Account> users,
        IUserClaimsPrincipalFactory<Account> claims,
        StudioStore studio,
        IPasswordHasher<Account> hasher
    )
    {
        var account = await users.FindByEmailAsync(request.Email);
        if (account is null)
        {
            // Takes as long as a wrong password, so that it does not tell which addresses exist.
            hasher.HashPassword(new Account(), request.Password);
            return Unauthorized();
        }

        var checkedPassword = await signIn.CheckPasswordSignInAsync(
            account,
            request.Password,
            lockoutOnFailure: true
        );
        if (checkedPassword.IsLockedOut)
            return LockedOut.ToProblem();
        if (!checkedPassword.Succeeded)
            return Unauthorized();

        await signIn.SignInAsync(account, isPersistent: false);
        var reader = SignInClaims.Read(await claims.CreateAsync(account));
        return TypedResults.Ok(await DescribeAsync(account, reader, studio));

        static ProblemHttpResult Unauthorized() =>
            WrongSignIn.ToProblem(StatusCodes.Status401Unauthorized);
    }

    private static async Task<Results<Ok<Me>, UnauthorizedHttpResult>> MeAsync(
        Reader reader,
        UserManager<Account> users,
        StudioStore studio
    ) =>
        await users.FindByIdAsync(reader.AccountId.ToString()) is { } account
            ? TypedResults.Ok(await DescribeAsync(account, reader, studio))
            : TypedResults.Unauthorized();

    private static async Task<NoContent> SignOutAsync(SignInManager<Account> signIn)
    {
        await signIn.SignOutAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> ChangePasswordAsync(
        PasswordChange request,
        Reader reader,
        UserManager<Account> users,
        SignInManager<Account> signIn
    )
    {
        if (await users.FindByIdAsync(reader.AccountId.ToString()) is not { } account)
            return WrongSignIn.ToProblem(StatusCodes.Status401Unauthorized);
        var changed = await users.ChangePasswordAsync(account, request.Current, request.Next);
        if (!changed.Succeeded)
        {
            var mismatch = changed.Errors.Any(e =>
                e.Code == nameof(IdentityErrorDescriber.PasswordMismatch)
            );
            var refusal = AccountLinks.Refused(changed);
            return (refusal with { Field = mismatch ? "current" : "next" }).ToProblem();
        }

        await signIn.RefreshSignInAsync(account);
        return TypedResults.NoContent();
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> MakeAsync(
        NewAccount request,
        AccountLinks links
    )
    {
        var answer = await links.MakeAsync(
            request.Email,
            request.Name,
            request.Password,
            [.. request.Roles.Distinct()],
            request.ClientId,
            request.InstructorId
        );
        return answer.TryGet(out var id, out var refusal)
            ? TypedResults.Created($"/api/accounts/{id}", new Made(id))
            : refusal.ToProblem();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> ChangeRolesAsync(
        long accountId,
        RolesChange request,
        AccountLinks links
    ) =>
        await links.ChangeRolesAsync(accountId, [.. request.Roles.Distinct()]) is { } refusal
            ? refusal.ToProblem()
            : TypedResults.NoContent();

    private static async Task<Results<Created<Made>, ProblemHttpResult>> MakeForClientAsync(
        long clientId,
        FirstPassword request,
        Reader reader,
        Database database,
        AccountLinks links
    )
    {
        ClientRow client;
        await using (var read = await database.ReadAsync())
        {
            if (await ClientStore.FindAsync(read, reader, clientId) is not { } seen)
                return BookingRefusals.NoSuchClient.ToProblem();
            client = seen.Row;
        }

        if (client.HasAccount)
            return ClientRefusals.HasAccount.ToProblem();
        if (client.Email.Length == 0)
            return ClientRefusals
                .Invalid(
                    "email-missing",
                    "Enter her e-mail address first: she signs in with it.",
                    "email"
                )
                .ToProblem();
        var answer = await links.MakeAsync(
            client.Email,
            client.Name,
            request.Password,
            [Role.Client],
            clientId
        );
        return answer.TryGet(out var id, out var refusal)
            ? TypedResults.Created($"/api/accounts/{id}", new Made(id))
            : refusal.ToProblem();
    }

    private static async Task<Me> DescribeAsync(Account account, Reader reader, StudioStore studio)
    {
        var about = await studio.AboutAsync();
        return new Me
        {
            AccountId = account.Id,
            Email = account.Email,
            Name = account.Name,
            Roles = [.. reader.Roles.Order()],
            ClientId = reader.ClientId,
            InstructorId = reader.InstructorId,
            StudioName = about.Name,
            Today = about.Today,
        };
    }
}
