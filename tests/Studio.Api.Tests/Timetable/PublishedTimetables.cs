using CsCheck;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Api.Timetable.Drafts;
using Studio.Core.Catalogue;
using Studio.Core.Timetable;

namespace Studio.Api.Tests.Timetable;

/// <summary>
/// Arbitrary weeks against the real schema. Held against the slow way (every minute, who and what is where) and against
/// the database's own triggers, which know nothing of the checker.
/// </summary>
public sealed class PublishedTimetables : IAsyncLifetime
{
    private static readonly LocalDate Monday = new(2026, 3, 9);

    /// <summary>What no timetable may ever hold, whoever writes it.</summary>
    private static readonly ConflictKind[] Impossible =
    [
        ConflictKind.RoomTaken,
        ConflictKind.RoomTooSmall,
        ConflictKind.InstructorTaken,
        ConflictKind.NoTimeToTravel,
    ];

    private static readonly Gen<Wish> AWish = Gen.Select(
        Gen.Int[0, 1],
        Gen.Int[0, 15],
        Gen.Int[1, 5],
        Gen.Int[0, 2],
        Gen.Int[0, 2],
        Gen.Int[0, 9],
        (day, quarter, quarters, who, room, seats) =>
            new Wish(day, quarter, quarters * 15, who, room, seats == 0 ? 10 : 5)
    );

    private StudioApp _app = null!;
    private long _class;
    private long[] _rooms = [];
    private long[] _people = [];

    public async ValueTask InitializeAsync()
    {
        _app = await StudioApp.Empty();
        _class = await _app.HasClass();
        var (quay, hill) = (
            await _app.HasLocation("Quay house"),
            await _app.HasLocation("Hill house", "Europe/Madrid")
        );
        // The second is too small for ten.
        _rooms =
        [
            await _app.HasRoom(quay, 10),
            await _app.HasRoom(quay, 6),
            await _app.HasRoom(hill, 10),
        ];
        _people = [await _app.Qualified("Ada Winterbourne"), await _app.Qualified("Bea Lathe")];
        await _app.Execute(
            """
            insert into travel_times (from_location_id, to_location_id, minutes)
            values (@quay, @hill, 45), (@hill, @quay, 30)
            """,
            new { quay, hill }
        );
    }

    public async ValueTask DisposeAsync() => await _app.DisposeAsync();

    [Fact]
    public async Task The_database_refuses_exactly_the_weeks_in_which_the_checker_finds_what_cannot_be()
    {
        await using var scope = _app.Services.CreateAsyncScope();
        Places places;
        TimetableFacts facts;
        await using (var read = await _app.Services.GetRequiredService<Database>().ReadAsync())
        {
            places = await Places.LoadAsync(read);
            facts = await TimetableStore.FactsAsync(
                read,
                scope.ServiceProvider.GetRequiredService<RuleBook>()
            );
        }

        await AWish
            .Array[1, 5]
            .SampleAsync(
                async wishes =>
                {
                    var placed = wishes
                        .Select((w, at) => places.Place(Wanted(w), -1 - at, 0))
                        .ToList();
                    var impossible = TimetableChecks
                        .Of(placed, facts)
                        .Any(c => Impossible.Contains(c.Kind));
                    Assert.Equal(impossible, await IsRefusedAsync(placed));
                },
                iter: 600,
                threads: 1
            );
    }

    [Fact]
    public async Task No_published_timetable_has_a_room_or_somebody_twice_and_twice_is_the_same_as_once() =>
        await Gen.Select(AWish.Array[1, 5], AWish.Array[5])
            .SampleAsync(
                async (first, then) =>
                {
                    await using var scope = _app.Services.CreateAsyncScope();
                    var drafts = scope.ServiceProvider.GetRequiredService<DraftChanges>();
                    // Never committed: the next case begins with an empty timetable.
                    await using var write = await _app
                        .Services.GetRequiredService<Database>()
                        .BeginWriteAsync();

                    var draft = await DraftAsync(write);
                    foreach (var wish in first)
                        await DraftStore.PutAsync(write, draft, Row(wish, new DraftSession()));
                    await PublishAsync(write, drafts, draft);

                    // Everything that is there now is laid out anew, swaps of rooms and people included.
                    draft = await DraftAsync(write);
                    var rows = await DraftStore.RowsAsync(write, draft);
                    for (var at = 0; at < rows.Count; at++)
                        await DraftStore.PutAsync(write, draft, Row(then[at], rows[at]));
                    await PublishAsync(write, drafts, draft);
                },
                iter: 150,
                threads: 1
            );

    private static Task<long> DraftAsync(Write write) =>
        DraftStore.MakeAsync(
            write,
            "Two days",
            Monday,
            Monday.PlusDays(6),
            DraftOrigin.Hand,
            null,
            StudioApp.Start
        );

    private static async Task PublishAsync(Write write, DraftChanges drafts, long draft)
    {
        var shown = (await drafts.ShowAsync(write, draft))!;
        var before = await StandingAsync(write);
        var asked = new PublishRequest { Version = shown.Draft.Version, Anyway = true };
        var made = await drafts.PublishAsync(write, draft, asked, null);

        Assert.Equal(shown.Conflicts.Any(c => c.IsHard), made.Refusal is not null);
        var after = await StandingAsync(write);
        if (made.Refusal is { } refusal)
        {
            Assert.Equal("timetable-conflict", refusal.Code);
            Assert.Equal(before, after);
            return;
        }

        NothingTwice(after.Select(s => (s.RoomId, s)));
        NothingTwice(after.Where(s => s.Who is not null).Select(s => (s.Who!.Value, s)));
        var again = await drafts.PublishAsync(write, draft, asked, null);
        Assert.Null(again.Refusal);
        Assert.Equal(after, await StandingAsync(write));
    }

    // The slow way: each minute of each session is taken once.
    private static void NothingTwice(IEnumerable<(long Of, Standing Session)> sessions)
    {
        var taken = new HashSet<(long, Instant)>();
        foreach (var (of, session) in sessions)
            for (var at = session.Starts; at < session.Ends; at += Duration.FromMinutes(1))
                Assert.True(taken.Add((of, at)), $"{of} at {at}");
    }

    private static async Task<List<Standing>> StandingAsync(Write write) =>
        await write.ListAsync<Standing>(
            """
            select id, room_id as RoomId, instructor_id as Who, starts_at as Starts, ends_at as Ends, changes
              from sessions where status = 'open' order by id
            """
        );

    private async Task<bool> IsRefusedAsync(IEnumerable<PlacedSession> placed)
    {
        await using var write = await _app
            .Services.GetRequiredService<Database>()
            .BeginWriteAsync();
        try
        {
            foreach (var session in placed)
                await write.InsertAsync(
                    """
                    insert into sessions (class_id, room_id, instructor_id, starts_at, ends_at, on_date, starts_local, seats)
                    values (@ClassId, @RoomId, @InstructorId, @StartsAt, @EndsAt, @On, @StartsLocal, @Seats)
                    """,
                    session
                );
            return false;
        }
        catch (SqliteException refused)
        {
            Assert.Matches(
                "room-taken|room-too-small|instructor-taken|no-time-to-travel",
                refused.Message
            );
            return true;
        }
    }

    private SessionWanted Wanted(Wish wish)
    {
        var row = Row(wish, new DraftSession());
        return new SessionWanted
        {
            ClassId = row.ClassId,
            RoomId = row.RoomId,
            InstructorId = row.InstructorId,
            On = row.On,
            StartsLocal = row.StartsLocal,
            Minutes = row.Minutes,
            Seats = row.Seats,
        };
    }

    private DraftSession Row(Wish wish, DraftSession old) =>
        old with
        {
            ClassId = _class,
            RoomId = _rooms[wish.Room],
            InstructorId = wish.Who < _people.Length ? _people[wish.Who] : null,
            On = Monday.PlusDays(wish.Day),
            StartsLocal = new LocalTime(9, 0).PlusMinutes(wish.Quarter * 15),
            Minutes = wish.Minutes,
            Seats = wish.Seats,
        };

    private sealed record Wish(int Day, int Quarter, int Minutes, int Who, int Room, int Seats);

    private sealed record Standing
    {
        public long Id { get; init; }
        public long RoomId { get; init; }
        public long? Who { get; init; }
        public Instant Starts { get; init; }
        public Instant Ends { get; init; }
        public long Changes { get; init; }
    }
}
