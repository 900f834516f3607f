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
            .Where(p => !p.IsRefunded && (p.IsUnlimited || p.Balance > 0))
            .Where(p =>
                p.Form == PassForm.Course
                    ? p.Sessions.Contains(sessionId)
                    : PassClock.IsGoodOn(p, on, stills)
                        && (p.Classes.Count == 0 || p.Classes.Contains(classId))
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
        pass.IsRefunded ? PassRefusals.Refunded
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
    public static readonly Refusal NeedsPass = new(
        RefusalKind.Conflict,
        "pass-needed",
        "No pass of hers pays for this class on its date. Sell her one at the desk first; a pass for another class, or one that runs out before that day, does not count."
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
