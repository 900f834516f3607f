using NodaTime;
using Studio.Core.Catalogue;

namespace Studio.Core.Booking;

/// <summary>What the listed conditions she holds on the date say, whatever the class.</summary>
internal static class ConditionFit
{
    public static IEnumerable<Reason> Reasons(HerDay question)
    {
        foreach (var holding in question.Holdings)
            if (question.Book.FactorOf(holding.Code) is null)
                yield return Unknown(holding);
            else if (
                question.Book.ConditionOf(holding.Code) is { } condition
                && Of(question, condition, holding) is { } reason
            )
                yield return reason with
                {
                    Factor = holding.Code,
                    Rule = condition.Reference,
                };
    }

    private static Reason? Of(HerDay question, Condition condition, Holding holding)
    {
        var listing = question.At.Age is { } age
            ? condition.At(age, question.Policies)
            : condition.AfterBirth;
        if (listing is null)
            return null;
        var reason = listing.Severity switch
        {
            Severity.None => null,
            Severity.Relative => Relative(question, condition, holding, listing),
            Severity.Absolute => Absolute(condition, holding),
        };
        return reason is null ? null : reason with { Source = listing.Source };
    }

    private static Reason Relative(
        HerDay question,
        Condition condition,
        Holding holding,
        Listing listing
    )
    {
        var changed = Since(question, holding, listing);
        return question.HasLetter(changed)
            ? Letters.Follow(
                $"{condition.Factor.Name}: your letter says what you may do, and your instructor keeps to it.",
                condition.Factor.InstructorWords
            )
            : Letters.Needed(
                question,
                $"{condition.Factor.Name}: we need a word from your clinician before this class.",
                since: changed
            );
    }

    // Meah et al. 2020: absolute means no moderate or harder effort and keeps everyday activity. Whether talk and breath
    // are then fine nobody says, so the cautious reading leaves out every class.
    private static Reason Absolute(Condition condition, Holding holding) =>
        new()
        {
            Code = ReasonCodes.DoesNotSuit,
            Verdict = Suits.NotSuitable,
            ForHer =
                $"{condition.Factor.Name}: no classes here for now, and we are careful and mean the gentle ones too."
                + " The guidance is to leave out moderate and harder effort. It does not mean bed rest, and everyday activity goes on"
                + " unless your clinician says otherwise.",
            ForDesk = Words.DeskDoesNotSuit,
            ForInstructor = Words.DoesNotTakePart,
            Lift = Words.WhenOver(
                holding,
                "When your clinician says this is over, end it on your page."
            ),
        };

    /// <summary>The day a letter must not be older than: the beginning of what it answers for, or of the week it counts from.</summary>
    private static LocalDate? Since(HerDay question, Holding holding, Listing listing)
    {
        var week =
            question.At.Age is not null && Condition.Begins(listing, question.Policies) is { } from
                ? question.DateOf(from)
                : (LocalDate?)null;
        return week is null ? holding.Since
            : holding.Since is null ? week
            : LocalDate.Max(week.Value, holding.Since.Value);
    }

    private static Reason Unknown(Holding holding) =>
        new()
        {
            Code = ReasonCodes.RecordUnclear,
            Verdict = Suits.NeedsClearance,
            ForHer =
                "Your page holds an entry that our rules no longer know. Ask the studio to look at it.",
            ForDesk = "Her record needs a look by the owner before this class.",
            ForInstructor = "She takes part only once the studio has looked at her record.",
            Factor = holding.Code,
            Lift = new("The studio corrects the entry."),
            DeskLift = new("The owner corrects her record."),
        };
}
