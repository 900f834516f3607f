using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Unicode;
using NodaTime;
using NodaTime.Text;

namespace Studio.Api.Records;

/// <summary>
/// All that is held about a client as one JSON file. Beside <c>format</c> and <c>made</c> (a moment in UTC) it has
/// <c>about</c>, a sentence a list on what stands in it, and one list a table. Keys are camelCase, days
/// <c>2027-03-04</c>, moments <c>2027-03-04T18:00:00.000Z</c>. What a code means stands beside it in words. A change that
/// takes away or renames anything makes another version; something more does not.
/// </summary>
public static class RecordFile
{
    /// <summary>Name and version of the form.</summary>
    public const string Format = "client-record/1";

    private static readonly JsonSerializerOptions Readable = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
    };

    /// <summary>The whole file from her rows.</summary>
    public static JsonObject Of(JsonObject rows, Instant made)
    {
        var about = new JsonObject();
        foreach (var (table, _) in rows)
            about[table] = HeldLabels.Of(table).Says;
        var file = new JsonObject
        {
            ["format"] = Format,
            ["made"] = InstantPattern.ExtendedIso.Format(made),
            ["about"] = about,
        };
        foreach (var (table, list) in rows)
            file[table] = list?.DeepClone();
        return file;
    }

    /// <summary>As bytes: UTF-8, indented, so that it can be read as it is.</summary>
    public static byte[] Bytes(JsonObject file) =>
        JsonSerializer.SerializeToUtf8Bytes(file, Readable);
}
