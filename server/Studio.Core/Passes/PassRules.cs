using NodaTime;

namespace Studio.Core.Passes;

/// <summary>Why a seat or a place was given up, as far as its credit depends on it.</summary>
public enum GivenUp
{
    /// <summary>She, or the desk for her, cancelled.</summary>
    Cancelled,

    /// <summary>For a medical reason.</summary>
    Medical,

    /// <summary>A hold after a warning sign.</summary>
    Held,

    /// <summary>A birth was reported.</summary>
    Birth,

    /// <summary>A pregnancy ended.</summary>
    Loss,

    /// <summary>The studio cancelled or moved the session, or moved her to another.</summary>
    ByTheStudio,
}

/// <summary>What becomes of the credit of a booking.</summary>
public enum CreditOutcome
{
    /// <summary>None was spent.</summary>
    None,

    /// <summary>It is hers again.</summary>
    Returned,

    /// <summary>It stays spent.</summary>
    Spent,
}

/// <summary>Which pass pays, and what becomes of the credit.</summary>
public static class PassRules
{
    /// <summary>
    /// The pass that pays for a session: of those good on its date and for its class with a credit left, the one that runs
    /// out first; one without an end known comes last. A course pays only for its own sessions, and before anything else.
    /// </summary>
    /// <returns>The pass, or null when none pays.</returns>
    public static Pass? ThatPays(
        IEnumerable<Pass> passes,
        long sessionId,
        long classId,
        LocalDate on,
        IReadOnlyCollection<StandStill> stills
    ) =>
        passes
            .Where(p => !p.IsClosed && (p.IsUnlimited || p.Balance > 0))
            .Where(p =>
                p.Form == PassForm.Course
                    ? p.Sessions.Contains(sessionId)
                    : PassClock.IsGoodOn(p, on, stills)
                        && (
                            p.Classes.Count == 0
                            || p.Classes.Contains(classId)
                            || p.GoodForAllFrom is { } from && on >= from
                        )
            )
            .OrderBy(p => p.Form == PassForm.Course ? 0 : 1)
            .ThenBy(p => PassClock.LastDay(p, stills) ?? LocalDate.MaxIsoValue)
            .ThenBy(p => p.Id)
            .FirstOrDefault();

    /// <summary>What becomes of the credit when a seat is given up.</summary>
    /// <param name="wasSpent">A credit was spent on it.</param>
    /// <param name="why">Why it was given up.</param>
    /// <param name="startsAt">When the session begins.</param>
    /// <param name="freeMinutes">Until how many minutes before the start cancelling is free (policy).</param>
    /// <param name="now">The moment.</param>
    public static CreditOutcome OnGivingUp(
        bool wasSpent,
        GivenUp why,
        Instant startsAt,
        int freeMinutes,
        Instant now
    ) =>
        !wasSpent ? CreditOutcome.None
        : why != GivenUp.Cancelled ? CreditOutcome.Returned
        : now <= startsAt - Duration.FromMinutes(freeMinutes) ? CreditOutcome.Returned
        : CreditOutcome.Spent;

    /// <summary>Whether a line may be added to a ledger; null when it may.</summary>
    public static Refusal? WhyNotAdd(Pass pass, LedgerEntry entry) =>
        pass.IsClosed && entry.Kind != EntryKind.Returned ? PassRefusals.Refunded
        : pass.IsUnlimited && entry.Kind == EntryKind.Goodwill ? PassRefusals.CountsNone
        : !pass.IsUnlimited && entry.Kind == EntryKind.Refunded && pass.Balance == 0
            ? PassRefusals.NothingLeft
        : !pass.IsUnlimited && pass.Balance + entry.Credits < 0 ? PassRefusals.NoCreditLeft
        : entry.Kind == EntryKind.Spent && Standing(pass, entry.BookingId) > 0
            ? PassRefusals.SpentAlready
        : entry.Kind == EntryKind.Returned && Standing(pass, entry.BookingId) == 0
            ? PassRefusals.NothingSpent
        : null;

    /// <summary>Credits that a booking has taken and not given back: 0 or 1.</summary>
    public static int Standing(Pass pass, long? bookingId) =>
        pass.Ledger.Count(e => e.Kind == EntryKind.Spent && e.BookingId == bookingId)
        - pass.Ledger.Count(e => e.Kind == EntryKind.Returned && e.BookingId == bookingId);

    /// <summary>
    /// The tax inside a sum paid back, so that several parts of a price paid back one after another come to the tax of the
    /// whole.
    /// </summary>
    /// <param name="before">What was paid back before, with tax.</param>
    /// <param name="gross">What is paid back now, with tax.</param>
    /// <param name="perMille">Rate of tax in thousandths.</param>
    public static long TaxPaidBack(long before, long gross, int perMille) =>
        TaxIn(before + gross, perMille) - TaxIn(before, perMille);

    /// <summary>The tax inside a price that includes it, in the smallest unit, a half rounded up.</summary>
    /// <param name="gross">Price with tax.</param>
    /// <param name="perMille">Rate of tax in thousandths.</param>
    public static long TaxIn(long gross, int perMille) =>
        ((2 * gross * perMille) + 1000 + perMille) / (2 * (1000 + perMille));
}

/// <summary>Every way of saying no about a pass.</summary>
public static class PassRefusals
{
    /// <summary>Nothing pays for it.</summary>
    /// <param name="herself">The words are for her, not for those at the desk.</param>
    public static Refusal NeedsPass(bool herself) =>
        new(
            RefusalKind.Conflict,
            "pass-needed",
            herself
                ? "No pass of yours pays for this class on its date. Please ask the front desk for one, then book."
                : "No pass of hers pays for this class on its date. Sell her one at the desk first; a pass for another class, or one that runs out before that day, does not count."
        );

    /// <summary>No such kind.</summary>
    public static readonly Refusal NoSuchKind = new(
        RefusalKind.NotFound,
        "no-such-pass-kind",
        "There is no such kind of pass, or it is not sold any more. Please choose another one."
    );

    /// <summary>No such pass for this reader.</summary>
    public static readonly Refusal NoSuchPass = new(
        RefusalKind.NotFound,
        "no-such-pass",
        "There is no such pass."
    );

    /// <summary>Nothing to pay back.</summary>
    public static readonly Refusal NothingLeft = new(
        RefusalKind.Conflict,
        "nothing-left",
        "No credit is left on this pass to pay back. A credit that was spent wrongly is given as goodwill first."
    );

    /// <summary>A monthly pass has no credits to give.</summary>
    public static readonly Refusal CountsNone = new(
        RefusalKind.Conflict,
        "counts-no-credits",
        "A monthly pass counts no classes, so none can be added to it. Sell her another pass without charge instead."
    );

    /// <summary>More than was paid.</summary>
    public static Refusal TooMuch(string left) =>
        new(
            RefusalKind.Invalid,
            "more-than-was-paid",
            $"At most {left} can be paid back: what was paid, less what was paid back before.",
            "amount"
        );

    /// <summary>How it is paid, for what costs something.</summary>
    public static readonly Refusal SayHow = new(
        RefusalKind.Invalid,
        "say-how-paid",
        "Say how it is paid: cash, card, transfer or other. Only what costs nothing goes without.",
        "paidHow"
    );

    /// <summary>Not on that day.</summary>
    public static readonly Refusal BadStart = new(
        RefusalKind.Invalid,
        "bad-start",
        "A pass begins today or within a year from today.",
        "startsOn"
    );

    /// <summary>A course whose sessions are over.</summary>
    public static readonly Refusal CourseOver = new(
        RefusalKind.Conflict,
        "course-over",
        "No session of this course lies ahead any more. Choose another course."
    );

    /// <summary>No credit left.</summary>
    public static readonly Refusal NoCreditLeft = new(
        RefusalKind.Conflict,
        "no-credit-left",
        "There are fewer credits left on this pass than that."
    );

    /// <summary>Once for a booking.</summary>
    public static readonly Refusal SpentAlready = new(
        RefusalKind.Conflict,
        "spent-already",
        "A credit was spent on this booking already."
    );

    /// <summary>Nothing to give back.</summary>
    public static readonly Refusal NothingSpent = new(
        RefusalKind.Conflict,
        "nothing-spent",
        "No credit stands against this booking."
    );

    /// <summary>Closed.</summary>
    public static readonly Refusal Refunded = new(
        RefusalKind.Conflict,
        "pass-refunded",
        "This pass was refunded. Nothing more is put down on it; sell her another one."
    );

    /// <summary>A trial is once.</summary>
    public static readonly Refusal TrialOnce = new(
        RefusalKind.Conflict,
        "trial-once",
        "She has had her free trial."
    );
}
