using Studio.Core.Accounts;
using Studio.Core.Booking;

namespace Studio.Core.Tests.Booking;

/// <summary>Each reader gets her own words of a fit.</summary>
public class WordsOfAFit
{
    private static readonly Reason Full = new()
    {
        Code = ReasonCodes.Adapted,
        Verdict = Suits.WithModifications,
        ForHer = "for her",
        ForDesk = "for the desk",
        ForInstructor = "for the instructor",
        Lift = new("lift for her"),
        DeskLift = new("lift for the desk"),
    };

    [Theory]
    [InlineData(Audience.Owner, "for her", "lift for her")]
    [InlineData(Audience.Herself, "for her", "lift for her")]
    [InlineData(Audience.Instructor, "for the instructor", null)]
    [InlineData(Audience.FrontDesk, "for the desk", "lift for the desk")]
    public void A_reason_speaks_to_its_reader(Audience audience, string text, string? lift)
    {
        Assert.Equal(text, FitWords.Text(Full, audience));
        Assert.Equal(lift, FitWords.Lift(Full, audience)?.Text);
    }

    [Fact]
    public void Every_verdict_has_a_name_of_its_own()
    {
        var names = Enum.GetValues<Suits>().Select(FitWords.Name).ToList();
        Assert.Equal(names, names.Distinct(StringComparer.Ordinal));
    }

    [Fact]
    public void A_class_that_suits_is_as_taught_for_everybody() =>
        Assert.All(
            Enum.GetValues<Audience>(),
            a =>
                Assert.Equal(
                    "As taught.",
                    FitWords.Summary(Someone.Pregnant("22w 0d").In(Someone.AClass()), a)
                )
        );

    [Fact]
    public void Changes_are_counted_for_her_and_not_told_at_the_desk()
    {
        var one = Someone.Pregnant("22w 0d").In(Someone.AClass("supine"));
        var two = Someone.Pregnant("22w 0d").In(Someone.AClass("supine", "front-support"));
        Assert.StartsWith(
            "With 1 change: ",
            FitWords.Summary(one, Audience.Herself),
            StringComparison.Ordinal
        );
        Assert.Matches("^With [2-9] changes: ", FitWords.Summary(two, Audience.Herself));
        Assert.Equal("Suits with changes.", FitWords.Summary(two, Audience.FrontDesk));
    }

    [Fact]
    public void The_desk_s_line_is_made_of_the_desk_s_words_only() =>
        Any.Case.AlwaysHolds(c =>
        {
            var fit = c.Her.In(c.Class, c.Policies);
            var line = FitWords.Summary(fit, Audience.FrontDesk);
            return line is "As taught." or "Suits with changes."
                || line
                    == string.Join(
                        " ",
                        fit.ForDesk()
                            .Where(r => r.Verdict == fit.Verdict)
                            .Select(r => r.Text)
                            .Distinct(StringComparer.Ordinal)
                    );
        });

    [Fact]
    public void Where_a_class_does_not_suit_nobody_is_left_without_a_word() =>
        Any.Case.AlwaysHolds(c =>
        {
            var fit = c.Her.In(c.Class, c.Policies);
            return new[] { Audience.Owner, Audience.Herself, Audience.FrontDesk }.All(a =>
                FitWords.Summary(fit, a).Length > 0
            );
        });
}
