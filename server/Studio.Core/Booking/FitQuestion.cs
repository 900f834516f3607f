using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;

namespace Studio.Core.Booking;

/// <summary>A factor or condition that is true of her on the date asked about.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Since">The day it began; null when it came with the pregnancy.</param>
/// <param name="Until">Its last day; null when that is not known.</param>
internal sealed record Holding(string Code, LocalDate? Since, LocalDate? Until);

/// <summary>All that one fit is asked about, with what follows from it at once.</summary>
internal sealed class FitQuestion
{
    public FitQuestion(
        HerSituation her,
        ClassProfile cls,
        LocalDate on,
        RuleBook book,
        StudioPolicies policies
    )
    {
        (Her, Class, On, Book, Policies) = (her, cls, on, book, policies);
        At = book.Stages.On(her.Pregnancy, on);
        Holdings = HoldingsOn();
    }

    public HerSituation Her { get; }
    public ClassProfile Class { get; }
    public LocalDate On { get; }
    public RuleBook Book { get; }
    public StudioPolicies Policies { get; }
    public Situation At { get; }

    /// <summary>What is true of her on the date, one of each code, in the catalogue's order.</summary>
    public IReadOnlyList<Holding> Holdings { get; }

    public Holding? HoldingOf(string code) => Holdings.FirstOrDefault(h => h.Code == code);

    /// <summary>The date on which she reaches an age; only asked while she is pregnant.</summary>
    public LocalDate DateOf(GestationalAge age) =>
        Her.Pregnancy!.DueDate!.Value.PlusDays(age.Days - GestationalAge.AtDueDate);

    /// <summary>Whether a letter counts on the date, written since a change where the policy asks for that.</summary>
    public bool HasLetter(LocalDate? since = null) =>
        ClearanceRules.AnyValidOn(
            Her.Letters,
            Her.Pregnancy,
            On,
            Policies,
            Policies.LetterFollowsChange ? since : null
        );

    private IReadOnlyList<Holding> HoldingsOn()
    {
        var told = Her
            .Factors.Where(f => f.IsHeldOn(On))
            .Select(f => new Holding(f.Code, f.From, f.To));
        var counted = told.SelectMany(h =>
            Book.FactorOf(h.Code)?.SameAs is { } same ? [h, h with { Code = same }] : new[] { h }
        );
        var born = Book
            .Conditions.Where(c => Her.Pregnancy is { } p && c.ComesWith(p.Babies))
            .Select(c => new Holding(c.Factor.Code, null, null));
        var order = Book
            .Factors.Select((f, at) => (f.Code, at))
            .ToDictionary(f => f.Code, f => f.at, StringComparer.Ordinal);
        return
        [
            .. counted
                .Concat(born)
                .Where(h =>
                    At.Phase == Phase.Pregnant || Book.FactorOf(h.Code)?.When != HeldWhen.Pregnancy
                )
                .GroupBy(h => h.Code)
                // Held twice over: the later beginning asks for the newer letter, and it ends when the last one does.
                .Select(g => new Holding(
                    g.Key,
                    g.Max(h => h.Since),
                    g.Any(h => h.Until is null) ? null : g.Max(h => h.Until)
                ))
                .OrderBy(h => order.GetValueOrDefault(h.Code, int.MaxValue))
                .ThenBy(h => h.Code, StringComparer.Ordinal),
        ];
    }
}
