using Studio.Core.Catalogue;

namespace Studio.Core.Movements;

/// <summary>A class as a file of plans needs it.</summary>
/// <param name="Code">The class's code.</param>
/// <param name="Minutes">Its length.</param>
/// <param name="Stages">Codes of the stages it admits.</param>
public sealed record PlannedClass(string Code, int Minutes, IReadOnlySet<string> Stages);

/// <summary>
/// Reads a file of class plans: <c>class,position,movement,minutes</c>, one movement to a row, positions from 1 on. A plan
/// must fill its class, and every movement must be there for somebody in each stage the class admits.
/// </summary>
public static class PlanFile
{
    private static readonly string[] Columns = ["class", "position", "movement", "minutes"];

    /// <summary>The plans by class.</summary>
    /// <param name="csv">The text, with a header row.</param>
    /// <param name="file">The file's name, for the errors.</param>
    /// <param name="classes">The classes there are.</param>
    /// <param name="book">The catalogue.</param>
    /// <param name="policies">The studio's choices.</param>
    /// <exception cref="CatalogueException">Anything is wrong with it; every error is named with its line.</exception>
    public static IReadOnlyDictionary<string, ClassPlan> Parse(
        TextReader csv,
        string file,
        IReadOnlyCollection<PlannedClass> classes,
        RuleBook book,
        StudioPolicies policies
    )
    {
        var errors = new CatalogueErrors();
        var rows = CatalogueTable.Read(_ => csv, file, Columns, errors);
        var plans = new Dictionary<string, ClassPlan>(StringComparer.Ordinal);
        foreach (var ofClass in rows.GroupBy(row => row["class"]))
        {
            var cls = classes.FirstOrDefault(c => c.Code == ofClass.Key);
            if (cls is null)
                ofClass.First().Error($"class is '{ofClass.Key}': there is no such class.");
            if (PlanOf([.. ofClass], book) is not { } plan || cls is null)
                continue;
            Check(plan, cls, [.. ofClass], book, policies);
            plans.Add(cls.Code, plan);
        }
        errors.ThrowIfAny();
        return plans;
    }

    private static ClassPlan? PlanOf(IReadOnlyList<CatalogueRow> rows, RuleBook book)
    {
        var items = new List<PlanItem>();
        foreach (var (row, number) in rows.Select((row, at) => (row, at + 1)))
        {
            row.Required("position");
            if (row.Number("position") is { } position && position != number)
                row.Error($"position is {position}: here it must be {number}.");
            var known = book.MovementOf(row.Required("movement")) is not null;
            if (!known && !row.IsBlank("movement"))
                row.Error($"movement is '{row["movement"]}': there is no such movement.");
            row.Required("minutes");
            var minutes = row.Number("minutes");
            if (minutes == 0)
                row.Error("minutes is 0: that is no time for a movement.");
            if (known && minutes is > 0)
                items.Add(new(row["movement"], minutes.Value));
        }
        return items.Count == rows.Count ? new(items) : null;
    }

    private static void Check(
        ClassPlan plan,
        PlannedClass cls,
        IReadOnlyList<CatalogueRow> rows,
        RuleBook book,
        StudioPolicies policies
    )
    {
        if (plan.Minutes != cls.Minutes)
            rows[^1]
                .Error(
                    $"the movements of '{cls.Code}' take {plan.Minutes} minutes, and the class {cls.Minutes}."
                );
        foreach (var left in PlanChecks.LeftOut(plan, cls.Stages, book, policies))
            rows[left.Number - 1]
                .Error(
                    $"'{left.Movement}' is left out for everybody in the stage '{left.Stage.Code}', which '{cls.Code}' admits."
                );
    }
}
