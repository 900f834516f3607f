using CsCheck;
using Studio.Core.Timetable;

namespace Studio.Core.Tests.Timetable;

/// <summary>A series of Tuesdays at 18:00 from 1 December 2026, six weeks laid out; today is Wednesday, 9 December.</summary>
public class ChangesOfASeries
{
    private static readonly LocalDate First = new(2026, 12, 1);
    private static readonly LocalDate Last = new(2027, 1, 10);

    private static readonly SeriesShape Tuesdays = new()
    {
        RoomId = 1,
        InstructorId = 1,
        Seats = 10,
        Minutes = 50,
        StartsOn = First,
        StartsLocal = new(18, 0),
        Rule = SeriesRule.Kept("FREQ=WEEKLY;BYDAY=TU"),
    };

    private static readonly SeriesEditing Now = new()
    {
        From = new(2026, 12, 9),
        LaidOutTo = Last,
        Now = new LocalDate(2026, 12, 9).At(new(9, 0)),
    };

    private static readonly IReadOnlyList<SeriesSession> LaidOut =
    [
        .. Tuesdays
            .Dates(First, Last)
            .Select(
                (d, i) =>
                    SeriesSession.Of(Tuesdays, d) with
                    {
                        Id = 10 + i,
                        HasBegun = d <= Now.From,
                    }
            ),
    ];

    [Fact]
    public void Another_hour_is_taken_by_all_that_lies_ahead_and_by_nothing_that_was_held()
    {
        var edited = SeriesEdits.All(
            Tuesdays,
            Tuesdays with
            {
                StartsLocal = new(18, 30),
            },
            LaidOut,
            Now
        );
        Assert.Null(edited.Ended);
        Assert.Equal([12, 13, 14, 15], edited.Sessions.Select(s => s.Id));
        Assert.All(edited.Sessions, s => Assert.Equal(new(18, 30), s.StartsLocal));
    }

    [Fact]
    public void What_was_changed_by_hand_stays_unless_it_is_to_follow()
    {
        var thursday = LaidOut[2] with { On = LaidOut[2].On.PlusDays(2), InstructorId = 7 };
        var off = LaidOut[3] with { IsHeld = false };
        IReadOnlyList<SeriesSession> sessions =
        [
            LaidOut[0],
            LaidOut[1],
            thursday,
            off,
            LaidOut[4],
            LaidOut[5],
        ];
        var to = Tuesdays with { StartsLocal = new(19, 0), InstructorId = 2 };

        var stays = SeriesEdits.All(Tuesdays, to, sessions, Now).Sessions;
        Assert.Equal(
            (thursday.On, 7L, new LocalTime(19, 0)),
            (stays[0].On, stays[0].InstructorId!.Value, stays[0].StartsLocal)
        );
        Assert.False(stays[1].IsHeld);

        var follows = SeriesEdits
            .All(Tuesdays, to, sessions, Now with { ByHandToo = true })
            .Sessions;
        Assert.Equal((thursday.SeriesOn, 2L), (follows[0].On, follows[0].InstructorId!.Value));
        Assert.True(follows[1].IsHeld);
    }

    [Fact]
    public void From_here_on_ends_the_old_series_and_begins_one_that_goes_on()
    {
        var from = new LocalDate(2026, 12, 22);
        var to = Tuesdays with
        {
            StartsOn = from,
            RoomId = 3,
            Rule = SeriesEdits.Rest(Tuesdays, from),
        };
        var edited = SeriesEdits.FromHere(Tuesdays, to, LaidOut, Now with { From = from });
        Assert.Equal("FREQ=WEEKLY;UNTIL=20261221;BYDAY=TU", edited.Ended!.Rule.Text);
        Assert.Equal([13, 14, 15], edited.Sessions.Select(s => s.Id));
        Assert.All(edited.Sessions, s => Assert.Equal(3, s.RoomId));
        Assert.Equal(
            Tuesdays.Dates(First, Last),
            edited.Ended.Dates(First, Last).Concat(edited.Series.Dates(First, Last))
        );
    }

    [Fact]
    public void From_its_first_date_on_is_the_series_itself() =>
        Assert.Null(
            SeriesEdits
                .FromHere(
                    Tuesdays,
                    Tuesdays with
                    {
                        RoomId = 3,
                    },
                    LaidOut,
                    Now with
                    {
                        From = First,
                    }
                )
                .Ended
        );

    [Fact]
    public void A_rule_that_counts_gives_as_many_dates_in_two_parts_as_it_did_in_one()
    {
        var eight = Tuesdays with { Rule = SeriesRule.Kept("FREQ=WEEKLY;COUNT=8;BYDAY=TU") };
        var from = new LocalDate(2026, 12, 22);
        Assert.Equal(5, SeriesEdits.Rest(eight, from).Count);
        Assert.Equal(
            eight.Dates(First, First.PlusYears(1)),
            (eight with { Rule = SeriesEdits.EndingBefore(eight.Rule, from) })
                .Dates(First, First.PlusYears(1))
                .Concat(
                    (eight with { StartsOn = from, Rule = SeriesEdits.Rest(eight, from) }).Dates(
                        from,
                        First.PlusYears(1)
                    )
                )
        );
    }

    [Fact]
    public void Who_is_booked_on_a_Tuesday_goes_on_to_the_Wednesday_of_that_week()
    {
        var to = Tuesdays with { Rule = SeriesRule.Kept("FREQ=WEEKLY;BYDAY=WE") };
        var edited = SeriesEdits.All(Tuesdays, to, LaidOut, Now);
        // Today is a Wednesday whose Tuesday was held: it is a class of its own.
        Assert.Equal([null, 12, 13, 14, 15], edited.Sessions.Select(s => s.Id));
        Assert.All(
            edited.Sessions,
            s =>
            {
                Assert.Equal(IsoDayOfWeek.Wednesday, s.On.DayOfWeek);
                Assert.Equal(s.On, s.SeriesOn);
                Assert.True(s.IsHeld);
            }
        );
    }

    [Fact]
    public void A_date_that_has_no_place_any_more_is_called_off_and_a_new_one_is_added()
    {
        var fortnightly = Tuesdays with
        {
            Rule = SeriesRule.Kept("FREQ=WEEKLY;INTERVAL=2;BYDAY=TU,FR"),
        };
        var sessions = SeriesEdits.All(Tuesdays, fortnightly, LaidOut, Now).Sessions;
        Assert.Equal(
            [
                "2026-12-15 12 held",
                "2026-12-18 - held",
                "2026-12-22 13 off",
                "2026-12-29 14 held",
                "2027-01-01 - held",
                "2027-01-05 15 off",
            ],
            sessions.Select(s =>
                $"{s.SeriesOn:uuuu-MM-dd} {s.Id?.ToString() ?? "-"} {(s.IsHeld ? "held" : "off")}"
            )
        );
    }

    [Fact]
    public void Nothing_new_is_laid_out_on_a_day_on_which_the_location_is_shut_nor_in_the_past()
    {
        var daily = Tuesdays with { Rule = SeriesRule.Kept("FREQ=DAILY;UNTIL=20261213") };
        var sessions = SeriesEdits
            .All(
                Tuesdays,
                daily,
                LaidOut,
                Now with
                {
                    Now = Now.From.At(new(18, 0)),
                    Shut = new HashSet<LocalDate> { new(2026, 12, 11) },
                }
            )
            .Sessions.Where(s => s.IsHeld)
            .Select(s => s.On);
        Assert.Equal([new(2026, 12, 10), new(2026, 12, 12), new LocalDate(2026, 12, 13)], sessions);
    }

    [Fact]
    public void Whatever_is_changed_everybody_stands_somewhere_or_is_called_off_by_name() =>
        Gen.Select(
                Gen.Int[1, 127],
                Gen.Int[1, 3],
                Gen.Int[0, 40],
                Gen.Bool,
                Gen.Bool.Array[6],
                Gen.Int[-3, 3].Array[6]
            )
            .Sample(
                (days, every, offset, byHandToo, held, moved) =>
                {
                    string[] codes = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"];
                    var from = First.PlusDays(offset);
                    var sessions = LaidOut
                        .Select(
                            (s, i) =>
                                s.HasBegun
                                    ? s
                                    : s with
                                    {
                                        IsHeld = held[i],
                                        On = s.On.PlusDays(moved[i]),
                                    }
                        )
                        .ToList();
                    var rule = SeriesRule.Kept(
                        $"FREQ=WEEKLY;INTERVAL={every};BYDAY={string.Join(',', codes.Where((_, i) => (days & (1 << i)) != 0))}"
                    );
                    var start = rule.First(from)!.Value;
                    var edited = SeriesEdits.FromHere(
                        Tuesdays,
                        Tuesdays with
                        {
                            Rule = rule,
                            StartsOn = start,
                            StartsLocal = new(7, 0),
                        },
                        sessions,
                        Now with
                        {
                            From = from,
                            ByHandToo = byHandToo,
                        }
                    );
                    var ahead = sessions
                        .Where(s => !s.HasBegun && s.SeriesOn >= from)
                        .Select(s => s.Id!.Value)
                        .ToList();
                    Assert.Equal(
                        ahead.Order(),
                        edited.Sessions.Select(s => s.Id).OfType<long>().Order()
                    );
                    Assert.Equal(
                        edited.Sessions.Count,
                        edited.Sessions.Select(s => s.SeriesOn).Distinct().Count()
                    );
                    foreach (var next in edited.Sessions)
                    {
                        var was = sessions.SingleOrDefault(s => s.Id == next.Id);
                        if (next.IsHeld)
                            Assert.Contains(
                                next.SeriesOn,
                                edited.Series.Dates(from, Last.PlusDays(30))
                            );
                        if (was is not null && was.On != was.SeriesOn && !byHandToo)
                            Assert.Equal(was.On, next.On);
                        if (was is { IsHeld: false } && !byHandToo)
                            Assert.False(next.IsHeld);
                    }
                },
                iter: 500
            );
}
