using NodaTime;
using Studio.Api.Data;
using Studio.Api.Studios;
using Studio.Core.Catalogue;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>Reads what a timetable is checked against.</summary>
public static class TimetableStore
{
    private const string Placed = """
        select s.id as Key, s.class_id as ClassId, c.code as ClassCode, c.name as ClassName,
               c.needs_qualification as NeedsQualification,
               s.room_id as RoomId, r.name as RoomName, r.seats as RoomSeats,
               l.id as LocationId, l.code as LocationCode, l.name as LocationName,
               s.instructor_id as InstructorId, s.on_date as "On", s.starts_local as StartsLocal,
               s.starts_at as StartsAt, s.ends_at as EndsAt, s.seats, s.seats_taken as SeatsTaken
          from sessions s
          join classes c on c.id = s.class_id
          join rooms r on r.id = s.room_id
          join locations l on l.id = r.location_id
        """;

    /// <summary>Sessions that are held, by their own dates where they are held, in the order of time; Key is the session's id.</summary>
    /// <param name="read">The transaction.</param>
    /// <param name="from">First date.</param>
    /// <param name="to">Last date.</param>
    public static async Task<List<PlacedSession>> PlacedAsync(
        Read read,
        LocalDate from,
        LocalDate to
    ) =>
        await WithPlansAsync(
            read,
            await read.ListAsync<PlacedSession>(
                $"{Placed} where s.status = 'open' and s.on_date between @from and @to order by s.starts_at, s.id",
                new { from, to }
            )
        );

    /// <summary>Everybody who teaches, and what is known of places.</summary>
    public static async Task<TimetableFacts> FactsAsync(Read read, RuleBook book)
    {
        var qualifications = (
            await read.ListAsync<QualificationRow>(
                """
                select instructor_id as InstructorId, kind, issued_on as "From", expires_on as "To"
                  from qualifications where withdrawn_at is null order by id
                """
            )
        ).ToLookup(q => q.InstructorId);
        var hours = (
            await read.ListAsync<HoursRow>(
                """
                select instructor_id as InstructorId, weekday, from_local as "From", to_local as "To", location_id as LocationId
                  from availability order by id
                """
            )
        ).ToLookup(h => h.InstructorId);
        var leave = (
            await read.ListAsync<LeaveRow>(
                """
                select instructor_id as InstructorId, from_on as "From", to_on as "To"
                  from leave where withdrawn_at is null order by id
                """
            )
        ).ToLookup(l => l.InstructorId);
        var wishes = (
            await read.ListAsync<WishRow>(
                "select instructor_id as InstructorId, kind, value, weight from teaching_wishes order by kind, value"
            )
        ).ToLookup(w => w.InstructorId);
        var instructors = await read.ListAsync<InstructorRow>(
            """
            select id, name, weekly_minutes_most as WeeklyMinutesMost, rest_minutes_least as RestMinutesLeast,
                   left_on as LeftOn
              from instructors order by id
            """
        );
        return new TimetableFacts
        {
            Teachers = instructors.ToDictionary(
                i => i.Id,
                i => new Teacher
                {
                    Id = i.Id,
                    Name = i.Name,
                    Qualifications =
                    [
                        .. qualifications[i.Id]
                            .Select(q => new HeldQualification(q.Kind, q.From, q.To)),
                    ],
                    WeeklyMinutesMost = i.WeeklyMinutesMost,
                    RestMinutesLeast = i.RestMinutesLeast,
                    Availability =
                    [
                        .. hours[i.Id]
                            .Select(h => new WeeklyHours(
                                (IsoDayOfWeek)h.Weekday,
                                h.From,
                                h.To,
                                h.LocationId
                            )),
                    ],
                    Leave = [.. leave[i.Id].Select(l => new DaysAway(l.From, l.To))],
                    Wishes =
                    [
                        .. wishes[i.Id].Select(w => new TeachingWish(w.Kind, w.Value, w.Weight)),
                    ],
                    LeftOn = i.LeftOn,
                }
            ),
            Travel = (
                await read.ListAsync<TravelRow>(
                    """
                    select from_location_id as FromId, to_location_id as ToId, minutes from travel_times
                    """
                )
            ).ToDictionary(t => (t.FromId, t.ToId), t => t.Minutes),
            Shut =
            [
                .. (
                    await read.ListAsync<ShutRow>(
                        """
                        select location_id as LocationId, from_on as "From", to_on as "To", name
                          from closures order by from_on, id
                        """
                    )
                ).Select(c => new ShutDays(c.LocationId, c.From, c.To, c.Name)),
            ],
            RestMinutesLeast = (await PolicyStore.InForceAsync(read, book)).RestHoursLeast * 60,
        };
    }

    // A session is as long as its plan at least; one of its own goes before the class's.
    private static async Task<List<PlacedSession>> WithPlansAsync(
        Read read,
        List<PlacedSession> sessions
    )
    {
        var plans = await Movements.PlanStore.AllAsync(read);
        return
        [
            .. sessions.Select(s =>
                s with
                {
                    PlanMinutes =
                        plans.Of(new DatedClass(s.Key, s.ClassId, s.On, s.StartsAt))?.Minutes ?? 0,
                }
            ),
        ];
    }

    private sealed record InstructorRow
    {
        public long Id { get; init; }
        public string Name { get; init; } = "";
        public int? WeeklyMinutesMost { get; init; }
        public int? RestMinutesLeast { get; init; }
        public LocalDate? LeftOn { get; init; }
    }

    private sealed record QualificationRow
    {
        public long InstructorId { get; init; }
        public string Kind { get; init; } = "";
        public LocalDate From { get; init; }
        public LocalDate To { get; init; }
    }

    private sealed record HoursRow
    {
        public long InstructorId { get; init; }
        public int Weekday { get; init; }
        public LocalTime From { get; init; }
        public LocalTime To { get; init; }
        public long? LocationId { get; init; }
    }

    private sealed record LeaveRow
    {
        public long InstructorId { get; init; }
        public LocalDate From { get; init; }
        public LocalDate To { get; init; }
    }

    private sealed record WishRow
    {
        public long InstructorId { get; init; }
        public WishKind Kind { get; init; }
        public string Value { get; init; } = "";
        public int Weight { get; init; }
    }

    private sealed record TravelRow
    {
        public long FromId { get; init; }
        public long ToId { get; init; }
        public int Minutes { get; init; }
    }

    private sealed record ShutRow
    {
        public long LocationId { get; init; }
        public LocalDate From { get; init; }
        public LocalDate To { get; init; }
        public string Name { get; init; } = "";
    }
}
