using System.Text;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Catalogue;

namespace Studio.Api.Catalogue;

/// <summary>The catalogue in force, to be read: rules, movements, sources, coverage, and the files themselves.</summary>
public static class CatalogueEndpoints
{
    internal static readonly Refusal NoSuchVersion = new(
        RefusalKind.NotFound,
        "no-such-version",
        "There is no such version of the rules."
    );

    private static readonly Refusal NoSuchFile = new(
        RefusalKind.NotFound,
        "no-such-file",
        $"The catalogue has no such file. Its files are {string.Join(", ", CatalogueTexts.Names)}."
    );

    /// <summary>Maps the routes.</summary>
    public static void MapCatalogue(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/catalogue/movements", MovementsAsync)
            .WithName("CatalogueMovements")
            .WithTags("Catalogue")
            .RequireAuthorization(Policies.Teaching);

        var catalogue = app.MapGroup("/api/catalogue")
            .WithTags("Catalogue")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(404);
        catalogue.MapGet("/rules", RulesAsync).WithName("CatalogueRules");
        catalogue.MapGet("/sources", Sources).WithName("CatalogueSources");
        catalogue.MapGet("/coverage", Coverage).WithName("CatalogueCoverage");
        catalogue.MapGet("/versions", VersionsAsync).WithName("CatalogueVersions");
        catalogue
            .MapGet("/files/{file}", FileInForce)
            .WithName("CatalogueFile")
            .Produces<string>(StatusCodes.Status200OK, "text/csv");
        catalogue
            .MapGet("/versions/{version:int}/files/{file}", FileOfVersionAsync)
            .WithName("CatalogueVersionFile")
            .Produces<string>(StatusCodes.Status200OK, "text/csv");
    }

    /// <summary>The texts of a version, 0 being the program's own as it came; null when there is no such version.</summary>
    internal static async Task<(CatalogueTexts Texts, bool Own)?> TextsAsync(
        Read read,
        CatalogueInForce catalogue,
        int version
    )
    {
        if (version == 0)
            return (catalogue.Own.Texts, true);
        return await CatalogueStore.FindAsync(read, version) is { } row
            ? (await CatalogueStore.TextsAsync(read, row, catalogue.Own.Texts), row.Own)
            : null;
    }

    private static async Task<CatalogueMovements> MovementsAsync(Database database, RuleBook book)
    {
        await using var read = await database.ReadAsync();
        return CatalogueMovements.Of(book, await PolicyStore.InForceAsync(read, book));
    }

    private static async Task<List<RuleMessage>> RulesAsync(Database database, RuleBook book)
    {
        await using var read = await database.ReadAsync();
        var policies = await PolicyStore.InForceAsync(read, book);
        return [.. RuleCards.Of(book, policies).Select(RuleMessage.Of)];
    }

    private static List<SourceInUse> Sources(RuleBook book)
    {
        var rules = RuleCards.Of(book, book.Policies).ToLookup(r => r.Source.Id, r => r.Id);
        return
        [
            .. book.Sources.Values.Select(s => new SourceInUse(
                s.Id,
                s.Cite,
                s.Verification,
                [.. rules[s.Id]]
            )),
        ];
    }

    private static List<CoverageMessage> Coverage(CatalogueInForce catalogue)
    {
        var current = catalogue.Current;
        return
        [
            .. current
                .Texts.Coverage()
                .Select(c => new CoverageMessage(
                    c.File,
                    c.Row,
                    c.Rules,
                    [.. c.GoneFrom(current.Book)],
                    c.WhyNot
                )),
        ];
    }

    private static async Task<VersionsMessage> VersionsAsync(
        Database database,
        CatalogueInForce catalogue
    )
    {
        await using var read = await database.ReadAsync();
        var current = catalogue.Current;
        return new(
            current.Number,
            CatalogueTexts.Names,
            CatalogueChanges.Between(catalogue.Own.Texts, current.Texts).Count,
            [
                .. (await CatalogueStore.ListAsync(read)).Select(v => new VersionMessage(
                    v.Id,
                    v.MadeAt,
                    v.MadeBy,
                    v.Why,
                    v.Own,
                    v.BackTo,
                    v.Id == current.Number
                )),
                new(0, null, null, "", true, null, current.Number == 0),
            ]
        );
    }

    private static IResult FileInForce(string file, CatalogueInForce catalogue) =>
        FileOf(catalogue.Current.Texts, file);

    private static async Task<IResult> FileOfVersionAsync(
        int version,
        string file,
        Database database,
        CatalogueInForce catalogue
    )
    {
        await using var read = await database.ReadAsync();
        return await TextsAsync(read, catalogue, version) is { Texts: var texts }
            ? FileOf(texts, file)
            : NoSuchVersion.ToProblem();
    }

    private static IResult FileOf(CatalogueTexts texts, string file) =>
        CatalogueTexts.Names.Contains(file)
            ? TypedResults.File(
                Encoding.UTF8.GetBytes(texts[file]),
                "text/csv; charset=utf-8",
                file
            )
            : NoSuchFile.ToProblem();
}
