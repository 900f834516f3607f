using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>A message in the owner's log.</summary>
public sealed record LoggedMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>What it is about.</summary>
    public required MessageKind Kind { get; init; }

    /// <summary>The same in words.</summary>
    public required string Title { get; init; }

    /// <summary>Name of whom it is for.</summary>
    public required string To { get; init; }

    /// <summary>Her e-mail address; empty when none is known.</summary>
    public required string Address { get; init; }

    /// <summary>The client it is for.</summary>
    public long? ClientId { get; init; }

    /// <summary>When it was put.</summary>
    public required Instant MadeAt { get; init; }

    /// <summary>How far it has come.</summary>
    public required MessageStatus Status { get; init; }

    /// <summary>The same in words.</summary>
    public required string Says { get; init; }

    /// <summary>How often it was tried.</summary>
    public required int Tries { get; init; }

    /// <summary>When it is tried next; null when it is not.</summary>
    public Instant? NextAt { get; init; }

    /// <summary>When it was sent or given up.</summary>
    public Instant? EndedAt { get; init; }

    /// <summary>The mail server's last words, or why it was not sent.</summary>
    public string? LastAnswer { get; init; }

    /// <summary>It may be tried again by hand.</summary>
    public required bool MayRetry { get; init; }

    /// <summary>For the log.</summary>
    public static LoggedMessage Of(MessageRow row) =>
        new()
        {
            Id = row.Id,
            Kind = row.Kind,
            Title = row.Kind.Title(),
            To = row.Name,
            Address = row.Address,
            ClientId = row.ClientId,
            MadeAt = row.MadeAt,
            Status = row.Status,
            Says = MessageStates.Says(row.Status, row.Attempts, row.HeldBack),
            Tries = row.Attempts,
            NextAt = row.Status == MessageStatus.Waiting ? row.NotBefore : null,
            EndedAt = row.EndedAt,
            LastAnswer = row.LastAnswer,
            MayRetry =
                row.Status == MessageStatus.Refused
                || row is { Status: MessageStatus.Waiting, Attempts: > 0 },
        };
}

/// <summary>A message with all it says.</summary>
/// <param name="Message">As in the log.</param>
/// <param name="Subject">Its subject.</param>
/// <param name="Text">As plain text.</param>
/// <param name="Html">As HTML.</param>
/// <param name="HasFile">It was written to a file, which can be fetched.</param>
public sealed record MessageInFull(
    LoggedMessage Message,
    string Subject,
    string Text,
    string Html,
    bool HasFile
);

/// <summary>How messages go out.</summary>
/// <param name="Server">The mail server; null: they are written to files in the data folder.</param>
/// <param name="From">From which address.</param>
/// <param name="PublicUrl">Where the links in them lead.</param>
public sealed record SendingMessage(string? Server, string From, string PublicUrl);

/// <summary>A page of the log.</summary>
/// <param name="Messages">The newest first.</param>
/// <param name="More">There are older ones.</param>
/// <param name="Counts">Of all of them.</param>
/// <param name="Sending">How they go out.</param>
public sealed record MessageLog(
    IReadOnlyList<LoggedMessage> Messages,
    bool More,
    MessageCounts Counts,
    SendingMessage Sending
);

/// <summary>A kind of message with an example.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Title">In words.</param>
/// <param name="Essential">It cannot be stopped.</param>
/// <param name="Subject">Subject of the example.</param>
/// <param name="Text">The example as plain text.</param>
/// <param name="Html">The example as HTML.</param>
public sealed record KindMessage(
    MessageKind Kind,
    string Title,
    bool Essential,
    string Subject,
    string Text,
    string Html
);

/// <summary>How many were put to be tried again.</summary>
public sealed record Retried(int Messages);

/// <summary>A message to the reader herself.</summary>
/// <param name="Id">Key.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="Subject">Its subject.</param>
/// <param name="Text">What it says, one paragraph a line.</param>
/// <param name="At">When it was sent, or put when it was not yet.</param>
/// <param name="Says">How far it has come, in words.</param>
public sealed record MyMessage(
    long Id,
    MessageKind Kind,
    string Subject,
    string Text,
    Instant At,
    string Says
);

/// <summary>A kind of message the reader may do without.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Title">In words.</param>
/// <param name="Wanted">She receives it.</param>
public sealed record MessageChoice(MessageKind Kind, string Title, bool Wanted);

/// <summary>Whether a kind is wanted.</summary>
public sealed record ChoiceOfMessages
{
    /// <summary>True to receive it.</summary>
    [Required]
    public required bool Wanted { get; init; }
}

/// <summary>What a link in a message stops.</summary>
/// <param name="Title">The kind, in words.</param>
/// <param name="Stopped">It is stopped already.</param>
public sealed record StopMessage(string Title, bool Stopped);
