using System.ComponentModel.DataAnnotations;
using Studio.Core.Catalogue;

namespace Studio.Api.Catalogue;

/// <summary>A catalogue file as it was sent.</summary>
public sealed record CatalogueFile
{
    /// <summary>Its name, such as <c>movement_rules.csv</c>.</summary>
    [Required, StringLength(60)]
    public string? Name { get; init; }

    /// <summary>Its text: UTF-8, a header row, commas between.</summary>
    [Required(AllowEmptyStrings = true), StringLength(500_000)]
    public string? Text { get; init; }
}

/// <summary>New rules, to be tried or put in force.</summary>
public sealed record CatalogueRequest
{
    /// <summary>One or more files; those that are not sent stay as they are.</summary>
    [Required, MinLength(1), MaxLength(20)]
    public IReadOnlyList<CatalogueFile?>? Files { get; init; }

    /// <summary>Why, for those who look at the list of versions later.</summary>
    [StringLength(300)]
    public string? Why { get; init; }

    /// <summary>The version the files were made from; refused when another is in force by now.</summary>
    public int? BasedOn { get; init; }
}

/// <summary>Going back to another version.</summary>
public sealed record ReturnRequest
{
    /// <summary>Why.</summary>
    [StringLength(300)]
    public string? Why { get; init; }

    /// <summary>The version that was in force when she looked; refused when another is by now.</summary>
    public int? BasedOn { get; init; }
}

/// <summary>Something wrong in a file.</summary>
/// <param name="File">The file.</param>
/// <param name="Line">Its line, from 1; the header is line 1. Null when it is no single line.</param>
/// <param name="Text">What is wrong.</param>
public sealed record CatalogueFault(string File, int? Line, string Text);

/// <summary>What new rules would change, or did.</summary>
public sealed record CatalogueReport
{
    /// <summary>Nothing was kept.</summary>
    public required bool DryRun { get; init; }

    /// <summary>The version that is in force by it; null when nothing was put in force.</summary>
    public int? Version { get; init; }

    /// <summary>The version it was compared with.</summary>
    public required int BasedOn { get; init; }

    /// <summary>Everything wrong in the files; with any, nothing else is known.</summary>
    public required IReadOnlyList<CatalogueFault> Faults { get; init; }

    /// <summary>What is in use and would be taken away; with any, it cannot be put in force.</summary>
    public required IReadOnlyList<InUse> InUse { get; init; }

    /// <summary>The files that differ.</summary>
    public required IReadOnlyList<string> Files { get; init; }

    /// <summary>The rows that differ.</summary>
    public required IReadOnlyList<RowChange> Rows { get; init; }

    /// <summary>Good to know and no hindrance: movements left out for everybody, published rows no longer covered.</summary>
    public required IReadOnlyList<string> Mind { get; init; }

    /// <summary>What becomes of the bookings ahead.</summary>
    public Consequences? Bookings { get; init; }

    /// <summary>Whether it can be put in force.</summary>
    public bool CanBeKept => Faults.Count == 0 && InUse.Count == 0 && Files.Count > 0;
}
