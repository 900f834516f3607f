namespace Studio.Core.Feeds;

/// <summary>What stands in a calendar. Never anything of anybody's health, nor anybody's name but the studio's own.</summary>
public static class FeedWords
{
    /// <summary>The name of somebody's calendar.</summary>
    public static string CalendarName(string studio) => $"Classes at {studio}";

    /// <summary>
    /// A client's entry. The name of a class may tell how far along she is, so it stands there only where she wants it.
    /// </summary>
    public static string ForClient(
        EntryState state,
        string studio,
        string className,
        bool namesClass
    )
    {
        var what = namesClass ? className : $"Class at {studio}";
        return state switch
        {
            EntryState.Confirmed => what,
            EntryState.Tentative => $"Waitlist: {what}",
            EntryState.Cancelled => $"Cancelled: {what}",
        };
    }

    /// <summary>A sentence more for a client.</summary>
    public static string MoreForClient(EntryState state, bool calledOff) =>
        state switch
        {
            EntryState.Confirmed => "",
            EntryState.Tentative => "You are on the waitlist and do not have a seat yet.",
            EntryState.Cancelled => calledOff
                ? "The studio called this class off."
                : "You no longer have a place in this class.",
        };

    /// <summary>An instructor's entry.</summary>
    public static string ForStaff(EntryState state, string className) =>
        state == EntryState.Cancelled ? $"Cancelled: {className}" : className;

    /// <summary>How many people, without saying who.</summary>
    public static string MoreForStaff(EntryState state, int booked, int seats, int waiting) =>
        state == EntryState.Cancelled ? "This class was called off."
        : waiting == 0 ? $"{booked} of {seats} seats booked."
        : $"{booked} of {seats} seats booked, {waiting} waiting.";

    /// <summary>Room and location.</summary>
    public static string Place(string room, string location) => $"{room}, {location}";
}
