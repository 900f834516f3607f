namespace Studio.Api.Tests.Access;

/// <summary>Who may find something in a field of an answer: D the front desk, I an instructor, R a reader of letters.</summary>
internal static class Fields
{
    /// <summary>By schema and property.</summary>
    public static IReadOnlyDictionary<string, string> Allowed { get; } =
        Table
            .Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.Split(' '))
            .SelectMany(line => line.Skip(2).Select(field => ($"{line[0]}.{field}", line[1])))
            .ToDictionary(f => f.Item1, f => f.Item2, StringComparer.Ordinal);

    private const string Table = """
        X DIR y
        """;
}
