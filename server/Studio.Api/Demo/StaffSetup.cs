using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Imports;
using Studio.Api.Staff;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Catalogue;
using Studio.Core.Staff;
using Studio.Core.Timetable;

namespace Studio.Api.Demo;

/// <summary>
/// Reads what is known of the people who teach beyond what they hold: when they work, what they like, how much, what they
/// are paid, and how long the ways are. Each file is optional. A row that is wrong stops the setup and is named by file
/// and line.
/// </summary>
public static class StaffSetup
{
    private const string Availability = "availability.csv";
    private const string Leave = "leave.csv";
    private const string Wishes = "wishes.csv";
    private const string Bounds = "bounds.csv";
    private const string Travel = "travel.csv";
    private const string PayRates = "pay_rates.csv";
    private const string Her = "instructor_email";

    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    /// <summary>The files by their names, each with the columns it has when it is there.</summary>
    public static IReadOnlyDictionary<string, string[]> Files { get; } =
        new Dictionary<string, string[]>(StringComparer.Ordinal)
        {
            [Availability] = [Her, "weekday", "from", "to", "location"],
            [Leave] = [Her, "from", "to"],
            [Wishes] = [Her, "kind", "value", "weight"],
            [Bounds] = [Her, "weekly_minutes_most", "rest_minutes_least"],
            [Travel] = ["from", "to", "minutes"],
            [PayRates] = [Her, "class", "per", "heads", "amount", "currency", "from"],
        };

    /// <summary>Writes working time, wishes, bounds and rates; instructors, locations and classes must be there.</summary>
    /// <param name="write">The transaction.</param>
    /// <param name="file">A file's text by its name.</param>
    /// <param name="today">The day that <c>today</c> in a file stands for, at the first location.</param>
    /// <param name="now">The moment at which leave and rates are entered.</param>
    /// <exception cref="SettingException">A file is wrong.</exception>
    public static async Task RunAsync(
        Write write,
        Func<string, string> file,
        LocalDate today,
        Instant now
    )
    {
        var known = await Known.ReadAsync(write);
        await AvailabilityAsync(write, RowsOf(file, Availability, today), known);
        await LeaveAsync(write, RowsOf(file, Leave, today), known, now);
        await WishesAsync(write, RowsOf(file, Wishes, today), known);
        await BoundsAsync(write, RowsOf(file, Bounds, today), known);
        await RatesAsync(write, RowsOf(file, PayRates, today), known, now);
    }

    /// <summary>
    /// Writes the ways between locations, once the timetable is there: a timetable that leaves somebody no time for a way is
    /// refused here with her name and both classes.
    /// </summary>
    /// <param name="write">The transaction.</param>
    /// <param name="file">A file's text by its name.</param>
    /// <param name="book">The rules.</param>
    /// <param name="today">Today at the first location.</param>
    /// <exception cref="SettingException">The file is wrong, or does not go with the timetable.</exception>
    public static async Task TravelAsync(
        Write write,
        Func<string, string> file,
        RuleBook book,
        LocalDate today
    )
    {
        var known = await Known.ReadAsync(write);
        var seen = new HashSet<(long, long)>();
        foreach (var row in RowsOf(file, Travel, today))
        {
            var from = Of(known.Locations, row, "from", "location");
            var to = Of(known.Locations, row, "to", "location");
            if (from == to)
                throw row.Fault("to", "A way leads to another location.");
            if (!seen.Add((from, to)))
                throw row.Fault("to", "This way stands in the file twice.");
            await TravelStore.SetAsync(
                write,
                new TravelTime
                {
                    FromLocationId = from,
                    ToLocationId = to,
                    Minutes = Number(row, "minutes", 1, 600),
                }
            );
        }

        if (seen.Count == 0)
            return;
        var tooClose = TimetableChecks
            .Of(
                await TimetableStore.PlacedAsync(
                    write,
                    LocalDate.MinIsoValue,
                    LocalDate.MaxIsoValue
                ),
                await TimetableStore.FactsAsync(write, book)
            )
            .FirstOrDefault(c => c.Kind == ConflictKind.NoTimeToTravel);
        if (tooClose is not null)
            throw new SettingException($"{Travel}: {tooClose.Words}");
    }

    private static async Task AvailabilityAsync(Write write, IEnumerable<Row> rows, Known known)
    {
        foreach (var hers in rows.GroupBy(r => Of(known.Instructors, r, Her, "instructor")))
        {
            var all = hers.ToList();
            var hours = all.Select(row => new WeeklyHours(
                    (IsoDayOfWeek)Number(row, "weekday", 1, 7),
                    Time(row, "from"),
                    Time(row, "to"),
                    row["location"].Length == 0
                        ? null
                        : Of(known.Locations, row, "location", "location")
                ))
                .ToList();
            // Asked row by row, so that the one at fault is named.
            for (var i = 0; i < hours.Count; i++)
                if (AvailabilityRules.WhyNot(hours[..(i + 1)]) is { } refusal)
                    throw all[i].Fault("from", refusal.Message);
            await StaffStore.SetAvailabilityAsync(
                write,
                hers.Key,
                hours.Select(h => new AvailableHours
                {
                    Weekday = (int)h.Weekday,
                    From = Clock.Format(h.From),
                    To = Clock.Format(h.To),
                    LocationId = h.LocationId,
                })
            );
        }
    }

    private static async Task LeaveAsync(
        Write write,
        IEnumerable<Row> rows,
        Known known,
        Instant now
    )
    {
        foreach (var row in rows)
        {
            var her = Of(known.Instructors, row, Her, "instructor");
            var (from, to) = (Day(row, "from"), Day(row, "to"));
            if (to < from)
                throw row.Fault("to", StaffRefusals.LeaveEndsBefore.Message);
            if (
                (await StaffStore.LeaveAsync(write, from, her)).Find(l => l.From <= to) is { } other
            )
                throw row.Fault("from", StaffRefusals.AwayAlready(other.From, other.To).Message);
            await StaffStore.AddLeaveAsync(write, her, from, to, now, by: null);
        }
    }

    private static async Task WishesAsync(Write write, IEnumerable<Row> rows, Known known)
    {
        foreach (var hers in rows.GroupBy(r => Of(known.Instructors, r, Her, "instructor")))
        {
            var all = hers.ToList();
            var wishes = all.Select(row => new TeachingWish(
                    Word<WishKind>(row, "kind"),
                    row["value"],
                    Number(row, "weight", -2, 2)
                ))
                .ToList();
            for (var i = 0; i < wishes.Count; i++)
                if (
                    WishRules.WhyNot(
                        wishes[..(i + 1)],
                        [.. known.Classes.Keys],
                        [.. known.Locations.Keys]
                    ) is
                    { } refusal
                )
                    throw all[i].Fault("value", refusal.Message);
            await StaffStore.SetWishesAsync(
                write,
                hers.Key,
                wishes.Select(w => new TeachingWishMessage
                {
                    Kind = w.Kind,
                    Value = w.Value,
                    Weight = w.Weight,
                })
            );
        }
    }

    private static async Task BoundsAsync(Write write, IEnumerable<Row> rows, Known known)
    {
        var seen = new HashSet<long>();
        foreach (var row in rows)
        {
            var her = Of(known.Instructors, row, Her, "instructor");
            if (!seen.Add(her))
                throw row.Fault(Her, "She stands in the file twice.");
            var stands = (await StaffStore.FindAsync(write, her))!;
            await StaffStore.ChangeAsync(
                write,
                stands with
                {
                    WeeklyMinutesMost = OptionalNumber(row, "weekly_minutes_most", 10_080),
                    RestMinutesLeast = OptionalNumber(row, "rest_minutes_least", 1_440),
                }
            );
        }
    }

    private static async Task RatesAsync(
        Write write,
        IEnumerable<Row> rows,
        Known known,
        Instant now
    )
    {
        foreach (var row in rows)
        {
            var per = Word<PayPer>(row, "per");
            if (row["heads"].Length > 0 && per != PayPer.Head)
                throw row.Fault("heads", "Only a rate per head counts people.");
            if (!Currency.Exists(row["currency"]))
                throw row.Fault("currency", "There is no such currency. Write it as in EUR.");
            await PayStore.AddAsync(
                write,
                new PayRate
                {
                    Id = 0,
                    InstructorId =
                        row[Her].Length == 0 ? null : Of(known.Instructors, row, Her, "instructor"),
                    ClassId =
                        row["class"].Length == 0 ? null : Of(known.Classes, row, "class", "class"),
                    Per = per,
                    Heads =
                        per != PayPer.Head ? null
                        : row["heads"].Length == 0 ? HeadCount.CheckedIn
                        : Word<HeadCount>(row, "heads"),
                    Amount =
                        Currency.Read(row["amount"], row["currency"])
                        ?? throw row.Fault(
                            "amount",
                            $"'{row["amount"]}' is no amount. Write it as in {Currency.Text(3800, row["currency"])}."
                        ),
                    Currency = row["currency"],
                    From = Day(row, "from"),
                },
                now,
                by: null
            );
        }
    }

    private static List<Row> RowsOf(Func<string, string> file, string name, LocalDate today) =>
        [
            .. StudioSetup
                .Rows(n => StudioSetup.WithDates(file(n), today), name, Files[name])
                .Select(r => new Row(name, r)),
        ];

    private static long Of(
        IReadOnlyDictionary<string, long> known,
        Row row,
        string column,
        string what
    ) =>
        known.TryGetValue(row[column], out var id)
            ? id
            : throw row.Fault(column, $"There is no {what} '{row[column]}'.");

    private static int Number(Row row, string column, int least, int most) =>
        int.TryParse(
            row[column],
            NumberStyles.AllowLeadingSign,
            CultureInfo.InvariantCulture,
            out var number
        )
        && least <= number
        && number <= most
            ? number
            : throw row.Fault(
                column,
                $"'{row[column]}' is not a whole number from {least} to {most}."
            );

    private static int? OptionalNumber(Row row, string column, int most) =>
        row[column].Length == 0 ? null : Number(row, column, 0, most);

    private static LocalTime Time(Row row, string column) =>
        Clock.Parse(row[column]) is { Success: true } time
            ? time.Value
            : throw row.Fault(column, $"'{row[column]}' is no time. Write it as in 09:30.");

    private static LocalDate Day(Row row, string column) =>
        LocalDatePattern.Iso.Parse(row[column]) is { Success: true } day
            ? day.Value
            : throw row.Fault(
                column,
                $"'{row[column]}' is no day. Write it as in 2027-03-05, or from the day of the setup as in today+12."
            );

    private static T Word<T>(Row row, string column)
        where T : struct, Enum
    {
        var words = Enum.GetValues<T>().ToDictionary(StaffStore.Wire, StringComparer.Ordinal);
        return words.TryGetValue(row[column], out var value)
            ? value
            : throw row.Fault(
                column,
                $"'{row[column]}' is none of {string.Join(", ", words.Keys)}."
            );
    }

    private sealed record Row(string File, CsvRow Cells)
    {
        public string this[string column] => Cells[column];

        public SettingException Fault(string column, string message) =>
            new($"{File} line {Cells.Line}: {column}: {message}");
    }

    private sealed record Known(
        IReadOnlyDictionary<string, long> Instructors,
        IReadOnlyDictionary<string, long> Locations,
        IReadOnlyDictionary<string, long> Classes
    )
    {
        public static async Task<Known> ReadAsync(Read read) =>
            new(
                (await StaffStore.ListAsync(read)).ToDictionary(
                    i => i.Email,
                    i => i.Id,
                    StringComparer.OrdinalIgnoreCase
                ),
                (await StudioStore.LocationsAsync(read)).ToDictionary(
                    l => l.Code,
                    l => l.Id,
                    StringComparer.Ordinal
                ),
                (await StudioStore.ClassesAsync(read)).ToDictionary(
                    c => c.Code,
                    c => c.Id,
                    StringComparer.Ordinal
                )
            );
    }
}
