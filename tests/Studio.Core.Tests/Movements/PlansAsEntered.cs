using Studio.Core.Movements;

namespace Studio.Core.Tests.Movements;

/// <summary>What is refused of a plan somebody enters, and the field that is named for it.</summary>
public class PlansAsEntered
{
    [Theory]
    [InlineData("squat:1", null, "one movement is enough, and one minute")]
    [InlineData("squat:240", null, "the longest a movement may be")]
    [InlineData("squat:5 squat:5", null, "the same one may come twice")]
    [InlineData("", "items", "nothing")]
    [InlineData("squat:5 squat:0", "items[1].minutes", "no time")]
    [InlineData("squat:-1", "items[0].minutes", "less than no time")]
    [InlineData("squat:241", "items[0].minutes", "a minute too many")]
    [InlineData("squat:5 tea-and-cake:5", "items[1].movement", "not in the catalogue")]
    [InlineData("SQUAT:5", "items[0].movement", "codes are written in one way")]
    public void Names_the_field_at_fault(string plan, string? field, string because) =>
        Assert.True(PlanChecks.Fault(Entered(plan), Planned.Book)?.Field == field, because);

    [Theory]
    [InlineData(60, null)]
    [InlineData(61, "plan-too-long")]
    public void Has_sixty_movements_at_most(int count, string? code) =>
        Assert.Equal(
            code,
            PlanChecks
                .Fault(new([.. Enumerable.Repeat(new PlanItem("squat", 1), count)]), Planned.Book)
                ?.Code
        );

    [Theory]
    [InlineData(49, null, "less than the class is no fault")]
    [InlineData(50, null, "just the length of the class")]
    [InlineData(51, "plan-over-time", "a minute over")]
    public void Fits_into_the_class(int minutes, string? code, string because) =>
        Assert.True(PlanChecks.TooLong(Entered($"squat:{minutes}"), 50)?.Code == code, because);

    [Theory]
    [InlineData("squat:5 leg-slides:5", "squat:5 leg-slides:5", true)]
    [InlineData("squat:5 leg-slides:5", "leg-slides:5 squat:5", false)]
    [InlineData("squat:5", "squat:6", false)]
    [InlineData("squat:5", "squat:5 squat:5", false)]
    public void Is_the_same_when_movements_order_and_minutes_are(
        string one,
        string other,
        bool same
    ) => Assert.Equal(same, Entered(one).IsSameAs(Entered(other)));

    private static ClassPlan Entered(string text) =>
        new([
            .. text.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Select(item => item.Split(':'))
                .Select(parts => new PlanItem(
                    parts[0],
                    int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture)
                )),
        ]);
}
