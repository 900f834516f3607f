using System.Net.Sockets;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>Hands messages to the studio's mail server (SMTP, RFC 5321). Certificates are always checked.</summary>
public sealed class SmtpTransport(MailServer server) : IMailTransport
{
    private static readonly TimeSpan MostToConnect = TimeSpan.FromMinutes(1);

    private readonly SeenSent _seen = new();
    private SmtpClient? _client;

    /// <inheritdoc/>
    public async Task<MailResult?> OpenAsync()
    {
        if (_client is { IsConnected: true })
            return null;
        Close();
        var client = _client = new SmtpClient(_seen)
        {
            Timeout = (int)server.Patience.TotalMilliseconds,
        };
        var patience = server.Patience < MostToConnect ? server.Patience : MostToConnect;
        using var patient = new CancellationTokenSource(patience);
        try
        {
            await client.ConnectAsync(
                server.Host,
                server.Port,
                server.Security switch
                {
                    MailSecurity.None => SecureSocketOptions.None,
                    MailSecurity.StartTls => SecureSocketOptions.StartTls,
                    MailSecurity.Tls => SecureSocketOptions.SslOnConnect,
                },
                patient.Token
            );
            // Its end could not be told apart in a message sent in chunks.
            client.Capabilities &= ~SmtpCapabilities.Chunking;
            if (server is { User: { } user, Password: { } password })
                await client.AuthenticateAsync(user, password, patient.Token);
            return null;
        }
        catch (Exception failed) when (IsOfTheTalk(failed))
        {
            Close();
            return new(MailOutcome.Closed, Words(failed));
        }
    }

    /// <inheritdoc/>
    public async Task<MailResult> SendAsync(MimeMessage message, string messageId)
    {
        var client = _client ?? throw new InvalidOperationException("Opened first.");
        _seen.Begin();
        try
        {
            using var patient = new CancellationTokenSource(server.Patience);
            var answer = await client.SendAsync(message, patient.Token);
            return new(MailOutcome.Sent, OneLine.Of(answer));
        }
        catch (SmtpCommandException refused)
        {
            var step = refused.ErrorCode switch
            {
                SmtpErrorCode.SenderNotAccepted => MailStep.Sender,
                SmtpErrorCode.RecipientNotAccepted => MailStep.Recipient,
                _ => _seen.End ? MailStep.End : MailStep.Body,
            };
            var code = (int)refused.StatusCode;
            return Of(step, code, $"{code} {refused.Message}");
        }
        catch (NotSupportedException cannot)
        {
            // An address in letters this server has no words for (RFC 6531).
            return new(MailOutcome.Never, OneLine.Of(cannot.Message));
        }
        catch (Exception failed) when (IsOfTheTalk(failed))
        {
            return Of(_seen.End ? MailStep.End : MailStep.Body, null, Words(failed));
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_client is { IsConnected: true } client)
        {
            try
            {
                using var patient = new CancellationTokenSource(TimeSpan.FromSeconds(5));
                await client.DisconnectAsync(quit: true, patient.Token);
            }
            catch (Exception failed) when (IsOfTheTalk(failed))
            {
                // It is gone either way.
            }
        }

        Close();
    }

    private MailResult Of(MailStep step, int? code, string answer)
    {
        // After a break nothing said on this connection can be relied on.
        if (code is null or 421)
            Close();
        return new(MailOutcomes.Of(step, code), OneLine.Of(answer));
    }

    private void Close()
    {
        _client?.Dispose();
        _client = null;
    }

    private static bool IsOfTheTalk(Exception failed) =>
        failed
            is SmtpCommandException
                or SmtpProtocolException
                or IOException
                or SocketException
                or TimeoutException
                or OperationCanceledException
                or System.Security.Authentication.AuthenticationException
                or MailKit.Security.AuthenticationException
                or SslHandshakeException
                or ServiceNotConnectedException
                or ServiceNotAuthenticatedException
                or NotSupportedException;

    private static string Words(Exception failed) =>
        OneLine.Of(
            failed switch
            {
                SmtpCommandException refused => $"{(int)refused.StatusCode} {refused.Message}",
                SslHandshakeException =>
                    "The mail server's certificate is not one to be trusted, or it speaks no TLS on this port.",
                MailKit.Security.AuthenticationException wrong =>
                    $"The mail server refused the sign-in: {wrong.Message}",
                SocketException away => $"The mail server cannot be reached: {away.Message}",
                OperationCanceledException or TimeoutException =>
                    "The mail server did not answer in time.",
                _ => $"The connection broke: {failed.Message}",
            }
        );

    /// <summary>Watches what is sent for the line that ends a message, and keeps nothing of it.</summary>
    private sealed class SeenSent : IProtocolLogger
    {
        private static readonly byte[] Ending = "\r\n.\r\n"u8.ToArray();
        private int _matched;

        /// <summary>The end of a message went out since <see cref="Begin"/>.</summary>
        public bool End { get; private set; }

        public IAuthenticationSecretDetector? AuthenticationSecretDetector { get; set; }

        public void Begin() => (_matched, End) = (0, false);

        public void LogConnect(Uri uri) { }

        public void LogServer(byte[] buffer, int offset, int count) { }

        // A dot alone on a line: dots that begin a line of the message itself are doubled (RFC 5321, 4.5.2).
        public void LogClient(byte[] buffer, int offset, int count)
        {
            for (var i = offset; i < offset + count && !End; i++)
            {
                _matched =
                    buffer[i] == Ending[_matched] ? _matched + 1
                    : buffer[i] == Ending[0] ? 1
                    : 0;
                End = _matched == Ending.Length;
            }
        }

        public void Dispose() { }
    }
}
