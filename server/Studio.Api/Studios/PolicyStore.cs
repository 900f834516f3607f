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
        foreach (var choice in await read.ListAsync<Choice>("select code, value from policies order by code"))
        {
            // A stored choice that the catalogue no longer knows leaves its cautious default standing.
            if (policies.With(choice.Code, choice.Value).TryGet(out var chosen, out _))
                policies = chosen;
        }

        return policies;
    }

    private sealed record Choice
    {
        public string Code { get; init; } = "";
        public string Value { get; init; } = "";
    }
}
