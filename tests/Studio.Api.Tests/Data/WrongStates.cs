using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;

namespace Studio.Api.Tests.Data;

/// <summary>
/// What must never be true is refused by the database itself, whoever writes; each row names what refuses it. One small
/// studio for all of them: nothing here is ever committed.
/// </summary>
public class WrongStates(WrongStates.SmallStudio small) : IClassFixture<WrongStates.SmallStudio>
{
    private const string Moment = "'2026-03-02T09:00:00.000Z'";

    [Theory]
    [InlineData(
        "a seat too many",
        "insert into bookings (session_id, client_id, status, made_at) values (1, 2, 'booked', @at)",
        "seats_taken between 0 and seats"
    )]
    [InlineData(
        "the last seat given from the waitlist twice",
        "update bookings set status = 'booked' where session_id = 1 and status = 'waiting'",
        "seats_taken between 0 and seats"
    )]
    [InlineData(
        "fewer seats than are taken",
        "update sessions set seats_taken = -1 where id = 2",
        "seats_taken between 0 and seats"
    )]
    [InlineData(
        "two rooms at once",
        "insert into bookings (session_id, client_id, status, made_at) values (2, 1, 'booked', @at)",
        "overlap"
    )]
    [InlineData(
        "the same session twice",
        "insert into bookings (session_id, client_id, status, made_at) values (1, 1, 'waiting', @at)",
        "bookings.session_id, bookings.client_id"
    )]
    [InlineData(
        "a booking that changes session",
        "update bookings set session_id = 3 where id = 1",
        "bookings-never-change-session-or-client"
    )]
    [InlineData(
        "a booking that changes client",
        "update bookings set client_id = 2 where id = 1",
        "bookings-never-change-session-or-client"
    )]
    [InlineData(
        "an ended booking without its moment",
        "update bookings set status = 'cancelled' where id = 1",
        "(ended_at is null) = (status in ('booked', 'waiting'))"
    )]
    [InlineData(
        "checked in on the waitlist",
        "update bookings set checked_in_at = @at where status = 'waiting'",
        "checked_in_at is null or status = 'booked'"
    )]
    [InlineData(
        "a booking of a session that is not there",
        "insert into bookings (session_id, client_id, status, made_at) values (99, 2, 'waiting', @at)",
        "FOREIGN KEY"
    )]
    [InlineData(
        "a status there is not",
        "update bookings set status = 'lost' where id = 1",
        "status in"
    )]
    [InlineData(
        "a second current pregnancy",
        "insert into pregnancies (client_id, due_date) values (1, '2026-09-01')",
        "pregnancies.client_id"
    )]
    [InlineData(
        "a pregnancy without any date",
        "insert into pregnancies (client_id, is_current) values (1, 0)",
        "due_date is not null or born_on is not null"
    )]
    [InlineData(
        "born and lost",
        "update pregnancies set born_on = '2026-03-01', birth_mode = 'unknown', ended_on = '2026-03-01'",
        "born_on is null or ended_on is null"
    )]
    [InlineData(
        "a birth without its mode",
        "update pregnancies set born_on = '2026-03-01'",
        "(birth_mode is null) = (born_on is null)"
    )]
    [InlineData(
        "a stage after a loss",
        "update pregnancies set stage = 'postnatal', ended_on = '2026-03-01'",
        "ended_on is null or (stage is null and gestational_day is null)"
    )]
    [InlineData(
        "a stage there is not",
        "update pregnancies set stage = 'fourth-trimester'",
        "FOREIGN KEY"
    )]
    [InlineData("nine babies", "update pregnancies set babies = 9", "babies between 1 and 8")]
    [InlineData(
        "the 30th of February",
        "update pregnancies set due_date = '2026-02-30'",
        "due_date is date(due_date)"
    )]
    [InlineData(
        "a date with a time",
        "update pregnancies set due_date = '2026-02-20T00:00'",
        "due_date is date(due_date)"
    )]
    [InlineData(
        "a date in another order",
        "update letters set expires_on = '01.04.2026'",
        "expires_on is date(expires_on)"
    )]
    [InlineData(
        "a due date rewritten",
        "update due_dates set due_date = '2026-09-02'",
        "due-dates-are-never-rewritten"
    )]
    [InlineData(
        "a letter that ends before it begins",
        "update letters set expires_on = '2020-01-01'",
        "expires_on >= issued_on"
    )]
    [InlineData(
        "a factor that ends before it begins",
        "insert into client_factors (client_id, code, from_on, to_on, entered_at) values (1, 'back-pain', '2026-03-02', '2026-03-01', @at)",
        "to_on >= from_on"
    )]
    [InlineData(
        "two holds at once",
        "insert into holds (client_id, from_on, entered_at) values (1, '2026-03-02', @at), (1, '2026-03-02', @at)",
        "holds.client_id"
    )]
    [InlineData(
        "a letter that counts without dates",
        "update letters set issued_on = null",
        "CHECK constraint"
    )]
    [InlineData(
        "a letter somebody has read that still waits",
        "update letters set state = 'waiting'",
        "CHECK constraint"
    )]
    [InlineData(
        "a scan without a measure",
        "insert into dating_evidence (pregnancy_id, kind, day, entered_at) values (1, 'scan', '2026-01-01', @at)",
        "(measured_days is not null) = (kind = 'scan')"
    )]
    [InlineData(
        "two sessions in a room at once",
        "insert into sessions (class_id, room_id, starts_at, ends_at, on_date, starts_local, seats) select class_id, room_id, starts_at, ends_at, on_date, starts_local, seats from sessions where id = 1",
        "room-taken"
    )]
    [InlineData(
        "an instructor in two rooms at once",
        "update sessions set instructor_id = 1 where id in (1, 2)",
        "instructor-taken"
    )]
    [InlineData(
        "more seats than the room has",
        "update sessions set seats = 200 where id = 1",
        "room-too-small"
    )]
    [InlineData(
        "a session that ends before it begins",
        "update sessions set ends_at = starts_at where id = 1",
        "ends_at > starts_at"
    )]
    [InlineData(
        "25 o'clock",
        "update sessions set starts_local = '25:00' where id = 1",
        "starts_local is strftime('%H:%M', starts_local)"
    )]
    [InlineData(
        "two open suggestions for one client",
        "insert into moves (client_id, to_stage, crosses_on, status, made_at) values (1, 'postnatal', '2026-03-02', 'open', @at), (1, 'postnatal', '2026-03-03', 'open', @at)",
        "moves.client_id"
    )]
    [InlineData(
        "a decided suggestion without its moment",
        "insert into moves (client_id, to_stage, crosses_on, status, made_at) values (1, 'postnatal', '2026-03-02', 'accepted', @at)",
        "(decided_at is null) = (status = 'open')"
    )]
    [InlineData(
        "the same flag twice",
        "insert into flags (subject, kind, severity, for_desk, since, opened_at) values ('x', 'hold', 'info', 'x', '2026-03-02', @at), ('x', 'hold', 'info', 'x', '2026-03-02', @at)",
        "flags.subject"
    )]
    [InlineData(
        "a loudness there is not",
        "insert into flags (subject, kind, severity, for_desk, since, opened_at) values ('x', 'hold', 'deafening', 'x', '2026-03-02', @at)",
        "severity in"
    )]
    [InlineData(
        "a crossing noted twice",
        "insert into stage_changes (pregnancy_id, stage, on_date) values (1, 'postnatal', '2026-03-02'), (1, 'postnatal', '2026-03-03')",
        "stage_changes.pregnancy_id, stage_changes.stage"
    )]
    [InlineData(
        "a job there is not",
        "insert into job_runs (job, zone, for_date, ran_at, by_hand, changed, result) values ('tidy', 'UTC', '2026-03-02', @at, 0, 0, '')",
        "job in"
    )]
    [InlineData(
        "a change of policy rewritten",
        "update policy_changes set why = 'Another reason'",
        "policy-changes-are-never-rewritten"
    )]
    [InlineData(
        "a change of policy struck out",
        "delete from policy_changes",
        "policy-changes-are-never-rewritten"
    )]
    [InlineData(
        "a change of policy that changes nothing",
        "insert into policy_changes (code, from_value, to_value, by_default, why, made_at) values ('lifting', 'light', 'light', 1, '', @at)",
        "to_value <> from_value"
    )]
    [InlineData(
        "rules rewritten",
        "update catalogue_files set text = ''",
        "catalogue-versions-are-never-rewritten"
    )]
    [InlineData(
        "rules struck out",
        "delete from catalogue_files",
        "catalogue-versions-are-never-rewritten"
    )]
    [InlineData(
        "a version of the rules rewritten",
        "update catalogue_versions set why = ''",
        "catalogue-versions-are-never-rewritten"
    )]
    [InlineData(
        "a version of the rules struck out",
        "delete from catalogue_versions",
        "catalogue-versions-are-never-rewritten"
    )]
    [InlineData(
        "a version that goes back to a later one",
        "insert into catalogue_versions (made_at, why, back_to) values (@at, '', 99)",
        "back_to < id"
    )]
    [InlineData(
        "text where a number belongs",
        "update rooms set seats = 'many'",
        "cannot store TEXT value in INTEGER column"
    )]
    [InlineData(
        "a note put down as written later",
        "update class_note_versions set written_at = '2026-03-02T09:00:00.000Z'",
        "class-notes-are-never-rewritten"
    )]
    [InlineData(
        "a note's words removed",
        "delete from class_note_versions",
        "class-notes-are-never-rewritten"
    )]
    [InlineData(
        "a note given to another person",
        "update class_notes set client_id = 2",
        "class-notes-never-change-hands"
    )]
    [InlineData(
        "two notes of one writer about one person in one class",
        "insert into class_notes (session_id, client_id, written_by) select session_id, client_id, written_by from class_notes",
        "class_notes.session_id, class_notes.client_id, class_notes.written_by"
    )]
    [InlineData(
        "a note of nothing but spaces",
        "insert into class_note_versions (note_id, version, text, written_at) values (1, 2, '  ', @at)",
        "length(trim(text)) > 0"
    )]
    [InlineData("a due date taken away", "delete from due_dates", "due-dates-are-never-rewritten")]
    [InlineData(
        "a note taken away",
        "delete from class_note_versions; delete from class_notes",
        "class-notes-are-never-rewritten"
    )]
    [InlineData(
        "due dates taken away while somebody else is erased",
        "insert into erasing (id, client_id) values (1, 2); delete from due_dates where pregnancy_id in (select id from pregnancies where client_id = 1)",
        "due-dates-are-never-rewritten"
    )]
    [InlineData(
        "two erased at once",
        "insert into erasing (id, client_id) values (2, 2)",
        "id = 1"
    )]
    [InlineData(
        "an erasure given to another client",
        "insert into erasing (id, client_id) values (1, 2); update erasing set client_id = 1",
        "erasing-stays-with-one"
    )]
    [InlineData(
        "an erasure that ends with everything still there",
        "insert into erasing (id, client_id) values (1, 2); delete from erasing",
        "erasure-is-half-done"
    )]
    [InlineData(
        "a client called erased outside of an erasure",
        "update clients set erased_at = @at where id = 1",
        "erasing-is-closed"
    )]
    [InlineData(
        "a taken seat taken away by an erasure",
        "insert into erasing (id, client_id) values (1, 1); delete from bookings where client_id = 1",
        "seats-taken-stay"
    )]
    [InlineData(
        "something filed about somebody erased",
        "insert into erasing (id, client_id) values (1, 2); update clients set erased_at = @at where id = 2; insert into holds (client_id, from_on, entered_at) values (2, '2026-03-02', @at)",
        "client-is-erased"
    )]
    [InlineData(
        "something set apart outside of an erasure",
        "insert into erasures (client_id, asked_at, asked_by) values (1, @at, 1); insert into set_apart (erasure_id, part, last_day, record) values (1, 'health', '2036-03-02', 'x')",
        "erasing-is-closed"
    )]
    [InlineData(
        "a wish without anybody who asked",
        "insert into erasures (client_id, asked_at) values (1, @at)",
        "(asked_at is null) = (asked_by is null)"
    )]
    [InlineData(
        "two wishes of one client",
        "insert into erasures (client_id, asked_at, asked_by) values (1, @at, 1), (1, @at, 1)",
        "erasures.client_id"
    )]
    [InlineData(
        "a wish taken back and then carried out",
        "insert into erasures (client_id, asked_at, asked_by, withdrawn_at) values (1, @at, 1, @at); update erasures set done_at = @at",
        "erasures-are-never-rewritten"
    )]
    [InlineData(
        "a wish struck out",
        "insert into erasures (client_id, asked_at, asked_by) values (1, @at, 1); delete from erasures",
        "erasures-are-never-rewritten"
    )]
    [InlineData("two studios", "insert into studio (id, name) values (2, 'Another')", "id = 1")]
    [InlineData(
        "one e-mail address in two spellings of case",
        "update clients set email = (select upper(email) from clients where id = 1) where id = 2",
        "clients_by_email"
    )]
    public async Task Are_refused(string what, string sql, string by)
    {
        await using var write = await small
            .App.Services.GetRequiredService<Database>()
            .BeginWriteAsync();
        var refused = await Assert.ThrowsAsync<SqliteException>(() =>
            write.ExecuteAsync(sql.Replace("@at", Moment, StringComparison.Ordinal))
        );
        Assert.True(
            refused.Message.Contains(by, StringComparison.Ordinal),
            $"{what} was refused by: {refused.Message}"
        );
    }

    /// <summary>A full session with somebody waiting, one at the same time and one later.</summary>
    public sealed class SmallStudio : IAsyncLifetime
    {
        public StudioApp App { get; private set; } = null!;

        public async ValueTask InitializeAsync()
        {
            App = await StudioApp.Empty();
            await App.HasInstructor();
            var (first, second) = (await App.HasClient(), await App.HasClient());
            var room = await App.HasRoom(seats: 10);
            var day = App.Today.PlusDays(3);
            var full = await App.HasSession(day, "18:00", seats: 1, room: room);
            await App.HasSession(day, "18:30");
            await App.HasSession(day, "20:00");
            await App.HasBooking(full, first);
            await App.HasBooking(full, await App.HasClient(), "waiting");
            await App.HasAccount([Core.Accounts.Role.Owner]);
            await App.HasNote(full, first, await App.Value<long>("select min(id) from accounts"));
            await App.Execute(
                """
                insert into policy_changes (code, from_value, to_value, by_default, why, made_at)
                values ('lifting', 'light', 'by-weight', 0, '', '2026-03-02T09:00:00.000Z')
                """
            );
            await App.Execute(
                "insert into catalogue_versions (made_at, why) values ('2026-03-02T09:00:00.000Z', '')"
            );
            await App.Execute(
                "insert into catalogue_files (version_id, name, text) values (1, 'stages.csv', '')"
            );
            Assert.Equal((1, 2, 1), (first, second, full));
        }

        public ValueTask DisposeAsync() => App.DisposeAsync();
    }
}
