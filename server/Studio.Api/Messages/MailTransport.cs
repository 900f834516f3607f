using MimeKit;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>What became of one try.</summary>
/// <param name="Outcome">What it means.</param>
/// <param name="Answer">The server's last words, or ours about it; one line.</param>
public sealed record MailResult(MailOutcome Outcome, string Answer);

/// <summary>Carries messages out of the house. Opened once for several; what goes wrong is an answer, not an exception.</summary>
public interface IMailTransport : IAsyncDisposable
{
    /// <summary>Makes ready to send; null when it is, otherwise why nothing can be sent now.</summary>
    Task<MailResult?> OpenAsync();

    /// <summary>Sends one message.</summary>
    /// <param name="message">The message.</param>
    /// <param name="messageId">Its Message-ID, with its brackets.</param>
    Task<MailResult> SendAsync(MimeMessage message, string messageId);
}

/// <summary>Writes messages to files, while the studio has no mail server.</summary>
public sealed class FolderTransport(MailFolder folder) : IMailTransport
{
    /// <inheritdoc/>
    public Task<MailResult?> OpenAsync() => Task.FromResult<MailResult?>(null);

    /// <inheritdoc/>
    public async Task<MailResult> SendAsync(MimeMessage message, string messageId)
    {
        try
        {
            var name = await folder.WriteAsync(message, messageId);
            return new(MailOutcome.Sent, $"Written to {MailFolder.Mark}{name}");
        }
        catch (Exception stuck) when (stuck is IOException or UnauthorizedAccessException)
        {
            return new(MailOutcome.Closed, OneLine.Of($"It could not be written: {stuck.Message}"));
        }
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
