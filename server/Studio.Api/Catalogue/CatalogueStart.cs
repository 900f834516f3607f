using System.Globalization;
using NodaTime;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Core.Catalogue;

namespace Studio.Api.Catalogue;

/// <summary>
/// Puts the catalogue in force that was in force last, checked as if it were new. The setting <c>Studio:Catalogue</c>,
/// <c>own</c> or the number of a version, goes back to another one at this start.
/// </summary>
public sealed class CatalogueStart(
    Database database,
    CatalogueInForce catalogue,
    IConfiguration configuration,
    IClock clock
)
{
    private const string Setting = "Studio__Catalogue";

    /// <summary>Runs before anything asks for a rule.</summary>
    /// <exception cref="CatalogueException">What is in force is damaged, or lacks a stage that is in use.</exception>
    /// <exception cref="SettingException">The setting names no version.</exception>
    public async Task RunAsync()
    {
        await using var write = await database.BeginWriteAsync();
        if (configuration["Studio:Catalogue"] is { Length: > 0 } asked)
            await GoBackAsync(write, asked);
        var version = await ReadAsync(write);
        var missing = new CatalogueUse
        {
            Stages = await CatalogueStore.StagesAsync(write),
        }.StagesMissingIn(version.Book);
        if (missing.Select(m => $"{m.File}: {m.Text}").ToList() is { Count: > 0 } errors)
            throw new CatalogueException(errors);
        write.GoBy(version);
        await EmbeddedCatalogue.CopyStagesAsync(write, version.Book);
        await write.CommitAsync();
    }

    private async Task<CatalogueVersion> ReadAsync(Write write)
    {
        if (await CatalogueStore.NewestAsync(write) is not { } newest)
            return catalogue.Own;
        if (newest.Own)
            return catalogue.Own with { Number = newest.Id };
        var texts = await CatalogueStore.TextsAsync(write, newest, catalogue.Own.Texts);
        try
        {
            return CatalogueVersion.Read(newest.Id, texts);
        }
        catch (CatalogueException damaged)
        {
            throw new CatalogueException([
                .. damaged.Errors,
                $"This is version {newest.Id}, put in force here on {newest.MadeAt.InUtc().Date:uuuu-MM-dd}. To go back to the program's own catalogue start once with {Setting}=own; to go back to an earlier version, with its number.",
            ]);
        }
    }

    private async Task GoBackAsync(Write write, string asked)
    {
        var newest = await CatalogueStore.NewestAsync(write);
        const string why = $"Gone back at a start, by {Setting}";
        var now = clock.GetCurrentInstant();
        if (asked == "own")
        {
            if (newest is { Own: false })
                await CatalogueStore.AddAsync(write, null, null, why, now, by: null);
            return;
        }

        if (
            !int.TryParse(asked, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            || await CatalogueStore.FindAsync(write, number) is not { } version
        )
            throw new SettingException(
                $"The setting {Setting} is '{asked}', which is no version of the catalogue. Set it to own or to the number of a version, or leave it out."
            );
        // Left set for a second start, it has nothing more to do.
        if (newest!.Id == number || newest.BackTo == number)
            return;
        var texts = await CatalogueStore.TextsAsync(write, version, catalogue.Own.Texts);
        await CatalogueStore.AddAsync(
            write,
            version.Own ? null : texts,
            number,
            why,
            now,
            by: null
        );
    }
}
