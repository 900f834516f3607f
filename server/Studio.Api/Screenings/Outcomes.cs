using System.Text.Json;
using Studio.Api.Data;
using Studio.Core.Screenings;

namespace Studio.Api.Screenings;

/// <summary>What came of a screening, as the table holds it: sealed camelCase.</summary>
public static class Outcomes
{
    /// <summary>Seals an outcome.</summary>
    public static string Close(Seal seal, ScreeningOutcome outcome) =>
        seal.Close(JsonNamingPolicy.CamelCase.ConvertName(outcome.ToString()));

    /// <summary>Opens one.</summary>
    /// <exception cref="ArgumentException">The table holds no outcome there.</exception>
    public static ScreeningOutcome Open(Seal seal, string text) =>
        Enum.Parse<ScreeningOutcome>(seal.Open(text), ignoreCase: true);
}
