using Studio.Api.Data;
using Studio.Core.Catalogue;

namespace Studio.Api.Studios;

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

    private sealed record Choice
    {
        public string Code { get; init; } = "";
        public string Value { get; init; } = "";
    }
}
