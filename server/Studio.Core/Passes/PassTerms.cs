using NodaTime;

namespace Studio.Core.Passes;

/// <summary>How something was paid; recorded, never processed.</summary>
public enum PaidHow
{
    /// <summary>In cash.</summary>
    Cash,

    /// <summary>By card at the desk.</summary>
    Card,

    /// <summary>By transfer.</summary>
    Transfer,

    /// <summary>In any other way.</summary>
    Other,
}

/// <summary>Why a credit came back. What excused somebody is kept nowhere.</summary>
public enum CameBack
{
    /// <summary>Cancelled in time.</summary>
    InTime,

    /// <summary>Late, or not at all, and excused: medical, a hold, a birth, a loss.</summary>
    Excused,

    /// <summary>The studio called off, moved or let go.</summary>
    Studio,
}

/// <summary>What a kind of pass promises, as far as selling needs it.</summary>
/// <param name="Form">What it gives.</param>
/// <param name="Credits">Classes; null for a course and a monthly pass.</param>
/// <param name="RunsDays">Days it runs; null for a course and a monthly pass.</param>
/// <param name="Price">In the smallest unit, with tax.</param>
/// <param name="Sessions">Days of a course's sessions by session; empty for every other form.</param>
public sealed record PassTerms(
    PassForm Form,
    int? Credits,
    int? RunsDays,
    long Price,
    IReadOnlyDictionary<long, LocalDate> Sessions
)
{
    private const int LatestStartDays = 366;

    /// <summary>Why no kind can have these terms; null when one can.</summary>
    public Refusal? WhyNot() =>
        Form is PassForm.Classes && Credits is null
            ? Bad("credits", "Say how many classes it gives.")
        : Form is PassForm.DropIn or PassForm.Trial && Credits is not (null or 1)
            ? Bad("credits", "A drop-in and a trial give one class.")
        : Form is PassForm.Course or PassForm.Monthly && Credits is not null
            ? Bad(
                "credits",
                "A course gives its sessions and a monthly pass counts none: leave this out."
            )
        : Form is PassForm.Course or PassForm.Monthly && RunsDays is not null
            ? Bad(
                "runsDays",
                "A course ends with its last session and a monthly pass after a month: leave this out."
            )
        : Form is not (PassForm.Course or PassForm.Monthly) && RunsDays is null
            ? Bad("runsDays", "Say for how many days it runs.")
        : Form is PassForm.Trial && Price != 0 ? Bad("price", "A trial costs nothing.")
        : Form is PassForm.Course && Sessions.Count == 0
            ? Bad("sessionIds", "Name the sessions of the course.")
        : Form is not PassForm.Course && Sessions.Count > 0
            ? Bad("sessionIds", "Only a course names its sessions.")
        : null;

    /// <summary>What is sold on a day: the credits it comes with, its sessions, and the days it runs from its first.</summary>
    /// <param name="today">The day of the sale.</param>
    /// <param name="startsOn">Its first day; null for that day. A course begins with the sale.</param>
    public Answer<PassSold> OnSale(LocalDate today, LocalDate? startsOn)
    {
        var start = startsOn ?? today;
        if (start < today || start > today.PlusDays(LatestStartDays))
            return PassRefusals.BadStart;
        if (Form == PassForm.Course)
        {
            var ahead = Sessions.Where(s => s.Value >= today).ToDictionary();
            if (ahead.Count == 0)
                return PassRefusals.CourseOver;
            return new PassSold(
                ahead.Count,
                today,
                Period.DaysBetween(today, ahead.Values.Max()) + 1,
                [.. ahead.Keys.Order()]
            );
        }

        return Form == PassForm.Monthly
            ? new PassSold(0, start, Period.DaysBetween(start, start.PlusMonths(1)), [])
            : new PassSold(Credits ?? 1, start, RunsDays!.Value, []);
    }

    private static Refusal Bad(string field, string message) =>
        new(RefusalKind.Invalid, "bad-pass-kind", message, field);
}

/// <summary>What a sale gives.</summary>
/// <param name="Credits">Classes; 0 for a monthly pass.</param>
/// <param name="StartsOn">First day.</param>
/// <param name="RunsDays">Days it runs, the first included.</param>
/// <param name="Sessions">Sessions of a course that lie ahead.</param>
public sealed record PassSold(
    int Credits,
    LocalDate StartsOn,
    int RunsDays,
    IReadOnlyList<long> Sessions
);
