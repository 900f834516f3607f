namespace Studio.Core.Booking;

/// <summary>The codes of reasons, in the order in which equally strict ones are told.</summary>
public static class ReasonCodes
{
    /// <summary>Nothing can be booked, and no reader is told why.</summary>
    public const string NotBookable = "not-bookable";

    /// <summary>A hold stands.</summary>
    public const string OnHold = "on-hold";

    /// <summary>Her dates are not known, or begin later.</summary>
    public const string DatesNeeded = "dates-needed";

    /// <summary>Past 42w 0d with no birth reported.</summary>
    public const string ReportTheBirth = "report-the-birth";

    /// <summary>The class is not for the stage she is in on that date.</summary>
    public const string Stage = "stage";

    /// <summary>Her screening says not to exercise here for now.</summary>
    public const string NoExercise = "no-exercise";

    /// <summary>A condition or a class rule speaks against the class.</summary>
    public const string DoesNotSuit = "does-not-suit";

    /// <summary>Too much of the plan is left out for her.</summary>
    public const string TooMuchLeftOut = "too-much-left-out";

    /// <summary>The class's own description is not understood.</summary>
    public const string ClassUnclear = "class-unclear";

    /// <summary>She holds a code the catalogue does not know.</summary>
    public const string RecordUnclear = "record-unclear";

    /// <summary>The screening questions are to be answered.</summary>
    public const string ScreeningNeeded = "screening-needed";

    /// <summary>A letter valid on that date is needed.</summary>
    public const string ClearanceNeeded = "clearance-needed";

    /// <summary>Her letter covers it and is to be followed.</summary>
    public const string FollowLetter = "follow-letter";

    /// <summary>Something is done differently.</summary>
    public const string Adapted = "adapted";

    /// <summary>From 37w 0d: her place is kept, and she may not come.</summary>
    public const string MayHaveGivenBirth = "may-have-given-birth";

    /// <summary>Something to know.</summary>
    public const string Note = "note";

    private static readonly string[] Order =
    [
        NotBookable,
        OnHold,
        DatesNeeded,
        ReportTheBirth,
        Stage,
        NoExercise,
        DoesNotSuit,
        TooMuchLeftOut,
        ClassUnclear,
        RecordUnclear,
        ScreeningNeeded,
        ClearanceNeeded,
        FollowLetter,
        Adapted,
        MayHaveGivenBirth,
        Note,
    ];

    // What the desk works with; the rest would tell it about her health.
    private static readonly string[] Administrative =
    [
        NotBookable,
        OnHold,
        DatesNeeded,
        ReportTheBirth,
        Stage,
        ClassUnclear,
        ScreeningNeeded,
        ClearanceNeeded,
        MayHaveGivenBirth,
    ];

    internal static int RankOf(Reason reason) => Array.IndexOf(Order, reason.Code);

    internal static string ForDesk(Reason reason) =>
        Administrative.Contains(reason.Code)
            ? reason.Code
            : reason.Verdict switch
            {
                Suits.Suitable => Note,
                Suits.WithModifications => Adapted,
                Suits.NeedsClearance => ClearanceNeeded,
                Suits.NotSuitable => DoesNotSuit,
            };
}
