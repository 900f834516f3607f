using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Clearance;
using Studio.Api.Data;
using Studio.Api.Records;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Records;

/// <summary>
/// A client with a row in every table that can hold something of hers, and in every column that can take one a text, a
/// day or a moment that stands nowhere else. The tables and columns are asked of the schema, so that a new one is filled
/// too, or fails here.
/// </summary>
internal sealed class HerWithEverything
{
    private readonly StudioApp _app;
    private readonly Dictionary<string, long> _first = new(StringComparer.Ordinal);
    private int _number;

    private HerWithEverything(StudioApp app) => _app = app;

    public long Client { get; private set; }
    public long Account { get; private set; }
    public long Session { get; private set; }
    public string Email { get; private set; } = "";
    public HttpClient Browser { get; private set; } = null!;

    /// <summary>The name of her letter's file in the folder of letters.</summary>
    public string FileName { get; private set; } = "";

    private long PassKind { get; set; }
    private long PassClass { get; set; }
    private long Taking { get; set; }
    private long Refund { get; set; }

    /// <summary>Everything that stands nowhere else, with the place where it was put.</summary>
    public Dictionary<string, string> Marks { get; } = new(StringComparer.Ordinal);

    /// <summary>What was put into a column.</summary>
    public string MarkIn(string place) =>
        Marks.FirstOrDefault(m => m.Value == place).Key
        ?? throw new InvalidOperationException($"Nothing was put into {place}.");

    /// <summary>Fixed values for columns that a check binds, a row each.</summary>
    private Dictionary<string, Dictionary<string, object?>[]> Rows() =>
        new(StringComparer.Ordinal)
        {
            ["pregnancies"] =
            [
                Of(
                    ("is_current", 1L),
                    ("babies", 2L),
                    ("birth_mode", "assisted"),
                    ("ended_on", null),
                    ("stage", "postnatal")
                ),
                Of(
                    ("is_current", 0L),
                    ("babies", 1L),
                    ("birth_mode", null),
                    ("born_on", null),
                    ("rung_at", null),
                    ("stage", null),
                    ("gestational_day", null)
                ),
            ],
            ["dating_evidence"] =
            [
                Of(("kind", "scan"), ("cycle_days", null), ("embryo_days", null)),
                Of(("kind", "lastPeriod"), ("measured_days", null), ("embryo_days", null)),
                Of(("kind", "transfer"), ("measured_days", null), ("cycle_days", null)),
            ],
            ["due_dates"] = [Of(("basis", "scan"))],
            ["stage_changes"] = [Of(("stage", "third-trimester"))],
            ["screenings"] =
            [
                Of(
                    ("outcome", "clearanceNeeded"),
                    ("answers", """{"anything-else":{"value":"@","since":"2026-01-17"}}""")
                ),
            ],
            ["screening_drafts"] = [Of(("answers", """{"anything-else":{"value":"@"}}"""))],
            ["letters"] =
            [
                Of(
                    ("state", "counts"),
                    ("refused_because", null),
                    ("on_paper", 0L),
                    ("replaces_earlier", 1L),
                    ("media_type", "image/png"),
                    ("file_name", FileName),
                    ("issued_on", "1991-02-01"),
                    ("expires_on", "1991-12-01"),
                    (
                        "restrictions",
                        """{"LeaveOut":["supine"],"EffortMost":5,"HeartRateMost":null,"Words":"@"}"""
                    )
                ),
                Of(
                    ("state", "refused"),
                    ("on_paper", 1L),
                    ("replaces_earlier", 0L),
                    ("media_type", null),
                    ("file_name", null),
                    ("file_bytes", null),
                    ("restrictions", null),
                    ("issued_on", null),
                    ("expires_on", null)
                ),
            ],
            ["incidents"] =
            [
                Of(("signs", """["sign-dizzy"]"""), ("about_id", null)),
                Of(("signs", "[]")),
            ],
            ["bookings"] =
            [
                Of(
                    ("status", "booked"),
                    ("ended_at", null),
                    ("ended_by", null),
                    ("let_go", null),
                    ("seen_to_at", null)
                ),
                Of(("status", "released"), ("checked_in_at", null), ("let_go", "calledOff")),
            ],
            ["passes"] =
            [
                Of(
                    ("kind_id", PassKind),
                    ("form", "classes"),
                    ("carries_over", 1L),
                    ("currency", "EUR"),
                    ("paid_how", "cash"),
                    ("taking_id", Taking)
                ),
            ],
            ["pass_classes"] = [Of(("class_id", PassClass))],
            ["pass_entries"] =
            [
                Of(
                    ("kind", "sold"),
                    ("credits", 5L),
                    ("booking_id", null),
                    ("why", null),
                    ("reason", null),
                    ("taking_id", null)
                ),
                Of(
                    ("kind", "spent"),
                    ("credits", -1L),
                    ("why", null),
                    ("reason", null),
                    ("taking_id", null)
                ),
                Of(
                    ("kind", "returned"),
                    ("credits", 1L),
                    ("why", "excused"),
                    ("reason", null),
                    ("taking_id", null)
                ),
                Of(
                    ("kind", "refunded"),
                    ("credits", -5L),
                    ("booking_id", null),
                    ("why", null),
                    ("taking_id", Refund)
                ),
            ],
            ["moves"] = [Of(("status", "declined"), ("to_stage", "third-trimester"))],
            ["flags"] = [Of(("severity", "info"))],
            ["messages"] =
            [
                Of(
                    ("status", "sent"),
                    ("claimed_at", null),
                    ("held_back", null),
                    ("facts", """{"className":"@"}"""),
                    ("account_id", null),
                    ("instructor_id", null)
                ),
                Of(
                    ("status", "waiting"),
                    ("held_back", "quiet"),
                    ("facts", """{"className":"@"}"""),
                    ("client_id", null),
                    ("instructor_id", null),
                    ("ended_at", null)
                ),
            ],
            ["unwanted_messages"] = [Of(("instructor_id", null), ("by_link", 1L))],
            ["feeds"] = [Of(("reads", "client"), ("names_class", 1L))],
            ["erasures"] =
            [
                Of(("done_at", null), ("done_by", null), ("entries", null), ("files", null)),
            ],
        };

    /// <summary>Makes her. The session her seat was in is over.</summary>
    public static async Task<HerWithEverything> In(StudioApp app)
    {
        var her = new HerWithEverything(app)
        {
            Client = await app.HasClient(dated: false, papers: false),
        };
        her.Email = await app.HasAccount([Role.Client], her.Client);
        her.Browser = await app.SignedInWith(her.Email, StudioApp.Password);
        her.Account = await app.Value<long>(
            "select account_id from clients where id = @Client",
            new { her.Client }
        );
        her.FileName = await app.With<LetterFiles, string>(f => f.KeepAsync(LetterSamples.Png));
        var staff = await app.Value<long>(
            "select a.account_id from account_roles a where a.role = 'owner' limit 1"
        );
        var session = her.Session = await app.HasSession(app.Today.PlusDays(-2));
        var instructor = await app.HasInstructor();
        her.PassKind = await app.HasPassKind();
        her.PassClass = await app.HasClass();
        her.Taking = await app.HasTaking(her.PassKind, 1000);
        her.Refund = await app.HasTaking(her.PassKind, -1000);
        foreach (var table in HeldTables.All)
            if (table.Name is "clients" or "accounts")
                await her.Mark(table.Name);
            else if (table.Name is not ("account_roles" or "audit"))
                foreach (var row in her.Rows().GetValueOrDefault(table.Name) ?? [Of()])
                    await her.Add(table.Name, row, staff, session, instructor);
        // Somebody looked at her record, and she did.
        var desk = await app.SignedInAs(Role.Owner);
        await desk.Read($"/api/clients/{her.Client}");
        await desk.Read($"/api/sessions/{session}/roster");
        await her.Browser.Read($"/api/clients/{her.Client}");
        return her;
    }

    /// <summary>The columns of a table, with their types.</summary>
    public static Task<List<Column>> Columns(StudioApp app, string table) =>
        app.Rows<Column>(
            $"""
            select c.name, c.type, k."table" as "To",
                   instr((select m.sql from sqlite_master m where m.name = '{table}'),
                         'date(' || c.name || ')') > 0 as IsDay
              from pragma_table_info('{table}') c
              left join pragma_foreign_key_list('{table}') k on k."from" = c.name
            """
        );

    internal sealed record Column
    {
        public string Name { get; init; } = "";
        public string Type { get; init; } = "";
        public string? To { get; init; }
        public bool IsDay { get; init; }
    }

    private static Dictionary<string, object?> Of(params (string, object?)[] values) =>
        values.ToDictionary(v => v.Item1, v => v.Item2, StringComparer.Ordinal);

    private async Task Mark(string table)
    {
        var id = table == "clients" ? Client : Account;
        foreach (var column in await Columns(_app, table))
            if (
                column.Type == "TEXT"
                && !column.Name.EndsWith("_at", StringComparison.Ordinal)
                && column.Name is not ("password_hash" or "security_stamp" or "lockout_until")
                && (table, column.Name) is not ("accounts", "email" or "normalized_email")
            )
                await _app.Execute(
                    $"update {table} set {column.Name} = @value where id = @id",
                    new { id, value = Value(table, column, "@") }
                );
        if (table == "accounts")
            await _app.Execute(
                "update accounts set lockout_until = @value, failed_count = 2 where id = @id",
                new
                {
                    id,
                    value = Value(table, new Column { Name = "lockout_at", Type = "TEXT" }, "@"),
                }
            );
    }

    private async Task Add(
        string table,
        Dictionary<string, object?> given,
        long staff,
        long session,
        long instructor
    )
    {
        var values = new Dictionary<string, object>(StringComparer.Ordinal);
        foreach (var column in (await Columns(_app, table)).Where(c => c.Name != "id"))
        {
            var value = given.TryGetValue(column.Name, out var fixedTo)
                ? fixedTo is string text
                    ? Value(table, column, text)
                    : fixedTo
                : column.To switch
                {
                    null when column.Name == "client_id" => Client,
                    null when column.Type == "INTEGER" => (long?)(++_number),
                    null => Value(table, column, "@"),
                    "clients" => Client,
                    "accounts" => column.Name == "account_id" && table != "flag_reads"
                        ? Account
                        : staff,
                    "instructors" => instructor,
                    "sessions" => session,
                    // An earlier row of hers, where there is one.
                    var other => _first.TryGetValue(other, out var first) ? first : null,
                };
            if (value is not null)
                values[column.Name] = value;
        }

        await _app.Execute(
            $"""
            insert into {table} ({string.Join(", ", values.Keys)})
            values ({string.Join(", ", values.Keys.Select(k => $"@{k}"))})
            """,
            values
        );
        if ((await Columns(_app, table)).Exists(c => c.Name == "id"))
            _first.TryAdd(table, await _app.Value<long>($"select max(id) from {table}"));
    }

    // A text with "@" in it, or a day or moment, that stands nowhere else; sealed where the column is.
    private string Value(string table, Column column, string text)
    {
        var number = ++_number;
        var place = $"{table}.{column.Name}";
        if (text == "@")
            text =
                column.Name.EndsWith("_at", StringComparison.Ordinal)
                || column.Name is "at" or "not_before"
                    ? $"1990-05-05T05:05:05.{number:d3}Z"
                : column.IsDay || column.Name.EndsWith("_on", StringComparison.Ordinal)
                    ? new LocalDate(1991, 1, 1).PlusDays(number).ToString("uuuu-MM-dd", null)
                : $"mark-{number}-{column.Name}";
        else if (text.Contains('@', StringComparison.Ordinal))
        {
            var word = $"mark-{number}-{column.Name}";
            Marks[word] = place;
            text = text.Replace("@", word, StringComparison.Ordinal);
        }

        if (!text.StartsWith('{') && text.Any(char.IsDigit))
            Marks[text] = place;
        return Sealing.Columns.Contains((table, column.Name))
            ? _app.Services.GetRequiredService<Seal>().Close(text)
            : text;
    }
}
