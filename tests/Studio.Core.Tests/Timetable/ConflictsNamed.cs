using Studio.Core.Timetable;
using static Studio.Core.Tests.Timetable.Weeks;

namespace Studio.Core.Tests.Timetable;

/// <summary>Each conflict by its boundary: the last arrangement that is in order, and the first that is not.</summary>
public class ConflictsNamed
{
    private static IEnumerable<ConflictKind> Kinds(
        TimetableFacts facts,
        params PlacedSession[] sessions
    ) => TimetableChecks.Of(sessions, facts).Select(c => c.Kind);

    [Theory]
    [InlineData("10:50", false, "it begins as the other ends")]
    [InlineData("10:49", true, "a minute before")]
    [InlineData("09:10", false, "it ends as the other begins")]
    [InlineData("09:11", true, "a minute too long")]
    public void A_room_holds_one_session_at_a_time(string starts, bool clash, string because) =>
        Assert.True(
            clash
                == Kinds(Facts, Session(1, Monday, "10:00"), Session(2, Monday, starts, by: 2))
                    .Contains(ConflictKind.RoomTaken),
            because
        );

    [Fact]
    public void A_long_session_lies_across_two_short_ones()
    {
        var found = TimetableChecks.Of(
            [
                Session(1, Monday, "09:00", minutes: 240),
                Session(2, Monday, "09:30", by: 2),
                Session(3, Monday, "11:00", by: 2),
            ],
            Facts
        );
        Assert.Equal(
            [
                [1, 2],
                [1, 3],
            ],
            found.Select(c => c.Sessions)
        );
    }

    [Theory]
    [InlineData("10:50", false)]
    [InlineData("10:49", true)]
    public void An_instructor_is_in_one_room_at_a_time(string starts, bool clash) =>
        Assert.Equal(
            clash,
            Kinds(Facts, Session(1, Monday, "10:00"), Session(2, Monday, starts, room: 2))
                .Contains(ConflictKind.InstructorTaken)
        );

    [Theory]
    // Ends at 10:50 in Lisbon, which is 11:50 in Madrid; an hour's way.
    [InlineData("12:50", false)]
    [InlineData("12:49", true)]
    public void She_needs_the_time_to_go_there(string starts, bool conflict) =>
        Assert.Equal(
            conflict,
            Kinds(Facts, Session(1, Monday, "10:00"), Session(2, Monday, starts, room: 3))
                .Contains(ConflictKind.NoTimeToTravel)
        );

    [Theory]
    // Ends at 10:50 in Madrid, which is 09:50 in Lisbon; the way back takes 45 minutes.
    [InlineData("10:35", false)]
    [InlineData("10:34", true)]
    public void The_way_back_has_a_time_of_its_own(string starts, bool conflict) =>
        Assert.Equal(
            conflict,
            Kinds(Facts, Session(1, Monday, "10:00", room: 3), Session(2, Monday, starts))
                .Contains(ConflictKind.NoTimeToTravel)
        );

    [Theory]
    [InlineData(2027, 3, 10, false)]
    [InlineData(2027, 3, 11, true)]
    public void Her_qualification_counts_on_the_sessions_own_date(
        int year,
        int month,
        int day,
        bool conflict
    ) =>
        Assert.Equal(
            conflict,
            Kinds(Facts, Session(1, new(year, month, day), "10:00"))
                .Contains(ConflictKind.NotQualified)
        );

    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, true)]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void Leave_and_closed_days_include_their_first_and_last(int day, bool conflict)
    {
        var days = (From: Monday.PlusDays(1), To: Monday.PlusDays(2));
        var away = With(Ada with { Leave = [new(days.From, days.To)] });
        var shut = Facts with { Shut = [new(1, days.From, days.To, "works in the house")] };
        var session = Session(1, days.From.PlusDays(day), "10:00");
        Assert.Equal(conflict, Kinds(away, session).Contains(ConflictKind.OnLeave));
        Assert.Equal(conflict, Kinds(shut, session).Contains(ConflictKind.LocationShut));
        Assert.Empty(Kinds(shut, session with { LocationId = 2 }));
    }

    [Fact]
    public void The_first_day_she_no_longer_works_here_counts()
    {
        var facts = With(Ada with { LeftOn = Monday.PlusDays(1) });
        Assert.Empty(Kinds(facts, Session(1, Monday, "10:00")));
        Assert.Equal([ConflictKind.HasLeft], Kinds(facts, Session(1, Monday.PlusDays(1), "10:00")));
    }

    [Theory]
    [InlineData("09:00", 1, false, "as the hours begin")]
    [InlineData("08:59", 1, true, "before them")]
    [InlineData("11:10", 1, false, "ends with them")]
    [InlineData("11:11", 1, true, "ends after them")]
    [InlineData("09:00", 3, true, "at another location")]
    public void Hours_are_those_of_the_wall_clock_there(
        string starts,
        long room,
        bool conflict,
        string because
    )
    {
        var facts = With(
            Ada with
            {
                Availability = [new(IsoDayOfWeek.Monday, new(9, 0), new(12, 0), 1)],
            }
        );
        Assert.True(
            conflict
                == Kinds(facts, Session(1, Monday, starts, room: room))
                    .Contains(ConflictKind.OutsideHours),
            because
        );
    }

    [Fact]
    public void A_week_runs_from_monday_to_sunday_by_the_dates_of_its_sessions()
    {
        var facts = With(Ada with { WeeklyMinutesMost = 100 });
        PlacedSession[] three =
        [
            Session(1, Monday, "10:00"),
            Session(2, Monday.PlusDays(6), "20:00"),
            Session(3, Monday.PlusDays(7), "10:00"),
        ];
        Assert.Empty(Kinds(facts, three));
        var fourth = Session(4, Monday.PlusDays(3), "12:00", room: 3);
        var conflict = Assert.Single(TimetableChecks.Of([.. three, fourth], facts));
        Assert.Equal(ConflictKind.TooManyHours, conflict.Kind);
        Assert.Equal([1, 4, 2], conflict.Sessions);
        Assert.Equal(
            "Ada Winterle would teach 2 h 30 in the week of 1 March 2027; 1 h 40 were agreed.",
            conflict.Words
        );
    }

    [Theory]
    // Ends at 21:50; eleven hours later it is 08:50.
    [InlineData("08:50", false)]
    [InlineData("08:49", true)]
    public void Between_two_days_lies_a_rest(string starts, bool conflict) =>
        Assert.Equal(
            conflict,
            Kinds(
                    Facts,
                    Session(1, Monday, "21:00"),
                    Session(2, Monday.PlusDays(1), starts, room: 2)
                )
                .Contains(ConflictKind.TooLittleRest)
        );

    [Fact]
    public void In_the_night_the_clocks_go_forward_the_rest_is_an_hour_shorter()
    {
        var saturday = new LocalDate(2027, 3, 27);
        Assert.Contains(
            ConflictKind.TooLittleRest,
            Kinds(
                Facts,
                Session(1, saturday, "21:00", by: 2),
                Session(2, saturday.PlusDays(1), "08:50", by: 2)
            )
        );
    }

    [Fact]
    public void Seats_and_plan_are_held_against_the_room_the_people_and_the_hour()
    {
        var session = Session(1, Monday, "10:00");
        Assert.Equal([ConflictKind.RoomTooSmall], Kinds(Facts, session with { Seats = 11 }));
        Assert.Equal(
            [ConflictKind.SeatsTaken],
            Kinds(Facts, session with { Seats = 5, SeatsTaken = 6 })
        );
        Assert.Equal(
            [ConflictKind.ShorterThanPlan],
            Kinds(Facts, session with { PlanMinutes = 51 })
        );
        Assert.Empty(Kinds(Facts, session with { Seats = 10, SeatsTaken = 10, PlanMinutes = 50 }));
    }

    [Fact]
    public void What_stands_against_somebody_speaks_of_that_session_only()
    {
        PlacedSession[] hers =
        [
            Session(1, Monday, "10:00", by: 2),
            Session(2, Monday, "10:20", by: 2, room: 2),
        ];
        var wanted = Session(3, Monday, "12:00");
        Assert.Empty(TimetableChecks.WhyNot(Bo, wanted, hers, Facts));
        Assert.Equal(
            [ConflictKind.InstructorTaken],
            TimetableChecks
                .WhyNot(Bo, Session(4, Monday, "10:10", by: null), [hers[0]], Facts)
                .Select(c => c.Kind)
        );
    }

    [Fact]
    public void Only_what_can_be_agreed_to_can_be_accepted() =>
        Assert.Equal(
            [
                ConflictKind.OutsideHours,
                ConflictKind.TooManyHours,
                ConflictKind.TooLittleRest,
                ConflictKind.ShorterThanPlan,
            ],
            Enum.GetValues<ConflictKind>().Where(kind => !new Conflict(kind, [1], null, "").IsHard)
        );
}
