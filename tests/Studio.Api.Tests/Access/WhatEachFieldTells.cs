using System.Text.Json.Nodes;

namespace Studio.Api.Tests.Access;

/// <summary>
/// Every property of every answer to a GET below the owner, with who may find something in it: the table "people and what
/// each may see" field by field. A property that is not in <see cref="Fields"/> fails until somebody has thought about it.
/// </summary>
public class WhatEachFieldTells
{
    private static readonly (string Who, char Letter)[] Looking =
    [
        ("desk", 'D'),
        ("instructor", 'I'),
        ("reviewer", 'R'),
    ];

    [Fact]
    public async Task About_a_client_with_everything_is_what_the_table_allows()
    {
        await using var app = await StudioApp.Empty();
        var studio = new Everything(app);
        await studio.Furnish();
        var places = await studio.SheComes();
        var walk = await Walk.Of(app);
        var told = new Dictionary<string, HashSet<char>>(StringComparer.Ordinal);
        var addresses = walk.Addresses(studio.Places)
            .Concat(walk.Addresses(places))
            .Distinct()
            .ToList();
        foreach (var (route, address) in addresses)
        {
            if (walk.SchemaOf(route) is not { } schema)
                continue;
            var open = false;
            foreach (var (who, letter) in Looking)
            {
                var answer = await Walk.Ask(studio.Browsers[who], address);
                if (!answer.StartsWith("200 ", StringComparison.Ordinal))
                    continue;
                open = true;
                Told(JsonNode.Parse(answer[4..]), schema, walk.Schemas, letter, told);
            }
            if (open)
                Properties(schema, walk.Schemas, told, []);
        }

        var wrong = told.Where(t => !Fields.Allowed.ContainsKey(t.Key))
            .Select(t => $"not in the table: {t.Key} {string.Concat(t.Value.Order())}")
            .Concat(
                told.Where(t =>
                        Fields.Allowed.TryGetValue(t.Key, out var allowed)
                        && t.Value.Any(l => !allowed.Contains(l))
                    )
                    .Select(t => $"told: {t.Key} to {string.Concat(t.Value.Order())}")
            )
            .Concat(
                Fields
                    .Allowed.Keys.Where(k => !told.ContainsKey(k))
                    .Select(k => $"no such field: {k}")
            );
        Assert.True(!wrong.Any(), string.Join('\n', wrong.Order()));
    }

    // In words: what a field may hold is not yet what may stand in it.
    [Fact]
    public async Task Is_never_the_words_of_a_letter_an_incident_or_an_answer_to_whom_they_are_not_for()
    {
        await using var app = await StudioApp.Empty();
        var studio = new Everything(app);
        await studio.Furnish();
        var places = await studio.SheComes();
        var walk = await Walk.Of(app);
        var catalogue = new[]
        {
            "/api/factors",
            "/api/warning-signs",
            "/api/stages",
            "/api/catalogue/",
            "/api/movements",
        };
        var wrong = new List<string>();
        foreach (
            var (route, address) in walk.Addresses(studio.Places)
                .Concat(walk.Addresses(places))
                .Distinct()
        )
        {
            // The catalogue itself is about nobody; neither are the questions before they are answered.
            if (Array.Exists(catalogue, c => route.StartsWith(c, StringComparison.Ordinal)))
                continue;
            foreach (var (who, _) in Looking)
            {
                var answer = await Walk.Ask(studio.Browsers[who], address);
                if (!answer.StartsWith("200 ", StringComparison.Ordinal))
                    continue;
                List<string> secrets = ["1991-07-23"];
                if (who != "reviewer")
                    secrets.AddRange([Everything.Happened, "Dr Zephyrine", "\"babies\":2"]);
                if (who == "desk")
                    secrets.AddRange([Everything.Note, Everything.LetterWords]);
                if (who == "desk" && !route.EndsWith("/screening", StringComparison.Ordinal))
                    secrets.AddRange(HealthWords.All);
                if (who == "instructor")
                    secrets.AddRange(
                        StudioApp.Book.Factors.Where(f => f.IsCondition).Select(f => f.Name)
                    );
                wrong.AddRange(
                    secrets
                        .Where(s => answer.Contains(s, StringComparison.OrdinalIgnoreCase))
                        .Select(s => $"{who} {address} tells {s}")
                );
            }
        }
        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Distinct()));
    }

    private static void Told(
        JsonNode? node,
        JsonNode schema,
        JsonObject schemas,
        char letter,
        Dictionary<string, HashSet<char>> told
    )
    {
        if (node is null)
            return;
        foreach (var (name, one) in Named(schema, schemas))
        {
            if (node is JsonArray items && one["items"] is { } item)
                foreach (var each in items)
                    Told(each, item, schemas, letter, told);
            if (node is not JsonObject fields || one["properties"] is not JsonObject properties)
                continue;
            foreach (var (field, of) in properties)
            {
                if (fields[field] is not { } value || value is JsonArray { Count: 0 })
                    continue;
                Of(told, $"{name}.{field}").Add(letter);
                Told(value, of!, schemas, letter, told);
            }
        }
    }

    private static void Properties(
        JsonNode schema,
        JsonObject schemas,
        Dictionary<string, HashSet<char>> told,
        HashSet<string> seen
    )
    {
        foreach (var (name, one) in Named(schema, schemas))
        {
            if (one["items"] is { } item)
                Properties(item, schemas, told, seen);
            if (one["properties"] is not JsonObject properties || !seen.Add(name))
                continue;
            foreach (var (field, of) in properties)
            {
                Of(told, $"{name}.{field}");
                Properties(of!, schemas, told, seen);
            }
        }
    }

    // What a schema says, behind its references and alternatives, each with its name.
    private static IEnumerable<(string Name, JsonNode Schema)> Named(
        JsonNode schema,
        JsonObject schemas
    )
    {
        if ((string?)schema["$ref"] is { } reference)
        {
            var name = reference.Split('/')[^1];
            return [(name, schemas[name]!)];
        }
        if ((schema["oneOf"] ?? schema["anyOf"]) is JsonArray either)
            return either.SelectMany(e => Named(e!, schemas));
        return [("", schema)];
    }

    private static HashSet<char> Of(Dictionary<string, HashSet<char>> told, string field)
    {
        if (!told.TryGetValue(field, out var letters))
            told[field] = letters = [];
        return letters;
    }
}
