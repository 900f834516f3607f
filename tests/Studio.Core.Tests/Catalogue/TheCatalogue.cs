using Studio.Core.Catalogue;

namespace Studio.Core.Tests.Catalogue;

/// <summary>The catalogue that ships, and the same one with a file changed.</summary>
internal static class TheCatalogue
{
    public static RuleBook Book { get; } = Parse();

    public static string TextOf(string file) =>
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "catalogue", file));

    /// <summary>The catalogue with some files' text changed.</summary>
    public static RuleBook Parse(params (string File, Func<string, string> Change)[] changes) =>
        RuleBook.Parse(file => new StringReader(
            changes.Where(c => c.File == file).Aggregate(TextOf(file), (text, c) => c.Change(text))
        ));

    /// <summary>Every error of a catalogue with some files' text changed.</summary>
    public static IReadOnlyList<string> ErrorsOf(
        params (string File, Func<string, string> Change)[] changes
    ) => Assert.Throws<CatalogueException>(() => Parse(changes)).Errors;

    /// <summary>The 1-based line on which a row begins with a code.</summary>
    public static int LineOf(string file, string start) =>
        Array.FindIndex(
            TextOf(file).Split('\n'),
            line => line.StartsWith(start, StringComparison.Ordinal)
        ) + 1;

    /// <summary>A text with the first such words of one line replaced.</summary>
    public static string ReplaceOnLine(string text, int line, string from, string to)
    {
        var lines = text.Split('\n');
        var at = lines[line - 1].IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, $"line {line} has no \"{from}\": {lines[line - 1]}");
        lines[line - 1] = lines[line - 1].Remove(at, from.Length).Insert(at, to);
        return string.Join('\n', lines);
    }
}
