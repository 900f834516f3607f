using System.Globalization;

namespace Studio.Core.Catalogue;

/// <summary>One row of <c>policies.csv</c>.</summary>
/// <param name="Code">The policy's code.</param>
/// <param name="Default">Its value where a studio has chosen none.</param>
/// <param name="Allowed">Words and ranges, <c>|</c> between: <c>none|1..365</c>.</param>
/// <param name="Means">What it decides.</param>
/// <param name="Source">Why the default is what it is.</param>
public sealed record PolicyChoice(
    string Code,
    string Default,
    string Allowed,
    string Means,
    Source Source
)
{
    /// <summary>Whether a value is one of the allowed ones.</summary>
    public bool Allows(string value) =>
        Allowed
            .Split('|')
            .Any(part =>
                Range(part) is { } range
                    ? Number(value) is { } n && n >= range.Low && n <= range.High
                    : part == value
            );

    /// <summary>Whether every range in <see cref="Allowed"/> can be read.</summary>
    internal bool IsReadable =>
        Allowed
            .Split('|')
            .All(part =>
                !part.Contains("..", StringComparison.Ordinal)
                || Range(part) is { Low: var low, High: var high } && low <= high
            );

    private static (int Low, int High)? Range(string part) =>
        part.Split("..") is [var low, var high] && Number(low) is { } from && Number(high) is { } to
            ? (from, to)
            : null;

    private static int? Number(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;
}
