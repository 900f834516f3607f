using System.Text.Json.Nodes;
using MimeKit;
using Studio.Api.Messages;
using Studio.Api.Tests.Access;
using Studio.Core.Messages;

namespace Studio.Api.Tests.Messages;

/// <summary>Every kind: no word of health in it, and no fact can be more than words.</summary>
public class WordsOfMessages
{
    private const string Hostile =
        "Eve\r\nBcc: all@mail.example\n\n<script>alert(1)</script>\u2028\"><img src=http://elsewhere.example/x>\u202e\0";

    public static TheoryData<MessageKind> Kinds => [.. MessageKinds.All];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Tell_nothing_of_health(MessageKind kind)
    {
        foreach (var page in new[] { "https://studio.example.org/my", null })
        {
            var said = Said(kind, MessageExamples.Of(kind), "Ilka", page);
            HealthWords.All.AreNotIn(
                new JsonArray(said.Subject, said.Text, said.Html, said.Heart),
                kind.ToString()
            );
            foreach (
                var word in new[]
                {
                    "pregnan",
                    "trimester",
                    "birth",
                    "clearance",
                    "clinician",
                    "screening",
                    "health",
                }
            )
                Assert.DoesNotContain(
                    word,
                    said.Subject + said.Text + said.Html,
                    StringComparison.OrdinalIgnoreCase
                );
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task Take_hostile_facts_for_words_and_nothing_else(MessageKind kind)
    {
        var facts = new[] { "lines", "place", "until", "moved", "by" }.ToDictionary(
            f => f,
            _ => Hostile
        );
        var said = Said(kind, facts, Hostile, "https://studio.example.org/my");
        Assert.DoesNotContain('\n', said.Subject);
        Assert.DoesNotContain("<script", said.Html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", said.Html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("src=", said.Html.Replace("img src=", ""), StringComparison.Ordinal);

        var row = new MessageRow
        {
            Address = "ilka@mail.example",
            MessageId = "<abc@studio.invalid>",
            KindName = kind.OnTheWire(),
        };
        var frame = Frame(Hostile, "https://studio.example.org/my");
        using var letter = MailLetter.Of(
            row,
            said,
            frame with
            {
                StudioName = Hostile,
            },
            "studio@example.org",
            StudioApp.Start
        );
        using var bytes = new MemoryStream();
        await letter.WriteToAsync(bytes, TestContext.Current.CancellationToken);
        bytes.Position = 0;
        using var read = await MimeMessage.LoadAsync(bytes, TestContext.Current.CancellationToken);
        Assert.Empty(read.Bcc);
        Assert.Equal(
            "ilka@mail.example",
            Assert.IsType<MailboxAddress>(Assert.Single(read.To)).Address
        );
        Assert.Equal(
            "studio@example.org",
            Assert.IsType<MailboxAddress>(Assert.Single(read.From)).Address
        );
        Assert.Equal(
            ["From", "Subject", "Date", "Message-Id", "To", "Auto-Submitted", "MIME-Version"],
            read.Headers.Select(h => h.Field)
                .Where(f => !f.StartsWith("List-", StringComparison.Ordinal))
                .OrderBy(f =>
                    Array.IndexOf(
                        [
                            "From",
                            "Subject",
                            "Date",
                            "Message-Id",
                            "To",
                            "Auto-Submitted",
                            "MIME-Version",
                        ],
                        f
                    )
                )
        );
        // RFC 5322, 2.1.1: no line of more than 998 characters.
        Assert.All(
            System.Text.Encoding.Latin1.GetString(bytes.ToArray()).Split('\n'),
            line => Assert.True(line.Length <= 998)
        );
    }

    private static MessageText Said(
        MessageKind kind,
        IReadOnlyDictionary<string, string> facts,
        string called,
        string? page
    ) => MessageText.Of(kind, facts, Frame(called, page));

    private static MessageFrame Frame(string called, string? page) =>
        new()
        {
            StudioName = "Saltmarsh studio",
            Called = called,
            Page = page,
            Stop = "https://studio.example.org/mail/stop/abc",
            Choices = page is null ? null : "https://studio.example.org/my/messages",
        };
}
