using NodaTime;
using Studio.Core.Movements;

namespace Studio.Core.Clearance;

/// <summary>Every way of saying no to what is done with a clearance letter.</summary>
public static class LetterRefusals
{
    /// <summary>There is none, or not for this reader.</summary>
    public static readonly Refusal NoSuchLetter = new(
        RefusalKind.NotFound,
        "no-such-letter",
        "There is no such letter."
    );

    /// <summary>It came on paper, or the file is gone.</summary>
    public static readonly Refusal NoFile = new(
        RefusalKind.NotFound,
        "no-file",
        "This letter is on paper at the studio; there is no file of it."
    );

    /// <summary>Nothing was sent.</summary>
    public static readonly Refusal FileMissing = new(
        RefusalKind.Invalid,
        "file-missing",
        "Choose the letter's file (PDF, JPEG or PNG), or say that it is on paper at the desk.",
        "file"
    );

    /// <summary>Somebody has read it already.</summary>
    public static readonly Refusal AlreadyReviewed = new(
        RefusalKind.Conflict,
        "letter-read",
        "Somebody has read this letter already. Withdraw it first if what was recorded is wrong."
    );

    /// <summary>Only one that counts can be taken back.</summary>
    public static readonly Refusal NotCounting = new(
        RefusalKind.Conflict,
        "letter-does-not-count",
        "This letter does not count, so there is nothing to take back."
    );

    /// <summary>Why what a reviewer read off a letter cannot be right, or null.</summary>
    /// <param name="issuedOn">The day it was written.</param>
    /// <param name="expiresOn">Its own last day.</param>
    /// <param name="terms">What it asks for.</param>
    /// <param name="today">Today at her location.</param>
    public static Refusal? WhyNot(
        LocalDate issuedOn,
        LocalDate expiresOn,
        LetterTerms terms,
        LocalDate today
    ) =>
        issuedOn > today
            ? Invalid(
                "in-future",
                "The letter is dated in the future. Please check the day it was written.",
                "issuedOn"
            )
        : issuedOn < today.PlusYears(-3)
            ? Invalid(
                "too-old",
                "The letter is more than three years old. Please check the day it was written.",
                "issuedOn"
            )
        : expiresOn < issuedOn
            ? Invalid(
                "bad-range",
                "The letter's last day lies before the day it was written.",
                "expiresOn"
            )
        : terms.LeaveOut.FirstOrDefault(code => MovementTraits.NameOf(code) is null) is { } unknown
            ? Invalid(
                "no-such-trait",
                $"\"{unknown}\" is no position or trait of a movement. Choose from the list, or write it in words.",
                "leaveOut"
            )
        : null;

    private static Refusal Invalid(string code, string message, string field) =>
        new(RefusalKind.Invalid, code, message, field);
}
