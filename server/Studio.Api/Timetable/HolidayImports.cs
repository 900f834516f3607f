using System.Text;
using NodaTime;
using NodaTime.Text;
using Studio.Api.Data;
using Studio.Api.Imports;
using Studio.Api.Studios;
using Studio.Core.Pregnancies;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>A day that an import would add, or added.</summary>
/// <param name="Line">Its line in the file.</param>
/// <param name="LocationId">Where.</param>
/// <param name="LocationName">Its name.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Kind">Why.</param>
/// <param name="Name">Its name.</param>
/// <param name="ThereAlready">It stands there already and is left as it is.</param>
/// <param name="SessionsStanding">Sessions that stand on it; an import calls nothing off.</param>
public sealed record HolidayLine(
    int Line,
    long LocationId,
    string LocationName,
    LocalDate From,
    LocalDate To,
    ClosureKind Kind,
    string Name,
    bool ThereAlready,
    int SessionsStanding
);

/// <summary>What an import of holidays found.</summary>
/// <param name="Added">How many days it added, or would add.</param>
/// <param name="Days">Every entry that was read.</param>
/// <param name="Refused">Entries that cannot be taken; nothing is added while there is one.</param>
public sealed record HolidayReport(
    int Added,
    IReadOnlyList<HolidayLine> Days,
    IReadOnlyList<RefusedRow> Refused
);

/// <summary>Imports closures and public holidays from CSV or from an iCalendar file, all or nothing.</summary>
public static class HolidayImports
{
    private static readonly string[] Needed = ["from", "name"];
    private static readonly string[] Allowed = ["to", "location", "kind"];

    /// <summary>Reads the file and adds what is not there; the caller commits, or does not.</summary>
    public static async Task<HolidayReport> RunAsync(
        Write write,
        byte[] bytes,
        long? locationId,
        bool dryRun,
        Instant now
    )
    {
        var refused = new List<RefusedRow>();
        string text;
        try
        {
            text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return new HolidayReport(
                0,
                [],
                [new(1, "", "The file is not UTF-8 text. Save it with UTF-8 encoding.")]
            );
        }

        var locations = await StudioStore.LocationsAsync(write);
        var found = text.TrimStart('\uFEFF', ' ', '\r', '\n')
            .StartsWith("BEGIN:", StringComparison.OrdinalIgnoreCase)
            ? OfCalendar(text.TrimStart('\uFEFF'), locations, locationId, now, refused)
            : OfTable(text, locations, locationId, refused);
        var days = new List<HolidayLine>();
        foreach (var day in found)
        {
            var id = await ClosureStore.AddAsync(
                write,
                day.LocationId,
                day.From,
                day.To,
                day.Kind,
                day.Name
            );
            days.Add(
                day with
                {
                    ThereAlready = id is null,
                    SessionsStanding = (
                        await ClosureStore.SessionsOnAsync(
                            write,
                            day.LocationId,
                            day.From,
                            day.To,
                            now
                        )
                    ).Count,
                }
            );
        }

        var added = days.Count(d => !d.ThereAlready);
        return new HolidayReport(
            refused.Count > 0 && !dryRun ? 0 : added,
            days,
            [.. refused.OrderBy(r => r.Line)]
        );
    }

    private static List<HolidayLine> OfCalendar(
        string text,
        List<Location> locations,
        long? locationId,
        Instant now,
        List<RefusedRow> refused
    )
    {
        if (locations.Find(l => l.Id == locationId) is not { } location)
        {
            refused.Add(
                new(1, "location", "A calendar file names no location: choose one for it.")
            );
            return [];
        }

        var wrong = new List<HolidayRefused>();
        var today = now.InZone(DateTimeZoneProviders.Tzdb[location.Zone]).Date;
        // From this year on, two years and the rest of this one ahead.
        var from = new LocalDate(today.Year, 1, 1);
        var read = HolidayFile.Read(text, from, from.PlusYears(3).PlusDays(-1), wrong);
        refused.AddRange(wrong.Select(w => new RefusedRow(w.Line, "", w.Reason)));
        if (read.Count == 0 && wrong.Count == 0)
            refused.Add(
                new(
                    1,
                    "",
                    $"No day of this calendar lies between {Wording.Date(from)} and three years on."
                )
            );
        return
        [
            .. read.Select(h => new HolidayLine(
                h.Line,
                location.Id,
                location.Name,
                h.From,
                h.To,
                ClosureKind.PublicHoliday,
                h.Name.Length > 120 ? h.Name[..120] : h.Name,
                false,
                0
            )),
        ];
    }

    private static List<HolidayLine> OfTable(
        string text,
        List<Location> locations,
        long? locationId,
        List<RefusedRow> refused
    )
    {
        var days = new List<HolidayLine>();
        foreach (var row in CsvText.Read(text, Needed, Allowed, refused))
        {
            var count = refused.Count;
            var from = DayOf(row, "from", refused);
            var to = row["to"].Length == 0 ? from : DayOf(row, "to", refused);
            var location =
                row["location"].Length == 0
                    ? locations.Find(l => l.Id == locationId)
                    : locations.Find(l =>
                        string.Equals(l.Code, row["location"], StringComparison.OrdinalIgnoreCase)
                    );
            if (location is null)
                refused.Add(
                    new(
                        row.Line,
                        "location",
                        row["location"].Length == 0
                            ? "No location: choose one for the file, or name one here by its code."
                            : $"There is no location \"{row["location"]}\"; the codes are {string.Join(", ", locations.Select(l => l.Code))}."
                    )
                );
            ClosureKind? kind = row["kind"].ToLowerInvariant() switch
            {
                "" or "holiday" => ClosureKind.PublicHoliday,
                "closure" => ClosureKind.Closure,
                _ => null,
            };
            if (kind is null)
                refused.Add(
                    new(row.Line, "kind", $"\"{row["kind"]}\" is neither holiday nor closure.")
                );
            if (row["name"].Length is 0 or > 120)
                refused.Add(new(row.Line, "name", "A name of 1 to 120 letters goes here."));
            if (
                from is { } first
                && to is { } last
                && (last < first || Period.DaysBetween(first, last) > 365)
            )
                refused.Add(
                    new(
                        row.Line,
                        "to",
                        "The last day must not lie before the first, nor more than a year after it."
                    )
                );
            if (refused.Count == count)
                days.Add(
                    new HolidayLine(
                        row.Line,
                        location!.Id,
                        location.Name,
                        from!.Value,
                        to!.Value,
                        kind!.Value,
                        row["name"],
                        false,
                        0
                    )
                );
        }

        if (days.Count == 0 && refused.Count == 0)
            refused.Add(new(1, "", "The file has a header and no rows."));
        return days;
    }

    private static LocalDate? DayOf(CsvRow row, string column, List<RefusedRow> refused)
    {
        if (
            LocalDatePattern.Iso.Parse(row[column]) is { Success: true } day
            && Http.Readable.IsPlausible(day.Value)
        )
            return day.Value;
        refused.Add(new(row.Line, column, $"\"{row[column]}\" is not a date such as 2027-03-04."));
        return null;
    }
}
