using System.Text.Json;
using Studio.Api.Data;
using Studio.Core.Clearance;

namespace Studio.Api.Clearance;

/// <summary>What a letter asks for, as the table holds it: sealed JSON, or nothing when it asks for nothing.</summary>
public static class LetterTermsText
{
    /// <summary>Seals the terms; null when there are none.</summary>
    public static string? Close(Seal seal, LetterTerms terms) =>
        terms.IsEmpty ? null : seal.Close(JsonSerializer.Serialize(Kept.Of(terms)));

    /// <summary>Opens them.</summary>
    public static LetterTerms Open(Seal seal, string? text) =>
        text is null ? new() : JsonSerializer.Deserialize<Kept>(seal.Open(text))!.ToTerms();

    private sealed record Kept(
        string[] LeaveOut,
        int? EffortMost,
        int? HeartRateMost,
        string? Words
    )
    {
        public static Kept Of(LetterTerms terms) =>
            new(
                [.. terms.LeaveOut.Order(StringComparer.Ordinal)],
                terms.EffortMost,
                terms.HeartRateMost,
                terms.Words
            );

        public LetterTerms ToTerms() =>
            new()
            {
                LeaveOut = LeaveOut.ToHashSet(StringComparer.Ordinal),
                EffortMost = EffortMost,
                HeartRateMost = HeartRateMost,
                Words = Words,
            };
    }
}
