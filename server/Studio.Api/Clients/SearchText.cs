using System.Globalization;
using System.Text;

namespace Studio.Api.Clients;

/// <summary>Folds names so that "jose" finds "José" and "0611" finds "+351 06 11"; what the find box looks through.</summary>
public static class SearchText
{
    /// <summary>The folded text of these parts, with the digits of each part run together as well.</summary>
    public static string Of(params IReadOnlyList<string> parts) =>
        string.Join(' ', parts.Select(Fold).Concat(parts.Select(Digits).Where(d => d.Length > 2)));

    /// <summary>Whether a name, or what she is called, holds every one of these words, however it is accented.</summary>
    public static bool NameHolds(IReadOnlyList<string> words, params IReadOnlyList<string> names)
    {
        var folded = string.Join(' ', names.Select(Fold));
        return words.All(word => folded.Contains(Fold(word), StringComparison.Ordinal));
    }

    /// <summary>The words of what was typed, eight at the most.</summary>
    public static IReadOnlyList<string> Words(string? typed) =>
        [
            .. (typed ?? "")
                .Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .Take(8),
        ];

    /// <summary>A folded pattern for LIKE, its own wildcards escaped.</summary>
    public static string Like(string word)
    {
        var folded = Fold(word).Replace(@"\", @"\\").Replace("%", @"\%").Replace("_", @"\_");
        return $"%{folded}%";
    }

    // Marks that stand by themselves go, and letters that carry one become the letter below it.
    private static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            var letter = char.ToLowerInvariant(c);
            if (Plain.TryGetValue(letter, out var plain))
                folded.Append(plain);
            else if (CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark)
                folded.Append(letter);
        }

        return folded.ToString();
    }

    // The runtime decomposes nothing here, since it runs without tables of cultures: Latin letters as Unicode composes them.
    private static readonly Dictionary<char, string> Plain = new Dictionary<string, string>(
        StringComparer.Ordinal
    )
    {
        ["a"] = "àáâãäåāăąǎǟǡǻȁȃȧḁạảấầẩẫậắằẳẵặ",
        ["b"] = "ḃḅḇ",
        ["c"] = "çćĉċčḉ",
        ["d"] = "ďḋḍḏḑḓđ",
        ["e"] = "èéêëēĕėęěȅȇȩḕḗḙḛḝẹẻẽếềểễệ",
        ["f"] = "ḟ",
        ["g"] = "ĝğġģǧǵḡ",
        ["h"] = "ĥȟḣḥḧḩḫẖħ",
        ["i"] = "ìíîïĩīĭįǐȉȋḭḯỉịı",
        ["j"] = "ĵǰ",
        ["k"] = "ķǩḱḳḵ",
        ["l"] = "ĺļľḷḹḻḽł",
        ["m"] = "ḿṁṃ",
        ["n"] = "ñńņňǹṅṇṉṋ",
        ["o"] = "òóôõöōŏőơǒǫǭȍȏȫȭȯȱṍṏṑṓọỏốồổỗộớờởỡợø",
        ["p"] = "ṕṗ",
        ["r"] = "ŕŗřȑȓṙṛṝṟ",
        ["s"] = "śŝşšșṡṣṥṧṩ",
        ["t"] = "ţťțṫṭṯṱẗŧ",
        ["u"] = "ùúûüũūŭůűųưǔǖǘǚǜȕȗṳṵṷṹṻụủứừửữự",
        ["v"] = "ṽṿ",
        ["w"] = "ŵẁẃẅẇẉẘ",
        ["x"] = "ẋẍ",
        ["y"] = "ýÿŷȳẏẙỳỵỷỹ",
        ["z"] = "źżžẑẓẕ",
        ["ss"] = "ßẞ",
        ["ae"] = "æ",
        ["oe"] = "œ",
        ["th"] = "þ",
    }
        .SelectMany(group => group.Value.Select(letter => (letter, group.Key)))
        .ToDictionary(pair => pair.letter, pair => pair.Key);

    private static string Digits(string text) => string.Concat(text.Where(char.IsAsciiDigit));
}
