namespace Studio.Core.Messages;

/// <summary>How far the talk with the mail server had come.</summary>
public enum MailStep
{
    /// <summary>Being greeted, agreeing on a secure connection, signing in.</summary>
    Opening,

    /// <summary>Naming the sender.</summary>
    Sender,

    /// <summary>Naming the recipient.</summary>
    Recipient,

    /// <summary>Handing over the message, before its end was sent.</summary>
    Body,

    /// <summary>The whole message was sent, its end included.</summary>
    End,
}

/// <summary>What an answer of the mail server means for a message.</summary>
public enum MailOutcome
{
    /// <summary>The server has taken it on.</summary>
    Sent,

    /// <summary>Not now; to be tried again.</summary>
    Later,

    /// <summary>Never: trying again would end the same way.</summary>
    Never,

    /// <summary>The server may have taken it on, and its answer never came.</summary>
    Unanswered,

    /// <summary>The server cannot be reached, or does not want to talk to the studio at all: no message can go out.</summary>
    Closed,
}

/// <summary>Tells answers of a mail server apart, by RFC 5321, 4.2.1 and 6.1.</summary>
public static class MailOutcomes
{
    /// <summary>What became of a message.</summary>
    /// <param name="step">How far it had come.</param>
    /// <param name="code">The three digits of the answer; null when none came.</param>
    public static MailOutcome Of(MailStep step, int? code) =>
        (step, code) switch
        {
            // 4.2.1: 2yz, done. Only the answer to the end of the message hands it over (6.1).
            (MailStep.End, >= 200 and < 300) => MailOutcome.Sent,
            (MailStep.End, null) => MailOutcome.Unanswered,
            // What is wrong with the greeting, the sign-in or the sender is wrong for every message, and not its fault.
            (MailStep.Opening or MailStep.Sender, _) => MailOutcome.Closed,
            // 3.8 and 4.2.2: 421, the service closes the connection.
            (_, 421) => MailOutcome.Closed,
            // 4.2.1: 5yz, the same again would be refused again.
            (_, >= 500 and < 600) => MailOutcome.Never,
            // 4.2.1: 4yz, the same again later may well succeed; and no answer before the end means nothing was handed over.
            _ => MailOutcome.Later,
        };
}
