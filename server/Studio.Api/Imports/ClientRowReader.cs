using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Studio.Api.Clients;
using Studio.Api.Http;
using Studio.Api.Pregnancies;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Api.Imports;

/// <summary>A letter's dates in an import.</summary>
public sealed record ImportedLetter(string IssuedBy, LocalDate IssuedOn, LocalDate ExpiresOn);

/// <summary>A factor in an import.</summary>
public sealed record ImportedFactor(string Code, LocalDate From, LocalDate? To);

/// <summary>One client of an import, read and understood as far as a row alone can be.</summary>
public sealed record ImportedClient
{
    /// <summary>Line in the file.</summary>
    public required int Line { get; init; }

    /// <summary>Code of her home location.</summary>
    public required string HomeLocation { get; init; }

    /// <summary>Contact details and dates; the location's id is filled in later.</summary>
    public required NewClient Client { get; init; }

    /// <summary>Her pregnancy ended on that day.</summary>
    public LocalDate? LossOn { get; init; }

    /// <summary>Factors and conditions.</summary>
    public required IReadOnlyList<ImportedFactor> Factors { get; init; }

    /// <summary>Screening.</summary>
    public Screening? Screening { get; init; }

    /// <summary>Clearance letter.</summary>
    public ImportedLetter? Letter { get; init; }

    /// <summary>On hold since.</summary>
    public LocalDate? HoldFrom { get; init; }
}

/// <summary>Reads a client's row; every cell at fault is told, not only the first.</summary>
public sealed class ClientRowReader(CsvRow row, Func<string, bool> isFactor)
{
    /// <summary>Columns every file has.</summary>
    public static readonly IReadOnlyList<string> Required = ["name", "home_location"];

    /// <summary>Columns a file may have.</summary>
    public static readonly IReadOnlyList<string> Optional =
    [
        "called",
        "phone",
        "email",
        "emergency_name",
        "emergency_phone",
        "shares_conditions",
        "last_period",
        "cycle_days",
        "scan_date",
        "scan_age",
        "transfer_date",
        "embryo_days",
        "stated_due_date",
        "babies",
        "born_on",
        "birth_mode",
        "loss_on",
        "factors",
        "screened_on",
        "screening_outcome",
        "letter_issued_by",
        "letter_issued_on",
        "letter_expires_on",
        "hold_from",
    ];

    private static readonly Dictionary<string, ScreeningOutcome> Outcomes = new(
        StringComparer.Ordinal
    )
    {
        ["nothing-found"] = ScreeningOutcome.NothingFound,
        ["clearance-needed"] = ScreeningOutcome.ClearanceNeeded,
        ["no-exercise"] = ScreeningOutcome.NoExercise,
    };

    private static readonly Dictionary<string, BirthMode> Modes = Enum.GetValues<BirthMode>()
        .ToDictionary(m => m.ToString().ToLowerInvariant(), StringComparer.Ordinal);

    private readonly List<RefusedRow> _refused = [];

    /// <summary>The client, or null when the row is refused.</summary>
    public ImportedClient? Read(List<RefusedRow> refused)
    {
        var client = new ImportedClient
        {
            Line = row.Line,
            HomeLocation = Text("home_location", 60, required: true),
            Client = new NewClient
            {
                Name = Text("name", 200, required: true),
                Called = Text("called", 100),
                Phone = Text("phone", 60),
                Email = Email(),
                EmergencyName = Text("emergency_name", 200),
                EmergencyPhone = Text("emergency_phone", 60),
                SharesConditions = YesOrNo("shares_conditions"),
                HomeLocationId = 0,
                Dating = Dates(),
                Babies = Number("babies", 1, 8),
                BornOn = Day("born_on"),
                BirthMode = OneOf("birth_mode", Modes),
            },
            LossOn = Day("loss_on"),
            Factors = Factors(),
            Screening = Screened(),
            Letter = Letter(),
            HoldFrom = Day("hold_from"),
        };
        refused.AddRange(_refused);
        return _refused.Count == 0 ? client : null;
    }

    private EvidenceRequest Dates()
    {
        var scanned = Day("scan_date");
        var measured = Age("scan_age");
        var transferred = Day("transfer_date");
        var embryo = Number("embryo_days", 1, 7);
        Pair("scan_date", "scan_age", scanned is null, measured is null);
        Pair("transfer_date", "embryo_days", transferred is null, embryo is null);
        return new EvidenceRequest
        {
            LastPeriod = Day("last_period"),
            CycleDays = Number("cycle_days", 20, 45),
            Scan =
                scanned is { } scan && measured is { } age
                    ? new ScanRequest
                    {
                        Date = scan,
                        Weeks = age.Weeks,
                        Days = age.DaysOver,
                    }
                    : null,
            Transfer =
                transferred is { } transfer && embryo is { } days
                    ? new TransferRequest { Date = transfer, EmbryoDays = days }
                    : null,
            Stated = Day("stated_due_date"),
        };
    }

    private List<ImportedFactor> Factors()
    {
        var factors = new List<ImportedFactor>();
        foreach (
            var item in row["factors"]
                .Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        )
        {
            var parts = item.Split(':');
            if (parts.Length is < 2 or > 3)
                Refuse(
                    "factors",
                    $"'{item}' is not a code, a first day and perhaps a last day with colons between."
                );
            else if (!isFactor(parts[0]))
                Refuse("factors", $"The catalogue has no factor '{parts[0]}'.");
            else if (
                ParseDay("factors", parts[1]) is { } from
                && (parts.Length == 2 || ParseDay("factors", parts[2]) is not null)
            )
            {
                var to = parts.Length == 3 ? ParseDay("factors", parts[2]) : null;
                if (to < from)
                    Refuse("factors", $"'{item}' ends before it begins.");
                else
                    factors.Add(new ImportedFactor(parts[0], from, to));
            }
        }

        return factors;
    }

    private Screening? Screened()
    {
        var on = Day("screened_on");
        var outcome = OneOf("screening_outcome", Outcomes);
        Pair("screened_on", "screening_outcome", on is null, outcome is null);
        return on is { } day && outcome is { } found ? new Screening(day, found) : null;
    }

    private ImportedLetter? Letter()
    {
        var by = Text("letter_issued_by", 200);
        var issued = Day("letter_issued_on");
        var expires = Day("letter_expires_on");
        Pair("letter_issued_on", "letter_expires_on", issued is null, expires is null);
        if (issued is not { } from || expires is not { } to)
            return null;
        if (to < from)
            Refuse("letter_expires_on", "The letter ends before it was written.");
        if (by.Length == 0)
            Refuse("letter_issued_by", "Who wrote the letter is missing.");
        return new ImportedLetter(by, from, to);
    }

    private string Email()
    {
        var email = Text("email", 254);
        if (
            email.Length > 0
            && (
                email.Count(c => c == '@') != 1
                || email.Any(char.IsWhiteSpace)
                || email[0] == '@'
                || email[^1] == '@'
            )
        )
            Refuse("email", $"'{email}' is not an e-mail address.");
        return email;
    }

    private string Text(string column, int most, bool required = false)
    {
        var text = row[column];
        if (required && text.Length == 0)
            Refuse(column, "This is missing.");
        if (text.Length > most)
            Refuse(column, $"This is longer than {most} characters.");
        if (text.Any(c => char.IsControl(c)))
            Refuse(column, "This holds a character that is not text.");
        return text;
    }

    private LocalDate? Day(string column) =>
        row[column] is { Length: > 0 } text ? ParseDay(column, text) : null;

    private LocalDate? ParseDay(string column, string text)
    {
        var parsed = LocalDatePattern.Iso.Parse(text);
        if (parsed.Success && Readable.IsPlausible(parsed.Value))
            return parsed.Value;
        Refuse(
            column,
            parsed.Success
                ? $"'{text}' cannot be right: check the year."
                : $"'{text}' is not a date such as 2026-11-25."
        );
        return null;
    }

    private GestationalAge? Age(string column)
    {
        if (row[column] is not { Length: > 0 } text)
            return null;
        if (GestationalAge.TryParse(text, out var age))
            return age;
        Refuse(column, $"'{text}' is not an age such as 8w1d.");
        return null;
    }

    private int? Number(string column, int least, int most)
    {
        if (row[column] is not { Length: > 0 } text)
            return null;
        if (
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number >= least
            && number <= most
        )
            return number;
        Refuse(column, $"'{text}' is not a whole number from {least} to {most}.");
        return null;
    }

    private bool? YesOrNo(string column) =>
        OneOf(
            column,
            new Dictionary<string, bool>(StringComparer.Ordinal) { ["yes"] = true, ["no"] = false }
        );

    private T? OneOf<T>(string column, IReadOnlyDictionary<string, T> words)
        where T : struct
    {
        if (row[column] is not { Length: > 0 } text)
            return null;
        if (words.TryGetValue(text.ToLowerInvariant(), out var value))
            return value;
        Refuse(column, $"'{text}' is not one of {string.Join(", ", words.Keys)}.");
        return null;
    }

    // A cell that could not be read has been told already; only one that is not there makes half a pair.
    private void Pair(string one, string other, bool oneMissing, bool otherMissing)
    {
        if (oneMissing != otherMissing && (row[one].Length == 0 || row[other].Length == 0))
            Refuse(
                row[one].Length == 0 ? one : other,
                $"{one} and {other} go together; one of them is missing."
            );
    }

    private void Refuse(string column, string reason) =>
        _refused.Add(new RefusedRow(row.Line, column, reason));
}
