using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Rosters;
using Studio.Api.Timetable;
using Studio.Core;

namespace Studio.Api.Movements;

/// <summary>
/// What follows every change of a plan: it may suit those who wait, and flags of those booked may rise or fall; then it
/// is committed and the open pages are told.
/// </summary>
public sealed class PlanChanges(FlagSweep flags, Bookings bookings, IClock clock)
{
    /// <summary>The moment of the change.</summary>
    public Instant Now => clock.GetCurrentInstant();

    /// <summary>Looks again at these sessions and the people in them, commits.</summary>
    public async Task DoneAsync(Write write, IReadOnlyList<SessionRow> sessions)
    {
        foreach (var session in sessions.Where(s => s.SeatsLeft > 0 && s.Waiting > 0))
            await bookings.FillAsync(write, session);
        var people = await BookingStore.InAsync(write, [.. sessions.Select(s => s.Id)]);
        await flags.RefreshAsync(write, [.. people.Select(b => b.ClientId).Distinct()]);
        foreach (var session in sessions)
            write.Tell("session", session.Id);
        write.Tell("session");
        await write.CommitAsync();
    }
}

/// <summary>Why a plan is not kept or shown.</summary>
internal static class PlanRefusals
{
    public static readonly Refusal NoSuchClass = new(
        RefusalKind.NotFound,
        "no-such-class",
        "There is no such class."
    );

    public static readonly Refusal NoSuchVersion = new(
        RefusalKind.NotFound,
        "no-such-version",
        "This plan has no such version."
    );

    public static readonly Refusal SessionIsOver = new(
        RefusalKind.Conflict,
        "session-over",
        "This session is over, and it keeps the plan it was taught with. Change the plan of the class, or of a session to come."
    );

    public static Refusal NotQualified(string kind) =>
        new(
            RefusalKind.NotAllowed,
            "not-qualified",
            $"The plan of this class is changed by the owner and by instructors who hold \"{kind}\" today. You can still change it for a session of your own."
        );

    public static Refusal ChangedMeanwhile(PlanVersionRow? newest) =>
        new(
            RefusalKind.Conflict,
            "plan-changed",
            newest is null
                ? "This plan was not made from a version there is. Load the plan again; your draft stays."
                : $"{newest.MadeBy ?? "Somebody else"} changed this plan meanwhile: version {newest.Version} is the newest. Nothing of either is lost: look at theirs, then save yours over it or take theirs.",
            "basedOn"
        );
}
