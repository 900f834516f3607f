using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using NodaTime;
using NodaTime.Text;

namespace Studio.Api.Http;

/// <summary>A value that can be read as JSON, and is still nothing to work with. Its message is for the person.</summary>
public sealed class UnusableValue(string message) : JsonException(message);

/// <summary>
/// Keeps out, wherever a request has a date or a text, what neither the calendar nor the database can work with, so that
/// it is refused by field and ends in no server error.
/// </summary>
public static class Readable
{
    private const int FirstYear = 1900;
    private const int LastYear = 2199;

    /// <summary>From 1900 to 2199: every date of a studio, and far enough from the calendar's ends to add years to.</summary>
    public static bool IsPlausible(LocalDate day) => day.Year is >= FirstYear and <= LastYear;

    /// <summary>Adds the checks.</summary>
    public static void RefuseUnusable(this JsonSerializerOptions json)
    {
        json.Converters.Insert(0, new Day());
        json.TypeInfoResolver = json.TypeInfoResolver!.WithAddedModifier(RefuseNothing);
    }

    // SQLite takes a text to end at its first null character.
    private static void RefuseNothing(JsonTypeInfo type)
    {
        foreach (var property in type.Properties.Where(p => p.PropertyType == typeof(string)))
        {
            if (property.Set is not { } set)
                continue;
            property.Set = (it, value) =>
            {
                if (value is string text && text.Contains('\0'))
                    throw new UnusableValue("This holds a character that is not text.");
                set(it, value);
            };
        }
    }

    private sealed class Day : JsonConverter<LocalDate>
    {
        public override LocalDate Read(
            ref Utf8JsonReader reader,
            Type typeToConvert,
            JsonSerializerOptions options
        )
        {
            if (
                reader.TokenType != JsonTokenType.String
                || LocalDatePattern.Iso.Parse(reader.GetString()!) is not { Success: true } parsed
            )
                throw new UnusableValue("This is not a date such as 2026-11-25.");
            return IsPlausible(parsed.Value)
                ? parsed.Value
                : throw new UnusableValue("This date cannot be right: check the year.");
        }

        public override void Write(
            Utf8JsonWriter writer,
            LocalDate value,
            JsonSerializerOptions options
        ) => writer.WriteStringValue(LocalDatePattern.Iso.Format(value));
    }
}
