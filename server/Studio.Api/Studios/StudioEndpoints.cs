using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;

namespace Studio.Api.Studios;

/// <summary>A stage of the scheme.</summary>
public sealed record StageMessage(
    string Code,
    string Name,
    StageCount CountsFrom,
    int FromDay,
    int? ToDay,
    string Source
);

/// <summary>A factor of the catalogue.</summary>
public sealed record FactorChoice(string Code, string Name, bool IsCondition);

/// <summary>A demo account on the sign-in page.</summary>
public sealed record DemoAccount(string Email, string Password, Role Role, string Does);

/// <summary>Whether the demo studio is loaded, and its accounts.</summary>
public sealed record DemoMessage(bool Loaded, IReadOnlyList<DemoAccount> Accounts);

/// <summary>What stands still: stages, factors, places, classes.</summary>
public static class StudioEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapStudio(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/demo", DemoAsync).WithName("Demo").WithTags("Studio").AllowAnonymous();

        var studio = app.MapGroup("/api")
            .WithTags("Studio")
            .RequireAuthorization(Policies.SignedIn);
        studio
            .MapGet(
                "/stages",
                (RuleBook book) =>
                    book.Stages.Stages.Select(s => new StageMessage(
                        s.Code,
                        s.Name,
                        s.CountsFrom,
                        s.FromDay,
                        s.ToDay,
                        s.Source
                    ))
            )
            .WithName("Stages");
        studio
            .MapGet(
                "/factors",
                (RuleBook book) =>
                    book.Factors.Select(f => new FactorChoice(f.Code, f.Name, f.IsCondition))
            )
            .WithName("Factors");
        studio
            .MapGet(
                "/locations",
                async Task<List<Location>> (Database database) =>
                {
                    await using var read = await database.ReadAsync();
                    return await StudioStore.LocationsAsync(read);
                }
            )
            .WithName("Locations");
        studio
            .MapGet(
                "/classes",
                async Task<List<StudioClass>> (Database database) =>
                {
                    await using var read = await database.ReadAsync();
                    return await StudioStore.ClassesAsync(read);
                }
            )
            .WithName("Classes");
    }

    private static async Task<Ok<DemoMessage>> DemoAsync(StudioStore studio, AccountLinks links)
    {
        if (!(await studio.AboutAsync()).DemoLoaded)
            return TypedResults.Ok(new DemoMessage(false, []));
        return TypedResults.Ok(
            new DemoMessage(
                true,
                [
                    .. (await links.ListAsync(demoOnly: true)).Select(a => new DemoAccount(
                        a.Email,
                        Demo.DemoStudio.Password,
                        Roles.Parse(a.Roles.Split(',')).Min(),
                        Demo.DemoStudio.Does(a.Email)
                    )),
                ]
            )
        );
    }
}
