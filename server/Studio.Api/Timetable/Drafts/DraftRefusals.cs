using Studio.Core;
using Studio.Core.Pregnancies;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable.Drafts;

/// <summary>Ways of saying no to a change of a draft.</summary>
public static class DraftRefusals
{
    /// <summary>No such draft.</summary>
    public static readonly Refusal NoSuchDraft = new(
        RefusalKind.NotFound,
        "no-such-draft",
        "There is no such draft any more."
    );

    /// <summary>No such row.</summary>
    public static readonly Refusal NoSuchRow = new(
        RefusalKind.Invalid,
        "no-such-row",
        "The draft has no such session any more. Please look at it again.",
        "id"
    );

    /// <summary>Somebody else changed it.</summary>
    public static readonly Refusal Stale = new(
        RefusalKind.Conflict,
        "draft-changed",
        "The draft was changed on another page meanwhile, so nothing was kept of this. Look at it as it is now and do it again.",
        "version"
    );

    /// <summary>It is published or thrown away.</summary>
    public static readonly Refusal Ended = new(
        RefusalKind.Conflict,
        "draft-ended",
        "This draft was published or thrown away. Make a new one of these weeks."
    );

    /// <summary>A session was changed elsewhere.</summary>
    public static readonly Refusal Outdated = new(
        RefusalKind.Conflict,
        "draft-outdated",
        "Sessions of this draft were changed in the timetable since they were copied. Decide for each which of the two holds, then publish."
    );

    /// <summary>Last before first.</summary>
    public static readonly Refusal LastBeforeFirst = new(
        RefusalKind.Invalid,
        "bad-range",
        "The last day lies before the first.",
        "to"
    );

    /// <summary>Too many weeks.</summary>
    public static readonly Refusal TooLong = new(
        RefusalKind.Invalid,
        "bad-range",
        $"A draft holds {DraftRules.MostDays / 7} weeks at most.",
        "to"
    );

    /// <summary>A week onto itself.</summary>
    public static readonly Refusal SameWeek = new(
        RefusalKind.Invalid,
        "same-week",
        "This is the week that is copied. Please choose another one.",
        "to"
    );

    /// <summary>Nothing new in it.</summary>
    public static readonly Refusal NothingToCopy = new(
        RefusalKind.Conflict,
        "nothing-to-copy",
        "Nothing was added: the week has no sessions, they stand there already, or the other week lies outside the draft."
    );

    /// <summary>A day outside its weeks.</summary>
    public static Refusal OutsideDraft(DraftRow draft) =>
        new(
            RefusalKind.Invalid,
            "outside-draft",
            $"This draft goes from {Wording.Date(draft.FromOn)} to {Wording.Date(draft.ToOn)}. Please choose a day between.",
            "on"
        );
}
