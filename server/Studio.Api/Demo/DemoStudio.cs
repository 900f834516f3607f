using System.Reflection;
using NodaTime;
using NodaTime.Text;
using Studio.Api.Accounts;
using Studio.Api.Booking;
using Studio.Api.Clients;
using Studio.Api.Cover;
using Studio.Api.Data;
using Studio.Api.Imports;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Cover;

namespace Studio.Api.Demo;

/// <summary>The invented studio that is loaded into an empty data folder.</summary>
public sealed class DemoStudio(
    Database database,
    ClientImports imports,
    AccountLinks accounts,
    RuleBook book,
    IClock clock
)
{
    /// <summary>The password of every demo account.</summary>
    public const string Password = "demo-studio";

    /// <summary>What a demo account shows, for the sign-in page.</summary>
    public static string Does(string email) =>
        email switch
        {
            "owner@demo.example" => "The owner: the week by room, staff, nightly jobs, import",
            "desk@demo.example" => "The front desk: today, find and book, suggested moves",
            "instructor@demo.example" => "An instructor: her next session and who is in it",
            _ => "A client: her tape, what suits her, booking",
        };

    /// <summary>Loads everything, clients by the same import that the owner has.</summary>
    /// <exception cref="InvalidOperationException">The demo's files are damaged.</exception>
    public async Task LoadAsync()
    {
        await using (var write = await database.BeginWriteAsync())
        {
            var now = clock.GetCurrentInstant();
            await StudioSetup.RunAsync(write, Text, book, now, isDemo: true);
            var zone = await write.ValueAsync<string>(
                "select zone from locations order by id limit 1"
            );
            var today = now.InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
            var report = await imports.RunAsync(
                write,
                StudioSetup.WithDates(Text("clients.csv"), today),
                dryRun: false,
                by: null
            );
            if (report.Refused.Count > 0)
                throw new InvalidOperationException(
                    string.Join(
                        Environment.NewLine,
                        report.Refused.Select(r =>
                            $"clients.csv line {r.Line}: {r.Column} {r.Reason}"
                        )
                    )
                );
            await BirthDatesAsync(write, today);
            await BookAsync(write, now);
            await NeedCoverAsync(write, now);
            await write.CommitAsync();
        }

        await AddAccountsAsync();
    }

    /// <summary>Adds the demo accounts that are not there yet.</summary>
    public async Task AddAccountsAsync()
    {
        var there = (await accounts.ListAsync(demoOnly: true))
            .Select(a => a.Email)
            .ToHashSet(StringComparer.Ordinal);
        long? client;
        long? instructor;
        await using (var read = await database.ReadAsync())
        {
            client = await read.FindAsync<long?>(
                "select id from clients where email = 'client@demo.example'"
            );
            instructor = await read.FindAsync<long?>(
                "select id from instructors where email = 'instructor@demo.example'"
            );
        }

        (string Email, string Name, Role Role, long? Client, long? Instructor)[] wanted =
        [
            ("owner@demo.example", "Odile Marchetanne", Role.Owner, null, null),
            ("desk@demo.example", "Bruna Caldeiro", Role.FrontDesk, null, null),
            ("instructor@demo.example", "Marisol Quintavelle", Role.Instructor, null, instructor),
            ("client@demo.example", "Leonor Castrovide", Role.Client, client, null),
        ];
        foreach (
            var (email, name, role, hers, teaches) in wanted.Where(w => !there.Contains(w.Email))
        )
        {
            var made = await accounts.MakeAsync(
                email,
                name,
                Password,
                [role],
                hers,
                teaches,
                isDemo: true
            );
            if (made.Refusal is { } refusal)
                throw new InvalidOperationException(
                    $"The demo account {email} could not be made: {refusal.Message}"
                );
        }
    }

    private static async Task BirthDatesAsync(Write write, LocalDate today)
    {
        var text = StudioSetup.WithDates(Text("birth_dates.csv"), today);
        foreach (
            var row in StudioSetup.Rows(_ => text, "birth_dates.csv", "client_email", "born_on")
        )
            await BirthDates.SetAsync(
                write,
                await write.ValueAsync<long>(
                    "select id from clients where email = @email",
                    new { email = row["client_email"] }
                ),
                LocalDatePattern.Iso.Parse(row["born_on"]).GetValueOrThrow()
            );
    }

    // In the order of the file, by the rules; a row marked "anyway" was booked before something changed, so that how it
    // suits her now is not asked. Seats and overlaps always count.
    private async Task BookAsync(Write write, Instant now)
    {
        var sessions = (await SessionStore.ListAsync(write, new SessionsWanted())).ToLookup(s =>
            (s.ClassCode, (int)s.OnDate.DayOfWeek, s.StartsLocal.ToString("HH:mm", null))
        );
        var clients = (
            await write.ListAsync<ClientEmail>("select id, email from clients where email <> ''")
        ).ToDictionary(c => c.Email, c => c.Id, StringComparer.Ordinal);
        var fits = await Fits.LoadAsync(write, book, null);
        string[] columns = ["client_email", "class", "weekday", "start", "weeks", "anyway"];
        foreach (var row in StudioSetup.Rows(Text, "bookings.csv", columns))
        {
            var client = clients[row["client_email"]];
            var weekly = sessions[(row["class"], int.Parse(row["weekday"]), row["start"])]
                .OrderBy(s => s.StartsAt)
                .ToList();
            foreach (var week in row["weeks"].Split(';').Select(int.Parse))
            {
                var session = weekly[week];
                var tooFar =
                    session.OnDate
                    > now.InZone(DateTimeZoneProviders.Tzdb[session.Zone])
                        .Date.PlusDays(fits.Policies.BookingAheadDays);
                if (
                    tooFar
                    || (
                        row["anyway"] != "yes"
                        && fits.Of(client, session).Verdict >= Suits.NeedsClearance
                    )
                )
                    continue;
                if (
                    (
                        await BookingStore.OverlappingAsync(
                            write,
                            client,
                            session.StartsAt,
                            session.EndsAt,
                            session.Id
                        )
                    ).Count == 0
                )
                    await BookingStore.TakeAsync(write, session.Id, client, now, null, now);
            }
        }
    }

    // The next day's first class has nobody, and a colleague asks for cover of one that the demo's instructor can take.
    private async Task NeedCoverAsync(Write write, Instant now)
    {
        var her = await write.ValueAsync<long>(
            "select id from instructors where email = 'instructor@demo.example'"
        );
        var others = (await SessionStore.ListAsync(write, new SessionsWanted()))
            .Where(s => s.InstructorId is { } by && by != her)
            .Where(s =>
                s.OnDate > now.InZone(DateTimeZoneProviders.Tzdb[s.Zone]).Date
                && s.StartsAt < now + Duration.FromDays(7)
            )
            .ToList();
        if (others.Count == 0)
            return;
        await write.ExecuteAsync(
            "update sessions set instructor_id = null where id = @Id",
            new { others[0].Id }
        );
        var board = await CoverBoard.OfAsync(
            write,
            book,
            now,
            [.. others.Skip(1).Select(s => s.Id)]
        );
        var asked = others
            .Skip(1)
            .FirstOrDefault(s =>
                board
                    .Ranked(s.Id)
                    .Any(c => c.InstructorId == her && c.Standing == CoverStanding.Free)
            );
        if (asked is not null)
            await CoverStore.AskAsync(write, asked, now, by: null);
    }

    /// <summary>A file of the demo, as it was built in.</summary>
    public static string Text(string name)
    {
        using var stream = Assembly
            .GetExecutingAssembly()
            .GetManifestResourceStream($"demo.{name}")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    private sealed record ClientEmail
    {
        public long Id { get; init; }
        public string Email { get; init; } = "";
    }
}
