using MimeKit;
using Studio.Api.Erasures;
using Studio.Api.Tests.Erasures;
using Studio.Core.Accounts;
using Studio.Core.Messages;

namespace Studio.Api.Tests.Messages;

/// <summary>Without a mail server messages are files, which can be read and go with an erasure.</summary>
public class TheFolder
{
    [Fact]
    public async Task Holds_a_message_as_it_would_have_been_sent()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var client = await app.HasClient("Ilka Thornmere");
        var session = await app.HasSession(app.Today.PlusDays(2));
        await (await app.SignedInAs(Role.FrontDesk)).Booked(session, client);
        await app.Rings();

        var path = Assert.Single(Directory.GetFiles(Path.Combine(app.Folder, "mail")));
        using var message = await MimeMessage.LoadAsync(
            path,
            TestContext.Current.CancellationToken
        );
        Assert.Equal("Your seat is booked", message.Subject);
        var log = await owner.Read("/api/messages");
        Assert.Null(log["sending"]!["server"]);
        var logged = Assert.Single(log["messages"]!.AsArray())!;
        Assert.Equal(
            ("sent", $"Written to mail/{Path.GetFileName(path)}"),
            (logged.Text("status"), logged.Text("lastAnswer"))
        );
        var one = await owner.Read($"/api/messages/{logged.Number("id")}");
        Assert.True((bool)one["hasFile"]!);
        Assert.Equal(message.TextBody!.ReplaceLineEndings("\n"), one.Text("text"));
        Assert.Equal(message.HtmlBody!.ReplaceLineEndings("\n"), one.Text("html"));
        using var file = await owner.GetAsync(
            $"/api/messages/{logged.Number("id")}/file",
            TestContext.Current.CancellationToken
        );
        Assert.Equal("message/rfc822", file.Content.Headers.ContentType?.MediaType);
        Assert.Equal(
            await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken),
            await file.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public async Task Loses_what_was_hers_when_she_is_erased_and_nothing_else()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var (her, other) = (await app.HasClient(), await app.HasClient());
        await app.HasMessage(her);
        await app.HasMessage(other);
        await app.Rings();
        var waits = await app.HasMessage(her);
        await app.Execute(
            "insert into unwanted_messages (client_id, kind, since, by_link) values (@her, 'moveSuggested', '2026-03-01T00:00:00.000Z', 1)",
            new { her }
        );
        Assert.Equal(2, Directory.GetFiles(Path.Combine(app.Folder, "mail")).Length);

        await owner.Erase(her);
        await app.With<ErasedFiles, int>(files => files.RemoveAsync());
        await app.Rings();

        Assert.Single(Directory.GetFiles(Path.Combine(app.Folder, "mail")));
        Assert.Empty(await app.MessagesTo(her));
        Assert.Single(await app.MessagesTo(other));
        Assert.Equal(0, await app.Value<long>("select count(*) from unwanted_messages"));
        Assert.Equal(
            0,
            await app.Value<long>("select count(*) from messages where id = @waits", new { waits })
        );
    }

    [Theory]
    [InlineData(MessageKind.CoverAsked, "/teach/cover")]
    [InlineData(MessageKind.TimetableChanged, "/teach/week")]
    public async Task Has_messages_that_lead_to_where_an_instructor_answers(
        MessageKind kind,
        string page
    )
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var instructor = await app.HasInstructor();
        await app.HasAccount([Role.Instructor], instructor: instructor);
        var id = await app.HasMessage(
            new()
            {
                Kind = kind,
                About = "a-test",
                InstructorId = instructor,
                Facts = new Dictionary<string, string> { ["lines"] = "Slow strength on Monday." },
            }
        );
        var one = await owner.Read($"/api/messages/{id}");
        Assert.Contains(
            $"http://127.0.0.1:5080{page}\n",
            one.Text("text"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task That_cannot_be_written_to_keeps_the_message_waiting()
    {
        await using var app = await StudioApp.Empty();
        await File.WriteAllTextAsync(
            Path.Combine(app.Folder, "mail"),
            "in the way",
            TestContext.Current.CancellationToken
        );
        var id = await app.HasMessage(await app.HasClient());
        await app.Rings();
        var waits = await app.Message(id);
        Assert.Equal((MessageStatus.Waiting, 1), (waits.Status, waits.Attempts));
        Assert.StartsWith("It could not be written", waits.Answer, StringComparison.Ordinal);
    }
}
