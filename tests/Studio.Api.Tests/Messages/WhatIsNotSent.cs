using Studio.Core.Messages;

namespace Studio.Api.Tests.Messages;

/// <summary>Due, and yet it does not go out: not now, or not any more.</summary>
public class WhatIsNotSent
{
    // Monday 2 March 2026 in Lisbon, where winter time is UTC.
    private static readonly Instant Night = Instant.FromUtc(2026, 3, 2, 22, 30);

    [Fact]
    public async Task In_quiet_hours_of_her_own_place_it_waits_for_the_morning()
    {
        await using var app = await StudioApp.Empty(Night);
        var lisbon = await app.HasClient(location: await app.HasLocation());
        var tokyo = await app.HasClient(location: await app.HasLocation("Bay house", "Asia/Tokyo"));
        // 22:30 in Lisbon is 07:30 in Tokyo.
        var here = await app.HasMessage(lisbon);
        var there = await app.HasMessage(tokyo);
        await app.Rings();
        var waits = await app.Message(here);
        Assert.Equal(
            (MessageStatus.Waiting, 0, "quiet"),
            (waits.Status, waits.Attempts, waits.HeldBack)
        );
        Assert.Equal(Instant.FromUtc(2026, 3, 3, 8, 0), waits.NotBefore);
        Assert.Equal(Instant.FromUtc(2026, 3, 2, 23, 0), (await app.Message(there)).NotBefore);

        app.Clock.AdvanceMinutes(30);
        await app.Rings();
        Assert.Equal(MessageStatus.Sent, (await app.Message(there)).Status);
        Assert.Equal(MessageStatus.Waiting, (await app.Message(here)).Status);
        app.Clock.AdvanceHours(9);
        await app.Rings();
        Assert.Equal(MessageStatus.Sent, (await app.Message(here)).Status);
    }

    [Fact]
    public async Task News_of_a_class_that_begins_early_goes_through_the_night()
    {
        await using var app = await StudioApp.Empty(Night);
        var client = await app.HasClient();
        var early = await app.HasSession(app.Today.PlusDays(1), "09:00");
        var evening = await app.HasSession(app.Today.PlusDays(1), "18:00");
        var goes = await app.HasMessage(client, MessageKind.SessionCancelled, early, "Not held.");
        var waits = await app.HasMessage(
            client,
            MessageKind.SessionCancelled,
            evening,
            "Not held."
        );
        await app.Rings();
        Assert.Equal(MessageStatus.Sent, (await app.Message(goes)).Status);
        Assert.Equal(MessageStatus.Waiting, (await app.Message(waits)).Status);
    }

    [Fact]
    public async Task What_answers_her_own_booking_goes_through_the_night()
    {
        await using var app = await StudioApp.Empty(Night);
        var client = await app.HasClient();
        var session = await app.HasSession(app.Today.PlusDays(5));
        await (await app.AtHerPage(client)).Booked(session, client);
        await app.Rings();
        Assert.Equal("sent", Assert.Single(await app.MessagesTo(client)).Status);
    }

    [Fact]
    public async Task Enough_for_a_day_waits_until_a_day_is_over()
    {
        await using var app = await StudioApp.Empty();
        await app.HasPolicy("mail-most-a-day", "2");
        var client = await app.HasClient();
        for (var i = 0; i < 2; i++)
        {
            await app.HasMessage(client);
            await app.Rings();
            app.Clock.AdvanceHours(1);
        }

        var third = await app.HasMessage(client);
        var other = await app.HasMessage(await app.HasClient());
        var near = await app.HasMessage(
            client,
            MessageKind.SessionCancelled,
            await app.HasSession(app.Today),
            "Not held."
        );
        await app.Rings();
        var waits = await app.Message(third);
        Assert.Equal(("enough", MessageStatus.Waiting), (waits.HeldBack, waits.Status));
        Assert.Equal(StudioApp.Start + Duration.FromDays(1), waits.NotBefore);
        Assert.Equal(MessageStatus.Sent, (await app.Message(other)).Status);
        Assert.Equal(MessageStatus.Sent, (await app.Message(near)).Status);
        app.Clock.AdvanceDays(1);
        await app.Rings();
        Assert.Equal(MessageStatus.Sent, (await app.Message(third)).Status);
    }

    [Fact]
    public async Task A_seat_that_was_given_up_meanwhile_is_not_told_any_more()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        var herself = await app.AtHerPage(client);
        var booking = (
            await herself.Booked(await app.HasSession(app.Today.PlusDays(3)), client)
        ).Number("bookingId");
        using (var cancelled = await herself.Cancel(booking))
            await cancelled.Is(200);
        await app.Rings();
        Assert.Equal(
            [("bookingMade", "dropped"), ("bookingCancelled", "sent")],
            (await app.MessagesTo(client)).Select(m => (m.Kind, m.Status))
        );
    }

    [Fact]
    public async Task A_class_that_has_begun_is_told_of_no_more()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        var session = await app.HasSession(app.Today);
        var id = await app.HasMessage(client, MessageKind.SessionCancelled, session, "Not held.");
        app.Clock.AdvanceHours(10);
        await app.Rings();
        var dropped = await app.Message(id);
        Assert.Equal(MessageStatus.Dropped, dropped.Status);
        Assert.Equal("The class had begun before it could be sent.", dropped.Answer);
    }

    [Fact]
    public async Task To_nobody_when_there_is_no_address_or_one_that_is_none()
    {
        await using var app = await StudioApp.Empty();
        var (none, odd) = (await app.HasClient(), await app.HasClient());
        await app.Execute("update clients set email = '' where id = @none", new { none });
        await app.Execute(
            "update clients set email = @email where id = @odd",
            new { odd, email = "her@mail.example\r\nBcc: all@mail.example" }
        );
        var first = await app.HasMessage(none);
        var second = await app.HasMessage(odd);
        await app.Rings();
        Assert.Equal("No e-mail address is known.", (await app.Message(first)).Answer);
        Assert.Equal(MessageStatus.Refused, (await app.Message(second)).Status);
        Assert.False(Directory.Exists(Path.Combine(app.Folder, "mail")));
    }

    [Fact]
    public async Task After_a_loss_that_was_written_by_whatever_way()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(post.Port);
        var client = await app.HasClient();
        var id = await app.HasMessage(client);
        await app.Execute(
            "update pregnancies set ended_on = @Today, stage = null, gestational_day = null where client_id = @client",
            new { app.Today, client }
        );
        await app.Rings();
        Assert.Equal(MessageStatus.Dropped, (await app.Message(id)).Status);
        Assert.Empty(post.Got);
    }
}
