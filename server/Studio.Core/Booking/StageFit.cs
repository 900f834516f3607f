using Studio.Core.Pregnancies;

namespace Studio.Core.Booking;

/// <summary>What her stage on the date says, and what her dates leave open.</summary>
internal static class StageFit
{
    public static readonly Reason NotBookable = new()
    {
        Code = ReasonCodes.NotBookable,
        Verdict = Suits.NotSuitable,
        ForHer = "Booking rests for now. We are here whenever you would like to talk.",
        ForDesk = "Not bookable.",
    };

    public static Reason DatesNeeded(HerDay question)
    {
        var early = question.At.Phase == Phase.BeforeDates;
        return new()
        {
            Code = ReasonCodes.DatesNeeded,
            Verdict = Suits.NotSuitable,
            ForHer = early
                ? $"By the dates we have, {Wording.Date(question.On)} lies before your pregnancy began."
                : "We do not have your dates yet, so we cannot tell what suits you.",
            ForDesk = "Her dates are needed.",
            Lift = new(
                "Give us your due date, or what you know about your dates; after a birth, its date."
            ),
            DeskLift = new("Enter her dates."),
        };
    }

    public static IEnumerable<Reason> Reasons(FitQuestion question)
    {
        if (!question.Class.Stages.Contains(question.At.Stage?.Code ?? ""))
            yield return WrongStage(question);
        if (question.At.PastPostterm)
            yield return new()
            {
                Code = ReasonCodes.ReportTheBirth,
                Verdict = Suits.NotSuitable,
                ForHer =
                    $"On {Wording.Date(question.On)} you would be past 42 weeks, and nothing can be booked for then. When you feel like it, tell us how you are.",
                ForDesk = "Past 42 weeks on that date with no birth reported.",
                ForInstructor = "No birth is reported: she does not take part.",
                Lift = new("Tell us the day of the birth; what suits you then counts from it."),
                DeskLift = new("Report the birth once she tells of it."),
            };
        else if (question.At.MayHaveGivenBirth)
            yield return new()
            {
                Code = ReasonCodes.MayHaveGivenBirth,
                Verdict = Suits.Suitable,
                ForHer =
                    "You may have given birth by then. Your place is kept; tell us when you like.",
                ForDesk = "She may have given birth by then: her place is kept.",
                ForInstructor =
                    "She may have given birth by this date: her place is kept, and she may not come.",
            };
    }

    private static Reason WrongStage(FitQuestion question)
    {
        var (on, at) = (Wording.Date(question.On), question.At);
        var stage = NameOf(at.Stage);
        var exact = at.Age is { } age ? $" ({age})" : "";
        var lift = LiftOf(question);
        return new()
        {
            Code = ReasonCodes.Stage,
            Verdict = Suits.NotSuitable,
            ForHer =
                $"On {on} your stage is {stage}{exact}. This class is for: {AdmittedBy(question)}.",
            ForDesk = $"Not her stage on that date: {stage}.",
            ForInstructor = "Not a class for her stage on this date.",
            Lift = lift,
            DeskLift = lift,
        };
    }

    /// <summary>The next dates on which the class is for her stage; null when that time is over for this pregnancy.</summary>
    private static Lift? LiftOf(FitQuestion question)
    {
        var admitted = question.Class.Stages;
        var ahead = question
            .Book.Stages.Bands(question.Her.Pregnancy!)
            .SkipWhile(b => b.From <= question.On || !admitted.Contains(b.Stage.Code))
            .TakeWhile(b => admitted.Contains(b.Stage.Code))
            .ToList();
        if (ahead is [var first, ..])
        {
            var range = ahead[^1].To is { } to
                ? $"From {Wording.Date(first.From)} to {Wording.Date(to)}"
                : $"From {Wording.Date(first.From)} on";
            return new(
                $"{range} ({NameOf(first.Stage)}) the stage is right for this class.",
                first.From
            );
        }
        var afterBirth = question.Book.Stages.Stages.Any(s =>
            s.CountsFrom == StageCount.Birth && admitted.Contains(s.Code)
        );
        return
            question.At.Phase == Phase.Pregnant
            && afterBirth
            && question.Her.Pregnancy!.BornOn is null
            ? new("After the birth, once it is reported, the stage can be right for this class.")
            : null;
    }

    private static string AdmittedBy(FitQuestion question) =>
        string.Join(
            ", ",
            question
                .Book.Stages.Stages.Where(s => question.Class.Stages.Contains(s.Code))
                .Select(NameOf)
        );

    private static string NameOf(Stage? stage) => stage?.Name.ToLowerInvariant() ?? "not known";
}
