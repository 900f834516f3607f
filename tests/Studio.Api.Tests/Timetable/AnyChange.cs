using CsCheck;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core.Timetable;

namespace Studio.Api.Tests.Timetable;

/// <summary>Random weeks and random changes to them, on the real database; nothing is committed.</summary>
public class AnyChange
{
    private static readonly LocalDate Monday = new(2026, 3, 9);

    // day, quarter of an hour from 09:00, room, who teaches it, length in quarters, seats, whether it is held
    private static readonly Gen<(int, int, int, int, int, int, bool)> APlace = Gen.Select(
        Gen.Int[0, 1],
        Gen.Int[0, 12],
        Gen.Int[0, 2],
        Gen.Int[0, 2],
        Gen.Int[1, 6],
        Gen.Int[4, 11],
        Gen.Int[0, 5].Select(n => n > 0)
    );

    [Fact]
    public async Task Is_made_as_a_whole_or_leaves_the_timetable_as_it_was()
    {
        await using var app = await StudioApp.Empty();
        var studio = await Studio(app);

        await Gen.Select(APlace.Array[1, 6], APlace.Array[1, 4])
            .SampleAsync(
                async (there, change) =>
                {
                    await using var write = await app
                        .Services.GetRequiredService<Database>()
                        .BeginWriteAsync();
                    var sessions = new List<long>();
                    foreach (var place in there)
                        if (await Insert(write, Wanted(studio, place, null)) is { } id)
                            sessions.Add(id);
                    var before = await Timetable(write);
                    var wanted = change
                        .Select(
                            (place, at) =>
                                Wanted(studio, place, at < sessions.Count ? sessions[at] : null)
                        )
                        .ToList();

                    var made = await app.With<SessionChanges, Core.Answer<ChangesMade>>(changes =>
                        changes.ApplyAsync(write, wanted, new ChangeTerms(null, Anyway: true))
                    );

                    if (made.Refusal is { } refusal)
                    {
                        Assert.Equal("timetable-conflict", refusal.Code);
                        Assert.Equal(before, await Timetable(write));
                        return;
                    }

                    var facts = await TimetableStore.FactsAsync(write, StudioApp.Book);
                    var after = await TimetableStore.PlacedAsync(write, Monday, Monday.PlusDays(6));
                    Assert.DoesNotContain(TimetableChecks.Of(after, facts), c => c.IsHard);
                    foreach (
                        var (want, at) in wanted.Select((w, at) => (w, made.Value!.Sessions[at]))
                    )
                        if (at is { } id && want.IsHeld)
                            Assert.Contains(
                                after,
                                s =>
                                    s.Key == id
                                    && s.StartsLocal == want.StartsLocal
                                    && s.RoomId == want.RoomId
                                    && s.InstructorId == want.InstructorId
                                    && s.Seats == want.Seats
                            );
                    // Asked again, there is nothing left to do.
                    var again = await app.With<SessionChanges, Core.Answer<ChangesMade>>(changes =>
                        changes.ApplyAsync(
                            write,
                            [
                                .. wanted
                                    .Select((w, at) => w with { Id = made.Value!.Sessions[at] })
                                    .Where(w => w.Id is not null),
                            ],
                            new ChangeTerms(null, Anyway: true)
                        )
                    );
                    Assert.Equal(
                        (0, 0, 0, 0),
                        (
                            again.Value!.Added,
                            again.Value.Changed,
                            again.Value.CalledOff,
                            again.Value.Told
                        )
                    );
                },
                iter: 150,
                threads: 1
            );
    }

    private static async Task<Stock> Studio(StudioApp app)
    {
        var (quay, hill) = (
            await app.HasLocation("Quay", "Europe/Lisbon"),
            await app.HasLocation("Hill", "Europe/Madrid")
        );
        await app.Execute(
            """
            insert into travel_times (from_location_id, to_location_id, minutes)
            values (@quay, @hill, 40), (@hill, @quay, 25)
            """,
            new { quay, hill }
        );
        return new Stock(
            await app.HasClass(minutes: 60),
            [await app.HasRoom(quay, 10), await app.HasRoom(quay, 10), await app.HasRoom(hill, 10)],
            [await app.Qualified("Ada Winterbourne"), await app.Qualified("Bea Lathe")]
        );
    }

    private static SessionWanted Wanted(
        Stock studio,
        (int Day, int Quarter, int Room, int Who, int Length, int Seats, bool Held) place,
        long? id
    ) =>
        new()
        {
            Id = id,
            ClassId = studio.Class,
            RoomId = studio.Rooms[place.Room],
            InstructorId = place.Who == 2 ? null : studio.Instructors[place.Who],
            On = Monday.PlusDays(place.Day),
            StartsLocal = new LocalTime(9, 0).PlusMinutes(place.Quarter * 15),
            Minutes = place.Length * 15,
            Seats = place.Seats,
            IsHeld = place.Held,
        };

    // One by one, so that the database alone decides which of them can stand beside each other.
    private static async Task<long?> Insert(Write write, SessionWanted want)
    {
        try
        {
            return await write.InsertAsync(
                """
                insert into sessions (class_id, room_id, instructor_id, starts_at, ends_at, on_date, starts_local, seats)
                values (@ClassId, @RoomId, @InstructorId, @StartsAt, @EndsAt, @On, @StartsLocal, @Seats)
                """,
                (await Places.LoadAsync(write)).Place(want, 0, 0)
            );
        }
        catch (SqliteException refused) when (refused.SqliteErrorCode == 19)
        {
            return null;
        }
    }

    private static async Task<string> Timetable(Read read) =>
        string.Join(
            '\n',
            await read.ListAsync<string>(
                """
                select id || ' ' || room_id || ' ' || coalesce(instructor_id, '-') || ' ' || starts_at || ' ' || ends_at
                       || ' ' || seats || ' ' || status || ' ' || changes
                  from sessions order by id
                """
            )
        );

    private sealed record Stock(long Class, long[] Rooms, long[] Instructors);
}
