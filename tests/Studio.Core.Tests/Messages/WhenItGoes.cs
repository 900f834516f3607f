using Studio.Core.Messages;

namespace Studio.Core.Tests.Messages;

public class WhenItGoes
{
    private static readonly DateTimeZone Lisbon = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];
    private static readonly MailPolicy Policy = new(21, 8, 3);

    [Theory]
    [InlineData("2026-03-02T20:59", null, "a minute before they begin")]
    [InlineData("2026-03-02T21:00", "2026-03-03T08:00", "as they begin")]
    [InlineData("2026-03-02T23:59", "2026-03-03T08:00", "before midnight")]
    [InlineData("2026-03-03T00:00", "2026-03-03T08:00", "at midnight")]
    [InlineData("2026-03-03T07:59", "2026-03-03T08:00", "a minute before they end")]
    [InlineData("2026-03-03T08:00", null, "as they end")]
    [InlineData(
        "2026-03-29T00:30",
        "2026-03-29T08:00",
        "the night the clocks go forward (EU, last Sunday of March)"
    )]
    [InlineData(
        "2026-10-25T00:30",
        "2026-10-25T08:00",
        "the night they go back (EU, last Sunday of October)"
    )]
    public void Quiet_hours_are_by_the_clock_on_the_wall(string now, string? ends, string when)
    {
        var until = MailRules.QuietUntil(At(now), Lisbon, 21, 8);
        Assert.True(
            ends == until?.InZone(Lisbon).LocalDateTime.ToString("uuuu-MM-dd'T'HH:mm", null),
            when
        );
    }

    [Theory]
    [InlineData(12, 14, "2026-03-02T13:00", "2026-03-02T14:00")]
    [InlineData(12, 14, "2026-03-02T14:00", null)]
    [InlineData(0, 6, "2026-03-02T05:00", "2026-03-02T06:00")]
    [InlineData(22, 0, "2026-03-02T23:00", "2026-03-03T00:00")]
    [InlineData(22, 0, "2026-03-02T00:00", null)]
    [InlineData(9, 9, "2026-03-02T09:00", null)]
    public void They_may_lie_anywhere_or_nowhere(int from, int until, string now, string? ends) =>
        Assert.Equal(
            ends is null ? null : At(ends),
            MailRules.QuietUntil(At(now), Lisbon, from, until)
        );

    [Fact]
    public void Pauses_double_up_to_an_hour() =>
        Assert.Equal(
            [5, 10, 20, 40, 60, 60, 60],
            new[] { 1, 2, 3, 4, 5, 6, 600 }.Select(n => MailRules.PauseAfter(n).TotalMinutes)
        );

    [Theory]
    [InlineData("2026-03-02T22:00", "2026-03-03T09:59", true, "less than two hours after they end")]
    [InlineData("2026-03-02T22:00", "2026-03-03T10:00", false, "two hours after they end")]
    [InlineData("2026-03-03T01:00", "2026-03-03T19:00", true, "on the same day")]
    [InlineData("2026-03-03T01:00", "2026-03-04T07:00", false, "on the next day")]
    public void News_of_a_class_goes_through_the_night_only_when_the_morning_is_too_late(
        string now,
        string starts,
        bool goes,
        string when
    )
    {
        var due = Due(MessageKind.SessionChanged) with { StartsAt = At(starts) };
        Assert.True(goes == MailRules.Decide(due, Policy, At(now)) is MailDecision.Send, when);
        // What can be done without never does.
        Assert.IsType<MailDecision.Wait>(
            MailRules.Decide(due with { Kind = MessageKind.CoverAsked }, Policy, At(now))
        );
    }

    [Fact]
    public void Enough_is_counted_over_a_day_that_moves_along()
    {
        var now = At("2026-03-02T12:00");
        Instant[] sent =
        [
            now - Duration.FromHours(1),
            now - Duration.FromHours(5),
            now - Duration.FromHours(23),
        ];
        var due = Due(MessageKind.NeedsHer) with { SentLately = sent };
        Assert.Equal(
            new MailDecision.Wait(now + Duration.FromHours(1), HeldBack.Enough),
            MailRules.Decide(due, Policy, now)
        );
        Assert.IsType<MailDecision.Send>(
            MailRules.Decide(due, Policy, now + Duration.FromHours(1))
        );
        Assert.IsType<MailDecision.Send>(
            MailRules.Decide(due with { StartsAt = now + Duration.FromHours(23) }, Policy, now)
        );
    }

    [Fact]
    public void A_reason_not_to_send_comes_before_any_reason_to_wait()
    {
        var night = At("2026-03-02T23:00");
        var due = Due(MessageKind.BookingMade);
        Assert.IsType<MailDecision.Drop>(
            MailRules.Decide(due with { MayBeWrittenTo = false }, Policy, night)
        );
        Assert.IsType<MailDecision.Drop>(
            MailRules.Decide(due with { StillTrue = false, AnswersHer = true }, Policy, night)
        );
        Assert.IsType<MailDecision.Drop>(
            MailRules.Decide(due with { Wanted = false }, Policy, night)
        );
        Assert.IsType<MailDecision.Refuse>(
            MailRules.Decide(due with { Address = "" }, Policy, night)
        );
        Assert.IsType<MailDecision.Send>(
            MailRules.Decide(due with { AnswersHer = true }, Policy, night)
        );
    }

    // RFC 5321, 4.2.1 (first digit), 3.8 (421), 4.5.3.2.6 and 6.1 (who answers for a message after its end).
    [Theory]
    [InlineData(MailStep.End, 250, MailOutcome.Sent)]
    [InlineData(MailStep.End, 451, MailOutcome.Later)]
    [InlineData(MailStep.End, 554, MailOutcome.Never)]
    [InlineData(MailStep.End, null, MailOutcome.Unanswered)]
    [InlineData(MailStep.Body, null, MailOutcome.Later)]
    [InlineData(MailStep.Body, 354, MailOutcome.Later)]
    [InlineData(MailStep.Recipient, 450, MailOutcome.Later)]
    [InlineData(MailStep.Recipient, 550, MailOutcome.Never)]
    [InlineData(MailStep.Recipient, 421, MailOutcome.Closed)]
    [InlineData(MailStep.Sender, 553, MailOutcome.Closed)]
    [InlineData(MailStep.Opening, 554, MailOutcome.Closed)]
    [InlineData(MailStep.Opening, 535, MailOutcome.Closed)]
    [InlineData(MailStep.Opening, null, MailOutcome.Closed)]
    public void Answers_of_a_server_are_told_apart(MailStep step, int? code, MailOutcome means) =>
        Assert.Equal(means, MailOutcomes.Of(step, code));

    [Theory]
    [InlineData("a\r\nb", "a b")]
    [InlineData("a\u2028b\u0085c\u000bd", "a b c d")]
    [InlineData("\u202eabc\u202c", "abc")]
    [InlineData("  Zoë  O’Neil ", "Zoë O’Neil")]
    [InlineData("\0\n", "")]
    public void One_line_stays_one_line(string text, string line) =>
        Assert.Equal(line, OneLine.Of(text));

    private static MessageDue Due(MessageKind kind) =>
        new()
        {
            Kind = kind,
            Zone = Lisbon,
            Address = "ilka@mail.example",
            MayBeWrittenTo = true,
            Wanted = true,
            StillTrue = true,
            AnswersHer = false,
            SentLately = [],
        };

    private static Instant At(string local) =>
        Lisbon
            .AtLeniently(
                NodaTime
                    .Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm")
                    .Parse(local)
                    .Value
            )
            .ToInstant();
}
