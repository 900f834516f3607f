using System.Globalization;
using CsvHelper;
using Studio.Core.Catalogue;

namespace Studio.Core.Pregnancies;

/// <summary>Reads <c>stages.csv</c>: one stage to a row, checked whole before anything is used.</summary>
internal sealed class StageFile
{
    private static readonly string[] Columns =
    [
        "code",
        "name",
        "counts_from",
        "from_day",
        "to_day",
        "source_org",
        "source_title",
        "source_year",
        "source_section",
        "verified",
        "note",
    ];

    private static readonly string[] Verifications =
    [
        "seen",
        "from memory",
        "common practice",
        "computed",
    ];

    private readonly string file;
    private readonly List<(int Line, string Text)> errors = [];
    private readonly List<(int Line, Stage Stage)> rows = [];

    private StageFile(string file) => this.file = file;

    /// <summary>The stages in order, pregnancy first.</summary>
    /// <exception cref="CatalogueException">Anything is wrong; it holds every error.</exception>
    public static IReadOnlyList<Stage> Read(TextReader csv, string file)
    {
        var reading = new StageFile(file);
        reading.ReadRows(csv);
        reading.CheckCodes();
        foreach (var count in Enum.GetValues<StageCount>())
            reading.CheckCount(count);
        if (reading.errors.Count > 0)
            throw new CatalogueException([
                .. reading
                    .errors.OrderBy(error => error.Line)
                    .Select(error => $"{file} line {error.Line}: {error.Text}"),
            ]);
        return
        [
            .. reading
                .rows.Select(row => row.Stage)
                .OrderBy(stage => stage.CountsFrom)
                .ThenBy(stage => stage.FromDay),
        ];
    }

    private void ReadRows(TextReader csv)
    {
        if (csv.Peek() < 0)
        {
            Add(1, "the file is empty.");
            return;
        }
        using var reader = CsvReader.Create(
            csv,
            new CsvReaderOptions
            {
                Separator = ',',
                TrimWhitespace = true,
                AllowLineBreaksInQuotes = false,
                TrackLineNumbers = true,
                FieldCountMismatch = CsvFieldCountHandling.Skip,
                MalformedData = CsvMalformedDataHandling.Skip,
                OnMalformedRecord = bad =>
                    Add(
                        (int)bad.LineNumber,
                        bad.Reason == CsvMalformedReason.FieldCountMismatch
                            ? "the number of fields is not that of the header."
                            : "a quotation mark is in the wrong place."
                    ),
            },
            leaveOpen: true
        );
        reader.ReadHeader();
        string[] header = [.. reader.Headers];
        foreach (var column in Columns.Except(header))
            Add(1, $"the column '{column}' is missing.");
        foreach (var column in header.Except(Columns))
            Add(1, $"there is no column '{column}'.");
        foreach (var column in header.GroupBy(name => name).Where(same => same.Count() > 1))
            Add(1, $"the column '{column.Key}' is there {column.Count()} times.");
        if (errors.Count > 0)
            return;

        while (reader.Read())
            ReadRow(
                (int)reader.LineNumber,
                Columns.ToDictionary(column => column, reader.GetString)
            );
    }

    private void ReadRow(int line, Dictionary<string, string> row)
    {
        var before = errors.Count;
        foreach (var column in (string[])["code", "name"])
            if (row[column].Length == 0)
                Add(line, $"the {column} is missing.");

        StageCount? count = row["counts_from"] switch
        {
            "pregnancy" => StageCount.Pregnancy,
            "birth" => StageCount.Birth,
            _ => null,
        };
        if (count is null)
            Add(line, $"counts_from is '{row["counts_from"]}': it must be pregnancy or birth.");

        var from = Day(line, "from_day", row["from_day"]);
        var to = row["to_day"].Length == 0 ? null : Day(line, "to_day", row["to_day"]);
        if (to < from)
            Add(line, $"to_day {to} is before from_day {from}.");
        if (count is { } counted && from > StageScheme.LatestStart(counted))
            Add(
                line,
                $"from_day {from} is later than a stage can begin, day {StageScheme.LatestStart(counted)}."
            );
        var source = Source(line, row);

        if (errors.Count == before)
            rows.Add((line, new(row["code"], row["name"], count!.Value, from!.Value, to, source)));
    }

    private int? Day(int line, string column, string text)
    {
        if (
            !int.TryParse(
                text,
                NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture,
                out var day
            )
        )
            Add(line, $"{column} is '{text}': it must be a whole number of days.");
        else if (day < 0)
            Add(line, $"{column} is {day}: it must not be negative.");
        else
            return day;
        return null;
    }

    private string Source(int line, Dictionary<string, string> row)
    {
        var (verified, year, section) = (
            row["verified"],
            row["source_year"],
            row["source_section"]
        );
        if (!Verifications.Contains(verified))
            Add(line, $"verified is '{verified}': it must be {string.Join(", ", Verifications)}.");
        if (verified == "common practice")
            return "Common practice, no published source";
        foreach (var column in (string[])["source_org", "source_title"])
            if (row[column].Length == 0)
                Add(line, $"the {column} is missing.");

        return $"{row["source_org"]}, {row["source_title"]}"
            + (year.Length > 0 ? $" ({year})" : "")
            + (section.Length > 0 ? $", {section}" : "")
            + (verified == "seen" ? "" : $"; {verified}");
    }

    private void CheckCodes()
    {
        foreach (var same in rows.GroupBy(row => row.Stage.Code))
        foreach (var (line, stage) in same.Skip(1))
            Add(line, $"the code '{stage.Code}' is already used on line {same.First().Line}.");
    }

    private void CheckCount(StageCount count)
    {
        var name = count == StageCount.Pregnancy ? "pregnancy" : "birth";
        var stages = rows.Where(row => row.Stage.CountsFrom == count)
            .OrderBy(row => row.Stage.FromDay)
            .ThenBy(row => row.Line)
            .ToList();
        if (stages.Count == 0)
        {
            Add(1, $"no usable stage counts from {name}.");
            return;
        }
        if (stages[0].Stage.FromDay != 0)
            Add(
                stages[0].Line,
                $"the first stage counted from {name} begins on day {stages[0].Stage.FromDay}: it must begin on day 0."
            );
        foreach (var (one, next) in stages.Zip(stages.Skip(1)))
            CheckNeighbours(one, next);
        if (stages[^1] is { Stage.ToDay: { } end } last)
            Add(
                last.Line,
                $"the last stage counted from {name} ends on day {end}: leave its to_day empty."
            );
    }

    private void CheckNeighbours((int Line, Stage Stage) one, (int Line, Stage Stage) next)
    {
        var (from, end) = (next.Stage.FromDay, one.Stage.ToDay);
        if (end is null)
            Add(
                one.Line,
                $"'{one.Stage.Code}' has no to_day, yet '{next.Stage.Code}' on line {next.Line} follows it."
            );
        else if (from > end + 1)
            Add(
                next.Line,
                $"a gap: '{one.Stage.Code}' ends on day {end} and '{next.Stage.Code}' begins on day {from}."
            );
        else if (from <= end)
            Add(
                next.Line,
                $"an overlap: '{one.Stage.Code}' ends on day {end} and '{next.Stage.Code}' begins on day {from}."
            );
    }

    private void Add(int line, string text) => errors.Add((line, text));
}
