using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;

namespace Studio.Core.Screenings;

/// <summary>What she answered to one question.</summary>
/// <param name="Value"><c>yes</c>, <c>no</c>, <c>unsure</c>, <c>agreed</c>, <c>right</c>, or her own words.</param>
/// <param name="Since">For a yes: since when; null when she did not say.</param>
public sealed record GivenAnswer(string Value, LocalDate? Since = null);

/// <summary>Reads answers against the questions that were asked.</summary>
public static class ScreeningAnswers
{
    /// <summary>Yes.</summary>
    public const string Yes = "yes";

    /// <summary>No.</summary>
    public const string No = "no";

    /// <summary>Not sure; counts as yes.</summary>
    public const string Unsure = "unsure";

    /// <summary>She agrees.</summary>
    public const string Agreed = "agreed";

    /// <summary>What stands on her page is right.</summary>
    public const string Right = "right";

    /// <summary>The most letters of an answer in own words.</summary>
    public const int MostLetters = 500;

    /// <summary>Why answers cannot be kept as they are, or null. Unfinished ones may be kept; wrong ones never.</summary>
    /// <param name="answers">By code of the question.</param>
    /// <param name="questions">The questions in force.</param>
    /// <param name="phase">Where she is.</param>
    /// <param name="today">Today at her location.</param>
    /// <param name="finished">Every question that must be answered has to be.</param>
    public static Refusal? WhyNot(
        IReadOnlyDictionary<string, GivenAnswer> answers,
        QuestionSet questions,
        Phase phase,
        LocalDate today,
        bool finished
    )
    {
        var asked = questions.For(phase).ToList();
        foreach (var (code, answer) in answers.OrderBy(a => a.Key, StringComparer.Ordinal))
            if (asked.Find(q => q.Code == code) is not { } question)
                return Wrong("not-asked", $"\"{code}\" is not one of the questions asked.", code);
            else if (!Fits(question, answer, today))
                return Wrong(
                    "bad-answer",
                    $"\"{question.Asks}\" cannot be answered like that. Please choose one of its answers.",
                    code
                );
        if (!finished)
            return null;
        return asked.Find(q => q.Kind == QuestionKind.Agree && !answers.ContainsKey(q.Code))
                is { } agreement
                ? Wrong(
                    "agreement-needed",
                    "We may only keep your answers if you agree. Without them nobody here can tell which class suits you.",
                    agreement.Code
                )
            : asked.Find(q => q.IsRequired && !answers.ContainsKey(q.Code)) is { } missing
                ? Wrong(
                    "answers-missing",
                    $"{asked.Count(q => q.IsRequired && !answers.ContainsKey(q.Code))} questions are still open, the first: \"{missing.Asks}\" Not sure is an answer too.",
                    missing.Code
                )
            : null;
    }

    /// <summary>Whether she said yes, or is not sure, which counts as yes.</summary>
    public static bool IsYes(GivenAnswer? answer) => answer?.Value is Yes or Unsure;

    private static bool Fits(Question question, GivenAnswer answer, LocalDate today) =>
        question.Kind switch
        {
            QuestionKind.YesNo => answer.Value is Yes or No or Unsure
                && (answer.Since is null || answer.Value != No && IsRecent(answer.Since.Value)),
            QuestionKind.Agree => answer is { Value: Agreed, Since: null },
            QuestionKind.Confirm => answer is { Value: Right, Since: null },
            QuestionKind.Text => answer.Since is null && answer.Value.Length <= MostLetters,
        } && (answer.Since is null || answer.Since <= today);

    // Nobody has had anything since before she was born.
    private static bool IsRecent(LocalDate since) => since.Year >= 1900;

    private static Refusal Wrong(string code, string message, string question) =>
        new(RefusalKind.Invalid, code, message, $"answers.{question}");
}
