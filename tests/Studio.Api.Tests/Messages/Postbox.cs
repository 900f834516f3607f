using System.Buffers;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using MimeKit;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.Mail;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace Studio.Api.Tests.Messages;

/// <summary>A real SMTP server in this process, which keeps what it is handed and can be told to be difficult.</summary>
internal sealed class Postbox : IAsyncDisposable
{
    private readonly CancellationTokenSource _end = new();
    private readonly List<(string To, MimeMessage Message)> _got = [];
    private Task _running = Task.CompletedTask;

    private Postbox(int port) => Port = port;

    public int Port { get; }

    /// <summary>Says something else than yes to a recipient; null for yes.</summary>
    public Func<string, SmtpResponse?> Recipient { get; set; } = _ => null;

    /// <summary>Says what becomes of a whole message that was kept.</summary>
    public Func<MimeMessage, Task<SmtpResponse>> Answer { get; set; } =
        _ => Task.FromResult(SmtpResponse.Ok);

    /// <summary>What it was handed whole, in order.</summary>
    public IReadOnlyList<(string To, MimeMessage Message)> Got
    {
        get
        {
            lock (_got)
                return [.. _got];
        }
    }

    public static async Task<Postbox> Open(
        int? port = null,
        string? password = null,
        X509Certificate2? certificate = null,
        bool tlsFromTheStart = false
    )
    {
        var box = new Postbox(port ?? FreePort());
        var options = new SmtpServerOptionsBuilder()
            .ServerName("post.saltmarsh.example")
            .Endpoint(endpoint =>
            {
                endpoint
                    .Endpoint(new IPEndPoint(IPAddress.Loopback, box.Port))
                    .IsSecure(tlsFromTheStart)
                    .AllowUnsecureAuthentication(password is not null)
                    .AuthenticationRequired(password is not null);
                if (certificate is not null)
                    endpoint.Certificate(certificate);
            })
            .Build();
        var services = new SmtpServer.ComponentModel.ServiceProvider();
        services.Add(new Keeping(box));
        services.Add(new Judging(box));
        services.Add(new DelegatingUserAuthenticator((_, given) => given == password));
        box._running = new SmtpServer.SmtpServer(options, services).StartAsync(box._end.Token);
        while (true)
        {
            try
            {
                using var knock = new TcpClient();
                await knock.ConnectAsync(IPAddress.Loopback, box.Port);
                return box;
            }
            catch (SocketException)
            {
                await Task.Delay(10, TestContext.Current.CancellationToken);
            }
        }
    }

    /// <summary>A port of this machine on which nobody listens.</summary>
    public static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        try
        {
            await _running;
        }
        catch (OperationCanceledException)
        {
            // As it was told.
        }

        _end.Dispose();
    }

    private sealed class Keeping(Postbox box) : MessageStore
    {
        public override async Task<SmtpResponse> SaveAsync(
            ISessionContext context,
            IMessageTransaction transaction,
            ReadOnlySequence<byte> buffer,
            CancellationToken cancellationToken
        )
        {
            using var bytes = new MemoryStream(buffer.ToArray());
            var message = await MimeMessage.LoadAsync(bytes, cancellationToken);
            var answer = await box.Answer(message);
            if (answer.ReplyCode == SmtpReplyCode.Ok)
                lock (box._got)
                    box._got.Add((transaction.To.Single().AsAddress(), message));
            return answer;
        }
    }

    private sealed class Judging(Postbox box) : MailboxFilter
    {
        public override Task<bool> CanDeliverToAsync(
            ISessionContext context,
            IMailbox to,
            IMailbox from,
            CancellationToken cancellationToken
        ) =>
            box.Recipient(to.AsAddress()) is { } no
                ? throw new SmtpResponseException(no)
                : Task.FromResult(true);
    }
}

/// <summary>Where the wire between the studio and its mail server breaks.</summary>
internal enum Break
{
    Nowhere,

    /// <summary>When the message is announced.</summary>
    BeforeTheMessage,

    /// <summary>A few bytes into the message.</summary>
    InTheMessage,

    /// <summary>After the server has the whole message, before its answer is through.</summary>
    BeforeTheAnswer,
}

/// <summary>A wire that breaks where it is told to.</summary>
internal sealed class Wire : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly int _to;

    public Wire(int to)
    {
        _to = to;
        _listener.Start();
        _ = ListenAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    public Break Breaks { get; set; }

    public void Dispose() => _listener.Dispose();

    private async Task ListenAsync()
    {
        try
        {
            while (true)
                _ = JoinAsync(await _listener.AcceptTcpClientAsync());
        }
        catch (Exception closed) when (closed is SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }

    private async Task JoinAsync(TcpClient from)
    {
        using var _ = from;
        using var to = new TcpClient();
        await to.ConnectAsync(IPAddress.Loopback, _to);
        var (announced, past, ended) = (false, 0, false);
        var seen = "";
        await Task.WhenAny(
            PumpAsync(
                from,
                to,
                chunk =>
                {
                    if (announced)
                        past += chunk.Length;
                    seen += System.Text.Encoding.Latin1.GetString(chunk);
                    announced |= seen.Contains("\r\nDATA\r\n", StringComparison.Ordinal);
                    ended |= seen.EndsWith("\r\n.\r\n", StringComparison.Ordinal);
                    return Breaks switch
                    {
                        Break.BeforeTheMessage when announced => 0,
                        Break.InTheMessage when past > 0 => Math.Min(100, chunk.Length - 6),
                        _ => chunk.Length,
                    };
                }
            ),
            PumpAsync(
                to,
                from,
                chunk => Breaks == Break.BeforeTheAnswer && ended ? 0 : chunk.Length
            )
        );
    }

    // How many bytes of a piece get through; fewer than all of them, and it breaks there.
    private static async Task PumpAsync(TcpClient from, TcpClient to, Func<byte[], int> through)
    {
        try
        {
            var buffer = new byte[8192];
            while (await from.GetStream().ReadAsync(buffer) is > 0 and var count)
            {
                var most = through(buffer[..count]);
                await to.GetStream().WriteAsync(buffer.AsMemory(0, most));
                if (most < count)
                    return;
            }
        }
        catch (Exception broken) when (broken is IOException or ObjectDisposedException)
        {
            // The other side hung up.
        }
    }
}
