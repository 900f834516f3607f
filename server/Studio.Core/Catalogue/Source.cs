namespace Studio.Core.Catalogue;

/// <summary>How a fact of the catalogue was checked.</summary>
public enum Verification
{
    /// <summary>Read in a text that could be opened.</summary>
    Seen,

    /// <summary>Known, but not found in any text that could be opened: a studio should check it.</summary>
    FromMemory,

    /// <summary>What the trade or this studio does; nothing is published.</summary>
    CommonPractice,

    /// <summary>Worked out from another fact of the catalogue.</summary>
    Computed,
}

/// <summary>Where a rule comes from.</summary>
/// <param name="Id">The row's id in <c>sources.csv</c>.</param>
/// <param name="Organisation">Who says so.</param>
/// <param name="Title">In which text.</param>
/// <param name="Year">As printed; blank when the text carries none.</param>
/// <param name="Section">Where in the text; may be blank.</param>
/// <param name="Verification">How it was checked.</param>
public sealed record Source(
    string Id,
    string Organisation,
    string Title,
    string Year,
    string Section,
    Verification Verification
)
{
    /// <summary>The source in one line, with the mark "from memory" where it stands.</summary>
    public string Cite
    {
        get
        {
            var line = $"{Organisation}, {Title}";
            if (Year.Length > 0)
                line += $" ({Year})";
            if (Section.Length > 0)
                line += $", {Section}";
            return Verification switch
            {
                Verification.Seen or Verification.CommonPractice => line,
                Verification.FromMemory => line + "; from memory",
                Verification.Computed => line + "; computed",
            };
        }
    }
}
