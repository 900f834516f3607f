using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Studio.Core.Accounts;

namespace Studio.Api.Accounts;

/// <summary>Who may use a route at all. What they may see there is decided per object, by <see cref="Reader"/>.</summary>
public static class Policies
{
    /// <summary>Anybody signed in.</summary>
    public const string SignedIn = "signed-in";

    /// <summary>The owner.</summary>
    public const string Owner = "owner";

    /// <summary>Front desk and owner.</summary>
    public const string Desk = "desk";

    /// <summary>Front desk, instructors and owner.</summary>
    public const string Staff = "staff";

    /// <summary>Instructors and owner.</summary>
    public const string Teaching = "teaching";

    /// <summary>Front desk and owner, and the client for her own.</summary>
    public const string DeskOrClient = "desk-or-client";

    /// <summary>The owner, and the client for her own.</summary>
    public const string OwnerOrClient = "owner-or-client";

    /// <summary>Those who read clearance letters, and the owner.</summary>
    public const string Reviewer = "reviewer";

    /// <summary>Front desk, those who read letters and the owner, and the client for her own.</summary>
    public const string DeskReviewerOrClient = "desk-reviewer-or-client";

    /// <summary>Adds accounts, the cookie and the policies.</summary>
    public static void AddAccounts(this IServiceCollection services)
    {
        services
            .AddIdentityCore<Account>(options =>
            {
                options.Password.RequiredLength = 10;
                options.Password.RequireDigit = false;
                options.Password.RequireLowercase = false;
                options.Password.RequireUppercase = false;
                options.Password.RequireNonAlphanumeric = false;
                options.Password.RequiredUniqueChars = 4;
                options.User.AllowedUserNameCharacters = "";
                options.User.RequireUniqueEmail = true;
                options.Lockout.MaxFailedAccessAttempts = 5;
                options.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(10);
            })
            .AddUserStore<AccountStore>()
            .AddClaimsPrincipalFactory<SignInClaims>()
            .AddSignInManager();
        services.AddScoped<AccountLinks>();
        services.Configure<SecurityStampValidatorOptions>(o =>
            o.ValidationInterval = TimeSpan.FromMinutes(1)
        );
        services
            .AddAuthentication(IdentityConstants.ApplicationScheme)
            .AddCookie(
                IdentityConstants.ApplicationScheme,
                options =>
                {
                    options.Cookie.Name = "studio";
                    options.Cookie.HttpOnly = true;
                    options.Cookie.SameSite = SameSiteMode.Strict;
                    options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
                    options.ExpireTimeSpan = TimeSpan.FromHours(12);
                    options.SlidingExpiration = true;
                    options.Events.OnValidatePrincipal =
                        SecurityStampValidator.ValidatePrincipalAsync;
                    // This is an API: it answers, it does not redirect.
                    options.Events.OnRedirectToLogin = context =>
                    {
                        context.Response.StatusCode = StatusCodes.Status401Unauthorized;
                        return Task.CompletedTask;
                    };
                    options.Events.OnRedirectToAccessDenied = context =>
                    {
                        context.Response.StatusCode = StatusCodes.Status403Forbidden;
                        return Task.CompletedTask;
                    };
                }
            );
        services
            .AddAuthorizationBuilder()
            .AddPolicy(SignedIn, p => p.RequireAuthenticatedUser())
            .AddPolicy(Owner, p => p.For(Role.Owner))
            .AddPolicy(Desk, p => p.For(Role.Owner, Role.FrontDesk))
            .AddPolicy(Staff, p => p.For(Role.Owner, Role.FrontDesk, Role.Instructor))
            .AddPolicy(Teaching, p => p.For(Role.Owner, Role.Instructor))
            .AddPolicy(DeskOrClient, p => p.For(Role.Owner, Role.FrontDesk, Role.Client))
            .AddPolicy(OwnerOrClient, p => p.For(Role.Owner, Role.Client))
            .AddPolicy(Reviewer, p => p.For(Role.Owner, Role.Reviewer))
            .AddPolicy(
                DeskReviewerOrClient,
                p => p.For(Role.Owner, Role.Reviewer, Role.FrontDesk, Role.Client)
            )
            // A route that forgot its policy is closed.
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build());
        services.AddHttpContextAccessor();
        services.AddScoped(provider =>
            SignInClaims.Read(provider.GetRequiredService<IHttpContextAccessor>().HttpContext!.User)
        );
    }

    private static void For(this AuthorizationPolicyBuilder policy, params Role[] roles) =>
        policy.RequireRole([.. roles.Select(r => r.OnTheWire())]);
}
