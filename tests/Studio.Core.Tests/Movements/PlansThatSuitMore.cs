using CsCheck;
using Studio.Core.Catalogue;
using Studio.Core.Movements;
using Studio.Core.Tests.Booking;

namespace Studio.Core.Tests.Movements;

/// <summary>
/// A plan in which as few as possible do something else. The check values are common practice, no published source: front
/// planks in the first trimester only, side planks later too; no weight on wrists that hurt.
/// </summary>
public class PlansThatSuitMore
{
    private static readonly Attendee Early = new(1, Someone.Pregnant("10w0d"));
    private static readonly Attendee Later = new(2, Someone.Pregnant("20w0d"));

    private static readonly Gen<(
        ClassPlan Plan,
        IReadOnlyList<Attendee> People,
        StudioPolicies Policies
    )> Case = Gen.Select(
        Any.APlan,
        Any.AClient.Array[0, 6],
        Any.APolicy,
        (plan, people, policies) =>
            (
                plan,
                (IReadOnlyList<Attendee>)[.. people.Select((her, at) => new Attendee(at + 1, her))],
                policies
            )
    );

    [Fact]
    public void A_movement_gives_way_to_its_own_option_that_everybody_can_do()
    {
        var advised = Advise(Planned.Plan("squat", "front-plank"), Early, Later);

        var change = Assert.Single(advised.Changes);
        Assert.Equal(2, change.Number);
        Assert.Equal("front-plank", change.From.Code);
        // Both can do a side plank too, one of them with another breath; with the knee down both do it as taught.
        Assert.Equal("side-plank-knee-down", change.To.Code);
        Assert.Equal((1, 2), (change.Before, change.After));
        Assert.Equal([Later.Id], change.Gains);
        Assert.Empty(change.Loses);
        Assert.Empty(advised.Remaining);
        Assert.Equal(["squat", "side-plank-knee-down"], advised.Plan.Items.Select(i => i.Movement));
        Assert.Equal(6, advised.Plan.Minutes);
    }

    [Fact]
    public void What_everybody_can_do_stays_although_an_option_were_gentler() =>
        Assert.Empty(Advise(Planned.Plan("front-plank", "squat"), Early).Changes);

    [Fact]
    public void What_is_only_adapted_stays()
    {
        var plan = Planned.Plan("leg-slides");
        Assert.Equal(MovementVerdict.Adapted, Later.Her.Taught(plan).Items.Single().Verdict);
        Assert.Empty(Advise(plan, Early, Later).Changes);
    }

    [Fact]
    public void Nobody_is_put_to_rest_because_one_rests()
    {
        var her = new Attendee(3, Someone.Pregnant("20w0d").LeavingOut("side-lying"));
        var advised = Advise(Planned.Plan("side-plank"), Early, Later, her);

        Assert.Empty(advised.Changes);
        var remaining = Assert.Single(advised.Remaining);
        Assert.Equal(1, remaining.Number);
        Assert.Equal([her.Id], remaining.Who);
    }

    [Fact]
    public void Who_takes_part_in_nothing_is_named_and_changes_nothing()
    {
        var ended = new Attendee(
            4,
            new()
            {
                Pregnancy = new()
                {
                    DueDate = Someone.Day.PlusDays(100),
                    EndedOn = Someone.Day.PlusDays(-3),
                },
            }
        );
        var advised = Advise(Planned.Plan("front-plank"), Early, ended);

        Assert.Empty(advised.Changes);
        Assert.Empty(advised.Remaining);
        Assert.Equal([ended.Id], advised.NotTakingPart);
    }

    [Fact]
    public void A_movement_the_catalogue_does_not_have_stays_and_everybody_is_named()
    {
        var advised = Advise(Planned.Plan("tea-and-cake"), Later, Early);

        Assert.Empty(advised.Changes);
        Assert.Equal([Early.Id, Later.Id], Assert.Single(advised.Remaining).Who);
    }

    [Fact]
    public void Nobody_booked_is_nothing_to_mend() =>
        Assert.Empty(Advise(Planned.Plan("front-plank")).Changes);

    [Fact]
    public void No_place_of_the_plan_suits_fewer_than_before() =>
        Case.AlwaysHolds(case_ =>
        {
            var after = Advise(case_).Plan;
            return Enumerable
                .Range(0, after.Items.Count)
                .All(at => Takes(case_, after, at) >= Takes(case_, case_.Plan, at));
        });

    [Fact]
    public void Asking_again_about_the_answer_changes_nothing() =>
        Case.AlwaysHolds(case_ =>
        {
            var once = Advise(case_);
            var twice = Advise((once.Plan, case_.People, case_.Policies));
            return twice.Changes.Count == 0
                && twice.Plan.IsSameAs(once.Plan)
                && Told(twice.Remaining) == Told(once.Remaining);
        });

    [Fact]
    public void The_order_of_people_does_not_matter() =>
        Case.AlwaysHolds(case_ =>
        {
            var one = Advise(case_);
            var other = Advise((case_.Plan, [.. case_.People.Reverse()], case_.Policies));
            return one.Plan.IsSameAs(other.Plan)
                && Told(one.Remaining) == Told(other.Remaining)
                && one.NotTakingPart.SequenceEqual(other.NotTakingPart)
                && one.Changes.Zip(other.Changes)
                    .All(both => both.First.Gains.SequenceEqual(both.Second.Gains));
        });

    [Fact]
    public void Nothing_is_proposed_that_is_left_out_for_all() =>
        Case.AlwaysHolds(case_ =>
        {
            var advised = Advise(case_);
            return advised.Changes.All(c => Takes(case_, advised.Plan, c.Number - 1) > 0);
        });

    [Fact]
    public void A_change_is_one_of_its_movements_own_options_and_more_can_do_it() =>
        Case.AlwaysHolds(case_ =>
            Advise(case_)
                .Changes.All(c =>
                    c.After > c.Before
                    && c.Gains.Count - c.Loses.Count == c.After - c.Before
                    && c.To.Effort <= c.From.Effort
                    && Gentler(c.From.Code).Contains(c.To.Code, StringComparer.Ordinal)
                )
        );

    [Fact]
    public void Where_nobody_does_something_else_nothing_changes() =>
        Case.AlwaysHolds(case_ =>
        {
            var advised = Advise(case_);
            return Enumerable
                .Range(0, case_.Plan.Items.Count)
                .Where(at =>
                    case_.People.All(p =>
                        Fit(case_, case_.Plan, p).Items[at].Verdict <= MovementVerdict.Adapted
                    )
                )
                .All(at => advised.Plan.Items[at] == case_.Plan.Items[at]);
        });

    [Fact]
    public void The_minutes_stay_and_all_who_do_something_else_are_named() =>
        Case.AlwaysHolds(case_ =>
        {
            var advised = Advise(case_);
            var out_ = advised.NotTakingPart.ToHashSet();
            return advised
                    .Plan.Items.Select(i => i.Minutes)
                    .SequenceEqual(case_.Plan.Items.Select(i => i.Minutes))
                && advised
                    .Plan.Items.Select(
                        (_, at) =>
                            case_
                                .People.Where(p =>
                                    !out_.Contains(p.Id)
                                    && Fit(case_, advised.Plan, p).Items[at].Verdict
                                        > MovementVerdict.Adapted
                                )
                                .Select(p => p.Id)
                    )
                    .Select((who, at) => (Number: at + 1, Who: string.Join(' ', who)))
                    .Where(r => r.Who.Length > 0)
                    .SequenceEqual(
                        advised.Remaining.Select(r => (r.Number, string.Join(' ', r.Who)))
                    );
        });

    private static AdvisedPlan Advise(ClassPlan plan, params Attendee[] people) =>
        Advise((plan, people, Someone.Policies));

    private static AdvisedPlan Advise(
        (ClassPlan Plan, IReadOnlyList<Attendee> People, StudioPolicies Policies) case_
    ) => PlanAdvice.For(case_.Plan, case_.People, Someone.Day, Planned.Book, case_.Policies);

    private static int Takes(
        (ClassPlan Plan, IReadOnlyList<Attendee> People, StudioPolicies Policies) case_,
        ClassPlan plan,
        int at
    ) => case_.People.Count(p => Fit(case_, plan, p).Items[at].Verdict <= MovementVerdict.Adapted);

    private static PlanFit Fit(
        (ClassPlan Plan, IReadOnlyList<Attendee> People, StudioPolicies Policies) case_,
        ClassPlan plan,
        Attendee person
    ) => PlanRules.Of(plan, person.Her, Someone.Day, Planned.Book, case_.Policies);

    private static IEnumerable<string> Gentler(string code) =>
        Planned
            .Book.MovementOf(code)!
            .Options.SelectMany(option => Gentler(option).Prepend(option));

    private static string Told(IEnumerable<StillElse> remaining) =>
        string.Join('\n', remaining.Select(r => $"{r.Number}: {string.Join(' ', r.Who)}"));
}
