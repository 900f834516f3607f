using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core;

namespace Studio.Api.Tests.Timetable;

public class ChangesOfSessions
{
    [Fact]
    public async Task Two_sessions_change_rooms_at_once()
    {
        await using var app = await StudioApp.Empty();
        var (one, other) = (await app.HasRoom(), await app.HasRoom());
        var first = await app.HasSession(app.Today.PlusDays(2), room: one);
        var second = await app.HasSession(app.Today.PlusDays(2), room: other);

        var made = await app.Changed(
            (await app.Wanted(first)) with
            {
                RoomId = other,
            },
            (await app.Wanted(second)) with
            {
                RoomId = one,
            }
        );

        Assert.Null(made.Refusal);
        Assert.Equal(other, (await app.Wanted(first)).RoomId);
        Assert.Equal(one, (await app.Wanted(second)).RoomId);
        // Each changed once, whatever way it went.
        Assert.Equal([1, 1], await app.Rows<long>("select changes from sessions order by id"));
    }

    [Fact]
    public async Task Two_sessions_change_instructors_and_both_are_told()
    {
        await using var app = await StudioApp.Empty();
        var (ada, bea) = (
            await app.Qualified("Ada Winterbourne"),
            await app.Qualified("Bea Lathe")
        );
        var first = await app.HasSession(app.Today.PlusDays(2), instructor: ada);
        var second = await app.HasSession(app.Today.PlusDays(2), instructor: bea);

        await app.Changed(
            (await app.Wanted(first)) with
            {
                InstructorId = bea,
            },
            (await app.Wanted(second)) with
            {
                InstructorId = ada,
            }
        );

        Assert.Equal(
            [ada, bea],
            await app.Rows<long>(
                "select instructor_id from messages where kind = 'timetableChanged' order by instructor_id"
            )
        );
        var told = await app.Value<string>(
            "select json_extract(facts, '$.lines') from messages where instructor_id = @ada",
            new { ada }
        );
        Assert.Contains("no longer yours to teach", told, StringComparison.Ordinal);
        Assert.Contains("yours to teach.", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_room_that_is_taken_refuses_by_name_and_nothing_of_the_change_is_kept()
    {
        await using var app = await StudioApp.Empty();
        var room = await app.HasRoom(name: "Cork room");
        var taken = await app.HasSession(app.Today.PlusDays(2), room: room);
        var free = await app.HasSession(app.Today.PlusDays(2), "09:00");
        var session = await app.HasSession(app.Today.PlusDays(2));

        var made = await app.Changed(
            (await app.Wanted(free)) with
            {
                StartsLocal = new LocalTime(10, 0),
            },
            (await app.Wanted(session)) with
            {
                RoomId = room,
            }
        );

        Assert.Equal("timetable-conflict", made.Refusal?.Code);
        Assert.Contains("Cork room would hold", made.Refusal!.Message, StringComparison.Ordinal);
        Assert.Equal(new LocalTime(9, 0), (await app.Wanted(free)).StartsLocal);
        Assert.True((await app.Wanted(taken)).IsHeld);
    }

    [Fact]
    public async Task A_warning_refuses_until_the_owner_says_that_it_is_to_stay_so()
    {
        await using var app = await StudioApp.Empty();
        var ada = await app.Qualified("Ada Winterbourne");
        await app.Execute("update instructors set weekly_minutes_most = 60");
        await app.HasSession(app.Today.PlusDays(2), instructor: ada);
        var more = await app.HasSession(app.Today.PlusDays(3));
        var wanted = (await app.Wanted(more)) with { InstructorId = ada };

        Assert.Equal("timetable-warning", (await app.Changed(wanted)).Refusal?.Code);
        Assert.Null((await app.Changed(anyway: true, wanted)).Refusal);
        Assert.Equal(ada, (await app.Wanted(more)).InstructorId);
    }

    [Fact]
    public async Task What_stood_already_keeps_nobody_from_changing_something_else()
    {
        await using var app = await StudioApp.Empty();
        var unqualified = await app.HasInstructor();
        var session = await app.HasSession(app.Today.PlusDays(2), instructor: unqualified);

        Assert.Null((await app.Changed((await app.Wanted(session)) with { Seats = 12 })).Refusal);
        // Another day is another question.
        Assert.Equal(
            "timetable-conflict",
            (await app.Changed((await app.Wanted(session)) with { On = app.Today.PlusDays(3) }))
                .Refusal
                ?.Code
        );
    }

    [Fact]
    public async Task Calling_a_session_off_lets_everybody_go_and_tells_them_once()
    {
        await using var app = await StudioApp.Empty();
        var session = await app.HasSession(app.Today.PlusDays(2), seats: 1);
        var (booked, waiting) = (
            await app.HasClient("Orla Thistlewood"),
            await app.HasClient("Ione Park")
        );
        await app.HasBooking(session, booked);
        await app.HasBooking(session, waiting, "waiting");
        var off = (await app.Wanted(session)) with { IsHeld = false };

        var made = await app.Changed(off);
        var again = await app.Changed(off);

        Assert.Equal(2, made.Value!.LetGo);
        Assert.Equal(0, again.Value!.CalledOff);
        Assert.Equal(
            ["released", "released"],
            await app.Rows<string>("select status from bookings where let_go = 'calledOff'")
        );
        Assert.Equal(
            [booked, waiting],
            await app.Rows<long>(
                "select client_id from messages where kind = 'sessionCancelled' order by client_id"
            )
        );
        Assert.Equal(0, await app.Value<long>("select seats_taken from sessions"));
    }

    [Fact]
    public async Task Moving_a_session_keeps_the_seats_and_lets_go_only_what_would_overlap()
    {
        await using var app = await StudioApp.Empty();
        var day = app.Today.PlusDays(2);
        var (moved, other) = (
            await app.HasSession(day, "09:00"),
            await app.HasSession(day, "18:00")
        );
        var (both, one) = (
            await app.HasClient("Orla Thistlewood"),
            await app.HasClient("Ione Park")
        );
        await app.HasBooking(moved, both);
        await app.HasBooking(other, both);
        await app.HasBooking(moved, one);
        var wanted = (await app.Wanted(moved)) with { StartsLocal = new LocalTime(18, 10) };

        var seen = (await app.Seen(wanted)).Value!.Consequences.Single();
        var made = await app.Changed(wanted);

        Assert.Equal((2, 1), (seen.Told, seen.LetGo));
        Assert.Equal(1, made.Value!.LetGo);
        Assert.Equal(
            [one],
            await app.Rows<long>(
                "select client_id from bookings where session_id = @moved and status = 'booked'",
                new { moved }
            )
        );
        Assert.Equal(
            [both],
            await app.Rows<long>(
                "select client_id from bookings where session_id = @other and status = 'booked'",
                new { other }
            )
        );
        Assert.Equal(
            [(both, "sessionCancelled"), (one, "sessionChanged")],
            (
                await app.Rows<Told>(
                    "select client_id as Client, kind from messages where client_id is not null order by client_id"
                )
            ).Select(t => (t.Client, t.Kind))
        );
    }

    [Fact]
    public async Task After_a_loss_nothing_is_told()
    {
        await using var app = await StudioApp.Empty();
        var session = await app.HasSession(app.Today.PlusDays(2));
        var her = await app.HasClient("Orla Thistlewood");
        await app.HasBooking(session, her);
        await app.Execute(
            "update pregnancies set ended_on = @day where client_id = @her",
            new { day = app.Today, her }
        );

        await app.Changed((await app.Wanted(session)) with { IsHeld = false });

        Assert.Equal(0, await app.Value<long>("select count(*) from messages"));
    }

    [Fact]
    public async Task What_has_begun_stays_and_nothing_is_put_into_the_past()
    {
        await using var app = await StudioApp.Empty();
        var begun = await app.HasSession(app.Today, "08:30");
        var ahead = await app.HasSession(app.Today.PlusDays(2));

        Assert.Equal(
            "session-begun",
            (await app.Changed((await app.Wanted(begun)) with { IsHeld = false })).Refusal?.Code
        );
        Assert.Equal(
            "in-the-past",
            (await app.Changed((await app.Wanted(ahead)) with { On = app.Today.PlusDays(-2) }))
                .Refusal
                ?.Code
        );
    }

    [Fact]
    public async Task The_database_itself_takes_nobody_into_two_rooms_by_a_move()
    {
        await using var app = await StudioApp.Empty();
        var day = app.Today.PlusDays(2);
        var (moved, other) = (
            await app.HasSession(day, "09:00"),
            await app.HasSession(day, "18:00")
        );
        var her = await app.HasClient("Orla Thistlewood");
        await app.HasBooking(moved, her);
        await app.HasBooking(other, her);

        var refused = await Assert.ThrowsAsync<Microsoft.Data.Sqlite.SqliteException>(() =>
            app.Execute(
                """
                update sessions set starts_at = (select starts_at from sessions where id = @other),
                                    ends_at = (select ends_at from sessions where id = @other)
                 where id = @moved
                """,
                new { moved, other }
            )
        );
        Assert.Contains("overlap", refused.Message, StringComparison.Ordinal);
    }

    private sealed record Told
    {
        public long Client { get; init; }
        public string Kind { get; init; } = "";
    }
}

internal static class Changing
{
    public static async Task<SessionWanted> Wanted(this StudioApp app, long session)
    {
        await using var read = await app.Services.GetRequiredService<Database>().ReadAsync();
        return SessionWanted.As((await SessionStore.FindAsync(read, session))!);
    }

    public static Task<Answer<ChangesMade>> Changed(
        this StudioApp app,
        params SessionWanted[] wanted
    ) => app.Changed(anyway: false, wanted);

    public static Task<Answer<ChangesMade>> Changed(
        this StudioApp app,
        bool anyway,
        params SessionWanted[] wanted
    ) =>
        app.With<SessionChanges, Answer<ChangesMade>>(async changes =>
        {
            await using var write = await app
                .Services.GetRequiredService<Database>()
                .BeginWriteAsync();
            var made = await changes.ApplyAsync(write, wanted, new ChangeTerms(null, anyway));
            if (made.Refusal is null)
                await write.CommitAsync();
            return made;
        });

    public static Task<Answer<ChangesPreview>> Seen(
        this StudioApp app,
        params SessionWanted[] wanted
    ) =>
        app.With<SessionChanges, Answer<ChangesPreview>>(async changes =>
        {
            await using var read = await app.Services.GetRequiredService<Database>().ReadAsync();
            return await changes.PreviewAsync(read, wanted);
        });

    public static async Task<long> Qualified(this StudioApp app, string name)
    {
        var id = await app.HasInstructor(name);
        await app.HasQualification(id, app.Today.PlusDays(-100), app.Today.PlusDays(300));
        return id;
    }
}
