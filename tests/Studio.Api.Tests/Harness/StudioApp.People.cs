using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Accounts;
using Studio.Api.Clearance;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Incidents;
using Studio.Api.Messages;
using Studio.Api.Pregnancies;
using Studio.Api.Rosters;
using Studio.Core.Accounts;
using Studio.Core.Clearance;
using Studio.Core.Messages;
using Studio.Core.Pregnancies;

namespace Studio.Api.Tests.Harness;

/// <summary>Clients with what is known of them, and the people who sign in.</summary>
public sealed partial class StudioApp
{
    /// <summary>The password of every account a test makes.</summary>
    public const string Password = "quiet-harbour-9";

    /// <summary>
    /// A client, due 20 weeks from today unless dates are given. With papers she has a letter that counts for ten weeks
    /// either side of today and has answered the health questions with nothing found.
    /// </summary>
    /// <param name="name">Her name; she likes to be called by its first word.</param>
    /// <param name="due">Due date.</param>
    /// <param name="born">Date of birth of her baby, by a vaginal birth unless <paramref name="mode"/> says otherwise.</param>
    /// <param name="ended">Her pregnancy ended in loss on that day.</param>
    /// <param name="dated">False: nothing at all is known of a pregnancy.</param>
    /// <param name="papers">Letter and screening are there.</param>
    /// <param name="shares">Instructors may see her conditions by name.</param>
    /// <param name="babies">How many.</param>
    /// <param name="mode">How she gave birth.</param>
    /// <param name="location">Home; the first location unless given.</param>
    public async Task<long> HasClient(
        string? name = null,
        LocalDate? due = null,
        LocalDate? born = null,
        LocalDate? ended = null,
        bool dated = true,
        bool papers = true,
        bool shares = false,
        int babies = 1,
        BirthMode mode = BirthMode.Vaginal,
        long? location = null
    )
    {
        var number = Next();
        name ??= $"Person{number} Testwold";
        var home = location ?? await AnyLocation();
        var row = new ClientRow
        {
            Name = name,
            Called = name.Split(' ')[0],
            Phone = $"+351 990 {number:d6}",
            Email = $"client{number}@mail.example",
            EmergencyName = $"Contact{number} Testwold",
            EmergencyPhone = $"+351 991 {number:d6}",
            HomeLocationId = home,
            SharesConditions = shares,
        };
        var pregnancy = dated
            ? new Pregnancy
            {
                DueDate = due ?? born ?? Today.PlusDays(140),
                Babies = babies,
                BornOn = born,
                BirthMode = born is null ? null : mode,
                EndedOn = ended,
            }
            : null;
        var id = await Add(row, pregnancy);
        if (papers)
        {
            // A birth ends the letters written before it.
            var issued = born is { } birth
                ? LocalDate.Max(birth, Today.PlusDays(-70))
                : Today.PlusDays(-70);
            await HasLetter(id, issued, Today.PlusDays(70));
            await HasScreening(id, LocalDate.Max(issued, Today.PlusDays(-3)));
        }

        return id;
    }

    /// <summary>A clearance letter.</summary>
    public Task<long> HasLetter(long client, LocalDate issued, LocalDate expires) =>
        Insert(
            """
            insert into letters (client_id, state, on_paper, issued_by, issued_on, expires_on, entered_at, reviewed_at)
            values (@client, 'counts', 1, 'Dr Wenna Ashdown', @issued, @expires, @at, @at)
            """,
            new
            {
                client,
                issued,
                expires,
                at = Clock.GetCurrentInstant(),
            }
        );

    /// <summary>A letter that nobody has read yet.</summary>
    internal async Task<long> HasWaitingLetter(long client, byte[] file)
    {
        Assert.True(LetterFile.KindOf(file).TryGet(out var kind, out _));
        var by = await Value<long>("select max(id) from accounts");
        var name = await With<LetterFiles, string>(files => files.KeepAsync(file));
        await using var write = await Services.GetRequiredService<Database>().BeginWriteAsync();
        var id = await LetterStore.FileAsync(
            write,
            client,
            name,
            kind,
            file.Length,
            Clock.GetCurrentInstant(),
            by
        );
        await write.CommitAsync();
        return id;
    }

    /// <summary>She answered the health questions.</summary>
    public Task<long> HasScreening(long client, LocalDate on, string outcome = "nothingFound") =>
        Insert(
            """
            insert into screenings (client_id, answered_on, outcome, entered_at)
            values (@client, @on, @outcome, @at)
            """,
            new
            {
                client,
                on,
                outcome,
                at = Clock.GetCurrentInstant(),
            }
        );

    /// <summary>A factor or condition of hers.</summary>
    public Task<long> HasFactor(
        long client,
        string code,
        LocalDate? from = null,
        LocalDate? to = null
    ) =>
        Insert(
            """
            insert into client_factors (client_id, code, from_on, to_on, entered_at)
            values (@client, @code, @from, @to, @at)
            """,
            new
            {
                client,
                code,
                from = from ?? Today.PlusDays(-80),
                to,
                at = Clock.GetCurrentInstant(),
            }
        );

    /// <summary>Something that happened.</summary>
    internal async Task<long> HasIncident(long client, string happened = "She felt faint.")
    {
        var by = await Value<long>("select max(id) from accounts");
        await using var write = await Services.GetRequiredService<Database>().BeginWriteAsync();
        var id = await IncidentStore.AddAsync(
            write,
            new NewIncident
            {
                ClientId = client,
                Signs = ["sign-dizzy"],
                Happened = happened,
                Done = "She sat down.",
            },
            Clock.GetCurrentInstant(),
            by
        );
        await write.CommitAsync();
        return id;
    }

    /// <summary>Her bookings are on hold.</summary>
    public Task<long> HasHold(long client, LocalDate? from = null) =>
        Insert(
            "insert into holds (client_id, from_on, entered_at) values (@client, @from, @at)",
            new
            {
                client,
                from = from ?? Today,
                at = Clock.GetCurrentInstant(),
            }
        );

    /// <summary>A booking made earlier, whatever the rules say of it now.</summary>
    public Task<long> HasBooking(long session, long client, string status = "booked") =>
        Insert(
            """
            insert into bookings (session_id, client_id, status, made_at)
            values (@session, @client, @status, @at)
            """,
            new
            {
                session,
                client,
                status,
                at = Clock.GetCurrentInstant(),
            }
        );

    /// <summary>A note about her in a session, by an account.</summary>
    public async Task<long> HasNote(
        long session,
        long client,
        long account,
        string text = "Steady on one leg at the wall."
    )
    {
        await using var write = await Services.GetRequiredService<Database>().BeginWriteAsync();
        var id = await NoteStore.AddAsync(
            write,
            session,
            client,
            text,
            account,
            Clock.GetCurrentInstant()
        );
        await write.CommitAsync();
        return id;
    }

    /// <summary>A new calendar address of whoever is signed in, in place of the one before.</summary>
    public async Task<(long Id, string Token)> HasFeed(HttpClient browser, string reads = "client")
    {
        using var answer = await browser.Post("/api/feeds", new { reads });
        var made = await answer.Is(201);
        return (made.Number("id"), made.Text("path")["/feeds/".Length..^".ics".Length]);
    }

    /// <summary>A message to her that waits; a new one each time.</summary>
    public Task<long> HasMessage(
        long client,
        MessageKind kind = MessageKind.NeedsHer,
        long? session = null,
        string lines = ""
    ) =>
        HasMessage(
            new()
            {
                Kind = kind,
                About = $"made-for-a-test:{Guid.NewGuid():n}",
                ClientId = client,
                SessionId = session,
                Facts = new Dictionary<string, string> { ["lines"] = lines },
            }
        );

    /// <summary>A message that waits.</summary>
    public async Task<long> HasMessage(OutboxMessage message)
    {
        await With<Outbox, bool>(async outbox =>
        {
            await using var write = await Services.GetRequiredService<Database>().BeginWriteAsync();
            Assert.True(await outbox.PutAsync(write, message));
            await write.CommitAsync();
            return true;
        });
        return await Value<long>("select id from messages where about = @About", message);
    }

    /// <summary>The signed part of a link that stops messages that her page needs her.</summary>
    public string StopToken(long client) =>
        Services.GetRequiredService<MailLinks>().Token(new(client, null, MessageKind.NeedsHer));

    /// <summary>An account with the test password; its e-mail address.</summary>
    public async Task<string> HasAccount(
        IReadOnlyCollection<Role> roles,
        long? client = null,
        long? instructor = null
    )
    {
        var email = $"account{Next()}@saltmarsh.example";
        var made = await With<AccountLinks, Core.Answer<long>>(links =>
            links.MakeAsync(email, "Somebody Testwold", Password, roles, client, instructor)
        );
        Assert.Null(made.Refusal);
        return email;
    }

    /// <summary>A browser in which somebody in this role is signed in, tied to a client or an instructor when given.</summary>
    public Task<HttpClient> SignedInAs(Role role, long? client = null, long? instructor = null) =>
        SignedInAs([role], client, instructor);

    /// <summary>A browser in which somebody in these roles is signed in.</summary>
    public async Task<HttpClient> SignedInAs(
        IReadOnlyCollection<Role> roles,
        long? client = null,
        long? instructor = null
    ) => await SignedInWith(await HasAccount(roles, client, instructor), Password);

    /// <summary>A browser signed in with an account that is there already.</summary>
    public async Task<HttpClient> SignedInWith(string email, string password)
    {
        var browser = Browser();
        using var answer = await browser.Post("/api/session", new { email, password });
        await answer.Is(200);
        return browser;
    }

    private async Task<long> Add(ClientRow row, Pregnancy? pregnancy)
    {
        var now = Clock.GetCurrentInstant();
        await using var write = await Services.GetRequiredService<Database>().BeginWriteAsync();
        var id = await ClientStore.AddAsync(write, row, now);
        if (pregnancy is not null)
        {
            var record = await PregnancyStore.BeginAsync(write, id, pregnancy);
            var evidence = new DatingEvidence { Stated = pregnancy.DueDate };
            await PregnancyStore.AddEvidenceAsync(write, record, evidence, now, null);
        }

        await write.CommitAsync();
        return id;
    }
}
