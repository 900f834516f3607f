using System.Globalization;
using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;
using Studio.Core.Pregnancies;

namespace Studio.Api.Records;

/// <summary>Tells her rows in plain words, for a page and for paper.</summary>
public static class HeldWords
{
    /// <summary>How many entries of the audit the page tells.</summary>
    public const int NewestOfTrail = 200;

    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    // What the tables say in a code.
    private static readonly Dictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["lastPeriod"] = "First day of the last period",
        ["scan"] = "Ultrasound",
        ["transfer"] = "Embryo transfer",
        ["stated"] = "Stated by a clinician",
        ["vaginal"] = "Vaginal",
        ["assisted"] = "Assisted",
        ["caesarean"] = "Caesarean",
        ["unknown"] = "Not said",
        ["nothingFound"] = "Nothing that speaks against classes",
        ["clearanceNeeded"] = "A letter is needed",
        ["noExercise"] = "No class for now",
        ["sent"] = "Sent",
        ["dropped"] = "Not sent",
        ["waiting"] = "Waiting",
        ["counts"] = "Read, and it counts",
        ["refused"] = "Read, and it cannot count",
        ["booked"] = "Booked",
        ["cancelled"] = "Cancelled",
        ["released"] = "Let go without charge",
        ["moved"] = "Moved to another class",
        ["calledOff"] = "The class was not held",
        ["overlap"] = "The class was moved onto another one of hers",
        ["open"] = "Open",
        ["accepted"] = "Accepted",
        ["declined"] = "Declined",
        ["lapsed"] = "No longer possible",
        ["info"] = "For information",
        ["attention"] = "To be looked at",
        ["urgent"] = "Urgent",
        ["owner"] = "Owner",
        ["reviewer"] = "Reader of letters",
        ["herself"] = "Yourself",
        ["instructor"] = "Instructor",
        ["frontDesk"] = "Front desk",
        ["client"] = "Client",
        ["program"] = "The program",
        ["read"] = "Read",
        ["change"] = "Changed",
    };

    private static readonly HashSet<string> Coded = new(StringComparer.Ordinal)
    {
        "kind",
        "basis",
        "birthMode",
        "outcome",
        "state",
        "status",
        "letGo",
        "severity",
        "seenAs",
        "act",
        "role",
    };

    // Her row in clients is told under three headings.
    private static readonly Dictionary<string, string> Elsewhere = new(StringComparer.Ordinal)
    {
        ["phone"] = "contact",
        ["email"] = "contact",
        ["emergencyName"] = "emergency",
        ["emergencyPhone"] = "emergency",
    };

    /// <summary>All subjects, each with what is held of it.</summary>
    /// <param name="rows">Her rows, as <see cref="HeldRows"/> collects them, or a part of them.</param>
    /// <param name="zone">In whose time moments are told.</param>
    /// <param name="onlyHeld">Leave out the headings under which nothing stands.</param>
    public static IReadOnlyList<HeldSection> Of(JsonObject rows, DateTimeZone zone, bool onlyHeld)
    {
        var entries = new Dictionary<string, List<HeldEntry>>(StringComparer.Ordinal);
        var unnamed = new List<string>();
        foreach (var (table, _) in rows.Where(r => r.Value is JsonArray))
        {
            var labels = HeldLabels.Of(table);
            if (labels.Section is null)
                unnamed.Add(table);
            // Told with the row it belongs to, where that is there.
            var parent = HeldLabels.Parents.GetValueOrDefault(table).Table;
            if (parent is null || rows[parent] is not JsonArray)
                foreach (var row in Told(table))
                    Tell(table, row);
        }

        return
        [
            .. HeldLabels
                .Sections.Concat(unnamed.Select(t => (t, HeldLabels.Plain(t), "")))
                .Select(s => new HeldSection(s.Item1, s.Item2, s.Item3, Under(s.Item1)))
                .Where(s => !onlyHeld || s.Entries.Count > 0),
        ];

        // A trail grows with every look; the page tells its newest part, the file all of it.
        IEnumerable<JsonObject> Told(string table) =>
            table == "audit"
                ? HeldMeanings.Rows(rows, table).Reverse().Take(NewestOfTrail)
                : HeldMeanings.Rows(rows, table);

        void Tell(string table, JsonObject row)
        {
            if (table == "audit")
            {
                Looks().Add(Look(row, zone));
                return;
            }

            foreach (var part in Parts(table, row, HeldLabels.Of(table), zone))
                Under(part.Section).Add(part.Entry);
            foreach (var (child, of) in HeldLabels.Parents.Where(p => p.Value.Table == table))
            foreach (
                var below in HeldMeanings
                    .Rows(rows, child)
                    .Where(r => (long?)r[of.Column] == (long?)row["id"])
            )
                Tell(child, below);
        }

        // One entry for all of them, a line each.
        List<HeldFact> Looks()
        {
            if (Under("audit").Count == 0)
                Under("audit").Add(new HeldEntry("", new List<HeldFact>(), null));
            return (List<HeldFact>)Under("audit")[0].Facts;
        }

        List<HeldEntry> Under(string section) =>
            entries.TryGetValue(section, out var list) ? list : entries[section] = [];
    }

    private static HeldFact Look(JsonObject row, DateTimeZone zone)
    {
        string Word(string column) => row[column] is { } value ? Text(column, value, zone) : "";
        var where = Word("session");
        return new(
            Word("at"),
            $"{Word("who")} ({Word("seenAs")}): {Word("act")} {Word("kind")}{(where.Length > 0 ? $", {where}" : "")}"
        );
    }

    private static IEnumerable<(string Section, HeldEntry Entry)> Parts(
        string table,
        JsonObject row,
        TableLabels labels,
        DateTimeZone zone
    )
    {
        var named = labels.Labels.Where(l => row.ContainsKey(l.Column));
        var others = row.Select(p => p.Key)
            .Except(labels.Labels.Select(l => l.Column), StringComparer.Ordinal)
            .Except(labels.Silent, StringComparer.Ordinal)
            .Select(c => (Column: c, Label: HeldLabels.Plain(c)));
        var section = labels.Section ?? table;
        return named
            .Concat(others)
            .GroupBy(l =>
                table == "clients" ? Elsewhere.GetValueOrDefault(l.Column, section) : section
            )
            .Select(g =>
                (
                    g.Key,
                    new HeldEntry(
                        table == "clients" && g.Key != "who" ? "" : labels.Entry,
                        [.. g.SelectMany(l => Facts(l.Label, l.Column, row[l.Column], zone))],
                        table == "letters" && row["mediaType"] is not null ? (long?)row["id"] : null
                    )
                )
            );
    }

    private static IEnumerable<HeldFact> Facts(
        string label,
        string column,
        JsonNode? value,
        DateTimeZone zone
    )
    {
        if (value is JsonObject named)
            foreach (var (name, fact) in named.Where(f => f.Value is not null))
                yield return new(HeldLabels.Plain(name), Text(name, fact!, zone));
        else if (value is JsonArray list)
            foreach (var one in list)
                yield return one is JsonObject answer
                    ? new((string)answer["asks"]!, Answer(answer))
                    : new(label, Text(column, one!, zone));
        else if (value is not null && Text(column, value, zone) is { Length: > 0 } text)
            yield return new(label, text);
    }

    private static string Answer(JsonObject answer) =>
        (string?)answer["since"] is { } since
        && LocalDatePattern.Iso.Parse(since).TryGetValue(default, out var day)
            ? $"{(string?)answer["answer"]}, since {Wording.Date(day)}"
            : (string?)answer["answer"] ?? "";

    private static string Text(string column, JsonNode value, DateTimeZone zone)
    {
        if (value.GetValueKind() is System.Text.Json.JsonValueKind.True)
            return "Yes";
        if (value.GetValueKind() is System.Text.Json.JsonValueKind.False)
            return "No";
        if (value is not JsonValue plain || !plain.TryGetValue<string>(out var text))
            return Convert.ToString(value, CultureInfo.InvariantCulture)!;
        if (Coded.Contains(column))
            return Codes.GetValueOrDefault(text) ?? HeldLabels.Plain(text);
        if (LocalDatePattern.Iso.Parse(text).TryGetValue(default, out var day))
            return Wording.Date(day);
        if (InstantPattern.ExtendedIso.Parse(text).TryGetValue(default, out var moment))
        {
            var there = moment.InZone(zone);
            return $"{Wording.Date(there.Date)}, {Clock.Format(there.TimeOfDay)}";
        }

        return text;
    }
}
