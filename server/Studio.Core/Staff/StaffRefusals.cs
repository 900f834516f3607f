using NodaTime;
using Studio.Core.Pregnancies;

namespace Studio.Core.Staff;

/// <summary>Every way of saying no to what is done about the people who teach.</summary>
public static class StaffRefusals
{
    /// <summary>There is none, or not for this reader.</summary>
    public static readonly Refusal NoSuchInstructor = new(
        RefusalKind.NotFound,
        "no-such-instructor",
        "There is no such instructor."
    );

    /// <summary>Somebody has it already.</summary>
    public static readonly Refusal EmailTaken = new(
        RefusalKind.Conflict,
        "email-taken",
        "Another instructor has this e-mail address. Each needs one of her own.",
        "email"
    );

    /// <summary>The last day comes first.</summary>
    public static readonly Refusal LastBeforeFirst = new(
        RefusalKind.Invalid,
        "bad-range",
        "The last day lies before the day it was issued.",
        "expiresOn"
    );

    /// <summary>It counts already.</summary>
    public static readonly Refusal FiledAlready = new(
        RefusalKind.Conflict,
        "filed-already",
        "A qualification of this kind with this date of issue is filed already. If it is wrong, withdraw it first.",
        "issuedOn"
    );

    /// <summary>There is none, or not for this reader.</summary>
    public static readonly Refusal NoSuchQualification = new(
        RefusalKind.NotFound,
        "no-such-qualification",
        "There is no such qualification."
    );

    /// <summary>It does not count any more.</summary>
    public static readonly Refusal WithdrawnAlready = new(
        RefusalKind.Conflict,
        "withdrawn",
        "This qualification was withdrawn. File the right one as a new qualification."
    );

    /// <summary>Nobody has filed one.</summary>
    public static readonly Refusal NoProof = new(
        RefusalKind.NotFound,
        "no-proof",
        "No proof of this qualification is filed."
    );

    /// <summary>Nothing was sent.</summary>
    public static readonly Refusal ProofMissing = new(
        RefusalKind.Invalid,
        "file-missing",
        "Choose one file: the certificate as a PDF, or a photograph of it (JPEG or PNG).",
        "file"
    );

    /// <summary>There is none, or not for this reader.</summary>
    public static readonly Refusal NoSuchLeave = new(
        RefusalKind.NotFound,
        "no-such-leave",
        "There is no such leave, or it was withdrawn already."
    );

    /// <summary>The last day comes first.</summary>
    public static readonly Refusal LeaveEndsBefore = new(
        RefusalKind.Invalid,
        "bad-range",
        "The last day away lies before the first.",
        "to"
    );

    /// <summary>Longer than a typing error would allow.</summary>
    public static readonly Refusal LeaveTooLong = new(
        RefusalKind.Invalid,
        "too-long",
        "This is more than two years away. Please check the dates; whoever leaves for good has a last day under her details.",
        "to"
    );

    /// <summary>Some of those days are hers already.</summary>
    public static Refusal AwayAlready(LocalDate from, LocalDate to) =>
        new(
            RefusalKind.Conflict,
            "away-already",
            $"She is away from {Wording.Date(from)} to {Wording.Date(to)} already. Withdraw that leave first, or choose other days.",
            "from"
        );

    /// <summary>She would leave sessions behind, and nobody has said that this is known.</summary>
    public static Refusal StillTeaches(int sessions, LocalDate first) =>
        new(
            RefusalKind.Conflict,
            "still-teaches",
            $"She is to teach {(sessions == 1 ? "1 session" : $"{sessions} sessions")} on that day or later, the first on {Wording.Date(first)}. Look at them, and confirm that somebody else will be found.",
            "leftOn"
        );

    /// <summary>A span that cannot be asked for.</summary>
    public static readonly Refusal BadSpan = new(
        RefusalKind.Invalid,
        "bad-range",
        "The last day must not lie before the first, nor more than 400 days after it.",
        "to"
    );
}
