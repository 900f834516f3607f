namespace Studio.Core.Tests.Catalogue;

/// <summary>An instructor reads these words for people who have not agreed to share what lies behind them.</summary>
public class InstructorWords
{
    private static readonly string[] Telling =
    [
        "scar",
        "sugar",
        "sweet",
        "calorie",
        "diabet",
        "caesarean",
        "prolapse",
        "pre-eclampsia",
    ];

    [Fact]
    public void Never_give_the_condition_away()
    {
        var book = TheCatalogue.Book;
        var told = book
            .Factors.Select(f => (Id: f.Code, Words: f.InstructorWords))
            .Concat(book.ClassRules.Select(r => (r.Id, Words: r.ForInstructor)))
            .Concat(book.MovementRules.Select(r => (r.Id, Words: r.Instruction)))
            .Where(w => Telling.Any(t => w.Words.Contains(t, StringComparison.OrdinalIgnoreCase)))
            .Select(w => $"{w.Id}: {w.Words}")
            .ToList();
        Assert.True(told.Count == 0, string.Join(Environment.NewLine, told));
    }
}
