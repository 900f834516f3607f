using Studio.Core.Catalogue;

namespace Studio.Core.Intensity;

/// <summary>Reads <c>heart_rates.csv</c>: published bands of intensity, one to a row.</summary>
internal static class HeartRateFile
{
    /// <summary>The age the published table leaves out; a policy says which band it counts to.</summary>
    public const int OpenAge = 29;

    private const string File = "heart_rates.csv";

    private static readonly string[] Columns =
    [
        "population",
        "age_from",
        "age_to",
        "level",
        "low",
        "high",
        "unit",
        "source",
        "words",
    ];

    private static readonly Dictionary<string, IntensityPopulation> Populations = new(
        StringComparer.Ordinal
    )
    {
        ["canada"] = IntensityPopulation.Canada,
        ["acog"] = IntensityPopulation.Acog,
        ["adults"] = IntensityPopulation.Adults,
    };

    private static readonly Dictionary<string, IntensityLevel> Levels = new(StringComparer.Ordinal)
    {
        ["light"] = IntensityLevel.Light,
        ["moderate"] = IntensityLevel.Moderate,
        ["vigorous"] = IntensityLevel.Vigorous,
    };

    private static readonly Dictionary<string, IntensityUnit> Units = new(StringComparer.Ordinal)
    {
        ["beats/min"] = IntensityUnit.Beats,
        ["percent"] = IntensityUnit.Percent,
        ["borg"] = IntensityUnit.Borg,
        ["cr10"] = IntensityUnit.Cr10,
        ["talk"] = IntensityUnit.Talk,
    };

    public static IReadOnlyList<IntensityBand> Read(
        Func<string, TextReader> open,
        IReadOnlyDictionary<string, Source> sources,
        CatalogueErrors errors
    )
    {
        var before = errors.Count;
        List<(CatalogueRow Row, IntensityBand Band)> bands = [];
        foreach (var row in CatalogueTable.Read(open, File, Columns, errors))
            if (Of(row, sources) is { } band)
                bands.Add((row, band));
        foreach (
            var same in bands.GroupBy(b => (b.Band.Population, b.Band.Level, b.Band.Unit)).ToList()
        )
            CheckAges([.. same.OrderBy(b => b.Band.AgeFrom ?? 0)]);
        // What the rules look up must be there; a file that could not be read has said so already.
        if (errors.Count == before)
            foreach (var (population, unit) in Needed)
                if (
                    !bands.Exists(b =>
                        b.Band.Population == population
                        && b.Band.Unit == unit
                        && b.Band.Level == IntensityLevel.Moderate
                    )
                )
                    errors.Add(
                        File,
                        1,
                        $"a row for {Name(Populations, population)}, moderate, {Name(Units, unit)} is missing."
                    );
        return [.. bands.Select(b => b.Band)];
    }

    private static readonly (IntensityPopulation, IntensityUnit)[] Needed =
    [
        (IntensityPopulation.Canada, IntensityUnit.Beats),
        (IntensityPopulation.Acog, IntensityUnit.Beats),
        (IntensityPopulation.Adults, IntensityUnit.Talk),
    ];

    private static IntensityBand? Of(CatalogueRow row, IReadOnlyDictionary<string, Source> sources)
    {
        var population = row.OneOf("population", Populations);
        var level = row.OneOf("level", Levels);
        var unit = row.OneOf("unit", Units);
        var source = row.SourceOf("source", sources);
        var (from, to) = (row.Number("age_from"), row.Number("age_to"));
        var (low, high) = (row.Number("low"), row.Number("high"));
        if (from > to)
            row.Error($"age_from {from} is more than age_to {to}.");
        if (low >= high)
            row.Error($"low {low} is not less than high {high}.");
        if (unit == IntensityUnit.Talk)
        {
            row.Required("words");
            if (low is not null || high is not null)
                row.Error("a talk test is words: it has no low and no high.");
        }
        else if (unit is not null && row.IsBlank("high"))
            row.Error("the high is missing.");
        return population is null || level is null || unit is null || source is null
            ? null
            : new IntensityBand
            {
                Population = population.Value,
                AgeFrom = from,
                AgeTo = to,
                Level = level.Value,
                Low = low,
                High = high,
                Unit = unit.Value,
                Source = source,
                Words = row.IsBlank("words") ? null : row["words"],
            };
    }

    // Every age stands in one row; only the age the policy decides may stand in none.
    private static void CheckAges(IReadOnlyList<(CatalogueRow Row, IntensityBand Band)> bands)
    {
        if (bands[0].Band.AgeFrom is { } youngest)
            bands[0].Row.Error($"no row before it holds for an age under {youngest}.");
        if (bands[^1].Band.AgeTo is { } oldest)
            bands[^1].Row.Error($"no row after it holds for an age over {oldest}.");
        foreach (var ((first, one), (second, other)) in bands.Zip(bands.Skip(1)))
        {
            var next = other.AgeFrom ?? 0;
            if (one.AgeTo is not { } last || last >= next)
                second.Error($"its ages overlap with those of line {first.Line}.");
            else
                for (var age = last + 1; age < next; age++)
                    if (age != OpenAge)
                        second.Error($"no row holds for an age of {age}.");
        }
    }

    private static string Name<T>(Dictionary<string, T> words, T value) =>
        words.First(w => EqualityComparer<T>.Default.Equals(w.Value, value)).Key;
}
