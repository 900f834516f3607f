using Studio.Core.Catalogue;

namespace Studio.Api.Catalogue;

/// <summary>A catalogue that has been read and checked, with the texts it was read from.</summary>
/// <param name="Number">The imported version; 0 for the program's own where none was ever imported.</param>
/// <param name="Texts">Its files.</param>
/// <param name="Book">What they say.</param>
public sealed record CatalogueVersion(int Number, CatalogueTexts Texts, RuleBook Book)
{
    /// <summary>Reads and checks a catalogue whole.</summary>
    /// <exception cref="CatalogueException">It is damaged; every error with file and line.</exception>
    public static CatalogueVersion Read(int number, CatalogueTexts texts) =>
        new(number, texts, texts.Read());
}

/// <summary>
/// The one place that knows which catalogue is in force. Whoever needs the rules is given the book of the moment her
/// request began and keeps it; a write that would mix two books is refused, see <see cref="RulesChangedException"/>.
/// </summary>
public sealed class CatalogueInForce(CatalogueVersion own)
{
    private volatile CatalogueVersion _current = own;

    /// <summary>The program's own catalogue.</summary>
    public CatalogueVersion Own { get; } = own;

    /// <summary>What is in force now.</summary>
    public CatalogueVersion Current => _current;

    /// <summary>Puts another in force; the caller has stored it.</summary>
    public void Put(CatalogueVersion version) => _current = version;
}
