using MimeKit;
using NodaTime;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>Makes the letter that goes out of a message.</summary>
public static class MailLetter
{
    /// <summary>The letter.</summary>
    /// <param name="row">The message with whom it is for.</param>
    /// <param name="said">Its words.</param>
    /// <param name="frame">What stands around them.</param>
    /// <param name="from">From which address.</param>
    /// <param name="at">Now.</param>
    public static MimeMessage Of(
        MessageRow row,
        MessageText said,
        MessageFrame frame,
        string from,
        Instant at
    )
    {
        var message = new MimeMessage
        {
            Subject = said.Subject,
            Date = at.ToDateTimeOffset(),
            MessageId = row.MessageId.Trim('<', '>'),
            Body = new MultipartAlternative(
                new TextPart("plain") { Text = said.Text },
                new TextPart("html") { Text = said.Html }
            ),
        };
        message.From.Add(new MailboxAddress(OneLine.Of(frame.StudioName), from));
        message.To.Add(new MailboxAddress(OneLine.Of(frame.Called), row.Address));
        // RFC 3834, 5: no person wrote it, so that no answering machine answers.
        message.Headers.Add("Auto-Submitted", "auto-generated");
        if (frame.Stop is { } stop)
        {
            // RFC 2369, 3.2; and RFC 8058, 3.1: one press, for an address with TLS only.
            message.Headers.Add(HeaderId.ListUnsubscribe, $"<{stop}>");
            if (stop.StartsWith("https://", StringComparison.Ordinal))
                message.Headers.Add("List-Unsubscribe-Post", "List-Unsubscribe=One-Click");
        }

        message.Prepare(EncodingConstraint.SevenBit);
        return message;
    }
}
