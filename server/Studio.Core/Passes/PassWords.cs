using NodaTime;
using Studio.Core.Accounts;
using Studio.Core.Pregnancies;

namespace Studio.Core.Passes;

/// <summary>Passes in plain words.</summary>
public static class PassWords
{
    /// <summary>
    /// Why a pass does not run on some days. The front desk reads the days and never the cause, which may be a loss.
    /// </summary>
    public static string Still(StillCause cause, StandStill still, Audience audience)
    {
        var span = still.To is { } to
            ? $"from {Wording.Date(still.From)} to {Wording.Date(to)}"
            : $"since {Wording.Date(still.From)}";
        if (audience is not (Audience.Owner or Audience.Herself))
            return $"It does not run {span}.";
        var why = cause switch
        {
            StillCause.Hold => "during the hold",
            StillCause.Birth => "around the birth",
            StillCause.Loss => "while away",
        };
        return $"It does not run {why}, {span}.";
    }

    /// <summary>What a line of a ledger is about.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="why">Why a credit came back.</param>
    public static string Line(EntryKind kind, CameBack? why) =>
        kind switch
        {
            EntryKind.Sold => "Sold",
            EntryKind.Spent => "Booked",
            EntryKind.Returned => why switch
            {
                CameBack.Excused => "Given back, excused",
                CameBack.Studio => "Given back by the studio",
                _ => "Given back, cancelled in time",
            },
            EntryKind.Goodwill => "Goodwill",
            EntryKind.Refunded => "Paid back",
        };

    /// <summary><c>1 class</c>, <c>4 classes</c>.</summary>
    public static string Classes(int count) => count == 1 ? "1 class" : $"{count} classes";

    /// <summary>What is left of a pass, in one line.</summary>
    /// <param name="pass">The pass.</param>
    /// <param name="last">Its last day; null while nobody knows.</param>
    /// <param name="today">Today.</param>
    public static string Left(Pass pass, LocalDate? last, LocalDate today)
    {
        if (pass.IsClosed)
            return "Paid back.";
        if (last is { } over && over < today)
            return $"It ran out on {Wording.Date(over)}.";
        var what = pass.IsUnlimited ? "Any number of classes" : $"{Classes(pass.Balance)} left";
        var until = last is { } day
            ? $", until {Wording.Date(day)}"
            : ", and it does not run out for now";
        return pass is { IsUnlimited: false, Balance: 0 } ? "No classes left." : $"{what}{until}.";
    }
}
