using System.Globalization;
using CsvHelper;
using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>A published fact, one row of tests/reference.</summary>
public sealed record ReferenceRow(IReadOnlyDictionary<string, string> Fields)
{
    public string this[string column] => Fields[column];

    public string Id => this["id"];

    public string Source =>
        $"{this["source_org"]}, {this["source_title"]} {this["source_year"]}, {this["source_locator"]}; {this["how_verified"]}";

    /// <summary>A cell written as <c>key=value;key=value</c>.</summary>
    public IReadOnlyDictionary<string, string> Pairs(string column) =>
        this[column]
            .Split(';')
            .Select(pair => pair.Split('=', 2))
            .ToDictionary(pair => pair[0], pair => pair[1]);

    public int? Day(string column) =>
        this[column].Length == 0 ? null : int.Parse(this[column], CultureInfo.InvariantCulture);
}

/// <summary>The published facts, and every one of them as a case that shows its id and source.</summary>
public static class Reference
{
    public static IReadOnlyList<ReferenceRow> Dating { get; } = Read("dating.csv");

    public static IReadOnlyList<ReferenceRow> Stages { get; } = Read("stages.csv");

    public static IEnumerable<TheoryDataRow<string>> Cases(
        IEnumerable<ReferenceRow> rows,
        Func<ReferenceRow, string> says
    ) =>
        rows.Select(row => new TheoryDataRow<string>(row.Id)
        {
            TestDisplayName = $"{row.Id}: {says(row)} ({row.Source})",
        });

    public static ReferenceRow Row(this IReadOnlyList<ReferenceRow> rows, string id) =>
        rows.Single(row => row.Id == id);

    internal static List<ReferenceRow> Read(string file) => ReadFrom("reference", file);

    internal static List<ReferenceRow> ReadFrom(string folder, string file)
    {
        using var reader = CsvReader.Create(
            File.OpenText(Path.Combine(AppContext.BaseDirectory, folder, file)),
            new CsvReaderOptions
            {
                Separator = ',',
                FieldCountMismatch = CsvFieldCountHandling.Throw,
                MalformedData = CsvMalformedDataHandling.Throw,
            }
        );
        List<ReferenceRow> rows = [];
        while (reader.Read())
            rows.Add(
                new(
                    reader
                        .Current.ToDictionary()
                        .ToDictionary(field => field.Key, field => field.Value ?? "")
                )
            );
        return rows;
    }
}

/// <summary>Short ways to say a date, an age and the evidence for a pregnancy.</summary>
internal static class Given
{
    public static LocalDate Day(string iso) => NodaTime.Text.LocalDatePattern.Iso.Parse(iso).Value;

    public static GestationalAge Age(string text) =>
        GestationalAge.TryParse(text, out var age) ? age : throw new FormatException(text);

    public static DatingEvidence Period(string firstDay, int? cycleDays = null) =>
        new() { LastPeriod = new(Day(firstDay), cycleDays) };

    public static DatingEvidence Transfer(string on, int embryoDays) =>
        new() { Transfer = new(Day(on), embryoDays) };

    public static DatingEvidence Stated(string due) => new() { Stated = Day(due) };

    public static DatingEvidence Scanned(string on, string measured) =>
        new DatingEvidence().AndScan(on, measured);

    public static DatingEvidence AndScan(
        this DatingEvidence evidence,
        string on,
        string measured
    ) => evidence with { Scans = [.. evidence.Scans, new(Day(on), Age(measured))] };

    public static DatingEvidence AndStated(this DatingEvidence evidence, string due) =>
        evidence with
        {
            Stated = Day(due),
        };

    public static DueDate Reckoned(this DatingEvidence evidence) =>
        Dating.Reckon(evidence).Expected();

    public static Refusal Refused(this DatingEvidence evidence) =>
        Dating.Reckon(evidence).TryGet(out var due, out var refusal)
            ? throw new InvalidOperationException($"Not refused, but reckoned as {due}")
            : refusal;

    public static T Expected<T>(this Answer<T> answer) =>
        answer.TryGet(out var value, out var refusal)
            ? value
            : throw new InvalidOperationException(refusal.ToString());

    /// <summary>The scheme the program ships with.</summary>
    public static StageScheme Stages { get; } = ReadStages();

    private static StageScheme ReadStages()
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "Studio.sln")))
            root =
                root.Parent
                ?? throw new DirectoryNotFoundException("The solution is not above the tests.");
        using var csv = File.OpenText(Path.Combine(root.FullName, "db", "catalogue", "stages.csv"));
        return StageScheme.Parse(csv, "stages.csv");
    }
}
