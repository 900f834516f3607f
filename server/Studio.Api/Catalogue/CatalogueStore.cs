using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core.Catalogue;

namespace Studio.Api.Catalogue;

/// <summary>A version of the catalogue that was put in force here.</summary>
public sealed record VersionRow
{
    /// <summary>Its number, from 1 on.</summary>
    public int Id { get; init; }

    /// <summary>When.</summary>
    public Instant MadeAt { get; init; }

    /// <summary>Who; null when it was done at a start.</summary>
    public string? MadeBy { get; init; }

    /// <summary>Why, in her own words; may be blank.</summary>
    public string Why { get; init; } = "";

    /// <summary>It is the program's own catalogue.</summary>
    public bool Own { get; init; }

    /// <summary>The version it goes back to.</summary>
    public int? BackTo { get; init; }
}

/// <summary>Versions of the catalogue, and what of it is in use.</summary>
public static class CatalogueStore
{
    private const string Select = """
        select v.id, v.made_at as MadeAt, a.name as MadeBy, v.why, v.own, v.back_to as BackTo
          from catalogue_versions v left join accounts a on a.id = v.made_by
        """;

    /// <summary>Every version, the newest first.</summary>
    public static Task<List<VersionRow>> ListAsync(Read read) =>
        read.ListAsync<VersionRow>($"{Select} order by v.id desc");

    /// <summary>One version.</summary>
    public static Task<VersionRow?> FindAsync(Read read, int id) =>
        read.FindAsync<VersionRow>($"{Select} where v.id = @id", new { id });

    /// <summary>The newest version, which is in force; null when none was ever put in force here.</summary>
    public static Task<VersionRow?> NewestAsync(Read read) =>
        read.FindAsync<VersionRow>($"{Select} order by v.id desc limit 1");

    /// <summary>The files of a version; a file it was stored without is the program's own.</summary>
    public static async Task<CatalogueTexts> TextsAsync(
        Read read,
        VersionRow version,
        CatalogueTexts own
    ) =>
        version.Own
            ? own
            : own.With(
                (
                    await read.ListAsync<FileRow>(
                        "select name, text from catalogue_files where version_id = @Id",
                        version
                    )
                ).Select(f => KeyValuePair.Create(f.Name, f.Text))
            );

    /// <summary>Adds a version; without texts it is the program's own.</summary>
    public static async Task<int> AddAsync(
        Write write,
        CatalogueTexts? texts,
        int? backTo,
        string why,
        Instant at,
        long? by
    )
    {
        var id = await write.InsertAsync(
            """
            insert into catalogue_versions (made_at, made_by, why, own, back_to)
            values (@at, @by, @why, @own, @backTo)
            """,
            new
            {
                at,
                by,
                why,
                own = texts is null,
                backTo,
            }
        );
        foreach (var name in texts is null ? [] : CatalogueTexts.Names)
            await write.ExecuteAsync(
                "insert into catalogue_files (version_id, name, text) values (@id, @name, @text)",
                new
                {
                    id,
                    name,
                    text = texts![name],
                }
            );
        return (int)id;
    }

    /// <summary>What of the catalogue this studio uses, from a day on.</summary>
    /// <param name="read">The transaction.</param>
    /// <param name="fits">Knows the plan of every session.</param>
    /// <param name="chosen">The policies chosen.</param>
    /// <param name="now">The moment; sessions that are over use nothing any more.</param>
    public static async Task<CatalogueUse> UseAsync(
        Read read,
        Fits fits,
        IReadOnlyDictionary<string, string> chosen,
        Instant now
    )
    {
        var held = (
            await read.ListAsync<HeldCode>(
                "select client_id as ClientId, code from client_factors where to_on is null or to_on >= @from",
                // Yesterday by UTC is no later than today anywhere.
                new { from = now.InUtc().Date.PlusDays(-1) }
            )
        ).Select(h => (h.ClientId, Code: read.Seal.Open(h.Code))).Distinct().CountBy(h => h.Code);
        var planned = await read.ListAsync<Used>(
            """
            select distinct i.movement as Code, 0 as Count, k.name
              from class_plan_items i
              join class_plans p on p.id = i.plan_id
              join classes k on k.id = p.class_id
             where p.version = (select max(q.version) from class_plans q where q.class_id = p.class_id)
            """
        );
        var ahead = (await SessionStore.ListAsync(read, new SessionsWanted()))
            .Where(s => s.EndsAt > now && s.Status == SessionStatus.Open)
            .SelectMany(s =>
                (fits.PlanOf(s)?.Items ?? []).Select(i => new Used
                {
                    Code = i.Movement,
                    Name = s.ClassName,
                })
            );
        return new()
        {
            Factors = held.ToDictionary(
                h => h.Key,
                h => h.Value == 1 ? "1 client" : $"{h.Value} clients",
                StringComparer.Ordinal
            ),
            Stages = await StagesAsync(read),
            Movements = planned
                .Concat(ahead)
                .GroupBy(u => u.Code, StringComparer.Ordinal)
                .ToDictionary(
                    g => g.Key,
                    g => string.Join(", ", g.Select(u => u.Name).Distinct().Order()),
                    StringComparer.Ordinal
                ),
            Policies = chosen,
        };
    }

    /// <summary>The stages in use, each with what uses it.</summary>
    public static async Task<IReadOnlyDictionary<string, string>> StagesAsync(Read read) => (
            await read.ListAsync<Used>(
                """
                select stage as Code, 1 as Count, 'the class ' || k.name as Name
                  from class_stages s join classes k on k.id = s.class_id
                union all
                select stage, count(*), 'clients in it' from pregnancies where stage is not null group by stage
                union all
                select stage, count(*), 'changes of stage noted' from stage_changes group by stage
                union all
                select to_stage, count(*), 'moves suggested' from moves group by to_stage
                """
            )
        ).GroupBy(u => u.Code, StringComparer.Ordinal).ToDictionary(g => g.Key, g => string.Join(", ", g.Select(u => u.Name.StartsWith("the class", StringComparison.Ordinal) ? u.Name : $"{u.Count} {u.Name}")), StringComparer.Ordinal);

    private sealed record FileRow
    {
        public string Name { get; init; } = "";
        public string Text { get; init; } = "";
    }

    private sealed record HeldCode
    {
        public long ClientId { get; init; }
        public string Code { get; init; } = "";
    }

    private sealed record Used
    {
        public string Code { get; init; } = "";
        public long Count { get; init; }
        public string Name { get; init; } = "";
    }
}
