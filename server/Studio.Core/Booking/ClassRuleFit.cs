using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Movements;
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
        var traits = question.Class.Traits;
        return (rule.Trait is null || traits.Contains(rule.Trait))
            && (rule.Except is null || !traits.Contains(rule.Except))
            && !(question.Plan is not null && PlanSays(rule))
            && question.Meets(rule);
    }

    // Where there is a plan, each movement says for itself what is done differently. What rules out a class, asks for a
    // letter or is only good to know stays the class's own.
    private static bool PlanSays(ClassRule rule) =>
        rule is { Verdict: RuleVerdict.Adapted, Trait: { } trait }
        && MovementTraits.NameOf(trait) is not null;

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
                DeskLift = question.EndOf(rule) is { } end
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
        var end = question.EndOf(rule);
        if (rule.Lift is { } text)
            return end is { } day
                    ? new(text.Replace("{date}", Wording.Date(day), StringComparison.Ordinal), day)
                : text.Contains("{date}", StringComparison.Ordinal) ? null
                : new(text);
        return rule.Factor is { } code && question.HoldingOf(code) is { } holding
            ? Words.WhenOver(holding, "When this no longer holds, end it on your page.")
            : null;
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
