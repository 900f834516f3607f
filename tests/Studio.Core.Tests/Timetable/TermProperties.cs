using CsCheck;
using Studio.Core.Timetable;

namespace Studio.Core.Tests.Timetable;

/// <summary>What holds of every term, whatever is in it.</summary>
public class TermProperties
{
    [Fact]
    public void Nothing_that_is_given_to_somebody_breaks_a_rule() =>
        Terms.Any.Sample(
            question =>
                Assert.Empty(question.Broken(TermAssignment.Solve(question).After(question))),
            iter: 400
        );

    [Fact]
    public void What_is_pinned_or_may_not_change_stays() =>
        Terms.Any.Sample(
            question =>
                Assert.All(
                    TermAssignment.Solve(question).Steps.Where(s => !s.MayChange),
                    step =>
                        Assert.Equal(
                            question.Pins.TryGetValue(step.Session.Key, out var who)
                                ? who
                                : step.Session.InstructorId,
                            step.After
                        )
                ),
            iter: 200
        );

    [Fact]
    public void One_more_instructor_never_leaves_more_sessions_with_nobody() =>
        Gen.Select(Terms.Any, Terms.Any)
            .Sample(
                (question, other) =>
                {
                    var more = other.Facts.Teachers.Values.First() with { Id = 77 };
                    var with = question with
                    {
                        Facts = question.Facts with
                        {
                            Teachers = new Dictionary<long, Teacher>(question.Facts.Teachers)
                            {
                                [77] = more,
                            },
                        },
                    };
                    Assert.True(
                        TermAssignment.Solve(with).Value(TermAim.Unstaffed)
                            <= TermAssignment.Solve(question).Value(TermAim.Unstaffed)
                    );
                },
                iter: 200
            );

    [Fact]
    public void The_order_in_which_sessions_and_people_are_given_does_not_matter() =>
        Gen.Select(Terms.Any, Gen.Int[0, 1000])
            .Sample(
                (question, seed) =>
                {
                    var shuffled = question.Sessions.ToArray();
                    new Random(seed).Shuffle(shuffled);
                    var other = question with
                    {
                        Sessions = shuffled,
                        Facts = question.Facts with
                        {
                            Teachers = question
                                .Facts.Teachers.Reverse()
                                .ToDictionary(t => t.Key, t => t.Value),
                        },
                    };
                    Assert.Equal(
                        TermAssignment.Solve(question).Steps,
                        TermAssignment.Solve(other).Steps
                    );
                },
                iter: 200
            );

    [Fact]
    public void Whoever_has_nobody_is_told_why_of_every_person_who_works_here() =>
        Terms.Any.Sample(
            question =>
                Assert.All(
                    TermAssignment.Solve(question).Unstaffed,
                    gap =>
                    {
                        Assert.NotEmpty(gap.Words);
                        Assert.Equal(
                            question.Facts.Teachers.Values.Count(t =>
                                t.LeftOn is not { } left || gap.Session.On < left
                            ),
                            gap.People.Count
                        );
                        Assert.All(gap.People, person => Assert.NotEmpty(person.Words));
                    }
                ),
            iter: 400
        );

    [Fact]
    public void Minutes_shared_out_are_no_more_than_there_are_nor_than_anybody_can_teach() =>
        Gen.Select(Gen.Int[0, 3000], Gen.Select(Gen.Int[0, 900], Gen.Int[0, 900]).Array[0, 6])
            .Sample(
                (minutes, people) =>
                {
                    var given = people
                        .Select(p => (p.Item1 > 600 ? (int?)null : p.Item1, p.Item2))
                        .ToList();
                    var shares = TermShares.Of(minutes, given);
                    Assert.True(shares.Sum() <= minutes);
                    Assert.All(shares.Zip(given), s => Assert.InRange(s.First, 0, s.Second.Item2));
                },
                iter: 2000
            );
}
