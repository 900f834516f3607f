using Studio.Core.Clearance;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Core.Booking;

/// <summary>What holds, screening and clearance letters say on the date, whatever the class.</summary>
internal static class PaperFit
{
    public static IEnumerable<Reason> Reasons(HerDay question)
    {
        foreach (var reason in Bodily(question).Concat(Screening(question)))
            yield return reason;
        if (question.Policies.ClearanceForEveryone && !question.HasLetter())
            yield return NoLetter(question);
    }

    /// <summary>What speaks against any movement at all: a hold, or a screening that says no exercise.</summary>
    public static IEnumerable<Reason> Bodily(HerDay question)
    {
        if (question.Her.Holds.Any(h => h.StandsOn(question.On)))
            yield return OnHold;
        if (
            question.Her.Screening is { Outcome: ScreeningOutcome.NoExercise } answered
            && answered.AnsweredOn <= question.On
        )
            yield return NoExercise;
    }

    private static IEnumerable<Reason> Screening(HerDay question)
    {
        var (her, on) = (question.Her, question.On);
        var status = ScreeningRules.On(her, on, question.Book.Stages, question.Policies);
        if (status != ScreeningStatus.Current)
            yield return new()
            {
                Code = ReasonCodes.ScreeningNeeded,
                Verdict = Suits.NeedsClearance,
                ForHer =
                    status == ScreeningStatus.None
                        ? "You have not answered our screening questions yet."
                        : $"By {Wording.Date(on)} your screening answers are too old to count.",
                ForDesk =
                    status == ScreeningStatus.None
                        ? "Screening is not answered yet."
                        : "Screening is due again by that date.",
                ForInstructor = "Her screening is not up to date: she takes part only once it is.",
                Source = question
                    .Book.PolicyChoices.FirstOrDefault(c => c.Code == "screening-most-days")
                    ?.Source,
                Lift = new($"Answer the screening questions again before {Wording.Date(on)}.", on),
                DeskLift = new("Ask her to answer the screening questions.", on),
            };

        // An answer stands until she gives another, however old it is.
        if (her.Screening is not { } answered || answered.AnsweredOn > on)
            yield break;
        if (answered.Outcome == ScreeningOutcome.ClearanceNeeded && !question.HasLetter())
            yield return Letters.Needed(
                question,
                "Your screening answers need a word from your clinician first."
            );
    }

    private static Reason NoLetter(HerDay question)
    {
        var standing = ClearanceRules.On(
            question.Her.Letters,
            question.Her.Pregnancy,
            question.On,
            question.Book.Stages,
            question.Policies
        );
        var (her, desk) = standing switch
        {
            { EndedByBirth: true } => (
                "The birth ended your earlier letter: we need one written since then.",
                "The letter on file ended with the birth"
            ),
            { Status: ClearanceStatus.Expired, ValidUntil: { } until } => (
                $"Your letter counts until {Wording.Date(until)}, which is before this class.",
                $"The letter on file counts until {Wording.Date(until)}"
            ),
            _ => (
                "We do not have a clearance letter from you that counts.",
                "No clearance letter on file counts"
            ),
        };
        return Letters.Needed(question, her, desk) with
        {
            Source = question
                .Book.PolicyChoices.FirstOrDefault(c => c.Code == "clearance-for-everyone")
                ?.Source,
        };
    }

    private static readonly Reason OnHold = new()
    {
        Code = ReasonCodes.OnHold,
        Verdict = Suits.NotSuitable,
        ForHer = "Your classes rest until your clinician has had a look.",
        ForDesk = "Everything is on hold for her.",
        ForInstructor =
            "On hold: she does not take part. Should she be unwell, stop and refer; in an emergency call the local number.",
        Lift = new("A new letter from your clinician lifts this."),
        DeskLift = new("A new clearance letter lifts the hold."),
    };

    private static readonly Reason NoExercise = new()
    {
        Code = ReasonCodes.NoExercise,
        Verdict = Suits.NotSuitable,
        ForHer = "From what you answered, no exercise here for now. Please talk to your clinician.",
        ForDesk = Words.DeskDoesNotSuit,
        ForInstructor = "She does not take part for now.",
        Lift = new(
            "When your clinician says you may, answer the screening questions again and bring a letter."
        ),
    };
}
