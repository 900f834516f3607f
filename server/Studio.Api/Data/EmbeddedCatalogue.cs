using System.Reflection;
using Studio.Api.Catalogue;
using Studio.Core.Catalogue;

namespace Studio.Api.Data;

/// <summary>The catalogue that was built into the program.</summary>
public static class EmbeddedCatalogue
{
    /// <summary>Reads and checks it whole.</summary>
    /// <exception cref="CatalogueException">It is damaged; every error with file and line.</exception>
    public static CatalogueVersion Load() =>
        CatalogueVersion.Read(
            0,
            new(CatalogueTexts.Names.ToDictionary(n => n, Text, StringComparer.Ordinal))
        );

    /// <summary>Copies the stages into the database, where the nightly advance joins them.</summary>
    /// <param name="write">The transaction.</param>
    /// <param name="book">The rules that are to hold; every stage in use is among theirs.</param>
    public static async Task CopyStagesAsync(Write write, RuleBook book)
    {
        var position = 0;
        // Out of the way first: positions are unique, and stages may have changed places.
        await write.ExecuteAsync("update stages set position = -1 - position");
        foreach (var stage in book.Stages.Stages)
            await write.ExecuteAsync(
                """
                insert into stages (code, name, position, counts_from, from_day, to_day)
                values (@Code, @Name, @position, @counts, @FromDay, @ToDay)
                on conflict (code) do update
                   set name = excluded.name, position = excluded.position, counts_from = excluded.counts_from,
                       from_day = excluded.from_day, to_day = excluded.to_day
                """,
                new
                {
                    stage.Code,
                    stage.Name,
                    position = position++,
                    counts = stage.CountsFrom.ToString().ToLowerInvariant(),
                    stage.FromDay,
                    stage.ToDay,
                }
            );
        // What the book no longer has would still be joined.
        await write.ExecuteAsync("delete from stages where position < 0");
    }

    private static string Text(string name)
    {
        using var reader = new StreamReader(
            Assembly.GetExecutingAssembly().GetManifestResourceStream($"catalogue.{name}")
                ?? throw new FileNotFoundException($"The catalogue has no file {name}.")
        );
        return reader.ReadToEnd();
    }
}
