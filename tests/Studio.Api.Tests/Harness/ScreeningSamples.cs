using System.Text.Json;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Api.Tests.Harness;

/// <summary>Answers to the health questions.</summary>
internal static class ScreeningSamples
{
    /// <summary>Every question answered with nothing to report, but for these.</summary>
    public static Dictionary<string, object> Answers(
        Phase phase = Phase.Pregnant,
        params (string Question, string Value)[] but
    )
    {
        var answers = StudioApp
            .Book.Questions.For(phase)
            .Where(q => q.IsRequired)
            .ToDictionary(
                q => q.Code,
                q =>
                    (object)
                        new
                        {
                            value = q.Kind switch
                            {
                                QuestionKind.Agree => ScreeningAnswers.Agreed,
                                QuestionKind.Confirm => ScreeningAnswers.Right,
                                _ => ScreeningAnswers.No,
                            },
                        }
            );
        foreach (var (question, value) in but)
            answers[question] = new { value };
        return answers;
    }

    /// <summary>The same as JSON, with nothing to report.</summary>
    public static string AllWell() => JsonSerializer.Serialize(Answers());
}
