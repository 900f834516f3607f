using Studio.Core.Timetable;

namespace Studio.Core.Cover;

/// <summary>What speaks for somebody and against her, in sentences.</summary>
internal static class CoverWords
{
    private static readonly string Lately = $"in the last {CoverRanking.WeeksBack} weeks";

    public static readonly CoverReason Asks = new(
        CoverReasonKind.Answer,
        "Has asked for cover on that day.",
        "You have asked for cover on that day."
    );

    // A conflict names her; she knows her own name.
    public static CoverReason Of(Conflict conflict) =>
        new(
            conflict.IsHard ? CoverReasonKind.Hard : CoverReasonKind.Soft,
            conflict.Words,
            conflict.Words
        );

    public static CoverReason Of(CoverAnswer answer) =>
        answer switch
        {
            CoverAnswer.Can => new(CoverReasonKind.Answer, "Can take it.", "You said you can."),
            CoverAnswer.Cannot => new(
                CoverReasonKind.Answer,
                "Cannot take it.",
                "You said you cannot."
            ),
        };

    public static IEnumerable<CoverReason> Knows(int known, int booked)
    {
        if (booked == 0)
            yield break;
        var words =
            known == 0 ? $"taught none of the {People(booked)} booked {Lately}."
            : known == booked && booked == 1 ? $"taught the one person booked {Lately}."
            : known == booked ? $"taught all {booked} people booked {Lately}."
            : $"taught {known} of the {People(booked)} booked {Lately}.";
        yield return new(CoverReasonKind.Knows, $"Has {words}", $"You have {words}");
    }

    public static CoverReason Taught(int times)
    {
        var words = times switch
        {
            0 => $"not taught this class {Lately}.",
            1 => $"taught this class once {Lately}.",
            _ => $"taught this class {times} times {Lately}.",
        };
        return new(CoverReasonKind.Taught, $"Has {words}", $"You have {words}");
    }

    public static CoverReason Of(TeachingWish wish, PlacedSession session)
    {
        var what = wish.Kind switch
        {
            WishKind.Class => $"teach {session.ClassName}",
            WishKind.Location => $"teach in {session.LocationName}",
            WishKind.Weekday => $"teach on {session.On.DayOfWeek}s",
            WishKind.PartOfDay => $"teach in the {wish.Value}",
        };
        var (hers, yours) = wish.Weight switch
        {
            > 1 => ("Very much likes to", "You very much like to"),
            1 => ("Likes to", "You like to"),
            -1 => ("Would rather not", "You would rather not"),
            _ => ("Would much rather not", "You would much rather not"),
        };
        return new(CoverReasonKind.Wish, $"{hers} {what}.", $"{yours} {what}.");
    }

    public static CoverReason Covers(int taken)
    {
        var words = taken switch
        {
            0 => $"taken over no class {Lately}.",
            1 => $"taken over 1 class {Lately}.",
            _ => $"taken over {taken} classes {Lately}.",
        };
        return new(CoverReasonKind.Covers, $"Has {words}", $"You have {words}");
    }

    public static CoverReason Load(int minutes, int? most)
    {
        var words = most is { } bound
            ? $"teach {Hours(minutes)} of {Hours(bound)} agreed in that week."
            : $"teach {Hours(minutes)} in that week.";
        return new(CoverReasonKind.Load, $"Would {words}", $"You would {words}");
    }

    private static string People(int count) => count == 1 ? "1 person" : $"{count} people";

    private static string Hours(int minutes) =>
        minutes < 60 ? $"{minutes} min"
        : minutes % 60 == 0 ? $"{minutes / 60} h"
        : $"{minutes / 60} h {minutes % 60:00}";
}
