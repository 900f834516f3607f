using NodaTime;
using Studio.Api.Data;
using Studio.Core.Timetable;

namespace Studio.Api.Staff;

/// <summary>An instructor as she stands in the table.</summary>
public sealed record InstructorRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Name.</summary>
    public string Name { get; init; } = "";

    /// <summary>What she likes to be called.</summary>
    public string Called { get; init; } = "";

    /// <summary>E-mail address.</summary>
    public string Email { get; init; } = "";

    /// <summary>Phone.</summary>
    public string Phone { get; init; } = "";

    /// <summary>She can sign in.</summary>
    public bool HasAccount { get; init; }

    /// <summary>Most minutes in a week.</summary>
    public int? WeeklyMinutesMost { get; init; }

    /// <summary>Least minutes of rest.</summary>
    public int? RestMinutesLeast { get; init; }

    /// <summary>The first day on which she no longer works here.</summary>
    public LocalDate? LeftOn { get; init; }
}

/// <summary>A qualification as it stands in the table.</summary>
public sealed record QualificationRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Whose.</summary>
    public long InstructorId { get; init; }

    /// <summary>Its kind.</summary>
    public string Kind { get; init; } = "";

    /// <summary>The day it was issued.</summary>
    public LocalDate IssuedOn { get; init; }

    /// <summary>Its last day.</summary>
    public LocalDate ExpiresOn { get; init; }

    /// <summary>The proof's file.</summary>
    public string? ProofName { get; init; }

    /// <summary>Its media type.</summary>
    public string? ProofMediaType { get; init; }

    /// <summary>It counts no longer.</summary>
    public Instant? WithdrawnAt { get; init; }

    /// <summary>As rules know it.</summary>
    public HeldQualification Held => new(Kind, IssuedOn, ExpiresOn);
}

/// <summary>A session of an instructor's.</summary>
public sealed record StaffSessionRow
{
    /// <summary>The session.</summary>
    public long Id { get; init; }

    /// <summary>Who teaches it.</summary>
    public long InstructorId { get; init; }

    /// <summary>Its class.</summary>
    public long ClassId { get; init; }

    /// <summary>Name of its class.</summary>
    public string ClassName { get; init; } = "";

    /// <summary>What its class needs.</summary>
    public string NeedsQualification { get; init; } = "";

    /// <summary>Where.</summary>
    public string LocationName { get; init; } = "";

    /// <summary>Its own date.</summary>
    public LocalDate OnDate { get; init; }

    /// <summary>Start by the location's clock.</summary>
    public LocalTime StartsLocal { get; init; }

    /// <summary>Start.</summary>
    public Instant StartsAt { get; init; }

    /// <summary>End.</summary>
    public Instant EndsAt { get; init; }

    /// <summary>Length in minutes.</summary>
    public int Minutes => (int)(EndsAt - StartsAt).TotalMinutes;

    /// <summary>As it is named to somebody.</summary>
    public HerSession Named =>
        new()
        {
            SessionId = Id,
            On = OnDate,
            StartsLocal = StartsLocal.ToString("HH:mm", null),
            ClassName = ClassName,
            LocationName = LocationName,
        };
}

/// <summary>Leave as it stands in the table.</summary>
public sealed record LeaveRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Whose.</summary>
    public long InstructorId { get; init; }

    /// <summary>First day.</summary>
    public LocalDate From { get; init; }

    /// <summary>Last day.</summary>
    public LocalDate To { get; init; }
}

/// <summary>Instructors, what they hold and when they work.</summary>
public static class StaffStore
{
    /// <summary>Instructors by name; one when her key is given.</summary>
    public static Task<List<InstructorRow>> ListAsync(Read read, long? id = null) =>
        read.ListAsync<InstructorRow>(
            """
            select id, name, called, email, phone, account_id is not null as HasAccount,
                   weekly_minutes_most as WeeklyMinutesMost, rest_minutes_least as RestMinutesLeast, left_on as LeftOn
              from instructors where @id is null or id = @id order by name, id
            """,
            new { id }
        );

    /// <summary>One instructor.</summary>
    public static async Task<InstructorRow?> FindAsync(Read read, long id) =>
        (await ListAsync(read, id)).SingleOrDefault();

    /// <summary>Qualifications, what ends first comes first; those withdrawn last.</summary>
    public static Task<List<QualificationRow>> QualificationsAsync(
        Read read,
        long? instructorId = null
    ) =>
        read.ListAsync<QualificationRow>(
            """
            select id, instructor_id as InstructorId, kind, issued_on as IssuedOn, expires_on as ExpiresOn,
                   proof_name as ProofName, proof_media_type as ProofMediaType, withdrawn_at as WithdrawnAt
              from qualifications where @instructorId is null or instructor_id = @instructorId
             order by withdrawn_at is not null, expires_on, id
            """,
            new { instructorId }
        );

    /// <summary>Sessions that are held, by their own dates, of everybody or of one, in the order of time.</summary>
    public static Task<List<StaffSessionRow>> SessionsAsync(
        Read read,
        LocalDate from,
        LocalDate to,
        long? instructorId = null
    ) =>
        read.ListAsync<StaffSessionRow>(
            """
            select s.id, s.instructor_id as InstructorId, s.class_id as ClassId, c.name as ClassName,
                   c.needs_qualification as NeedsQualification, l.name as LocationName, s.on_date as OnDate,
                   s.starts_local as StartsLocal, s.starts_at as StartsAt, s.ends_at as EndsAt
              from sessions s
              join classes c on c.id = s.class_id
              join rooms r on r.id = s.room_id
              join locations l on l.id = r.location_id
             where s.status = 'open' and s.instructor_id is not null and s.on_date between @from and @to
               and (@instructorId is null or s.instructor_id = @instructorId)
             order by s.starts_at, s.id
            """,
            new
            {
                from,
                to,
                instructorId,
            }
        );

    /// <summary>Those to come.</summary>
    public static async Task<List<StaffSessionRow>> AheadAsync(
        Read read,
        Instant now,
        long? instructorId = null,
        LocalDate? from = null,
        LocalDate? to = null
    ) =>
        [
            .. (
                await SessionsAsync(
                    read,
                    from ?? new LocalDate(1900, 1, 1),
                    to ?? new LocalDate(2199, 12, 31),
                    instructorId
                )
            ).Where(s => s.StartsAt > now),
        ];

    /// <summary>Leave that was not withdrawn, the latest first.</summary>
    public static Task<List<LeaveRow>> LeaveAsync(
        Read read,
        LocalDate endsFrom,
        long? instructorId = null
    ) =>
        read.ListAsync<LeaveRow>(
            """
            select id, instructor_id as InstructorId, from_on as "From", to_on as "To"
              from leave
             where withdrawn_at is null and to_on >= @endsFrom
               and (@instructorId is null or instructor_id = @instructorId)
             order by from_on desc, id
            """,
            new { endsFrom, instructorId }
        );

    /// <summary>Whether another has this e-mail address.</summary>
    public static Task<bool> EmailTakenAsync(Read read, string email, long? butId) =>
        read.ValueAsync<bool>(
            """
            select exists (select 1 from instructors where lower(email) = lower(@email) and id is not @butId)
            """,
            new { email, butId }
        );

    /// <summary>Adds an instructor.</summary>
    public static Task<long> AddAsync(Write write, InstructorRow row) =>
        write.InsertAsync(
            """
            insert into instructors (name, called, email, phone, weekly_minutes_most, rest_minutes_least, left_on)
            values (@Name, @Called, @Email, @Phone, @WeeklyMinutesMost, @RestMinutesLeast, @LeftOn)
            """,
            row
        );

    /// <summary>Changes an instructor.</summary>
    public static Task ChangeAsync(Write write, InstructorRow row) =>
        write.ExecuteAsync(
            """
            update instructors
               set name = @Name, called = @Called, email = @Email, phone = @Phone,
                   weekly_minutes_most = @WeeklyMinutesMost, rest_minutes_least = @RestMinutesLeast, left_on = @LeftOn
             where id = @Id
            """,
            row
        );

    /// <summary>Files a qualification; null when one of this kind and day of issue counts already.</summary>
    public static Task<long?> FileAsync(
        Write write,
        long instructorId,
        string kind,
        LocalDate issuedOn,
        LocalDate expiresOn
    ) =>
        write.FindAsync<long?>(
            """
            insert into qualifications (instructor_id, kind, issued_on, expires_on)
            values (@instructorId, @kind, @issuedOn, @expiresOn)
            on conflict do nothing
            returning id
            """,
            new
            {
                instructorId,
                kind,
                issuedOn,
                expiresOn,
            }
        );

    /// <summary>From now on it counts nowhere.</summary>
    public static Task WithdrawAsync(Write write, long qualificationId, Instant at, long by) =>
        write.ExecuteAsync(
            "update qualifications set withdrawn_at = @at, withdrawn_by = @by where id = @qualificationId",
            new
            {
                qualificationId,
                at,
                by,
            }
        );

    /// <summary>Notes the file of its proof.</summary>
    public static Task ProveAsync(
        Write write,
        long qualificationId,
        string name,
        string mediaType
    ) =>
        write.ExecuteAsync(
            """
            update qualifications set proof_name = @name, proof_media_type = @mediaType where id = @qualificationId
            """,
            new
            {
                qualificationId,
                name,
                mediaType,
            }
        );

    /// <summary>The hours in which she can be asked for.</summary>
    public static Task<List<AvailableHours>> AvailabilityAsync(Read read, long instructorId) =>
        read.ListAsync<AvailableHours>(
            """
            select weekday, from_local as "From", to_local as "To", location_id as LocationId
              from availability where instructor_id = @instructorId order by weekday, from_local, location_id
            """,
            new { instructorId }
        );

    /// <summary>Puts these hours in the place of those before.</summary>
    public static async Task SetAvailabilityAsync(
        Write write,
        long instructorId,
        IEnumerable<AvailableHours> hours
    )
    {
        await write.ExecuteAsync(
            "delete from availability where instructor_id = @instructorId",
            new { instructorId }
        );
        foreach (var one in hours)
            await write.ExecuteAsync(
                """
                insert into availability (instructor_id, weekday, from_local, to_local, location_id)
                values (@instructorId, @Weekday, @From, @To, @LocationId)
                """,
                new
                {
                    instructorId,
                    one.Weekday,
                    one.From,
                    one.To,
                    one.LocationId,
                }
            );
    }

    /// <summary>Her wishes.</summary>
    public static async Task<List<TeachingWishMessage>> WishesAsync(Read read, long instructorId) =>
        [
            .. (
                await read.ListAsync<WishRow>(
                    """
                    select kind, value, weight from teaching_wishes where instructor_id = @instructorId order by kind, value
                    """,
                    new { instructorId }
                )
            ).Select(w => new TeachingWishMessage
            {
                Kind = w.Kind,
                Value = w.Value,
                Weight = w.Weight,
            }),
        ];

    /// <summary>Puts these wishes in the place of those before; what weighs nothing is no wish.</summary>
    public static async Task SetWishesAsync(
        Write write,
        long instructorId,
        IEnumerable<TeachingWishMessage> wishes
    )
    {
        await write.ExecuteAsync(
            "delete from teaching_wishes where instructor_id = @instructorId",
            new { instructorId }
        );
        foreach (var wish in wishes.Where(w => w.Weight != 0))
            await write.ExecuteAsync(
                """
                insert into teaching_wishes (instructor_id, kind, value, weight)
                values (@instructorId, @kind, @Value, @Weight)
                """,
                new
                {
                    instructorId,
                    kind = Wire(wish.Kind),
                    wish.Value,
                    wish.Weight,
                }
            );
    }

    /// <summary>Enters days away.</summary>
    public static Task<long> AddLeaveAsync(
        Write write,
        long instructorId,
        LocalDate from,
        LocalDate to,
        Instant at,
        long? by
    ) =>
        write.InsertAsync(
            """
            insert into leave (instructor_id, from_on, to_on, entered_at, entered_by)
            values (@instructorId, @from, @to, @at, @by)
            """,
            new
            {
                instructorId,
                from,
                to,
                at,
                by,
            }
        );

    /// <summary>Withdraws days away; how many rows that was.</summary>
    public static Task<int> WithdrawLeaveAsync(
        Write write,
        long instructorId,
        long leaveId,
        Instant at
    ) =>
        write.ExecuteAsync(
            """
            update leave set withdrawn_at = @at
             where id = @leaveId and instructor_id = @instructorId and withdrawn_at is null
            """,
            new
            {
                instructorId,
                leaveId,
                at,
            }
        );

    /// <summary>A word of the tables and of the wire.</summary>
    public static string Wire<T>(T value)
        where T : struct, Enum =>
        System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(value.ToString());

    private sealed record WishRow
    {
        public WishKind Kind { get; init; }
        public string Value { get; init; } = "";
        public int Weight { get; init; }
    }
}
