using NodaTime;
using Studio.Api.Movements;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Passes;

namespace Studio.Api.Booking;

/// <summary>Where a reason comes from.</summary>
/// <param name="Cite">Organisation, title, year, section.</param>
/// <param name="FromMemory">Not read in a text: verify it before relying on it.</param>
public sealed record SourceMessage(string Cite, bool FromMemory);

/// <summary>What would change a verdict.</summary>
/// <param name="Text">In words.</param>
/// <param name="On">From which date, when it is a date.</param>
public sealed record LiftMessage(string Text, LocalDate? On);

/// <summary>One reason of a fit, in the reader's words.</summary>
public sealed record ReasonMessage(
    string Code,
    Suits Verdict,
    string Text,
    SourceMessage? Source,
    LiftMessage? Lift
);

/// <summary>How a session suits a client on its date, as far as the reader may know.</summary>
public sealed record FitMessage
{
    /// <summary>The verdict.</summary>
    public required Suits Verdict { get; init; }

    /// <summary>Its name.</summary>
    public required string Label { get; init; }

    /// <summary>One line why.</summary>
    public required string Summary { get; init; }

    /// <summary>Her gestational age that day, "24w 3d".</summary>
    public string? Age { get; init; }

    /// <summary>Days since the birth that day.</summary>
    public int? DaysSinceBirth { get; init; }

    /// <summary>Code of her stage that day.</summary>
    public string? Stage { get; init; }

    /// <summary>Name of her stage that day.</summary>
    public string? StageName { get; init; }

    /// <summary>37w 0d or later and no birth reported.</summary>
    public required bool MayHaveGivenBirth { get; init; }

    /// <summary>Every reason, strictest first.</summary>
    public required IReadOnlyList<ReasonMessage> Reasons { get; init; }

    /// <summary>How much of the class is as taught; for herself and the owner, where the class has a plan.</summary>
    public PlanShareMessage? Plan { get; init; }

    /// <summary>A fit in the words for one reader.</summary>
    public static FitMessage For(Fit fit, Audience audience) =>
        new()
        {
            Verdict = fit.Verdict,
            Label = FitWords.Name(fit.Verdict),
            Summary = FitWords.Summary(fit, audience),
            Age = fit.Situation.Age?.ToString(),
            DaysSinceBirth = fit.Situation.DaysSinceBirth,
            Stage = fit.Situation.Stage?.Code,
            StageName = fit.Situation.Stage?.Name,
            MayHaveGivenBirth = fit.Situation.MayHaveGivenBirth,
            Plan =
                audience is Audience.Owner or Audience.Herself
                && fit is { Plan: { } plan, Verdict: < Suits.NeedsClearance }
                    ? PlanWords.Share(plan)
                    : null,
            Reasons =
                audience == Audience.FrontDesk
                    ?
                    [
                        .. fit.ForDesk()
                            .Where(r =>
                                r.Verdict >= Suits.NeedsClearance
                                || fit.Verdict < Suits.NeedsClearance
                            )
                            .Select(r => new ReasonMessage(
                                r.Code,
                                r.Verdict,
                                r.Text,
                                null,
                                Lifted(r.Lift)
                            )),
                    ]
                    : [.. fit.Reasons.Select(r => Shape(r, audience)).OfType<ReasonMessage>()],
        };

    private static ReasonMessage? Shape(Reason reason, Audience audience) =>
        FitWords.Text(reason, audience) is { } text
            ? new ReasonMessage(
                reason.Code,
                reason.Verdict,
                text,
                reason.Source is { } source ? Cite(source) : null,
                Lifted(FitWords.Lift(reason, audience))
            )
            : null;

    private static LiftMessage? Lifted(Lift? lift) =>
        lift is null ? null : new LiftMessage(lift.Text, lift.On);

    /// <summary>A source in one line.</summary>
    public static SourceMessage Cite(Source source) =>
        new(source.Cite, source.Verification == Verification.FromMemory);
}

/// <summary>A client's booking with its session and how that suits her now.</summary>
public sealed record ClientBooking
{
    /// <summary>Key.</summary>
    public required long BookingId { get; init; }

    /// <summary>booked or waiting.</summary>
    public required BookingStatus Status { get; init; }

    /// <summary>Place on the waitlist, from 1.</summary>
    public int? Place { get; init; }

    /// <summary>Checked in at.</summary>
    public Instant? CheckedInAt { get; init; }

    /// <summary>The session.</summary>
    public required SessionSummary Session { get; init; }

    /// <summary>How it suits her on its date, as things stand.</summary>
    public required FitMessage Fit { get; init; }

    /// <summary>What becomes of the credit it took if it is cancelled now and nothing excuses it.</summary>
    public required CreditOutcome IfCancelled { get; init; }
}

/// <summary>What a person may do with a session.</summary>
public enum CanBook
{
    /// <summary>There is a seat for her.</summary>
    Seat,

    /// <summary>Only the seat is missing.</summary>
    Waitlist,

    /// <summary>Not possible; the refusal says why.</summary>
    No,
}

/// <summary>Why it is not possible.</summary>
public sealed record RefusalMessage(string Code, string Message);

/// <summary>A session laid before a client.</summary>
public sealed record Choice
{
    /// <summary>The session.</summary>
    public required SessionSummary Session { get; init; }

    /// <summary>How it suits her on its date.</summary>
    public required FitMessage Fit { get; init; }

    /// <summary>Her booking in it.</summary>
    public long? BookingId { get; init; }

    /// <summary>Its state.</summary>
    public BookingStatus? BookingStatus { get; init; }

    /// <summary>Her place on the waitlist.</summary>
    public int? Place { get; init; }

    /// <summary>What can be done.</summary>
    public required CanBook CanBook { get; init; }

    /// <summary>Why not, when not.</summary>
    public RefusalMessage? Refusal { get; init; }
}

/// <summary>What came of asking her at the door how she is.</summary>
public enum DoorAnswer
{
    /// <summary>She was asked, and all is well.</summary>
    AllWell,

    /// <summary>She is let in without having been asked, which her instructor sees.</summary>
    NotAsked,
}

/// <summary>Checking in. Whoever says that something is not well is not checked in: a warning is raised instead.</summary>
public sealed record CheckInRequest
{
    /// <summary>What she answered.</summary>
    public required DoorAnswer Answer { get; init; }
}

/// <summary>For whom.</summary>
public sealed record BookingRequest
{
    /// <summary>The client.</summary>
    [System.ComponentModel.DataAnnotations.Range(1, long.MaxValue)]
    public required long ClientId { get; init; }
}

/// <summary>A seat or a place on the waitlist.</summary>
public sealed record BookingAnswer
{
    /// <summary>Key.</summary>
    public required long BookingId { get; init; }

    /// <summary>booked or waiting.</summary>
    public required BookingStatus Status { get; init; }

    /// <summary>Place on the waitlist, from 1.</summary>
    public int? Place { get; init; }

    /// <summary>How it suits her on its date.</summary>
    public required FitMessage Fit { get; init; }

    /// <summary>Name of the pass that paid for it; null when none did.</summary>
    public string? PaidWith { get; init; }

    /// <summary>Credits left on it; null for a monthly pass.</summary>
    public int? CreditsLeft { get; init; }
}

/// <summary>What a cancellation did.</summary>
/// <param name="BookingId">The booking that ended.</param>
/// <param name="SessionId">Its session.</param>
/// <param name="Promoted">How many people got a seat from the waitlist by it.</param>
/// <param name="Credit">What became of its credit.</param>
public sealed record CancellationAnswer(
    long BookingId,
    long SessionId,
    int Promoted,
    CreditOutcome Credit
);
