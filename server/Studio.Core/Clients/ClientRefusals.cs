namespace Studio.Core.Clients;

/// <summary>Every way of saying no to what was entered about a client.</summary>
public static class ClientRefusals
{
    /// <summary>E-mail addresses tell clients apart.</summary>
    public static readonly Refusal EmailTaken = new(
        RefusalKind.Conflict,
        "email-taken",
        "This e-mail address is in use already. Look for her with the find box, leave the address out, or ask the owner.",
        "email"
    );

    /// <summary>Agreed sharing is the client's own decision.</summary>
    public static readonly Refusal SharingIsHers = new(
        RefusalKind.NotAllowed,
        "sharing-is-hers",
        "Only she herself or the owner changes what instructors may see.",
        "sharesConditions"
    );

    /// <summary>Her age is between her and the owner.</summary>
    public static readonly Refusal BirthDateIsHers = new(
        RefusalKind.NotAllowed,
        "birth-date-is-hers",
        "Only she herself or the owner enters her date of birth. Nothing was changed: leave it out and save again.",
        "bornOn"
    );

    /// <summary>Her page is closed to everybody but the owner and herself.</summary>
    public static readonly Refusal ClosedAfterLoss = new(
        RefusalKind.NotAllowed,
        "ask-the-studio",
        "Please speak to the studio's owner, who opens your page again when you want to come back."
    );

    /// <summary>One account is enough.</summary>
    public static readonly Refusal HasAccount = new(
        RefusalKind.Conflict,
        "has-account",
        "She has an account already and can sign in with her e-mail address."
    );

    /// <summary>No such factor in the catalogue.</summary>
    public static readonly Refusal NoSuchFactor = new(
        RefusalKind.Invalid,
        "no-such-factor",
        "The catalogue has no such factor. Choose one from the list.",
        "code"
    );

    /// <summary>No such factor among hers.</summary>
    public static readonly Refusal NotHerFactor = new(
        RefusalKind.NotFound,
        "no-such-factor",
        "There is no such factor on her page."
    );

    /// <summary>Nothing to give birth to or to end.</summary>
    public static readonly Refusal NoPregnancy = new(
        RefusalKind.Conflict,
        "no-pregnancy",
        "No current pregnancy is recorded for her. Enter her dates first."
    );

    /// <summary>Something that was entered cannot be right.</summary>
    public static Refusal Invalid(string code, string message, string field) =>
        new(RefusalKind.Invalid, code, message, field);
}
