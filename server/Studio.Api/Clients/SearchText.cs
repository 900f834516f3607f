using System.Globalization;
using System.Text;

namespace Studio.Api.Clients;

/// <summary>Folds names so that "jose" finds "José" and "0611" finds "+351 06 11"; what the find box looks through.</summary>
public static class SearchText
{
    /// <summary>The folded text of these parts, with the digits of each part run together as well.</summary>
    public static string Of(params IReadOnlyList<string> parts) =>
        string.Join(' ', parts.Select(Fold).Concat(parts.Select(Digits).Where(d => d.Length > 2)));

    /// <summary>A folded pattern for LIKE, its own wildcards escaped.</summary>
    public static string Like(string word)
    {
        var folded = Fold(word).Replace(@"\", @"\\").Replace("%", @"\%").Replace("_", @"\_");
        return $"%{folded}%";
    }

    private static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var c in text.Normalize(NormalizationForm.FormD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark)
                folded.Append(char.ToLowerInvariant(c));
        }

        return folded.ToString();
    }

    private static string Digits(string text) => string.Concat(text.Where(char.IsAsciiDigit));
}
