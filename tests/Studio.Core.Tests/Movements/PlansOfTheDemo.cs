using System.Globalization;
using Studio.Core.Catalogue;
using Studio.Core.Movements;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Movements;

/// <summary>The plans of the demo's classes, and what a damaged file of plans says.</summary>
public class PlansOfTheDemo
{
    private static readonly IReadOnlyList<ReferenceRow> Rows = Reference.ReadFrom(
        "demo",
        "classes.csv"
    );

    private static readonly List<PlannedClass> Classes =
    [
        .. Rows.Select(r => new PlannedClass(
            r["code"],
            int.Parse(r["minutes"], CultureInfo.InvariantCulture),
            r["stages"].Split(';').ToHashSet(StringComparer.Ordinal)
        )),
    ];

    private static readonly string Text = File.ReadAllText(
        Path.Combine(AppContext.BaseDirectory, "demo", "plans.csv")
    );

    [Fact]
    public void Every_class_has_a_plan_without_a_fault()
    {
        var plans = Parse(Text);

        Assert.Equal(
            Classes.Select(c => c.Code).Order(StringComparer.Ordinal),
            plans.Keys.Order(StringComparer.Ordinal)
        );
        Assert.All(Classes, c => Assert.Null(PlanChecks.Fault(plans[c.Code], Planned.Book)));
        Assert.All(Classes, c => Assert.Equal(c.Minutes, plans[c.Code].Minutes));
    }

    [Fact]
    public void A_plan_has_the_traits_its_class_is_described_by() =>
        Assert.All(
            Parse(Text),
            plan =>
            {
                var movements = plan.Value.Items.Select(i => Planned.Book.MovementOf(i.Movement)!);
                var described = Rows.Single(r => r["code"] == plan.Key)["traits"].Split(';');
                Assert.Equal(
                    described
                        .Where(t => MovementTraits.NameOf(t) is not null)
                        .Order(StringComparer.Ordinal),
                    ClassTraits
                        .All.Where(t => movements.Any(m => m.Has(t)))
                        .Order(StringComparer.Ordinal)
                );
                if (described.Contains(ClassTraits.ModerateEffort))
                    Assert.Contains(movements, m => m.Effort >= 5);
            }
        );

    [Fact]
    public void Every_error_of_a_damaged_file_is_named_with_its_line()
    {
        var error = Assert.Throws<CatalogueException>(() =>
            Parse(
                """
                class,position,movement,minutes
                early-core,1,hand-stand,10
                early-core,3,leg-slides,0
                tea-and-cake,1,leg-slides,10
                first-weeks,1,side-rest,39
                """
            )
        );

        Assert.Equal(
            [
                "plans.csv line 2: movement is 'hand-stand': there is no such movement.",
                "plans.csv line 3: position is 3: here it must be 2.",
                "plans.csv line 3: minutes is 0: that is no time for a movement.",
                "plans.csv line 4: class is 'tea-and-cake': there is no such class.",
                "plans.csv line 5: the movements of 'first-weeks' take 39 minutes, and the class 40.",
            ],
            error.Errors
        );
    }

    [Fact]
    public void A_movement_that_nobody_does_in_a_stage_the_class_admits_is_named()
    {
        var strict = TheStrictBook();
        var error = Assert.Throws<CatalogueException>(() =>
            PlanFile.Parse(
                new StringReader("class,position,movement,minutes\nfirst-weeks,1,side-rest,40\n"),
                "plans.csv",
                Classes,
                strict,
                strict.Policies
            )
        );

        Assert.Equal(
            [
                "plans.csv line 2: 'side-rest' is left out for everybody in the stage 'early-recovery', which 'first-weeks' admits.",
            ],
            error.Errors
        );
    }

    [Theory]
    [InlineData("postnatal;later-postnatal", "", "some day of each stage")]
    [InlineData("early-recovery;postnatal", "early-recovery", "no day of one of them")]
    public void Left_out_for_everybody_means_on_every_day_of_the_stage(
        string stages,
        string leftOutIn,
        string because
    ) =>
        Assert.True(
            leftOutIn
                == string.Join(
                    ';',
                    PlanChecks
                        .LeftOut(
                            Planned.Plan("side-rest"),
                            stages.Split(';').ToHashSet(StringComparer.Ordinal),
                            TheStrictBook(),
                            Planned.Book.Policies
                        )
                        .Select(l => l.Stage.Code)
                ),
            because
        );

    [Fact]
    public void Left_out_for_everybody_is_refused_by_the_place_the_movement_and_the_stage()
    {
        var strict = TheStrictBook();
        var left = Assert.Single(
            PlanChecks.LeftOut(
                Planned.Plan("squat", "side-rest"),
                new HashSet<string>(StringComparer.Ordinal) { "early-recovery" },
                strict,
                strict.Policies
            ),
            l => l.Movement == "side-rest"
        );
        var refusal = PlanChecks.NobodyDoes(left, strict);

        Assert.Equal("items[1].movement", refusal.Field);
        Assert.Contains("Rest on the side", refusal.Message, StringComparison.Ordinal);
        Assert.Contains(left.Stage.Name, refusal.Message, StringComparison.Ordinal);
    }

    // A studio whose rules leave out rests for the first 60 days after any birth.
    private static RuleBook TheStrictBook() =>
        Core.Tests.Catalogue.TheCatalogue.Parse(
            (
                "movement_rules.csv",
                text =>
                    text.TrimEnd('\n')
                    + "\nno-rest,,,,,,,0,60,,,,side-rest,,,left-out,No rest.,no rest,common-practice,\n"
            )
        );

    private static IReadOnlyDictionary<string, ClassPlan> Parse(string text) =>
        PlanFile.Parse(
            new StringReader(text),
            "plans.csv",
            Classes,
            Planned.Book,
            Planned.Book.Policies
        );
}
