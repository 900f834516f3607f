using Studio.Core.Timetable;

namespace Studio.Core.Tests.Timetable;

public class WhatIsTold
{
    private static readonly NamedSession Was = new(
        "Early core",
        new(2027, 3, 2),
        new(18, 0),
        50,
        "Cork room",
        "Vilarmeira",
        "Ada Winterle"
    );

    [Fact]
    public void Names_day_hour_and_place_by_the_clock_there() =>
        Assert.Equal(
            "Early core on Tuesday 2 March 2027 at 18:00, Vilarmeira: not held.",
            SessionWords.CalledOff(Was)
        );

    [Fact]
    public void Says_everything_that_is_different_in_one_sentence() =>
        Assert.Equal(
            "Early core on Tuesday 2 March 2027 at 18:00, Vilarmeira: now on Wednesday 3 March 2027 at 18:30, 45 minutes long, in Tile room, Puente Ormero, with Bo Larkfield.",
            SessionWords.Changed(
                Was,
                Was with
                {
                    On = new(2027, 3, 3),
                    Starts = new(18, 30),
                    Minutes = 45,
                    Room = "Tile room",
                    Location = "Puente Ormero",
                    Instructor = "Bo Larkfield",
                },
                tellsWho: true
            )
        );

    [Fact]
    public void Is_nothing_when_nobody_would_notice() =>
        Assert.Null(SessionWords.Changed(Was, Was, tellsWho: true));

    [Fact]
    public void Who_teaches_it_is_no_news_to_her_who_does() =>
        Assert.Null(
            SessionWords.Changed(Was, Was with { Instructor = "Bo Larkfield" }, tellsWho: false)
        );

    [Fact]
    public void That_nobody_teaches_it_yet_is_said_plainly() =>
        Assert.EndsWith(
            "who teaches it is not settled yet.",
            SessionWords.Changed(Was, Was with { Instructor = null }, tellsWho: true),
            StringComparison.Ordinal
        );
}

public class ConflictsOfAChange
{
    [Fact]
    public void What_stood_already_is_not_brought_about_by_something_else()
    {
        var late = Weeks.Session(1, Weeks.Monday.PlusDays(20), "18:00");
        Assert.NotEmpty(TimetableChecks.Of([late], Weeks.Facts));

        Assert.Empty(
            ChangedConflicts.Of(
                [late],
                [late with { Seats = 5 }],
                new HashSet<long> { 1 },
                Weeks.Facts
            )
        );
    }

    [Fact]
    public void On_another_day_it_is_asked_again()
    {
        var late = Weeks.Session(1, Weeks.Monday.PlusDays(20), "18:00");
        var later = Weeks.Session(1, Weeks.Monday.PlusDays(21), "18:00");

        Assert.Equal(
            [ConflictKind.NotQualified],
            ChangedConflicts
                .Of([late], [later], new HashSet<long> { 1 }, Weeks.Facts)
                .Select(c => c.Kind)
        );
    }

    [Fact]
    public void What_is_wrong_elsewhere_keeps_nobody_from_a_change()
    {
        var wrong = Weeks.Session(1, Weeks.Monday.PlusDays(20), "18:00");
        var added = Weeks.Session(-1, Weeks.Monday, "09:00", by: 2);

        Assert.Empty(
            ChangedConflicts.Of([wrong], [wrong, added], new HashSet<long> { -1 }, Weeks.Facts)
        );
    }

    [Fact]
    public void A_session_put_into_a_taken_room_is_named()
    {
        var there = Weeks.Session(1, Weeks.Monday, "09:00");
        var added = Weeks.Session(-1, Weeks.Monday, "09:30", by: 2);

        Assert.Equal(
            [ConflictKind.RoomTaken],
            ChangedConflicts
                .Of([there], [there, added], new HashSet<long> { -1 }, Weeks.Facts)
                .Select(c => c.Kind)
        );
    }
}
