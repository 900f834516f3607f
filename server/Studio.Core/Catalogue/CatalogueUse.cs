namespace Studio.Core.Catalogue;

/// <summary>Something in use that a new catalogue would take away.</summary>
/// <param name="File">The file that no longer has it.</param>
/// <param name="Code">What is missing or no longer allowed.</param>
/// <param name="Text">Who uses it, and what to do.</param>
public sealed record InUse(string File, string Code, string Text);

/// <summary>What of the catalogue a studio uses: each code with those who use it, in words.</summary>
public sealed record CatalogueUse
{
    /// <summary>Factors and conditions that clients hold now or will.</summary>
    public IReadOnlyDictionary<string, string> Factors { get; init; } =
        new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Stages that classes admit or that clients' records name.</summary>
    public IReadOnlyDictionary<string, string> Stages { get; init; } =
        new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Movements that class plans in force have.</summary>
    public IReadOnlyDictionary<string, string> Movements { get; init; } =
        new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Policies a studio has chosen, with their values.</summary>
    public IReadOnlyDictionary<string, string> Policies { get; init; } =
        new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>All that a new catalogue would take away.</summary>
    public IReadOnlyList<InUse> MissingIn(RuleBook next) =>
        [
            .. StagesMissingIn(next),
            .. Missing(Factors, code => next.FactorOf(code) is not null)
                .Select(f => new InUse(
                    "factors.csv or conditions.csv",
                    f.Code,
                    $"'{f.Code}' stands on the page of {f.By}. Keep its row, or have it ended on her page first."
                )),
            .. Missing(Movements, code => next.MovementOf(code) is not null)
                .Select(m => new InUse(
                    "movements.csv",
                    m.Code,
                    $"The movement '{m.Code}' is in the plan of {m.By}. Keep its row, or take it out of the plan first."
                )),
            .. Policies
                .Where(p => next.Choose(next.Policies, p.Key, p.Value).Refusal is not null)
                .OrderBy(p => p.Key, StringComparer.Ordinal)
                .Select(p => new InUse(
                    "policies.csv",
                    p.Key,
                    $"The studio has chosen {p.Value} for {p.Key}, which the file no longer allows. Keep the value, or choose another first."
                )),
        ];

    /// <summary>The stages alone, without which a studio cannot even open.</summary>
    public IEnumerable<InUse> StagesMissingIn(RuleBook next) =>
        Missing(Stages, code => next.Stages.Stages.Any(s => s.Code == code))
            .Select(s => new InUse(
                "stages.csv",
                s.Code,
                $"The stage '{s.Code}' is in use: {s.By}. Keep its row; its name and its days may change."
            ));

    private static IEnumerable<(string Code, string By)> Missing(
        IReadOnlyDictionary<string, string> used,
        Func<string, bool> isThere
    ) =>
        used.Where(u => !isThere(u.Key))
            .OrderBy(u => u.Key, StringComparer.Ordinal)
            .Select(u => (u.Key, u.Value));
}
