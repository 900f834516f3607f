using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Movements;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Catalogue;
using Studio.Core.Movements;

namespace Studio.Api.Catalogue;

/// <summary>Tries new rules on the studio as it is, and puts them in force; all or nothing.</summary>
public sealed partial class CatalogueImports(
    CatalogueInForce catalogue,
    NewRules rules,
    IClock clock
)
{
    private const int MostRows = 5000;

    private static readonly Refusal MovedOn = new(
        RefusalKind.Conflict,
        "catalogue-moved-on",
        "Other rules were put in force since you looked. Nothing was changed: download the files again, or try yours once more to see what it changes now.",
        "basedOn"
    );

    private static readonly Refusal NothingChanges = new(
        RefusalKind.Conflict,
        "nothing-changes",
        "These are the rules in force already: there is nothing to change.",
        "files"
    );

    /// <summary>The catalogue in force with these files in place of its own, or why they are no files of it.</summary>
    public Answer<CatalogueTexts> With(IReadOnlyList<CatalogueFile?> files)
    {
        var names = files.Select(f => f?.Name ?? "").ToList();
        if (names.Find(n => !CatalogueTexts.Names.Contains(n)) is { } unknown)
            return Files(
                "no-such-file",
                $"\"{unknown}\" is no file of the catalogue. They are {string.Join(", ", CatalogueTexts.Names)}."
            );
        if (names.GroupBy(n => n).FirstOrDefault(g => g.Count() > 1) is { } twice)
            return Files("file-twice", $"{twice.Key} is there twice. Send each file once.");
        return catalogue.Current.Texts.With(
            files.Select(f => KeyValuePair.Create(f!.Name!, f.Text ?? ""))
        );
    }

    /// <summary>What other texts would change; writes nothing.</summary>
    public async Task<CatalogueReport> TryAsync(Read read, CatalogueTexts texts)
    {
        var (report, _) = await JudgeAsync(read, texts);
        return report with { DryRun = true };
    }

    /// <summary>Puts other texts in force; the caller commits when the report says that they are.</summary>
    /// <param name="write">The transaction.</param>
    /// <param name="texts">The texts.</param>
    /// <param name="basedOn">The version that was in force when they were made; null for any.</param>
    /// <param name="store">Stores the version and gives its number.</param>
    public async Task<Answer<CatalogueReport>> PutInForceAsync(
        Write write,
        CatalogueTexts texts,
        int? basedOn,
        Func<Instant, Task<int>> store
    )
    {
        if (basedOn is not null && basedOn != catalogue.Current.Number)
            return MovedOn;
        var (report, book) = await JudgeAsync(write, texts);
        if (report is { Faults.Count: 0, InUse.Count: 0, Files.Count: 0 })
            return NothingChanges;
        if (!report.CanBeKept)
            return report;
        var number = await store(clock.GetCurrentInstant());
        write.GoBy(new(number, texts, book!));
        await rules.SettleAsync(write);
        return report with { Version = number };
    }

    private async Task<(CatalogueReport Report, RuleBook? Book)> JudgeAsync(
        Read read,
        CatalogueTexts texts
    )
    {
        var inForce = catalogue.Current;
        var report = new CatalogueReport
        {
            DryRun = false,
            BasedOn = inForce.Number,
            Files = [.. texts.DifferingFrom(inForce.Texts)],
            Faults = [],
            InUse = [],
            Rows = [],
            Mind = [],
        };
        var unusual = report.Files.SelectMany(f => Unusual(f, texts[f])).ToList();
        if (unusual.Count > 0)
            return (report with { Faults = unusual }, null);
        RuleBook book;
        try
        {
            book = texts.Read();
        }
        catch (CatalogueException damaged)
        {
            return (report with { Faults = [.. damaged.Errors.Select(Fault)] }, null);
        }

        var now = clock.GetCurrentInstant();
        var fits = await Fits.LoadAsync(read, inForce.Book, null);
        var chosen = await PolicyStore.ChosenAsync(read, inForce.Book);
        var policies = await PolicyStore.InForceAsync(read, book);
        var use = await CatalogueStore.UseAsync(read, fits, chosen, now);
        return (
            report with
            {
                InUse = use.MissingIn(book),
                Rows = CatalogueChanges.Between(inForce.Texts, texts),
                Mind =
                [
                    .. await LeftOutAsync(read, book, fits, policies, now),
                    .. Uncovered(texts, book, inForce.Book),
                ],
                Bookings = await Consequences.OfAsync(read, fits, book, policies, now),
            },
            book
        );
    }

    // Only what the new rules bring: a movement nobody did before either is no news.
    private static async Task<IReadOnlyList<string>> LeftOutAsync(
        Read read,
        RuleBook book,
        Fits fits,
        StudioPolicies policies,
        Instant now
    )
    {
        var words = new List<string>();
        var plans = await PlanStore.AllAsync(read);
        foreach (var cls in await StudioStore.ClassesAsync(read))
        {
            if (plans.OfClass(cls.Id, now.InUtc().Date) is not { } plan)
                continue;
            var stages = cls.Stages.ToHashSet(StringComparer.Ordinal);
            var before = PlanChecks
                .LeftOut(plan, stages, fits.Book, fits.Policies)
                .Select(l => (l.Number, l.Stage.Code))
                .ToHashSet();
            words.AddRange(
                PlanChecks
                    .LeftOut(plan, stages, book, policies)
                    .Where(l => !before.Contains((l.Number, l.Stage.Code)))
                    .Select(l =>
                        $"In {cls.Name}, number {l.Number}, {book.MovementOf(l.Movement)?.Name ?? l.Movement}, would be left out for everybody in the stage {l.Stage.Name.ToLowerInvariant()}."
                    )
            );
        }

        return words;
    }

    private static IEnumerable<string> Uncovered(
        CatalogueTexts texts,
        RuleBook book,
        RuleBook before
    ) =>
        from row in texts.Coverage()
        from gone in row.GoneFrom(book)
        where before.HasRule(gone)
        select $"The published row {row.Row} was restated by the rule {gone}, which is gone. Say in coverage.csv what covers it now, or why nothing does.";

    private static IEnumerable<CatalogueFault> Unusual(string file, string text)
    {
        var end = text.IndexOf('\n', StringComparison.Ordinal);
        var header = text.AsSpan(0, end < 0 ? text.Length : end);
        if (header.Count(';') > header.Count(','))
            yield return new(
                file,
                1,
                "The fields are separated by semicolons. Save the file as CSV with commas between the fields."
            );
        if (text.Contains('\uFFFD', StringComparison.Ordinal))
            yield return new(
                file,
                1 + text.AsSpan(0, text.IndexOf('\uFFFD', StringComparison.Ordinal)).Count('\n'),
                "There is a character that cannot be read. Save the file as CSV with UTF-8 encoding."
            );
        if (text.AsSpan().Count('\n') > MostRows)
            yield return new(file, null, $"There are more than {MostRows} rows.");
    }

    private static CatalogueFault Fault(string worded) =>
        FileAndLine().Match(worded) is { Success: true } found
            ? new(
                found.Groups["file"].Value,
                int.Parse(found.Groups["line"].Value, CultureInfo.InvariantCulture),
                Sentence(found.Groups["text"].Value)
            )
            : new("", null, Sentence(worded));

    private static string Sentence(string text) =>
        text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static Answer<CatalogueTexts> Files(string code, string message) =>
        new Refusal(RefusalKind.Invalid, code, message, "files");

    [GeneratedRegex(
        @"^(?<file>\w+\.csv) line (?<line>\d+): (?<text>.*)$",
        RegexOptions.ExplicitCapture | RegexOptions.Singleline,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex FileAndLine();
}
