namespace Studio.Core.Catalogue;

/// <summary>
/// A catalogue file cannot be used. It names every error at once, each with file and line
/// (<c>stages.csv line 4: …</c>), so that whoever edits it repairs it in one go.
/// </summary>
/// <param name="errors">All that is wrong, in the order of the lines.</param>
public sealed class CatalogueException(IReadOnlyList<string> errors)
    : Exception(string.Join(Environment.NewLine, errors))
{
    /// <summary>All that is wrong, in the order of the lines.</summary>
    public IReadOnlyList<string> Errors { get; } = errors;
}
