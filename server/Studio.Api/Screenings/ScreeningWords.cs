using Studio.Api.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Screenings;

namespace Studio.Api.Screenings;

/// <summary>The words around the questions.</summary>
public static class ScreeningWords
{
    /// <summary>Why the questions are asked, to her.</summary>
    public static string Asked(IReadOnlyList<AskedBecause> why) =>
        why.Count == 0
            ? "Your answers count. You can answer again whenever something has changed."
            : why[0] switch
            {
                AskedBecause.Never =>
                    "Before your first class we ask you some questions, so that nothing here does you harm.",
                AskedBecause.NewPregnancy =>
                    "We ask everybody afresh when she comes again; what you answered before does not count any more. Take your time.",
                AskedBecause.WarningSign =>
                    "Since you answered, something came up that had to be looked at. Please answer again.",
                AskedBecause.Birth =>
                    "Since you answered you have given birth. When you would like to come to a class, please answer again first; there is no hurry.",
                AskedBecause.Interval => "It has been a while. Please answer again.",
                AskedBecause.NewStage =>
                    "You have come into a new stage. Please answer again; your bookings stand meanwhile.",
            };

    /// <summary>What came of them, to her.</summary>
    public static string Says(ScreeningOutcome outcome, bool onHold) =>
        outcome switch
        {
            ScreeningOutcome.NothingFound =>
                "Thank you. Nothing you answered speaks against classes that suit your stage. This is no diagnosis: when something changes, tell us and your clinician.",
            ScreeningOutcome.ClearanceNeeded =>
                "Thank you. Something you answered needs a word from your midwife or doctor first: please bring a letter. Your page has one to print.",
            ScreeningOutcome.NoExercise when onHold =>
                "Please speak to your midwife or doctor today. Your bookings rest, at no charge, until there is a new letter. If it is bad or sudden, call the emergency number.",
            ScreeningOutcome.NoExercise =>
                "From what you answered, no classes here for now. Please talk to your midwife or doctor; everyday activity goes on unless she or he says otherwise.",
        };

    /// <summary>The same for the front desk, which hears of no answer.</summary>
    public static string ForDesk(ScreeningOutcome outcome) =>
        outcome switch
        {
            ScreeningOutcome.NothingFound => "The questions are answered. Nothing more is needed.",
            ScreeningOutcome.ClearanceNeeded =>
                "The questions are answered. A clearance letter is needed; her own page says why.",
            ScreeningOutcome.NoExercise =>
                "The questions are answered. No class for now; her own page says why.",
        };

    /// <summary>Reasons for her or the owner.</summary>
    public static IReadOnlyList<ScreeningReasonMessage> Reasons(ScreeningResult result) =>
        [
            .. result.Reasons.Select(r => new ScreeningReasonMessage(
                r.Question.Code,
                r.Question.Asks,
                r.Outcome,
                r.ForHer,
                FitMessage.Cite(r.Source)
            )),
        ];

    /// <summary>Questions on the wire.</summary>
    public static IReadOnlyList<QuestionMessage> Questions(IEnumerable<Question> questions) =>
        [
            .. questions.Select(q => new QuestionMessage(
                q.Code,
                q.Section,
                q.Kind,
                q.Asks,
                q.Help,
                FitMessage.Cite(q.Source)
            )),
        ];
}
