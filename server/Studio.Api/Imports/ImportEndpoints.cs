using System.Text;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Demo;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Accounts;

namespace Studio.Api.Imports;

/// <summary>Imports. The file carries conditions, so only the owner sends one.</summary>
public static class ImportEndpoints
{
    private const int MostBytes = 5 * 1024 * 1024;

    private static readonly Refusal TooLarge = new(
        RefusalKind.Invalid,
        "too-large",
        "The file is larger than 5 MB. Please split it.",
        "file"
    );

    private static readonly Refusal NoFile = new(
        RefusalKind.Invalid,
        "no-file",
        "Please send exactly one file.",
        "file"
    );

    private static readonly Refusal NotText = new(
        RefusalKind.Invalid,
        "not-text",
        "The file is not UTF-8 text. Save it as CSV with UTF-8 encoding.",
        "file"
    );

    /// <summary>Maps the routes.</summary>
    public static void MapImports(this IEndpointRouteBuilder app)
    {
        var imports = app.MapGroup("/api/imports/clients")
            .WithTags("Imports")
            .RequireAuthorization(Policies.Owner);
        imports
            .MapGet("/example", ExampleAsync)
            .WithName("ClientImportExample")
            .Produces<string>(StatusCodes.Status200OK, "text/csv");
        imports
            .MapPost("/", ClientsAsync)
            .WithName("ImportClients")
            .Accepts<string>("text/csv", "multipart/form-data")
            .Produces<ImportReport>()
            .Produces<ImportReport>(StatusCodes.Status422UnprocessableEntity)
            .ProducesProblem(400)
            .ProducesProblem(413)
            .DisableAntiforgery();
    }

    // Written for this studio and this day, so that it can be imported as it is.
    private static async Task<IResult> ExampleAsync(Database database, StudioStore studio)
    {
        await using var read = await database.ReadAsync();
        var home = (await StudioStore.LocationsAsync(read)).FirstOrDefault();
        var today = studio.Today(home?.Zone ?? "UTC");
        var text = StudioSetup
            .WithDates(DemoStudio.Text("clients-example.csv"), today)
            .Replace("HOME", home?.Code ?? "home");
        return TypedResults.File(
            Encoding.UTF8.GetBytes(text),
            "text/csv; charset=utf-8",
            "clients-example.csv"
        );
    }

    private static async Task<IResult> ClientsAsync(
        bool? dryRun,
        HttpRequest request,
        Reader reader,
        Database database,
        ClientImports imports
    )
    {
        if (!(await TextAsync(request)).TryGet(out var text, out var refusal))
            return refusal.ToProblem(
                refusal.Code == "too-large" ? StatusCodes.Status413PayloadTooLarge : null
            );

        await using var write = await database.BeginWriteAsync();
        var report = await imports.RunAsync(write, text, dryRun == true, reader.AccountId);
        if (dryRun != true && report.Refused.Count == 0)
            await write.CommitAsync();
        return dryRun == true || report.Refused.Count == 0
            ? TypedResults.Ok(report)
            : TypedResults.UnprocessableEntity(report);
    }

    private static async Task<Answer<string>> TextAsync(HttpRequest request)
    {
        var stream = request.Body;
        if (request.HasFormContentType)
        {
            try
            {
                if ((await request.ReadFormAsync()).Files is not [var file])
                    return NoFile;
                stream = file.OpenReadStream();
            }
            // A form without a boundary, or one that ends before its parts do.
            catch (Exception broken) when (broken is InvalidDataException or IOException)
            {
                return NoFile;
            }
        }

        using var bytes = new MemoryStream();
        var buffer = new byte[81920];
        int count;
        while ((count = await stream.ReadAsync(buffer)) > 0)
        {
            if (bytes.Length + count > MostBytes)
                return TooLarge;
            bytes.Write(buffer, 0, count);
        }

        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes.ToArray());
        }
        catch (DecoderFallbackException)
        {
            return NotText;
        }
    }
}
