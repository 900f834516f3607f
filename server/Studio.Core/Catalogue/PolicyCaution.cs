using System.Globalization;

namespace Studio.Core.Catalogue;

/// <summary>How one value of a policy compares with another.</summary>
public enum Caution
{
    /// <summary>As cautious, or the policy has nothing to do with caution.</summary>
    Same,

    /// <summary>More cautious.</summary>
    More,

    /// <summary>Less cautious.</summary>
    Less,
}

/// <summary>Which value of a policy is the more cautious.</summary>
public static class PolicyCaution
{
    private enum Grows
    {
        // A larger number lets more through.
        Looser,

        // A larger number lets less through.
        Stricter,

        // It says how the studio works, and lets nobody into anything.
        Neither,
    }

    private static readonly Dictionary<string, Grows> Numbers = new(StringComparer.Ordinal)
    {
        ["clearance-most-days"] = Grows.Looser,
        ["screening-most-days"] = Grows.Looser,
        ["impact-after-birth-days"] = Grows.Stricter,
        ["after-caesarean-days"] = Grows.Stricter,
        ["effort-most"] = Grows.Looser,
        ["left-out-most-percent"] = Grows.Looser,
        ["look-ahead-days"] = Grows.Neither,
        ["move-hold-hours"] = Grows.Neither,
        ["waitlist-cut-off-minutes"] = Grows.Neither,
        ["booking-ahead-days"] = Grows.Neither,
        ["cancel-free-hours"] = Grows.Neither,
        ["pass-stops-before-due-weeks"] = Grows.Neither,
        ["pass-stops-after-birth-weeks"] = Grows.Neither,
        // It says when she is asked; what a class needs stays the same.
        ["quiet-after-birth-days"] = Grows.Neither,
        ["timetable-ahead-weeks"] = Grows.Neither,
        ["rest-hours-least"] = Grows.Neither,
        ["health-kept-years"] = Grows.Neither,
        ["contact-kept-years"] = Grows.Neither,
        ["mail-quiet-from"] = Grows.Neither,
        ["mail-quiet-until"] = Grows.Neither,
        ["mail-most-a-day"] = Grows.Neither,
        // A letter that is said late to end is renewed late.
        ["ends-soon-days"] = Grows.Stricter,
        ["letter-first-reminder-days"] = Grows.Stricter,
        ["letter-last-reminder-days"] = Grows.Stricter,
    };

    // The more cautious first; those in one place are both less cautious than what comes before them.
    private static readonly Dictionary<string, string[][]> Words = new(StringComparer.Ordinal)
    {
        ["guideline"] =
        [
            ["stricter"],
            ["acog", "canada"],
        ],
        ["clearance-for-everyone"] =
        [
            ["yes"],
            ["no"],
        ],
        ["letter-follows-change"] =
        [
            ["yes"],
            ["no"],
        ],
        ["letter-ends-with-stage"] =
        [
            ["yes"],
            ["no"],
        ],
        // Nobody's class changes hands unless one person has looked at it.
        ["cover-settles"] =
        [
            ["owner"],
            ["instructors"],
        ],
        // With it nobody is let in unpaid.
        ["passes-needed"] =
        [
            ["yes"],
            ["no"],
        ],
        ["heart-rate"] =
        [
            ["stricter"],
            ["canada", "acog-cap"],
        ],
        ["heart-rate-29"] =
        [
            ["older"],
            ["younger"],
        ],
        ["screening-at-stage"] =
        [
            ["needed"],
            ["asked"],
            ["no"],
        ],
        ["anything-changed"] =
        [
            ["weekly"],
            ["no"],
        ],
        ["week-reading"] =
        [
            ["first-day"],
            ["week-later"],
        ],
        ["supine-from"] =
        [
            ["14w0d"],
            ["16w0d"],
            ["20w0d"],
            ["28w0d"],
            ["symptoms"],
        ],
        ["lifting"] =
        [
            ["light"],
            ["by-weight"],
            ["by-symptoms"],
        ],
        ["prolapse-work"] =
        [
            ["avoid"],
            ["by-symptoms"],
        ],
        ["warm-room"] =
        [
            ["avoid"],
            ["measured"],
        ],
    };

    /// <summary>The policies about which something is known here; all of them.</summary>
    public static IEnumerable<string> Codes => Numbers.Keys.Concat(Words.Keys);

    /// <summary>How a value compares with another of the same policy; both are allowed ones.</summary>
    public static Caution Of(string code, string value, string than) =>
        value == than ? Caution.Same
        : Words.TryGetValue(code, out var places) ? ByPlace(places, value, than)
        : Numbers.TryGetValue(code, out var grows) ? ByNumber(grows, Number(value), Number(than))
        // Of a policy nobody has thought about, any other value is taken for the looser one.
        : Caution.Less;

    private static Caution ByPlace(string[][] places, string value, string than)
    {
        var (at, other) = (PlaceOf(places, value), PlaceOf(places, than));
        // Two in one place differ without an order, so the change is called the looser one.
        return at < other ? Caution.More : Caution.Less;
    }

    private static Caution ByNumber(Grows grows, int value, int than) =>
        grows switch
        {
            Grows.Neither => Caution.Same,
            Grows.Looser => value > than ? Caution.Less : Caution.More,
            Grows.Stricter => value < than ? Caution.Less : Caution.More,
        };

    private static int PlaceOf(string[][] places, string value) =>
        Array.FindIndex(places, place => place.Contains(value, StringComparer.Ordinal));

    // "none" is no limit at all.
    private static int Number(string value) =>
        value == "none" ? int.MaxValue : int.Parse(value, CultureInfo.InvariantCulture);
}
