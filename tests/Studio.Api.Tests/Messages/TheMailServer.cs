using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using SmtpServer.Protocol;
using Studio.Core.Messages;

namespace Studio.Api.Tests.Messages;

/// <summary>Against a real SMTP server; what each answer means is RFC 5321's (4.2.1, 4.5.4.1, 6.1).</summary>
public class TheMailServer
{
    [Fact]
    public async Task Is_handed_a_message_once_with_everything_a_message_needs()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(post.Port);
        var client = await app.HasClient("Ilka Thornmere");
        await app.AtHerPage(client);
        var id = await app.HasMessage(client);

        await app.Rings();
        await app.Rings();

        var (to, message) = Assert.Single(post.Got);
        var sent = await app.Message(id);
        Assert.Equal((MessageStatus.Sent, 1, null), (sent.Status, sent.Attempts, sent.ClaimedAt));
        Assert.NotEmpty(sent.Answer!);
        Assert.Equal(
            await app.Value<string>("select email from clients where id = @client", new { client }),
            to
        );
        Assert.Equal($"\"Saltmarsh studio\" <{Mailing.From}>", message.From.ToString());
        Assert.Equal("Something on your page needs you", message.Subject);
        Assert.Equal(sent.MessageId, $"<{message.MessageId}>");
        Assert.Equal(app.Clock.GetCurrentInstant().ToDateTimeOffset(), message.Date);
        // RFC 3834, 5.
        Assert.Equal("auto-generated", message.Headers["Auto-Submitted"]);
        // RFC 2369, 3.2, and RFC 8058, 3.1.
        Assert.StartsWith(
            "<https://studio.saltmarsh.example/mail/stop/",
            message.Headers["List-Unsubscribe"],
            StringComparison.Ordinal
        );
        Assert.Equal("List-Unsubscribe=One-Click", message.Headers["List-Unsubscribe-Post"]);
        Assert.Contains("Hello Ilka,", message.TextBody, StringComparison.Ordinal);
        Assert.Contains(
            "https://studio.saltmarsh.example/my\n",
            message.TextBody!.ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );
        Assert.Contains("Hello Ilka,", message.HtmlBody, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Gets_many_over_one_connection_in_the_order_in_which_they_were_put()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(post.Port);
        var ids = new List<long>();
        for (var i = 0; i < 5; i++)
            ids.Add(await app.HasMessage(await app.HasClient()));

        await app.Rings();

        Assert.Equal(
            await app.Rows<string>("select message_id from messages order by id"),
            post.Got.Select(g => $"<{g.Message.MessageId}>")
        );
        foreach (var id in ids)
            Assert.Equal(MessageStatus.Sent, (await app.Message(id)).Status);
    }

    [Fact]
    public async Task Being_down_keeps_everything_until_it_is_up_again()
    {
        var port = Postbox.FreePort();
        await using var app = await Mailing.StudioWith(port);
        var first = await app.HasMessage(await app.HasClient());
        var second = await app.HasMessage(await app.HasClient());

        await app.Rings();
        foreach (var id in new[] { first, second })
        {
            var waits = await app.Message(id);
            Assert.Equal((MessageStatus.Waiting, 1), (waits.Status, waits.Attempts));
            Assert.Equal(StudioApp.Start + Duration.FromMinutes(5), waits.NotBefore);
            Assert.Contains("cannot be reached", waits.Answer, StringComparison.Ordinal);
        }

        // Before its time nobody knocks; at its time, and still nobody there, it waits twice as long.
        app.Clock.AdvanceMinutes(4);
        await app.Rings();
        Assert.Equal(1, (await app.Message(first)).Attempts);
        app.Clock.AdvanceMinutes(1);
        await app.Rings();
        Assert.Equal(
            app.Clock.GetCurrentInstant() + Duration.FromMinutes(10),
            (await app.Message(first)).NotBefore
        );

        await using var post = await Postbox.Open(port);
        app.Clock.AdvanceMinutes(10);
        await app.Rings();
        Assert.Equal(2, post.Got.Count);
        Assert.Equal(MessageStatus.Sent, (await app.Message(second)).Status);
    }

    [Fact]
    public async Task Being_away_for_five_days_ends_a_message_and_the_owner_can_begin_again()
    {
        var port = Postbox.FreePort();
        await using var app = await Mailing.StudioWith(port);
        var id = await app.HasMessage(await app.HasClient());
        for (var hours = 0; hours < 5 * 24 + 2; hours += 2)
        {
            await app.Rings();
            app.Clock.AdvanceHours(2);
        }

        var given = await app.Message(id);
        Assert.Equal(MessageStatus.Refused, given.Status);
        Assert.StartsWith("Given up after five days.", given.Answer, StringComparison.Ordinal);

        await using var post = await Postbox.Open(port);
        var owner = await app.SignedInAs(Core.Accounts.Role.Owner);
        using (var again = await owner.Post($"/api/messages/{id}/retry"))
            await again.Is(204);
        await app.Rings();
        Assert.Single(post.Got);
        using (var sent = await owner.Post($"/api/messages/{id}/retry"))
            await sent.IsRefused(409, "message-has-ended");
    }

    [Fact]
    public async Task Refusing_one_recipient_for_good_ends_that_message_and_no_other()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(post.Port);
        var (gone, there) = (await app.HasClient(), await app.HasClient());
        var address = await app.Value<string>(
            "select email from clients where id = @gone",
            new { gone }
        );
        post.Recipient = to =>
            to == address ? new(SmtpReplyCode.MailboxUnavailable, "no such mailbox") : null;
        var refused = await app.HasMessage(gone);
        var sent = await app.HasMessage(there);

        await app.Rings();
        app.Clock.AdvanceHours(3);
        await app.Rings();

        var stands = await app.Message(refused);
        Assert.Equal((MessageStatus.Refused, 1), (stands.Status, stands.Attempts));
        Assert.StartsWith("550 no such mailbox", stands.Answer, StringComparison.Ordinal);
        Assert.Equal(MessageStatus.Sent, (await app.Message(sent)).Status);
        Assert.Single(post.Got);
    }

    [Fact]
    public async Task Saying_not_now_is_asked_again_later()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(post.Port);
        post.Recipient = _ => new((SmtpReplyCode)450, "mailbox busy");
        var id = await app.HasMessage(await app.HasClient());
        await app.Rings();
        var waits = await app.Message(id);
        Assert.Equal((MessageStatus.Waiting, 0), (waits.Status, waits.Unanswered));
        Assert.StartsWith("450 mailbox busy", waits.Answer, StringComparison.Ordinal);

        post.Recipient = _ => null;
        var times = 0;
        post.Answer = _ =>
            Task.FromResult(
                times++ == 0
                    ? new SmtpResponse((SmtpReplyCode)452, "no room for now")
                    : SmtpResponse.Ok
            );
        app.Clock.AdvanceMinutes(5);
        await app.Rings();
        Assert.StartsWith("452 no room", (await app.Message(id)).Answer, StringComparison.Ordinal);
        app.Clock.AdvanceMinutes(10);
        await app.Rings();
        Assert.Equal(MessageStatus.Sent, (await app.Message(id)).Status);
        Assert.Single(post.Got);
    }

    [Fact]
    public async Task Refusing_the_whole_message_for_good_ends_it()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(post.Port);
        post.Answer = _ =>
            Task.FromResult(new SmtpResponse(SmtpReplyCode.TransactionFailed, "not wanted here"));
        var id = await app.HasMessage(await app.HasClient());
        await app.Rings();
        var ended = await app.Message(id);
        Assert.Equal(MessageStatus.Refused, ended.Status);
        Assert.StartsWith("554 not wanted here", ended.Answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Break.InTheMessage)]
    [InlineData(Break.BeforeTheAnswer)]
    public async Task Breaking_off_is_followed_by_one_repeat_under_the_same_name(object where)
    {
        await using var post = await Postbox.Open();
        using var wire = new Wire(post.Port) { Breaks = (Break)where };
        await using var app = await Mailing.StudioWith(wire.Port);
        var id = await app.HasMessage(await app.HasClient());
        await app.Rings();
        Assert.Equal(MessageStatus.Waiting, (await app.Message(id)).Status);
        var before = post.Got.Count;
        Assert.Equal(wire.Breaks == Break.BeforeTheAnswer ? 1 : 0, before);

        wire.Breaks = Break.Nowhere;
        app.Clock.AdvanceMinutes(5);
        await app.Rings();

        Assert.Equal(MessageStatus.Sent, (await app.Message(id)).Status);
        Assert.Equal(before + 1, post.Got.Count);
        Assert.Single(post.Got.Select(g => g.Message.MessageId).Distinct());
    }

    [Fact]
    public async Task Whose_answer_never_comes_gets_it_twice_and_never_a_third_time_by_itself()
    {
        await using var post = await Postbox.Open();
        using var wire = new Wire(post.Port) { Breaks = Break.BeforeTheAnswer };
        await using var app = await Mailing.StudioWith(wire.Port);
        var id = await app.HasMessage(await app.HasClient());
        for (var i = 0; i < 4; i++)
        {
            await app.Rings();
            app.Clock.AdvanceHours(2);
        }

        Assert.Equal(2, post.Got.Count);
        var ended = await app.Message(id);
        Assert.Equal((MessageStatus.Refused, 2), (ended.Status, ended.Attempts));
        Assert.Contains("it may have arrived", ended.Answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task That_hangs_up_before_the_message_can_have_it_as_often_as_it_takes()
    {
        await using var post = await Postbox.Open();
        using var wire = new Wire(post.Port) { Breaks = Break.BeforeTheMessage };
        await using var app = await Mailing.StudioWith(wire.Port);
        var id = await app.HasMessage(await app.HasClient());
        for (var i = 0; i < 4; i++)
        {
            await app.Rings();
            app.Clock.AdvanceHours(2);
        }

        var waits = await app.Message(id);
        Assert.Equal(
            (MessageStatus.Waiting, 4, 0),
            (waits.Status, waits.Attempts, waits.Unanswered)
        );
        wire.Breaks = Break.Nowhere;
        await app.Rings();
        Assert.Single(post.Got);
    }

    [Fact]
    public async Task Being_too_slow_is_left_and_asked_once_more_and_nobody_waits_for_it_meanwhile()
    {
        await using var post = await Postbox.Open();
        var (asked, release) = (new TaskCompletionSource(), new TaskCompletionSource());
        post.Answer = async _ =>
        {
            asked.TrySetResult();
            await release.Task;
            return SmtpResponse.Ok;
        };
        await using var app = await Mailing.StudioWith(
            post.Port,
            ("Studio:Mail:TimeoutSeconds", "1")
        );
        var client = await app.HasClient();
        var id = await app.HasMessage(client);
        var desk = await app.SignedInAs(Core.Accounts.Role.FrontDesk);
        var session = await app.HasSession(app.Today.PlusDays(3));

        var rings = app.Rings();
        await asked.Task;
        // The one writer is free while the server thinks.
        await desk.Booked(session, client);
        await rings;
        var waits = await app.Message(id);
        Assert.Equal((MessageStatus.Waiting, 1), (waits.Status, waits.Unanswered));
        Assert.Contains("in time", waits.Answer, StringComparison.Ordinal);

        release.SetResult();
        app.Clock.AdvanceMinutes(5);
        await app.Rings();
        Assert.Equal(MessageStatus.Sent, (await app.Message(id)).Status);
        var repeats = post.Got.Count(g => $"<{g.Message.MessageId}>" == waits.MessageId);
        Assert.InRange(repeats, 1, 2);
    }

    [Fact]
    public async Task Refusing_the_sign_in_is_nobodys_messages_fault()
    {
        await using var post = await Postbox.Open(password: "the right one");
        await using var app = await Mailing.StudioWith(
            post.Port,
            ("Studio:Mail:User", "studio"),
            ("Studio:Mail:Password", "a wrong one")
        );
        var id = await app.HasMessage(await app.HasClient());
        await app.Rings();
        var waits = await app.Message(id);
        Assert.Equal((MessageStatus.Waiting, 1), (waits.Status, waits.Attempts));
        Assert.Contains("refused the sign-in", waits.Answer, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "a wrong one",
            string.Join("\n", app.Log.Lines),
            StringComparison.Ordinal
        );
        Assert.Empty(post.Got);

        await using var right = await Mailing.StudioWith(
            post.Port,
            ("Studio:Mail:User", "studio"),
            ("Studio:Mail:Password", "the right one")
        );
        await right.HasMessage(await right.HasClient());
        await right.Rings();
        Assert.Single(post.Got);
    }

    [Theory]
    [InlineData("tls", true)]
    [InlineData("startTls", false)]
    public async Task With_a_certificate_of_its_own_making_is_told_nothing(
        string security,
        bool fromTheStart
    )
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest(
            "CN=127.0.0.1",
            key,
            HashAlgorithmName.SHA256,
            RSASignaturePadding.Pkcs1
        );
        using var own = request.CreateSelfSigned(
            DateTimeOffset.UtcNow.AddDays(-1),
            DateTimeOffset.UtcNow.AddDays(1)
        );
        using var certificate = X509CertificateLoader.LoadPkcs12(
            own.Export(X509ContentType.Pfx),
            null
        );
        await using var post = await Postbox.Open(
            certificate: certificate,
            tlsFromTheStart: fromTheStart
        );
        await using var app = await Mailing.StudioWith(
            post.Port,
            ("Studio:Mail:Security", security)
        );
        var id = await app.HasMessage(await app.HasClient());
        await app.Rings();
        var waits = await app.Message(id);
        Assert.Equal(MessageStatus.Waiting, waits.Status);
        Assert.Contains("certificate", waits.Answer, StringComparison.Ordinal);
        Assert.Empty(post.Got);
    }

    [Fact]
    public async Task That_speaks_no_tls_is_told_nothing_where_tls_is_asked_for()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(
            post.Port,
            ("Studio:Mail:Security", "startTls")
        );
        var id = await app.HasMessage(await app.HasClient());
        await app.Rings();
        Assert.Equal(MessageStatus.Waiting, (await app.Message(id)).Status);
        Assert.Empty(post.Got);
    }
}
