using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;

namespace Studio.Api.Tests.Jobs;

/// <summary>The built server as it is started by hand, with Hangfire, a data folder and an address of its own.</summary>
public class ARealProcess
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(50);

    [Fact]
    public async Task Hangfire_runs_the_night_at_start_and_the_server_stops_when_told()
    {
        using var folder = new Folder();
        var address = FreeAddress();
        using var server = Start(folder, address, ("Studio__Clock", "+2026-03-02T09:00:00Z"));
        using var browser = new HttpClient { BaseAddress = new Uri(address) };
        await Until(async () => (await browser.GetAsync("/healthz")).IsSuccessStatusCode, server);
        await (
            await browser.Post(
                "/api/session",
                new { email = "owner@demo.example", password = "demo-studio" }
            )
        ).Is(200);
        await Until(async () => (await Runs(browser)).All(runs => runs.Count == 2), server);
        foreach (var runs in await Runs(browser))
        {
            Assert.Equal(["Europe/Madrid", "Europe/Lisbon"], runs.Select(r => r!.Text("zone")));
            Assert.All(
                runs,
                r =>
                {
                    Assert.Equal("2026-03-02", r!.Text("forDate"));
                    Assert.False((bool)r!["byHand"]!);
                    Assert.StartsWith(
                        "2026-03-02T09:0",
                        r!.Text("ranAt"),
                        StringComparison.Ordinal
                    );
                }
            );
        }

        using (var kill = Process.Start("kill", ["-TERM", $"{server.Id}"]))
            await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal((0, ""), await Ended(server));
    }

    [Fact]
    public async Task A_taken_address_is_said_clearly()
    {
        using var folder = new Folder();
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        using var server = Start(
            folder,
            $"http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}",
            ("Studio__Demo", "false")
        );
        var (code, said) = await Ended(server);
        Assert.Equal(3, code);
        Assert.StartsWith("The address is taken", said, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("yesterday")]
    [InlineData("+2026-13-01T00:00:00Z")]
    public async Task A_clock_that_is_no_instant_is_said_clearly(string clock)
    {
        using var folder = new Folder();
        using var server = Start(folder, FreeAddress(), ("Studio__Clock", clock));
        var (code, said) = await Ended(server);
        Assert.Equal(4, code);
        Assert.StartsWith(
            $"The setting Studio__Clock is '{clock}'",
            said,
            StringComparison.Ordinal
        );
        Assert.Single(said.Trim().Split('\n'));
    }

    [Fact]
    public async Task A_studio_that_is_set_up_without_an_owner_says_what_to_set()
    {
        using var folder = new Folder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "setup"));
        foreach (
            var (name, text) in new[]
            {
                ("studio.csv", "name\nSaltmarsh studio\n"),
                ("locations.csv", "code,name,zone,emergency_number\nquay,Quay,Europe/Lisbon,112\n"),
                ("rooms.csv", "location,name,seats\nquay,Loft,10\n"),
                ("instructors.csv", "name,called,email,phone\n"),
                ("qualifications.csv", "instructor_email,kind,issued_on,expires_on\n"),
                (
                    "classes.csv",
                    "code,name,about,minutes,effort,stages,traits,needs_qualification\n"
                ),
                ("timetable.csv", "location,room,class,instructor_email,weekday,start\n"),
            }
        )
            await File.WriteAllTextAsync(
                Path.Combine(folder.Path, "setup", name),
                text,
                TestContext.Current.CancellationToken
            );
        using var server = Start(
            folder,
            FreeAddress(),
            ("Studio__Setup", Path.Combine(folder.Path, "setup"))
        );
        var (code, said) = await Ended(server);
        Assert.Equal(4, code);
        Assert.Contains("Studio__Owner__Email", said, StringComparison.Ordinal);
        Assert.Single(said.Trim().Split('\n'));
    }

    private static async Task<IReadOnlyList<JsonArray>> Runs(HttpClient browser) =>
        [.. (await browser.Read("/api/jobs")).AsArray().Select(j => j!["runs"]!.AsArray())];

    private static Process Start(
        Folder folder,
        string address,
        params (string Name, string Value)[] settings
    )
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
        start.Environment["Studio__Data"] = Path.Combine(folder.Path, "data");
        start.Environment.Remove("ASPNETCORE_URLS");
        foreach (var (name, value) in settings)
            start.Environment[name] = value;
        var server = Process.Start(start)!;
        // Read as it comes, so that a full pipe stops nobody.
        server.OutputDataReceived += (_, _) => { };
        server.BeginOutputReadLine();
        return server;
    }

    private static async Task<(int Code, string Said)> Ended(Process server)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(
            TestContext.Current.CancellationToken
        );
        patience.CancelAfter(Patience);
        try
        {
            var said = await server.StandardError.ReadToEndAsync(patience.Token);
            await server.WaitForExitAsync(patience.Token);
            return (server.ExitCode, said);
        }
        finally
        {
            if (!server.HasExited)
                server.Kill(entireProcessTree: true);
        }
    }

    private static async Task Until(Func<Task<bool>> holds, Process server)
    {
        var began = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                if (await holds())
                    return;
            }
            catch (HttpRequestException) when (!server.HasExited && began.Elapsed < Patience)
            {
                // Not open yet.
            }

            if (server.HasExited || began.Elapsed > Patience)
            {
                if (!server.HasExited)
                    server.Kill(entireProcessTree: true);
                Assert.Fail($"It did not happen. {await server.StandardError.ReadToEndAsync()}");
            }

            await Task.Delay(100, TestContext.Current.CancellationToken);
        }
    }

    private static string FreeAddress()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return $"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}";
    }

    private sealed class Folder : IDisposable
    {
        public string Path { get; } = Directory.CreateTempSubdirectory("studio-process-").FullName;

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
