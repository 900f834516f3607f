using System.Net;
using Studio.Api.Messages;
using Studio.Core.Accounts;
using Studio.Core.Messages;

namespace Studio.Api.Tests.Messages;

/// <summary>What is not essential can be stopped: by the link in it, signed in or not, and on her own page.</summary>
public class StoppingAKind
{
    [Fact]
    public async Task By_the_link_in_a_message_with_one_press_by_a_mail_program()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(post.Port);
        var client = await app.HasClient();
        await app.HasMessage(client);
        await app.Rings();
        var link = new Uri(
            Assert.Single(post.Got).Message.Headers["List-Unsubscribe"]!.Trim('<', '>')
        );

        // RFC 8058, 3.2: a POST with this body, without cookies; and no redirect for an answer.
        using var form = new FormUrlEncodedContent([new("List-Unsubscribe", "One-Click")]);
        using var answer = await app.Browser()
            .PostAsync(link.AbsolutePath, form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);

        var next = await app.HasMessage(client);
        var move = await app.HasMessage(client, MessageKind.SessionCancelled, lines: "Not held.");
        await app.Rings();
        Assert.Equal("Messages of this kind are not wanted.", (await app.Message(next)).Answer);
        Assert.Equal(MessageStatus.Sent, (await app.Message(move)).Status);
        var hers = await app.AtHerPage(client);
        var choices = (await hers.Read("/api/messages/choices")).AsArray();
        Assert.Equal(
            [("moveSuggested", true), ("needsHer", false), ("passRunsOut", true)],
            choices.Select(c => (c!.Text("kind"), (bool)c!["wanted"]!))
        );
        using (var wants = await hers.Put("/api/messages/choices/needsHer", new { wanted = true }))
            await wants.Is(204);
        var again = await app.HasMessage(client);
        await app.Rings();
        Assert.Equal(MessageStatus.Sent, (await app.Message(again)).Status);
    }

    [Fact]
    public async Task Only_where_the_link_is_ours_and_whole()
    {
        await using var app = await StudioApp.Empty();
        var browser = app.Browser();
        var token = app.StopToken(await app.HasClient());
        foreach (
            var wrong in new[]
            {
                "x",
                token[..^3],
                token + "AA",
                "../../etc",
                new string('a', 4000),
            }
        )
        {
            using var answer = await browser.Post($"/api/mail-stops/{Uri.EscapeDataString(wrong)}");
            await answer.Is(404);
        }

        Assert.Equal(0, await app.Value<long>("select count(*) from unwanted_messages"));
        var before = await browser.Read($"/api/mail-stops/{token}");
        Assert.Equal("Something on your page needs you", before.Text("title"));
        Assert.False((bool)before["stopped"]!);
        for (var i = 0; i < 2; i++)
            using (var stopped = await browser.Post($"/api/mail-stops/{token}"))
                await stopped.Is(204);
        Assert.True((bool)(await browser.Read($"/api/mail-stops/{token}"))["stopped"]!);
    }

    [Fact]
    public async Task Never_for_what_is_about_her_bookings()
    {
        await using var app = await StudioApp.Empty();
        var client = await app.HasClient();
        var links = (MailLinks)app.Services.GetService(typeof(MailLinks))!;
        using var answer = await app.Browser()
            .Post(
                $"/api/mail-stops/{links.Token(new(client, null, MessageKind.SessionCancelled))}"
            );
        await answer.IsRefused(404, "no-such-link");
        using var choice = await (await app.AtHerPage(client)).Put(
            "/api/messages/choices/sessionCancelled",
            new { wanted = false }
        );
        await choice.IsRefused(404, "no-such-choice");
    }

    [Fact]
    public async Task An_instructor_may_do_without_being_asked_to_take_classes()
    {
        await using var app = await StudioApp.Empty();
        var instructor = await app.HasInstructor();
        var her = await app.SignedInAs(Role.Instructor, instructor: instructor);
        using (
            var without = await her.Put("/api/messages/choices/coverAsked", new { wanted = false })
        )
            await without.Is(204);
        foreach (var kind in new[] { MessageKind.CoverAsked, MessageKind.TimetableChanged })
            await app.HasMessage(
                new()
                {
                    Kind = kind,
                    About = $"a-test:{kind}",
                    InstructorId = instructor,
                    Facts = new Dictionary<string, string>
                    {
                        ["lines"] = "Slow strength on Monday.",
                    },
                }
            );
        await app.Rings();
        Assert.Equal(
            ["dropped", "sent"],
            await app.Rows<string>("select status from messages order by id")
        );
        var mine = Assert.Single((await her.Read("/api/messages/mine")).AsArray())!;
        Assert.Equal("Your timetable has changed", mine.Text("subject"));
        Assert.Contains("Slow strength on Monday.", mine.Text("text"), StringComparison.Ordinal);
    }
}
