namespace Studio.Core.Messages;

/// <summary>How far a message has come.</summary>
public enum MessageStatus
{
    /// <summary>Still to be sent.</summary>
    Waiting,

    /// <summary>The mail server has taken it on, or it was written to a file.</summary>
    Sent,

    /// <summary>It could not be delivered, and is not tried again by itself.</summary>
    Refused,

    /// <summary>It was not sent, because there was no more reason to.</summary>
    Dropped,
}

/// <summary>How far a message has come, in words.</summary>
public static class MessageStates
{
    /// <summary>The words; the moments beside them are told apart.</summary>
    public static string Says(MessageStatus status, int tries, HeldBack? held) =>
        (status, tries, held) switch
        {
            (MessageStatus.Waiting, 0, HeldBack.Quiet) => "Waits for the morning",
            (MessageStatus.Waiting, 0, HeldBack.Enough) => "Waits: enough was sent for one day",
            (MessageStatus.Waiting, 0, null) => "About to be sent",
            (MessageStatus.Waiting, 1, _) => "Tried once, not through yet",
            (MessageStatus.Waiting, 2, _) => "Tried twice, not through yet",
            (MessageStatus.Waiting, _, _) => $"Tried {tries} times, not through yet",
            (MessageStatus.Sent, _, _) => "Sent",
            (MessageStatus.Refused, _, _) => "Could not be delivered",
            (MessageStatus.Dropped, _, _) => "Not sent",
        };
}
