namespace Studio.Core.Catalogue;

/// <summary>A published row, and what became of it here.</summary>
/// <param name="File">The file of published facts.</param>
/// <param name="Row">The row's id in it.</param>
/// <param name="Rules">Ids of the rules that restate it, and references of conditions.</param>
/// <param name="WhyNot">Why no rule does; blank where one does.</param>
public sealed record CoveredRow(string File, string Row, IReadOnlyList<string> Rules, string WhyNot)
{
    /// <summary>The rules it names that a catalogue no longer has.</summary>
    public IEnumerable<string> GoneFrom(RuleBook book) => Rules.Where(rule => !book.HasRule(rule));
}

/// <summary>Reads <c>coverage.csv</c>: each row has its rules or a reason why not, never both.</summary>
internal static class CoverageFile
{
    public const string Name = "coverage.csv";

    private static readonly string[] Columns = ["file", "row", "rules", "not_covered_because"];

    public static IReadOnlyList<CoveredRow> Read(Func<string, TextReader> open)
    {
        var errors = new CatalogueErrors();
        var rows = CatalogueTable.Read(open, Name, Columns, errors);
        var covered = new List<CoveredRow>();
        foreach (var row in rows)
        {
            var (rules, why) = (row.List("rules"), row["not_covered_because"]);
            if (rules.Count == 0 && why.Length == 0)
                row.Error("give the rules that cover the row, or why none does.");
            else if (rules.Count > 0 && why.Length > 0)
                row.Error("it names rules and says why there are none: keep one of the two.");
            covered.Add(new(row.Required("file"), row.Required("row"), rules, why));
        }
        foreach (var same in rows.GroupBy(r => (r["file"], r["row"])))
        foreach (var again in same.Skip(1))
            again.Error($"the row '{again["row"]}' is already on line {same.First().Line}.");
        errors.ThrowIfAny();
        return covered;
    }
}
