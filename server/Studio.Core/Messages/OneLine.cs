using System.Globalization;
using System.Text;

namespace Studio.Core.Messages;

/// <summary>Makes one harmless line of any text.</summary>
public static class OneLine
{
    /// <summary>The longest line that is kept.</summary>
    public const int Most = 300;

    /// <summary>
    /// The text with every line break, control character and mark that turns the direction of writing made a space, and
    /// spaces run together: what a header field may not hold (RFC 5322, 2.2) cannot get into one.
    /// </summary>
    public static string Of(string text)
    {
        var line = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            var kind = Rune.GetUnicodeCategory(rune);
            var breaks =
                kind
                    is UnicodeCategory.Control
                        or UnicodeCategory.Format
                        or UnicodeCategory.LineSeparator
                        or UnicodeCategory.ParagraphSeparator
                        or UnicodeCategory.Surrogate
                || Rune.IsWhiteSpace(rune)
                || rune == Rune.ReplacementChar;
            if (!breaks)
                line.Append(rune.ToString());
            else if (line.Length > 0 && line[^1] != ' ')
                line.Append(' ');
            if (line.Length >= Most)
                return line.ToString().TrimEnd() + "…";
        }

        return line.ToString().TrimEnd();
    }

    /// <summary>Each line of a text as one harmless line; empty ones are left out.</summary>
    public static IReadOnlyList<string> Each(string text) =>
        [.. text.Split('\n').Select(Of).Where(line => line.Length > 0)];
}
