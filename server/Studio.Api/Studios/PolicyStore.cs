using NodaTime;
using Studio.Api.Data;
using Studio.Core.Catalogue;

namespace Studio.Api.Studios;

/// <summary>A change of a policy; never rewritten.</summary>
public sealed record PolicyChange
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Which policy.</summary>
    public string Code { get; init; } = "";

    /// <summary>What held before.</summary>
    public string From { get; init; } = "";

    /// <summary>What holds from then on.</summary>
    public string To { get; init; } = "";

    /// <summary>The studio follows the catalogue's default again.</summary>
    public bool ByDefault { get; init; }

    /// <summary>Why, in her own words; may be blank.</summary>
    public string Why { get; init; } = "";

    /// <summary>When.</summary>
    public Instant MadeAt { get; init; }

    /// <summary>Who.</summary>
    public string? MadeBy { get; init; }
}

/// <summary>What this studio has chosen where sources disagree; the catalogue's defaults otherwise.</summary>
public static class PolicyStore
{
    /// <summary>The policies in force.</summary>
    public static async Task<StudioPolicies> InForceAsync(Read read, RuleBook book)
    {
        var policies = book.Policies;
        foreach (var (code, value) in await ChosenAsync(read, book))
        {
            if (book.Choose(policies, code, value).TryGet(out var chosen, out _))
                policies = chosen;
        }

        return policies;
    }

    /// <summary>The choices the catalogue still allows; for any other its cautious default stands.</summary>
    public static async Task<IReadOnlyDictionary<string, string>> ChosenAsync(
        Read read,
        RuleBook book
    ) =>
        (await read.ListAsync<Choice>("select code, value from policies order by code"))
            .Where(c => book.Choose(book.Policies, c.Code, c.Value).Refusal is null)
            .ToDictionary(c => c.Code, c => c.Value, StringComparer.Ordinal);

    /// <summary>Chooses a value; null follows the default.</summary>
    public static Task SetAsync(Write write, string code, string? value, Instant at, long? by) =>
        write.ExecuteAsync(
            value is null
                ? "delete from policies where code = @code"
                : """
                insert into policies (code, value, changed_at, changed_by) values (@code, @value, @at, @by)
                on conflict (code) do update
                   set value = excluded.value, changed_at = excluded.changed_at, changed_by = excluded.changed_by
                """,
            new
            {
                code,
                value,
                at,
                by,
            }
        );

    /// <summary>Notes a change.</summary>
    public static Task NoteAsync(Write write, PolicyChange change, long? by) =>
        write.ExecuteAsync(
            """
            insert into policy_changes (code, from_value, to_value, by_default, why, made_at, made_by)
            values (@Code, @From, @To, @ByDefault, @Why, @MadeAt, @by)
            """,
            new
            {
                change.Code,
                change.From,
                change.To,
                change.ByDefault,
                change.Why,
                change.MadeAt,
                by,
            }
        );

    /// <summary>Every change, the newest first.</summary>
    public static Task<List<PolicyChange>> ChangesAsync(Read read) =>
        read.ListAsync<PolicyChange>(
            """
            select p.id, p.code, p.from_value as "From", p.to_value as "To", p.by_default as ByDefault, p.why,
                   p.made_at as MadeAt, a.name as MadeBy
              from policy_changes p left join accounts a on a.id = p.made_by
             order by p.id desc
            """
        );

    private sealed record Choice
    {
        public string Code { get; init; } = "";
        public string Value { get; init; } = "";
    }
}
