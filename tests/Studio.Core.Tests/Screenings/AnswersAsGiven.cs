using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;
using Studio.Core.Tests.Catalogue;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Screenings;

public class AnswersAsGiven
{
    private static readonly QuestionSet Questions = TheCatalogue.Book.Questions;
    private static readonly LocalDate Today = Given.Day("2026-11-25");

    [Theory]
    [InlineData("back-pain", "maybe", null, "bad-answer")]
    [InlineData("back-pain", "Yes", null, "bad-answer")]
    [InlineData("back-pain", "", null, "bad-answer")]
    [InlineData("back-pain", "yes", "2026-11-26", "bad-answer")]
    [InlineData("back-pain", "yes", "1899-12-31", "bad-answer")]
    [InlineData("back-pain", "no", "2026-11-01", "bad-answer")]
    [InlineData("agreement", "yes", null, "bad-answer")]
    [InlineData("dates-right", "agreed", null, "bad-answer")]
    [InlineData("headstand", "yes", null, "not-asked")]
    [InlineData("now-sign-heavier-bleeding", "no", null, "not-asked")]
    public void What_is_no_answer_to_a_question_asked_is_refused_by_name(
        string question,
        string value,
        string? since,
        string code
    )
    {
        var refusal = WhyNot(
            finished: false,
            (question, new(value, since is null ? null : Given.Day(since)))
        );
        Assert.Equal(code, refusal?.Code);
        Assert.Equal($"answers.{question}", refusal!.Field);
    }

    [Theory]
    [InlineData("yes", "2026-11-25")]
    [InlineData("unsure", "2026-01-01")]
    [InlineData("yes", null)]
    [InlineData("no", null)]
    public void An_answer_stands(string value, string? since) =>
        Assert.Null(
            WhyNot(
                finished: false,
                ("back-pain", new(value, since is null ? null : Given.Day(since)))
            )
        );

    [Fact]
    public void Own_words_may_be_long_but_not_endless()
    {
        var most = new string('a', ScreeningAnswers.MostLetters);
        Assert.Null(WhyNot(finished: false, ("other-medical-condition-words", new(most))));
        Assert.Equal(
            "bad-answer",
            WhyNot(finished: false, ("other-medical-condition-words", new(most + "a")))?.Code
        );
    }

    [Fact]
    public void Without_her_agreement_nothing_is_kept_whatever_else_is_open() =>
        Assert.Equal("agreement-needed", WhyNot(finished: true)?.Code);

    [Fact]
    public void Every_open_question_counts_and_the_first_is_named()
    {
        var refusal = WhyNot(finished: true, ("agreement", new("agreed")));
        Assert.Equal("answers-missing", refusal?.Code);
        Assert.Equal("answers.dates-right", refusal!.Field);
        var open = Questions.For(Phase.Pregnant).Count(q => q.IsRequired) - 1;
        Assert.StartsWith($"{open} questions", refusal.Message, StringComparison.Ordinal);
    }

    // Fail closed: nothing that could be true of her goes unasked.
    [Theory]
    [InlineData(Phase.Pregnant)]
    [InlineData(Phase.Born)]
    [InlineData(Phase.Unknown)]
    [InlineData(Phase.BeforeDates)]
    public void She_is_asked_about_everything_that_could_be_true_of_her(Phase phase)
    {
        var asked = Questions.For(phase).Select(q => q.About).OfType<string>().ToHashSet();
        foreach (
            var factor in TheCatalogue.Book.Factors.Where(f =>
                f.SameAs is null && (phase != Phase.Born || f.When != HeldWhen.Pregnancy)
            )
        )
            Assert.Contains(factor.Code, asked);
    }

    private static Refusal? WhyNot(
        bool finished,
        params (string Question, GivenAnswer Answer)[] answers
    ) =>
        ScreeningAnswers.WhyNot(
            answers.ToDictionary(a => a.Question, a => a.Answer),
            Questions,
            Phase.Pregnant,
            Today,
            finished
        );
}
