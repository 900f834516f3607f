using NodaTime;
using Studio.Api.Data;
using Studio.Core.Movements;

namespace Studio.Api.Movements;

/// <summary>The plans of all classes, every version.</summary>
public sealed class ClassPlans
{
    private readonly ILookup<long, Version> _byClass;

    internal ClassPlans(ILookup<long, Version> byClass) => _byClass = byClass;

    /// <summary>
    /// The plan in force for a class on a date: the newest made by then, or the first when all are younger; null when the
    /// class has none.
    /// </summary>
    public ClassPlan? On(long classId, LocalDate date)
    {
        var versions = _byClass[classId];
        return (versions.LastOrDefault(v => v.MadeOn <= date) ?? versions.FirstOrDefault())?.Plan;
    }

    internal sealed record Version(LocalDate MadeOn, ClassPlan Plan);
}

/// <summary>Class plans.</summary>
public static class PlanStore
{
    /// <summary>Every version of every class's plan.</summary>
    public static async Task<ClassPlans> AllAsync(Read read)
    {
        var items = await read.ListAsync<ItemRow>(
            """
            select p.class_id as ClassId, p.version, p.made_at as MadeAt, i.movement, i.minutes
              from class_plans p join class_plan_items i on i.plan_id = p.id
             order by p.class_id, p.version, i.position
            """
        );
        return new ClassPlans(
            items
                .GroupBy(i => (i.ClassId, i.Version))
                .Select(g =>
                    (
                        g.Key.ClassId,
                        Version: new ClassPlans.Version(
                            g.First().MadeAt.InUtc().Date,
                            new ClassPlan([.. g.Select(i => new PlanItem(i.Movement, i.Minutes))])
                        )
                    )
                )
                .ToLookup(v => v.ClassId, v => v.Version)
        );
    }

    /// <summary>Adds a version of a class's plan; the caller has checked it.</summary>
    public static async Task AddAsync(
        Write write,
        long classId,
        ClassPlan plan,
        Instant at,
        long? by
    )
    {
        var id = await write.InsertAsync(
            """
            insert into class_plans (class_id, version, made_at, made_by)
            select @classId, 1 + coalesce(max(version), 0), @at, @by from class_plans where class_id = @classId
            """,
            new
            {
                classId,
                at,
                by,
            }
        );
        var position = 0;
        foreach (var item in plan.Items)
            await write.ExecuteAsync(
                """
                insert into class_plan_items (plan_id, position, movement, minutes)
                values (@id, @position, @Movement, @Minutes)
                """,
                new
                {
                    id,
                    position = ++position,
                    item.Movement,
                    item.Minutes,
                }
            );
    }

    private sealed record ItemRow
    {
        public long ClassId { get; init; }
        public int Version { get; init; }
        public Instant MadeAt { get; init; }
        public string Movement { get; init; } = "";
        public int Minutes { get; init; }
    }
}
