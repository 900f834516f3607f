using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;

namespace Studio.Core.Booking;

/// <summary>What the class rules say about this class for her on the date.</summary>
internal static class ClassRuleFit
{
    public static IEnumerable<Reason> Reasons(FitQuestion question) =>
        question
            .Book.ClassRules.Where(rule => Holds(question, rule))
            .Select(rule => Of(question, rule));

    private static bool Holds(FitQuestion question, ClassRule rule)
    {
        var (at, traits) = (question.At, question.Class.Traits);
        return (rule.Trait is null || traits.Contains(rule.Trait))
            && (rule.Except is null || !traits.Contains(rule.Except))
            && (rule.Stages.Count == 0 || at.Stage is { } stage && rule.Stages.Contains(stage.Code))
            && (rule.Factor is null || question.HoldingOf(rule.Factor) is not null)
            && (!rule.InPregnancyOnly || at.Age is { } age && HoldsAt(rule, age))
            && (
                !rule.AfterBirthOnly
                || at.DaysSinceBirth is { } days && HoldsAfter(question, rule, days)
            );
    }

    private static bool HoldsAt(ClassRule rule, GestationalAge age) =>
        (rule.FromAge is not { } from || age.Days >= from.Days)
        && (rule.ToAge is not { } to || age.Days <= to.Days);

    // A mode of birth that was never said is not known, and has its own cautious rule.
    private static bool HoldsAfter(FitQuestion question, ClassRule rule, int days) =>
        days >= (rule.FromBorn ?? 0)
        && (rule.UntilBorn is not { } until || days < until.In(question.Policies))
        && (
            rule.BirthModes.Count == 0
            || rule.BirthModes.Contains(question.Her.Pregnancy?.BirthMode ?? BirthMode.Unknown)
        );

    private static Reason Of(FitQuestion question, ClassRule rule) =>
        Worded(question, rule) with
        {
            Factor = rule.Factor,
            Rule = rule.Id,
            Source = rule.Source,
        };

    private static Reason Worded(FitQuestion question, ClassRule rule) =>
        rule.Verdict switch
        {
            RuleVerdict.Note => Plain(
                question,
                rule,
                ReasonCodes.Note,
                Suits.Suitable,
                Words.DeskNote
            ),
            RuleVerdict.Adapted => Plain(
                question,
                rule,
                ReasonCodes.Adapted,
                Suits.WithModifications,
                Words.DeskAdapted
            ),
            RuleVerdict.NotSuitable => Plain(
                question,
                rule,
                ReasonCodes.DoesNotSuit,
                Suits.NotSuitable,
                Words.DeskDoesNotSuit
            ) with
            {
                ForInstructor = Words.DoesNotTakePart,
                DeskLift = EndOf(question, rule) is { } end
                    ? new($"The class may suit her from {Wording.Date(end)}.", end)
                    : null,
            },
            RuleVerdict.Letter => question.HasLetter(Since(question, rule))
                ? Letters.Follow(
                    "Your letter says what you may do, and your instructor keeps to it.",
                    rule.ForInstructor
                )
                : Letters.Needed(question, rule.ForHer, since: Since(question, rule)),
        };

    private static Reason Plain(
        FitQuestion question,
        ClassRule rule,
        string code,
        Suits verdict,
        string desk
    ) =>
        new()
        {
            Code = code,
            Verdict = verdict,
            ForHer = rule.ForHer,
            ForDesk = desk,
            ForInstructor = rule.ForInstructor.Length > 0 ? rule.ForInstructor : null,
            Lift = LiftOf(question, rule),
        };

    private static Lift? LiftOf(FitQuestion question, ClassRule rule)
    {
        var end = EndOf(question, rule);
        if (rule.Lift is { } text)
            return end is { } day
                    ? new(text.Replace("{date}", Wording.Date(day), StringComparison.Ordinal), day)
                : text.Contains("{date}", StringComparison.Ordinal) ? null
                : new(text);
        return rule.Factor is { } code && question.HoldingOf(code) is { } holding
            ? Words.WhenOver(holding, "When this no longer holds, end it on your page.")
            : null;
    }

    /// <summary>The first day on which the rule no longer holds by itself; null when nothing says so.</summary>
    private static LocalDate? EndOf(FitQuestion question, ClassRule rule)
    {
        var pregnancy = question.Her.Pregnancy!;
        var ends = new List<LocalDate>();
        if (rule.UntilBorn is { } until && pregnancy.BornOn is { } born)
            ends.Add(born.PlusDays(until.In(question.Policies)));
        if (rule.ToAge is { } to && pregnancy.DueDate is not null)
            ends.Add(question.DateOf(to).PlusDays(1));
        if (rule.Stages.Count > 0)
            ends.AddRange(
                question
                    .Book.Stages.Bands(pregnancy)
                    .Where(b => b.From > question.On && !rule.Stages.Contains(b.Stage.Code))
                    .Select(b => b.From)
                    .Take(1)
            );
        return ends.Count == 0 ? null : ends.Min();
    }

    private static LocalDate? Since(FitQuestion question, ClassRule rule)
    {
        var held = rule.Factor is { } code ? question.HoldingOf(code)?.Since : null;
        var week = rule.FromAge is { } from ? question.DateOf(from) : (LocalDate?)null;
        return held is null ? week
            : week is null ? held
            : LocalDate.Max(held.Value, week.Value);
    }
}
