using Studio.Api.Messages;
using Studio.Core.Accounts;
using Studio.Core.Messages;

namespace Studio.Api.Tests.Messages;

/// <summary>Studios that send.</summary>
internal static class Mailing
{
    public const string From = "studio@saltmarsh.example";

    /// <summary>A studio whose mail server listens on this port of this machine.</summary>
    public static Task<StudioApp> StudioWith(
        int port,
        params (string Name, string Value)[] settings
    )
    {
        var all = new Dictionary<string, string>
        {
            ["Studio:Mail:Host"] = "127.0.0.1",
            ["Studio:Mail:Port"] = $"{port}",
            ["Studio:Mail:Security"] = "none",
            ["Studio:Mail:From"] = From,
            ["Studio:PublicUrl"] = "https://studio.saltmarsh.example",
        };
        foreach (var (name, value) in settings)
            all[name] = value;
        return StudioApp.Empty(settings: all);
    }

    /// <summary>The bell for messages rings.</summary>
    public static Task Rings(this StudioApp app) =>
        app.With<MailSweep, bool>(async sweep =>
        {
            await sweep.RunDueAsync();
            return true;
        });

    /// <summary>How a message stands.</summary>
    public static async Task<Standing> Message(this StudioApp app, long id) =>
        (
            await app.Rows<Standing>(
                """
                select status, attempts, unanswered, not_before as NotBefore, last_answer as Answer, message_id as MessageId,
                       claimed_at as ClaimedAt, held_back as HeldBack
                  from messages where id = @id
                """,
                new { id }
            )
        ).Single();

    /// <summary>Messages to a client, in the order in which they were put.</summary>
    public static Task<List<Put>> MessagesTo(this StudioApp app, long client) =>
        app.Rows<Put>(
            """
            select kind, status, facts, session_id as SessionId, last_answer as Answer
              from messages where client_id = @client order by id
            """,
            new { client }
        );

    /// <summary>A client's account holder at her own page.</summary>
    public static Task<HttpClient> AtHerPage(this StudioApp app, long client) =>
        app.SignedInAs(Role.Client, client: client);

    internal sealed record Standing
    {
        public MessageStatus Status { get; init; }
        public int Attempts { get; init; }
        public int Unanswered { get; init; }
        public Instant NotBefore { get; init; }
        public string? Answer { get; init; }
        public string MessageId { get; init; } = "";
        public Instant? ClaimedAt { get; init; }
        public string? HeldBack { get; init; }
    }

    internal sealed record Put
    {
        public string Kind { get; init; } = "";
        public string Status { get; init; } = "";
        public string Facts { get; init; } = "";
        public long? SessionId { get; init; }
        public string? Answer { get; init; }
    }
}
