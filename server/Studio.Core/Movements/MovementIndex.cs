namespace Studio.Core.Movements;

/// <summary>The movements by number, each with the rules that may speak of it, so that nothing is searched twice.</summary>
internal sealed class MovementIndex
{
    private readonly Dictionary<string, int> numbers;
    private readonly int[][] gentler;
    private readonly int[][] rulesOf;

    public MovementIndex(IReadOnlyList<Movement> movements, IReadOnlyList<MovementRule> rules)
    {
        Movements = movements;
        Rules = rules;
        numbers = movements
            .Select((m, at) => (m.Code, at))
            .ToDictionary(m => m.Code, m => m.at, StringComparer.Ordinal);
        gentler = [.. movements.Select(Gentler)];
        rulesOf =
        [
            .. movements.Select(m =>
                Enumerable.Range(0, rules.Count).Where(r => rules[r].Target.Names(m)).ToArray()
            ),
        ];
    }

    public IReadOnlyList<Movement> Movements { get; }

    public IReadOnlyList<MovementRule> Rules { get; }

    public int? NumberOf(string code) => numbers.TryGetValue(code, out var number) ? number : null;

    public Movement? MovementOf(string code) =>
        numbers.TryGetValue(code, out var number) ? Movements[number] : null;

    /// <summary>A movement's gentler options, theirs and so on, each once: the nearest first, in the order listed.</summary>
    public ReadOnlySpan<int> GentlerThan(int movement) => gentler[movement];

    /// <summary>The rules that speak of a movement, whatever its effort.</summary>
    public ReadOnlySpan<int> RulesOf(int movement) => rulesOf[movement];

    // Breadth-first.
    private int[] Gentler(Movement movement)
    {
        var found = new List<int> { numbers[movement.Code] };
        for (var at = 0; at < found.Count; at++)
            foreach (var option in Movements[found[at]].Options)
                if (!found.Contains(numbers[option]))
                    found.Add(numbers[option]);
        return [.. found.Skip(1)];
    }
}
