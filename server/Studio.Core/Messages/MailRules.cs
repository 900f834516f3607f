using NodaTime;

namespace Studio.Core.Messages;

/// <summary>Why a message waits although nothing went wrong.</summary>
public enum HeldBack
{
    /// <summary>It is night where she is.</summary>
    Quiet,

    /// <summary>She was sent enough within a day.</summary>
    Enough,
}

/// <summary>The studio's choices about sending.</summary>
/// <param name="QuietFrom">The hour from which nothing goes out.</param>
/// <param name="QuietUntil">The hour at which it goes out again; the same for no quiet hours.</param>
/// <param name="MostADay">The most one person is sent within 24 hours.</param>
public sealed record MailPolicy(int QuietFrom, int QuietUntil, int MostADay);

/// <summary>A message that is due, with what decides whether it may go now.</summary>
public sealed record MessageDue
{
    /// <summary>What it is about.</summary>
    public required MessageKind Kind { get; init; }

    /// <summary>The zone of the place she usually comes to.</summary>
    public required DateTimeZone Zone { get; init; }

    /// <summary>Her e-mail address; empty when none is known.</summary>
    public required string Address { get; init; }

    /// <summary>She may be written to at all: not after a loss, not when erased.</summary>
    public required bool MayBeWrittenTo { get; init; }

    /// <summary>She has not said that she does without this kind.</summary>
    public required bool Wanted { get; init; }

    /// <summary>What it says still holds: the seat is hers, the suggestion stands.</summary>
    public required bool StillTrue { get; init; }

    /// <summary>It answers what she has just done herself, so she is awake and waits for it.</summary>
    public required bool AnswersHer { get; init; }

    /// <summary>Start of the session it speaks of; null for none.</summary>
    public Instant? StartsAt { get; init; }

    /// <summary>What she was sent within the last day, the newest first.</summary>
    public required IReadOnlyList<Instant> SentLately { get; init; }
}

/// <summary>What becomes of a message that is due: sent, or one of the others.</summary>
public abstract record MailDecision
{
    private MailDecision() { }

    /// <summary>It goes out now.</summary>
    public sealed record Send : MailDecision;

    /// <summary>It waits.</summary>
    public sealed record Wait(Instant Until, HeldBack Why) : MailDecision;

    /// <summary>It is not sent any more.</summary>
    public sealed record Drop(string Why) : MailDecision;

    /// <summary>It cannot be sent.</summary>
    public sealed record Refuse(string Why) : MailDecision;
}

/// <summary>When a message goes out, and when one that failed is tried again.</summary>
public static class MailRules
{
    /// <summary>How near the end of quiet hours a class begins for news of it to go through them.</summary>
    public static readonly Duration TooLateToWait = Duration.FromHours(2);

    /// <summary>
    /// After so long without success a message is given up: RFC 5321, 4.5.4.1, asks for four to five days at least.
    /// </summary>
    public static readonly Duration GivesUpAfter = Duration.FromDays(5);

    /// <summary>
    /// How often the server's answer may stay out after it was given the whole message: it may have taken it, so it is
    /// repeated once and no more.
    /// </summary>
    public const int MostUnanswered = 2;

    /// <summary>
    /// How long to wait after so many tries, from 1: 5, 10, 20, 40 minutes, then every hour. Doubling as RFC 5321,
    /// 4.5.4.1, describes; the first steps are shorter because the server is the studio's own, not the recipient's.
    /// </summary>
    public static Duration PauseAfter(int tries) =>
        Duration.FromMinutes(Math.Min(60, 5 << Math.Clamp(tries - 1, 0, 4)));

    /// <summary>The end of the quiet hours that hold now; null when none do.</summary>
    public static Instant? QuietUntil(Instant now, DateTimeZone zone, int from, int until)
    {
        var local = now.InZone(zone).LocalDateTime;
        var hour = local.Hour;
        var quiet = from <= until ? hour >= from && hour < until : hour >= from || hour < until;
        if (!quiet)
            return null;
        var day = hour >= until ? local.Date.PlusDays(1) : local.Date;
        return zone.AtLeniently(day.At(new LocalTime(until, 0))).ToInstant();
    }

    /// <summary>What becomes of a message now.</summary>
    public static MailDecision Decide(MessageDue due, MailPolicy policy, Instant now)
    {
        if (!due.MayBeWrittenTo)
            return new MailDecision.Drop("Nothing is sent any more.");
        if (!due.Wanted)
            return new MailDecision.Drop("Messages of this kind are not wanted.");
        if (!due.StillTrue)
            return new MailDecision.Drop("It was no longer true when its turn came.");
        if (due.Kind.EndsWithTheStart() && due.StartsAt <= now)
            return new MailDecision.Drop("The class had begun before it could be sent.");
        if (due.Address.Length == 0)
            return new MailDecision.Refuse("No e-mail address is known.");
        if (due.AnswersHer)
            return new MailDecision.Send();
        if (
            QuietUntil(now, due.Zone, policy.QuietFrom, policy.QuietUntil) is { } quiet
            && !IsTooLateAt(due, quiet, now)
        )
            return new MailDecision.Wait(quiet, HeldBack.Quiet);
        var sent = due.SentLately.Where(at => at > now - Duration.FromDays(1)).ToList();
        if (sent.Count >= policy.MostADay && !IsNear(due, now))
            return new MailDecision.Wait(
                sent[policy.MostADay - 1] + Duration.FromDays(1),
                HeldBack.Enough
            );
        return new MailDecision.Send();
    }

    // A class today, or one that begins before she could well act on news that came in the morning.
    private static bool IsTooLateAt(MessageDue due, Instant quietEnds, Instant now) =>
        due.Kind.IsEssential()
        && due.StartsAt is { } starts
        && starts > now
        && (
            starts.InZone(due.Zone).Date == now.InZone(due.Zone).Date
            || starts < quietEnds + TooLateToWait
        );

    private static bool IsNear(MessageDue due, Instant now) =>
        due.Kind is MessageKind.Test
        || due.StartsAt is { } starts && starts > now && starts < now + Duration.FromDays(1);
}
