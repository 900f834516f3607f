using Studio.Core.Cover;
using Studio.Core.Tests.Timetable;
using Studio.Core.Timetable;
using static Studio.Core.Tests.Cover.Covering;

namespace Studio.Core.Tests.Cover;

/// <summary>The ranking of colleagues for one session; the weighing is our own, no published source.</summary>
public class WhoCanTakeIt
{
    private static readonly PlacedSession Session = Hers(1, "18:00");

    private static CoverCandidate BoAlone(Teacher bo, params PlacedSession[] hers) =>
        CoverRanking.Rank(For(Session), Everybody(FactsWith(bo), [Session, .. hers])).On(Bo);

    [Fact]
    public void Everybody_but_her_is_there_once() =>
        Assert.Equal(
            [Bo, Cy, Dee],
            CoverRanking.Rank(For(Session), Everybody(FactsWith(), Session)).Ids().Order()
        );

    [Fact]
    public void A_session_that_nobody_was_to_teach_may_be_taken_by_anybody() =>
        Assert.Contains(
            Ada,
            CoverRanking
                .Rank(
                    For(Session with { InstructorId = null }),
                    Everybody(FactsWith(), Session with { InstructorId = null })
                )
                .Ids()
        );

    [Fact]
    public void What_keeps_her_from_it_is_what_the_timetable_says_word_for_word()
    {
        var bo = Weeks.Bo with
        {
            Qualifications = [new("postnatal", new(2026, 1, 1), new(2028, 1, 1))],
            Leave = [new(Weeks.Monday, Weeks.Monday)],
            LeftOn = Weeks.Monday,
            Availability = [new(IsoDayOfWeek.Tuesday, new(8, 0), new(12, 0))],
        };
        var other = Weeks.Session(2, Weeks.Monday, "18:30", Bo, room: 2);
        var her = BoAlone(bo, other);

        Assert.Equal(CoverStanding.NotFree, her.Standing);
        Assert.Equal(
            TimetableChecks.WhyNot(bo, Session, [other], FactsWith(bo)).Select(c => c.Words),
            her.Reasons.Where(r => r.Kind is CoverReasonKind.Hard or CoverReasonKind.Soft)
                .Select(r => r.Words)
        );
        Assert.Equal(
            [
                ConflictKind.InstructorTaken,
                ConflictKind.NotQualified,
                ConflictKind.OnLeave,
                ConflictKind.HasLeft,
                ConflictKind.OutsideHours,
            ],
            her.Against.Select(c => c.Kind).Order()
        );
        Assert.Contains(
            "Bo Larkfield has no valid prenatal qualification on Monday 1 March 2027, which Class 1 needs.",
            her.Reasons.Select(r => r.Words)
        );
    }

    public static TheoryData<Teacher, string[], ConflictKind> Accepted =>
        new()
        {
            {
                Weeks.Bo with
                {
                    Availability = [new(IsoDayOfWeek.Monday, new(8, 0), new(18, 49))],
                },
                [],
                ConflictKind.OutsideHours
            },
            { Weeks.Bo with { WeeklyMinutesMost = 99 }, ["10:00"], ConflictKind.TooManyHours },
        };

    [Theory]
    [MemberData(nameof(Accepted))]
    public void What_the_owner_may_accept_ranks_her_lower_and_is_said(
        Teacher bo,
        string[] teaches,
        ConflictKind kind
    )
    {
        var sessions = teaches
            .Select((at, n) => Weeks.Session(10 + n, Weeks.Monday, at, Bo, room: 2))
            .ToArray();
        var ranked = CoverRanking.Rank(
            // Everything else speaks for her.
            For(Session) with
            {
                Booked = 4,
                Knows = new Dictionary<long, int> { [Bo] = 4 },
                Taught = new Dictionary<long, int> { [Bo] = 9 },
            },
            Everybody(FactsWith(bo), [Session, .. sessions])
        );
        Assert.Equal(CoverStanding.WithCare, ranked.On(Bo).Standing);
        Assert.Equal([kind], ranked.On(Bo).Against.Select(c => c.Kind));
        Assert.Equal(Bo, ranked[^1].InstructorId);
    }

    [Fact]
    public void Too_little_rest_is_said_and_not_forbidden()
    {
        var her = BoAlone(
            Weeks.Bo,
            Weeks.Session(2, Weeks.Monday.PlusDays(1), "05:49", Bo, room: 2)
        );
        Assert.Equal(CoverStanding.WithCare, her.Standing);
        Assert.Equal([ConflictKind.TooLittleRest], her.Against.Select(c => c.Kind));
        Assert.Equal(
            CoverStanding.Free,
            BoAlone(
                Weeks.Bo,
                Weeks.Session(2, Weeks.Monday.PlusDays(1), "05:50", Bo, room: 2)
            ).Standing
        );
    }

    [Fact]
    public void Who_said_no_stands_after_those_who_might_and_before_those_who_cannot()
    {
        var ranked = CoverRanking.Rank(
            For(Session) with
            {
                Answers = new Dictionary<long, CoverAnswer> { [Bo] = CoverAnswer.Cannot },
            },
            Everybody(
                FactsWith(
                    CyHerself with
                    {
                        Availability = [new(IsoDayOfWeek.Friday, new(8, 0), new(12, 0))],
                    },
                    DeeHerself with
                    {
                        Qualifications = [],
                    }
                ),
                Session
            )
        );
        Assert.Equal([Cy, Bo, Dee], ranked.Ids());
        Assert.False(ranked.On(Bo).CanBeProposed);
    }

    [Fact]
    public void Who_asked_for_cover_herself_on_that_day_is_not_proposed()
    {
        var her = CoverRanking
            .Rank(
                For(Session) with
                {
                    AskThatDay = new HashSet<long> { Bo },
                },
                Everybody(FactsWith(), Session)
            )
            .On(Bo);
        Assert.Equal(CoverStanding.Declines, her.Standing);
        Assert.Contains("Has asked for cover on that day.", her.Reasons.Select(r => r.Words));
    }

    [Fact]
    public void Who_said_that_she_can_comes_before_who_said_nothing() =>
        Assert.Equal(
            Dee,
            CoverRanking
                .Rank(
                    For(Session) with
                    {
                        Answers = new Dictionary<long, CoverAnswer> { [Dee] = CoverAnswer.Can },
                        Booked = 3,
                        Knows = new Dictionary<long, int> { [Bo] = 3, [Cy] = 2 },
                    },
                    Everybody(FactsWith(), Session)
                )[0]
                .InstructorId
        );

    public static TheoryData<string, CoverQuestion, CoverStaff, string> Preferences
    {
        get
        {
            var plain = Everybody(FactsWith(), Session);
            return new()
            {
                {
                    "she knows most of those who come",
                    For(Session) with
                    {
                        Booked = 9,
                        Knows = new Dictionary<long, int> { [Cy] = 6, [Bo] = 1 },
                    },
                    plain,
                    "Has taught 6 of the 9 people booked in the last 8 weeks."
                },
                {
                    "she has taught this class",
                    For(Session) with
                    {
                        Taught = new Dictionary<long, int> { [Cy] = 4 },
                    },
                    plain,
                    "Has taught this class 4 times in the last 8 weeks."
                },
                {
                    "she likes to",
                    For(Session),
                    Everybody(
                        FactsWith(
                            CyHerself with
                            {
                                Wishes =
                                [
                                    new(WishKind.PartOfDay, "evening", 1),
                                    new(WishKind.PartOfDay, "morning", -2),
                                ],
                            }
                        ),
                        Session
                    ),
                    "Likes to teach in the evening."
                },
                {
                    "the others would rather not",
                    For(Session),
                    Everybody(
                        FactsWith(
                            Weeks.Bo with
                            {
                                Wishes = [new(WishKind.Weekday, "1", -1)],
                            },
                            DeeHerself with
                            {
                                Wishes = [new(WishKind.Location, "quay", -2)],
                            }
                        ),
                        Session
                    ),
                    "Has taken over no class in the last 8 weeks."
                },
                {
                    "the others took some lately",
                    For(Session),
                    plain with
                    {
                        Covers = new Dictionary<long, int> { [Bo] = 2, [Dee] = 1 },
                    },
                    "Has taken over no class in the last 8 weeks."
                },
                {
                    "the others teach more of what was agreed",
                    For(Session),
                    Everybody(
                        FactsWith(
                            Weeks.Bo with
                            {
                                WeeklyMinutesMost = 150,
                            },
                            CyHerself with
                            {
                                WeeklyMinutesMost = 600,
                            },
                            DeeHerself with
                            {
                                WeeklyMinutesMost = 200,
                            }
                        ),
                        Session
                    ),
                    "Would teach 50 min of 10 h agreed in that week."
                },
            };
        }
    }

    [Theory]
    [MemberData(nameof(Preferences))]
    public void Of_those_who_can_the_first_is_she_for_whom_most_speaks(
        string because,
        CoverQuestion question,
        CoverStaff staff,
        string said
    )
    {
        var ranked = CoverRanking.Rank(question, staff);
        Assert.True(ranked[0].InstructorId == Cy, because);
        Assert.Contains(said, ranked[0].Reasons.Select(r => r.Words));
    }

    [Fact]
    public void Those_alike_stand_by_name() =>
        Assert.Equal(
            [Bo, Cy, Dee],
            CoverRanking.Rank(For(Session), Everybody(FactsWith(), Session)).Ids()
        );

    [Fact]
    public void A_colleague_reads_nobodys_leave_hours_wishes_or_load()
    {
        var her = CoverRanking
            .Rank(
                For(Session) with
                {
                    Booked = 2,
                    Answers = new Dictionary<long, CoverAnswer> { [Bo] = CoverAnswer.Can },
                },
                Everybody(
                    FactsWith(
                        Weeks.Bo with
                        {
                            Leave = [new(Weeks.Monday, Weeks.Monday)],
                            Availability = [new(IsoDayOfWeek.Tuesday, new(8, 0), new(12, 0))],
                            Wishes = [new(WishKind.Weekday, "1", -2)],
                        }
                    ),
                    Session
                )
            )
            .On(Bo);
        Assert.Equal(
            [
                "Can take it.",
                "Has taught none of the 2 people booked in the last 8 weeks.",
                "Has not taught this class in the last 8 weeks.",
            ],
            her.Reasons.Where(r => r.IsForOthers).Select(r => r.Words)
        );
    }

    [Theory]
    [InlineData(24, 0, true, "a day before")]
    [InlineData(24, 1, false, "a minute more")]
    [InlineData(0, 1, true, "a minute before it begins")]
    [InlineData(0, 0, false, "it begins")]
    [InlineData(-1, 0, false, "it is on")]
    public void A_session_that_nobody_teaches_is_loud_from_24_hours_before(
        int hours,
        int minutes,
        bool loud,
        string because
    )
    {
        var now = Instant.FromUtc(2027, 3, 1, 9, 0);
        Assert.True(
            loud
                == CoverRules.IsLoud(
                    now + Duration.FromHours(hours) + Duration.FromMinutes(minutes),
                    now
                ),
            because
        );
    }
}
