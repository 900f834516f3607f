using System.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using MimeKit;
using SmtpServer.Protocol;
using Studio.Api.Messages;
using Studio.Core.Messages;

namespace Studio.Api.Tests.Messages;

/// <summary>The program stops between handing a message over and writing down that it did.</summary>
public class StoppedInBetween
{
    [Fact]
    public async Task Is_repeated_once_under_the_same_name_and_then_recorded()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(post.Port);
        var id = await app.HasMessage(await app.HasClient());
        var other = await app.HasMessage(await app.HasClient());

        await Stops(app);
        Assert.Equal(MessageStatus.Waiting, (await app.Message(id)).Status);
        Assert.NotNull((await app.Message(id)).ClaimedAt);
        Assert.Single(post.Got);

        await app.Rings();
        await app.Rings();
        Assert.Equal(MessageStatus.Sent, (await app.Message(id)).Status);
        Assert.Equal(MessageStatus.Sent, (await app.Message(other)).Status);
        Assert.Equal(
            [2, 1],
            post.Got.GroupBy(g => g.Message.MessageId).Select(g => g.Count()).OrderDescending()
        );
    }

    [Fact]
    public async Task Twice_is_left_to_the_owner()
    {
        await using var post = await Postbox.Open();
        await using var app = await Mailing.StudioWith(post.Port);
        var id = await app.HasMessage(await app.HasClient());
        await Stops(app);
        await Stops(app);
        await app.Rings();
        Assert.Equal(2, post.Got.Count);
        var ended = await app.Message(id);
        Assert.Equal(MessageStatus.Refused, ended.Status);
        Assert.Contains("it may have arrived", ended.Answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task By_a_real_kill_it_is_the_same()
    {
        using var folder = new Folder();
        await using var post = await Postbox.Open();
        Process? running = null;
        var killed = false;
        post.Answer = async message =>
        {
            // It has the whole message and has said nothing yet.
            if (!killed && message.Subject == "A test message")
            {
                killed = true;
                running!.Kill(entireProcessTree: true);
                await running.WaitForExitAsync();
            }

            return SmtpResponse.Ok;
        };
        var address = $"http://127.0.0.1:{Postbox.FreePort()}";
        using (running = Start(folder, address, post.Port))
        {
            using var browser = new HttpClient { BaseAddress = new Uri(address) };
            await Until(() => IsOpen(browser), running);
            await (
                await browser.Post(
                    "/api/session",
                    new { email = "owner@demo.example", password = "demo-studio" }
                )
            ).Is(200);
            await (await browser.Post("/api/messages/test")).Is(204);
            await running.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        using (running = Start(folder, address, post.Port))
        {
            try
            {
                await Until(() => Task.FromResult(Tests(post).Count == 2), running);
                using var browser = new HttpClient { BaseAddress = new Uri(address) };
                await Until(() => IsOpen(browser), running);
                await (
                    await browser.Post(
                        "/api/session",
                        new { email = "owner@demo.example", password = "demo-studio" }
                    )
                ).Is(200);
                await Until(
                    async () =>
                        (await browser.Read("/api/messages?kind=test"))["messages"]![0]!.Text(
                            "status"
                        ) == "sent",
                    running
                );
            }
            finally
            {
                running.Kill(entireProcessTree: true);
            }
        }

        Assert.Equal(2, Tests(post).Count);
        Assert.Single(Tests(post).Distinct());
    }

    // Names of the test messages; the night of the demo studio has more to tell.
    private static List<string> Tests(Postbox post) =>
        [
            .. post
                .Got.Where(g => g.Message.Subject == "A test message")
                .Select(g => g.Message.MessageId!),
        ];

    private static async Task Stops(StudioApp app)
    {
        await using var scope = app.Services.CreateAsyncScope();
        var sweep = ActivatorUtilities.CreateInstance<MailSweep>(
            scope.ServiceProvider,
            new Stopping(scope.ServiceProvider.GetRequiredService<IMailTransport>())
        );
        await Assert.ThrowsAsync<StoppedException>(sweep.RunDueAsync);
    }

    private static async Task<bool> IsOpen(HttpClient browser)
    {
        try
        {
            return (
                await browser.GetAsync("/healthz", TestContext.Current.CancellationToken)
            ).IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static async Task Until(Func<Task<bool>> holds, Process server)
    {
        var began = Stopwatch.StartNew();
        while (!await holds())
        {
            if (server.HasExited || began.Elapsed > TimeSpan.FromMinutes(2))
                Assert.Fail("It did not happen.");
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }
    }

    private static Process Start(Folder folder, string address, int port)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            ArgumentList =
            {
                Path.Combine(AppContext.BaseDirectory, "Studio.Api.dll"),
                "--urls",
                address,
            },
            WorkingDirectory = folder.Path,
            UseShellExecute = false,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        start.Environment.Remove("ASPNETCORE_URLS");
        foreach (
            var (name, value) in new[]
            {
                ("Data", Path.Combine(folder.Path, "data")),
                ("Clock", "+2026-03-02T09:00:00Z"),
                ("Mail__Host", "127.0.0.1"),
                ("Mail__Port", $"{port}"),
                ("Mail__Security", "none"),
                ("Mail__From", Mailing.From),
            }
        )
            start.Environment[$"Studio__{name}"] = value;
        var server = Process.Start(start)!;
        server.OutputDataReceived += (_, _) => { };
        server.ErrorDataReceived += (_, _) => { };
        server.BeginOutputReadLine();
        server.BeginErrorReadLine();
        return server;
    }

    private sealed class StoppedException : Exception;

    /// <summary>Hands over, and then there is nobody left to write it down.</summary>
    private sealed class Stopping(IMailTransport real) : IMailTransport
    {
        public Task<MailResult?> OpenAsync() => real.OpenAsync();

        public async Task<MailResult> SendAsync(MimeMessage message, string messageId)
        {
            await real.SendAsync(message, messageId);
            throw new StoppedException();
        }

        public ValueTask DisposeAsync() => real.DisposeAsync();
    }

    private sealed class Folder : IDisposable
    {
        public string Path { get; } = Directory.CreateTempSubdirectory("studio-mail-").FullName;

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
