using NodaTime;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core.Movements;

namespace Studio.Api.Movements;

/// <summary>The plans of all classes and of the sessions that have one of their own.</summary>
public sealed class Plans
{
    private readonly ILookup<long, ClassVersion> _classes;
    private readonly IReadOnlyDictionary<long, ClassPlan> _sessions;

    internal Plans(
        ILookup<long, ClassVersion> classes,
        IReadOnlyDictionary<long, ClassPlan> sessions
    ) => (_classes, _sessions) = (classes, sessions);

    /// <summary>
    /// What a session is made of: its own newest plan, else the newest of its class made by the moment it began, so that
    /// a session keeps the plan it was taught with; null when there was none.
    /// </summary>
    public ClassPlan? Of(DatedClass session) =>
        _sessions.GetValueOrDefault(session.SessionId)
        ?? _classes[session.ClassId].LastOrDefault(v => v.MadeAt <= session.StartsAt)?.Plan;

    /// <summary>
    /// A class's plan for a question that is about no session: the newest made by that day (UTC), or the first when all
    /// are younger; null when the class has none.
    /// </summary>
    public ClassPlan? OfClass(long classId, LocalDate on) =>
        (
            _classes[classId].LastOrDefault(v => v.MadeAt.InUtc().Date <= on)
            ?? _classes[classId].FirstOrDefault()
        )?.Plan;

    internal sealed record ClassVersion(Instant MadeAt, ClassPlan Plan);
}

/// <summary>One version of a plan.</summary>
public sealed record PlanVersionRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Its number, from 1.</summary>
    public int Version { get; init; }

    /// <summary>When it was made.</summary>
    public Instant MadeAt { get; init; }

    /// <summary>By whom; null when it came with the studio.</summary>
    public string? MadeBy { get; init; }

    /// <summary>A session's: it has no plan of its own any more.</summary>
    public bool FollowsClass { get; init; }
}

/// <summary>Plans of classes and sessions; every change is a version of its own.</summary>
public static class PlanStore
{
    /// <summary>Every version of every class's plan, and the newest of each session that has one of its own.</summary>
    public static async Task<Plans> AllAsync(Read read)
    {
        var ofClasses = await read.ListAsync<ItemRow>(
            """
            select p.id as PlanId, p.class_id as Subject, p.made_at as MadeAt, i.movement, i.minutes
              from class_plans p join class_plan_items i on i.plan_id = p.id
             order by p.class_id, p.version, i.position
            """
        );
        var ofSessions = await read.ListAsync<ItemRow>(
            """
            select p.id as PlanId, p.session_id as Subject, p.made_at as MadeAt, i.movement, i.minutes
              from session_plans p join session_plan_items i on i.plan_id = p.id
             where p.version = (select max(n.version) from session_plans n where n.session_id = p.session_id)
             order by p.session_id, i.position
            """
        );
        return new Plans(
            ofClasses
                .GroupBy(i => i.PlanId)
                .ToLookup(
                    g => g.First().Subject,
                    g => new Plans.ClassVersion(g.First().MadeAt, Of(g))
                ),
            ofSessions.GroupBy(i => i.Subject).ToDictionary(g => g.Key, Of)
        );
    }

    /// <summary>The versions of a class's plan, the newest first.</summary>
    public static Task<List<PlanVersionRow>> VersionsAsync(Read read, long classId) =>
        read.ListAsync<PlanVersionRow>(
            """
            select p.id, p.version, p.made_at as MadeAt, a.name as MadeBy
              from class_plans p left join accounts a on a.id = p.made_by
             where p.class_id = @classId order by p.version desc
            """,
            new { classId }
        );

    /// <summary>The versions of a session's own plan, the newest first.</summary>
    public static Task<List<PlanVersionRow>> VersionsOfSessionAsync(Read read, long sessionId) =>
        read.ListAsync<PlanVersionRow>(
            """
            select p.id, p.version, p.made_at as MadeAt, a.name as MadeBy, p.follows_class as FollowsClass
              from session_plans p left join accounts a on a.id = p.made_by
             where p.session_id = @sessionId order by p.version desc
            """,
            new { sessionId }
        );

    /// <summary>What a version of a class's plan is made of.</summary>
    public static async Task<ClassPlan> ItemsAsync(Read read, long planId) =>
        Of(
            await read.ListAsync<ItemRow>(
                "select movement, minutes from class_plan_items where plan_id = @planId order by position",
                new { planId }
            )
        );

    /// <summary>Adds a version of a class's plan; the caller has checked it.</summary>
    public static async Task AddAsync(
        Write write,
        long classId,
        ClassPlan plan,
        Instant at,
        long? by
    ) =>
        await AddItemsAsync(
            write,
            "class_plan_items",
            await write.InsertAsync(
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
            ),
            plan
        );

    /// <summary>Adds a version of a session's own plan; null makes it follow its class again.</summary>
    public static async Task AddToSessionAsync(
        Write write,
        long sessionId,
        ClassPlan? plan,
        Instant at,
        long? by
    )
    {
        var id = await write.InsertAsync(
            """
            insert into session_plans (session_id, version, follows_class, made_at, made_by)
            select @sessionId, 1 + coalesce(max(version), 0), @follows, @at, @by
              from session_plans where session_id = @sessionId
            """,
            new
            {
                sessionId,
                follows = plan is null,
                at,
                by,
            }
        );
        if (plan is not null)
            await AddItemsAsync(write, "session_plan_items", id, plan);
    }

    private static async Task AddItemsAsync(Write write, string table, long planId, ClassPlan plan)
    {
        var position = 0;
        foreach (var item in plan.Items)
            await write.ExecuteAsync(
                $"insert into {table} (plan_id, position, movement, minutes) values (@planId, @position, @Movement, @Minutes)",
                new
                {
                    planId,
                    position = ++position,
                    item.Movement,
                    item.Minutes,
                }
            );
    }

    private static ClassPlan Of(IEnumerable<ItemRow> items) =>
        new([.. items.Select(i => new PlanItem(i.Movement, i.Minutes))]);

    private sealed record ItemRow
    {
        public long PlanId { get; init; }
        public long Subject { get; init; }
        public Instant MadeAt { get; init; }
        public string Movement { get; init; } = "";
        public int Minutes { get; init; }
    }
}
