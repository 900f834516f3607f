using System.Text.Json;
using System.Text.Json.Nodes;

namespace Studio.Api.Tests.Access;

/// <summary>The words that tell about somebody's health, as the catalogue has them.</summary>
public static class HealthWords
{
    /// <summary>Codes and names of every factor and condition, what is said about them, and where that comes from.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        .. StudioApp
            .Book.Factors.SelectMany(f => new[] { f.Code, f.Name, f.InstructorWords })
            .Concat(StudioApp.Book.ClassRules.SelectMany(r => new[] { r.ForHer, r.ForInstructor }))
            .Concat(StudioApp.Book.Sources.Values.SelectMany(s => new[] { s.Cite, s.Title }))
            .OfType<string>()
            .Where(w => w.Length > 0)
            .Distinct(),
    ];

    /// <summary>Codes and names of the listed conditions.</summary>
    public static IReadOnlyList<string> Conditions { get; } =
    [.. StudioApp.Book.Factors.Where(f => f.IsCondition).SelectMany(f => new[] { f.Code, f.Name })];

    /// <summary>Fails when any of these words stands in any text of the answer.</summary>
    public static void AreNotIn(this IEnumerable<string> words, JsonNode answer, string where)
    {
        var texts = Texts(answer).ToList();
        var found = words
            .Where(w => texts.Exists(t => t.Contains(w, StringComparison.OrdinalIgnoreCase)))
            .ToList();
        Assert.True(found.Count == 0, $"{where} tells: {string.Join("; ", found)}");
    }

    /// <summary>Every text in an answer: names of properties that hold something, and values.</summary>
    public static IEnumerable<string> Texts(JsonNode? node) =>
        node switch
        {
            JsonObject o => o.SelectMany(p => Texts(p.Value)),
            JsonArray a => a.SelectMany(Texts),
            JsonValue v when v.GetValueKind() == JsonValueKind.String => [v.GetValue<string>()],
            _ => [],
        };
}
