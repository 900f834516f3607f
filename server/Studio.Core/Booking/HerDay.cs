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

/// <summary>A client on a date, with what follows from it at once; the same for every class and movement.</summary>
internal class HerDay
{
    private readonly Holding[] holdings;
    private readonly Lazy<IReadOnlyList<StageBand>> bands;
    private readonly Lazy<IReadOnlyList<Restriction>> restrictions;

    public HerDay(HerSituation her, LocalDate on, RuleBook book, StudioPolicies policies)
    {
        (Her, On, Book, Policies) = (her, on, book, policies);
        At = book.Stages.On(her.Pregnancy, on);
        holdings = HoldingsOn();
        bands = new(() => her.Pregnancy is { } pregnancy ? book.Stages.Bands(pregnancy) : []);
        restrictions = new(() =>
            [
                .. her
                    .Restrictions.Concat(
                        LetterRestrictions.Of(her.Letters, her.Pregnancy, book.Stages, policies)
                    )
                    .Where(r => r.HoldsOn(on)),
            ]
        );
    }

    public HerSituation Her { get; }
    public LocalDate On { get; }
    public RuleBook Book { get; }
    public StudioPolicies Policies { get; }
    public Situation At { get; }

    /// <summary>What is true of her on the date, one of each code, in the catalogue's order.</summary>
    public IReadOnlyList<Holding> Holdings => holdings;

    /// <summary>What her letters ask for on the date.</summary>
    public IReadOnlyList<Restriction> Restrictions => restrictions.Value;

    public Holding? HoldingOf(string code)
    {
        foreach (var holding in holdings)
            if (holding.Code == code)
                return holding;
        return null;
    }

    /// <summary>The date on which she reaches an age; only asked while she is pregnant.</summary>
    public LocalDate DateOf(GestationalAge age) =>
        Her.Pregnancy!.DueDate!.Value.PlusDays(age.Days - GestationalAge.AtDueDate);

    /// <summary>Whether a letter counts on the date, written since a change where the policy asks for that.</summary>
    public bool HasLetter(LocalDate? since = null) =>
        ClearanceRules.AnyValidOn(
            Her.Letters,
            Her.Pregnancy,
            On,
            Book.Stages,
            Policies,
            Policies.LetterFollowsChange ? since : null
        );

    /// <summary>Whether a rule's conditions are met.</summary>
    public bool Meets(RuleWhen rule) =>
        (rule.Factor is null || HoldingOf(rule.Factor) is not null)
        && (rule.Stages.Count == 0 || At.Stage is { } stage && rule.Stages.Contains(stage.Code))
        && (!rule.InPregnancyOnly || At.Age is { } age && MeetsAge(rule, age))
        && (!rule.AfterBirthOnly || At.DaysSinceBirth is { } days && MeetsDays(rule, days))
        && (rule.Policy is null || rule.Policy.HoldsIn(Policies));

    /// <summary>The first day on which a rule no longer holds by itself; null when nothing says so.</summary>
    public LocalDate? EndOf(RuleWhen rule)
    {
        var pregnancy = Her.Pregnancy!;
        var ends = new List<LocalDate>();
        if (rule.UntilBorn is { } until && pregnancy.BornOn is { } born)
            ends.Add(born.PlusDays(until.In(Policies)));
        if (rule.ToAge is { } to && pregnancy.DueDate is not null)
            ends.Add(DateOf(to).PlusDays(1));
        if (rule.Stages.Count > 0)
            ends.AddRange(
                bands
                    .Value.Where(b => b.From > On && !rule.Stages.Contains(b.Stage.Code))
                    .Select(b => b.From)
                    .Take(1)
            );
        return ends.Count == 0 ? null : ends.Min();
    }

    private static bool MeetsAge(RuleWhen rule, GestationalAge age) =>
        (rule.FromAge is not { } from || age.Days >= from.Days)
        && (rule.ToAge is not { } to || age.Days <= to.Days);

    // A mode of birth that was never said is not known: it has its own cautious rule, or counts as every mode.
    private bool MeetsDays(RuleWhen rule, int days)
    {
        var mode = Her.Pregnancy?.BirthMode ?? BirthMode.Unknown;
        return days >= (rule.FromBorn ?? 0)
            && (rule.UntilBorn is not { } until || days < until.In(Policies))
            && (
                rule.BirthModes.Count == 0
                || rule.BirthModes.Contains(mode)
                || mode == BirthMode.Unknown && rule.HoldsForUnknownMode
            );
    }

    private Holding[] HoldingsOn()
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
                .OrderBy(h => Book.OrderOf(h.Code))
                .ThenBy(h => h.Code, StringComparer.Ordinal),
        ];
    }
}
