using Studio.Api.Tests.Erasures;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Access;

/// <summary>One signed-in person of every kind around one client, her instructor and fresh things to ask for.</summary>
public sealed class Cast
{
    private readonly StudioApp _app;
    private readonly long _class;
    private int _slots;

    private Cast(StudioApp app, long @class) => (_app, _class) = (app, @class);

    /// <summary>The order of the columns of the table of routes.</summary>
    public static readonly IReadOnlyList<string> Kinds =
    [
        "anonymous",
        "another client",
        "another instructor",
        "her instructor",
        "front desk",
        "the client",
        "owner",
    ];

    /// <summary>A browser for each kind, in that order.</summary>
    public IReadOnlyList<HttpClient> Browsers { get; private set; } = [];

    /// <summary>The client it is about.</summary>
    public long Client { get; private set; }

    /// <summary>Who teaches the sessions.</summary>
    public long Instructor { get; private set; }

    /// <summary>A new cast.</summary>
    public static async Task<Cast> Of(StudioApp app)
    {
        var cast = new Cast(app, await app.HasClass(minutes: 5))
        {
            Client = await app.HasClient(due: app.Today.PlusDays(60)),
            Instructor = await app.HasInstructor(),
        };
        // She is on a roster of her instructor's tomorrow.
        await cast.Booking();
        cast.Browsers =
        [
            app.Browser(),
            await app.SignedInAs(Role.Client, client: await app.HasClient()),
            await app.SignedInAs(Role.Instructor, instructor: await app.HasInstructor()),
            await app.SignedInAs(Role.Instructor, instructor: cast.Instructor),
            await app.SignedInAs(Role.FrontDesk),
            await app.SignedInAs(Role.Client, client: cast.Client),
            await app.SignedInAs(Role.Owner),
        ];
        return cast;
    }

    /// <summary>A text with its placeholders filled in, each by something new.</summary>
    public async Task<string> Fill(string text)
    {
        text = text.Replace("{clientId}", $"{Client}")
            .Replace("{instructorId}", $"{Instructor}")
            .Replace("{answers}", ScreeningSamples.AllWell())
            .Replace("{name}", "advance")
            .Replace("{code}", "look-ahead-days")
            .Replace("{file}", "stages.csv")
            .Replace("{today}", $"{_app.Today:uuuu-MM-dd}")
            .Replace("{n}", Guid.NewGuid().ToString("n"))
            .Replace("{password}", StudioApp.Password);
        // The first plan of a class; of the catalogue, the program's own.
        text = text.Replace("{version}", text.Contains("/plan/") ? "1" : "0");
        if (text.Contains("{classId}"))
        {
            var cls = await _app.HasClass(minutes: 5);
            await _app.HasPlan(cls, ("rib-breathing", 5));
            text = text.Replace("{classId}", $"{cls}");
        }
        if (text.Contains("{account}"))
            text = text.Replace("{account}", await _app.HasAccount([Role.FrontDesk]));
        if (text.Contains("{accountId}"))
        {
            var email = await _app.HasAccount([Role.FrontDesk]);
            var id = (await _app.Rows<long>($"select id from accounts where email = '{email}'"))[0];
            text = text.Replace("{accountId}", $"{id}");
        }

        if (text.Contains("{location}"))
            text = text.Replace(
                "{location}",
                $"{await _app.Value<long>("select min(id) from locations")}"
            );
        if (text.Contains("{otherLocation}"))
            text = text.Replace(
                "{otherLocation}",
                $"{await _app.HasLocation($"Pier {Guid.NewGuid():n}")}"
            );
        if (text.Contains("{freeDay}"))
            text = text.Replace(
                "{freeDay}",
                $"{_app.Today.PlusDays(400 + Interlocked.Increment(ref _slots)):uuuu-MM-dd}"
            );
        if (text.Contains("{qualificationId}"))
            text = text.Replace(
                "{qualificationId}",
                $"{await _app.HasProvenQualification(Instructor, Guid.NewGuid().ToString("n"))}"
            );
        if (text.Contains("{leaveId}"))
            text = text.Replace(
                "{leaveId}",
                $"{await _app.HasLeave(Instructor, _app.Today.PlusDays(800), _app.Today.PlusDays(801))}"
            );
        if (text.Contains("{rateId}"))
            text = text.Replace("{rateId}", $"{await _app.HasRate(2500)}");
        // Notes are about a class that has begun, with her in it.
        if (text.Contains("{sessionId}/notes"))
            text = text.Replace("{sessionId}", $"{await Taught()}");
        if (text.Contains("{noteId}"))
            text = text.Replace("{noteId}", $"{await Note()}");
        if (text.Contains("{sessionId}"))
            text = text.Replace("{sessionId}", $"{await Session()}");
        if (text.Contains("{roomId}"))
            text = text.Replace("{roomId}", $"{await _app.HasRoom()}");
        if (text.Contains("{anyClass}"))
            text = text.Replace("{anyClass}", $"{await _app.HasClass()}");
        if (text.Contains("{seriesId}"))
            text = text.Replace(
                    "{seriesId}",
                    $"{await _app.HasSeries("FREQ=DAILY", _app.Today.PlusDays(1))}"
                )
                .Replace("{on}", $"{_app.Today.PlusDays(3):uuuu-MM-dd}");
        if (text.Contains("{closureId}"))
            text = text.Replace(
                "{closureId}",
                $"{await _app.HasClosure(_app.Today.PlusDays(200))}"
            );
        if (text.Contains("/let-go/{bookingId}"))
            text = text.Replace("{bookingId}", $"{await _app.HasLetGo(await Session(), Client)}");
        if (text.Contains("{bookingId}"))
            text = text.Replace("{bookingId}", $"{await Booking()}");
        if (text.Contains("{factorId}"))
            text = text.Replace("{factorId}", $"{await _app.HasFactor(Client, "back-pain")}");
        if (text.Contains("{seen}"))
        {
            var plan = await Browsers[^1].Read($"/api/clients/{Client}/erasure");
            text = text.Replace("{clientName}", (string)plan["name"]!)
                .Replace("{seen}", (string)plan["seen"]!);
        }
        if (text.Contains("{assignmentId}"))
            text = text.Replace("{assignmentId}", $"{await _app.HasAssignment()}");
        if (text.Contains("{erasureId}"))
        {
            var former = await _app.HasClient();
            var letter = await _app.HasWaitingLetter(former, LetterSamples.Png);
            text = text.Replace("{erasureId}", $"{await Browsers[^1].Erase(former)}")
                .Replace("{letterId}", $"{letter}");
        }
        if (text.Contains("{letterId}"))
            text = text.Replace(
                "{letterId}",
                $"{await _app.HasWaitingLetter(Client, LetterSamples.Png)}"
            );
        if (text.Contains("{draftId}"))
            text = text.Replace("{draftId}", $"{await Draft()}");
        if (text.Contains("{incidentId}"))
            text = text.Replace("{incidentId}", $"{await _app.HasIncident(Client)}");
        if (text.Contains("{passKindId}"))
            text = text.Replace("{passKindId}", $"{await _app.HasPassKind()}");
        if (text.Contains("{passId}"))
            text = text.Replace("{passId}", $"{await _app.HasPass(Client)}");
        text = text.Replace("{kind}", "needsHer");
        if (text.Contains("{messageId}"))
            text = text.Replace("{messageId}", $"{await _app.HasMessage(Client)}");
        if (text.Contains("{token}"))
            text = text.Replace("{token}", _app.StopToken(Client));
        if (text.Contains("{flagId}"))
            text = text.Replace("{flagId}", $"{await Flag()}");
        if (text.Contains("{moveId}"))
            text = text.Replace("{moveId}", $"{await Move()}");
        if (text.Contains("{feedId}"))
            text = text.Replace("{feedId}", $"{(await _app.HasFeed(Browsers[5])).Id}");
        if (text.Contains("{address}"))
            text = text.Replace("{address}", (await _app.HasFeed(Browsers[5])).Token);
        return text;
    }

    /// <summary>A session tomorrow at a time that no other of this cast has.</summary>
    private Task<long> Session()
    {
        var slot = Interlocked.Increment(ref _slots);
        return _app.HasSession(
            _app.Today.PlusDays(1 + slot / 280),
            new LocalTime(0, 5).PlusMinutes(slot % 280 * 5).ToString("HH:mm", null),
            _class,
            instructor: Instructor
        );
    }

    /// <summary>A session yesterday or earlier at a time that no other has, with her in it.</summary>
    private async Task<long> Taught()
    {
        var slot = Interlocked.Increment(ref _slots);
        var session = await _app.HasSession(
            _app.Today.PlusDays(-1 - slot / 280 % 5),
            new LocalTime(0, 5).PlusMinutes(slot % 280 * 5).ToString("HH:mm", null),
            _class,
            instructor: Instructor
        );
        await _app.HasBooking(session, Client);
        return session;
    }

    // Of a week far ahead, with a session in it that the timetable has as well.
    private async Task<long> Draft()
    {
        var on = new LocalDate(2028, 1, 3).PlusWeeks(Interlocked.Increment(ref _slots));
        await _app.HasSession(on, "10:00", _class);
        using var made = await Browsers[^1]
            .Post(
                "/api/drafts",
                new
                {
                    name = "Winter",
                    from = on,
                    to = on.PlusDays(13),
                }
            );
        return (await made.Is(201)).Number("id");
    }

    // Written by her instructor.
    private async Task<long> Note() =>
        await _app.HasNote(
            await Taught(),
            Client,
            await _app.Value<long>(
                "select account_id from instructors where id = @Instructor",
                new { Instructor }
            )
        );

    private async Task<long> Booking() => await _app.HasBooking(await Session(), Client);

    private async Task<long> Flag() =>
        await _app.Insert(
            """
            insert into flags (subject, kind, severity, client_id, for_desk, for_instructor, since, opened_at)
            values (@subject, 'stageChange', 'info', @Client, 'For the desk.', 'For the instructor.', @since, @at)
            """,
            new
            {
                subject = $"made-for-a-test:{Guid.NewGuid()}",
                Client,
                since = _app.Today,
                at = _app.Clock.GetCurrentInstant(),
            }
        );

    private async Task<long> Move()
    {
        var at = _app.Clock.GetCurrentInstant();
        await _app.Execute(
            "update moves set status = 'lapsed', decided_at = @at where client_id = @Client and status = 'open'",
            new { at, Client }
        );
        var move = await _app.Insert(
            """
            insert into moves (client_id, to_stage, crosses_on, status, made_at)
            values (@Client, 'third-trimester', @on, 'open', @at)
            """,
            new
            {
                Client,
                on = _app.Today.PlusDays(2),
                at,
            }
        );
        await _app.Execute(
            "insert into move_steps (move_id, booking_id, to_session_id) values (@move, @booking, @session)",
            new
            {
                move,
                booking = await Booking(),
                session = await Session(),
            }
        );
        return move;
    }
}
