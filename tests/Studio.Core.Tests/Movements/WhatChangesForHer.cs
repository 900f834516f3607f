using Studio.Core.Movements;
using Studio.Core.Tests.Booking;

namespace Studio.Core.Tests.Movements;

/// <summary>What she is told of a plan before she books.</summary>
public class WhatChangesForHer
{
    private static readonly string[] Every = [.. Planned.Book.Movements.Select(m => m.Code)];

    [Theory]
    [InlineData("9w0d")]
    [InlineData("20w0d")]
    [InlineData("33w0d")]
    public void Is_every_movement_that_is_not_as_taught_once(string age)
    {
        var fit = Someone.Pregnant(age).Taught(Planned.Plan(Every));
        var changed = HerChanges.Of(fit).SelectMany(c => c.Movements).ToList();

        Assert.Equal(
            fit.Items.Count(i => i.Verdict != MovementVerdict.AsTaught),
            changed.Select(c => c.Position).Distinct().Count()
        );
        Assert.Equal(changed.Count, changed.Select(c => c.Position).Distinct().Count());
        Assert.All(changed, c => Assert.Same(fit.Items[c.Position - 1], c.Movement));
    }

    [Theory]
    [InlineData("20w0d")]
    [InlineData("33w0d")]
    public void Always_has_a_reason_in_her_words_and_no_code(string age)
    {
        var fit = Someone.Pregnant(age).LeavingOut("supine").Taught(Planned.Plan(Every));
        foreach (var change in HerChanges.Of(fit))
        {
            Assert.NotEmpty(change.Reasons);
            Assert.All(
                change.Reasons,
                r =>
                {
                    Assert.EndsWith(".", r.ForHer, StringComparison.Ordinal);
                    Assert.DoesNotContain("{", r.ForHer, StringComparison.Ordinal);
                }
            );
            Assert.Equal(
                change.Reasons.Count,
                change.Reasons.Select(r => r.ForHer).Distinct().Count()
            );
        }
    }

    [Fact]
    public void Says_of_a_replaced_movement_what_takes_its_place_and_how()
    {
        var fit = Someone.Pregnant("20w0d").Taught(Planned.Plan(Every));
        var replaced = HerChanges
            .Of(fit)
            .SelectMany(c => c.Movements)
            .Where(c => c.Movement.Verdict == MovementVerdict.Replaced)
            .ToList();

        Assert.NotEmpty(replaced);
        Assert.All(
            replaced,
            c =>
                Assert.Equal(
                    c.Movement.Instruction,
                    c.How.Length == 0
                        ? $"{c.Movement.Option!.Name} instead"
                        : $"{c.Movement.Option!.Name} instead: {c.How}"
                )
        );
    }

    [Fact]
    public void Is_nothing_where_all_is_as_taught() =>
        Assert.Empty(HerChanges.Of(Someone.Pregnant("20w0d").Taught(Planned.Plan("seated-row"))));
}
