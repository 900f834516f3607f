using NodaTime;
using NodaTime.Text;

namespace Studio.Api.Http;

/// <summary>An ISO date in a query string, such as <c>?from=2026-11-25</c>.</summary>
/// <param name="Value">The date.</param>
public readonly record struct QueryDay(LocalDate Value)
{
    /// <summary>Reads it; false makes the request a 400 that names the parameter.</summary>
    public static bool TryParse(string? text, out QueryDay day)
    {
        var parsed = LocalDatePattern.Iso.Parse(text ?? "");
        var usable = parsed.Success && Readable.IsPlausible(parsed.Value);
        day = usable ? new QueryDay(parsed.Value) : default;
        return usable;
    }
}
