using Studio.Core.Timetable;

namespace Studio.Core.Staff;

/// <summary>What a wish can be about.</summary>
public static class WishRules
{
    /// <summary>Parts of a day, in its order.</summary>
    public static IReadOnlyList<string> PartsOfDay { get; } = ["morning", "afternoon", "evening"];

    private static readonly string[] Weekdays = ["1", "2", "3", "4", "5", "6", "7"];

    /// <summary>Why these cannot be her wishes, or null: each is about something there is, and none is there twice.</summary>
    public static Refusal? WhyNot(
        IReadOnlyList<TeachingWish> wishes,
        IReadOnlyCollection<string> classes,
        IReadOnlyCollection<string> locations
    )
    {
        for (var i = 0; i < wishes.Count; i++)
        {
            var wish = wishes[i];
            var known = wish.Kind switch
            {
                WishKind.Class => classes,
                WishKind.Location => locations,
                WishKind.Weekday => Weekdays,
                WishKind.PartOfDay => PartsOfDay,
            };
            if (!known.Contains(wish.Value, StringComparer.Ordinal))
                return new Refusal(
                    RefusalKind.Invalid,
                    "no-such-wish",
                    $"\"{wish.Value}\" is nothing a wish can be about here. Known: {string.Join(", ", known)}.",
                    $"wishes[{i}].value"
                );
            if (wishes.Take(i).Any(w => w.Kind == wish.Kind && w.Value == wish.Value))
                return new Refusal(
                    RefusalKind.Invalid,
                    "wish-twice",
                    $"There are two wishes about \"{wish.Value}\". Keep one of them.",
                    $"wishes[{i}].value"
                );
        }

        return null;
    }
}
