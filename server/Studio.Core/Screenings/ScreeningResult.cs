using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;

namespace Studio.Core.Screenings;

/// <summary>Why a screening came out as it did.</summary>
/// <param name="Question">The question.</param>
/// <param name="Outcome">What this answer alone would have come to.</param>
/// <param name="ForHer">In words for her.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record ScreeningReason(
    Question Question,
    ScreeningOutcome Outcome,
    string ForHer,
    Source Source
);

/// <summary>What came of a screening.</summary>
/// <param name="Outcome">The strictest of its reasons; nothing found when there are none.</param>
/// <param name="Reasons">Every reason, strictest first, then in the order of the questions.</param>
/// <param name="Holds">What she holds by these answers: a factor or condition, and since when.</param>
/// <param name="Ended">Factors and conditions that are not true of her by these answers.</param>
/// <param name="Signs">Warning signs she has now.</param>
public sealed record ScreeningResult(
    ScreeningOutcome Outcome,
    IReadOnlyList<ScreeningReason> Reasons,
    IReadOnlyList<(string Code, LocalDate Since)> Holds,
    IReadOnlyList<string> Ended,
    IReadOnlyList<WarningSign> Signs
);

/// <summary>What comes of answers: strictest wins, every reason is kept, not sure counts as yes.</summary>
public static class ScreeningOutcomes
{
    /// <summary>What comes of answers that <see cref="ScreeningAnswers.WhyNot"/> has nothing against.</summary>
    /// <param name="answers">By code of the question.</param>
    /// <param name="situation">Where she is on the day she answers.</param>
    /// <param name="book">Questions, conditions and signs.</param>
    /// <param name="policies">Which guideline counts.</param>
    public static ScreeningResult Of(
        IReadOnlyDictionary<string, GivenAnswer> answers,
        Situation situation,
        RuleBook book,
        StudioPolicies policies
    )
    {
        var said = book
            .Questions.For(situation.Phase)
            .Where(q => q.About is not null && answers.ContainsKey(q.Code))
            .Select(q => (Question: q, Answer: answers[q.Code]))
            .ToList();
        var yes = said.Where(s => ScreeningAnswers.IsYes(s.Answer)).ToList();
        var reasons = yes.Select(s => ReasonOf(s.Question, s.Answer, situation, book, policies))
            .OfType<ScreeningReason>()
            .OrderByDescending(r => r.Outcome)
            .ToList();
        return new(
            reasons.Count == 0 ? ScreeningOutcome.NothingFound : reasons.Max(r => r.Outcome),
            reasons,
            [
                .. yes.Where(s => book.FactorOf(s.Question.About!) is not null)
                    .Select(s => (s.Question.About!, s.Answer.Since ?? situation.On)),
            ],
            [
                .. said.Where(s =>
                        s.Answer.Value == ScreeningAnswers.No
                        && book.FactorOf(s.Question.About!) is not null
                    )
                    .Select(s => s.Question.About!),
            ],
            [.. book.WarningSigns.Where(w => yes.Exists(s => s.Question.About == w.Code))]
        );
    }

    private static ScreeningReason? ReasonOf(
        Question question,
        GivenAnswer answer,
        Situation situation,
        RuleBook book,
        StudioPolicies policies
    ) =>
        book.WarningSigns.FirstOrDefault(w => w.Code == question.About) is { } sign
            ? OfSign(question, sign)
        : book.ConditionOf(question.About!) is { } condition
            ? OfCondition(question, answer, condition, situation, policies)
        : null;

    private static ScreeningReason OfSign(Question question, WarningSign sign) =>
        sign.Stops
            ? new(
                question,
                ScreeningOutcome.NoExercise,
                $"{sign.Name}: please speak to your midwife or doctor today, before anything else here. If it is bad or sudden, call the emergency number.",
                sign.Source
            )
            : new(
                question,
                ScreeningOutcome.ClearanceNeeded,
                $"{sign.Name}: please do less, and ask your midwife or doctor before the next class.",
                sign.Source
            );

    private static ScreeningReason? OfCondition(
        Question question,
        GivenAnswer answer,
        Condition condition,
        Situation situation,
        StudioPolicies policies
    )
    {
        var listing = situation.Age is { } age
            ? condition.At(age, policies)
            : condition.AfterBirth ?? Unplaced(condition, situation, policies);
        if (listing is null or { Severity: Severity.None })
            return null;
        // Not knowing whether one has it is no reason to be sent away, and one to ask.
        var absolute =
            listing.Severity == Severity.Absolute && answer.Value == ScreeningAnswers.Yes;
        var name = condition.Factor.Name;
        return absolute
            ? new(
                question,
                ScreeningOutcome.NoExercise,
                $"{name}: no classes here for now. The guidance is to leave out moderate and harder effort; everyday activity goes on unless your clinician says otherwise.",
                listing.Source
            )
            : new(
                question,
                ScreeningOutcome.ClearanceNeeded,
                answer.Value == ScreeningAnswers.Unsure
                    ? $"{name}: you are not sure. Please ask your midwife or doctor, and bring a word from her or him."
                    : $"{name}: we need a word from your clinician first.",
                listing.Source
            );
    }

    // Nobody knows her weeks yet: the strictest that any week would say.
    private static Listing? Unplaced(
        Condition condition,
        Situation situation,
        StudioPolicies policies
    ) =>
        situation.Phase is Phase.Unknown or Phase.BeforeDates
            ? condition.At(new GestationalAge(GestationalAge.Greatest), policies)
            : null;
}
