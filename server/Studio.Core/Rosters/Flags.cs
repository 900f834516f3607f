using NodaTime;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Core.Rosters;

/// <summary>What a flag is about.</summary>
public enum FlagKind
{
    /// <summary>Everything of hers is held until a new letter.</summary>
    OnHold,

    /// <summary>A letter has run out, or will, before something she has booked.</summary>
    Letter,

    /// <summary>The health questions are due before something she has booked.</summary>
    Screening,

    /// <summary>A booking made earlier that no longer suits her.</summary>
    BookingNoLongerSuits,

    /// <summary>Something about her is new.</summary>
    NewFactor,

    /// <summary>She enters, or has just entered, another stage.</summary>
    StageChange,

    /// <summary>Her due date has passed with no word.</summary>
    PastDue,

    /// <summary>Somebody at the studio is to ring her.</summary>
    RingHer,

    /// <summary>A session without an instructor.</summary>
    NoInstructor,

    /// <summary>An instructor's qualification is not valid on a session's date.</summary>
    Qualification,

    /// <summary>An instructor's qualification runs out soon.</summary>
    QualificationEnds,
}

/// <summary>How loud a flag is.</summary>
public enum FlagSeverity
{
    /// <summary>To know.</summary>
    Info,

    /// <summary>Somebody should do something.</summary>
    Attention,

    /// <summary>Before anything else.</summary>
    Urgent,
}

/// <summary>A flag that should stand.</summary>
/// <param name="Subject">What makes it this flag and no other; stays the same while it stands.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="Severity">How loud.</param>
/// <param name="ClientId">Whom it is about.</param>
/// <param name="SessionId">Which session, when it is one.</param>
/// <param name="InstructorId">The instructor it is about, when it is not about a client.</param>
/// <param name="ForDesk">Words for the desk: administrative only.</param>
/// <param name="ForInstructor">Instruction words; null when it is nothing for her.</param>
/// <param name="Since">The day it became true.</param>
public sealed record StandingFlag(
    string Subject,
    FlagKind Kind,
    FlagSeverity Severity,
    long? ClientId,
    long? SessionId,
    long? InstructorId,
    string ForDesk,
    string? ForInstructor,
    LocalDate Since
);

/// <summary>A seat she has in a session to come.</summary>
public sealed record SeatAhead(long SessionId, string ClassName, LocalDate On, Fit Fit);

/// <summary>What the flags of one client follow from.</summary>
/// <param name="ClientId">Her.</param>
/// <param name="Today">Today at her location.</param>
/// <param name="Her">What is known of her.</param>
/// <param name="Ahead">Her seats in sessions to come, in the order of time.</param>
public sealed record ClientState(
    long ClientId,
    LocalDate Today,
    HerSituation Her,
    IReadOnlyList<SeatAhead> Ahead
);

/// <summary>What the flags of one session to come follow from.</summary>
/// <param name="SessionId">It.</param>
/// <param name="ClassName">Its class.</param>
/// <param name="On">Its date.</param>
/// <param name="Today">Today at its location.</param>
/// <param name="InstructorId">Who teaches it.</param>
/// <param name="InstructorName">Her name.</param>
/// <param name="Qualification">The qualification its class needs.</param>
/// <param name="Qualified">She holds it on that date.</param>
/// <param name="Absence">Why she cannot be there that day: she is away, or works here no longer.</param>
public sealed record SessionState(
    long SessionId,
    string ClassName,
    LocalDate On,
    LocalDate Today,
    long? InstructorId,
    string? InstructorName,
    string Qualification,
    bool Qualified,
    Absence Absence = Absence.None
);

/// <summary>Whether somebody is there on a day.</summary>
public enum Absence
{
    /// <summary>She is.</summary>
    None,

    /// <summary>She is on leave.</summary>
    Away,

    /// <summary>She works here no longer.</summary>
    Left,
}

/// <summary>A qualification that runs out soon, the last of its kind that she has.</summary>
/// <param name="InstructorId">Whose.</param>
/// <param name="InstructorName">Her name.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="EndsOn">Its last day.</param>
/// <param name="Today">Today at the studio.</param>
/// <param name="SessionsAfter">Dates of the sessions after it that need it of her.</param>
public sealed record EndingQualification(
    long InstructorId,
    string InstructorName,
    string Kind,
    LocalDate EndsOn,
    LocalDate Today,
    IReadOnlyList<LocalDate> SessionsAfter
);

/// <summary>A session to come for which cover was asked and that nobody has taken.</summary>
/// <param name="SessionId">It.</param>
/// <param name="ClassName">Its class.</param>
/// <param name="On">Its date.</param>
/// <param name="InstructorName">Who cannot teach it.</param>
/// <param name="AskedOn">The day cover was asked, where it is held.</param>
/// <param name="IsLoud">It begins within a day.</param>
public sealed record UncoveredSession(
    long SessionId,
    string ClassName,
    LocalDate On,
    string InstructorName,
    LocalDate AskedOn,
    bool IsLoud
);

/// <summary>The flags that should stand: a pure function of the state.</summary>
public static class Flags
{
    /// <summary>How many days a new factor or a stage change stays a flag, and how many ahead a change is announced.</summary>
    public const int NewForDays = 14;

    /// <summary>Flags of a client. None after a loss: nobody is shown anything.</summary>
    public static IReadOnlyList<StandingFlag> Of(
        ClientState state,
        RuleBook book,
        StudioPolicies policies
    )
    {
        var now = book.Stages.On(state.Her.Pregnancy, state.Today);
        if (now.Phase == Phase.Ended)
            return [];
        var quiet = AfterBirth.IsQuiet(
            state.Her.Pregnancy,
            state.Today,
            hasSeatAhead: state.Ahead.Count > 0,
            policies
        );
        return
        [
            .. RingHer(state),
            .. Hold(state, quiet),
            .. quiet ? [] : Letter(state, book, policies),
            .. quiet ? [] : Screening(state, book, policies),
            .. NoLongerSuits(state),
            .. NewFactors(state, book),
            .. StageChange(state, book, now),
            .. PastDue(state, now),
        ];
    }

    /// <summary>The flag of a session that somebody cannot teach and nobody has taken.</summary>
    public static StandingFlag Of(UncoveredSession session) =>
        new(
            $"uncovered:{session.SessionId}",
            FlagKind.NoInstructor,
            session.IsLoud ? FlagSeverity.Urgent : FlagSeverity.Attention,
            null,
            session.SessionId,
            null,
            $"{session.ClassName} on {Day(session.On)}: {session.InstructorName} cannot teach it, and nobody has taken it yet.",
            null,
            session.AskedOn
        );

    /// <summary>Flags of a session to come.</summary>
    public static IReadOnlyList<StandingFlag> Of(SessionState session)
    {
        var near = session.On <= session.Today.PlusDays(1);
        if (session.InstructorId is null)
            return
            [
                new(
                    $"no-instructor:{session.SessionId}",
                    FlagKind.NoInstructor,
                    near ? FlagSeverity.Urgent : FlagSeverity.Attention,
                    null,
                    session.SessionId,
                    null,
                    $"{session.ClassName} on {Day(session.On)} has no instructor.",
                    null,
                    session.Today
                ),
            ];
        if (session.Absence != Absence.None)
            return
            [
                new(
                    $"absent:{session.InstructorId}:{session.SessionId}",
                    FlagKind.NoInstructor,
                    near ? FlagSeverity.Urgent : FlagSeverity.Attention,
                    null,
                    session.SessionId,
                    session.InstructorId,
                    $"{session.ClassName} on {Day(session.On)} has nobody to teach it: {session.InstructorName} {(session.Absence == Absence.Away ? "is away that day" : "works here no longer by then")}.",
                    null,
                    session.Today
                ),
            ];
        return session.Qualified
            ? []
            :
            [
                new(
                    $"qualification:{session.InstructorId}:{session.SessionId}",
                    FlagKind.Qualification,
                    near ? FlagSeverity.Urgent : FlagSeverity.Attention,
                    null,
                    session.SessionId,
                    session.InstructorId,
                    $"{session.InstructorName} has no valid {session.Qualification} qualification for {session.ClassName} on {Day(session.On)}.",
                    $"Your {session.Qualification} qualification is not valid on {Day(session.On)}, when you teach {session.ClassName}. Please speak to the owner.",
                    session.Today
                ),
            ];
    }

    /// <summary>The flag of a qualification that runs out; louder within two weeks, or when she is to teach after it.</summary>
    public static StandingFlag Of(EndingQualification ending)
    {
        var after = ending.SessionsAfter.Count;
        var sessions = after == 1 ? "1 session" : $"{after} sessions";
        var first = after == 0 ? "" : $", the first on {Day(ending.SessionsAfter.Min())}";
        return new(
            $"qualification-ends:{ending.InstructorId}:{ending.Kind}",
            FlagKind.QualificationEnds,
            after > 0 || ending.EndsOn <= ending.Today.PlusDays(NewForDays)
                ? FlagSeverity.Attention
                : FlagSeverity.Info,
            null,
            null,
            ending.InstructorId,
            $"The {ending.Kind} qualification of {ending.InstructorName} ends on {Day(ending.EndsOn)}. {(after == 0 ? "No session of hers after it needs it." : $"She is to teach {sessions} after it{first}.")}",
            $"Your {ending.Kind} qualification ends on {Day(ending.EndsOn)}. Please bring the owner the new one.{(after == 0 ? "" : $" You are to teach {sessions} after it{first}.")}",
            ending.Today
        );
    }

    // Of the birth itself it says nothing: whoever rings her needs no more than this.
    private static IEnumerable<StandingFlag> RingHer(ClientState state)
    {
        if (BirthRules.IsToBeRung(state.Her.Pregnancy))
            yield return Client(
                state,
                "ring-her",
                FlagKind.RingHer,
                FlagSeverity.Attention,
                "Please ring her, kindly and without asking for anything. Her bookings are released, and nothing is owed.",
                null,
                state.Today
            );
    }

    private static IEnumerable<StandingFlag> Hold(ClientState state, bool quiet)
    {
        if (
            state
                .Her.Holds.Where(h =>
                    h.StandsOn(state.Today) && AfterBirth.Speaks(h, state.Her.Pregnancy, quiet)
                )
                .MinBy(h => h.From) is
            { } hold
        )
            yield return Client(
                state,
                "hold",
                FlagKind.OnHold,
                FlagSeverity.Urgent,
                $"On hold since {Day(hold.From)}: no class until a new letter is filed.",
                "On hold: she does not take part until a new letter is filed. Refer her to the desk.",
                hold.From
            );
    }

    private static IEnumerable<StandingFlag> Letter(
        ClientState state,
        RuleBook book,
        StudioPolicies policies
    )
    {
        var standing = ClearanceRules.On(
            state.Her.Letters,
            state.Her.Pregnancy,
            state.Today,
            book.Stages,
            policies
        );
        var missing = state
            .Ahead.Where(s => s.Fit.Reasons.Any(r => r.Code == ReasonCodes.ClearanceNeeded))
            .ToList();
        if (missing.Count > 0)
        {
            var first = missing[0].On;
            var many =
                missing.Count == 1
                    ? "1 booked session needs"
                    : $"{missing.Count} booked sessions need";
            yield return Client(
                state,
                "letter",
                FlagKind.Letter,
                first <= state.Today.PlusDays(3) || standing.Reminder == LetterReminder.Last
                    ? FlagSeverity.Urgent
                    : FlagSeverity.Attention,
                $"{many} a letter she does not have for that date, the first on {Day(first)}.",
                $"No valid clearance letter from {Day(first)}: she does not take part without one.",
                standing.Status is ClearanceStatus.Expired
                    ? standing.ValidUntil!.Value.PlusDays(1)
                    : state.Today
            );
        }
        else if (standing.Reminder != LetterReminder.None)
            yield return Client(
                state,
                "letter-ends",
                FlagKind.Letter,
                standing.Reminder == LetterReminder.First
                    ? FlagSeverity.Info
                    : FlagSeverity.Attention,
                $"Clearance letter ends on {Day(standing.ValidUntil!.Value)}.",
                $"Her clearance letter ends on {Day(standing.ValidUntil!.Value)}: remind her to ask for a new one.",
                state.Today
            );
    }

    private static IEnumerable<StandingFlag> Screening(
        ClientState state,
        RuleBook book,
        StudioPolicies policies
    )
    {
        var first = state.Ahead.FirstOrDefault(s =>
            ScreeningRules.On(state.Her, s.On, book.Stages, policies) != ScreeningStatus.Current
        );
        if (first is not null)
            yield return Client(
                state,
                "screening",
                FlagKind.Screening,
                first.On <= state.Today.PlusDays(3) ? FlagSeverity.Urgent : FlagSeverity.Attention,
                $"Health questions are due before {Day(first.On)}.",
                $"Health questions are not up to date for {Day(first.On)}: send her to the desk before class.",
                state.Today
            );
        else if (
            state.Ahead.Count > 0
            && ScreeningRules.Asked(state.Her, state.Today, book.Stages, policies).Count > 0
        )
            yield return Client(
                state,
                "screening-asked",
                FlagKind.Screening,
                FlagSeverity.Info,
                "She has come into a new stage: ask her to answer the health questions again. Her bookings stand meanwhile.",
                null,
                state.Today
            );
    }

    private static IEnumerable<StandingFlag> NoLongerSuits(ClientState state) =>
        state
            .Ahead.Where(s => s.Fit.Verdict >= Suits.NeedsClearance)
            .Select(s => new StandingFlag(
                $"no-longer-suits:{state.ClientId}:{s.SessionId}",
                FlagKind.BookingNoLongerSuits,
                s.On <= state.Today.PlusDays(3) ? FlagSeverity.Urgent : FlagSeverity.Attention,
                state.ClientId,
                s.SessionId,
                null,
                $"{s.ClassName} on {Day(s.On)} no longer suits her: {FitWords.Summary(s.Fit, Accounts.Audience.FrontDesk)}",
                $"This class does not suit her as things stand on {Day(s.On)}: speak to the desk before she takes part.",
                state.Today
            ));

    private static IEnumerable<StandingFlag> NewFactors(ClientState state, RuleBook book)
    {
        if (state.Ahead.Count == 0)
            yield break;
        var fresh = state
            .Her.Factors.Where(f =>
                f.IsHeldOn(state.Today) && f.From >= state.Today.PlusDays(-NewForDays)
            )
            // The same entry made twice is one change.
            .DistinctBy(f => (f.Code, f.From));
        foreach (var held in fresh)
            yield return Client(
                state,
                $"factor:{held.Code}:{held.From:uuuu-MM-dd}",
                FlagKind.NewFactor,
                FlagSeverity.Attention,
                $"A change was noted on {Day(held.From)}; her bookings have been looked at again.",
                $"New since {Day(held.From)}: {book.FactorOf(held.Code)?.InstructorWords ?? "ask her what she needs today."}",
                held.From
            );
    }

    private static IEnumerable<StandingFlag> StageChange(
        ClientState state,
        RuleBook book,
        Situation now
    )
    {
        if (state.Her.Pregnancy is not { } pregnancy || state.Ahead.Count == 0)
            yield break;
        foreach (var band in book.Stages.Bands(pregnancy))
        {
            var days = Period.DaysBetween(state.Today, band.From);
            if (
                days is < -NewForDays or > NewForDays
                || (band.Stage.FromDay == 0 && band.Stage.CountsFrom == StageCount.Pregnancy)
            )
                continue;
            var entered = band.Stage.Code == now.Stage?.Code || days <= 0;
            var says = entered
                ? $"{band.Stage.Name} since {Day(band.From)}."
                : $"Enters {band.Stage.Name.ToLowerInvariant()} on {Day(band.From)}.";
            yield return Client(
                state,
                $"stage:{band.Stage.Code}:{band.From:uuuu-MM-dd}",
                FlagKind.StageChange,
                FlagSeverity.Info,
                says,
                says,
                entered ? band.From : state.Today
            );
        }
    }

    private static IEnumerable<StandingFlag> PastDue(ClientState state, Situation now)
    {
        if (
            now.Phase == Phase.Pregnant
            && state.Her.Pregnancy?.DueDate is { } due
            && state.Today > due
        )
            yield return Client(
                state,
                "past-due",
                FlagKind.PastDue,
                FlagSeverity.Info,
                $"Her due date was {Day(due)} and there is no word yet. Somebody who knows her may ask kindly; nothing is sent to her.",
                null,
                due.PlusDays(1)
            );
    }

    private static StandingFlag Client(
        ClientState state,
        string subject,
        FlagKind kind,
        FlagSeverity severity,
        string forDesk,
        string? forInstructor,
        LocalDate since
    ) =>
        new(
            $"{subject}:{state.ClientId}",
            kind,
            severity,
            state.ClientId,
            null,
            null,
            forDesk,
            forInstructor,
            since
        );

    private static string Day(LocalDate day) => Wording.Date(day);
}
