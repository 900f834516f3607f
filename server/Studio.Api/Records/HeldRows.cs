using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Studio.Api.Data;
using Studio.Core.Catalogue;

namespace Studio.Api.Records;

/// <summary>
/// Collects all that is held about a client, as it stands in the tables: every column but those that
/// <see cref="HeldTables"/> names, what is sealed opened, keys in camelCase, people and sessions by name.
/// </summary>
public sealed class HeldRows(RuleBook book)
{
    private static readonly HashSet<string> YesNo = new(StringComparer.Ordinal)
    {
        "is_current",
        "shares_conditions",
        "replaces_earlier",
        "on_paper",
        "is_demo",
        "by_link",
        "carries_over",
    };

    private static readonly HashSet<(string, string)> Json =
    [
        ("screenings", "answers"),
        ("screening_drafts", "answers"),
        ("letters", "restrictions"),
        ("incidents", "signs"),
        ("messages", "facts"),
    ];

    private static readonly HashSet<(string, string)> Sealed = [.. Sealing.Columns];

    /// <summary>Her rows by table, the table's name in camelCase; a table without any of hers has an empty list.</summary>
    public async Task<JsonObject> OfAsync(Read read, long clientId)
    {
        var accountId = await read.ValueAsync<long?>(
            "select account_id from clients where id = @clientId",
            new { clientId }
        );
        var people = await NamesAsync(
            read,
            "select id, name from accounts where closed_at is null"
        );
        var stages = (await read.ListAsync<CodeRow>("select code, name from stages")).ToDictionary(
            s => s.Code,
            s => s.Name,
            StringComparer.Ordinal
        );
        var sessions = new Dictionary<long, string?>();
        var all = new JsonObject();
        foreach (var table in HeldTables.All)
        {
            var rows = await read.ListAsync<dynamic>(
                $"select * from {table.Name} where {table.Of} order by 1, 2",
                new { clientId, accountId }
            );
            var array = new JsonArray();
            foreach (IDictionary<string, object?> row in rows)
                array.Add(await RowAsync(read, table.Name, row, people, stages, sessions));
            all[Camel(table.Name)] = array;
        }

        foreach (var client in HeldMeanings.Rows(all, "clients"))
            client["homeLocation"] = await read.FindAsync<string>(
                "select l.name from clients c join locations l on l.id = c.home_location_id where c.id = @clientId",
                new { clientId }
            );
        HeldMeanings.Add(all, book);
        return all;
    }

    /// <summary><c>client_factors</c> as <c>clientFactors</c>.</summary>
    public static string Camel(string name)
    {
        var words = name.Split('_');
        return words[0]
            + string.Concat(words.Skip(1).Select(w => char.ToUpperInvariant(w[0]) + w[1..]));
    }

    private static async Task<JsonObject> RowAsync(
        Read read,
        string table,
        IDictionary<string, object?> row,
        Dictionary<long, string> people,
        Dictionary<string, string> stages,
        Dictionary<long, string?> sessions
    )
    {
        var one = new JsonObject();
        foreach (var (column, value) in row)
        {
            if (HeldTables.ColumnsNotGiven.ContainsKey((table, column)))
                continue;
            if (column is "client_id" or "by" || column.EndsWith("_by", StringComparison.Ordinal))
            {
                // Whose it is stands above all of it; who did something is a name, not a number.
                if (column != "client_id")
                    one[Camel(column)] = value is long by
                        ? NameOf(people, by)
                        : Node(table, column, value, read.Seal);
                continue;
            }

            one[Camel(column)] = Node(table, column, value, read.Seal);
            if (value is long id && column.EndsWith("session_id", StringComparison.Ordinal))
                one[Camel(column)[..^2]] = sessions.TryGetValue(id, out var known)
                    ? known
                    : sessions[id] = await SessionAsync(read, id);
            else if (value is long cls && column == "class_id")
                one["className"] = await read.FindAsync<string>(
                    "select name from classes where id = @cls",
                    new { cls }
                );
            else if (
                value is long who
                && table is "audit" or "flag_reads"
                && column == "account_id"
            )
                one["who"] = value is long account ? NameOf(people, account) : "the program";
            else if (value is string stage && column is "stage" or "to_stage")
                one[Camel(column) + "Name"] = stages.GetValueOrDefault((string)value!);
        }

        return one;
    }

    private static string NameOf(Dictionary<long, string> people, long id) =>
        people.GetValueOrDefault(id) ?? "an account that is gone";

    private static JsonNode? Node(string table, string column, object? value, Seal seal) =>
        value switch
        {
            null => null,
            long number when YesNo.Contains(column) => number == 1,
            long number => number,
            string text when Json.Contains((table, column)) => Keys(
                JsonNode.Parse(seal.Open(text))
            ),
            string text when Sealed.Contains((table, column)) => seal.Open(text),
            string text => text,
            _ => Convert.ToString(value, CultureInfo.InvariantCulture),
        };

    private static JsonNode? Keys(JsonNode? node) =>
        node is JsonObject one
            ? new JsonObject(
                one.Select(p =>
                    KeyValuePair.Create(
                        JsonNamingPolicy.CamelCase.ConvertName(p.Key),
                        Keys(p.Value?.DeepClone())
                    )
                )
            )
            : node;

    private static async Task<string?> SessionAsync(Read read, long id) =>
        await read.FindAsync<string>(
            """
            select k.name || ', ' || s.on_date || ' ' || s.starts_local || ', ' || l.name
              from sessions s
              join classes k on k.id = s.class_id
              join rooms r on r.id = s.room_id
              join locations l on l.id = r.location_id
             where s.id = @id
            """,
            new { id }
        );

    private static async Task<Dictionary<long, string>> NamesAsync(Read read, string sql) =>
        (await read.ListAsync<NameRow>(sql)).ToDictionary(r => r.Id, r => r.Name);

    private sealed record NameRow
    {
        public long Id { get; init; }
        public string Name { get; init; } = "";
    }

    private sealed record CodeRow
    {
        public string Code { get; init; } = "";
        public string Name { get; init; } = "";
    }
}
