using Studio.Core.Catalogue;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Catalogue;

public class Policies
{
    [Fact]
    public void The_shipped_defaults_are_those_a_studio_starts_with() =>
        Assert.Equal(new StudioPolicies(), TheCatalogue.Book.Policies);

    [Fact]
    public void Every_policy_is_in_the_catalogue_once() =>
        Assert.Equal(
            StudioPolicies.Codes.Order(StringComparer.Ordinal),
            TheCatalogue.Book.PolicyChoices.Select(c => c.Code).Order(StringComparer.Ordinal)
        );

    [Theory]
    [InlineData("guideline", "canada")]
    [InlineData("clearance-for-everyone", "no")]
    [InlineData("clearance-most-days", "none")]
    [InlineData("letter-follows-change", "no")]
    [InlineData("screening-most-days", "28")]
    [InlineData("week-reading", "week-later")]
    [InlineData("look-ahead-days", "42")]
    [InlineData("move-hold-hours", "12")]
    [InlineData("waitlist-cut-off-minutes", "0")]
    [InlineData("booking-ahead-days", "56")]
    [InlineData("passes-needed", "yes")]
    [InlineData("cancel-free-hours", "24")]
    [InlineData("pass-stops-before-due-weeks", "4")]
    [InlineData("pass-stops-after-birth-weeks", "6")]
    [InlineData("impact-after-birth-days", "84")]
    [InlineData("after-caesarean-days", "42")]
    [InlineData("ends-soon-days", "7")]
    [InlineData("quiet-after-birth-days", "56")]
    [InlineData("letter-first-reminder-days", "35")]
    [InlineData("letter-last-reminder-days", "1")]
    [InlineData("heart-rate", "canada")]
    [InlineData("heart-rate", "acog-cap")]
    [InlineData("heart-rate-29", "younger")]
    [InlineData("supine-from", "16w0d")]
    [InlineData("supine-from", "20w0d")]
    [InlineData("supine-from", "28w0d")]
    [InlineData("supine-from", "symptoms")]
    [InlineData("effort-most", "7")]
    [InlineData("lifting", "by-weight")]
    [InlineData("lifting", "by-symptoms")]
    [InlineData("prolapse-work", "by-symptoms")]
    [InlineData("warm-room", "measured")]
    [InlineData("left-out-most-percent", "30")]
    [InlineData("timetable-ahead-weeks", "12")]
    [InlineData("mail-quiet-from", "20")]
    [InlineData("mail-quiet-until", "7")]
    [InlineData("mail-most-a-day", "3")]
    [InlineData("rest-hours-least", "12")]
    [InlineData("cover-settles", "instructors")]
    public void A_chosen_value_changes_the_policies_and_nothing_undoes_it_but_its_default(
        string code,
        string value
    )
    {
        var chosen = TheCatalogue.Book.Choose(TheCatalogue.Book.Policies, code, value).Expected();
        var choice = TheCatalogue.Book.PolicyChoices.Single(c => c.Code == code);

        Assert.NotEqual(TheCatalogue.Book.Policies, chosen);
        Assert.Equal(value, chosen.ValueOf(code));
        Assert.Equal(
            TheCatalogue.Book.Policies,
            TheCatalogue.Book.Choose(chosen, code, choice.Default).Expected()
        );
    }

    [Theory]
    [InlineData("guideline", "strictest", "policy-value")]
    [InlineData("clearance-for-everyone", "maybe", "policy-value")]
    [InlineData("screening-most-days", "0", "policy-value")]
    [InlineData("screening-most-days", "-1", "policy-value")]
    [InlineData("impact-after-birth-days", "41", "policy-value")]
    [InlineData("ends-soon-days", "soon", "policy-value")]
    [InlineData("supine-from", "12w0d", "policy-value")]
    [InlineData("supine-from", "14", "policy-value")]
    [InlineData("effort-most", "8", "policy-value")]
    [InlineData("lifting", "heavy", "policy-value")]
    [InlineData("left-out-most-percent", "100", "policy-value")]
    [InlineData("shoe-colour", "red", "policy-unknown")]
    public void A_value_that_is_not_allowed_is_refused(string code, string value, string refusal) =>
        Assert.Equal(
            refusal,
            TheCatalogue.Book.Choose(TheCatalogue.Book.Policies, code, value).Refusal?.Code
        );

    // NHS (PR07, seen): not before the 6-week check, which is the earliest published for impact.
    [Fact]
    public void No_studio_can_let_impact_begin_before_the_earliest_published_day() =>
        Assert.Equal(
            42,
            Enumerable
                .Range(0, 367)
                .First(day =>
                    TheCatalogue.Book.Choose(new(), "impact-after-birth-days", $"{day}").Refusal
                        is null
                )
        );
}
